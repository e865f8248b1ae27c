package dev.vibra.rotation;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectrumPlan;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.transform.ComplexTransform;
import java.io.Serializable;
import java.util.Locale;
import java.util.Objects;

/**
 * Two-sided spectrum of a pair of probes at right angles, {@code x + iy}: lines at positive frequency turn from the x
 * probe to the y probe (forward, with a shaft that turns so), lines at negative frequency turn the other way.
 *
 * <p>Scaling: a forward circle of radius r reads r at its frequency and nothing at the negative one; a straight line of
 * zero-to-peak amplitude A reads A/2 at both.
 *
 * @see Orbit
 */
public final class FullSpectrum implements Serializable {
    private static final long serialVersionUID = 1;

    private final Quantity quantity;
    private final double resolutionHertz;
    private final int highestLine;
    private final double[] meanSquares;

    private FullSpectrum(Waveform x, Waveform y, SpectrumSettings settings) {
        quantity = x.quantity();
        int block = settings.blockLength(x);
        resolutionHertz = x.sampleRateHertz() / block;
        highestLine = (block - 1) / 2;
        meanSquares = new double[2 * highestLine + 1];
        average(x, y, settings, block);
        Require.allFinite("mean squares of the lines", meanSquares);
    }

    /** A copy, checked: what comes from a stream. */
    private FullSpectrum(FullSpectrum read) {
        quantity = Objects.requireNonNull(read.quantity, "quantity");
        resolutionHertz = Require.positive("resolutionHertz", read.resolutionHertz, "Hz");
        meanSquares = Require.allNotNegative("meanSquares", read.meanSquares.clone());
        highestLine = Require.count("highestLine", read.highestLine, meanSquares.length / 2, meanSquares.length / 2);
        Require.within("number of lines", meanSquares.length, 2.0 * highestLine + 1, 2.0 * highestLine + 1, "");
        Require.finite("frequency of the last line", highestLine * resolutionHertz);
    }

    private Object readResolve() {
        return new FullSpectrum(this);
    }

    /**
     * Makes the spectrum of a pair of probes.
     *
     * @param x recording of the x probe
     * @param y recording of the y probe at the same times, 90 degrees on in the direction of rotation
     * @param settings window, resolution, overlap; averaging is rms
     * @return the spectrum
     * @throws IllegalArgumentException if the recordings don't match or are too short, or the resolution is above half
     *     the sample rate
     */
    public static FullSpectrum of(Waveform x, Waveform y, SpectrumSettings settings) {
        Objects.requireNonNull(y, "y");
        Objects.requireNonNull(x, "x");
        if (x.length() != y.length() || x.sampleRateHertz() != y.sampleRateHertz() || x.quantity() != y.quantity()) {
            throw new IllegalArgumentException("y must match x, " + x + ": " + y);
        }
        Require.atLeast("number of samples", x.length(), 4);
        return new FullSpectrum(x, y, Objects.requireNonNull(settings, "settings"));
    }

    private void average(Waveform x, Waveform y, SpectrumSettings settings, int block) {
        double[] weights = settings.window().samples(block);
        double sum = 0;
        for (double w : weights) {
            sum += w;
        }
        double[] xs = x.samples();
        double[] ys = y.samples();
        double[] work = new double[2 * block];
        ComplexTransform transform = ComplexTransform.of(block);
        int step = settings.step(block);
        int count = 0;
        for (int from = 0; from + block <= xs.length; from += step) {
            double meanX = mean(xs, from, block);
            double meanY = mean(ys, from, block);
            for (int i = 0; i < block; i++) {
                work[2 * i] = weights[i] * (xs[from + i] - meanX);
                work[2 * i + 1] = weights[i] * (ys[from + i] - meanY);
            }
            transform.forward(work, 0);
            for (int k = -highestLine; k <= highestLine; k++) {
                int place = 2 * Math.floorMod(k, block);
                meanSquares[k + highestLine] += (work[place] * work[place] + work[place + 1] * work[place + 1])
                        / (sum * sum);
            }
            count++;
        }
        for (int k = 0; k < meanSquares.length; k++) {
            meanSquares[k] /= count;
        }
    }

    private static double mean(double[] x, int from, int length) {
        double sum = 0;
        for (int i = from; i < from + length; i++) {
            sum += x[i];
        }
        return sum / length;
    }

    /**
     * Returns the number of the last line; the first is its negative.
     *
     * @return number of lines on each side of 0 Hz
     */
    public int highestLine() {
        return highestLine;
    }

    /**
     * Returns the frequency of a line.
     *
     * @param line number of the line, from {@code -highestLine()} to {@code highestLine()}, negative for backward
     * @return frequency in Hz, negative for backward
     * @throws IllegalArgumentException if there is no such line
     */
    public double frequencyHertz(int line) {
        return Require.count("line", line, -highestLine, highestLine) * resolutionHertz;
    }

    /**
     * Returns the radius of the circle that a line stands for.
     *
     * @param line number of the line, from {@code -highestLine()} to {@code highestLine()}
     * @return radius in the SI unit of the quantity
     * @throws IllegalArgumentException if there is no such line
     */
    public double radius(int line) {
        Require.count("line", line, -highestLine, highestLine);
        return Math.sqrt(meanSquares[line + highestLine]);
    }

    /** Returns lines and quantity. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s full spectrum, %,d lines on each side", quantity, highestLine);
    }
}
