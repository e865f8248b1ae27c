package dev.vibra.point;

import dev.vibra.descriptor.NamedLine;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.machine.Rate;
import java.io.Serializable;
import java.util.Objects;

/**
 * Lines at both sides of another one, at multiples of a rate.
 *
 * @param carrier the line between them
 * @param spacing rate at whose multiples they lie
 * @param pairs pairs, from the carrier outwards, of which both lines stand out of the noise, at least 0
 * @param lower rms velocity of the first line below in m/s; of the noise there, if none stands
 * @param upper rms velocity of the first line above in m/s; of the noise there, if none stands
 * @param lowerStands true if the first line below stands out of the noise
 * @param upperStands true if the first line above stands out of the noise
 */
public record Sidebands(NamedLine carrier, Rate spacing, int pairs, double lower, double upper, boolean lowerStands,
        boolean upperStands) implements Serializable {
    /** No velocity is as large, and its figures can be printed. */
    private static final double MOST = 1e100;

    /**
     * Checks what it is given.
     *
     * @param carrier see the record
     * @param spacing see the record
     * @param pairs see the record
     * @param lower see the record
     * @param upper see the record
     * @param lowerStands see the record
     * @param upperStands see the record
     */
    public Sidebands {
        Objects.requireNonNull(carrier, "carrier");
        Objects.requireNonNull(spacing, "spacing");
        Require.atLeast("pairs", pairs, 0);
        Require.within("lower", lower, 0, MOST, "m/s");
        Require.within("upper", upper, 0, MOST, "m/s");
    }

    /** {@return rms velocity of the larger of the first two lines in m/s, of those that stand; 0 if none does} */
    public double largest() {
        return Math.max(lowerStands ? lower : 0, upperStands ? upper : 0);
    }

    /** Returns what they are, as in {@code 3 pairs at shaft speed beside gear mesh, stage 1}. */
    @Override
    public String toString() {
        return pairs + (pairs == 1 ? " pair at " : " pairs at ") + spacing.name() + " beside " + carrier.name() + ", up to "
                + Digits.significant(1e3 * largest(), 3) + " mm/s rms";
    }
}
