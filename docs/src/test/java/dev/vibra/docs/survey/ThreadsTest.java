package dev.vibra.docs.survey;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.docs.survey.Folders.Run;
import dev.vibra.docs.survey.demo.DemoRecordings;
import dev.vibra.docs.survey.output.OutputSet;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The number of threads changes nothing that is written or said. */
class ThreadsTest {
    private static final int[] THREADS = {1, 2, 5, 64};

    @TempDir
    private Path temp;

    private Run run(Path folder, int threads) {
        return Folders.run(folder, "--threads", threads, "--out", temp.resolve("out" + threads));
    }

    /** Returns the run by one thread, and fails if another number gives anything else. */
    private Run sameByAll(Path folder) throws IOException {
        Run first = run(folder, 1);
        for (int threads : THREADS) {
            Run other = run(folder, threads);
            assertEquals(first.code(), other.code());
            assertEquals(first.out(), other.out().replace("out" + threads + ":", "out1:"));
            assertEquals(first.err(), other.err());
            for (String name : OutputSet.SURVEY.names()) {
                assertArrayEquals(Files.readAllBytes(temp.resolve("out1").resolve(name)),
                        Files.readAllBytes(temp.resolve("out" + threads).resolve(name)), name + " by " + threads);
            }
        }
        return first;
    }

    @Test
    void theDemonstrationIsTheSameByteForByte() throws IOException {
        assertEquals(0, sameByAll(Folders.demo(temp.resolve("fan"))).code());
    }

    /** A point that is missing, one that can't be read, one that isn't sound: named in the order of the points. */
    @Test
    void failuresOfPointsAreTheSameToo() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        Files.delete(folder.resolve("de-h.wav"));
        Files.writeString(folder.resolve("fe-h.wav"), "no sound");
        DemoRecordings.spoil(folder);
        Run run = sameByAll(folder);
        assertEquals(1, run.code());
        int first = run.out().indexOf("point FE-H is left out");
        int second = run.out().indexOf("point DE-H is left out");
        assertTrue(first > 0 && second > first, run.out());
    }

    @Test
    void nothingIsWrittenWhereNoPointCanBeRead() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        for (String name : Folders.names(folder)) {
            if (name.endsWith(".wav")) {
                Files.delete(folder.resolve(name));
            }
        }
        assertEquals(run(folder, 1), run(folder, 3));
        assertEquals(2, run(folder, 3).code());
        assertEquals(List.of("fan"), Folders.names(temp));
    }

    @Test
    void anInterruptedSurveyWritesNothing() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        for (int threads : new int[] {1, 2}) {
            Thread.currentThread().interrupt();
            Run run = run(folder, threads);
            assertTrue(Thread.interrupted());
            assertEquals(new Run(2, "", "Nothing was written: the survey was interrupted\n"), run);
            assertEquals(List.of("fan"), Folders.names(temp));
        }
    }

    /**
     * Forty points by three threads in a process whose memory suffices for one or two at a time: all are surveyed, with
     * the same results as by one.
     */
    @Test
    void memoryThatSufficesForOneThreadSufficesForMore() throws IOException, InterruptedException {
        Path folder = Folders.demo(temp.resolve("fan"));
        StringBuilder points = new StringBuilder("\"points\": [");
        for (int i = 0; i < 35; i++) {
            points.append("{ \"id\": \"P").append(i).append("\", \"recording\": \"fe-v.wav\", \"unit\": \"g\", "
                    + "\"scale\": 4 }, ");
        }
        Folders.replace(folder, "\"points\": [", points.toString());
        List<byte[]> results = new ArrayList<>();
        for (String threads : List.of("1", "3")) {
            Path out = temp.resolve("small" + threads);
            Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-Xmx40m", "-XX:+UseSerialGC", "-Djava.awt.headless=true", "-cp",
                    System.getProperty("java.class.path"), SurveyCommand.class.getName(), folder.toString(), "--out",
                    out.toString(), "--threads", threads).redirectErrorStream(true).start();
            String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertTrue(process.waitFor(5, TimeUnit.MINUTES), "the process did not end");
            assertEquals(0, process.exitValue(), printed);
            results.add(Files.readAllBytes(out.resolve("results.json")));
        }
        assertArrayEquals(results.get(0), results.get(1));
    }
}
