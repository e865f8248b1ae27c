package dev.vibra.balance.tolerance;

import dev.vibra.evidence.Confidence;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Collections;
import java.util.List;
import java.util.Objects;

/**
 * Share of the permissible residual unbalance that each tolerance plane may have. Tolerance planes of two-plane rotors
 * are the bearing planes.
 *
 * @param shares one share per plane, each above zero; those of two planes add up to 1 only between bearings
 * @param limited true if a limit of the standard changed the shares that geometry gave
 * @param reason where the shares come from
 * @param confidence how well the rule was checked
 * @see "ISO 21940-11:2016, allocation of permissible residual unbalance to tolerance planes"
 */
public record Allocation(List<Double> shares, boolean limited, String reason, Confidence confidence)
        implements Serializable {
    private static final int SHOWN = 6;
    private static final int MOST_PLANES = 1000;

    /**
     * Checks and copies the shares.
     *
     * @param shares one share per plane, each above zero; those of two planes add up to 1 only between bearings
     * @param limited true if a limit of the standard changed the shares that geometry gave
     * @param reason where the shares come from
     * @param confidence how well the rule was checked
     */
    public Allocation {
        shares = Require.copy("shares", shares);
        Require.atLeast("count of shares", shares.size(), 1);
        shares.forEach(share -> Require.positive("share of a plane", share, ""));
        Objects.requireNonNull(reason, "reason");
        Objects.requireNonNull(confidence, "confidence");
    }

    /**
     * Gives all to the only plane.
     *
     * @return one share of 1
     */
    public static Allocation onePlane() {
        return new Allocation(List.of(1.0), false, "one plane takes the whole", Confidence.FIRM);
    }

    /**
     * Gives each of several planes the same; for two planes this is the rule for a centre of mass midway between the
     * bearings.
     *
     * @param planes count of planes, from 1 to 1000
     * @return equal shares that add up to 1
     * @throws IllegalArgumentException if the count is out of range
     */
    public static Allocation equalShares(int planes) {
        if (Require.atLeast("planes", planes, 1) > MOST_PLANES) {
            throw new IllegalArgumentException("planes must be at most " + MOST_PLANES + ": " + planes);
        }
        if (planes == 1) {
            return onePlane();
        }
        return new Allocation(Collections.nCopies(planes, 1.0 / planes), false,
                planes == 2 ? "centre of mass taken to be midway between the planes"
                        : "equal shares; the standard speaks of at most two planes",
                planes == 2 ? Confidence.FIRM : Confidence.UNVERIFIED);
    }

    /**
     * Splits between the two bearing planes by the lever of the centre of mass: {@code U_A = U·L_B/L}, {@code U_B =
     * U·L_A/L}.
     *
     * <p>Limits, from memory and unverified: between bearings no share above 0.7 or below 0.3; with the centre of mass
     * outside the bearings no share above 1.3 or below 0.3.
     *
     * @param bearingA position of bearing plane A along the axis, in any unit of length
     * @param bearingB position of bearing plane B, different from A
     * @param centreOfMass position of the centre of mass
     * @return shares of A and B
     * @throws IllegalArgumentException if a position is not finite, the bearings coincide, or the centre of mass lies
     *     more than one span outside of them (the library's own bound against slips of the pen)
     */
    public static Allocation byLever(double bearingA, double bearingB, double centreOfMass) {
        double span = Require.finite("bearingB", bearingB) - Require.finite("bearingA", bearingA);
        Require.finite("centreOfMass", centreOfMass);
        if (!(Math.abs(span) > 0)) {
            throw Require.failure("bearingB", "away from bearingA, " + bearingA, bearingB);
        }
        double a = Math.abs((bearingB - centreOfMass) / span);
        double b = Math.abs((centreOfMass - bearingA) / span);
        if (!(Math.max(a, b) <= 2)) {
            throw Require.failure("centreOfMass", "at most one span outside the bearings, " + bearingA + " and "
                    + bearingB,
                    centreOfMass);
        }
        boolean inside = (bearingB - centreOfMass) / span >= 0 && (centreOfMass - bearingA) / span >= 0;
        double highest = inside ? 0.7 : 1.3;
        double limitedA = clip(a, highest);
        double limitedB = clip(b, highest);
        boolean limited = limitedA != a || limitedB != b;
        String place = inside ? "centre of mass between the bearings" : "centre of mass outside the bearings";
        return new Allocation(List.of(limitedA, limitedB), limited, limited
                ? place + ", shares held within 0.3 and " + Digits.compact(highest, 2)
                + " (limits from memory, unverified)"
                : place + ", shares by its levers", limited ? Confidence.UNVERIFIED : Confidence.SECONDARY);
    }

    private static double clip(double share, double highest) {
        return Math.min(highest, Math.max(0.3, share));
    }

    /** Returns shares and reason. */
    @Override
    public String toString() {
        String some = String.join(" / ", shares.stream().limit(SHOWN).map(s -> Digits.significant(s, 3)).toList());
        return some + (shares.size() > SHOWN ? " / … " + shares.size() + " shares" : "") + " (" + reason + ")";
    }
}
