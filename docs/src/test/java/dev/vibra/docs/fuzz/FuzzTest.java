package dev.vibra.docs.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The same inputs with every build; {@link FuzzRun} tries more and others. */
class FuzzTest {
    private static final long SEED = 20_261_130;

    @TempDir
    private Path folder;

    @Test
    void recordings() {
        Tally tally = withoutFindings(Targets.READERS, 200_000);
        assertTrue(tally.outcomes("WHOLE read") > 1000 && tally.outcomes("WHOLE refused") > 1000, tally::toString);
    }

    @Test
    void descriptions() {
        Tally tally = withoutFindings(Targets.MACHINES, 5000);
        assertTrue(tally.outcomes("machine") > 500 && tally.outcomes("machine with problems") > 500, tally::toString);
    }

    @Test
    void surveys() {
        Tally tally = withoutFindings(Targets.SURVEYS, 500);
        assertTrue(tally.outcomes("exit code 0") > 10 && tally.outcomes("exit code 1") > 50, tally::toString);
    }

    @Test
    void calls() {
        Tally tally = withoutFindings(Targets.API, 100_000 / ApiTarget.CALLS);
        assertTrue(tally.outcomes("answer") > 50_000, tally::toString);
    }

    private Tally withoutFindings(Targets target, long inputs) {
        Tally tally = Fuzzer.run(target.in(folder), SEED, inputs);
        assertEquals(0, tally.findings().size(), tally::toString);
        return tally;
    }
}
