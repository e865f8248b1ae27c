package dev.vibra.bearing.study;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.synthesis.Resonance;
import dev.vibra.quantity.Quantity;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;

/**
 * What the disturbances of a simulated machine need to know of it.
 *
 * @param rates true kinematic rates of its bearing
 * @param resonance resonance that impacts from elsewhere ring
 * @param sampleRate sample rate in Hz
 * @param length number of samples
 * @param foreignRates takes the rates in Hz that were drawn for disturbances
 */
record Machine(KinematicFrequencies rates, Resonance resonance, double sampleRate, int length,
        List<Double> foreignRates) {
    /** Nearer than slip, error of speed and search window together can't be told from the element by anybody. */
    private static final double CLEAR = 0.045;
    private static final int ATTEMPTS = 100;

    double shaft() {
        return rates.shaftHertz();
    }

    /** Draws a rate until it is clear of those of the bearing; the last draw if none is. */
    double foreign(SplittableRandom random, ToDoubleFunction<SplittableRandom> draw) {
        double rate = draw.applyAsDouble(random);
        for (int i = 0; i < ATTEMPTS && !clear(rate); i++) {
            rate = draw.applyAsDouble(random);
        }
        foreignRates.add(rate);
        return rate;
    }

    /** A rolling element that strikes one race only strikes once a turn: nobody can tell that from the spin. */
    boolean clear(double rate) {
        return Math.abs(rate / rates.spinHertz() - 1) > CLEAR
                && Arrays.stream(BearingElement.values()).allMatch(e -> Math.abs(rate / rates.of(e) - 1) > CLEAR);
    }

    double[] impacts(double rate, double jitter, double modulation, double depth, SplittableRandom random) {
        ImpactTrain train = ImpactTrain.of(rate, 1, resonance.hertz(), resonance.dampingRatio()).withJitter(jitter)
                .withModulation(modulation, depth);
        return silence().impacts(train, random.nextLong()).waveform().samples();
    }

    /** White noise whose power swings at a rate. */
    double[] swinging(double rate, SplittableRandom random) {
        double[] samples = silence().noise(1, random.nextLong()).waveform().samples();
        double[] swing = silence().tone(random.nextDouble(0.3, 1), rate, 2 * Math.PI * random.nextDouble()).waveform()
                .samples();
        for (int i = 0; i < samples.length; i++) {
            samples[i] *= 1 + swing[i];
        }
        return samples;
    }

    /** The resonance as two poles, with the impulse response {@code exp(-an)·sin(bn)}. */
    double[] rung(double[] excitation) {
        double decay = 2 * Math.PI * resonance.dampingRatio() * resonance.hertz() / sampleRate;
        double turn = 2 * Math.PI * resonance.hertz() / sampleRate;
        double first = 2 * StrictMath.exp(-decay) * StrictMath.cos(turn);
        double second = -StrictMath.exp(-2 * decay);
        double gain = StrictMath.exp(-decay) * StrictMath.sin(turn);
        double[] out = new double[excitation.length];
        for (int i = 2; i < out.length; i++) {
            out[i] = first * out[i - 1] + second * out[i - 2] + gain * excitation[i - 1];
        }
        return out;
    }

    Synthesis silence() {
        return Synthesis.silence(Quantity.ACCELERATION, sampleRate, length);
    }

    /** Adds the second, scaled to a level relative to the first; the first alone if either is silent. */
    static double[] sum(double[] to, double[] what, double levelRatio) {
        double scale = levelRatio * rms(to) / rms(what);
        double[] sum = to.clone();
        for (int i = 0; i < sum.length && scale > 0 && scale < Double.POSITIVE_INFINITY; i++) {
            sum[i] += scale * what[i];
        }
        return sum;
    }

    static double rms(double[] samples) {
        double squares = 0;
        for (double x : samples) {
            squares += x * x;
        }
        return Math.sqrt(squares / samples.length);
    }
}
