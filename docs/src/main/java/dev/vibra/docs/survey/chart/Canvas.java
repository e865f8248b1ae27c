package dev.vibra.docs.survey.chart;

/**
 * What figures are drawn on, in CSS pixels from the upper left corner of the paper; the same calls make the SVG and the
 * PNG. Whatever is drawn later lies on top.
 */
interface Canvas {
    /** Draws strokes. */
    void stroke(Lines lines, Pen pen);

    /** Fills surfaces; each is closed by itself. */
    void fill(Lines outlines, int colour);

    /** Draws a circle. */
    void circle(double x, double y, double radius, Pen pen);

    /** Draws a filled circle. */
    void disc(double x, double y, double radius, int colour);

    /** Writes a text; what isn't seen of it is shown as an escape. */
    void text(String text, double x, double y, Lettering lettering);

    /** Writes a text on a piece of paper of its own, so that what lies below doesn't cross its letters. */
    default void label(String text, double x, double y, Lettering lettering) {
        fill(new Lines().box(x + lettering.offset(text) - 2, y - 0.8 * lettering.size(), lettering.width(text) + 4,
                1.04 * lettering.size()), Look.PAPER);
        text(text, x, y, lettering);
    }
}
