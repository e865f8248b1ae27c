package dev.vibra.docs.survey.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every step of the writing may be the last one, by a kill or by an error of the disk. */
class OutputKillTest {
    @TempDir
    private Path temp;

    /** The process is gone: nothing that comes after is done. */
    private static final class Killed extends Error {
        private static final long serialVersionUID = 1;
    }

    /** A disk that works for a number of steps; a file has three: not there, half written, whole. */
    private static final class Mortal extends Disk {
        private final boolean kill;
        private int left;
        private boolean failed;

        Mortal(int steps, boolean kill) {
            this.left = steps;
            this.kill = kill;
        }

        private void step() throws IOException {
            if (left-- > 0 || failed && !kill) {
                return;
            }
            failed = true;
            if (kill) {
                throw new Killed();
            }
            throw new IOException("no room");
        }

        @Override
        boolean makeFolder(Path folder) throws IOException {
            step();
            return super.makeFolder(folder);
        }

        @Override
        void write(Path file, Content content) throws IOException {
            step();
            Files.writeString(file, "half");
            step();
            try (OutputStream out = Files.newOutputStream(file)) { // without the sync, which takes most of the time
                content.writeTo(out);
            }
            step();
        }

        @Override
        void move(Path from, Path to) throws IOException {
            step();
            super.move(from, to);
        }

        @Override
        void delete(Path path) throws IOException {
            step();
            super.delete(path);
        }

        @Override
        void sync(Path folder) {
            if (kill && left-- <= 0) {
                throw new Killed();
            }
        }
    }

    private static Disk immortal() {
        return new Mortal(Integer.MAX_VALUE, true);
    }

    /** Returns the run of a set; fails if a seal stands beside files of another run. */
    private static String run(Path folder) throws IOException {
        Path seal = folder.resolve("results.json");
        if (Files.notExists(seal)) {
            return "none";
        }
        String json = Files.readString(seal);
        String run = json.replaceAll("(?s).*\"run\" : \"([^\"]*)\".*", "$1");
        Map<String, String> digests = new LinkedHashMap<>();
        for (String name : List.of("report.html", "results.csv")) {
            digests.put(name, Digest.of(Files.readAllBytes(folder.resolve(name))));
        }
        assertEquals(Contents.json(run, digests), json, "mixed");
        return run;
    }

    static void assertWhole(Path folder) throws IOException {
        assertTrue(!run(folder).equals("none"));
        assertEquals(OutputFolderTest.NAMES, names(folder));
    }

    private static List<String> names(Path folder) throws IOException {
        try (var list = Files.list(folder)) {
            return list.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    private static void write(Path folder, String run, Disk disk) throws IOException {
        OutputFolder.write(folder, OutputSet.SURVEY, Contents.survey(run), List.of(), disk);
    }

    /** Kills at step n; returns false when the run came to its end before. */
    private static boolean killed(Path folder, String run, int n) throws IOException {
        try {
            write(folder, run, new Mortal(n, true));
            return false;
        } catch (Killed e) {
            return true;
        }
    }

    @Test
    void aKillAtAnyStepLeavesOneSetOrNoneAndTheNextRunMendsIt() throws IOException {
        for (boolean earlier : new boolean[] {false, true}) {
            int n = 0;
            for (boolean alive = false; !alive; n++) {
                Path folder = temp.resolve((earlier ? "replaced" : "new") + n);
                if (earlier) {
                    write(folder, "1", immortal());
                }
                alive = !killed(folder, "2", n);
                if (Files.exists(folder)) {
                    assertTrue(List.of("none", "1", "2").contains(run(folder)));
                }
                write(folder, "3", immortal());
                assertEquals("3", run(folder));
                assertEquals(OutputFolderTest.NAMES, names(folder), "leftovers after step " + n);
            }
            assertTrue(n > (earlier ? 40 : 35), "steps " + n);
        }
    }

    /** The one that mends may be killed too, and one after it may fail: a set that was whole is never lost. */
    @Test
    void killsOneAfterTheOtherAreMended() throws IOException {
        for (int first = 0; first < 60; first += 2) {
            for (int second = first % 7; second < 60; second += 7) {
                Path folder = temp.resolve("two-" + first + "-" + second);
                write(folder, "1", immortal());
                killed(folder, "2", first);
                killed(folder, "3", second);
                run(folder);
                assertThrows(IOException.class, () -> OutputFolder.write(folder, OutputSet.SURVEY, failing(), List.of(),
                        immortal()));
                assertTrue(List.of("1", "2", "3").contains(run(folder)), "an earlier set comes back");
                assertEquals(OutputFolderTest.NAMES, names(folder), "leftovers after " + first + " and " + second);
            }
        }
    }

    private static Map<String, Content> failing() {
        Map<String, Content> files = Contents.survey("4");
        files.put("results.json", out -> {
            throw new IOException("no room");
        });
        return files;
    }

    @Test
    void anErrorOfTheDiskAtAnyStepLeavesTheEarlierSet() throws IOException {
        int refused = 0;
        for (int n = 0; n < 80; n++) {
            Path folder = temp.resolve("error-" + n);
            write(folder, "1", immortal());
            String expected = "2";
            try {
                write(folder, "2", new Mortal(n, false));
            } catch (IOException e) {
                expected = "1";
                refused++;
            }
            assertEquals(expected, run(folder));
            write(folder, "3", immortal());
            assertEquals(OutputFolderTest.NAMES, names(folder));
        }
        assertTrue(refused > 15, "errors " + refused);
    }

    /** A scorecard beside a survey: each mends its own. */
    @Test
    void theOtherSetInTheFolderIsMendedAndKept() throws IOException {
        write(temp, "1", immortal());
        killed(temp, "2", 22);
        Map<String, Content> score = new LinkedHashMap<>();
        score.put("scorecard.csv", Contents.text("machine,point,label,outcome,said,extra,evidence\r\n"));
        score.put("scorecard.json", Contents.text(Contents.json("s", Map.of())));
        OutputFolder.write(temp, OutputSet.SCORE, score, List.of(), immortal());
        assertTrue(List.of("1", "2").contains(run(temp)));
        assertEquals(List.of("report.html", "results.csv", "results.json", "scorecard.csv", "scorecard.json"),
                names(temp));
    }
}
