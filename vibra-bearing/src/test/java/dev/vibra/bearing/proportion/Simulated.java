package dev.vibra.bearing.proportion;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import java.util.SplittableRandom;

/** Seeded bearings with a clear defect, and machines without any. */
record Simulated(BearingGeometry bearing, double shaftHertz, BearingElement element, double rate, Waveform wave) {
    static final double SAMPLE_RATE = 25_600;

    /** Seven to twenty elements that fill half of the circle or more, inner ring turning, 60 to 200 revolutions. */
    static Simulated defect(int seed, BearingElement... elements) {
        SplittableRandom random = new SplittableRandom(seed);
        BearingGeometry bearing = bearing(random);
        double shaft = 20 + 30 * random.nextDouble();
        double peak = 5 * Math.pow(8, random.nextDouble());
        BearingSignal signal = BearingSignal.of(bearing.frequencies(RotatingRing.INNER, RotationSpeed.ofHertz(shaft)))
                .withSlip(0.024 * random.nextDouble() - 0.012, 0.01 * random.nextDouble())
                .withResonance(2500 + 4500 * random.nextDouble(), 0.03 + 0.07 * random.nextDouble())
                .withShaftTones(3 * random.nextDouble());
        for (BearingElement element : elements) {
            signal = signal.withDefect(element, peak);
        }
        Waveform wave = signal.waveform(SAMPLE_RATE, length(60 + 140 * random.nextDouble(), shaft), seed);
        return new Simulated(bearing, shaft, elements[0], signal.rateOf(elements[0]), wave);
    }

    private static BearingGeometry bearing(SplittableRandom random) {
        while (true) {
            int count = 7 + random.nextInt(14);
            double filling = 0.5 + 0.45 * random.nextDouble();
            double angle = random.nextDouble() < 0.6 ? 0 : 40 * random.nextDouble();
            BearingGeometry one = BearingGeometry.of(count, 50 * filling * Math.sin(Math.PI / count), 50, angle);
            if (one.diameterRatio() > 0.12 && one.diameterRatio() < 0.42) {
                return one;
            }
        }
    }

    private static int length(double revolutions, double shaft) {
        return 8192 * (int) Math.ceil(SAMPLE_RATE * revolutions / shaft / 8192);
    }

    /** The documented limit: what lies at a multiple of the speed, or at twice a line frequency, is set aside. */
    boolean tellsFromTheRest() {
        double order = rate / shaftHertz;
        double reach = 0.01 * order + 0.06;
        boolean mains = List.of(100, 120).stream().anyMatch(twice -> Math.abs(rate - twice) < 1.5);
        return Math.abs(order - Math.rint(order)) > reach && !mains;
    }

    boolean isIn(Proportion one) {
        return one.element() == element && one.admits(bearing.rollingElements(), bearing.diameterRatio());
    }

    UnknownBearing searched() {
        return UnknownBearing.of(wave, RotationSpeed.ofHertz(shaftHertz));
    }

    enum Sound { NOISE, HAMMERING, PARTS_OF_THE_SPEED, GEAR, TWICE_LINE_FREQUENCY, VANES }

    /** A recording without a bearing defect; half of them with a speed that is up to 0.8 % off. */
    static UnknownBearing searched(Sound kind, int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double shaft = 20 + 30 * random.nextDouble();
        double told = shaft * (1 + (random.nextBoolean() ? 0 : 0.016 * random.nextDouble() - 0.008));
        int length = length(25 + 100 * random.nextDouble(), shaft);
        return UnknownBearing.of(healthy(kind, shaft, length, random), RotationSpeed.ofHertz(told));
    }

    private static Waveform healthy(Sound kind, double shaft, int length, SplittableRandom random) {
        Synthesis noise = Synthesis.silence(Quantity.ACCELERATION, SAMPLE_RATE, length)
                .colouredNoise(1, random.nextDouble(), random.nextLong());
        return switch (kind) {
            case NOISE -> noise.waveform();
            case HAMMERING -> hammered(noise, shaft * (1 + random.nextInt(3)), random);
            case PARTS_OF_THE_SPEED -> hammered(noise, shaft / (2 + random.nextInt(2)), random);
            case GEAR -> gear(noise, shaft, 17 + random.nextInt(40), random);
            case TWICE_LINE_FREQUENCY -> swung(noise.waveform(), random.nextBoolean() ? 100 : 120, random);
            case VANES -> swung(noise.waveform(), shaft * (5 + random.nextInt(7)), random);
        };
    }

    private static Waveform hammered(Synthesis noise, double rate, SplittableRandom random) {
        return noise.impacts(ImpactTrain.of(rate, 5 + 35 * random.nextDouble(), 2500 + 4500 * random.nextDouble(),
                0.03 + 0.07 * random.nextDouble()).withJitter(0.001 * random.nextDouble()), random.nextLong())
                .waveform();
    }

    private static Waveform gear(Synthesis noise, double shaft, int teeth, SplittableRandom random) {
        Synthesis signal = noise;
        for (int h = 1; h <= 3; h++) {
            signal = signal.modulatedTone(5.0 / h, h * teeth * shaft, shaft, 0.3 + 0.6 * random.nextDouble(),
                    6 * random.nextDouble());
        }
        return signal.waveform();
    }

    private static Waveform swung(Waveform wave, double rate, SplittableRandom random) {
        double[] samples = wave.samples();
        double depth = 0.5 + 0.5 * random.nextDouble();
        for (int i = 0; i < samples.length; i++) {
            samples[i] *= 1 + depth * Math.cos(2 * Math.PI * rate * i / SAMPLE_RATE);
        }
        return Waveform.ofSi(Quantity.ACCELERATION, SAMPLE_RATE, samples);
    }
}
