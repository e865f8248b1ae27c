package dev.vibra.docs.survey;

import dev.vibra.internal.Printable;
import java.io.Console;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.stream.Collectors;

/** Prints for people, in letters that the terminal can show, and tells how a long survey gets on. */
final class Terminal {
    private static final int LONG_SURVEY = 4;
    private static final String[][] PLAIN = {{"\u00b1", "+-"}, {"\u00b2", "2"}, {"\u00b5", "u"}, {"\u2013", "-"},
        {"\u00d7", "x"}, {"\u00b0", " deg"}, {"\u00b7", "*"}, {"\u2026", "..."}};

    private final PrintStream out;
    private final PrintStream err;
    private final CharsetEncoder encoder;
    private final boolean interactive;

    Terminal(PrintStream out, PrintStream err, Charset charset, boolean interactive) {
        this.out = out;
        this.err = err;
        this.encoder = charset.newEncoder();
        this.interactive = interactive;
    }

    /** Makes the terminal of this process; the streams are opened anew in the character set of the terminal. */
    static Terminal ofProcess() {
        Charset charset = charset();
        return new Terminal(new PrintStream(System.out, true, charset), new PrintStream(System.err, true, charset),
                charset,
                isTerminal(System.console()));
    }

    /** JDK 17 tells the set by one name for a terminal and by another for everything else; later ones by a third. */
    private static Charset charset() {
        for (String property : new String[] {"stdout.encoding", "sun.stdout.encoding", "native.encoding"}) {
            String name = System.getProperty(property, "");
            if (!name.isEmpty() && Charset.isSupported(name)) {
                return Charset.forName(name);
            }
        }
        return StandardCharsets.US_ASCII;
    }

    /** From JDK 22 on there may be a console without a terminal; it has a method then that tells. */
    private static boolean isTerminal(Console console) {
        if (console == null) {
            return false;
        }
        try {
            return (Boolean) Console.class.getMethod("isTerminal").invoke(console);
        } catch (ReflectiveOperationException e) {
            return true;
        }
    }

    void print(String text) {
        out.print(shown(text));
        out.flush();
    }

    void complain(String text) {
        err.println(shown(text));
        err.flush();
    }

    /** Tells whether nobody reads what is printed any more, as behind {@code | head -1}. */
    boolean isGone() {
        return out.checkError();
    }

    void progress(int done, int all, String what) {
        if (interactive && all > LONG_SURVEY) {
            err.print(String.format("\r%-78s", shown(done + " of " + all + "  " + Printable.shortened(what, 40))));
            err.flush();
        }
    }

    void endProgress(int all) {
        if (interactive && all > LONG_SURVEY) {
            err.print("\r" + " ".repeat(78) + "\r");
            err.flush();
        }
    }

    /** Names come from files of unknown origin: no character of theirs may steer the terminal. */
    private String shown(String text) {
        String plain = Arrays.stream(text.split("\n", -1)).map(Printable::of).collect(Collectors.joining("\n"));
        if (encoder.canEncode(plain)) {
            return plain;
        }
        for (String[] pair : PLAIN) {
            plain = encoder.canEncode(pair[0]) ? plain : plain.replace(pair[0], pair[1]);
        }
        return plain;
    }
}
