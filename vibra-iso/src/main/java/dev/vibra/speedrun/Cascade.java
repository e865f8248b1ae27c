package dev.vibra.speedrun;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectrumPlan;
import dev.vibra.window.Window;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;

/**
 * Cascade: spectra at equal steps of speed. Each is taken under a Hann window around the time at which its speed is
 * passed, as long as line spacing and the change of the speed agree: for 1/√(rate in Hz per s), so that the first order
 * moves by about one line. Immutable.
 *
 * @see "ISO 13373-2:2016, cascade (principle, from memory, unverified)"
 */
public final class Cascade implements Serializable {
    private static final long serialVersionUID = 1;
    private static final int STEPS = 40;
    private static final int MOST_LINES = 2000;
    private static final int SHORTEST = 32;
    private static final double LONGEST_SECONDS = 4;
    private static final double ORDERS = 10;
    /** Noise bandwidth of a Hann window in lines: what three lines of a tone hold more than the tone. */
    private static final double HANN_BINS = 1.5;

    private final Quantity quantity;
    private final double spacingHertz;
    private final double[] speedsHertz;
    private final double[][] rms;

    private Cascade(Quantity quantity, double spacingHertz, double[] speedsHertz, double[][] rms) {
        this.quantity = Objects.requireNonNull(quantity, "quantity");
        this.spacingHertz = Require.positive("spacingHertz", spacingHertz, "Hz");
        this.speedsHertz = Require.finiteCopy("speedsHertz", speedsHertz);
        this.rms = Objects.requireNonNull(rms, "rms").clone();
        Require.count("number of spectra", this.rms.length, Math.max(1, this.speedsHertz.length),
                Math.max(1, this.speedsHertz.length));
        for (int i = 0; i < this.rms.length; i++) {
            Require.positive("speedsHertz[" + i + "]", this.speedsHertz[i], "Hz");
            this.rms[i] = Require.allNotNegative("rms[" + i + "]", Objects.requireNonNull(this.rms[i],
                    "rms[" + i + "]").clone());
            Require.count("number of lines", this.rms[i].length, Math.max(1, this.rms[0].length),
                    Math.max(1, this.rms[0].length));
        }
    }

    private Object readResolve() {
        return new Cascade(quantity, spacingHertz, speedsHertz, rms);
    }

    /** Makes the cascade of a recording that holds the sweep; acceleration is told as velocity. */
    static Cascade of(Waveform wave, SpeedSweep sweep) {
        double low = sweep.lowest().hertz();
        double high = sweep.highest().hertz();
        double rate = wave.sampleRateHertz();
        double seconds = Math.min(LONGEST_SECONDS, Math.max(4 / high, 1 / Math.sqrt(sweep.meanRateHertzPerSecond())));
        int block = 2 * (int) Math.max(SHORTEST / 2, Math.min(seconds * rate, wave.length() - 1.0) / 2);
        block = Math.min(block, wave.length() / 2 * 2);
        SpectrumPlan plan = SpectrumPlan.of(block, Window.hann());
        SpectrumPlan.Worker worker = plan.newWorker();
        double[] samples = wave.samples();
        double spacing = rate / block;
        int lines = (int) Math.min(Math.min(MOST_LINES, plan.lines()), Math.ceil(ORDERS * high / spacing) + 1);
        Quantity shown = wave.quantity() == Quantity.DISPLACEMENT ? Quantity.DISPLACEMENT : Quantity.VELOCITY;
        int times = wave.quantity().integrationsTo(shown);
        double lowest = times == 0 ? 1.5 * spacing : Math.max(3 * spacing, 0.4 * low);
        double[] speeds = new double[STEPS + 1];
        double[][] rms = new double[STEPS + 1][];
        for (int s = 0; s <= STEPS; s++) {
            speeds[s] = Math.min(high, low + (high - low) * s / STEPS);
            double middle = (sweep.secondsAt(RotationSpeed.ofHertz(speeds[s])) - wave.startSeconds()) * rate;
            int from = (int) Math.max(0, Math.min(samples.length - block, Math.rint(middle - 0.5 * block)));
            double[] squares = worker.addMeanSquares(samples, from, new double[plan.lines()]);
            rms[s] = new double[lines];
            for (int k = 0; k < lines; k++) {
                double hertz = k * spacing;
                rms[s][k] = hertz < lowest ? 0
                        : Math.sqrt(squares[k]) * Math.pow(2 * Math.PI * hertz, -times);
            }
        }
        return new Cascade(shown, spacing, speeds, rms);
    }

    /** {@return number of spectra} */
    public int spectra() {
        return rms.length;
    }

    /** {@return number of lines of a spectrum, from 0 Hz on} */
    public int lines() {
        return rms[0].length;
    }

    /** {@return distance of the lines in Hz} */
    public double spacingHertz() {
        return spacingHertz;
    }

    /** {@return displacement or velocity} */
    public Quantity quantity() {
        return quantity;
    }

    /**
     * Returns the speed of a spectrum.
     *
     * @param spectrum number of the spectrum from 0, by rising speed
     * @return the speed
     * @throws IndexOutOfBoundsException if there is no such spectrum
     */
    public RotationSpeed speed(int spectrum) {
        return RotationSpeed.ofHertz(speedsHertz[Objects.checkIndex(spectrum, speedsHertz.length)]);
    }

    /**
     * Returns the rms amplitudes of a spectrum.
     *
     * @param spectrum number of the spectrum from 0, by rising speed
     * @return a new array, one value a line, in the SI unit of the quantity; the lowest lines, which hold the mean or
     *     would be mostly noise, read 0
     * @throws IndexOutOfBoundsException if there is no such spectrum
     */
    public double[] rms(int spectrum) {
        return rms[Objects.checkIndex(spectrum, rms.length)].clone();
    }

    /** Rms of a tone near a frequency: of the highest line within two of it, with its neighbours. */
    double rmsNear(int spectrum, double hertz) {
        double[] lines = rms[spectrum];
        int middle = (int) Math.rint(hertz / spacingHertz);
        double best = 0;
        for (int k = Math.max(1, middle - 2); k <= Math.min(lines.length - 2, middle + 2); k++) {
            best = Math.max(best, lines[k - 1] * lines[k - 1] + lines[k] * lines[k] + lines[k + 1] * lines[k + 1]);
        }
        return Math.sqrt(best / HANN_BINS);
    }

    /** Two are equal if quantity, spacing, speeds and lines are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Cascade cascade && quantity == cascade.quantity
                && spacingHertz == cascade.spacingHertz && Arrays.equals(speedsHertz, cascade.speedsHertz)
                && Arrays.deepEquals(rms, cascade.rms);
    }

    /** Hashes speeds and lines. */
    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(speedsHertz) + Arrays.deepHashCode(rms);
    }

    /** Returns number of spectra and lines. */
    @Override
    public String toString() {
        return quantity + " cascade, " + spectra() + " spectra of " + lines() + " lines";
    }
}
