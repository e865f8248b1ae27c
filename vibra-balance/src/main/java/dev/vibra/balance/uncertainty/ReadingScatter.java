package dev.vibra.balance.uncertainty;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * Scatter of one reading: standard deviation of its amplitude as a share, and of its phase.
 *
 * @param amplitudeShare standard deviation of the amplitude over the amplitude, finite, zero or more
 * @param phaseDegrees standard deviation of the phase in degrees, finite, zero or more
 */
public record ReadingScatter(double amplitudeShare, double phaseDegrees) implements Serializable {
    /**
     * Checks the values.
     *
     * @param amplitudeShare standard deviation of the amplitude over the amplitude, finite, zero or more
     * @param phaseDegrees standard deviation of the phase in degrees, finite, zero or more
     */
    public ReadingScatter {
        Require.notNegative("scatter of the amplitude", amplitudeShare, "");
        Require.notNegative("scatter of the phase", phaseDegrees, "°");
    }

    /**
     * Makes a scatter.
     *
     * @param amplitudeShare standard deviation of the amplitude over the amplitude, finite, zero or more
     * @param phaseDegrees standard deviation of the phase in degrees, finite, zero or more
     * @return the scatter
     * @throws IllegalArgumentException if a value is out of range
     */
    public static ReadingScatter of(double amplitudeShare, double phaseDegrees) {
        return new ReadingScatter(amplitudeShare, phaseDegrees);
    }

    /**
     * Returns the deviation of one standard deviation along the reading.
     *
     * @param reading reading
     * @return vector along the reading
     */
    public Phasor along(Phasor reading) {
        return reading.times(amplitudeShare);
    }

    /**
     * Returns the deviation of one standard deviation across the reading.
     *
     * @param reading reading
     * @return vector across the reading
     */
    public Phasor across(Phasor reading) {
        return reading.times(new Phasor(0, Math.toRadians(phaseDegrees)));
    }

    /** Returns both standard deviations. */
    @Override
    public String toString() {
        return "scatter " + Digits.compact(amplitudeShare * 100, 3) + " %, " + Digits.compact(phaseDegrees, 3)
                + "° (one standard deviation)";
    }
}
