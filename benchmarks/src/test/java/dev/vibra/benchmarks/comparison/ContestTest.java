package dev.vibra.benchmarks.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalLong;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class ContestTest {
    /** Does everything in a known time, with a known result. */
    private record Known(String name, double seconds, double... figures) implements Side {
        @Override
        public boolean has(String task) {
            return true;
        }

        @Override
        public double[] seconds(String task, double span) {
            return new double[] {3 * seconds, seconds, 2 * seconds};
        }

        @Override
        public double[] result(String task) {
            return figures;
        }

        @Override
        public OptionalLong bytes(String task) {
            return OptionalLong.of(1024);
        }
    }

    private final ByteArrayOutputStream text = new ByteArrayOutputStream();
    private final Contest contest = new Contest(Pattern.compile("rms"), 2,
            new PrintStream(text, true, StandardCharsets.UTF_8));

    private void run(Side reference, Side ours) {
        contest.run(new Section("levels", List.of(reference), List.of(ours), List.of("rms", "mean")));
    }

    @Test
    void theTableHasBestAndMedianRatioBytesAndDistance() {
        run(new Known("other", 4e-6, 2), new Known("own", 2e-6, 2 + 4e-9));
        assertEquals(List.of(), contest.disagreements());
        assertEquals("| rms | 4.00 (8.00) | 2.00 (4.00) | 1,024 | 2.00 | 2e-09 |",
                text.toString(StandardCharsets.UTF_8).lines().toList().get(2));
        assertTrue(contest.timings().best("own:mean").isEmpty(), "a task that wasn't chosen");
    }

    @Test
    void figuresThatDifferAreReported() {
        run(new Known("other", 1e-6, 2), new Known("own", 1e-6, 2 + 4e-6));
        assertEquals(1, contest.disagreements().size());
        assertTrue(contest.disagreements().get(0).startsWith("other and own differ at rms"));
    }

    @Test
    void aSideWithoutFiguresIsNotCompared() {
        run(new Known("other", 1e-6), new Known("own", 1e-6, 2));
        assertEquals(List.of(), contest.disagreements());
    }
}
