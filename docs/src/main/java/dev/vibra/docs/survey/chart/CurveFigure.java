package dev.vibra.docs.survey.chart;

import dev.vibra.docs.survey.chart.CurvePanel.Kind;
import dev.vibra.docs.survey.chart.CurvePanel.Part;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Curves, points, bands and limits of any kind over one axis, in one or more panels under each other:
 *
 * <pre>{@code
 * CurveFigure.over("Frequency in Hz", 0, 200).panel("Velocity in mm/s rms", 0, 6)
 *         .line("measured", hertz, level).limit("limit", 4.5).draw("Velocity spectrum")
 * }</pre>
 *
 * <p>What is added goes into the last panel. The first line of a panel is blue and solid, the second vermilion and
 * dashed, the third grey, the fourth black and dotted; the first points are vermilion dots, the second black crosses,
 * the third black dots. Names stand above the panel. Each step returns another figure.
 */
public final class CurveFigure {
    /** Paper above a panel: the number at its upper end keeps clear of the one at the lower end of the last. */
    private static final double TOP = 18;
    private static final double RIGHT = Look.WIDTH - Look.RIGHT;
    private static final int ONE_PANEL = 250;
    private static final int MORE_PANELS = 170;
    private static final double SECONDS_OF_A_DAY = 86_400;

    private final String title;
    private final Axis axis;
    private final List<CurvePanel> fields;

    private CurveFigure(String title, Axis axis, List<CurvePanel> fields) {
        this.title = title;
        this.axis = axis;
        this.fields = fields;
    }

    /**
     * Begins with a linear lower axis.
     *
     * @param title quantity and unit
     * @param from value at its begin, finite
     * @param to value at its end, finite, above the begin
     * @return figure without panels
     */
    public static CurveFigure over(String title, double from, double to) {
        return new CurveFigure(Objects.requireNonNull(title, "title"), Axis.linear(from, to), List.of());
    }

    /**
     * Begins with a logarithmic lower axis.
     *
     * @param title quantity and unit
     * @param from value at its begin, finite, above zero
     * @param to value at its end, finite, above the begin
     * @return figure without panels
     */
    public static CurveFigure overLogarithmic(String title, double from, double to) {
        return new CurveFigure(Objects.requireNonNull(title, "title"), Axis.logarithmic(from, to), List.of());
    }

    /**
     * Begins with a lower axis of dates; values along it are days as {@link #day} counts them.
     *
     * @param title what the dates are; may be empty
     * @param from begin
     * @param to end, behind the begin
     * @return figure without panels
     */
    public static CurveFigure overDates(String title, Instant from, Instant to) {
        return new CurveFigure(Objects.requireNonNull(title, "title"), Axis.dates(day(from), day(to)), List.of());
    }

    /**
     * Counts days.
     *
     * @param time a point in time
     * @return days since the begin of 1970 in Greenwich
     */
    public static double day(Instant time) {
        return time.getEpochSecond() / SECONDS_OF_A_DAY + time.getNano() / (1e9 * SECONDS_OF_A_DAY);
    }

    /**
     * Adds a panel with a linear axis under the last one.
     *
     * @param yTitle quantity and unit
     * @param from value at its lower end, finite
     * @param to value at its upper end, finite, above the lower one
     * @return changed figure
     */
    public CurveFigure panel(String yTitle, double from, double to) {
        return with(new CurvePanel(Objects.requireNonNull(yTitle, "yTitle"), Axis.linear(from, to), List.of()));
    }

    /**
     * Adds a panel with a logarithmic axis under the last one.
     *
     * @param yTitle quantity and unit
     * @param from value at its lower end, finite, above zero
     * @param to value at its upper end, finite, above the lower one
     * @return changed figure
     */
    public CurveFigure logarithmicPanel(String yTitle, double from, double to) {
        return with(new CurvePanel(Objects.requireNonNull(yTitle, "yTitle"), Axis.logarithmic(from, to), List.of()));
    }

    /**
     * Adds a panel of angles under the last one; its numbers are parts of a turn.
     *
     * @param yTitle what the angles are, and their unit
     * @param fromDegrees angle at its lower end in degrees, finite
     * @param toDegrees angle at its upper end in degrees, finite, above the lower one
     * @return changed figure
     */
    public CurveFigure anglePanel(String yTitle, double fromDegrees, double toDegrees) {
        return with(new CurvePanel(Objects.requireNonNull(yTitle, "yTitle"), Axis.degrees(fromDegrees, toDegrees),
                List.of()));
    }

    private CurveFigure with(CurvePanel field) {
        List<CurvePanel> more = new ArrayList<>(fields);
        more.add(field);
        return new CurveFigure(title, axis, List.copyOf(more));
    }

    /**
     * Adds a curve; where a value is NaN, it has a gap.
     *
     * @param name what it is; may be empty
     * @param x values along the lower axis, not kept
     * @param y as many values
     * @return changed figure
     */
    public CurveFigure line(String name, double[] x, double[] y) {
        return with(new Part(Kind.LINE, name, x.clone(), y.clone(), null));
    }

    /**
     * Adds points.
     *
     * @param name what they are; may be empty
     * @param x values along the lower axis, not kept
     * @param y as many values
     * @return changed figure
     */
    public CurveFigure points(String name, double[] x, double[] y) {
        return with(new Part(Kind.POINTS, name, x.clone(), y.clone(), null));
    }

    /**
     * Adds a band between two curves, in which something lies with some confidence.
     *
     * @param name what it is; may be empty
     * @param x values along the lower axis, not kept
     * @param low as many lower values, finite
     * @param high as many upper values, finite
     * @return changed figure
     */
    public CurveFigure band(String name, double[] x, double[] low, double[] high) {
        if (high.length != x.length) {
            throw new IllegalArgumentException("x and high must be of one length: " + x.length + " and " + high.length);
        }
        return with(new Part(Kind.BAND, name, x.clone(), low.clone(), high.clone()));
    }

    /**
     * Adds a dashed line over the whole width with its name and number.
     *
     * @param name what it is; may be empty
     * @param value level, finite
     * @return changed figure
     */
    public CurveFigure limit(String name, double value) {
        double[] level = {Require.finite("value", value)};
        return with(new Part(Kind.LIMIT, (name + " " + Digits.compact(value, 4)).strip(), level, level, null));
    }

    /**
     * Adds a dashed upright line over the whole height.
     *
     * @param name what it is; may be empty
     * @param x where it stands, finite
     * @return changed figure
     */
    public CurveFigure upright(String name, double x) {
        double[] place = {Require.finite("x", x)};
        return with(new Part(Kind.UPRIGHT, name, place, place, null));
    }

    private CurveFigure with(Part part) {
        Objects.requireNonNull(part.name(), "name");
        if (fields.isEmpty()) {
            throw new IllegalStateException("a panel must come before what is drawn in it");
        }
        if (part.x().length != part.y().length) {
            throw new IllegalArgumentException("x and y must be of one length: " + part.x().length + " and "
                    + part.y().length);
        }
        List<CurvePanel> changed = new ArrayList<>(fields);
        CurvePanel last = changed.remove(changed.size() - 1);
        List<Part> parts = new ArrayList<>(last.parts());
        parts.add(part);
        changed.add(new CurvePanel(last.title(), last.axis(), List.copyOf(parts)));
        return new CurveFigure(title, axis, List.copyOf(changed));
    }

    /**
     * Draws the figure.
     *
     * @param description what the figure shows
     * @return the finished picture
     * @throws IllegalStateException if there is no panel
     */
    public Figure draw(String description) {
        if (fields.isEmpty()) {
            throw new IllegalStateException("a figure needs a panel");
        }
        int height = fields.size() == 1 ? ONE_PANEL : MORE_PANELS;
        double whole = Panel.FOOT;
        for (CurvePanel field : fields) {
            whole += TOP + field.keyHeight() + height;
        }
        return new Figure((int) Math.ceil(whole), description, canvas -> {
            double top = 0;
            for (CurvePanel field : fields) {
                top += TOP + field.keyHeight();
                boolean last = field == fields.get(fields.size() - 1);
                Panel panel = new Panel(canvas, axis, field.axis(), Look.LEFT, top, RIGHT, top + height);
                panel.withXAxis(last ? title : "", true, last).withYAxis(field.title());
                field.draw(canvas, panel);
                top += height;
            }
        });
    }
}
