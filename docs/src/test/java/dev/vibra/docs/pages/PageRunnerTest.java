package dev.vibra.docs.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintStream;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.api.parallel.Resources;

/** Hostile pages: each must fail, or pass, exactly as the format says. */
@ResourceLock(Resources.SYSTEM_OUT)
class PageRunnerTest {
    private static final String TICKS = "```";

    @TempDir
    Path folder;
    private PageRunner runner;

    @BeforeEach
    void makeRunner() {
        runner = new PageRunner(folder, folder.resolve("work"), Duration.ofSeconds(20));
    }

    private List<String> failuresOf(String text) throws IOException {
        Path page = Files.writeString(folder.resolve("hostile.md"), text);
        return runner.run(page).stream().map(finding -> finding.failure().toString()).toList();
    }

    /** Failures of a page that is one java block, whose first line is line 2 of the page. */
    private List<String> failuresOfBlock(String... code) throws IOException {
        return failuresOf(block(code));
    }

    private static String block(String... code) {
        return TICKS + "java\n" + String.join("\n", code) + "\n" + TICKS + "\n";
    }

    private static String output(String... lines) {
        return TICKS + "text\n" + String.join("\n", lines) + "\n" + TICKS + "\n";
    }

    private static void assertPasses(List<String> failures) {
        assertEquals(List.of(), failures);
    }

    @Test
    void truePagePasses() throws IOException, URISyntaxException {
        Path page = Path.of(PageRunnerTest.class.getResource("/pages/quantities.md").toURI());
        assertPasses(runner.run(page).stream().map(finding -> finding.failure().toString()).toList());
    }

    @Test
    void wrongValueNamesPageLineExpressionExpectedAndActual() throws IOException {
        assertEquals(List.of("hostile.md:3: value is 3.5355339059327373, page says 3.60; expression: 5 / Math.sqrt(x)"),
                failuresOfBlock("int x = 2;", "5 / Math.sqrt(x)   // ==> 3.60"));
    }

    @Test
    void lastDigitCounts() throws IOException {
        assertPasses(failuresOfBlock("5 / Math.sqrt(2)  // ==> 3.5355"));
        assertEquals(List.of("hostile.md:2: value is 3.5355339059327373, page says 3.5356;"
                + " expression: 5 / Math.sqrt(2)"),
                failuresOfBlock("5 / Math.sqrt(2)  // ==> 3.5356"));
    }

    @Test
    void toleranceReplacesTheHalfUnit() throws IOException {
        assertPasses(failuresOfBlock("5 / Math.sqrt(2)  // ==> 3.60 ± 0.1"));
        assertEquals(List.of("hostile.md:2: value is 3.5355339059327373, page says 3.60 (tolerance 0.06);"
                + " expression: 5 / Math.sqrt(2)"), failuresOfBlock("5 / Math.sqrt(2)  // ==> 3.60 ± 0.06"));
    }

    @Test
    void allFailuresOfAPageAreListed() throws IOException {
        assertEquals(List.of(
                "hostile.md:2: value is 1, page says 2; expression: 1",
                "hostile.md:4: does not compile: incompatible types: java.lang.String cannot be converted to int;"
                        + " expression: int n = \"s\";",
                "hostile.md:5: throws ArithmeticException: / by zero, page says 1; expression: 1 / 0"),
                failuresOfBlock("1  // ==> 2", "2  // ==> 2", "int n = \"s\";", "1 / 0  // ==> 1"));
    }

    @Test
    void unfinishedStatementAtTheEndOfABlockFails() throws IOException {
        assertEquals(List.of("hostile.md:3: statement is unfinished at the end of its block; expression: Math.max(1,"),
                failuresOf(block("1  // ==> 1", "Math.max(1,") + block("2)")).subList(0, 1));
        assertEquals(List.of("hostile.md:3: statement is unfinished at the end of its block;"
                + " expression: for (int i = 0; i < 3; i++)"),
                failuresOfBlock("1  // ==> 1", "for (int i = 0; i < 3; i++)"));
        assertEquals(List.of("hostile.md:2: statement is unfinished at the end of its block; expression: 1 +"),
                failuresOf(block("1 + // more in the text below") + output("2")).subList(0, 1));
    }

    @Test
    void unfinishedCommentFails() throws IOException {
        assertEquals(List.of("hostile.md:3: comment is unfinished at the end of its block"),
                failuresOfBlock("1  // ==> 1", "/* and then"));
    }

    @Test
    void pageWithoutExpectationFails() throws IOException {
        assertEquals(List.of("hostile.md:1: page holds no expectation"), failuresOfBlock("int x = 1;"));
        assertEquals(List.of("hostile.md:1: page holds no expectation"), failuresOf("# Prose only\n"));
        assertEquals(List.of("hostile.md:1: page holds no expectation"), failuresOf(""));
        assertEquals(List.of("hostile.md:1: page holds no expectation"),
                failuresOf(block("int x = 1;") + "which prints\n\n" + output("1")));
    }

    @Test
    void commentOnlyBlockRunsAndExpectsNothing() throws IOException {
        assertEquals(List.of("hostile.md:1: page holds no expectation"), failuresOfBlock("// first", "/* second */"));
        assertPasses(failuresOf(block("// first", "", "/* second", " */") + block("1  // ==> 1")));
    }

    @Test
    void leadingDotChainFails() throws IOException {
        assertEquals(List.of("hostile.md:3: does not compile: illegal start of expression (a"
                + " line that begins with a dot:"
                + " JShell took the line before it as finished; end that line with the dot); expression: .trim()"),
                failuresOfBlock("\" a \"", "    .trim()  // ==> \"a\""));
        assertPasses(failuresOfBlock("\" a \".  // ends with the dot", "    trim()  // ==> \"a\""));
    }

    @Test
    void exceptionsAreExpectedByNameAndMessage() throws IOException {
        assertPasses(failuresOfBlock("1 / 0                  // !!> ArithmeticException",
                "1 / 0                  // !!> ArithmeticException: by   zero",
                "throw new IOException(\"disk\\nfull\");  // !!> IOException: disk full",
                "class OwnException extends RuntimeException {}",
                "void f() { throw new OwnException(); }",
                "f()                    // !!> OwnException"));
    }

    @Test
    void expectedExceptionThatIsNotThrownFails() throws IOException {
        assertEquals(List.of("hostile.md:2: nothing is thrown, page says ArithmeticException; expression: 1 / 1"),
                failuresOfBlock("1 / 1  // !!> ArithmeticException"));
    }

    @Test
    void wrongExceptionOrMessageFails() throws IOException {
        assertEquals(List.of("hostile.md:2: throws ArithmeticException: / by zero, page says RuntimeException;"
                + " expression: 1 / 0"), failuresOfBlock("1 / 0  // !!> RuntimeException"));
        assertEquals(List.of("hostile.md:2: throws ArithmeticException: / by zero, page says"
                + " ArithmeticException: by one;"
                + " expression: 1 / 0"), failuresOfBlock("1 / 0  // !!> ArithmeticException: by one"));
        assertEquals(List.of("hostile.md:2: behind !!> stands no simple class name: java.lang.ArithmeticException"),
                failuresOfBlock("1 / 1  // !!> java.lang.ArithmeticException"));
    }

    @Test
    void unexpectedExceptionFails() throws IOException {
        assertEquals(List.of("hostile.md:2: throws ArithmeticException: / by zero; expression: int x = 1 / 0;"),
                failuresOfBlock("int x = 1 / 0;", "1  // ==> 1"));
    }

    @Test
    void uncompilableSnippetFails() throws IOException {
        assertEquals(List.of("hostile.md:2: does not compile: cannot find symbol symbol: variable y location: class;"
                + " expression: y + 1"), failuresOfBlock("y + 1  // ==> 2"));
        List<String> unclosed = failuresOfBlock("String s = \"abc", "1  // ==> 1");
        assertEquals(List.of("hostile.md:2: does not compile: unclosed string literal; expression: String s = \"abc"),
                unclosed);
    }

    @Test
    void useBeforeDefinitionFails() throws IOException {
        assertEquals(List.of("hostile.md:2: uses what is not defined above it: variable later;"
                + " expression: int f() { return later; }"),
                failuresOfBlock("int f() { return later; }", "int later = 3;", "f()  // ==> 3"));
    }

    @Test
    void expectationBehindAStatementWithoutValueFails() throws IOException {
        assertEquals(List.of("hostile.md:2: statement has no value, page says 3; expression: void f() { }",
                "hostile.md:3: statement has no value, page says 3; expression: f()",
                "hostile.md:4: statement has no value, page says java.util; expression: import java.util.*;"),
                failuresOfBlock("void f() { }  // ==> 3", "f()  // ==> 3", "import java.util.*;  // ==> java.util"));
    }

    @Test
    void declarationHasTheValueThatJShellShows() throws IOException {
        assertPasses(failuresOfBlock("double[] x = {3, 4};   // ==> double[2] { 3.0, 4.0 }", "var n = 3  // ==> 3"));
    }

    @Test
    void expectationBehindNoStatementFails() throws IOException {
        assertEquals(List.of("hostile.md:3: expectation stands behind no statement"),
                failuresOfBlock("int x = 3;", "// ==> 3"));
    }

    @Test
    void expectationInsideAStatementFails() throws IOException {
        assertEquals(List.of("hostile.md:2: expectation stands inside a statement: it belongs on the last line of the"
                + " statement; expression: Math.max(1,"), failuresOfBlock("Math.max(1,  // ==> 2", "    2)"));
        assertPasses(failuresOfBlock("Math.max(1,", "    2)  // ==> 2"));
    }

    @Test
    void commentThatIsNearlyAnExpectationFails() throws IOException {
        String says = ": comment is no expectation, write `// ==> value` or `// !!> Exception`: //";
        assertEquals(List.of("hostile.md:2" + says + " => 7", "hostile.md:3" + says + " --> 7",
                "hostile.md:4" + says + " is ==> 7", "hostile.md:5: no value stands behind ==>",
                "hostile.md:6: tolerance without a number before it: small ± 3"),
                failuresOfBlock("1  // => 7", "2  // --> 7", "3  // is ==> 7", "4  // ==>", "5  // ==> small ± 3"));
    }

    @Test
    void expectationInsideALiteralIsNone() throws IOException {
        assertPasses(failuresOfBlock("\"// ==> 7\"      // ==> \"// ==> 7\"",
                "String text = \"\"\"", "    1 // ==> 2", "    \\\"\"\" // ==> 3", "    \"\"\"",
                "text.lines().count()   // ==> 2", "'\"'    // ==> '\"'", "\"\\\"// ==> 1\".length()   // ==> 9"));
        assertEquals(List.of("hostile.md:1: page holds no expectation"), failuresOfBlock("String s = \"// ==> 7\";"));
    }

    @Test
    void severalStatementsOnALine() throws IOException {
        assertPasses(failuresOfBlock("int a = 1; int b = 2; a + b  // ==> 3",
                "int c = 4; Math.max(c,", "5)  // ==> 5"));
        assertEquals(List.of("hostile.md:2: throws ArithmeticException: / by zero; expression: int a = 1 / 0;"),
                failuresOfBlock("int a = 1 / 0; 3  // ==> 3"));
    }

    @Test
    void notANumberIsNoNumber() throws IOException {
        assertPasses(failuresOfBlock("0.0 / 0   // ==> NaN", "-1 / 0.0  // ==> -Infinity"));
        assertEquals(List.of("hostile.md:2: value is NaN, page says 0.0; expression: 0.0 / 0",
                "hostile.md:3: value is Infinity, page says 1e9999; expression: 1 / 0.0",
                "hostile.md:4: value is NaN, page says 0 (tolerance 1e9); expression: 0.0 / 0",
                "hostile.md:5: value is Infinity, page says -Infinity; expression: 1 / 0.0"),
                failuresOfBlock("0.0 / 0  // ==> 0.0", "1 / 0.0  // ==> 1e9999", "0.0 / 0  // ==> 0 ± 1e9",
                        "1 / 0.0  // ==> -Infinity"));
    }

    @Test
    void outputIsComparedLineByLine() throws IOException {
        String code = block("System.out.println(\"rms   4.312 mm/s\");", "System.out.printf(\"peak%n\");", "1 + 1");
        assertPasses(failuresOf(code + "\n" + output("rms  4.31 mm/s", "peak", "2")));
        assertEquals(List.of("hostile.md:7: output line 1 is \"rms 4.312 mm/s\", page says \"rms 4.32 mm/s\"",
                "hostile.md:9: output line 3 is \"2\", page says \"3\""),
                failuresOf(code + output("rms  4.32 mm/s", "peak", "3")));
        assertEquals(List.of("hostile.md:7: output has 3 lines, page says 2; first line beyond: \"2\""),
                failuresOf(code + output("rms  4.31 mm/s", "peak")));
        assertEquals(List.of("hostile.md:7: output has 3 lines, page says 4; first line missing: \"more\""),
                failuresOf(code + output("rms  4.31 mm/s", "peak", "2", "more")));
    }

    @Test
    void outputWithInfinityAndToleranceSignIsText() throws IOException {
        String code = block("System.out.println(1 / 0.0);", "System.out.println(\"4.31 \\u00b1 0.22\");");
        assertPasses(failuresOf(code + output("Infinity", "4.31 ± 0.22")));
        assertEquals(List.of("hostile.md:6: output line 1 is \"Infinity\", page says \"1.0\"",
                "hostile.md:7: output line 2 is \"4.31 ± 0.22\", page says \"4.3 ± 5\""),
                failuresOf(code + output("1.0", "4.3 ± 5")));
    }

    @Test
    void valueBesideAnExpectationIsNotPartOfTheOutput() throws IOException {
        assertPasses(failuresOf(block("System.out.println(\"a\");", "1 + 1  // ==> 2") + output("a")));
        assertPasses(failuresOf(block("\"two\\nlines\"") + output("two", "lines")));
        assertPasses(failuresOf(block("System.out.print(\"a\");", "1 + 1") + output("a", "2")));
        assertEquals(List.of("hostile.md:6: output has 0 lines, page says 1; first line missing: \"a\""),
                failuresOf(block("int x = 1;") + "\n" + output("a")));
    }

    @Test
    void endlessOutputIsStopped() throws IOException {
        List<String> failures = failuresOf(
                block("while (true) System.out.println(\"again and again\");") + output("again"));
        assertEquals("hostile.md:2: throws IllegalStateException: page printed more than 1000000 bytes in one block;"
                + " expression: while (true) System.out.println(\"again and again\");", failures.get(0));
        assertEquals(3, failures.size(), failures.toString());
        assertEquals("hostile.md:5: output line 1 is \"again and again\", page says \"again\"", failures.get(1));
        assertTrue(failures.get(2).startsWith("hostile.md:5: output has 6"), failures.get(2));
    }

    @Test
    void endlessStatementIsStopped() throws IOException {
        runner = new PageRunner(folder, folder.resolve("work"), Duration.ofSeconds(1));
        assertEquals(List.of("hostile.md:2: statement was stopped after 1 s; expression: while"
                + " (true) { Math.sin(1); }"),
                failuresOfBlock("while (true) { Math.sin(1); }", "1  // ==> 1"));
    }

    @Test
    void carriageReturnsAreLineEnds() throws IOException {
        String page = block("int a = 1;", "a + 1  // ==> 2", "System.out.println(\"x\");") + "\n" + output("x");
        assertPasses(failuresOf(page.replace("\n", "\r\n")));
        assertEquals(List.of("hostile.md:3: value is 2, page says 4; expression: a + 1"),
                failuresOf(page.replace("==> 2", "==> 4").replace("\n", "\r\n")));
    }

    @Test
    void textIsReadAndPrintedInUtf8() throws IOException {
        assertPasses(failuresOf(block("\"10–1000 Hz, µm, 日本\"  // ==> \"10–1000 Hz, µm, 日本\"",
                "System.out.println(\"Ω ± °\");") + output("Ω ± °")));
        assertEquals(List.of("hostile.md:2: value is \"10-1000 Hz\", page says \"10–1000 Hz\";"
                + " expression: \"10-1000 Hz\""),
                failuresOfBlock("\"10-1000 Hz\"  // ==> \"10–1000 Hz\""));
    }

    @Test
    void pageInAnotherEncodingIsRefused() throws IOException {
        Path page = Files.write(folder.resolve("latin.md"), "µ".getBytes(StandardCharsets.ISO_8859_1));
        assertEquals("latin.md:1: page is not text in UTF-8", runner.run(page).get(0).failure().toString());
    }

    @Test
    void otherLanguagesAreIgnored() throws IOException {
        assertPasses(failuresOf("```sh\nfalse\n```\n" + output("nothing") + "```json\n{\n```\n```javascript\n(\n```\n"
                + "~~~java\n1  // ==> 1\n~~~\n" + "````markdown\n```java\n1  // ==> 7\n```\n````\n"));
    }

    @Test
    void indentedBlockRuns() throws IOException {
        assertEquals(List.of("hostile.md:4: value is 1, page says 7; expression: 1"),
                failuresOf("1. In a list\n\n   ```java\n   1  // ==> 7\n   ```\n"));
    }

    @Test
    void noBlockEscapes() throws IOException {
        String says = "`: every java block runs, the mark must be plain `java`";
        assertEquals(List.of("hostile.md:1: block is marked `java no-run" + says,
                "hostile.md:4: block is marked `java,ignore" + says,
                "hostile.md:7: java block does not start a line and would never run",
                "hostile.md:11: block is never closed"),
                failuresOf("```java no-run\n1  // ==> 7\n```\n```java,ignore\n1\n```\n> ```java\n> 1\n> ```\n\n"
                        + "```java\n1  // ==> 1\n"));
    }

    @Test
    void sessionsAreFreshAndSystemOutIsGivenBack() throws IOException {
        PrintStream before = System.out;
        assertPasses(failuresOfBlock("int x = 1;", "x  // ==> 1"));
        assertEquals(1, failuresOfBlock("x  // ==> 1").size());
        assertSame(before, System.out);
    }

    @Test
    void blocksOfAPageShareOneSession() throws IOException {
        assertPasses(failuresOf(block("int x = 1;") + "then\n" + block("x + 1  // ==> 2")));
    }
}
