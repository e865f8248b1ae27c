package dev.vibra.docs.survey.output;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Several who write into one folder at the same time, threads and processes: none fails, and one set stays. */
class OutputConcurrencyTest {
    private static final int SETS = 8;

    @TempDir
    private Path temp;

    /** Writes sets; also a process of its own. */
    static final class Writer {
        private Writer() {}

        public static void main(String[] args) throws IOException {
            for (int i = 0; i < SETS; i++) {
                OutputFolder.check(Path.of(args[0]), OutputSet.SURVEY, List.of());
                OutputFolder.write(Path.of(args[0]), OutputSet.SURVEY, Contents.survey(args[1] + i), List.of());
            }
        }
    }

    @Test
    void threads() throws Exception {
        Path folder = temp.resolve("out");
        List<Callable<Void>> writers = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            String run = i + "-";
            writers.add(() -> {
                Writer.main(new String[] {folder.toString(), run});
                return null;
            });
        }
        ExecutorService threads = Executors.newFixedThreadPool(writers.size());
        try {
            for (Future<Void> one : threads.invokeAll(writers)) {
                one.get();
            }
        } finally {
            threads.shutdown();
        }
        OutputKillTest.assertWhole(folder);
    }

    @Test
    void processes() throws Exception {
        Path folder = temp.resolve("out");
        List<Process> processes = new ArrayList<>();
        for (String run : List.of("a", "b", "c")) {
            processes.add(new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
                    System.getProperty("java.class.path"), Writer.class.getName(), folder.toString(), run)
                    .redirectErrorStream(true).start());
        }
        Writer.main(new String[] {folder.toString(), "d"});
        for (Process process : processes) {
            assertEquals("", new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
            assertEquals(0, process.waitFor());
        }
        OutputKillTest.assertWhole(folder);
    }

    /** A process that was killed leaves the file of the lock, and no lock. */
    @Test
    void aFileOfADeadLockIsNoObstacle() throws Exception {
        Files.writeString(temp.resolve(FolderLock.NAME), "");
        Writer.main(new String[] {temp.toString(), "1-"});
        OutputKillTest.assertWhole(temp);
    }
}
