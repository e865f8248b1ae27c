package dev.vibra.bearing.proportion;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.internal.Require;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * The bearings that would explain rates read somewhere: arithmetic of kinematics turned round.
 *
 * <p>One rate leaves a family of bearings: for each number of elements the ratio that fits. A cage rate or the rate of
 * a second race fixes the number.
 *
 * <pre>
 * outer race       q = N·(1 − r)/2       one ratio for each N that fits round the circle
 * inner race       q = N·(1 + r)/2       likewise; with the outer race, q₁ + q₂ = N
 * rolling element  q = cos α·(1 − r²)/r  any N that fits; r from α = 0 to 45°
 * cage             q = (1 − r)/2, with the outer ring turning (1 + r)/2; fixes r
 * </pre>
 *
 * @see "P. D. McFadden, J. D. Smith, Vibration monitoring of rolling element bearings by the high-frequency resonance
 *     technique: a review, Tribology International 17 (1984) 3-10: the rates"
 */
public final class Proportions {
    /** Slip and contact angle under load, 1–2 % (Randall and Antoni 2011). */
    static final double SLIP = 0.015;
    static final double HIGHEST_SLIP = 0.05;

    private Proportions() {}

    /**
     * Lists the bearings that explain a rate of impacts, with the usual slip of 1.5 %.
     *
     * @param rates rates over the speed of rotation, the strongest first; rates of a cage (0.29 to 0.45, with the outer
     *     ring turning 0.55 to 0.71) are taken as such
     * @param turning ring that turns
     * @return candidates for the first rate that is none of a cage, or for the cage if there is no other; those with
     *     most in their favour first, of equal ones the one that is filled as a deep-groove bearing is
     */
    public static List<Proportion> of(List<ObservedRate> rates, RotatingRing turning) {
        return of(Objects.requireNonNull(rates, "rates"), turning, SLIP);
    }

    /**
     * Lists the bearings that explain a rate of impacts.
     *
     * @param rates rates over the speed of rotation, the strongest first
     * @param turning ring that turns
     * @param slip largest deviation of a rate from its kinematic value over that value, 0 to 0.05
     * @return candidates, in the order of {@link #of(List, RotatingRing)}
     * @throws IllegalArgumentException if the slip is out of range
     */
    public static List<Proportion> of(List<ObservedRate> rates, RotatingRing turning, double slip) {
        Objects.requireNonNull(turning, "turning");
        Require.within("slip", slip, 0, HIGHEST_SLIP, "");
        if (Require.copy("rates", rates).isEmpty()) {
            return List.of();
        }
        Sighting seen = Sighting.of(rates, turning, slip);
        if (seen.strikes().isEmpty() && seen.cages().isEmpty()) {
            return List.of();
        }
        return ordered(seen.strikes().isEmpty() ? RollingFit.ofCage(seen) : ofStrike(seen));
    }

    private static List<Proportion> ofStrike(Sighting seen) {
        List<Proportion> found = new ArrayList<>();
        for (int n = Plausible.FEWEST; n <= Plausible.MOST; n++) {
            RaceFit.of(seen, BearingElement.OUTER_RACE, n).ifPresent(found::add);
            RaceFit.of(seen, BearingElement.INNER_RACE, n).ifPresent(found::add);
        }
        RollingFit.of(seen).ifPresent(found::add);
        return withoutWhatAllShare(found);
    }

    /** What no candidate explains parts none from the others: two bearings, or no bearing, make it. */
    private static List<Proportion> withoutWhatAllShare(List<Proportion> found) {
        boolean all = found.stream().allMatch(one -> one.clues().contains(ProportionClue.SECOND_RATE_LEFT));
        return all ? found.stream().map(one -> one.without(ProportionClue.SECOND_RATE_LEFT)).toList() : found;
    }

    static List<Proportion> ordered(List<Proportion> found) {
        return found.stream().sorted(Comparator.comparingInt((Proportion one) -> -one.weight())
                .thenComparingDouble(one -> Math.abs(one.ratio() - Plausible.deepGroove(one.fewest()).middle())))
                .toList();
    }
}
