package dev.vibra.speedrun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.OrderVector;
import dev.vibra.synthesis.SpeedProfile;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** What the forward model was made of comes out of its recordings. */
class RunProperties {
    private static final double RATE = 1000;

    @Property(tries = 30)
    void analysisUndoesSynthesis(@ForAll @DoubleRange(min = 18, max = 36) double natural,
            @ForAll @DoubleRange(min = 4, max = 25) double factor, @ForAll boolean up,
            @ForAll @DoubleRange(min = 0, max = 359) double heavySpot,
            @ForAll @DoubleRange(min = 0, max = 15) double runoutMicrometres,
            @ForAll @DoubleRange(min = 0, max = 6) double runoutLag, @ForAll @IntRange(min = 1, max = 1000) int seed) {
        double width = natural / factor;
        double seconds = Math.max(200, 46 / (0.08 * width * width));
        RotationSpeed low = RotationSpeed.ofHertz(4);
        RotationSpeed high = RotationSpeed.ofHertz(50);
        RunModel model = RunModel.of(up ? new SpeedProfile(low, high, seconds) : new SpeedProfile(high, low, seconds))
                .withMode(10e-6, natural, 0.5 / factor, heavySpot)
                .withRunout(new OrderVector(runoutMicrometres * 1e-6, runoutLag)).withNoise(1e-6, seed);
        SpeedSweep sweep = SpeedSweep.read(model.tachometer(5000), 1).sweep().orElseThrow();
        PointRun run = PointRun.of("A", model.recording(Quantity.DISPLACEMENT, RATE), sweep);
        List<SpeedResonance> found = run.resonances().stream().filter(one -> one.order() == 1).toList();
        assertEquals(1, found.size(), run::toString);
        SpeedResonance one = found.get(0);
        assertEquals(natural, one.speed().hertz(), Math.max(0.01 * natural, 0.01 * one.speedUncertaintyPercent()
                * natural), one::toString);
        assertTrue(one.slowEnough(), () -> one + " of " + model + ", sweep ratio " + one.sweepRatio());
        assertEquals(factor, one.amplification().orElseThrow(), one.amplificationUncertainty().orElseThrow());
        assertTrue(one.isSingle(), one::toString);
        if (runoutMicrometres > 1) {
            // What the mode answers at slow roll can't be told from the runout: 10 µm as far below resonance as that is.
            double below = Math.pow(1.2 * sweep.lowest().hertz() / natural, 2);
            assertEquals(runoutMicrometres, 1e6 * run.slowRoll().orElseThrow().amplitude(),
                    10 * below / (1 - below) + 0.2);
        }
    }
}
