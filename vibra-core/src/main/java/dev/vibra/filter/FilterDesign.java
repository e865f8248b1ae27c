package dev.vibra.filter;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import java.io.Serializable;
import java.util.Locale;
import java.util.Objects;

/**
 * Kind and order of a recursive filter; what it passes is chosen last.
 *
 * <p>The bilinear transform bends the frequency axis: corners lie where they were asked, other frequencies are drawn
 * together towards half the sample rate. For Butterworth the corner is the frequency of -3.01 dB, for Chebyshev I the
 * end of the ripple, for Chebyshev II the frequency at which the stop-band attenuation is reached.
 *
 * @see "Oppenheim and Schafer, Discrete-Time Signal Processing, 3rd ed. 2010, section 7.2 and appendix B"
 */
public final class FilterDesign implements Serializable {
    private static final long serialVersionUID = 1;
    private static final int HIGHEST_ORDER = 20;
    /** Below this the poles of a prototype run away to zero or infinity. */
    private static final double LEAST_DECIBELS = 1e-6;

    /** Families of filters. */
    private enum Family { BUTTERWORTH, CHEBYSHEV_1, CHEBYSHEV_2 }

    private final Family family;
    private final int order;
    private final double decibels;

    private FilterDesign(Family family, int order, double decibels) {
        this.family = Objects.requireNonNull(family, "family");
        this.order = Require.count("order", order, 1, HIGHEST_ORDER);
        this.decibels = switch (family) {
            case BUTTERWORTH -> Require.within("decibels", decibels, 0, 0, "dB");
            case CHEBYSHEV_1 -> Require.within("rippleDecibels", decibels, LEAST_DECIBELS, 20, "dB");
            case CHEBYSHEV_2 -> Require.within("attenuationDecibels", decibels, LEAST_DECIBELS, 200, "dB");
        };
    }

    private Object readResolve() {
        return new FilterDesign(family, order, decibels);
    }

    /**
     * Chooses a Butterworth filter: flat in the pass band, {@code |H|² = 1/(1 + (f/fc)^2n)}.
     *
     * @param order order of the low-pass prototype, 1 to 20; band filters have twice as many poles
     * @return the design
     * @throws IllegalArgumentException if the order is out of range
     */
    public static FilterDesign butterworth(int order) {
        return new FilterDesign(Family.BUTTERWORTH, order, 0);
    }

    /**
     * Chooses a Chebyshev filter of the first kind: equal ripple in the pass band, steeper than Butterworth.
     *
     * @param order order of the low-pass prototype, 1 to 20
     * @param rippleDecibels depth of the ripple in dB, 1e-6 to 20
     * @return the design
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static FilterDesign chebyshev1(int order, double rippleDecibels) {
        return new FilterDesign(Family.CHEBYSHEV_1, order, rippleDecibels);
    }

    /**
     * Chooses a Chebyshev filter of the second kind: flat in the pass band, equal ripple in the stop band.
     *
     * @param order order of the low-pass prototype, 1 to 20
     * @param attenuationDecibels least attenuation of the stop band in dB, 1e-6 to 200
     * @return the design
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static FilterDesign chebyshev2(int order, double attenuationDecibels) {
        return new FilterDesign(Family.CHEBYSHEV_2, order, attenuationDecibels);
    }

    /**
     * Designs a low-pass filter.
     *
     * @param cornerHertz corner in Hz, above zero and below half the sample rate
     * @param sampleRateHertz sample rate in Hz, above zero
     * @return the filter
     * @throws IllegalArgumentException if an argument is out of range
     */
    public SectionCascade lowPass(double cornerHertz, double sampleRateHertz) {
        return prototype().lowPass(warped("cornerHertz", cornerHertz, sampleRateHertz)).sampled();
    }

    /**
     * Designs a high-pass filter.
     *
     * @param cornerHertz corner in Hz, above zero and below half the sample rate
     * @param sampleRateHertz sample rate in Hz, above zero
     * @return the filter
     * @throws IllegalArgumentException if an argument is out of range
     */
    public SectionCascade highPass(double cornerHertz, double sampleRateHertz) {
        return prototype().highPass(warped("cornerHertz", cornerHertz, sampleRateHertz)).sampled();
    }

    /**
     * Designs a band-pass filter.
     *
     * @param band corners in Hz, above zero and below half the sample rate
     * @param sampleRateHertz sample rate in Hz, above zero
     * @return the filter
     * @throws IllegalArgumentException if an argument is out of range
     */
    public SectionCascade bandPass(Band band, double sampleRateHertz) {
        Objects.requireNonNull(band, "band");
        return prototype().bandPass(warped("lowest frequency of the band", band.lowestHertz(), sampleRateHertz),
                warped("highest frequency of the band", band.highestHertz(), sampleRateHertz)).sampled();
    }

    /**
     * Designs a band-stop filter.
     *
     * @param band corners in Hz, above zero and below half the sample rate
     * @param sampleRateHertz sample rate in Hz, above zero
     * @return the filter
     * @throws IllegalArgumentException if an argument is out of range
     */
    public SectionCascade bandStop(Band band, double sampleRateHertz) {
        Objects.requireNonNull(band, "band");
        return prototype().bandStop(warped("lowest frequency of the band", band.lowestHertz(), sampleRateHertz),
                warped("highest frequency of the band", band.highestHertz(), sampleRateHertz)).sampled();
    }

    private AnalogPrototype prototype() {
        return switch (family) {
            case BUTTERWORTH -> AnalogPrototype.butterworth(order);
            case CHEBYSHEV_1 -> AnalogPrototype.chebyshev1(order, decibels);
            case CHEBYSHEV_2 -> AnalogPrototype.chebyshev2(order, decibels);
        };
    }

    private static double warped(String name, double hertz, double sampleRate) {
        Require.positive("sampleRateHertz", sampleRate, "Hz");
        if (!(hertz > 0 && hertz < sampleRate / 2)) {
            throw Require.failure(name, "above 0 and below half the sample rate, " + sampleRate / 2 + " Hz", hertz);
        }
        return 2 * Math.tan(Math.PI * hertz / sampleRate);
    }

    /** Returns family and order. */
    @Override
    public String toString() {
        String name = switch (family) {
            case BUTTERWORTH -> "Butterworth";
            case CHEBYSHEV_1 -> "Chebyshev I, " + decibels + " dB ripple";
            case CHEBYSHEV_2 -> "Chebyshev II, " + decibels + " dB attenuation";
        };
        return String.format(Locale.ROOT, "%s, order %d", name, order);
    }
}
