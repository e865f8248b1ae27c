package dev.vibra.synthesis;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.complex.Complex;

/**
 * Impacts at a nearly steady rate, each of which rings a resonance.
 *
 * <p>The intervals between impacts vary independently, as rolling elements slip: a random walk, not a jitter about a
 * fixed clock (J. Antoni, R. B. Randall, <i>J. Vib. Acoust.</i> 125 (2003) 282-289). The strength may swing once a
 * modulation period, as for a defect that passes a load zone: {@code peak·(1 + depth·cos(2π·fm·t))/(1 + depth)}. Every
 * second impact may be weaker, as for a spot on a rolling element that strikes one raceway and then the other.
 *
 * @param rateHertz mean impacts per second, finite, above zero
 * @param peak amplitude of the decaying sine in the unit of the signal, finite, zero or more
 * @param resonanceHertz undamped natural frequency in Hz, finite, above zero
 * @param dampingRatio damping ratio ζ, above 0, below 1
 * @param jitter standard deviation of an interval over the mean interval, 0 to 0.2
 * @param modulationHertz rate of the modulation in Hz, zero or more
 * @param modulationDepth depth of the modulation, 0 to 1
 * @param alternate strength of every second impact over that of the others, 0 to 1
 */
public record ImpactTrain(double rateHertz, double peak, double resonanceHertz, double dampingRatio, double jitter,
        double modulationHertz, double modulationDepth, double alternate) implements Serializable {
    /** Impacts that ring at the same time. */
    private static final double MOST_AT_ONCE = 1e4;
    /** Ringing is followed until it has fallen to this fraction. */
    private static final double NEGLIGIBLE = 1e-6;

    /**
     * Checks the values.
     *
     * @param rateHertz see the record
     * @param peak see the record
     * @param resonanceHertz see the record
     * @param dampingRatio see the record
     * @param jitter see the record
     * @param modulationHertz see the record
     * @param modulationDepth see the record
     * @param alternate see the record
     */
    public ImpactTrain {
        Require.positive("rateHertz", rateHertz, "Hz");
        Require.notNegative("peak", peak, "");
        Require.positive("resonanceHertz", resonanceHertz, "Hz");
        if (!(dampingRatio > 0 && dampingRatio < 1)) {
            throw Require.failure("dampingRatio", "above 0 and below 1", dampingRatio);
        }
        Require.within("jitter", jitter, 0, 0.2, "");
        Require.notNegative("modulationHertz", modulationHertz, "Hz");
        Require.within("modulationDepth", modulationDepth, 0, 1, "");
        Require.within("alternate", alternate, 0, 1, "");
    }

    /**
     * Makes a steady train without jitter and modulation.
     *
     * @param rateHertz impacts per second, finite, above zero
     * @param peak amplitude of the decaying sine in the unit of the signal, finite, zero or more
     * @param resonanceHertz undamped natural frequency in Hz, finite, above zero
     * @param dampingRatio damping ratio, above 0, below 1
     * @return the train
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static ImpactTrain of(double rateHertz, double peak, double resonanceHertz, double dampingRatio) {
        return new ImpactTrain(rateHertz, peak, resonanceHertz, dampingRatio, 0, 0, 0, 1);
    }

    /**
     * Returns this train with slip between impacts.
     *
     * @param newJitter standard deviation of an interval over the mean interval, 0 to 0.2
     * @return the train with jitter
     * @throws IllegalArgumentException if the jitter is out of range
     */
    public ImpactTrain withJitter(double newJitter) {
        return new ImpactTrain(rateHertz, peak, resonanceHertz, dampingRatio, newJitter, modulationHertz,
                modulationDepth, alternate);
    }

    /**
     * Returns this train with its strength swinging.
     *
     * @param hertz rate of the modulation in Hz, zero or more
     * @param depth depth of the modulation, 0 to 1
     * @return the train with modulation
     * @throws IllegalArgumentException if an argument is out of range
     */
    public ImpactTrain withModulation(double hertz, double depth) {
        return new ImpactTrain(rateHertz, peak, resonanceHertz, dampingRatio, jitter, hertz, depth, alternate);
    }

    /**
     * Returns this train with every second impact weaker.
     *
     * @param share strength of the second, fourth, … impact over that of the others, 0 to 1
     * @return the train with unequal impacts
     * @throws IllegalArgumentException if the share is out of range
     */
    public ImpactTrain withAlternate(double share) {
        return new ImpactTrain(rateHertz, peak, resonanceHertz, dampingRatio, jitter, modulationHertz, modulationDepth,
                share);
    }

    void addTo(double[] samples, double sampleRate, Random random) {
        addTo(samples, sampleRate, random, DoubleUnaryOperator.identity());
    }

    /** The clock gives the time at which a shaft of varying speed stands where one of mean speed stands at a time. */
    void addTo(double[] samples, double sampleRate, Random random, DoubleUnaryOperator clock) {
        double decay = 2 * Math.PI * dampingRatio * resonanceHertz;
        int ringing = (int) Math.min(samples.length, Math.ceil(-StrictMath.log(NEGLIGIBLE) / decay * sampleRate));
        Require.within("rateHertz times the samples of the ringing over the sample rate",
                rateHertz / sampleRate * ringing, 0, MOST_AT_ONCE, "");
        List<Impact> impacts = new ArrayList<>();
        double even = 0.5 / rateHertz;
        double share = 1;
        while (even * sampleRate < samples.length) {
            double swing = modulationDepth * StrictMath.cos(2 * Math.PI * modulationHertz * even);
            double strength = share * peak * (1 + swing) / (1 + modulationDepth);
            double time = clock.applyAsDouble(even);
            int first = (int) Math.ceil(time * sampleRate);
            if (first < samples.length) {
                double since = first / sampleRate - time;
                impacts.add(new Impact(first, pointer(strength, since), first + (long) ringing,
                        pointer(strength, since + ringing / sampleRate)));
            }
            // An interval can't be negative; at the largest jitter allowed that would be a draw of minus five sigma.
            even += Math.max(0, 1 + jitter * random.nextGaussian()) / rateHertz;
            share = share == 1 ? alternate : 1;
        }
        ring(samples, impacts, pointer(1, 1 / sampleRate));
    }

    /** First sample of the ringing, the one behind its last, and where its pointer stands at both. */
    private record Impact(int first, Complex start, long end, Complex rest) {}

    /** The decaying sine is the imaginary part of a pointer that turns and shrinks. */
    private Complex pointer(double strength, double since) {
        double decay = 2 * Math.PI * dampingRatio * resonanceHertz;
        double damped = 2 * Math.PI * resonanceHertz * StrictMath.sqrt(1 - dampingRatio * dampingRatio);
        double shrunk = strength * StrictMath.exp(-decay * since);
        return new Complex(shrunk * StrictMath.cos(damped * since), shrunk * StrictMath.sin(damped * since));
    }

    /**
     * All pointers turn and shrink by the same factor each sample, so their sum does: an impact adds its pointer at its
     * first sample and takes away what is left behind its last.
     */
    private static void ring(double[] samples, List<Impact> impacts, Complex step) {
        int begun = 0;
        int ended = 0;
        double re = 0;
        double im = 0;
        for (int i = 0; i < samples.length;) {
            for (; begun < impacts.size() && impacts.get(begun).first == i; begun++) {
                re += impacts.get(begun).start.getReal();
                im += impacts.get(begun).start.getImaginary();
            }
            for (; ended < begun && impacts.get(ended).end == i; ended++) {
                re -= impacts.get(ended).rest.getReal();
                im -= impacts.get(ended).rest.getImaginary();
            }
            if (ended == begun) {
                re = 0;
                im = 0;
            }
            long next = Math.min(begun < impacts.size() ? impacts.get(begun).first : samples.length,
                    ended < begun ? impacts.get(ended).end : samples.length);
            for (int last = (int) Math.min(next, samples.length); i < last; i++) {
                samples[i] += im;
                double turned = re * step.getReal() - im * step.getImaginary();
                im = re * step.getImaginary() + im * step.getReal();
                re = turned;
            }
        }
    }
}
