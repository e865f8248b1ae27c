package dev.vibra.bearing.synthesis;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.synthesis.Synthesis;
import java.io.Serializable;
import java.util.Objects;

/**
 * How a sensor follows: as a first-order lag or as one degree of freedom, below whose natural frequency it is used.
 *
 * @param order 1 or 2
 * @param hertz frequency of half the power (order 1) or undamped natural frequency (order 2) in Hz, finite, above zero
 * @param dampingRatio damping ratio ζ of order 2, finite, above zero; without effect in order 1
 */
public record SensorResponse(int order, double hertz, double dampingRatio) implements Serializable {
    private static final long serialVersionUID = 1;

    /**
     * Checks the values.
     *
     * @param order see the record
     * @param hertz see the record
     * @param dampingRatio see the record
     */
    public SensorResponse {
        Require.within("order", order, 1, 2, "");
        Require.positive("hertz", hertz, "Hz");
        Require.positive("dampingRatio", dampingRatio, "");
    }

    /**
     * Makes a sensor that rolls off by 20 dB a decade.
     *
     * @param hertz frequency at which half the power passes, in Hz, finite, above zero
     * @return the response
     */
    public static SensorResponse firstOrder(double hertz) {
        return new SensorResponse(1, hertz, 1);
    }

    /**
     * Makes a sensor that rolls off by 40 dB a decade above its mounted resonance.
     *
     * @param hertz undamped natural frequency in Hz, finite, above zero
     * @param dampingRatio damping ratio ζ, finite, above zero; 0.707 for no peak
     * @return the response
     */
    public static SensorResponse secondOrder(double hertz, double dampingRatio) {
        return new SensorResponse(2, hertz, dampingRatio);
    }

    /**
     * Returns the share of the power at a frequency that the sensor shows.
     *
     * @param frequency frequency in Hz, finite, zero or more
     * @return square of the gain
     * @throws IllegalArgumentException if the frequency is out of range
     */
    public double power(double frequency) {
        double r = Math.min(1e75, Require.notNegative("frequency", frequency, "Hz") / hertz);
        double detuned = 1 - r * r;
        return order == 1 ? 1 / (1 + r * r) : 1 / (detuned * detuned + 4 * dampingRatio * dampingRatio * r * r);
    }

    /**
     * Passes a signal through the sensor.
     *
     * @param signal what the surface does
     * @return what the sensor shows
     */
    public Synthesis applyTo(Synthesis signal) {
        Objects.requireNonNull(signal, "signal");
        return order == 1 ? signal.firstOrder(hertz) : signal.secondOrder(hertz, dampingRatio);
    }

    /** Returns the response, as in {@code first order at 8000 Hz}. */
    @Override
    public String toString() {
        return order == 1 ? "first order at " + Digits.compact(hertz, 5) + " Hz"
                : "second order at " + Digits.compact(hertz, 5) + " Hz, damping " + Digits.compact(dampingRatio, 3);
    }
}
