package dev.vibra.docs.survey.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * One panel of curves with the key above it.
 *
 * @param title quantity and unit
 * @param axis upright axis
 * @param parts what is drawn, in the order in which it was added
 */
record CurvePanel(String title, Axis axis, List<Part> parts) {
    private static final double KEY = 20;
    private static final double KEY_SAMPLE = 26;
    private static final Pen[] PENS = {Pen.solid(Look.TRACE, 1.6), new Pen(Look.MARK, 1.6, 8, 3),
        Pen.solid(Look.PALE, 1.6), Pen.solid(Look.INK, 1.4).dotted()};

    enum Kind { LINE, POINTS, BAND, LIMIT, UPRIGHT }

    /** One thing that is drawn; {@code more} are the upper values of a band. */
    record Part(Kind kind, String name, double[] x, double[] y, double[] more) {}

    void draw(Canvas canvas, Panel panel) {
        for (Part part : parts) {
            if (part.kind == Kind.BAND) {
                panel.band(part.x, part.y, part.more, Look.BAND);
            }
        }
        for (int i = 0; i < parts.size(); i++) {
            Part part = parts.get(i);
            switch (part.kind) {
                case LINE -> panel.line(part.x, part.y, PENS[number(i) % PENS.length]);
                case POINTS -> points(panel, part, number(i));
                default -> { }
            }
        }
        for (Part part : parts) {
            if (part.kind == Kind.LIMIT) {
                panel.limitFromLeft(part.y[0], part.name);
            } else if (part.kind == Kind.UPRIGHT) {
                panel.upright(part.x[0], part.name);
            }
        }
        drawKey(canvas, panel.top());
    }

    private static void points(Panel panel, Part part, int number) {
        if (number % 3 == 1) {
            panel.crosses(part.x, part.y, 3.5, Pen.solid(Look.INK, 1.3));
        } else {
            panel.dots(part.x, part.y, 3.5, number % 3 == 0 ? Look.MARK : Look.INK);
        }
    }

    /** How many of the same kind come before a part of the panel. */
    private int number(int index) {
        return (int) parts.subList(0, index).stream().filter(part -> part.kind == parts.get(index).kind)
                .count();
    }

    /** A name in the key, with its place in the panel's parts. */
    private record Entry(int index, double left, int row) {}

    private List<Entry> key() {
        List<Entry> entries = new ArrayList<>();
        double left = Look.LEFT;
        int row = 0;
        for (int i = 0; i < parts.size(); i++) {
            Part part = parts.get(i);
            if (part.kind == Kind.LIMIT || part.kind == Kind.UPRIGHT || part.name.isEmpty()) {
                continue;
            }
            double width = KEY_SAMPLE + 6 + Lettering.SMALL.width(part.name) + 22;
            if (left > Look.LEFT && left + width - 22 > Look.WIDTH - 2) {
                left = Look.LEFT;
                row++;
            }
            entries.add(new Entry(i, left, row));
            left += width;
        }
        return entries;
    }

    double keyHeight() {
        List<Entry> entries = key();
        return entries.isEmpty() ? 0 : KEY * (entries.get(entries.size() - 1).row + 1);
    }

    private void drawKey(Canvas canvas, double bottom) {
        double top = bottom - keyHeight();
        for (Entry entry : key()) {
            double y = top + KEY * entry.row + 4;
            double x = entry.left;
            Part part = parts.get(entry.index);
            int number = number(entry.index);
            switch (part.kind) {
                case LINE -> canvas.stroke(new Lines().stroke(x, y, x + KEY_SAMPLE, y), PENS[number % PENS.length]);
                case BAND -> canvas.fill(new Lines().box(x, y - 6, KEY_SAMPLE, 12), Look.BAND);
                default -> points(new Panel(canvas, Axis.linear(0, 1), Axis.linear(0, 1), x, y - 6, x + KEY_SAMPLE,
                        y + 6), new Part(part.kind, "", new double[] {0.5}, new double[] {0.5}, null), number);
            }
            canvas.text(Lettering.SMALL.fitting(part.name, Look.WIDTH - x - KEY_SAMPLE - 8), x + KEY_SAMPLE + 6,
                    y + Lettering.SMALL.half(), Lettering.SMALL);
        }
    }
}
