package dev.vibra.uncertainty;

import dev.vibra.internal.Means;
import dev.vibra.internal.Require;
import dev.vibra.measuring.MountedResonance;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectrumPlan;
import dev.vibra.window.Window;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.FDistribution;

/**
 * How far the rms of a recording differs from that of an endless one, from the recording itself.
 *
 * <p>The mean square of lines of power S in noise of density G over a time T scatters by {@code (∫G² + 2·Σ S·G)/T}:
 * what is random in it alone, since steady lines repeat. The mean square of one line of a block of Hann-weighted
 * samples scatters by {@code N² + 2·S·N}, N the noise in the line, so the scatter of each line from block to block,
 * added up over the lines, is that integral, and nobody has to tell lines from noise. The effective bandwidth {@code B
 * = (∫(G + S))² / (∫G² + 2·Σ S·G)}, for noise alone the {@code (∫G)²/∫G²} of the handbook, makes the relative error of
 * the rms {@code 1/(2·√(B·T))}.
 *
 * <p>The lines are taken as independent of each other. Where the scatter of the whole blocks contradicts that (F test,
 * 5 %) it stands instead, with its few degrees of freedom: larger where the level as a whole varies slowly, smaller
 * where lines wander from bin to bin and keep their power. Variation slower than the recording leaves no trace in it.
 * To all that comes what the part of a period at the end of the recording does to the mean square of steady lines.
 *
 * @see "J. S. Bendat, A. G. Piersol, Random Data, errors of mean square estimates; JCGM 100:2008, G.4"
 */
final class EstimationError {
    /** At least so many blocks that overlap by half: enough for a scatter, and narrow bands of noise stay apart. */
    private static final int BLOCKS = 12;
    private static final int FEWEST_BLOCKS = 4;
    /** Periods of the lower end of the band that a block holds where the recording is long enough. */
    private static final double PERIODS = 3;
    /** Samples are averaged to no fewer than this for a period of the upper end of the band. */
    private static final double SAMPLES_PER_PERIOD = 8;
    /** Sum of the squared correlations of a line with its neighbours, mean(w⁴)/mean(w²)² of the Hann window. */
    private static final double SHARED_BY_LINES = 35.0 / 18;
    /** Squared correlation of the line in one block and in the next, half a block later. */
    private static final double SHARED_BY_BLOCKS = 1.0 / 36;
    private static final double SIGNIFICANCE = 0.05;
    /** Half the main lobe of the Hann window in bins. */
    private static final int LOBE = 2;
    /** Part of the power from which on a bin counts as one of a line. */
    private static final double LEAST_LINE = 5e-3;
    /** Beyond this part of the resonance the rise is no longer that of a system without damping. */
    private static final double NEAREST_TO_RESONANCE = 0.9;

    private final double resolutionHertz;
    private final double seconds;
    private final double[] sums;
    private final double[] squares;
    private final double[] totals;

    private EstimationError(Waveform judged) {
        double lowest = judged.band().orElseThrow().lowestHertz();
        int together = (int) Math.max(1, judged.sampleRateHertz()
                / (SAMPLES_PER_PERIOD * judged.band().orElseThrow().highestHertz()));
        double[] samples = Means.of(judged.samples(), together);
        double rate = judged.sampleRateHertz() / together;
        int length = quickLength(Math.max(8, Math.min(2.0 * samples.length / (FEWEST_BLOCKS + 1),
                Math.max(2.0 * samples.length / (BLOCKS + 1), PERIODS * rate / lowest))));
        Require.atLeast("number of samples", samples.length, 2 * length);
        SpectrumPlan plan = SpectrumPlan.of(length, Window.hann());
        resolutionHertz = rate / length;
        seconds = judged.durationSeconds();
        sums = new double[plan.lines()];
        squares = new double[plan.lines()];
        totals = new double[(samples.length - length) / (length / 2) + 1];
        add(samples, plan);
    }

    /**
     * The longest of 4, 5 and 6 times a power of two that isn't above a length: transforms of other lengths are slow.
     */
    private static int quickLength(double longest) {
        int power = Integer.highestOneBit((int) (longest / 4));
        int quarters = (int) (longest / power);
        return power * Math.min(quarters, 6);
    }

    static EstimationError of(Waveform judged) {
        return new EstimationError(judged);
    }

    private void add(double[] samples, SpectrumPlan plan) {
        SpectrumPlan.Worker worker = plan.newWorker();
        double[] block = new double[plan.lines()];
        for (int b = 0; b < totals.length; b++) {
            Arrays.fill(block, 0);
            worker.addMeanSquares(samples, b * (plan.length() / 2), block);
            for (int k = 0; k < block.length; k++) {
                totals[b] += block[k];
                sums[k] += block[k];
                squares[k] += block[k] * block[k];
            }
        }
    }

    /** By how much a resonance lifts the rms of this spectrum, a part of it. */
    double rise(MountedResonance resonance) {
        double lifted = 0;
        double flat = 0;
        for (int k = 0; k < sums.length; k++) {
            double hertz = Math.min(k * resolutionHertz, NEAREST_TO_RESONANCE * resonance.hertz());
            lifted += sums[k] * Math.pow(1 + resonance.deviationAt(hertz), 2);
            flat += sums[k];
        }
        return flat == 0 ? 0 : Math.sqrt(lifted / flat) - 1;
    }

    /** The relative standard uncertainty of the rms, half that of the mean square. */
    Contribution contribution() {
        double mean = Arrays.stream(sums).sum() / totals.length;
        Scatter lines = ofLines();
        if (!(lines.variance > 0)) {
            return new Contribution("estimation", 0);
        }
        Scatter random = arbitrated(lines, ofBlocks());
        double variance = random.variance + ofEnds();
        return new Contribution("estimation", Math.sqrt(variance) / (2 * mean),
                random.freedom * Math.pow(variance / random.variance, 2));
    }

    private static Scatter arbitrated(Scatter lines, Scatter blocks) {
        double below = new FDistribution(null, blocks.freedom, lines.freedom)
                .cumulativeProbability(blocks.variance / lines.variance);
        return below > 1 - SIGNIFICANCE / 2 || below < SIGNIFICANCE / 2 ? blocks : lines;
    }

    /** Variance of the sum of the lines over the whole time, and how well it is known. */
    private record Scatter(double variance, double freedom) {}

    /**
     * The variance of n values scatters itself by the part (2 + γ)/n of its square, γ the excess kurtosis: 6 for the
     * mean square of noise; for a line, of relative variance r, about 3·r (closed form of the noncentral chi-square
     * distribution).
     */
    private Scatter ofLines() {
        int n = totals.length;
        double sum = 0;
        double scatter = 0;
        for (int k = 0; k < sums.length; k++) {
            double mean = sums[k] / n;
            double variance = Math.max(0, squares[k] - n * mean * mean) / (n - 1);
            double relative = mean > 0 ? Math.min(1, variance / (mean * mean)) : 1;
            sum += variance;
            scatter += variance * variance * (2 + 3 * relative * (1 + relative)) / n;
        }
        double freedom = 2 * sum * sum / (SHARED_BY_LINES * scatter);
        return new Scatter(sum / (resolutionHertz * seconds), Math.max(1, freedom));
    }

    /**
     * What a recording of T that holds no whole number of periods adds: the square of two lines swings at the
     * difference and at the sum of their frequencies, and a swing at f leaves {@code 1/(√2·π·f·T)} of itself in a mean
     * over T.
     */
    private double ofEnds() {
        double least = LEAST_LINE * Arrays.stream(sums).sum();
        int[] large = IntStream.range(1, sums.length).filter(k -> sums[k] > least).toArray();
        double sum = 0;
        for (int k : large) {
            for (int l : large) {
                boolean oneLine = Math.abs(k - l) <= LOBE;
                double swings = (oneLine ? 0.5 : 1) / ((double) (k + l) * (k + l))
                        + (oneLine ? 0 : 1 / ((double) (k - l) * (k - l)));
                sum += sums[k] * sums[l] * swings;
            }
        }
        return sum / (2 * Math.pow(Math.PI * totals.length * resolutionHertz * seconds, 2));
    }

    private Scatter ofBlocks() {
        int n = totals.length;
        double mean = Arrays.stream(totals).sum() / n;
        double variance = Arrays.stream(totals).map(total -> (total - mean) * (total - mean)).sum() / (n - 1);
        return new Scatter(variance / n * (1 + 2 * SHARED_BY_BLOCKS * (n - 1) / n), n - 1);
    }
}
