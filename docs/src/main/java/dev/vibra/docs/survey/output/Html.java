package dev.vibra.docs.survey.output;

import dev.vibra.internal.Printable;
import dev.vibra.severity.Zone;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.List;
import java.util.Optional;

/**
 * Writes an HTML page; all text is escaped, only the tags of this class are markup. What isn't seen of a text is shown
 * as an escape. A writer that takes no more ends it by an {@link UncheckedIOException}.
 */
final class Html {
    private final Writer text;
    private final FigureSpool figures;
    private final Phrases phrases;
    private final Words words;
    private final ShownUnits units;

    Html(Writer text, FigureSpool figures, Phrases phrases, ShownUnits units) {
        this.text = text;
        this.figures = figures;
        this.phrases = phrases;
        this.words = new Words(phrases);
        this.units = units;
    }

    /** Returns the same page, to be gone on with in other units. */
    Html in(ShownUnits other) {
        return new Html(text, figures, phrases, other);
    }

    /** Units of the figures in its texts, which are converted as they are written; numbers that stand alone aren't. */
    ShownUnits units() {
        return units;
    }

    Phrases phrases() {
        return phrases;
    }

    Words words() {
        return words;
    }

    String say(String key, Object... arguments) {
        return phrases.say(key, arguments);
    }

    Html open(String tag, String cssClass) {
        return raw("<" + tag + styled(cssClass) + ">\n");
    }

    Html close(String tag) {
        return raw("</" + tag + ">\n");
    }

    Html element(String tag, String content) {
        return element(tag, "", content);
    }

    Html element(String tag, String cssClass, String content) {
        return raw("<" + tag + styled(cssClass) + ">" + shown(content) + "</" + tag + ">\n");
    }

    /** Adds text. */
    Html text(String content) {
        return raw(shown(content));
    }

    private String shown(String content) {
        return escaped(units.shown(content));
    }

    /** A paragraph that begins with a label. */
    Html labelled(String tag, String label, String content) {
        return raw("<" + tag + ">").element("span", "label", label + ":").text(content).raw("</" + tag + ">\n");
    }

    /** The zones as letters in a row, the one that holds in an inverted, underlined box; nothing without a zone. */
    Html ruler(Optional<Zone> zone, String cssClass) {
        open("div", cssClass);
        for (Zone one : zone.isPresent() ? Zone.values() : new Zone[0]) {
            element("span", one == zone.get() ? "here" : "", one.name());
        }
        return close("div");
    }

    private static String styled(String cssClass) {
        return cssClass.isEmpty() ? "" : " class=\"" + cssClass + "\"";
    }

    Html list(List<?> items) {
        if (items.isEmpty()) {
            return this;
        }
        open("ul", "");
        items.forEach(item -> element("li", item.toString()));
        return close("ul");
    }

    Html row(String cellTag, String... cells) {
        raw("<tr>");
        for (String cell : cells) {
            String shown = cellTag.equals("th") ? escaped(units.heading(cell)) : shown(cell);
            raw("<" + cellTag + ">" + shown + "</" + cellTag + ">");
        }
        return raw("</tr>\n");
    }

    /** A figure that is only looked at. */
    Html figure(FigureSpool.Kept figure, String caption) {
        return open("figure", "").raw(figures.read(figure.still())).raw("\n").element("figcaption", caption)
                .close("figure");
    }

    /**
     * A figure with the values that a browser explores it by.
     *
     * @param whole true for all of them, false for their outline, which is told
     */
    Html figure(FigureSpool.Kept figure, boolean whole) {
        if (!figure.isExplorable()) {
            return figure(figure, figure.description());
        }
        String caption = figure.description() + (whole || figure.outline().length() >= figure.whole().length() ? ""
                : " " + say("figure.outline", FigureSpool.OUTLINE));
        open("figure", "plot").raw(figures.read(figure.still())).raw("\n").element("figcaption", caption);
        raw("<script type=\"application/json\">").raw(figures.read(whole ? figure.whole() : figure.outline()));
        return raw("</script>\n").close("figure");
    }

    /** Adds text that is markup already; only for constants of this package. */
    Html raw(String markup) {
        try {
            text.write(markup);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return this;
    }

    static String escaped(String content) {
        String seen = Printable.of(content);
        StringBuilder out = new StringBuilder(seen.length());
        for (int i = 0; i < seen.length(); i++) {
            char c = seen.charAt(i);
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> out.append(c);
            }
        }
        return out.toString();
    }
}
