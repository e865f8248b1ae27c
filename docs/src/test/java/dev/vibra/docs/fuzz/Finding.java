package dev.vibra.docs.fuzz;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Arrays;

/**
 * One way in which an input broke what was promised.
 *
 * @param target name of the target
 * @param seed seed of the input
 * @param input the input
 * @param thrown what came
 */
record Finding(String target, long seed, Target.Input input, Throwable thrown) {
    private static final int FRAMES = 12;

    /**
     * Alike findings have one key: the kind of the exception, what it says before the colon without numbers, and where
     * it arose.
     */
    String key() {
        return key(thrown);
    }

    static String key(Throwable thrown) {
        String words = String.valueOf(thrown.getMessage()).split(":", 2)[0].replaceAll("[0-9.,]+", "#");
        return thrown.getClass().getSimpleName() + " " + (isOwn(thrown) ? words : "") + " at "
                + Arrays.stream(frames(thrown))
                .filter(frame -> frame.getClassName().startsWith("dev.vibra.")
                && !frame.getClassName().startsWith("dev.vibra.internal.")).findFirst()
                .map(StackTraceElement::toString).orElse("?");
    }

    private static boolean isOwn(Throwable thrown) {
        return thrown instanceof AssertionError;
    }

    private static StackTraceElement[] frames(Throwable thrown) {
        return thrown.getCause() != null && isOwn(thrown) ? thrown.getCause().getStackTrace() : thrown.getStackTrace();
    }

    @Override
    public String toString() {
        StringWriter text = new StringWriter();
        PrintWriter out = new PrintWriter(text);
        out.println(target + " -Dfuzz.target=" + target + " -Dfuzz.replay=" + seed);
        out.println("  input: " + input.shown());
        for (Throwable one = thrown; one != null; one = one.getCause()) {
            out.println("  " + one.getClass().getName() + ": " + Shown.escaped(String.valueOf(one.getMessage()), 800));
            Arrays.stream(one.getStackTrace()).limit(FRAMES).forEach(frame -> out.println("    at " + frame));
        }
        return text.toString();
    }
}
