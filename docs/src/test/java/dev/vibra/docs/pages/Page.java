package dev.vibra.docs.pages;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The lines of one page with the line end of each, so that a renewed page differs only where it was renewed. */
final class Page {
    private static final Pattern LINE = Pattern.compile("([^\r\n]*)(\r\n|\n|\r|\\z)");

    private final Path file;
    private final List<String> lines = new ArrayList<>();
    private final List<String> ends = new ArrayList<>();

    private Page(Path file, String text) {
        this.file = file;
        Matcher matcher = LINE.matcher(text);
        while (matcher.find() && !(matcher.end() == text.length() && matcher.group().isEmpty())) {
            lines.add(matcher.group(1));
            ends.add(matcher.group(2));
        }
    }

    /** Reads a page in UTF-8; bytes that are none are an {@link IOException}. */
    static Page read(Path file) throws IOException {
        return new Page(file.toAbsolutePath().normalize(), Files.readString(file));
    }

    Path file() {
        return file;
    }

    /** Name in failures: {@code spectrum.md}. */
    String name() {
        return file.getFileName().toString();
    }

    /** Name without its ending: {@code spectrum}. */
    String title() {
        return name().replaceFirst("\\.md$", "");
    }

    List<String> lines() {
        return List.copyOf(lines);
    }

    /** Replaces lines; several replacements go from the last of the page to the first, so that line numbers hold. */
    void replace(Renewal.Lines change) {
        int from = change.firstLine() - 1;
        String end = ends.get(change.count() > 0 ? from : from - 1);
        for (int i = 0; i < change.count(); i++) {
            lines.remove(from);
            ends.remove(from);
        }
        for (int i = 0; i < change.replacement().size(); i++) {
            lines.add(from + i, change.replacement().get(i));
            ends.add(from + i, end);
        }
    }

    void write() throws IOException {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < lines.size(); i++) {
            text.append(lines.get(i)).append(ends.get(i));
        }
        Files.writeString(file, text);
    }
}
