package dev.vibra.docs.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** What reaches the terminal, in what letters, and when progress is told. */
class TerminalTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private Terminal terminal(Charset charset, boolean interactive) {
        return new Terminal(new PrintStream(out, true, charset), new PrintStream(err, true, charset), charset,
                interactive);
    }

    @Test
    void signsStayWhereTheTerminalHasThem() {
        terminal(StandardCharsets.UTF_8, false).print("4.3 \u00b1 0.2 m/s\u00b2");
        assertEquals("4.3 \u00b1 0.2 m/s\u00b2", out.toString(StandardCharsets.UTF_8));
    }

    @Test
    void signsBecomePlainLettersWhereItHasNone() {
        terminal(StandardCharsets.US_ASCII, false)
                .print("4.3 \u00b1 0.2 m/s\u00b2, 3 \u00b5m, 10\u20131000 Hz, 2\u00d7");
        assertEquals("4.3 +- 0.2 m/s2, 3 um, 10-1000 Hz, 2x", out.toString(StandardCharsets.US_ASCII));
    }

    /** Line ends stay, they are the program's own; whatever else steers a terminal is shown. */
    @Test
    void nothingSteersTheTerminal() {
        Terminal terminal = terminal(StandardCharsets.UTF_8, true);
        terminal.print("fan \u001b]0;x\u0007\u202e\n4.3 mm/s\n");
        assertEquals("fan \\u001b]0;x\\u0007\\u202e\n4.3 mm/s\n", out.toString(StandardCharsets.UTF_8));
        terminal.complain("a\u009b1m");
        assertEquals("a\\u009b1m\n", err.toString(StandardCharsets.UTF_8));
        terminal.progress(1, 40, "\r\u001b[2J");
        assertTrue(err.toString(StandardCharsets.UTF_8).contains("1 of 40  \\u000d\\u001b[2J"));
    }

    @Test
    void progressIsForLongSurveysOnATerminalOnly() {
        terminal(StandardCharsets.UTF_8, true).progress(1, 4, "DE-H");
        terminal(StandardCharsets.UTF_8, false).progress(1, 40, "DE-H");
        assertEquals("", err.toString(StandardCharsets.UTF_8));
        terminal(StandardCharsets.UTF_8, true).progress(2, 40, "DE-H");
        assertTrue(err.toString(StandardCharsets.UTF_8).startsWith("\r2 of 40  DE-H"), err
                .toString(StandardCharsets.UTF_8));
        assertEquals("", out.toString(StandardCharsets.UTF_8));
    }
}
