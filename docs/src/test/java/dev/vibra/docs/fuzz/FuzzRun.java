package dev.vibra.docs.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * As many inputs as are wanted, not part of the build:
 *
 * <pre>mvn -B -pl docs -am test -Dtest=FuzzRun -Dsurefire.failIfNoSpecifiedTests=false
 *   -Dfuzz.inputs=10000000 -Dfuzz.seed=7 [-Dfuzz.target=readers] [-Dfuzz.replay=SEED]</pre>
 *
 * <p>The inputs are shared among the targets as {@link Targets} says. A finding tells the command's properties that try
 * its input again.
 */
class FuzzRun {
    @Test
    void run(@TempDir Path folder) {
        String wanted = System.getProperty("fuzz.target", "");
        long inputs = Long.getLong("fuzz.inputs", 1_000_000);
        long seed = Long.getLong("fuzz.seed", 1);
        String replay = System.getProperty("fuzz.replay", "");
        List<Targets> targets = Stream.of(Targets.values())
                .filter(target -> wanted.isEmpty() || target.name().equalsIgnoreCase(wanted)).toList();
        int findings = 0;
        for (Targets target : targets) {
            Target made = target.in(folder);
            Tally tally = replay.isEmpty() ? Fuzzer.run(made, seed, wanted.isEmpty() ? target.share(inputs) : inputs)
                    : Fuzzer.replay(made, Long.parseLong(replay));
            System.out.println(tally);
            findings += tally.findings().size();
        }
        assertEquals(0, findings, "kinds of findings, printed above");
    }
}
