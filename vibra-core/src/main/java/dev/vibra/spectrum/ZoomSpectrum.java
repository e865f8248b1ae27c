package dev.vibra.spectrum;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.transform.ComplexTransform;
import dev.vibra.transform.RealTransform;
import dev.vibra.window.Window;
import java.io.Serializable;
import java.util.Locale;
import java.util.Objects;

/**
 * Averaged spectrum of a band with lines closer than a spectrum from 0 Hz could afford: the band is moved down to 0 Hz
 * and sampled at its own width, then averaged in blocks. Scaling as in {@link Spectrum}.
 *
 * @see "R. B. Randall, Frequency Analysis, 3rd ed. 1987, section on zoom (from memory, unverified)"
 */
public final class ZoomSpectrum implements Serializable {
    private static final long serialVersionUID = 1;

    private final Quantity quantity;
    private final double firstHertz;
    private final double resolutionHertz;
    private final double noiseBandwidthBins;
    private final int blocks;
    private final double[] meanSquares;

    private ZoomSpectrum(Waveform wave, Band band, SpectrumSettings settings) {
        quantity = wave.quantity();
        Baseband baseband = new Baseband(wave, band);
        int block = settings.blockLength(baseband.rate, baseband.length);
        resolutionHertz = baseband.rate / block;
        firstHertz = baseband.firstHertz;
        double[] weights = settings.window().samples(block);
        noiseBandwidthBins = SpectrumPlan.of(block, settings.window()).noiseBandwidth();
        int lines = Math.min(block, (int) Math.floor((band.highestHertz() - firstHertz) / resolutionHertz + 1e-9) + 1);
        meanSquares = new double[lines];
        blocks = average(baseband, weights, settings.step(block));
        Require.allFinite("mean squares of the lines", meanSquares);
    }

    /** A copy, checked: what comes from a stream. */
    private ZoomSpectrum(ZoomSpectrum read) {
        quantity = Objects.requireNonNull(read.quantity, "quantity");
        firstHertz = Require.notNegative("firstHertz", read.firstHertz, "Hz");
        resolutionHertz = Require.positive("resolutionHertz", read.resolutionHertz, "Hz");
        noiseBandwidthBins = Require.positive("noiseBandwidthBins", read.noiseBandwidthBins, "");
        blocks = Require.atLeast("blocks", read.blocks, 1);
        meanSquares = Require.allNotNegative("meanSquares", read.meanSquares.clone());
        Require.atLeast("number of lines", meanSquares.length, 1);
    }

    private Object readResolve() {
        return new ZoomSpectrum(this);
    }

    /**
     * Makes the spectrum of a band.
     *
     * @param wave recording
     * @param band band above 0 Hz and below half the sample rate that holds at least two lines of the whole recording
     * @param settings window, resolution (at best one over the duration), overlap; averaging is rms
     * @return the spectrum
     * @throws IllegalArgumentException if the band is out of range, or the resolution so coarse that the band's own
     *     sample rate leaves no block of two samples
     */
    public static ZoomSpectrum of(Waveform wave, Band band, SpectrumSettings settings) {
        Require.positive("lowest frequency of the band", Objects.requireNonNull(band, "band").lowestHertz(), "Hz");
        if (!(band.highestHertz() < Objects.requireNonNull(wave, "wave").sampleRateHertz() / 2)) {
            throw Require.failure("band", "below half the sample rate, " + wave.sampleRateHertz() / 2 + " Hz",
                    band.highestHertz());
        }
        return new ZoomSpectrum(wave, band, Objects.requireNonNull(settings, "settings"));
    }

    private int average(Baseband baseband, double[] weights, int step) {
        int block = weights.length;
        ComplexTransform transform = ComplexTransform.of(block);
        double[] work = new double[2 * block];
        double sum = 0;
        for (double w : weights) {
            sum += w;
        }
        int count = 0;
        for (int from = 0; from + block <= baseband.length; from += step) {
            for (int i = 0; i < block; i++) {
                work[2 * i] = weights[i] * baseband.samples[2 * (from + i)];
                work[2 * i + 1] = weights[i] * baseband.samples[2 * (from + i) + 1];
            }
            transform.forward(work, 0);
            for (int k = 0; k < meanSquares.length; k++) {
                double re = work[2 * k];
                double im = work[2 * k + 1];
                // the analytic signal has twice the amplitude
                meanSquares[k] += 0.5 * (re * re + im * im) / (sum * sum);
            }
            count++;
        }
        for (int k = 0; k < meanSquares.length; k++) {
            meanSquares[k] /= count;
        }
        return count;
    }

    /**
     * Returns the number of lines.
     *
     * @return lines in the band
     */
    public int lines() {
        return meanSquares.length;
    }

    /**
     * Returns the number of blocks averaged.
     *
     * @return blocks, at least 1
     */
    public int blocks() {
        return blocks;
    }

    /**
     * Returns the distance of lines.
     *
     * @return resolution in Hz
     */
    public double resolutionHertz() {
        return resolutionHertz;
    }

    /**
     * Returns the frequency of a line.
     *
     * @param line number of the line from 0
     * @return frequency in Hz
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public double frequencyHertz(int line) {
        return firstHertz + Objects.checkIndex(line, lines()) * resolutionHertz;
    }

    /**
     * Returns the amplitude of a line.
     *
     * @param line number of the line from 0
     * @param detector rms, zero-to-peak or peak-to-peak of the sine that the line stands for
     * @return amplitude in the SI unit of the quantity
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public double amplitude(int line, Detector detector) {
        Objects.requireNonNull(detector, "detector");
        Objects.checkIndex(line, lines());
        return Math.sqrt(meanSquares[line]) * detector.ofUnitSine() / Detector.RMS.ofUnitSine();
    }

    /**
     * Returns the power spectral density at a line.
     *
     * @param line number of the line from 0
     * @return density in the SI unit squared per Hz
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public double density(int line) {
        return meanSquares[Objects.checkIndex(line, lines())] / (noiseBandwidthBins * resolutionHertz);
    }

    /** Returns lines, resolution and averages. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s zoom, %,d lines of %s Hz from %s Hz, %d average%s", quantity, lines(),
                Digits.compact(resolutionHertz, 4), Digits.compact(firstHertz, 6), blocks, blocks == 1 ? "" : "s");
    }

    /** The analytic signal of the band, moved down by its first line and sampled at its own width. */
    private static final class Baseband {
        private final double firstHertz;
        private final double rate;
        private final int length;
        private final double[] samples;

        Baseband(Waveform wave, Band band) {
            double line = wave.sampleRateHertz() / wave.length();
            // Room on both sides keeps the main lobe of a line at an end of the band, and the ends from meeting.
            int first = (int) Math.max(1, Math.floor(0.95 * band.lowestHertz() / line));
            int last = (int) Math.min((wave.length() - 1) / 2, Math.ceil(1.05 * band.highestHertz() / line));
            if (last <= first) {
                throw new IllegalArgumentException("band must hold at least two lines, " + line + " Hz apart: " + band);
            }
            RealTransform forward = RealTransform.of(wave.length());
            double[] spectrum = forward.forward(wave.samples(), 0, new double[2 * forward.lines()]);
            int shift = (int) Math.ceil(band.lowestHertz() / line - 1e-9);
            length = (int) Math.min(wave.length(), Long.highestOneBit(2L * (last - first + 1) - 1) << 1);
            samples = new double[2 * length];
            double scale = 2.0 * length / wave.length();
            for (int k = first; k <= last; k++) {
                int place = Math.floorMod(k - shift, length);
                samples[2 * place] = scale * spectrum[2 * k];
                samples[2 * place + 1] = scale * spectrum[2 * k + 1];
            }
            ComplexTransform.of(length).inverse(samples, 0);
            firstHertz = shift * line;
            rate = length * line;
        }
    }
}
