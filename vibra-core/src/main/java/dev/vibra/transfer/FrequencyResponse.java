package dev.vibra.transfer;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectrumPlan;
import dev.vibra.spectrum.SpectrumSettings;
import java.io.Serializable;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.apache.commons.math3.complex.Complex;

/**
 * Averaged spectra of an input x and an output y recorded together, and the responses that follow from them.
 *
 * <p>The cross spectrum is {@code Gxy = ⟨conj(X)·Y⟩}, one-sided, as mean square ({@link #cross}) or density ({@link
 * #crossDensity}). H1 = Gxy/Gxx is right with noise at the output, H2 = Gyy/conj(Gxy) with noise at the input, Hv is
 * the total least-squares estimate for equal relative noise at both. Phase is that of the output over the input.
 *
 * @see "J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, sections 6.1, 9.1 and 9.2"
 */
public final class FrequencyResponse implements Serializable {
    private static final long serialVersionUID = 1;

    private final Quantity input;
    private final Quantity output;
    private final double sampleRateHertz;
    private final int blockLength;
    private final double noiseBandwidthHertz;
    private final int blocks;
    private final double[] gxx;
    private final double[] gyy;
    private final double[] gxy;

    private FrequencyResponse(Averager averager, Quantity input, Quantity output, double sampleRateHertz) {
        this.input = input;
        this.output = output;
        this.sampleRateHertz = sampleRateHertz;
        blockLength = averager.plan.length();
        noiseBandwidthHertz = averager.plan.noiseBandwidth() * sampleRateHertz / blockLength;
        blocks = averager.count;
        gxx = averager.gxx;
        gyy = averager.gyy;
        gxy = averager.gxy;
        scale(gxx);
        scale(gyy);
        scale(gxy);
    }

    /** A copy, checked: what comes from a stream. */
    private FrequencyResponse(FrequencyResponse read) {
        input = Objects.requireNonNull(read.input, "input");
        output = Objects.requireNonNull(read.output, "output");
        sampleRateHertz = Require.positive("sampleRateHertz", read.sampleRateHertz, "Hz");
        blockLength = Require.atLeast("blockLength", read.blockLength, 2);
        noiseBandwidthHertz = Require.positive("noiseBandwidthHertz", read.noiseBandwidthHertz, "Hz");
        blocks = Require.atLeast("blocks", read.blocks, 1);
        gxx = Require.allNotNegative("gxx", read.gxx.clone());
        gyy = Require.allNotNegative("gyy", read.gyy.clone());
        gxy = Require.finiteCopy("gxy", read.gxy);
        int lines = blockLength / 2 + 1;
        Require.count("length of gxx", gxx.length, lines, lines);
        Require.count("length of gyy", gyy.length, lines, lines);
        Require.count("length of gxy", gxy.length, 2 * lines, 2 * lines);
    }

    private Object readResolve() {
        return new FrequencyResponse(this);
    }

    private void scale(double[] sums) {
        for (int i = 0; i < sums.length; i++) {
            sums[i] /= blocks;
        }
        Require.allFinite("mean squares of the lines", sums);
    }

    /**
     * Estimates the response from recordings of both channels, in overlapping blocks.
     *
     * @param input what drives
     * @param output what answers, sampled at the same times
     * @param settings window, resolution, overlap
     * @return the response
     * @throws IllegalArgumentException if the recordings differ in length or sample rate or are too short, or the
     *     resolution is above half the sample rate
     */
    public static FrequencyResponse of(Waveform input, Waveform output, SpectrumSettings settings) {
        requireTogether(Objects.requireNonNull(input, "input"), Objects.requireNonNull(output, "output"));
        Require.atLeast("number of samples", input.length(), 2);
        int block = Objects.requireNonNull(settings, "settings").blockLength(input);
        Averager averager = new Averager(SpectrumPlan.of(block, settings.window()),
                SpectrumPlan.of(block, settings.window()));
        double[] x = input.samples();
        double[] y = output.samples();
        int step = settings.step(block);
        for (int from = 0; from + block <= x.length; from += step) {
            averager.add(x, y, from);
        }
        return new FrequencyResponse(averager, input.quantity(), output.quantity(), input.sampleRateHertz());
    }

    /**
     * Estimates the response from single impacts, one block each.
     *
     * @param test recordings of force and response, and their windows
     * @return the response
     */
    static FrequencyResponse of(ImpactTest test) {
        List<Waveform> forces = test.forces();
        List<Waveform> responses = test.responses();
        int block = forces.get(0).length();
        Averager averager = new Averager(SpectrumPlan.of(block, test.forceWindow()),
                SpectrumPlan.of(block, test.responseWindow()));
        averager.correctGains();
        for (int i = 0; i < forces.size(); i++) {
            averager.add(forces.get(i).samples(), responses.get(i).samples(), 0);
        }
        return new FrequencyResponse(averager, forces.get(0).quantity(), responses.get(0).quantity(),
                forces.get(0).sampleRateHertz());
    }

    static void requireTogether(Waveform input, Waveform output) {
        if (input.length() != output.length() || input.sampleRateHertz() != output.sampleRateHertz()) {
            throw new IllegalArgumentException("output must have length and sample rate of the input, " + input + ": "
                    + output);
        }
    }

    /**
     * Returns the number of lines.
     *
     * @return lines from 0 Hz to half the sample rate
     */
    public int lines() {
        return gxx.length;
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
     * Returns the cross spectrum as mean square.
     *
     * @param line number of the line from 0
     * @return {@code ⟨conj(X)·Y⟩} in the units of both channels
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public Complex cross(int line) {
        Objects.checkIndex(line, lines());
        return new Complex(gxy[2 * line], gxy[2 * line + 1]);
    }

    /**
     * Returns the cross-spectral density.
     *
     * @param line number of the line from 0
     * @return density in the units of both channels per Hz
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public Complex crossDensity(int line) {
        return cross(line).divide(noiseBandwidthHertz);
    }

    /**
     * Returns the coherence {@code |Gxy|²/(Gxx·Gyy)}: the part of the output's power that the input explains. With a
     * single block it is 1 whatever the signals are.
     *
     * @param line number of the line from 0
     * @return coherence, 0 to 1; 0 where a channel has no power
     * @throws IllegalStateException if only one block was averaged
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public double coherence(int line) {
        if (blocks < 2) {
            throw new IllegalStateException("coherence needs at least 2 blocks: " + blocks);
        }
        double cross = cross(line).abs();
        double power = gxx[line] * gyy[line];
        return power == 0 ? 0 : Math.min(1, cross * cross / power);
    }

    /**
     * Estimates the response as Gxy/Gxx, for noise at the output.
     *
     * @param line number of the line from 0
     * @return response in units of the output over those of the input
     * @throws IllegalStateException if the input has no power at the line
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public Complex h1(int line) {
        Complex cross = cross(line);
        return cross.divide(powered("H1", "input", line, gxx[line]));
    }

    /**
     * Estimates the response as Gyy/conj(Gxy), for noise at the input.
     *
     * @param line number of the line from 0
     * @return response in units of the output over those of the input
     * @throws IllegalStateException if the channels share no power at the line
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public Complex h2(int line) {
        powered("H2", "cross spectrum", line, cross(line).abs());
        return new Complex(gyy[line]).divide(cross(line).conjugate());
    }

    private double powered(String estimate, String what, int line, double power) {
        if (!(power > 0)) {
            throw new IllegalStateException(estimate + " needs power of the " + what + " at a line: none at "
                    + Digits.compact(frequencyHertz(line), 5) + " Hz");
        }
        return power;
    }

    /**
     * Estimates the response for noise at both channels: magnitude √(|H1|·|H2|), phase of the cross spectrum.
     *
     * @param line number of the line from 0
     * @return response in units of the output over those of the input
     * @throws IllegalStateException if the channels share no power at the line
     * @throws IndexOutOfBoundsException if there is no such line
     * @see "G. T. Rocklin, J. Crowley, H. Vold, A comparison of H1, H2 and Hv frequency response functions, Proc. IMAC
     *     3 (1985) 272-278"
     */
    public Complex hv(int line) {
        Complex cross = cross(line);
        return cross.divide(powered("Hv", "cross spectrum", line, cross.abs()))
                .multiply(Math.sqrt(gyy[line] / powered("Hv", "input", line, gxx[line])));
    }

    /**
     * Returns the phase of the output over the input.
     *
     * @param line number of the line from 0
     * @return phase in rad, -π to π, negative where the output lags
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public double phaseRadians(int line) {
        return cross(line).getArgument();
    }

    /**
     * Returns the random error of |H1|, its standard deviation over its value: {@code √(1-γ²)/(|γ|·√(2n))} for n
     * independent blocks.
     *
     * @param line number of the line from 0
     * @return relative standard deviation; infinite where the coherence is 0
     * @throws IllegalStateException if only one block was averaged
     * @throws IndexOutOfBoundsException if there is no such line
     * @see "J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, equation 9.90"
     */
    public double randomError(int line) {
        double coherence = coherence(line);
        return Math.sqrt((1 - coherence) / coherence / (2.0 * blocks));
    }

    /** Returns channels, lines and averages. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "response of %s to %s, %,d lines, %d average%s", output, input, lines(),
                blocks,
                blocks == 1 ? "" : "s");
    }

    /** Sums over blocks. */
    private static final class Averager {
        private final SpectrumPlan plan;
        private final SpectrumPlan.Worker xWorker;
        private final SpectrumPlan.Worker yWorker;
        private final double[] x;
        private final double[] y;
        private final double[] gxx;
        private final double[] gyy;
        private final double[] gxy;
        private double inputGain = 1;
        private double outputGain = 1;
        private int count;

        Averager(SpectrumPlan input, SpectrumPlan output) {
            plan = input;
            xWorker = input.newWorker();
            yWorker = output.newWorker();
            x = new double[2 * plan.lines()];
            y = new double[2 * plan.lines()];
            gxx = new double[plan.lines()];
            gyy = new double[plan.lines()];
            gxy = new double[2 * plan.lines()];
        }

        /**
         * A transient passes a window whose weight is 1 where it happens: the mean of the window doesn't matter to it.
         */
        void correctGains() {
            inputGain = plan.window().coherentGain();
            outputGain = yWorker.window().coherentGain();
        }

        void add(double[] xs, double[] ys, int from) {
            xWorker.complexLines(xs, from, x);
            yWorker.complexLines(ys, from, y);
            for (int k = 0; k < plan.lines(); k++) {
                double xr = x[2 * k] * inputGain;
                double xi = x[2 * k + 1] * inputGain;
                double yr = y[2 * k] * outputGain;
                double yi = y[2 * k + 1] * outputGain;
                gxx[k] += xr * xr + xi * xi;
                gyy[k] += yr * yr + yi * yi;
                gxy[2 * k] += xr * yr + xi * yi;
                gxy[2 * k + 1] += xr * yi - xi * yr;
            }
            count++;
        }
    }
}
