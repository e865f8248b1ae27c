package dev.vibra.spectrum;

import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
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
 * their own image.
 */
final class PeakFinder {
    private static final double ACCURACY = 1e-9;
    /** Lines below this part of the largest mean square are rounding. */
    private static final double ROUNDING = 1e-24;

    private final Spectrum spectrum;
    private final int first;
    private final int last;
    private final double least;

    PeakFinder(Spectrum spectrum) {
        this.spectrum = spectrum;
        first = (int) Math.ceil(spectrum.settings().window().mainLobeHalfWidth());
        last = spectrum.lines() - 1 - first;
        double largest = 0;
        for (int k = first; k <= last; k++) {
            largest = Math.max(largest, spectrum.measuredMeanSquare(k));
        }
        least = ROUNDING * largest;
    }

    PeakList largest(int count) {
        List<SpectralPeak> found = new ArrayList<>();
        for (int k = first; k <= last; k++) {
            if (isPeak(k)) {
                found.add(interpolate(k));
            }
        }
        found.sort(Comparator.comparingDouble((SpectralPeak p) -> p.level().si()).reversed());
        return new PeakList(found.subList(0, Math.min(count, found.size())));
    }

    Optional<SpectralPeak> near(double hertz, double tolerance) {
        int from = (int) Math.max(first, Math.floor((hertz - tolerance) / spectrum.resolutionHertz()) - 1);
        int to = (int) Math.min(last, Math.ceil((hertz + tolerance) / spectrum.resolutionHertz()) + 1);
        SpectralPeak best = null;
        for (int k = from; k <= to; k++) {
            if (isPeak(k)) {
                SpectralPeak peak = interpolate(k);
                boolean close = Math.abs(peak.frequencyHertz() - hertz) <= tolerance;
                if (close && (best == null || peak.level().si() > best.level().si())) {
                    best = peak;
                }
            }
        }
        return Optional.ofNullable(best);
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
