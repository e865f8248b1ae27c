package dev.vibra.docs.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.api.parallel.Resources;

/** The switch: what it rewrites, and what it must leave alone. */
@ResourceLock(Resources.SYSTEM_OUT)
class RenewalTest {
    private static final String BEFORE = """
            # Page – with a dash
            1. In a list

               ```java
               double x = 5 / Math.sqrt(2);
               x            // ==> 3.60
               x            // ==> 3.5 ± 0.1
               x            // ==> 3.0 ± 0.1
               "a  b"       //   ==>   "b"
               1 / 0        // !!> IOException
               System.out.printf(Locale.ROOT, "one%n  two %.3f%n", x);
               ```

               ```text
               one
               ```

            ```java
            2  // ==> 2
            System.out.println("kept 2.04");
            ```
            ```text
            kept 2.0
            ```
            ```java
            System.out.println("new");
            ```
            ```text
            ```
            End without a line end""";
    private static final String AFTER = BEFORE.replace("==> 3.60", "==> 3.54").replace("==> 3.0 ± 0.1", "==> 3.5 ± 0.1")
            .replace("==>   \"b\"", "==> \"a b\"").replace("   one\n", "   one\n     two 3.536\n")
            .replace("```text\n```", "```text\nnew\n```");

    @TempDir
    Path folder;

    private void assertRenews(String before, String after) throws IOException {
        Path page = Files.writeString(folder.resolve("page.md"), before);
        PageRunner runner = new PageRunner(folder, folder.resolve("work"), Duration.ofSeconds(20));
        List<String> left = PageRunner.renew(page, runner.run(page)).stream().map(Failure::toString).toList();
        assertEquals(List.of("page.md:10: throws ArithmeticException: / by zero, page says"
                + " IOException; expression: 1 / 0"),
                left);
        assertEquals(after, Files.readString(page));
        assertEquals(1, runner.run(page).size(), "only what can't be renewed is left");
    }

    @Test
    void rewritesWhatDiffersAndNothingElse() throws IOException {
        assertRenews(BEFORE, AFTER);
    }

    @Test
    void keepsCarriageReturns() throws IOException {
        assertRenews(BEFORE.replace("\n", "\r\n"), AFTER.replace("\n", "\r\n"));
    }

    @Test
    void leavesATruePageUntouched() throws IOException {
        Path page = Files.writeString(folder.resolve("true.md"), "```java\n1.04  //==>1.0\n```");
        PageRunner runner = new PageRunner(folder, folder.resolve("work"), Duration.ofSeconds(20));
        assertEquals(List.of(), PageRunner.renew(page, runner.run(page)));
        assertEquals("```java\n1.04  //==>1.0\n```", Files.readString(page));
    }
}
