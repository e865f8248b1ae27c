package dev.vibra.docs.survey.chart;

import java.util.List;

/**
 * An order as a vector that moves with speed, beside it the levels of all orders over speed. Lag counts against the
 * rotation, which is counter-clockwise on the paper.
 */
public final class SpeedPolarFigure {
    private static final int HEIGHT = 384;
    private static final double RING_X = 225;
    private static final double RING_Y = 190;
    private static final double LEFT = 566;
    private static final double RIGHT = Look.WIDTH - Look.RIGHT;
    /** What the levels span on their logarithmic axis. */
    private static final double RANGE = 300;
    private static final Pen TRACE = Pen.solid(Look.TRACE, 1.6);
    private static final List<Pen> PENS = List.of(TRACE, Pen.solid(Look.MARK, 1.4).dashed(),
            Pen.solid(Look.INK, 1.2).dotted(), Pen.solid(Look.PALE, 1.4));

    private SpeedPolarFigure() {}

    /**
     * Words of the figure.
     *
     * @param unit unit and detector of the circles
     * @param rotation word at the arrow of the rotation
     * @param speed title of the speed
     * @param level title of the level
     */
    public record Titles(String unit, String rotation, String speed, String level) {}

    /**
     * Draws the figure.
     *
     * @param curves orders, one or more; the first is drawn as a vector
     * @param speeds speeds in r/min that are written at the curve of the vector
     * @param titles words
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure of(List<SpeedCurve> curves, List<Double> speeds, Titles titles, String description) {
        List<SpeedCurve> all = List.copyOf(curves);
        List<Double> written = List.copyOf(speeds);
        return new Figure(HEIGHT, description, canvas -> {
            drawRing(canvas, all.get(0), written, titles);
            drawLevels(canvas, all, titles);
        });
    }

    private static void drawRing(Canvas canvas, SpeedCurve curve, List<Double> speeds, Titles titles) {
        double most = 0;
        for (int i = 0; i < curve.speeds().length; i++) {
            most = Double.isNaN(curve.lags()[i]) ? most : Math.max(most, curve.levels()[i]);
        }
        Ring ring = new Ring(canvas, RING_X, RING_Y, false, most);
        ring.drawGrid(titles.unit(), titles.rotation());
        Lines path = new Lines();
        boolean down = false;
        for (int i = 0; i < curve.speeds().length; i++) {
            boolean known = !Double.isNaN(curve.lags()[i]);
            if (known) {
                double x = ring.x(curve.levels()[i], curve.lags()[i]);
                double y = ring.y(curve.levels()[i], curve.lags()[i]);
                path = down ? path.line(x, y) : path.move(x, y);
            }
            down = known;
        }
        canvas.stroke(path, TRACE);
        for (double speed : speeds) {
            int i = curve.nearest(speed);
            if (!Double.isNaN(curve.lags()[i])) {
                double x = ring.x(curve.levels()[i], curve.lags()[i]);
                double y = ring.y(curve.levels()[i], curve.lags()[i]);
                canvas.disc(x, y, 3, Look.INK);
                ring.label(Long.toString(Math.round(curve.speeds()[i])), x, y, curve.lags()[i], 0, Look.INK);
            }
        }
    }

    private static void drawLevels(Canvas canvas, List<SpeedCurve> curves, Titles titles) {
        double most = curves.stream().mapToDouble(SpeedCurve::most).max().orElse(0);
        SpeedCurve first = curves.get(0);
        Panel panel = new Panel(canvas, Axis.linear(first.slowest(), first.fastest()),
                Axis.logarithmic(most > 0 ? most / RANGE : 1e-3, most > 0 ? 1.3 * most : 1), LEFT, 36, RIGHT,
                HEIGHT - Panel.FOOT).withAxes(titles.speed(), titles.level());
        double at = LEFT;
        for (int i = 0; i < curves.size(); i++) {
            Pen pen = PENS.get(Math.min(i, PENS.size() - 1));
            panel.line(curves.get(i).speeds(), curves.get(i).levels(), pen);
            canvas.stroke(new Lines().stroke(at, 18, at + 26, 18), pen);
            canvas.text(curves.get(i).name(), at + 32, 18 + Lettering.SMALL.half(), Lettering.SMALL);
            at += 32 + Lettering.SMALL.width(curves.get(i).name()) + 18;
        }
    }
}
