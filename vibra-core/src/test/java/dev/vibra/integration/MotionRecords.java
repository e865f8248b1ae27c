package dev.vibra.integration;

import dev.vibra.level.Moments;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.transform.RealTransform;
import java.util.Arrays;
import java.util.Random;
import java.util.SplittableRandom;

/**
 * Simulated recordings and how far the levels of a short one are from those that a recording of forty more periods of
 * the lower end gives for the same stretch. Accelerations, band from 2 Hz to 250 Hz, 800 samples a second.
 */
final class MotionRecords {
    static final double RATE = 800;
    static final Band BAND = Band.of(2, 250);
    private static final double MORE_PERIODS = 40;

    /** What a recording is made of; tones have velocities of 1 to 20 anywhere in the band, evenly by octaves. */
    enum Kind {
        /** Up to six tones, noise of up to a tenth of their rms. */
        TONES,
        /** One tone and nothing else. */
        ONE_TONE,
        /** Tones in white noise of 0.4 to 7 times their rms. */
        NOISE,
        /** Tones, a bias of up to ten times their rms, a ramp and a decay as those of a sensor that warms up. */
        DRIFT,
        /** Tones and a sway at 0.05 to 0.6 times the lower end, of 3 to 60 times the velocity of the weakest tones. */
        SWAY
    }

    /** Error of the rms, of the peak-to-peak value, and what was stated for both. */
    record Outcome(double rms, double peakToPeak, double stated) {
        boolean holds() {
            return Math.max(rms, peakToPeak) <= stated;
        }
    }

    private final int length;
    private final int longLength;
    private final MotionPlan plan;
    private final SpectralIntegration ofLong;
    private final RealTransform transform;

    MotionRecords(double periods, Quantity target) {
        length = (int) Math.round(periods / BAND.lowestHertz() * RATE);
        longLength = RealTransform.fastLength((int) (length + MORE_PERIODS / BAND.lowestHertz() * RATE));
        plan = MotionPlan.of(length, RATE, Quantity.ACCELERATION, target, BAND);
        ofLong = SpectralIntegration.of(longLength, RATE, Quantity.ACCELERATION, target, BAND);
        transform = RealTransform.of(length);
    }

    Outcome simulate(Kind kind, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] all = new double[longLength];
        double rms = addTones(all, kind == Kind.ONE_TONE ? 1 : 1 + random.nextInt(6), random);
        double noise = switch (kind) {
            case ONE_TONE -> 0;
            case NOISE -> rms * Math.exp(random.nextDouble(-1, 2));
            default -> rms * random.nextDouble(0, 0.1);
        };
        Random normal = new Random(seed);
        for (int i = 0; i < all.length; i++) {
            all[i] += noise * normal.nextGaussian();
        }
        if (kind == Kind.SWAY) {
            double hertz = BAND.lowestHertz() * random.nextDouble(0.05, 0.6);
            addTone(all, 2 * Math.PI * hertz * 3 * Math.exp(random.nextDouble(0, 3)), hertz, random);
        }
        int start = (longLength - length) / 2;
        double[] samples = Arrays.copyOfRange(all, start, start + length);
        if (kind == Kind.DRIFT) {
            addDrift(samples, rms, random);
        }
        return compare(all, samples, start);
    }

    private static double addTones(double[] x, int count, SplittableRandom random) {
        double squares = 0;
        for (int i = 0; i < count; i++) {
            double hertz = BAND.lowestHertz()
                    * Math.pow(BAND.highestHertz() / BAND.lowestHertz(), random.nextDouble());
            double amplitude = 2 * Math.PI * hertz * Math.exp(random.nextDouble(0, 3));
            addTone(x, amplitude, hertz, random);
            squares += 0.5 * amplitude * amplitude;
        }
        return Math.sqrt(squares);
    }

    private static void addTone(double[] x, double amplitude, double hertz, SplittableRandom random) {
        double phase = random.nextDouble(0, 2 * Math.PI);
        for (int i = 0; i < x.length; i++) {
            x[i] += amplitude * Math.cos(2 * Math.PI * hertz * i / RATE + phase);
        }
    }

    private void addDrift(double[] x, double rms, SplittableRandom random) {
        double bias = rms * random.nextDouble(0, 10);
        double ramp = rms * random.nextDouble(-1, 1);
        double decay = rms * random.nextDouble();
        double time = length * random.nextDouble(0.1, 1.1);
        for (int i = 0; i < x.length; i++) {
            x[i] += bias + ramp * i / length + decay * Math.exp(-i / time);
        }
    }

    private Outcome compare(double[] all, double[] samples, int start) {
        double[] lines = transform.forward(samples, 0, new double[2 * transform.lines()]);
        lines[0] = 0;
        plan.take(lines);
        double[] settled = ofLong.process(all, 0, new double[ofLong.settledLength()]);
        int taper = (int) Math.round(plan.taperedPart() * length);
        Moments truth = Moments.of(settled, start + taper - ofLong.settledFrom(), length - 2 * taper);
        return new Outcome(Math.abs(plan.rms() / truth.rms() - 1),
                Math.abs(plan.peakToPeak() / truth.peakToPeak() - 1), plan.relativeError());
    }
}
