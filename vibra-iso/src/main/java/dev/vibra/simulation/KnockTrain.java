package dev.vibra.simulation;

import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.quantity.Quantity;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;

/** Trains of knocks, each a decaying sine, by the models of this library's synthesis. */
final class KnockTrain {
    private KnockTrain() {}

    private static double resonance(double drawn, double sampleRate) {
        return drawn * 0.4 * sampleRate;
    }

    /** One knock in each turn, as evenly as told. */
    static Knocks.Train turning(double hertz, Draws draws, double jitter) {
        double place = draws.logUniform(0.35, 1);
        double damping = draws.logUniform(0.02, 0.08);
        return (rate, length, seed) -> Synthesis.silence(Quantity.ACCELERATION, rate, length)
                .impacts(ImpactTrain.of(hertz, 1, resonance(place, rate), damping).withJitter(jitter), seed).waveform()
                .samples();
    }

    /** Knocks of a bearing's element. */
    static Knocks.Train bearing(KinematicFrequencies rates, BearingElement element, Draws draws) {
        double place = draws.logUniform(0.35, 1);
        double damping = draws.logUniform(0.02, 0.08);
        double slip = draws.normal(0, 0.005);
        double jitter = draws.logUniform(0.002, 0.015);
        double unequal = draws.uniform(0.4, 1);
        double narrow = element == BearingElement.ROLLING_ELEMENT ? draws.logUniform(0.1, 6) : 0;
        double cage = 2 * Math.PI * rates.of(BearingElement.CAGE);
        return (rate, length, seed) -> loaded(BearingSignal.of(rates).withNoise(0).withDefect(element, 1)
                .withSlip(Math.max(-0.02, Math.min(0.02, slip)), jitter).withUnequalStrikes(unequal)
                .withResonance(resonance(place, rate), damping).waveform(rate, length, seed).samples(), cage / rate,
                narrow);
    }

    /**
     * A rolling element that is loaded in a narrow zone only strikes once in each turn of the cage: what is heard then is
     * the cage's rate as much as its own (kinematics; how narrow is drawn).
     */
    private static double[] loaded(double[] knocks, double cageStep, double narrow) {
        for (int i = 0; narrow > 0 && i < knocks.length; i++) {
            knocks[i] *= StrictMath.pow(0.5 + 0.5 * StrictMath.cos(cageStep * i), narrow);
        }
        return knocks;
    }
}
