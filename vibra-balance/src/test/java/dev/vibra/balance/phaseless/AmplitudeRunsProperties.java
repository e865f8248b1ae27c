package dev.vibra.balance.phaseless;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.rotor.JeffcottRotor;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.quantity.RotationSpeed;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Amplitudes of a computed rotor with known unbalance lead back to it. */
class AmplitudeRunsProperties {
    private static final JeffcottRotor ROTOR = JeffcottRotor.of(12, 40, 0.05);
    private static final double RADIUS = 0.1;

    private static AmplitudeRuns runs(Phasor unbalance, double hertz, AngleSense sense, double trialGrams,
            double... angles) {
        Phasor alpha = ROTOR.displacementPerUnbalance(0, 0, RotationSpeed.ofHertz(hertz));
        AmplitudeRuns out = AmplitudeRuns.of(1e6 * alpha.times(unbalance).magnitude(), trialGrams, sense);
        for (double angle : angles) {
            Phasor trial = PlacedMass.ofGrams(trialGrams, angle, sense).atRadius(RADIUS * 1000).unbalance();
            out = out.trialAt(angle, 1e6 * alpha.times(unbalance.plus(trial)).magnitude());
        }
        return out;
    }

    @Property(tries = 300)
    void fourRunsFindTheUnbalance(@ForAll @DoubleRange(min = 0.2, max = 5) double ratio,
            @ForAll @DoubleRange(min = 0, max = 360) double heavy, @ForAll @DoubleRange(min = 0, max = 90) double first,
            @ForAll @DoubleRange(min = 5, max = 120) double hertz, @ForAll AngleSense sense) {
        Phasor unbalance = Phasor.polar(ratio * 0.010 * RADIUS, Math.toRadians(heavy));
        PhaselessCorrection c = runs(unbalance, hertz, sense, 10, first, first + 110, first + 235).correction();
        assertEquals(0, c.only().atRadius(RADIUS * 1000).unbalance().plus(unbalance).magnitude(),
                1e-7 * unbalance.magnitude());
    }

    @Property(tries = 300)
    void threeRunsHoldTheUnbalanceAmongTwo(@ForAll @DoubleRange(min = 0.2, max = 5) double ratio,
            @ForAll @DoubleRange(min = 0, max = 360) double heavy, @ForAll @IntRange(min = 30, max = 330) int apart,
            @ForAll AngleSense sense) {
        Phasor unbalance = Phasor.polar(ratio * 0.010 * RADIUS, Math.toRadians(heavy));
        PhaselessCorrection c = runs(unbalance, 30, sense, 10, 15, 15 + apart).correction();
        assertTrue(c.candidates().stream().anyMatch(m -> m.atRadius(RADIUS * 1000).unbalance().plus(unbalance)
                .magnitude() < 1e-4 * unbalance.magnitude()), c.toString());
    }
}
