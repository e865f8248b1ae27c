package dev.vibra.spectrum;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.Locale;
import java.util.Objects;

/**
 * Time-frequency map: the spectra of successive blocks, not averaged. Scaling as in {@link Spectrum}.
 *
 * @see "Oppenheim and Schafer, Discrete-Time Signal Processing, 3rd ed. 2010, section 10.3"
 */
public final class Spectrogram implements Serializable {
    private static final long serialVersionUID = 1;

    private final Quantity quantity;
    private final double sampleRateHertz;
    private final double startSeconds;
    private final int blockLength;
    private final int step;
    private final double noiseBandwidthBins;
    private final double[][] meanSquares;

    private Spectrogram(Waveform wave, SpectrumSettings settings) {
        quantity = wave.quantity();
        sampleRateHertz = wave.sampleRateHertz();
        startSeconds = wave.startSeconds();
        blockLength = settings.blockLength(wave);
        step = settings.step(blockLength);
        SpectrumPlan plan = SpectrumPlan.of(blockLength, settings.window());
        noiseBandwidthBins = plan.noiseBandwidth();
        SpectrumPlan.Worker worker = plan.newWorker();
        double[] samples = wave.samples();
        meanSquares = new double[(samples.length - blockLength) / step + 1][];
        for (int b = 0; b < meanSquares.length; b++) {
            meanSquares[b] = worker.addMeanSquares(samples, b * step, new double[plan.lines()]);
            Require.allFinite("mean squares of the lines", meanSquares[b]);
        }
    }

    /** A copy, checked: what comes from a stream. */
    private Spectrogram(Spectrogram read) {
        quantity = Objects.requireNonNull(read.quantity, "quantity");
        sampleRateHertz = Require.positive("sampleRateHertz", read.sampleRateHertz, "Hz");
        startSeconds = Require.finite("startSeconds", read.startSeconds);
        blockLength = Require.atLeast("blockLength", read.blockLength, 2);
        step = Require.count("step", read.step, 1, blockLength);
        noiseBandwidthBins = Require.positive("noiseBandwidthBins", read.noiseBandwidthBins, "");
        meanSquares = read.meanSquares.clone();
        Require.atLeast("blocks", meanSquares.length, 1);
        for (int b = 0; b < meanSquares.length; b++) {
            meanSquares[b] = Require.allNotNegative("meanSquares[" + b + "]", meanSquares[b].clone());
            Require.count("number of lines", meanSquares[b].length, blockLength / 2 + 1, blockLength / 2 + 1);
        }
    }

    private Object readResolve() {
        return new Spectrogram(this);
    }

    /**
     * Makes the map of a recording; the averaging of the settings isn't used.
     *
     * @param wave recording, at least 2 samples
     * @param settings window, resolution, overlap
     * @return the map
     * @throws IllegalArgumentException if the recording is too short
     */
    public static Spectrogram of(Waveform wave, SpectrumSettings settings) {
        Require.atLeast("number of samples", Objects.requireNonNull(wave, "wave").length(), 2);
        return new Spectrogram(wave, Objects.requireNonNull(settings, "settings"));
    }

    /**
     * Returns the number of blocks.
     *
     * @return number of spectra, at least 1
     */
    public int blocks() {
        return meanSquares.length;
    }

    /**
     * Returns the number of lines of a block.
     *
     * @return lines from 0 Hz to half the sample rate
     */
    public int lines() {
        return meanSquares[0].length;
    }

    /**
     * Returns the time of the middle of a block.
     *
     * @param block number of the block from 0
     * @return time in s
     * @throws IndexOutOfBoundsException if there is no such block
     */
    public double timeSeconds(int block) {
        double middle = Objects.checkIndex(block, blocks()) * (double) step + 0.5 * blockLength;
        return startSeconds + middle / sampleRateHertz;
    }

    /**
     * Returns the frequency of a line.
     *
     * @param line number of the line from 0
     * @return frequency in Hz
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public double frequencyHertz(int line) {
        return Objects.checkIndex(line, lines()) * sampleRateHertz / blockLength;
    }

    /**
     * Returns the rms amplitude of a line in a block.
     *
     * @param block number of the block from 0
     * @param line number of the line from 0
     * @return rms amplitude in the SI unit of the quantity
     * @throws IndexOutOfBoundsException if there is no such block or line
     */
    public double rms(int block, int line) {
        return Math.sqrt(meanSquare(block, line));
    }

    /**
     * Returns the power spectral density at a line in a block.
     *
     * @param block number of the block from 0
     * @param line number of the line from 0
     * @return density in the SI unit squared per Hz
     * @throws IndexOutOfBoundsException if there is no such block or line
     */
    public double density(int block, int line) {
        return meanSquare(block, line) / (noiseBandwidthBins * sampleRateHertz / blockLength);
    }

    private double meanSquare(int block, int line) {
        return meanSquares[Objects.checkIndex(block, blocks())][Objects.checkIndex(line, lines())];
    }

    /**
     * Computes the spectral kurtosis: {@code ⟨|X|⁴⟩/⟨|X|²⟩² - 2} of each line over the blocks. 0 for stationary normal
     * noise, -1 for a steady tone, large where impacts ring. Take blocks shorter than the interval of the impacts and
     * longer than their ringing.
     *
     * @return a new array with one value a line; a line without any power reads 0
     * @throws IllegalStateException if there are fewer than 2 blocks
     * @see "J. Antoni, The spectral kurtosis, Mech. Syst. Signal Process. 20 (2006) 282-307, equation 33"
     */
    public double[] spectralKurtosis() {
        if (blocks() < 2) {
            throw new IllegalStateException("spectral kurtosis needs at least 2 blocks: " + blocks());
        }
        double[] kurtosis = new double[lines()];
        for (int k = 0; k < kurtosis.length; k++) {
            double second = 0;
            double fourth = 0;
            for (double[] block : meanSquares) {
                second += block[k];
                fourth += block[k] * block[k];
            }
            kurtosis[k] = second == 0 ? 0 : fourth * blocks() / (second * second) - 2;
        }
        return kurtosis;
    }

    /** Returns size and resolution. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s map, %d blocks of %,d lines", quantity, blocks(), lines());
    }
}
