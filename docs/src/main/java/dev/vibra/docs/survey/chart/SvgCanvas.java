package dev.vibra.docs.survey.chart;

import dev.vibra.docs.survey.chart.Lettering.Anchor;
import dev.vibra.internal.Printable;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/**
 * Draws as SVG that may stand in any page: presentation attributes only, no style, no script, no name that another
 * picture could have, nothing from elsewhere.
 */
final class SvgCanvas implements Canvas {
    private final StringBuilder out = new StringBuilder(1 << 13);

    SvgCanvas(int width, int height, String description) {
        out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ").append(width).append(' ').append(height)
                .append("\" role=\"img\" aria-label=\"").append(escaped(description))
                .append("\" class=\"still\" font-family=\"sans-serif\" fill=\"none\" stroke-linejoin=\"round\">");
    }

    /** Returns the whole element. */
    String finished() {
        return out + "</svg>";
    }

    @Override
    public void stroke(Lines lines, Pen pen) {
        if (lines.size() > 0) {
            path(lines, false);
            pen(pen, SvgPath.FINENESS);
            out.append("/>");
        }
    }

    @Override
    public void fill(Lines outlines, int colour) {
        if (outlines.size() > 0) {
            path(outlines, true);
            out.append(" fill=\"").append(colour(colour)).append("\"/>");
        }
    }

    private void path(Lines lines, boolean closed) {
        out.append("<path transform=\"scale(.5)\" d=\"").append(SvgPath.of(lines, closed)).append('"');
    }

    private void pen(Pen pen, int scale) {
        out.append(" stroke=\"").append(colour(pen.colour())).append('"');
        if (pen.width() * scale != 1) {
            out.append(" stroke-width=\"").append(number(pen.width() * scale)).append('"');
        }
        if (pen.dash() > 0) {
            out.append(" stroke-dasharray=\"").append(number(pen.dash() * scale)).append(' ')
                    .append(number(pen.gap() * scale)).append('"');
        }
    }

    @Override
    public void circle(double x, double y, double radius, Pen pen) {
        round(x, y, radius);
        pen(pen, 1);
        out.append("/>");
    }

    @Override
    public void disc(double x, double y, double radius, int colour) {
        round(x, y, radius);
        out.append(" fill=\"").append(colour(colour)).append("\"/>");
    }

    private void round(double x, double y, double radius) {
        out.append("<circle cx=\"").append(number(x)).append("\" cy=\"").append(number(y)).append("\" r=\"")
                .append(number(radius)).append('"');
    }

    @Override
    public void text(String text, double x, double y, Lettering lettering) {
        if (text.isBlank()) {
            return;
        }
        out.append("<text x=\"").append(number(x)).append("\" y=\"").append(number(y)).append('"');
        if (lettering.upright()) {
            out.append(" transform=\"rotate(-90 ").append(number(x)).append(' ').append(number(y)).append(")\"");
        }
        if (lettering.anchor() != Anchor.START) {
            out.append(" text-anchor=\"").append(lettering.anchor().name().toLowerCase(Locale.ROOT)).append('"');
        }
        out.append(" font-size=\"").append(lettering.size()).append('"');
        if (lettering.bold()) {
            out.append(" font-weight=\"bold\"");
        }
        out.append(" fill=\"").append(colour(lettering.colour())).append("\">").append(escaped(text)).append("</text>");
    }

    private static String colour(int colour) {
        return colour == Look.PAPER ? "#fff" : String.format(Locale.ROOT, "#%06x", colour);
    }

    /** One digit behind the point at most. */
    private static String number(double value) {
        return BigDecimal.valueOf(value).setScale(1, RoundingMode.HALF_EVEN).stripTrailingZeros().toPlainString();
    }

    /** What isn't seen, or is no letter for XML 1.0, is shown as an escape. */
    static String escaped(String text) {
        StringBuilder safe = new StringBuilder();
        for (char letter : Printable.of(text).toCharArray()) {
            switch (letter) {
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '&' -> safe.append("&amp;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> safe.append(letter);
            }
        }
        return safe.toString();
    }
}
