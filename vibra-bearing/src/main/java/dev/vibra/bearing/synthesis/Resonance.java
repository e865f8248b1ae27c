package dev.vibra.bearing.synthesis;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * Resonance of the structure between a bearing and a sensor that impacts ring.
 *
 * @param hertz undamped natural frequency in Hz, finite, above zero
 * @param dampingRatio damping ratio ζ, above 0, below 1
 * @param gain amplitude of its ringing over the peak that a defect is given, finite, above zero
 */
public record Resonance(double hertz, double dampingRatio, double gain) implements Serializable {
    private static final long serialVersionUID = 1;

    /**
     * Checks the values.
     *
     * @param hertz see the record
     * @param dampingRatio see the record
     * @param gain see the record
     */
    public Resonance {
        Require.positive("hertz", hertz, "Hz");
        if (!(dampingRatio > 0 && dampingRatio < 1)) {
            throw Require.failure("dampingRatio", "above 0 and below 1", dampingRatio);
        }
        Require.positive("gain", gain, "");
        Require.notNegative("energy of the ringing", energySeconds(hertz, dampingRatio, gain), "s");
    }

    private static double energySeconds(double hertz, double dampingRatio, double gain) {
        double decay = 2 * Math.PI * dampingRatio * hertz;
        return gain * gain * (1 - dampingRatio * dampingRatio) / (4 * decay);
    }

    /**
     * Returns the energy of the ringing after one impact of unit peak: {@code g²·∫ e^(-2at)·sin²(bt) dt =
     * g²·b²/(4a(a² + b²))} with {@code a = 2πζf} and {@code b = 2πf·√(1 - ζ²)}.
     *
     * @return energy in seconds: the power of a train of unit peak is its rate times this
     */
    public double energySeconds() {
        return energySeconds(hertz, dampingRatio, gain);
    }

    /** Returns the resonance, as in {@code 3000 Hz, damping 0.05, gain 0.7}. */
    @Override
    public String toString() {
        return Digits.compact(hertz, 5) + " Hz, damping " + Digits.compact(dampingRatio, 3) + ", gain "
                + Digits.compact(gain, 3);
    }
}
