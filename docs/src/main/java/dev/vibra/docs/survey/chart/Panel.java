package dev.vibra.docs.survey.chart;

import java.util.List;

/**
 * One plot: two axes over a rectangle of the paper, and what is drawn within. Nothing leaves the rectangle; where a
 * value isn't finite a curve has a gap.
 */
final class Panel {
    /** Pixels from one number to the next, at least, on the upright axis. */
    private static final double Y_DISTANCE = 36;
    private static final double X_DISTANCE = 70;
    private static final double TICK = 5;
    /** Paper below the rectangle that numbers and title of the axis need. */
    static final double FOOT = 46;
    /** The same without a title. */
    static final double FOOT_WITHOUT_TITLE = 24;

    private final Canvas canvas;
    private final Axis across;
    private final Axis upwards;
    private final double left;
    private final double top;
    private final double right;
    private final double bottom;

    Panel(Canvas canvas, Axis across, Axis upwards, double left, double top, double right, double bottom) {
        this.canvas = canvas;
        this.across = across;
        this.upwards = upwards;
        this.left = left;
        this.top = top;
        this.right = right;
        this.bottom = bottom;
    }

    /** Returns the place of a value on the paper, which may lie outside of the rectangle. */
    double x(double value) {
        return left + across.share(value) * (right - left);
    }

    double y(double value) {
        return bottom - upwards.share(value) * (bottom - top);
    }

    /** Returns the value on the upright, linear axis at a place on the paper. */
    double value(double pixel) {
        return upwards.from() + (bottom - pixel) / (bottom - top) * (upwards.to() - upwards.from());
    }

    double left() {
        return left;
    }

    double top() {
        return top;
    }

    double right() {
        return right;
    }

    double bottom() {
        return bottom;
    }

    /** Draws grid, axes, numbers and titles; a title may be empty. */
    Panel withAxes(String xTitle, String yTitle) {
        return withXAxis(xTitle, true, true).withYAxis(yTitle);
    }

    /** Draws the lower axis, with grid and numbers or without them. */
    Panel withXAxis(String title, boolean grid, boolean numbers) {
        List<Axis.Tick> ticks = xTicks();
        Lines lines = new Lines();
        Lines marks = new Lines().stroke(left, bottom, right, bottom);
        for (Axis.Tick tick : ticks) {
            double x = sharp(x(tick.value()));
            lines.stroke(x, top, x, bottom);
            marks.stroke(x, bottom, x, bottom + TICK);
        }
        if (grid) {
            canvas.stroke(lines, Look.GRID);
        }
        canvas.stroke(marks, Look.THIN);
        if (numbers) {
            Lettering letters = Lettering.SMALL.middle();
            ticks.forEach(tick -> canvas.text(tick.label(), within(x(tick.value()), letters.width(tick.label())),
                    bottom + TICK + 13, letters));
        }
        double middle = (left + right) / 2;
        canvas.text(Lettering.TEXT.fitting(title, 2 * Math.min(middle, Look.WIDTH - middle) - 4), middle,
                bottom + TICK + 34, Lettering.TEXT.middle());
        return this;
    }

    /** Moves the middle of a text so that it stays on the paper. */
    private static double within(double middle, double width) {
        return Math.max(width / 2, Math.min(Look.WIDTH - width / 2, middle));
    }

    private List<Axis.Tick> xTicks() {
        int most = (int) Math.max(2, (right - left) / X_DISTANCE);
        List<Axis.Tick> ticks = across.ticks(most);
        while (most > 2 && collide(ticks)) {
            ticks = across.ticks(--most);
        }
        return ticks;
    }

    private boolean collide(List<Axis.Tick> ticks) {
        double end = Double.NEGATIVE_INFINITY;
        for (Axis.Tick tick : ticks) {
            double width = Lettering.SMALL.width(tick.label());
            double begin = within(x(tick.value()), width) - width / 2;
            if (begin < end + 8) {
                return true;
            }
            end = begin + width;
        }
        return false;
    }

    /** Draws the axis on the left with its grid and numbers. */
    Panel withYAxis(String title) {
        return withYAxis(title, true);
    }

    /** Draws the axis on the left with its grid, and with its numbers unless a panel beside it has them. */
    Panel withYAxis(String title, boolean numbers) {
        List<Axis.Tick> ticks = upwards.ticks((int) Math.max(5, (bottom - top) / Y_DISTANCE));
        Lines grid = new Lines();
        Lines marks = new Lines().stroke(left, top, left, bottom);
        double widest = 0;
        for (Axis.Tick tick : ticks) {
            double y = sharp(y(tick.value()));
            grid.stroke(left, y, right, y);
            marks.stroke(left - TICK, y, left, y);
            if (numbers) {
                widest = Math.max(widest, Lettering.SMALL.width(tick.label()));
                canvas.text(tick.label(), left - TICK - 4, y + Lettering.SMALL.half(), Lettering.SMALL.end());
            }
        }
        canvas.stroke(grid, Look.GRID);
        canvas.stroke(marks, Look.THIN);
        writeUpwards(title, left - TICK - 4 - widest - 10);
        return this;
    }

    /** The title stands over two or three lines if the axis is too short for it. */
    private void writeUpwards(String title, double baseline) {
        Lettering letters = Lettering.TEXT.middle().upwards();
        List<String> lines = letters.wrapped(title, bottom - top + 24, 3);
        for (int i = 0; i < lines.size(); i++) {
            double half = Math.min(letters.width(lines.get(i)) / 2, bottom);
            double middle = Math.max(half + 2, (top + bottom) / 2);
            canvas.text(lines.get(i), baseline - (lines.size() - 1 - i) * 16, middle, letters);
        }
    }

    /** A stroke of one pixel on the middle of pixels isn't blurred. */
    private static double sharp(double pixel) {
        return Math.floor(pixel) + 0.5;
    }

    /** Draws a curve. */
    void line(double[] x, double[] y, Pen pen) {
        Lines lines = new Lines();
        for (int i = 1; i < x.length; i++) {
            clip(lines, x(x[i - 1]), y(y[i - 1]), x(x[i]), y(y[i]));
        }
        canvas.stroke(lines, pen);
    }

    /**
     * Adds what lies within the rectangle of one straight stroke.
     *
     * @see "Y.-D. Liang, B. A. Barsky, ACM Transactions on Graphics 3 (1984) 1-22"
     */
    private void clip(Lines lines, double x1, double y1, double x2, double y2) {
        double[] step = {x1 - x2, x2 - x1, y1 - y2, y2 - y1};
        double[] room = {x1 - left, right - x1, y1 - top, bottom - y1};
        double begin = 0;
        double end = 1;
        for (int side = 0; side < 4; side++) {
            if (!(step[side] != 0)) {
                if (!(room[side] >= 0)) {
                    return;
                }
            } else if (step[side] < 0) {
                begin = Math.max(begin, room[side] / step[side]);
            } else {
                end = Math.min(end, room[side] / step[side]);
            }
        }
        if (!(begin <= end) || !Double.isFinite(x1 + x2 + y1 + y2)) {
            return;
        }
        double fromX = x1 + begin * (x2 - x1);
        double fromY = y1 + begin * (y2 - y1);
        int last = lines.size() - 1;
        if (last < 0 || lines.x(last) != fromX || lines.y(last) != fromY) {
            lines.move(fromX, fromY);
        }
        lines.line(end < 1 ? x1 + end * (x2 - x1) : x2, end < 1 ? y1 + end * (y2 - y1) : y2);
    }

    /** Fills what lies between two curves over the same places, the lower and the upper one. */
    void band(double[] x, double[] low, double[] high, int colour) {
        Lines outline = new Lines();
        for (int i = 0; i < x.length; i++) {
            outline.line(inX(x(x[i])), inY(y(high[i])));
        }
        for (int i = x.length - 1; i >= 0; i--) {
            outline.line(inX(x(x[i])), inY(y(low[i])));
        }
        canvas.fill(outline, colour);
    }

    private double inX(double pixel) {
        return Math.max(left, Math.min(right, pixel));
    }

    private double inY(double pixel) {
        return Math.max(top, Math.min(bottom, pixel));
    }

    /** Tells whether a point lies in the rectangle. */
    boolean holds(double x, double y) {
        return x(x) >= left - 0.01 && x(x) <= right + 0.01 && y(y) >= top - 0.01 && y(y) <= bottom + 0.01;
    }

    /** Draws filled dots. */
    void dots(double[] x, double[] y, double radius, int colour) {
        for (int i = 0; i < x.length; i++) {
            if (holds(x[i], y[i])) {
                canvas.disc(x(x[i]), y(y[i]), radius, colour);
            }
        }
    }

    /** Draws crosses. */
    void crosses(double[] x, double[] y, double reach, Pen pen) {
        Lines lines = new Lines();
        for (int i = 0; i < x.length; i++) {
            if (holds(x[i], y[i])) {
                double atX = x(x[i]);
                double atY = y(y[i]);
                lines.stroke(atX - reach, atY - reach, atX + reach, atY + reach)
                        .stroke(atX - reach, atY + reach, atX + reach, atY - reach);
            }
        }
        canvas.stroke(lines, pen);
    }

    /** Draws a dashed line over the whole width, its name and number at its right end. */
    void limit(double value, String text) {
        limit(value, text, right - 6, Lettering.SMALL.end());
    }

    /** Draws a dashed line over the whole width, its name and number at its left end. */
    void limitFromLeft(double value, String text) {
        limit(value, text, left + 6, Lettering.SMALL);
    }

    private void limit(double value, String text, double x, Lettering letters) {
        double y = y(value);
        if (!(y >= top - 0.01 && y <= bottom + 0.01)) {
            return;
        }
        canvas.stroke(new Lines().stroke(left, y, right, y), Look.LIMIT);
        if (!text.isBlank()) {
            canvas.label(letters.fitting(text, right - left - 12), x, y - top > 18 ? y - 5 : y + 15, letters);
        }
    }

    /** Draws a dashed upright line over the whole height, its text at its upper end. */
    void upright(double value, String text) {
        double x = x(value);
        if (!(x >= left - 0.01 && x <= right + 0.01)) {
            return;
        }
        canvas.stroke(new Lines().stroke(x, top, x, bottom), Look.LIMIT);
        boolean onTheRight = x + 6 + Lettering.SMALL.width(text) < right;
        Lettering letters = onTheRight ? Lettering.SMALL : Lettering.SMALL.end();
        if (!text.isEmpty()) {
            canvas.label(letters.fitting(text, Math.max(x - left, right - x) - 8), onTheRight ? x + 6 : x - 6, top + 14,
                    letters);
        }
    }
}
