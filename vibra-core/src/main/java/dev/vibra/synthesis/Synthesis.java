package dev.vibra.synthesis;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.transform.RealTransform;
import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/**
 * A signal under construction: each step returns a new one with something added or done to it. All values in SI units
 * of the quantity.
 *
 * <p>Immutable; the same steps with the same seeds give the same samples on every machine (StrictMath).
 */
public final class Synthesis {
    private final Quantity quantity;
    private final double sampleRateHertz;
    private final double[] samples;

    private Synthesis(Quantity quantity, double sampleRateHertz, double[] samples) {
        this.quantity = quantity;
        this.sampleRateHertz = sampleRateHertz;
        this.samples = samples;
    }

    /**
     * Begins with silence.
     *
     * @param quantity what the samples measure
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param length number of samples, 1 to 2²⁶
     * @return a signal of zeros
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static Synthesis silence(Quantity quantity, double sampleRateHertz, int length) {
        Objects.requireNonNull(quantity, "quantity");
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        return new Synthesis(quantity, sampleRateHertz, new double[Require.count("length", length, 1,
                Require.MOST_SAMPLES)]);
    }

    /**
     * Adds a tone {@code amplitude·cos(2πft + phase)}.
     *
     * @param amplitude zero-to-peak amplitude, finite, zero or more
     * @param hertz frequency in Hz, above zero, below half the sample rate
     * @param phaseRadians phase at the first sample in rad, finite
     * @return the signal with the tone
     * @throws IllegalArgumentException if an argument is out of range
     */
    public Synthesis tone(double amplitude, double hertz, double phaseRadians) {
        Require.notNegative("amplitude", amplitude, "");
        requireBelowNyquist("hertz", hertz);
        Require.finite("phaseRadians", phaseRadians);
        double[] sum = samples.clone();
        Oscillator tone = new Oscillator(2 * Math.PI * hertz / sampleRateHertz, phaseRadians);
        for (int i = 0; i < sum.length; i++) {
            sum[i] += amplitude * tone.next();
        }
        return with(sum);
    }

    /**
     * Adds a family of harmonics of one fundamental: {@code Σ A_n·cos(2πn·f·t + φ_n)}.
     *
     * @param hertz fundamental in Hz, above zero, its highest harmonic below half the sample rate
     * @param amplitudes zero-to-peak amplitudes A_1, A_2, …, each finite, zero or more
     * @param phasesRadians phases φ_1, φ_2, … in rad, as many
     * @return the signal with the harmonics
     * @throws IllegalArgumentException if an argument is out of range or the arrays differ in length
     */
    public Synthesis harmonics(double hertz, double[] amplitudes, double[] phasesRadians) {
        Objects.requireNonNull(phasesRadians, "phasesRadians");
        if (Objects.requireNonNull(amplitudes, "amplitudes").length != phasesRadians.length) {
            throw new IllegalArgumentException("phasesRadians must be as many as amplitudes, " + amplitudes.length
                    + ": "
                    + phasesRadians.length);
        }
        Synthesis sum = this;
        for (int n = 1; n <= amplitudes.length; n++) {
            sum = sum.tone(amplitudes[n - 1], n * hertz, phasesRadians[n - 1]);
        }
        return sum;
    }

    /**
     * Adds a tone modulated in amplitude and phase: {@code A·(1 + m·cos(2πfm·t))·cos(2πf·t + β·sin(2πfm·t))}.
     *
     * @param amplitude zero-to-peak amplitude of the carrier, finite, zero or more
     * @param hertz carrier in Hz, above zero, below half the sample rate
     * @param modulationHertz rate of the modulation in Hz, finite, zero or more
     * @param depth depth m of the amplitude modulation, 0 to 1
     * @param indexRadians index β of the phase modulation in rad, finite, zero or more
     * @return the signal with the modulated tone
     * @throws IllegalArgumentException if an argument is out of range
     */
    public Synthesis modulatedTone(double amplitude, double hertz, double modulationHertz, double depth,
            double indexRadians) {
        Require.notNegative("amplitude", amplitude, "");
        requireBelowNyquist("hertz", hertz);
        Require.notNegative("modulationHertz", modulationHertz, "Hz");
        Require.within("depth", depth, 0, 1, "");
        Require.notNegative("indexRadians", indexRadians, "rad");
        double[] sum = samples.clone();
        Oscillator slow = new Oscillator(2 * Math.PI * modulationHertz / sampleRateHertz, 0);
        Oscillator carrier = new Oscillator(2 * Math.PI * hertz / sampleRateHertz, 0);
        for (int i = 0; i < sum.length; i++) {
            double sine = slow.sine();
            double swing = amplitude * (1 + depth * slow.next());
            sum[i] += swing * (indexRadians == 0 ? carrier.next()
                    : StrictMath.cos(2 * Math.PI * hertz * i / sampleRateHertz + indexRadians * sine));
        }
        return with(sum);
    }

    /**
     * Adds a sine whose frequency rises or falls evenly from the first sample to the last.
     *
     * @param amplitude zero-to-peak amplitude, finite, zero or more
     * @param fromHertz frequency at the first sample in Hz, above zero, below half the sample rate
     * @param toHertz frequency at the end in Hz, above zero, below half the sample rate
     * @return the signal with the sweep
     * @throws IllegalArgumentException if an argument is out of range
     */
    public Synthesis sweep(double amplitude, double fromHertz, double toHertz) {
        Require.notNegative("amplitude", amplitude, "");
        requireBelowNyquist("fromHertz", fromHertz);
        requireBelowNyquist("toHertz", toHertz);
        double[] sum = samples.clone();
        double duration = sum.length / sampleRateHertz;
        for (int i = 0; i < sum.length; i++) {
            double t = i / sampleRateHertz;
            double meanHertz = fromHertz + 0.5 * (toHertz - fromHertz) * t / duration;
            sum[i] += amplitude * StrictMath.cos(2 * Math.PI * meanHertz * t);
        }
        return with(sum);
    }

    /**
     * Adds noise of normal distribution whose density falls as {@code 1/f^exponent}: 0 white, 1 pink, 2 brown.
     *
     * @param rms standard deviation, finite, zero or more
     * @param exponent slope of the density, 0 to 4
     * @param seed seed; the same seed gives the same noise
     * @return the signal with the noise
     * @throws IllegalArgumentException if an argument is out of range
     */
    public Synthesis colouredNoise(double rms, double exponent, long seed) {
        Require.notNegative("rms", rms, "");
        Require.within("exponent", exponent, 0, 4, "");
        double[] white = new Synthesis(quantity, sampleRateHertz, new double[samples.length]).noise(1, seed).samples;
        RealTransform transform = RealTransform.of(white.length);
        double[] spectrum = transform.forward(white, 0, new double[2 * transform.lines()]);
        spectrum[0] = 0;
        for (int k = 1; k < transform.lines(); k++) {
            double factor = StrictMath.pow(k, -0.5 * exponent);
            spectrum[2 * k] *= factor;
            spectrum[2 * k + 1] *= factor;
        }
        double[] noise = transform.inverse(spectrum, white, 0);
        double scale = 0;
        for (double x : noise) {
            scale += x * x / noise.length;
        }
        double[] sum = samples.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += scale == 0 ? 0 : rms * noise[i] / Math.sqrt(scale);
        }
        return with(sum);
    }

    /**
     * Adds white noise of normal distribution.
     *
     * @param rms standard deviation, finite, zero or more
     * @param seed seed; the same seed gives the same noise
     * @return the signal with the noise
     * @throws IllegalArgumentException if the standard deviation is out of range
     */
    public Synthesis noise(double rms, long seed) {
        Require.notNegative("rms", rms, "");
        Random random = new Random(seed);
        double[] sum = samples.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += rms * random.nextGaussian();
        }
        return with(sum);
    }

    /**
     * Adds a train of impacts, each ringing a resonance: {@code peak·exp(-2πζ·f·t)·sin(2πf·√(1-ζ²)·t)} from its start
     * on, the impulse response of one degree of freedom.
     *
     * @param impacts rate, strength and resonance
     * @param seed seed of the jitter; the same seed gives the same train
     * @return the signal with the impacts
     * @throws IllegalArgumentException if the resonance isn't below half the sample rate
     */
    public Synthesis impacts(ImpactTrain impacts, long seed) {
        requireBelowNyquist("resonanceHertz", Objects.requireNonNull(impacts, "impacts").resonanceHertz());
        double[] sum = samples.clone();
        impacts.addTo(sum, sampleRateHertz, new Random(seed));
        return with(sum);
    }

    /**
     * Passes through a sensor that follows with a first-order lag: {@code 1/(1 + i·f/f0)}. The recording is taken as
     * periodic.
     *
     * @param hertz frequency f0 at which half the power passes, in Hz, finite, above zero
     * @return the signal as the sensor shows it
     * @throws IllegalArgumentException if the frequency is out of range
     */
    public Synthesis firstOrder(double hertz) {
        Require.positive("hertz", hertz, "Hz");
        return filtered(f -> 1, f -> f / hertz);
    }

    /**
     * Passes through a sensor with one degree of freedom: {@code 1/(1 - (f/f0)² + 2iζ·f/f0)}, an accelerometer with
     * its mounted resonance or, with ζ = 0.707, a flat low pass. The recording is taken as periodic.
     *
     * @param hertz undamped natural frequency f0 in Hz, finite, above zero
     * @param dampingRatio damping ratio ζ, above 0, finite
     * @return the signal as the sensor shows it
     * @throws IllegalArgumentException if an argument is out of range
     * @see "S. S. Rao, Mechanical Vibrations, chapter on vibration measurement"
     */
    public Synthesis secondOrder(double hertz, double dampingRatio) {
        Require.positive("hertz", hertz, "Hz");
        Require.positive("dampingRatio", dampingRatio, "");
        return filtered(f -> 1 - f / hertz * (f / hertz), f -> 2 * dampingRatio * f / hertz);
    }

    /** Divides each line by real and imaginary part of a denominator. */
    private Synthesis filtered(DoubleUnaryOperator real, DoubleUnaryOperator imaginary) {
        RealTransform transform = RealTransform.of(samples.length);
        double[] spectrum = transform.forward(samples, 0, new double[2 * transform.lines()]);
        for (int k = 0; k < transform.lines(); k++) {
            double hertz = k * sampleRateHertz / samples.length;
            double a = real.applyAsDouble(hertz);
            double b = imaginary.applyAsDouble(hertz);
            double square = a * a + b * b;
            double re = spectrum[2 * k];
            spectrum[2 * k] = (re * a + spectrum[2 * k + 1] * b) / square;
            spectrum[2 * k + 1] = (spectrum[2 * k + 1] * a - re * b) / square;
        }
        return with(transform.inverse(spectrum, new double[samples.length], 0));
    }

    /**
     * Adds a train of impacts that follows a shaft of varying speed: rates are those at its mean speed, the ringing
     * keeps its frequency.
     *
     * @param impacts rate, strength and resonance
     * @param profile speed of the shaft, at least as long as the signal
     * @param seed seed of the jitter; the same seed gives the same train
     * @return the signal with the impacts
     * @throws IllegalArgumentException if the resonance isn't below half the sample rate or the profile is shorter
     */
    public Synthesis impacts(ImpactTrain impacts, SpeedProfile profile, long seed) {
        requireBelowNyquist("resonanceHertz", Objects.requireNonNull(impacts, "impacts").resonanceHertz());
        requireCovered(Objects.requireNonNull(profile, "profile"));
        double[] sum = samples.clone();
        double mean = profile.meanSpeed().hertz();
        double turns = profile.revolutionsAt(profile.seconds());
        impacts.addTo(sum, sampleRateHertz, new Random(seed), even -> profile.secondsAt(Math.min(turns, even * mean)));
        return with(sum);
    }

    /**
     * Adds a tone that follows a shaft of varying speed: {@code amplitude·cos(2π·order·θ(t) + phase)} with the angle θ
     * in revolutions.
     *
     * @param amplitude zero-to-peak amplitude, finite, zero or more
     * @param order frequency over that of the shaft, above zero; below half the sample rate at every speed of it
     * @param profile speed of the shaft, at least as long as the signal
     * @param phaseRadians phase at the first sample in rad, finite
     * @return the signal with the tone
     * @throws IllegalArgumentException if an argument is out of range
     */
    public Synthesis order(double amplitude, double order, SpeedProfile profile, double phaseRadians) {
        Require.notNegative("amplitude", amplitude, "");
        requireCovered(Objects.requireNonNull(profile, "profile"));
        requireBelowNyquist("order times the speed", order * profile.fastest().hertz());
        Require.finite("phaseRadians", phaseRadians);
        double[] sum = samples.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += amplitude * StrictMath.cos(2 * Math.PI * order * profile.revolutionsAt(i / sampleRateHertz)
                    + phaseRadians);
        }
        return with(sum);
    }

    private void requireCovered(SpeedProfile profile) {
        if (!(profile.seconds() * sampleRateHertz >= samples.length - 1e-6)) {
            throw Require.failure("duration of the profile", "at least that of the signal, "
                    + samples.length / sampleRateHertz + " s", profile.seconds());
        }
    }

    /**
     * Adds another signal of the same length and rate, sample by sample.
     *
     * @param other waveform of the same quantity, sample rate and length
     * @return the sum
     * @throws IllegalArgumentException if the two don't match
     */
    public Synthesis plus(Waveform other) {
        if (Objects.requireNonNull(other, "other").quantity() != quantity || other.length() != samples.length
                || other.sampleRateHertz() != sampleRateHertz) {
            throw new IllegalArgumentException("waveform must be " + quantity + ", " + samples.length + " samples at "
                    + sampleRateHertz + " Hz: " + other);
        }
        double[] sum = other.samples();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += samples[i];
        }
        return with(sum);
    }

    /**
     * Adds a bias.
     *
     * @param bias value added to every sample, finite
     * @return the shifted signal
     * @throws IllegalArgumentException if the bias is not finite
     */
    public Synthesis bias(double bias) {
        Require.finite("bias", bias);
        double[] shifted = samples.clone();
        for (int i = 0; i < shifted.length; i++) {
            shifted[i] += bias;
        }
        return with(shifted);
    }

    /**
     * Clips as an overdriven converter does.
     *
     * @param fullScale largest magnitude that passes, finite, above zero
     * @return the clipped signal
     * @throws IllegalArgumentException if the full scale is out of range
     */
    public Synthesis clip(double fullScale) {
        Require.positive("fullScale", fullScale, "");
        double[] clipped = samples.clone();
        for (int i = 0; i < clipped.length; i++) {
            clipped[i] = Math.max(-fullScale, Math.min(fullScale, clipped[i]));
        }
        return with(clipped);
    }

    /**
     * Drops out: from a time on, the last good sample is held.
     *
     * @param fromSeconds start of the drop-out in s, inside the signal and not at its first sample
     * @param durationSeconds length of the drop-out in s, above zero, ending inside the signal
     * @return the signal with the drop-out
     * @throws IllegalArgumentException if the drop-out leaves the signal
     */
    public Synthesis dropOut(double fromSeconds, double durationSeconds) {
        Require.positive("fromSeconds", fromSeconds, "s");
        Require.positive("durationSeconds", durationSeconds, "s");
        int from = (int) Math.round(fromSeconds * sampleRateHertz);
        int count = (int) Math.round(durationSeconds * sampleRateHertz);
        if (from < 1 || from + count > samples.length) {
            throw new IllegalArgumentException("drop-out must lie inside the signal of " + samples.length
                    + " samples, behind the first: from " + from + ", " + count + " samples");
        }
        double[] held = samples.clone();
        Arrays.fill(held, from, from + count, held[from - 1]);
        return with(held);
    }

    /**
     * Rounds to whole steps, as a converter does.
     *
     * @param step size of a step, finite, above zero
     * @return the rounded signal
     * @throws IllegalArgumentException if the step is out of range
     */
    public Synthesis quantise(double step) {
        Require.positive("step", step, "");
        double[] rounded = samples.clone();
        for (int i = 0; i < rounded.length; i++) {
            rounded[i] = Math.rint(rounded[i] / step) * step;
        }
        return with(rounded);
    }

    /**
     * Finishes.
     *
     * @return the signal as a waveform
     */
    public Waveform waveform() {
        return Waveform.ofSi(quantity, sampleRateHertz, samples);
    }

    private Synthesis with(double[] newSamples) {
        return new Synthesis(quantity, sampleRateHertz, newSamples);
    }

    private void requireBelowNyquist(String name, double hertz) {
        if (!(hertz > 0 && hertz < sampleRateHertz / 2)) {
            throw Require.failure(name, "above 0 and below half the sample rate, " + sampleRateHertz / 2 + " Hz",
                    hertz);
        }
    }

    /** Returns size and quantity. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "synthesis of %,d samples, %s", samples.length, quantity);
    }
}
