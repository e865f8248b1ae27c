package dev.vibra.balance.reading;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * How far single readings may stray from their mean before a vector is called unsteady.
 *
 * <p>The defaults, 10 % and 10°, are common practice, no source.
 *
 * @param amplitudeShare allowed distance of an amplitude from that of the mean, as a share of it, above zero up to 1000
 * @param phaseDegrees allowed distance of a phase from that of the mean in degrees, above 0 up to 180
 * @param floor distance that is always allowed, in the unit and detector of the readings, finite, zero or more
 */
public record ScatterLimits(double amplitudeShare, double phaseDegrees, double floor) implements Serializable {
    private static final double LARGEST_SHARE = 1000;

    /**
     * Checks the values.
     *
     * @param amplitudeShare allowed distance of an amplitude from that of the mean, as a share of it, above
     *     zero up to 1000
     * @param phaseDegrees allowed distance of a phase from that of the mean in degrees, above 0 up to 180
     * @param floor distance that is always allowed, in the unit and detector of the readings, finite, zero or more
     */
    public ScatterLimits {
        if (!(Require.positive("allowed share of the amplitude", amplitudeShare, "") <= LARGEST_SHARE)) {
            throw Require.failure("allowed share of the amplitude", "at most " + LARGEST_SHARE, amplitudeShare);
        }
        if (!(phaseDegrees > 0 && phaseDegrees <= 180)) {
            throw Require.failure("allowed phase", "above 0 and at most 180°", phaseDegrees);
        }
        Require.notNegative("floor", floor, "");
    }

    /**
     * Returns 10 % of the amplitude and 10°, common practice, no source.
     *
     * @return the usual limits
     */
    public static ScatterLimits withDefaults() {
        return new ScatterLimits(0.10, 10, 0);
    }

    /**
     * Sets a distance that is always allowed: after a good balance the vector is small, and what other machines and the
     * instrument add to it is no longer small beside it.
     *
     * @param newFloor distance in the unit and detector of the readings, finite, zero or more
     * @return a changed copy
     * @throws IllegalArgumentException if the value is out of range
     */
    public ScatterLimits withFloor(double newFloor) {
        return new ScatterLimits(amplitudeShare, phaseDegrees, newFloor);
    }

    /** Returns both limits. */
    @Override
    public String toString() {
        return "within " + Digits.compact(amplitudeShare * 100, 3) + " % and " + Digits.compact(phaseDegrees, 3) + "°"
                + (floor > 0 ? ", or " + Digits.compact(floor, 3) : "");
    }
}
