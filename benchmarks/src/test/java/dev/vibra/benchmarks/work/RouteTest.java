package dev.vibra.benchmarks.work;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import dev.vibra.signal.Waveform;
import org.junit.jupiter.api.Test;

/** Both layers do the same work: what the comparison of their times rests on. */
class RouteTest {
    @Test
    void plansAndValuesGiveTheSameFigures() {
        Waveform wave = RouteRecord.waveform();
        var plans = Route.of("plans", wave).stages();
        Route.of("values", wave).stages().forEach((stage, work) -> {
            double[] expected = work.get();
            double[] found = plans.get(stage).get();
            for (int i = 0; i < expected.length; i++) {
                found[i] /= expected[i] == 0 ? 1 : expected[i];
                expected[i] = expected[i] == 0 ? 0 : 1;
            }
            assertArrayEquals(expected, found, 1e-9, stage);
        });
    }
}
