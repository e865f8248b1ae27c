package dev.vibra.docs.survey.output;

import dev.vibra.internal.Printable;
import java.util.List;

/**
 * Plain text of at most 80 columns: headings, wrapped paragraphs with a hanging indent, rows of columns. What isn't
 * seen of a text is shown as an escape.
 */
final class TextPage {
    static final int WIDTH = 80;

    private final StringBuilder text = new StringBuilder();
    private ShownUnits units;

    TextPage() {
        this(ShownUnits.METRIC);
    }

    /** Paragraphs are shown in these units. */
    TextPage(ShownUnits units) {
        this.units = units;
    }

    /** Goes on in other units. */
    void in(ShownUnits other) {
        units = other;
    }

    void heading(String heading) {
        blank();
        line(heading);
    }

    void blank() {
        if (!text.isEmpty() && !(text.length() > 1 && text.charAt(text.length() - 2) == '\n')) {
            text.append('\n');
        }
    }

    void line(String line) {
        text.append(Printable.of(line.stripTrailing())).append('\n');
    }

    /** Writes a paragraph: the label once, the words beside it, wrapped at the width. */
    void item(String label, String words) {
        if (label.length() > WIDTH / 2) {
            line(label);
            item("      ", words);
            return;
        }
        String indent = " ".repeat(label.length());
        StringBuilder line = new StringBuilder(label);
        boolean begun = false;
        for (String word : units.shown(words.trim()).split("\\s+")) {
            if (begun && line.length() + 1 + word.length() > WIDTH) {
                line(line.toString());
                line = new StringBuilder(indent);
                begun = false;
            }
            line.append(begun ? " " : "").append(word);
            begun = true;
        }
        line(line.toString());
    }

    /** Writes paragraphs of which the first has the label. */
    void items(String label, List<String> paragraphs) {
        for (int i = 0; i < paragraphs.size(); i++) {
            item(i == 0 ? label : " ".repeat(label.length()), paragraphs.get(i));
        }
    }

    /** Writes a row of columns as it is if it fits, else its words wrapped beside the label. */
    void row(String label, String columns) {
        if (label.length() + columns.length() <= WIDTH) {
            line(label + columns);
        } else {
            item(label, columns);
        }
    }

    static String padded(String cell, int width) {
        return cell.length() >= width ? cell : cell + " ".repeat(width - cell.length());
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
