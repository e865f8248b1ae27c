package dev.vibra.cepstrum;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.signal.Waveform;
import dev.vibra.transform.RealTransform;
import java.io.Serializable;
import java.util.Objects;

/**
 * Real cepstrum of a whole recording: {@code c = F⁻¹{ ln|F{x}| }}, and the power cepstrum {@code (2c)²} = {@code
 * |F⁻¹{ln|X|²}|²}.
 *
 * <p>A family of lines f apart is a peak at the quefrency 1/f and its multiples. The recording is taken as it is,
 * without window; the logarithm has no value for a line without any power, which gets the smallest value of the others.
 *
 * @see "R. B. Randall, A history of cepstrum analysis and its application to mechanical problems, Mech. Syst. Signal
 *     Process. 97 (2017) 3-19, doi:10.1016/j.ymssp.2016.12.026"
 */
public final class Cepstrum implements Serializable {
    private static final long serialVersionUID = 1;

    private final Waveform wave;
    private final double[] values;

    private Cepstrum(Waveform wave, double[] values) {
        this.wave = wave;
        this.values = values;
        Require.count("number of values", values.length, wave.length(), wave.length());
        Require.allFinite("values", values);
    }

    private Object readResolve() {
        return new Cepstrum(wave, values.clone());
    }

    /**
     * Computes the cepstrum of a recording.
     *
     * @param wave recording, at least 4 samples, not constant at 0
     * @return the cepstrum
     * @throws IllegalArgumentException if the recording is too short or all zero
     */
    public static Cepstrum of(Waveform wave) {
        Require.atLeast("number of samples", Objects.requireNonNull(wave, "wave").length(), 4);
        RealTransform transform = RealTransform.of(wave.length());
        double[] spectrum = transform.forward(wave.samples(), 0, new double[2 * transform.lines()]);
        double[] logarithm = new double[spectrum.length];
        double smallest = Double.POSITIVE_INFINITY;
        for (int k = 0; k < transform.lines(); k++) {
            double magnitude = Math.hypot(spectrum[2 * k], spectrum[2 * k + 1]);
            logarithm[2 * k] = Math.log(magnitude);
            if (magnitude > 0) {
                smallest = Math.min(smallest, logarithm[2 * k]);
            }
        }
        if (smallest == Double.POSITIVE_INFINITY) {
            throw new IllegalArgumentException("samples must not all be zero");
        }
        for (int k = 0; k < transform.lines(); k++) {
            logarithm[2 * k] = Math.max(logarithm[2 * k], smallest);
        }
        return new Cepstrum(wave, transform.inverse(logarithm, new double[wave.length()], 0));
    }

    /**
     * Returns the number of values; the second half mirrors the first.
     *
     * @return number of values, that of the samples
     */
    public int length() {
        return values.length;
    }

    /**
     * Returns the quefrency of a value.
     *
     * @param index number of the value from 0
     * @return quefrency in s
     */
    public double quefrencySeconds(int index) {
        return index / wave.sampleRateHertz();
    }

    /**
     * Returns a value of the real cepstrum.
     *
     * @param index number of the value from 0
     * @return value without unit (natural logarithm of amplitude)
     * @throws IndexOutOfBoundsException if there is no such value
     */
    public double at(int index) {
        return values[Objects.checkIndex(index, values.length)];
    }

    /**
     * Returns a value of the power cepstrum, {@code (2c)²}.
     *
     * @param index number of the value from 0
     * @return value without unit
     * @throws IndexOutOfBoundsException if there is no such value
     */
    public double power(int index) {
        double twice = 2 * at(index);
        return twice * twice;
    }

    /**
     * Finds the largest value in a range of quefrencies.
     *
     * @param shortestSeconds shortest quefrency in s, above zero
     * @param longestSeconds longest quefrency in s, at most half the duration
     * @return quefrency of the largest value in s
     * @throws IllegalArgumentException if the range is out of order or holds no value
     */
    public double largestSeconds(double shortestSeconds, double longestSeconds) {
        int first = first(shortestSeconds);
        int last = last(shortestSeconds, longestSeconds);
        int best = first;
        for (int i = first; i <= last; i++) {
            best = values[i] > values[best] ? i : best;
        }
        return quefrencySeconds(best);
    }

    /**
     * Takes a range of quefrencies out of the recording: the logarithmic amplitude is edited, the phase kept. Taking
     * out the quefrency of a family of lines and its multiples removes that family; keeping only short quefrencies
     * leaves the resonances.
     *
     * @param shortestSeconds shortest quefrency to set to zero in s, above zero
     * @param longestSeconds longest quefrency to set to zero in s, at most half the duration
     * @return the edited recording
     * @throws IllegalArgumentException if the range is out of order or holds no value
     * @see "R. B. Randall, N. Sawalhi, A new method for separating discrete components from a signal, Sound and
     *     Vibration 45 (2011) 6-9"
     */
    public Waveform without(double shortestSeconds, double longestSeconds) {
        double[] edited = values.clone();
        for (int i = first(shortestSeconds); i <= last(shortestSeconds, longestSeconds); i++) {
            edited[i] = 0;
            edited[edited.length - i] = 0;
        }
        RealTransform transform = RealTransform.of(edited.length);
        double[] logarithm = transform.forward(edited, 0, new double[2 * transform.lines()]);
        double[] spectrum = transform.forward(wave.samples(), 0, new double[2 * transform.lines()]);
        for (int k = 0; k < transform.lines(); k++) {
            double magnitude = Math.hypot(spectrum[2 * k], spectrum[2 * k + 1]);
            double factor = magnitude == 0 ? 0 : Math.exp(logarithm[2 * k]) / magnitude;
            spectrum[2 * k] *= factor;
            spectrum[2 * k + 1] *= factor;
        }
        return Waveform.ofSi(wave.quantity(), wave.sampleRateHertz(),
                transform.inverse(spectrum, new double[edited.length], 0));
    }

    private int first(double shortestSeconds) {
        Require.positive("shortestSeconds", shortestSeconds, "s");
        return Math.max(1, (int) Math.ceil(shortestSeconds * wave.sampleRateHertz() - 1e-9));
    }

    private int last(double shortestSeconds, double longestSeconds) {
        Require.within("longestSeconds", longestSeconds, shortestSeconds, 0.5 * wave.durationSeconds(), "s");
        int last = (int) Math.floor(longestSeconds * wave.sampleRateHertz() + 1e-9);
        if (last < first(shortestSeconds)) {
            throw new IllegalArgumentException("quefrencies must hold at least one value, " + 1 / wave.sampleRateHertz()
                    + " s apart: " + shortestSeconds + " s to " + longestSeconds + " s");
        }
        return last;
    }

    /** Returns number and range of the values. */
    @Override
    public String toString() {
        return "cepstrum of " + length() + " values to " + Digits.significant(wave.durationSeconds() / 2, 3) + " s";
    }
}
