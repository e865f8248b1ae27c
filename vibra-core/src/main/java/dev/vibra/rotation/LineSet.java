package dev.vibra.rotation;

import dev.vibra.lines.NoiseFloor;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.spectrum.Spectrum;
import java.util.Arrays;

/**
 * The lines of a spectrum that noise alone hardly makes, in rising order: frequency, size (velocity where a motion was
 * measured) and how far each stands over the floor. Side lobes of far stronger lines are left out.
 */
final class LineSet {
    private static final double FALSE_ALARM = 1e-4;
    /** A line over a floor of zero, as of a tone that was computed, stands as far over it as this. */
    private static final double FARTHEST = 1e6;
    private static final int MASKING = 30;

    private final Spectrum spectrum;
    private final double resolution;
    private final double averages;
    private final double highest;
    private final double[] hertz;
    private final double[] size;
    private final double[] over;

    private LineSet(Spectrum spectrum, NoiseFloor floor, double[] amplitude, int[] peaks) {
        this.spectrum = spectrum;
        resolution = spectrum.resolutionHertz();
        averages = floor.noise().averages();
        highest = spectrum.frequencyHertz(spectrum.lines() - 1);
        hertz = new double[peaks.length];
        size = new double[peaks.length];
        over = new double[peaks.length];
        boolean accelerating = spectrum.quantity() == Quantity.ACCELERATION;
        boolean displaced = spectrum.quantity() == Quantity.DISPLACEMENT;
        for (int i = 0; i < peaks.length; i++) {
            int k = peaks[i];
            hertz[i] = (k + shift(amplitude[k - 1], amplitude[k], amplitude[k + 1])) * resolution;
            size[i] = amplitude[k] * (accelerating ? 1 / hertz[i] : displaced ? hertz[i] : 1);
            over[i] = Math.min(FARTHEST, amplitude[k] / Math.sqrt(floor.meanSquare(k)));
        }
    }

    static LineSet of(Spectrum spectrum, NoiseFloor floor) {
        double least = floor.noise().ratioAt(Math.log(FALSE_ALARM));
        double[] amplitude = spectrum.amplitudes(Detector.RMS);
        int[] peaks = new int[amplitude.length];
        int count = 0;
        for (int k = 2; k < amplitude.length - 2; k++) {
            boolean peak = amplitude[k] > amplitude[k - 1] && amplitude[k] >= amplitude[k + 1];
            if (peak && amplitude[k] * amplitude[k] > least * floor.meanSquare(k)) {
                peaks[count++] = k;
            }
        }
        return new LineSet(spectrum, floor, amplitude, withoutSideLobes(amplitude, Arrays.copyOf(peaks, count)));
    }

    /** Top of the parabola through the logarithms; within 0.02 of a line for a Hann window. */
    private static double shift(double below, double here, double above) {
        double lower = Math.log(Math.max(below, 1e-9 * here));
        double upper = Math.log(Math.max(above, 1e-9 * here));
        return 0.5 * (upper - lower) / (2 * Math.log(here) - upper - lower);
    }

    /** Side lobes of a Hann window fall as 1/(πd³), d in lines; three times that is left to a wandering speed. */
    private static int[] withoutSideLobes(double[] amplitude, int[] peaks) {
        double[] sizes = Arrays.stream(peaks).mapToDouble(k -> amplitude[k]).sorted().toArray();
        double least = peaks.length == 0 ? 0 : sizes[Math.max(0, peaks.length - MASKING)];
        int[] masking = Arrays.stream(peaks).filter(k -> amplitude[k] >= least).toArray();
        return Arrays.stream(peaks).filter(k -> Arrays.stream(masking).allMatch(strong -> {
            double distance = Math.abs(k - strong);
            return distance == 0
                    || amplitude[k] * Math.PI * distance * distance * distance > 3 * amplitude[strong];
        })).toArray();
    }

    int count() {
        return hertz.length;
    }

    double resolutionHertz() {
        return resolution;
    }

    /** Half the sample rate. */
    double highestHertz() {
        return highest;
    }

    double hertz(int line) {
        return hertz[line];
    }

    /** Frequency of a line by the response of the window, which costs more and is better by up to 0.02 of a line. */
    double refinedHertz(int line) {
        return spectrum.peakNear(hertz[line], 0.6 * resolution).map(SpectralPeak::frequencyHertz).orElse(hertz[line]);
    }

    /** Amplitude as velocity, in some unit that is the same for all lines. */
    double size(int line) {
        return size[line];
    }

    /** Amplitude over the floor. */
    double over(int line) {
        return over[line];
    }

    /** Standard error of the frequency of a line in Hz: interpolation, and noise as for a tone in it. */
    double errorHertz(int line) {
        return resolution * Math.hypot(0.02, 0.5 / (over[line] * Math.sqrt(averages)));
    }

    /** Index of the first line at or above a frequency. */
    int from(double lowest) {
        int found = Arrays.binarySearch(hertz, lowest);
        return found < 0 ? -found - 1 : found;
    }

    /** Index of the line that stands farthest over the floor within a tolerance, or -1. */
    int near(double expected, double tolerance) {
        int best = -1;
        for (int i = from(expected - tolerance); i < hertz.length && hertz[i] <= expected + tolerance; i++) {
            best = best < 0 || over[i] > over[best] ? i : best;
        }
        return best;
    }

    /** Number of lines around a frequency that stand farther over the floor than given. */
    int strongerAround(double middle, double reach, double least) {
        int count = 0;
        for (int i = from(middle - reach); i < hertz.length && hertz[i] <= middle + reach; i++) {
            count += over[i] > least ? 1 : 0;
        }
        return count;
    }
}
