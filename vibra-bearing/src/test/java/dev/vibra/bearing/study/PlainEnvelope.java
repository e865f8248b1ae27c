package dev.vibra.bearing.study;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.envelope.SquaredEnvelope;
import java.util.Arrays;

/**
 * The yardstick: squared envelope of one band, and how far three harmonics of an element's rate stand above the local
 * floor. It knows no shaft, no rival and no other bands.
 */
final class PlainEnvelope {
    private static final int HARMONICS = 3;
    private static final double REACH = 0.02;
    private static final double REVOLUTIONS = 100;
    private static final int FLOOR_LINES = 40;

    private final EnvelopeSpectrum spectrum;
    private final double[] powers;

    PlainEnvelope(SquaredEnvelope envelope, double shaftHertz) {
        double rate = envelope.sampleRateHertz();
        int block = Draw.fastLength((int) Math.min(envelope.length(), REVOLUTIONS * rate / shaftHertz));
        spectrum = EnvelopeSpectrum.unlessSilent(envelope, rate / block).orElseThrow();
        powers = Arrays.stream(spectrum.depths()).map(d -> d * d).toArray();
    }

    /** Sum over the harmonics of line power over local median power, at the best fundamental in the window. */
    double statistic(double rate) {
        double line = spectrum.resolutionHertz();
        double[] floors = new double[HARMONICS + 1];
        for (int h = 1; h <= HARMONICS; h++) {
            floors[h] = floor(h * rate);
        }
        double best = 0;
        for (double f = rate * (1 - REACH); f <= rate * (1 + REACH); f += line / (2 * HARMONICS)) {
            double sum = 0;
            for (int h = 1; h <= HARMONICS; h++) {
                int at = (int) Math.round(h * f / line);
                sum += at < powers.length - 1 ? powers[at] / floors[h] : 0;
            }
            best = Math.max(best, sum);
        }
        return best;
    }

    private double floor(double hertz) {
        int at = (int) Math.round(hertz / spectrum.resolutionHertz());
        int reach = Math.max(FLOOR_LINES, (int) (0.1 * at));
        int from = Math.max(2, Math.min(at, powers.length) - reach);
        double[] near = Arrays.copyOfRange(powers, from, Math.max(from + 1, Math.min(powers.length, at + reach)));
        Arrays.sort(near);
        return near[near.length / 2];
    }

    /** Statistics of outer race, inner race and rolling element. */
    double[] statistics(KinematicFrequencies rates) {
        return new double[] {statistic(rates.of(BearingElement.OUTER_RACE)),
            statistic(rates.of(BearingElement.INNER_RACE)), statistic(rates.of(BearingElement.ROLLING_ELEMENT))};
    }
}
