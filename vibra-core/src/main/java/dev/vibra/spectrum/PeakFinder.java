package dev.vibra.spectrum;

import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Queue;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Local maxima of a spectrum and their place between the bins.
 *
 * <p>For an isolated sine at distance d (in bins, -0.5 to 0.5) from the highest line, the difference of the two
 * neighbours over that line is a known, rising function of d: {@code (|W(1-d)| - |W(1+d)|) / |W(d)|} with the window's
 * response W. It is solved for d; the amplitude is then divided by {@code |W(d)|}. Reading velocity or displacement,
 * peaks are found and interpolated on the measured lines and converted at the interpolated frequency, so that the slope
 * 1/f doesn't bias them. Lines within half a main lobe of 0 Hz and of half the sample rate are left out: they meet
 * their own image. What the highest line of a maximum allows at most tells which maxima can be among the largest; only
 * those are solved.
 */
final class PeakFinder {
    private static final double ACCURACY = 1e-9;
    /** Lines below this part of the largest mean square are rounding. */
    private static final double ROUNDING = 1e-24;
    /** From its middle to half a bin aside a window's response falls, but for the ripple of flat-top windows. */
    private static final double RIPPLE = 0.99;
    private static final Comparator<SpectralPeak> LARGEST_FIRST = Comparator
            .comparingDouble((SpectralPeak peak) -> peak.level().si()).reversed()
            .thenComparingDouble(SpectralPeak::frequencyHertz);

    private final Spectrum spectrum;
    private final int first;
    private final int last;
    private final double least;
    private final double leastResponse;

    /** A local maximum, and what it can amount to at most, wherever within half a bin of its line it lies. */
    private record Maximum(int line, double most) {}

    PeakFinder(Spectrum spectrum) {
        this.spectrum = spectrum;
        first = (int) Math.ceil(spectrum.settings().window().mainLobeHalfWidth());
        last = spectrum.lines() - 1 - first;
        double largest = 0;
        for (int k = first; k <= last; k++) {
            largest = Math.max(largest, spectrum.measuredMeanSquare(k));
        }
        least = ROUNDING * largest;
        leastResponse = RIPPLE * Math.min(1, spectrum.settings().window().response(0.5));
    }

    /** The largest maxima between two frequencies, both included. */
    PeakList largest(int count, double fromHertz, double toHertz) {
        Queue<SpectralPeak> found = new PriorityQueue<>(LARGEST_FIRST.reversed());
        for (Maximum maximum : maxima(fromHertz, toHertz)) {
            if (found.size() == count && maximum.most() < found.element().level().si()) {
                break; // Neither this one nor any that follows can be larger than the least of those found.
            }
            SpectralPeak peak = interpolate(maximum.line());
            if (peak.frequencyHertz() >= fromHertz && peak.frequencyHertz() <= toHertz) {
                found.add(peak);
            }
            if (found.size() > count) {
                found.remove();
            }
        }
        return new PeakList(found.stream().sorted(LARGEST_FIRST).toList());
    }

    /** Local maxima that may lie between two frequencies, the one that may be largest first. */
    private List<Maximum> maxima(double fromHertz, double toHertz) {
        int from = (int) Math.max(first, Math.floor(fromHertz / spectrum.resolutionHertz()) - 1);
        int to = (int) Math.min(last, Math.ceil(toHertz / spectrum.resolutionHertz()) + 1);
        List<Maximum> maxima = new ArrayList<>();
        for (int k = from; k <= to; k++) {
            if (isPeak(k)) {
                double conversion = Math.max(spectrum.conversion((k - 0.5) * spectrum.resolutionHertz()),
                        spectrum.conversion((k + 0.5) * spectrum.resolutionHertz()));
                maxima.add(new Maximum(k, Math.sqrt(spectrum.measuredMeanSquare(k)) / leastResponse * conversion));
            }
        }
        maxima.sort(Comparator.comparingDouble(Maximum::most).reversed());
        return maxima;
    }

    private boolean isPeak(int k) {
        double here = spectrum.measuredMeanSquare(k);
        return here > least && here > spectrum.measuredMeanSquare(k - 1) && here >= spectrum.measuredMeanSquare(k + 1);
    }

    private SpectralPeak interpolate(int k) {
        double below = Math.sqrt(spectrum.measuredMeanSquare(k - 1));
        double here = Math.sqrt(spectrum.measuredMeanSquare(k));
        double above = Math.sqrt(spectrum.measuredMeanSquare(k + 1));
        double distance = distance((above - below) / here);
        double hertz = (k + distance) * spectrum.resolutionHertz();
        double rms = here / spectrum.settings().window().response(distance) * spectrum.conversion(hertz);
        return new SpectralPeak(hertz, Level.ofSi(rms, spectrum.quantity(), Detector.RMS)
                .by(LevelMethod.SPECTRUM_LINE));
    }

    /** Solves for the distance; a difference beyond what an isolated sine can give is met at half a bin. */
    private double distance(double difference) {
        UnivariateFunction excess = d -> slope(d) - difference;
        if (!(excess.value(-0.5) < 0)) {
            return -0.5;
        }
        if (!(excess.value(0.5) > 0)) {
            return 0.5;
        }
        return new BrentSolver(ACCURACY).solve(100, excess, -0.5, 0.5);
    }

    private double slope(double d) {
        var window = spectrum.settings().window();
        return (window.response(1 - d) - window.response(1 + d)) / window.response(d);
    }
}
