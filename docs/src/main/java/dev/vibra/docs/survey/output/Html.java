package dev.vibra.docs.survey.output;

import dev.vibra.internal.Printable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.Base64;
import java.util.List;

/**
 * Writes an HTML page; all text is escaped, only the tags of this class are markup. What isn't seen of a text is shown
 * as an escape. A writer that takes no more ends it by an {@link UncheckedIOException}.
 */
final class Html {
    private final Writer text;
    private final FigureSpool figures;

    Html(Writer text, FigureSpool figures) {
        this.text = text;
        this.figures = figures;
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
        return raw("<" + tag + styled(cssClass) + ">" + escaped(content) + "</" + tag + ">\n");
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
            raw("<" + cellTag + ">" + escaped(cell) + "</" + cellTag + ">");
        }
        return raw("</tr>\n");
    }

    Html figure(FigureSpool.Kept figure, String caption) {
        open("figure", "");
        raw("<img alt=\"" + escaped(figure.description()) + "\" src=\"data:image/png;base64,");
        raw(Base64.getEncoder().encodeToString(figures.png(figure))).raw("\">\n");
        element("figcaption", caption);
        return close("figure");
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
