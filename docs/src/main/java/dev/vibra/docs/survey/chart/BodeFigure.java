package dev.vibra.docs.survey.chart;

import java.util.Arrays;
import java.util.List;

/** Bode plot of one order: the level over speed, and its lag over speed in a panel below. */
public final class BodeFigure {
    private static final int HEIGHT = 400;
    private static final double TOP = 12;
    private static final double MIDDLE = 208;
    private static final double LAG_TOP = 226;
    private static final double RIGHT = Look.WIDTH - Look.RIGHT;
    private static final Pen TRACE = Pen.solid(Look.TRACE, 1.6);

    /**
     * Words of the axes.
     *
     * @param speed title of the speed
     * @param level title of the level
     * @param lag title of the lag
     */
    public record Titles(String speed, String level, String lag) {}

    /**
     * A speed that is marked.
     *
     * @param speed speed in r/min
     * @param text what stands at it
     */
    public record Mark(double speed, String text) {}

    private BodeFigure() {}

    /**
     * Draws the plot.
     *
     * @param curve the order
     * @param marks speeds to mark, such as resonances and the speed in service
     * @param titles words of the axes
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure of(SpeedCurve curve, List<Mark> marks, Titles titles, String description) {
        List<Mark> copy = List.copyOf(marks);
        double[] lags = curve.goingOn();
        return new Figure(HEIGHT, description, canvas -> draw(canvas, curve, lags, copy, titles));
    }

    private static void draw(Canvas canvas, SpeedCurve curve, double[] lags, List<Mark> marks, Titles titles) {
        Axis speeds = Axis.linear(curve.slowest(), curve.fastest());
        double most = curve.most();
        Panel upper = new Panel(canvas, speeds, Axis.linear(0, most > 0 ? 1.15 * most : 1), Look.LEFT, TOP, RIGHT,
                MIDDLE).withXAxis("", true, false).withYAxis(titles.level());
        Panel lower = new Panel(canvas, speeds, lagAxis(lags), Look.LEFT, LAG_TOP, RIGHT, HEIGHT - Panel.FOOT);
        RightAngles.draw(canvas, lower, titles.lag());
        lower.withXAxis(titles.speed(), true, true);
        upper.line(curve.speeds(), curve.levels(), TRACE);
        lower.line(curve.speeds(), lags, TRACE);
        for (Mark mark : marks) {
            upper.upright(mark.speed(), mark.text());
            lower.upright(mark.speed(), "");
        }
    }

    private static Axis lagAxis(double[] lags) {
        double low = Arrays.stream(lags).filter(Double::isFinite).min().orElse(0);
        double high = Arrays.stream(lags).filter(Double::isFinite).max().orElse(360);
        double from = 90 * Math.floor((low - 5) / 90);
        return Axis.linear(from, Math.max(from + 180, 90 * Math.ceil((high + 5) / 90)));
    }
}
