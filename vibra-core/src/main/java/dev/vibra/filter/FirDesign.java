package dev.vibra.filter;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.window.Window;
import java.util.Objects;

/**
 * Non-recursive filters of linear phase by the window method: the impulse response of the ideal filter, cut to a number
 * of taps and weighted by a window; scaled to gain 1 at the middle of the (first) pass band.
 *
 * @see "Oppenheim and Schafer, Discrete-Time Signal Processing, 3rd ed. 2010, section 7.5"
 */
public final class FirDesign {
    private static final int MOST_TAPS = 1 << 22;

    private FirDesign() {}

    /**
     * Designs a low-pass filter.
     *
     * @param taps number of taps, 1 to 2²²; an odd number delays by a whole number of samples
     * @param cornerHertz frequency of half amplitude in Hz, above zero and below half the sample rate
     * @param sampleRateHertz sample rate in Hz, above zero
     * @param window window; Hamming is the usual choice
     * @return the filter
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static FirFilter lowPass(int taps, double cornerHertz, double sampleRateHertz, Window window) {
        return design(taps, sampleRateHertz, window, 0, 0, corner("cornerHertz", cornerHertz, sampleRateHertz));
    }

    /**
     * Designs a high-pass filter.
     *
     * @param taps number of taps, odd, up to 2²²: an even number has no gain at half the sample rate
     * @param cornerHertz frequency of half amplitude in Hz, above zero and below half the sample rate
     * @param sampleRateHertz sample rate in Hz, above zero
     * @param window window; Hamming is the usual choice
     * @return the filter
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static FirFilter highPass(int taps, double cornerHertz, double sampleRateHertz, Window window) {
        return design(requireOdd(taps), sampleRateHertz, window, 1,
                corner("cornerHertz", cornerHertz, sampleRateHertz), 1);
    }

    /**
     * Designs a band-pass filter.
     *
     * @param taps number of taps, 1 to 2²²
     * @param band frequencies of half amplitude in Hz, above zero and below half the sample rate
     * @param sampleRateHertz sample rate in Hz, above zero
     * @param window window; Hamming is the usual choice
     * @return the filter
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static FirFilter bandPass(int taps, Band band, double sampleRateHertz, Window window) {
        double lower = lower(Objects.requireNonNull(band, "band"), sampleRateHertz);
        double upper = upper(band, sampleRateHertz);
        return design(taps, sampleRateHertz, window, 0.5 * (lower + upper), lower, upper);
    }

    /**
     * Designs a band-stop filter.
     *
     * @param taps number of taps, odd, up to 2²²
     * @param band frequencies of half amplitude in Hz, above zero and below half the sample rate
     * @param sampleRateHertz sample rate in Hz, above zero
     * @param window window; Hamming is the usual choice
     * @return the filter
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static FirFilter bandStop(int taps, Band band, double sampleRateHertz, Window window) {
        Objects.requireNonNull(band, "band");
        return design(requireOdd(taps), sampleRateHertz, window, 0, 0, lower(band, sampleRateHertz),
                upper(band, sampleRateHertz), 1);
    }

    /** Edges are pass bands, lower and upper end in turn, in fractions of half the sample rate. */
    private static FirFilter design(int taps, double sampleRate, Window window, double unityAt, double... edges) {
        Require.count("taps", taps, 1, MOST_TAPS);
        Objects.requireNonNull(window, "window");
        double[] h = window.closedSamples(taps);
        double middle = 0.5 * (taps - 1);
        double gain = 0;
        for (int i = 0; i < taps; i++) {
            double m = i - middle;
            double ideal = 0;
            for (int e = 0; e < edges.length; e += 2) {
                ideal += edges[e + 1] * sinc(edges[e + 1] * m) - edges[e] * sinc(edges[e] * m);
            }
            h[i] *= ideal;
            gain += h[i] * Math.cos(Math.PI * m * unityAt);
        }
        for (int i = 0; i < taps; i++) {
            h[i] /= gain;
        }
        return FirFilter.of(h);
    }

    private static double sinc(double x) {
        return x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    }

    private static int requireOdd(int taps) {
        if (taps < 1 || taps % 2 == 0) {
            throw new IllegalArgumentException("taps must be odd to pass half the sample rate: " + taps);
        }
        return taps;
    }

    private static double lower(Band band, double sampleRate) {
        return corner("lowest frequency of the band", band.lowestHertz(), sampleRate);
    }

    private static double upper(Band band, double sampleRate) {
        return corner("highest frequency of the band", band.highestHertz(), sampleRate);
    }

    private static double corner(String name, double hertz, double sampleRate) {
        Require.positive("sampleRateHertz", sampleRate, "Hz");
        if (!(hertz > 0 && hertz < sampleRate / 2)) {
            throw Require.failure(name, "above 0 and below half the sample rate, " + sampleRate / 2 + " Hz", hertz);
        }
        return 2 * hertz / sampleRate;
    }
}
