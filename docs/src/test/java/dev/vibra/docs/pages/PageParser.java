package dev.vibra.docs.pages;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds the java blocks of a page, the text block that directly follows one, and the pictures. */
final class PageParser {
    private static final Pattern FENCE = Pattern.compile("^(\\s*)(`{3,}|~{3,})([^`]*)$");
    private static final Pattern STRAY = Pattern.compile("(?i)(`{3,}|~{3,})\\s*java(?![a-z])");
    private static final Pattern JAVA = Pattern.compile("(?i)^[{.]*java(?![a-z]).*");
    private static final Pattern IMAGE = Pattern.compile("!\\[[^\\]]*]\\(\\s*<?([^)\\s>]+)>?[^)]*\\)");
    private static final Pattern TAG = Pattern.compile("<img\\b[^>]*\\bsrc\\s*=\\s*[\"']([^\"']+)[\"']");

    /** A fenced block: the line of its first content line (from 1), its content without the fence's indentation. */
    record Block(int firstLine, String indent, List<String> lines) {}

    /** A java block and what the page says it prints. */
    record Snippets(Block java, Optional<Block> output) {}

    /** A picture shown by the page. */
    record Image(int line, String target) {}

    private final Page page;
    private final List<String> lines;
    private final List<Snippets> snippets = new ArrayList<>();
    private final List<Image> images = new ArrayList<>();
    private final List<Failure> failures = new ArrayList<>();
    private Optional<Block> awaitingOutput = Optional.empty();

    private PageParser(Page page) {
        this.page = page;
        this.lines = page.lines();
    }

    static PageParser parse(Page page) {
        PageParser parser = new PageParser(page);
        int next = 0;
        while (next < parser.lines.size()) {
            Matcher fence = FENCE.matcher(parser.lines.get(next));
            next = fence.matches() ? parser.fenced(next, fence) : parser.prose(next);
        }
        parser.closeSnippets(Optional.empty());
        return parser;
    }

    List<Snippets> snippets() {
        return snippets;
    }

    List<Image> images() {
        return images;
    }

    List<Failure> failures() {
        return failures;
    }

    private int prose(int at) {
        String line = lines.get(at);
        if (!line.isBlank()) {
            closeSnippets(Optional.empty());
        }
        if (STRAY.matcher(line).find()) {
            fail(at, "java block does not start a line and would never run");
        }
        for (Pattern pattern : List.of(IMAGE, TAG)) {
            Matcher matcher = pattern.matcher(line);
            while (matcher.find()) {
                images.add(new Image(at + 1, matcher.group(1)));
            }
        }
        return at + 1;
    }

    private int fenced(int opening, Matcher fence) {
        String indent = fence.group(1);
        String marks = fence.group(2);
        Pattern closing = Pattern.compile("^\\s*" + marks.charAt(0) + "{" + marks.length() + ",}\\s*$");
        List<String> content = new ArrayList<>();
        int at = opening + 1;
        while (at < lines.size() && !closing.matcher(lines.get(at)).matches()) {
            content.add(withoutIndent(lines.get(at), indent.length()));
            at++;
        }
        if (at == lines.size()) {
            fail(opening, "block is never closed");
        }
        take(opening, fence.group(3).strip(), new Block(opening + 2, indent, content));
        return at + 1;
    }

    private void take(int opening, String info, Block block) {
        if (info.equals("text") && awaitingOutput.isPresent()) {
            closeSnippets(Optional.of(block));
            return;
        }
        closeSnippets(Optional.empty());
        if (info.toLowerCase(Locale.ROOT).equals("java")) {
            awaitingOutput = Optional.of(block);
        } else if (JAVA.matcher(info).matches()) {
            fail(opening, "block is marked `" + info + "`: every java block runs, the mark must be plain `java`");
        }
    }

    private void closeSnippets(Optional<Block> output) {
        awaitingOutput.ifPresent(java -> snippets.add(new Snippets(java, output)));
        awaitingOutput = Optional.empty();
    }

    private static String withoutIndent(String line, int indent) {
        int blank = 0;
        while (blank < indent && blank < line.length() && Character.isWhitespace(line.charAt(blank))) {
            blank++;
        }
        return line.substring(blank);
    }

    private void fail(int at, String text) {
        failures.add(new Failure(page.name(), at + 1, text));
    }
}
