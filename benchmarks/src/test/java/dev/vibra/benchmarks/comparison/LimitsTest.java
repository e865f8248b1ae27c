package dev.vibra.benchmarks.comparison;

import static dev.vibra.benchmarks.comparison.Limits.Outcome.KEPT;
import static dev.vibra.benchmarks.comparison.Limits.Outcome.MISSED;
import static dev.vibra.benchmarks.comparison.Limits.Outcome.NOT_RUN;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class LimitsTest {
    private final Timings timings = new Timings();

    private Limits.Outcome outcome(String line) {
        List<Limits.Held> held = Limits.of(List.of("# ratios", "", line)).hold(timings);
        assertEquals(1, held.size());
        return held.get(0).outcome();
    }

    @Test
    void bestTimesAreHeldAgainstEachOther() {
        timings.add("scipy:record", new double[] {5, 4, 9});
        timings.add("plans:record", new double[] {3, 2});
        assertEquals(KEPT, outcome("ratio 2 scipy:record plans:record"));
        assertEquals(MISSED, outcome("ratio 2.01 scipy:record plans:record # behind"));
        assertEquals(NOT_RUN, outcome("ratio 2 fftw:record plans:record"));
    }

    @Test
    void bytesAreHeld() {
        timings.addBytes("plans:record", 8);
        assertEquals(KEPT, outcome("bytes 8 plans:record"));
        assertEquals(MISSED, outcome("bytes 0 plans:record"));
        assertEquals(NOT_RUN, outcome("bytes 0 values:record"));
    }

    @Test
    void aLineThatIsNoLimitIsNamed() {
        var e = assertThrows(IllegalArgumentException.class, () -> Limits.of(List.of("", "ratio scipy:record 2")));
        assertTrue(e.getMessage().startsWith("line 2 must be"), e.getMessage());
    }

    @Test
    void theFileOfLimitsIsRead() {
        assertDoesNotThrow(() -> Limits.read(Path.of("limits.txt")));
    }
}
