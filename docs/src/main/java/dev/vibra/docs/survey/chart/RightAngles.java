package dev.vibra.docs.survey.chart;

/** An upright axis of degrees with its numbers at right angles, where a resonance is read. */
final class RightAngles {
    private static final double TICK = 5;
    private static final int MOST = 9;

    private RightAngles() {}

    static void draw(Canvas canvas, Panel panel, String title) {
        double from = panel.value(panel.bottom());
        double to = panel.value(panel.top());
        double step = 90;
        while ((to - from) / step > MOST) {
            step *= 2;
        }
        Lines grid = new Lines();
        Lines marks = new Lines().stroke(panel.left(), panel.top(), panel.left(), panel.bottom());
        double widest = 0;
        for (double degrees = step * Math.ceil(from / step - 1e-9); degrees <= to + 1e-6; degrees += step) {
            double y = Math.floor(panel.y(degrees)) + 0.5;
            grid.stroke(panel.left(), y, panel.right(), y);
            marks.stroke(panel.left() - TICK, y, panel.left(), y);
            long turned = Math.floorMod(Math.round(degrees), 360L);
            widest = Math.max(widest, Lettering.SMALL.width(turned + "\u00b0"));
            canvas.text(turned + "\u00b0", panel.left() - TICK - 4, y + Lettering.SMALL.half(), Lettering.SMALL.end());
        }
        canvas.stroke(grid, Look.GRID);
        canvas.stroke(marks, Look.THIN);
        Lettering letters = Lettering.TEXT.middle().upwards();
        canvas.text(letters.fitting(title, panel.bottom() - panel.top() + 40), panel.left() - TICK - 14 - widest,
                (panel.top() + panel.bottom()) / 2, letters);
    }
}
