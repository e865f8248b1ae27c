package dev.vibra.spectrum;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.window.Window;
import java.util.Objects;

/**
 * How the largest peaks of averaged spectra are found and placed between the bins. Immutable, shared by threads;
 * allocates nothing while it finds.
 *
 * <pre>{@code
 * SpectrumPlan spectrum = SpectrumPlan.of(8192, Window.hann());
 * PeakPlan peaks = PeakPlan.of(spectrum, 25_600);
 * int found = peaks.largest(meanSquares, 20, hertz, rms);
 * }</pre>
 *
 * <p>For an isolated sine at distance d (in bins, -0.5 to 0.5) from the highest line, the difference of the two
 * neighbours over that line is a known, rising function of d. It is solved for d; the amplitude is then divided by the
 * window's response at d. Read as velocity or displacement, peaks are found and interpolated on the measured lines and
 * converted at the interpolated frequency, so that the slope 1/f doesn't bias them. Lines within half a main lobe of
 * 0 Hz and of half the sample rate are left out: they meet their own image. What the highest line of a maximum allows
 * at most tells which maxima can be among the largest; only those are solved.
 *
 * @see Spectrum#peaks(int)
 */
public final class PeakPlan {
    /** Lines below this part of the largest mean square are rounding. */
    private static final double ROUNDING = 1e-24;
    /** From its middle to half a bin aside a window's response falls, but for the ripple of flat-top windows. */
    private static final double RIPPLE = 0.99;

    private final int lines;
    private final double resolutionHertz;
    private final LinePlace place;
    private final int first;
    private final int last;
    private final double most;
    private final double least;
    private final double fromHertz;
    private final double toHertz;
    private final int integrations;

    private PeakPlan(int lines, double resolutionHertz, Window window) {
        this.lines = lines;
        this.resolutionHertz = Require.positive("resolutionHertz", resolutionHertz, "Hz");
        place = new LinePlace(window);
        first = (int) Math.ceil(window.mainLobeHalfWidth());
        last = lines - 1 - first;
        double halfAside = window.response(0.5);
        most = square(1 / (RIPPLE * Math.min(1, halfAside)));
        least = square(RIPPLE / Math.max(1, halfAside));
        fromHertz = 0;
        toHertz = Double.POSITIVE_INFINITY;
        integrations = 0;
    }

    private PeakPlan(PeakPlan other, double fromHertz, double toHertz, int integrations) {
        lines = other.lines;
        resolutionHertz = other.resolutionHertz;
        place = other.place;
        first = other.first;
        last = other.last;
        most = other.most;
        least = other.least;
        this.fromHertz = fromHertz;
        this.toHertz = toHertz;
        this.integrations = integrations;
    }

    private static double square(double value) {
        return value * value;
    }

    /**
     * Makes a plan for peaks anywhere, in the unit of the lines.
     *
     * @param lines number of lines of the spectra, at least 1
     * @param resolutionHertz distance of the lines in Hz, finite, above zero
     * @param window window function of the blocks
     * @return the plan
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static PeakPlan of(int lines, double resolutionHertz, Window window) {
        return new PeakPlan(Require.atLeast("lines", lines, 1), resolutionHertz,
                Objects.requireNonNull(window, "window"));
    }

    /**
     * Makes a plan for peaks anywhere, in the unit of the lines.
     *
     * @param plan how the lines are made
     * @param sampleRateHertz sample rate of the blocks in Hz, finite, above zero
     * @return the plan
     * @throws IllegalArgumentException if the rate is out of range
     */
    public static PeakPlan of(SpectrumPlan plan, double sampleRateHertz) {
        Objects.requireNonNull(plan, "plan");
        return of(plan.lines(), Require.positive("sampleRateHertz", sampleRateHertz, "Hz") / plan.length(),
                plan.window());
    }

    /**
     * Returns this plan for peaks within a band only.
     *
     * @param band band in which the peaks shall lie, its ends included
     * @return the new plan
     */
    public PeakPlan withBand(Band band) {
        return between(Objects.requireNonNull(band, "band").lowestHertz(), band.highestHertz());
    }

    PeakPlan between(double from, double to) {
        return new PeakPlan(this, from, to, integrations);
    }

    /**
     * Returns this plan for lines that are read as their integral: of an acceleration, 1 reads velocity and 2
     * displacement.
     *
     * @param times how often the peaks are integrated, -2 to 2; below zero they are differentiated
     * @return the new plan
     * @throws IllegalArgumentException if the number is out of range
     */
    public PeakPlan withIntegrations(int times) {
        return new PeakPlan(this, fromHertz, toHertz, Require.count("times", times, -2, 2));
    }

    /**
     * Returns the number of lines.
     *
     * @return lines from 0 Hz to half the sample rate, at least 1
     */
    public int lines() {
        return lines;
    }

    /**
     * Finds the largest peaks.
     *
     * @param meanSquares {@link #lines()} mean squares as {@link SpectrumPlan.Worker#addMeanSquares} makes them, over
     *     the number of blocks; finite, zero or more (a NaN is no peak); left alone
     * @param count largest number of peaks wanted, at least 1
     * @param hertz receives their frequencies in Hz, the peak of the largest rms value first
     * @param rms receives their rms values
     * @return number of peaks found, at most {@code count}
     * @throws IllegalArgumentException if the count is out of range or an array is too short
     */
    public int largest(double[] meanSquares, int count, double[] hertz, double[] rms) {
        Require.range("meanSquares", meanSquares, 0, lines);
        Require.atLeast("count", count, 1);
        Require.range("hertz", hertz, 0, count);
        Require.range("rms", rms, 0, count);
        double rounding = ROUNDING * largest(meanSquares);
        double enough = enough(meanSquares, count, rms, rounding);
        int found = 0;
        for (int k = from(-1); k <= to(1); k++) {
            if (!(meanSquares[k] * most < enough * steepness(k - 0.5, k + 0.5))
                    && isPeak(meanSquares, k, rounding)) {
                found = take(meanSquares, k, count, hertz, rms, found);
                enough = found == count ? Math.max(enough, square(rms[0])) : enough;
            }
        }
        PeakHeap.sort(hertz, rms, found);
        return found;
    }

    /** Interpolates a maximum and keeps it if it is in range and among the largest. */
    private int take(double[] meanSquares, int k, int count, double[] hertz, double[] rms, int found) {
        double here = Math.sqrt(meanSquares[k]);
        double distance = place.distance((Math.sqrt(meanSquares[k + 1]) - Math.sqrt(meanSquares[k - 1])) / here);
        double at = (k + distance) * resolutionHertz;
        if (!(at >= fromHertz && at <= toHertz)) {
            return found;
        }
        double size = here / place.response(distance)
                * (integrations == 0 ? 1 : Math.pow(2 * Math.PI * at, -integrations));
        return PeakHeap.add(hertz, rms, found, count, at, size);
    }

    private double largest(double[] meanSquares) {
        double largest = 0;
        for (int k = first; k <= last; k++) {
            largest = meanSquares[k] > largest ? meanSquares[k] : largest;
        }
        return largest;
    }

    /**
     * A mean square that as many maxima as are wanted reach at least, those near the ends of the range left aside; 0 if
     * there are fewer.
     */
    private double enough(double[] meanSquares, int count, double[] heap, double rounding) {
        int held = 0;
        for (int k = from(2); k <= to(-2); k++) {
            double size = meanSquares[k] * least;
            if ((held < count || size > heap[0] * steepness(k + 0.5, k - 0.5)) && isPeak(meanSquares, k, rounding)) {
                double value = Math.max(0, size / steepness(k + 0.5, k - 0.5));
                held = held < count ? PeakHeap.push(heap, held, value) : PeakHeap.replace(heap, held, value);
            }
        }
        return held < count ? 0 : heap[0];
    }

    /** The square that the mean squares are divided by where it is largest, or least, between two places in bins. */
    private double steepness(double bins, double differentiated) {
        if (integrations == 0) {
            return 1;
        }
        double square = square(2 * Math.PI * resolutionHertz * (integrations > 0 ? bins : differentiated));
        double power = integrations * integrations == 1 ? square : square * square;
        return integrations > 0 ? power : 1 / power;
    }

    private int from(int more) {
        return (int) Math.max(first, Math.floor(fromHertz / resolutionHertz) + more);
    }

    private int to(int more) {
        return (int) Math.min(last, Math.ceil(toHertz / resolutionHertz) + more);
    }

    private static boolean isPeak(double[] meanSquares, int k, double rounding) {
        double here = meanSquares[k];
        return here > rounding && here > meanSquares[k - 1] && here >= meanSquares[k + 1];
    }

    /** Returns lines and resolution. */
    @Override
    public String toString() {
        return "peaks of " + lines + " lines, " + Digits.significant(resolutionHertz, 3) + " Hz apart";
    }
}
