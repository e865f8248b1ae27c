package dev.vibra.lines;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Detector;
import dev.vibra.spectrum.Spectrum;
import java.io.Serializable;
import java.util.Objects;

/**
 * What the lines of a spectrum would read if there were noise alone: the running median of the mean squares over a
 * width of lines, turned into a mean by the ratio that noise has.
 *
 * <p>The mean square of a line of noise, averaged over n equivalent blocks, follows a gamma distribution of shape n.
 * Its median is below its mean (0.693 of it for n = 1). Lines of machines in less than about a third of the width leave
 * the median nearly alone. Near the ends of the spectrum the median is taken over what the width holds of it.
 *
 * @see LineNoise
 * @see "J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, section 8.5.4 (chi-square of spectral estimates)"
 */
public final class NoiseFloor implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double LN_10 = Math.log(10);
    /** Below this logarithm the largest of n lines is n times as probable as one, to 1e-7 of it for n up to 1e6. */
    private static final double RARE = -30;

    private final double[] meanSquares;
    private final double resolutionHertz;
    private final LineNoise noise;

    private NoiseFloor(double[] ownedMeanSquares, double resolutionHertz, LineNoise noise) {
        this.resolutionHertz = Require.positive("resolutionHertz", resolutionHertz, "Hz");
        this.noise = Objects.requireNonNull(noise, "noise");
        Require.atLeast("number of lines", ownedMeanSquares.length, 1);
        meanSquares = Require.allNotNegative("meanSquares", ownedMeanSquares);
    }

    private Object readResolve() {
        return new NoiseFloor(meanSquares.clone(), resolutionHertz, noise);
    }

    private static NoiseFloor below(double[] squares, double resolutionHertz, LineNoise noise, int first, int reach) {
        double[] floor = RunningMedian.of(squares, first, reach);
        for (int k = 0; k < floor.length; k++) {
            floor[k] /= noise.medianOverMean();
        }
        return new NoiseFloor(floor, resolutionHertz, noise);
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
        Objects.requireNonNull(spectrum, "spectrum");
        int half = (int) Math.rint(0.5 * Require.positive("widthHertz", widthHertz, "Hz") / spectrum.resolutionHertz());
        Require.within("widthHertz", widthHertz, 10 * spectrum.resolutionHertz(),
                (spectrum.lines() - 1) * spectrum.resolutionHertz(), "Hz");
        double[] squares = spectrum.amplitudes(Detector.RMS);
        for (int k = 0; k < squares.length; k++) {
            squares[k] *= squares[k];
        }
        return below(squares, spectrum.resolutionHertz(), LineNoise.of(spectrum.equivalentAverages()), 1, half);
    }

    /**
     * Estimates the floor of lines that are no {@link Spectrum}, such as those of an envelope.
     *
     * @param meanSquares square of each line from 0 Hz on, averaged over blocks; finite, zero or more, at least one;
     *     copied
     * @param resolutionHertz distance of the lines in Hz, finite, above zero
     * @param noise law of a line of noise
     * @param first number of the first line that is used, 0 or more; the lines below it belong to the mean
     * @param reach number of lines to either side over which the median is taken, at least 1
     * @return the floor
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static NoiseFloor of(double[] meanSquares, double resolutionHertz, LineNoise noise, int first, int reach) {
        Objects.requireNonNull(meanSquares, "meanSquares");
        double[] copy = Require.allNotNegative("meanSquares", meanSquares.clone());
        Require.atLeast("number of lines", copy.length, 1);
        Require.positive("resolutionHertz", resolutionHertz, "Hz");
        Require.atLeast("first", first, 0);
        Require.atLeast("reach", reach, 1);
        return below(copy, resolutionHertz, Objects.requireNonNull(noise, "noise"), first, reach);
    }

    /**
     * Returns the number of lines.
     *
     * @return lines, those of the spectrum
     */
    public int lines() {
        return meanSquares.length;
    }

    /**
     * Returns the law of a line over this floor.
     *
     * @return law of the ratio of a mean square to the floor's
     */
    public LineNoise noise() {
        return noise;
    }

    /**
     * Returns the mean square that noise alone reads at a line.
     *
     * @param line number of the line from 0
     * @return mean square in the SI unit of the spectrum squared, zero or more
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public double meanSquare(int line) {
        return meanSquares[Objects.checkIndex(line, meanSquares.length)];
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
        return probability(hertz, rms, 1);
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
        return Math.exp(logProbability(hertz, rms, searched));
    }

    /**
     * Returns the decimal logarithm of {@link #probability(double, double, int)}, which tells lines apart that are all
     * too improbable for a number.
     *
     * @param hertz frequency in Hz
     * @param rms rms amplitude in the SI unit of the spectrum, finite, zero or more
     * @param searched number of lines that were searched, at least 1
     * @return decimal logarithm, 0 or less; -1e98 or less where the floor is zero and the amplitude is not
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double log10Probability(double hertz, double rms, int searched) {
        return logProbability(hertz, rms, searched) / LN_10;
    }

    private double logProbability(double hertz, double rms, int searched) {
        Require.notNegative("rms", rms, "");
        Require.atLeast("searched", searched, 1);
        double floor = rms(hertz);
        if (floor == 0 && rms == 0) {
            return 0;
        }
        double one = noise.logExceedance(Math.min(LineNoise.HIGHEST_RATIO, rms / floor * (rms / floor)));
        if (one < RARE) {
            return one + Math.log(searched);
        }
        return searched == 1 ? one : Math.log(-Math.expm1(searched * Math.log1p(-Math.exp(one))));
    }

    /** Returns the number of lines. */
    @Override
    public String toString() {
        return "noise floor of " + meanSquares.length + " lines";
    }
}
