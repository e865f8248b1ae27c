package dev.vibra.filter;

/**
 * Butterworth low-pass and high-pass filters: {@code |H(f)|² = 1 / (1 + (f/fc)^±2n)}, -3.01 dB at the corner.
 *
 * <p>The bilinear transform bends the frequency axis: with the corner put right, the response is exact at zero and at
 * the corner; beyond it, it falls faster than the formula and a low-pass is zero at half the sample rate. Where the
 * analogue response itself is wanted up there, as by ISO 2954, see {@code dev.vibra.integration.BandLimitingChain}.
 *
 * @see "Oppenheim and Schafer, Discrete-Time Signal Processing, 3rd ed. 2010, sections 7.2.1 and B.1"
 */
public final class Butterworth {
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
        return FilterDesign.butterworth(order).lowPass(cornerHertz, sampleRateHertz);
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
        return FilterDesign.butterworth(order).highPass(cornerHertz, sampleRateHertz);
    }
}
