package dev.vibra.lines;

import dev.vibra.internal.Require;
import dev.vibra.level.Percentiles;
import dev.vibra.quantity.Detector;
import dev.vibra.spectrum.Spectrum;
import java.io.Serializable;
import java.util.Arrays;
import org.apache.commons.math3.distribution.GammaDistribution;

/**
 * What the lines of a spectrum would read if there were noise alone: the running median of the mean squares over a
 * width of lines, turned into a mean by the ratio that noise has.
 *
 * <p>The mean square of a line of noise, averaged over n equivalent blocks, follows a gamma distribution of shape n.
 * Its median is below its mean (0.693 of it for n = 1). Lines of machines in less than about a third of the width leave
 * the median nearly alone.
 *
 * @see "J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, section 8.5.4 (chi-square of spectral estimates)"
 */
public final class NoiseFloor implements Serializable {
    private static final long serialVersionUID = 1;

    private final double[] meanSquares;
    private final double averages;
    private final double resolutionHertz;

    private NoiseFloor(Spectrum spectrum, int halfWidth) {
        averages = spectrum.equivalentAverages();
        resolutionHertz = spectrum.resolutionHertz();
        GammaDistribution gamma = new GammaDistribution(averages, 1 / averages);
        double medianOverMean = gamma.inverseCumulativeProbability(0.5);
        int lines = spectrum.lines();
        double[] squares = new double[lines];
        for (int k = 0; k < lines; k++) {
            double rms = spectrum.amplitude(k, Detector.RMS);
            squares[k] = rms * rms;
        }
        meanSquares = new double[lines];
        for (int k = 0; k < lines; k++) {
            int first = Math.max(1, Math.min(k - halfWidth, lines - 1 - 2 * halfWidth));
            int last = Math.min(lines - 1, Math.max(k + halfWidth, 2 * halfWidth));
            double[] around = Arrays.copyOfRange(squares, first, last + 1);
            meanSquares[k] = Percentiles.of(around).at(50) / medianOverMean;
        }
    }

    /**
     * Estimates the floor of a spectrum.
     *
     * @param spectrum spectrum with rms averaging
     * @param widthHertz width of the running median in Hz, at least 10 lines; wide against a peak, narrow against the
     *     slope of the floor
     * @return the floor
     * @throws IllegalArgumentException if the width is out of range
     */
    public static NoiseFloor of(Spectrum spectrum, double widthHertz) {
        int half = (int) Math.rint(0.5 * Require.positive("widthHertz", widthHertz, "Hz") / spectrum.resolutionHertz());
        Require.within("widthHertz", widthHertz, 10 * spectrum.resolutionHertz(),
                (spectrum.lines() - 1) * spectrum.resolutionHertz(), "Hz");
        return new NoiseFloor(spectrum, half);
    }

    /**
     * Returns the rms amplitude that noise alone reads at a frequency.
     *
     * @param hertz frequency in Hz, from 0 to half the sample rate
     * @return amplitude in the SI unit of the spectrum
     * @throws IllegalArgumentException if the frequency is out of range
     */
    public double rms(double hertz) {
        Require.within("hertz", hertz, 0, (meanSquares.length - 1) * resolutionHertz * (1 + 1e-12), "Hz");
        return Math.sqrt(meanSquares[(int) Math.min(meanSquares.length - 1, Math.rint(hertz / resolutionHertz))]);
    }

    /**
     * Returns the probability that noise alone reads at least an amplitude at one line: small means that it is a line.
     *
     * @param hertz frequency in Hz
     * @param rms rms amplitude in the SI unit of the spectrum, finite, zero or more
     * @return probability, 0 to 1; 1 where the floor is zero and so is the amplitude
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double probability(double hertz, double rms) {
        Require.notNegative("rms", rms, "");
        double floor = rms(hertz);
        if (floor == 0) {
            return rms > 0 ? 0 : 1;
        }
        double ratio = rms * rms / (floor * floor);
        return 1 - new GammaDistribution(averages, 1 / averages).cumulativeProbability(ratio);
    }

    /**
     * Returns the probability that the largest of several lines of noise reads at least an amplitude.
     *
     * @param hertz frequency in Hz
     * @param rms rms amplitude in the SI unit of the spectrum, finite, zero or more
     * @param searched number of lines that were searched, at least 1
     * @return probability, 0 to 1
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double probability(double hertz, double rms, int searched) {
        Require.atLeast("searched", searched, 1);
        return -Math.expm1(searched * Math.log1p(-probability(hertz, rms)));
    }

    /** Returns the number of lines. */
    @Override
    public String toString() {
        return "noise floor of " + meanSquares.length + " lines";
    }
}
