package dev.vibra.benchmarks.comparison;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Limits out of a file, one a line: {@code ratio 1.7 scipy:record plans:record} says that the first work takes at least
 * 1.7 times as long as the second, {@code bytes 0 plans:record} what one run may allocate at most.
 */
final class Limits {
    private final List<Limit> limits = new ArrayList<>();

    /** What a limit came to. */
    enum Outcome { KEPT, MISSED, NOT_RUN }

    /** A limit and what was measured. */
    record Held(String text, Outcome outcome) {}

    private sealed interface Limit {
        Held hold(Timings timings);
    }

    private record Ratio(double least, String reference, String work) implements Limit {
        @Override
        public Held hold(Timings timings) {
            OptionalDouble found = timings.ratio(reference, work);
            return held(String.format(Locale.ROOT, "%s / %s at least %s", reference, work, least), found,
                    found.orElse(0) >= least);
        }
    }

    private record Bytes(double most, String work) implements Limit {
        @Override
        public Held hold(Timings timings) {
            OptionalDouble found = timings.bytes(work);
            return held(String.format(Locale.ROOT, "bytes of %s at most %,.0f", work, most), found,
                    found.orElse(0) <= most);
        }
    }

    private static Held held(String rule, OptionalDouble found, boolean kept) {
        return found.isEmpty() ? new Held(rule + ": not run", Outcome.NOT_RUN)
                : new Held(String.format(Locale.ROOT, "%s: %,.2f", rule, found.getAsDouble()),
                        kept ? Outcome.KEPT : Outcome.MISSED);
    }

    private Limits() {}

    static Limits of(List<String> lines) {
        Limits read = new Limits();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).replaceFirst("#.*", "").strip();
            if (!line.isEmpty()) {
                read.limits.add(limit(line.split("\\s+"), i + 1));
            }
        }
        return read;
    }

    static Limits read(Path file) throws IOException {
        return of(Files.readAllLines(file));
    }

    private static Limit limit(String[] words, int line) {
        if (words.length == 4 && words[0].equals("ratio")) {
            return new Ratio(Double.parseDouble(words[1]), words[2], words[3]);
        }
        if (words.length == 3 && words[0].equals("bytes")) {
            return new Bytes(Double.parseDouble(words[1]), words[2]);
        }
        throw new IllegalArgumentException("line " + line + " must be \"ratio LEAST REFERENCE WORK\" or"
                + " \"bytes MOST WORK\": " + String.join(" ", words));
    }

    List<Held> hold(Timings timings) {
        return limits.stream().map(limit -> limit.hold(timings)).toList();
    }
}
