package dev.vibra.docs.survey.chart;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import java.util.List;
import java.util.Objects;

/**
 * Spectrum with rows of marks above it. A filled mark with a dotted line says that a line stands out of the noise
 * there, an open mark that none does: shape and position carry the meaning, colour only repeats it. A stem with a head
 * is a line as the analysis found it, between the lines of the transform and as high as the tables say.
 */
public final class SpectrumFigure {
    private static final int PLOT_HEIGHT = 270;
    private static final double TOP = 8;
    private static final double HEAD_RADIUS = 2.4;
    private static final Pen TRACE = Pen.solid(Look.TRACE, 1);
    private static final Pen STEM = Pen.solid(Look.MARK, 1.6);
    /** A logarithmic axis reaches down by this factor at most. */
    private static final double MOST_RANGE = 1e5;

    private final double[] values;
    private final double spacingHertz;
    private double lowestHertz;
    private double highestHertz;
    private double axisHertz;
    private List<Lane> lanes = List.of();
    private List<SnapLine> lines = List.of();
    private double reference;
    private String referenceName = "";
    private boolean logarithmic;
    private String frequencyTitle = "Frequency in Hz";

    private SpectrumFigure(double[] values, double spacingHertz) {
        this.values = values;
        this.spacingHertz = spacingHertz;
    }

    private SpectrumFigure copy() {
        SpectrumFigure copy = new SpectrumFigure(values, spacingHertz);
        copy.lowestHertz = lowestHertz;
        copy.highestHertz = highestHertz;
        copy.axisHertz = axisHertz;
        copy.lanes = lanes;
        copy.lines = lines;
        copy.reference = reference;
        copy.referenceName = referenceName;
        copy.logarithmic = logarithmic;
        copy.frequencyTitle = frequencyTitle;
        return copy;
    }

    /**
     * Begins with all lines of a spectrum.
     *
     * @param values level of each line from 0 Hz on, two lines or more; copied
     * @param spacingHertz distance of two lines in Hz, finite, above zero
     * @return figure from 0 Hz to the last line, without marks
     * @throws IllegalArgumentException if there are fewer than two lines or the distance is out of range
     */
    public static SpectrumFigure of(double[] values, double spacingHertz) {
        Require.atLeast("lines", values.length, 2);
        Require.positive("spacingHertz", spacingHertz, "Hz");
        SpectrumFigure figure = new SpectrumFigure(values.clone(), spacingHertz);
        figure.highestHertz = (values.length - 1) * spacingHertz;
        return figure;
    }

    /**
     * Draws only a part; the frequency axis begins at 0 Hz all the same.
     *
     * @param lowest first frequency that is drawn, in Hz, zero or more
     * @param highest upper end of the frequency axis in Hz; cut at the last line
     * @return changed figure
     * @throws IllegalArgumentException if the ends are out of range
     */
    public SpectrumFigure between(double lowest, double highest) {
        return between(lowest, highest, 0);
    }

    /**
     * Draws only a part; the frequency axis begins with it.
     *
     * @param lowest lower end of the frequency axis in Hz, zero or more
     * @param highest upper end of the frequency axis in Hz; cut at the last line
     * @return changed figure
     * @throws IllegalArgumentException if the ends are out of range
     */
    public SpectrumFigure zoomedTo(double lowest, double highest) {
        return between(lowest, highest, lowest);
    }

    private SpectrumFigure between(double lowest, double highest, double axis) {
        Band checked = Band.of(lowest, Math.min(highest, (values.length - 1) * spacingHertz));
        SpectrumFigure changed = copy();
        changed.lowestHertz = checked.lowestHertz();
        changed.highestHertz = checked.highestHertz();
        changed.axisHertz = axis;
        return changed;
    }

    /**
     * Adds rows of marks.
     *
     * @param newLanes rows from top to bottom
     * @return changed figure
     */
    public SpectrumFigure withLanes(List<Lane> newLanes) {
        SpectrumFigure changed = copy();
        changed.lanes = List.copyOf(newLanes);
        return changed;
    }

    /**
     * Adds the lines that the analysis found, which lie between those of the spectrum: each is a stem as high as its
     * level, and the axis reaches up to it.
     *
     * @param newLines lines, levels in the unit of the values
     * @return changed figure
     */
    public SpectrumFigure withLines(List<SnapLine> newLines) {
        SpectrumFigure changed = copy();
        changed.lines = List.copyOf(newLines);
        return changed;
    }

    /**
     * Adds a level that lines are held against, as a dashed line with its number; the axis reaches up to it.
     *
     * @param level level in the unit of the values, finite, above zero
     * @return changed figure
     * @throws IllegalArgumentException if the level is out of range
     */
    public SpectrumFigure withReference(double level) {
        return withReference(level, "");
    }

    /**
     * Adds a level that lines are held against, as a dashed line with its name and number; the axis reaches up to it.
     *
     * @param level level in the unit of the values, finite, above zero
     * @param name what it is; may be empty
     * @return changed figure
     * @throws IllegalArgumentException if the level is out of range
     */
    public SpectrumFigure withReference(double level, String name) {
        SpectrumFigure changed = copy();
        changed.reference = Require.positive("level", level, "");
        changed.referenceName = Objects.requireNonNull(name, "name");
        return changed;
    }

    /** {@return the same with a logarithmic axis of levels, over five decades at most} */
    public SpectrumFigure logarithmic() {
        SpectrumFigure changed = copy();
        changed.logarithmic = true;
        return changed;
    }

    /**
     * Names the lower axis otherwise, as a translation does.
     *
     * @param title quantity and unit of the frequencies
     * @return changed figure
     */
    public SpectrumFigure withFrequencyTitle(String title) {
        SpectrumFigure changed = copy();
        changed.frequencyTitle = Objects.requireNonNull(title, "title");
        return changed;
    }

    /**
     * Draws the figure.
     *
     * @param yTitle quantity and unit of the levels
     * @param description what the figure shows
     * @return the finished picture
     */
    public Figure draw(String yTitle, String description) {
        LaneRows rows = new LaneRows(lanes);
        int from = Math.min(values.length - 2, (int) Math.ceil(lowestHertz / spacingHertz));
        int to = Math.max(from + 2, Math.min(values.length, (int) Math.floor(highestHertz / spacingHertz) + 1));
        Decimation trace = Decimation.ofPixels(values, from, to, spacingHertz, Look.WIDTH - Look.LEFT - Look.RIGHT);
        List<SnapLine> shown = lines.stream().filter(line -> line.hertz() >= Math.max(axisHertz, lowestHertz)
                && line.hertz() <= highestHertz).toList();
        Peaks peaks = new Peaks(values, spacingHertz, shown, lanes);
        Axis levels = levels(trace, shown);
        Axis frequencies = Axis.linear(axisHertz, highestHertz);
        String title = frequencyTitle;
        String limit = reference > 0 ? (referenceName + " " + Digits.significant(reference, 3)).strip() : "";
        double limitAt = reference;
        return new Figure(PLOT_HEIGHT + rows.height(), description, canvas -> {
            Panel panel = new Panel(canvas, frequencies, levels, Look.LEFT, rows.height() + TOP,
                    Look.WIDTH - Look.RIGHT, rows.height() + PLOT_HEIGHT - Panel.FOOT).withAxes(title, yTitle);
            if (!limit.isEmpty()) {
                panel.limit(limitAt, limit);
            }
            panel.line(trace.x(), trace.y(), TRACE);
            rows.draw(canvas, panel, peaks::level);
            shown.forEach(line -> draw(canvas, panel, line));
        });
    }

    private Axis levels(Decimation trace, List<SnapLine> shown) {
        double top = Math.max(reference, Math.max(trace.highest(),
                shown.stream().mapToDouble(SnapLine::level).max().orElse(0)));
        if (!(top > 0)) {
            return Axis.linear(0, 1);
        }
        if (!logarithmic) {
            return Axis.linear(0, top * 1.06);
        }
        double least = top;
        for (double level : trace.y()) {
            least = level > 0 ? Math.min(least, level) : least;
        }
        return Axis.logarithmic(Math.max(least, top / MOST_RANGE), top * 1.3);
    }

    private static void draw(Canvas canvas, Panel panel, SnapLine line) {
        double x = panel.x(line.hertz());
        double y = Math.max(panel.top(), Math.min(panel.bottom(), panel.y(line.level())));
        canvas.stroke(new Lines().stroke(x, panel.bottom(), x, y), STEM);
        canvas.disc(x, y, HEAD_RADIUS, Look.MARK);
    }
}
