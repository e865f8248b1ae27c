package dev.vibra.diagnosis.study;

import java.util.SplittableRandom;

/**
 * Angles of the line voltage and of the motor over time: the line drifts within a few parts in ten thousand, the slip
 * with the load, the shaft follows from both.
 */
final class Clock {
    private final double rate;
    private final double[] line;
    private final double[] shaft;

    private Clock(double rate, double[] line, double[] shaft) {
        this.rate = rate;
        this.line = line;
        this.shaft = shaft;
    }

    static Clock run(double rate, int length, double lineHertz, double polePairs, double slip, SplittableRandom random) {
        double[] line = new double[length];
        double[] shaft = new double[length];
        double phase = random.nextDouble();
        double angle = random.nextDouble();
        double drift = 2e-4 * random.nextGaussian();
        double period = random.nextDouble(5, 40);
        double wander = slip * random.nextDouble(0, 0.02);
        double beat = random.nextDouble(0.05, 0.4);
        double start = random.nextDouble();
        for (int i = 0; i < length; i++) {
            line[i] = phase;
            shaft[i] = angle;
            double seconds = i / rate;
            double now = lineHertz * (1 + drift * Sine.cos(seconds / period + start));
            phase += now / rate;
            angle += now * (1 - slip - wander * Sine.cos(beat * seconds + 2 * start)) / polePairs / rate;
        }
        return new Clock(rate, line, shaft);
    }

    double rate() {
        return rate;
    }

    int length() {
        return line.length;
    }

    /** Turns of the line's vector at each sample. */
    double[] line() {
        return line;
    }

    /** Turns of the motor at each sample. */
    double[] shaft() {
        return shaft;
    }
}
