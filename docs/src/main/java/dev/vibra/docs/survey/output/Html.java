package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.Figure;
import java.util.Base64;
import java.util.List;

/** Builds an HTML page; all text is escaped, only the tags of this class are markup. */
final class Html {
    private final StringBuilder text = new StringBuilder();

    Html open(String tag, String cssClass) {
        text.append('<').append(tag);
        if (!cssClass.isEmpty()) {
            text.append(" class=\"").append(cssClass).append('"');
        }
        text.append(">\n");
        return this;
    }

    Html close(String tag) {
        text.append("</").append(tag).append(">\n");
        return this;
    }

    Html element(String tag, String content) {
        return element(tag, "", content);
    }

    Html element(String tag, String cssClass, String content) {
        text.append('<').append(tag);
        if (!cssClass.isEmpty()) {
            text.append(" class=\"").append(cssClass).append('"');
        }
        text.append('>').append(escaped(content)).append("</").append(tag).append(">\n");
        return this;
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
        text.append("<tr>");
        for (String cell : cells) {
            text.append('<').append(cellTag).append('>').append(escaped(cell)).append("</").append(cellTag).append('>');
        }
        text.append("</tr>\n");
        return this;
    }

    Html figure(Figure figure, String caption) {
        open("figure", "");
        text.append("<img alt=\"").append(escaped(figure.description())).append("\" src=\"data:image/png;base64,")
                .append(Base64.getEncoder().encodeToString(figure.png())).append("\">\n");
        element("figcaption", caption);
        return close("figure");
    }

    /** Adds text that is markup already; only for constants of this package. */
    Html raw(String markup) {
        text.append(markup);
        return this;
    }

    static String escaped(String content) {
        StringBuilder out = new StringBuilder(content.length());
        for (int i = 0; i < content.length(); i++) {
            char c = content.charAt(i);
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

    @Override
    public String toString() {
        return text.toString();
    }
}
