package dev.vibra.docs.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A survey in a process of its own leaves no thread behind that would keep the process alive. */
class ProcessEndTest {
    /** Runs the command without ending the process, then names the threads that are not daemons. */
    static final class Probe {
        private Probe() {}

        public static void main(String[] args) {
            int code = SurveyCommand.run(Terminal.ofProcess(), args);
            List<String> alive = Thread.getAllStackTraces().keySet().stream()
                    .filter(thread -> !thread.isDaemon() && thread != Thread.currentThread())
                    .map(Thread::getName).filter(name -> !name.equals("DestroyJavaVM")).toList();
            System.out.println("code " + code + ", threads " + alive);
        }
    }

    @Test
    void noThreadLingers(@TempDir Path temp) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=true", "-cp", System.getProperty("java.class.path"), Probe.class.getName(),
                "--threads", "2", "--out", temp.resolve("out").toString()).redirectErrorStream(true).start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(5, TimeUnit.MINUTES), "the process did not end by itself");
        assertEquals(0, process.exitValue(), printed);
        assertTrue(printed.endsWith("code 0, threads []" + System.lineSeparator()), printed);
    }
}
