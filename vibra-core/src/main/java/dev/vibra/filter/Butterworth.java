package dev.vibra.filter;

import dev.vibra.internal.Require;

/**
 * Butterworth low-pass and high-pass filters: {@code |H(f)|² = 1 / (1 + (f/fc)^±2n)}, -3.01 dB at the corner.
 *
 * <p>The bilinear transform bends the frequency axis: with the corner put right, the response is exact at zero, at the
 * corner and at half the sample rate, and falls faster than the formula between corner and half the sample rate. Where the
 * analogue response itself is wanted up there, as by ISO 2954, see {@code dev.vibra.integration.BandLimitingChain}.
 *
 * @see "Oppenheim and Schafer, Discrete-Time Signal Processing, 3rd ed. 2010, sections 7.2.1 and B.1"
 */
public final class Butterworth {
    private static final int HIGHEST_ORDER = 20;

    private Butterworth() {}

    /**
     * Designs a low-pass filter.
     *
     * @param order order, 1 to 20
     * @param cornerHertz frequency of -3.01 dB in Hz, above zero and below half the sample rate
     * @param sampleRateHertz sample rate in Hz, above zero
     * @return the filter as sections, the pair of poles nearest to the unit circle last
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static SectionCascade lowPass(int order, double cornerHertz, double sampleRateHertz) {
        return design(order, cornerHertz, sampleRateHertz, 1);
    }

    /**
     * Designs a high-pass filter.
     *
     * @param order order, 1 to 20
     * @param cornerHertz frequency of -3.01 dB in Hz, above zero and below half the sample rate
     * @param sampleRateHertz sample rate in Hz, above zero
     * @return the filter as sections, the pair of poles nearest to the unit circle last
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static SectionCascade highPass(int order, double cornerHertz, double sampleRateHertz) {
        return design(order, cornerHertz, sampleRateHertz, -1);
    }

    /** The zeros of the low-pass lie at z = -1, those of the high-pass at z = 1: the sign of b1. */
    private static SectionCascade design(int order, double corner, double sampleRate, int zeroSign) {
        requireCorner(order, corner, sampleRate);
        double warped = Math.tan(Math.PI * corner / sampleRate);
        double[][] sections = new double[(order + 1) / 2][];
        int next = 0;
        if (order % 2 == 1) {
            sections[next++] = firstOrder(warped, zeroSign);
        }
        for (int pair = order / 2; pair >= 1; pair--) {
            sections[next++] = secondOrder(warped, damping(order, pair), zeroSign);
        }
        return SectionCascade.of(sections);
    }

    static void requireCorner(int order, double corner, double sampleRate) {
        if (order < 1 || order > HIGHEST_ORDER) {
            throw new IllegalArgumentException("order must be from 1 to " + HIGHEST_ORDER + ": " + order);
        }
        Require.positive("sampleRateHertz", sampleRate, "Hz");
        if (!(corner > 0 && corner < sampleRate / 2)) {
            throw Require.failure("cornerHertz", "above 0 and below half the sample rate, " + sampleRate / 2 + " Hz",
                    corner);
        }
    }

    /** Half of 1/Q of a pole pair: the sine of its angle from the imaginary axis; pair 1 has the least damping. */
    static double damping(int order, int pair) {
        return Math.sin(Math.PI * (2 * pair - 1) / (2.0 * order));
    }

    private static double[] firstOrder(double k, int zeroSign) {
        double gain = (zeroSign > 0 ? k : 1) / (k + 1);
        return new double[] {gain, zeroSign * gain, 0, 1, (k - 1) / (k + 1), 0};
    }

    private static double[] secondOrder(double k, double zeta, int zeroSign) {
        double scale = 1 / (1 + 2 * zeta * k + k * k);
        double gain = (zeroSign > 0 ? k * k : 1) * scale;
        return new double[] {gain, 2 * zeroSign * gain, gain, 1, 2 * (k * k - 1) * scale,
            (1 - 2 * zeta * k + k * k) * scale};
    }
}
