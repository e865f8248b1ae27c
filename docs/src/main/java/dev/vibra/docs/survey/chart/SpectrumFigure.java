package dev.vibra.docs.survey.chart;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.knowm.xchart.XYChart;

/**
 * Spectrum with rows of marks above it. A filled mark with a dotted line says that the expected line was found, an open
 * mark that it was not: shape and position carry the meaning, colour only repeats it.
 */
public final class SpectrumFigure {
    private static final int PLOT_HEIGHT = 270;
    private static final int LANE_HEIGHT = 24;
    private static final double MARK_RADIUS = 4.5;

    private final double[] values;
    private final double spacingHertz;
    private final double lowestHertz;
    private final double highestHertz;
    private final double axisHertz;
    private final List<Lane> lanes;
    private final double reference;

    private SpectrumFigure(double[] values, double spacingHertz, double lowestHertz, double highestHertz,
            double axisHertz, List<Lane> lanes, double reference) {
        this.values = values;
        this.spacingHertz = spacingHertz;
        this.lowestHertz = lowestHertz;
        this.highestHertz = highestHertz;
        this.axisHertz = axisHertz;
        this.lanes = List.copyOf(lanes);
        this.reference = reference;
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
        return new SpectrumFigure(values.clone(), spacingHertz, 0, (values.length - 1) * spacingHertz, 0, List.of(),
                0);
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
        return new SpectrumFigure(values, spacingHertz, checked.lowestHertz(), checked.highestHertz(), axis, lanes,
                reference);
    }

    /**
     * Adds rows of marks.
     *
     * @param newLanes rows from top to bottom
     * @return changed figure
     */
    public SpectrumFigure withLanes(List<Lane> newLanes) {
        return new SpectrumFigure(values, spacingHertz, lowestHertz, highestHertz, axisHertz, newLanes, reference);
    }

    /**
     * Adds a level that lines are held against, as a dashed line; the axis reaches up to it.
     *
     * @param level level in the unit of the values, finite, above zero
     * @return changed figure
     * @throws IllegalArgumentException if the level is out of range
     */
    public SpectrumFigure withReference(double level) {
        return new SpectrumFigure(values, spacingHertz, lowestHertz, highestHertz, axisHertz, lanes,
                Require.positive("level", level, ""));
    }

    /**
     * Draws the figure.
     *
     * @param yTitle quantity and unit of the levels
     * @param description what the figure shows
     * @return the finished picture
     */
    public Figure draw(String yTitle, String description) {
        return new Figure(Sheet.png(Look.WIDTH, PLOT_HEIGHT + lanesHeight(), g -> draw(g, yTitle)), description);
    }

    private int lanesHeight() {
        return lanes.isEmpty() ? 0 : lanes.size() * LANE_HEIGHT + 4;
    }

    private void draw(Graphics2D g, String yTitle) {
        XYChart chart = Look.chart(Look.WIDTH, PLOT_HEIGHT, "Frequency in Hz", yTitle);
        int from = Math.min(values.length - 2, (int) Math.ceil(lowestHertz / spacingHertz));
        int to = Math.max(from + 2, Math.min(values.length, (int) Math.floor(highestHertz / spacingHertz) + 1));
        Decimation trace = Decimation.of(values, from, to, spacingHertz, Look.WIDTH);
        Look.addTrace(chart, trace);
        double top = Math.max(highest(trace.y()), reference);
        chart.getStyler().setXAxisMin(axisHertz).setXAxisMax(highestHertz).setYAxisMin(0.0)
                .setYAxisMax(top > 0 ? top * 1.06 : 1);
        g.translate(0, lanesHeight());
        chart.paint(g, Look.WIDTH, PLOT_HEIGHT);
        drawReference(g, chart);
        for (int i = 0; i < lanes.size(); i++) {
            drawLane(g, chart, lanes.get(i), (i + 0.5) * LANE_HEIGHT - lanesHeight() + 4);
        }
    }

    private void drawReference(Graphics2D g, XYChart chart) {
        if (reference > 0) {
            double y = chart.getScreenYFromChart(reference);
            g.setColor(Look.INK);
            g.setStroke(Look.DASHED);
            g.draw(new Line2D.Double(chart.getScreenXFromChart(axisHertz), y,
                    chart.getScreenXFromChart(highestHertz), y));
        }
    }

    private void drawLane(Graphics2D g, XYChart chart, Lane lane, double y) {
        double left = chart.getScreenXFromChart(axisHertz);
        double right = chart.getScreenXFromChart(highestHertz);
        g.setFont(Look.SMALL);
        FontMetrics metrics = g.getFontMetrics();
        float baseline = (float) y + metrics.getAscent() / 2f - 1.5f;
        g.setColor(Look.INK);
        String label = fitting(lane.label(), metrics, left - 12);
        g.drawString(label, (float) left - 10 - metrics.stringWidth(label), baseline);
        g.setColor(Look.FAINT);
        g.setStroke(Look.THIN);
        g.draw(new Line2D.Double(left, y, right, y));
        List<Lane.Mark> shown = lane.marks().stream().filter(mark -> mark.hertz() >= axisHertz
                && mark.hertz() <= highestHertz).toList();
        shown.forEach(mark -> drawMark(g, chart, mark, y));
        for (int i = 0; i < shown.size(); i++) {
            double next = i + 1 < shown.size() ? chart.getScreenXFromChart(shown.get(i + 1).hertz()) : right + 30;
            drawText(g, shown.get(i).text(), chart.getScreenXFromChart(shown.get(i).hertz()) + MARK_RADIUS + 3,
                    next - MARK_RADIUS - 1, baseline);
        }
    }

    private static String fitting(String text, FontMetrics metrics, double width) {
        String fitting = text;
        for (int length = text.length() - 1; length > 0 && metrics.stringWidth(fitting) > width; length--) {
            fitting = text.substring(0, length) + "\u2026";
        }
        return fitting;
    }

    private void drawMark(Graphics2D g, XYChart chart, Lane.Mark mark, double y) {
        double x = chart.getScreenXFromChart(mark.hertz());
        Ellipse2D dot = new Ellipse2D.Double(x - MARK_RADIUS, y - MARK_RADIUS, 2 * MARK_RADIUS, 2 * MARK_RADIUS);
        if (mark.found()) {
            g.setColor(Look.MARK);
            g.setStroke(Look.DOTTED);
            g.draw(new Line2D.Double(x, y + MARK_RADIUS, x, chart.getScreenYFromChart(level(mark.hertz()))));
            g.fill(dot);
        } else {
            g.setColor(Color.WHITE);
            g.fill(dot);
            g.setColor(Look.PALE);
            g.setStroke(new BasicStroke(1.3f));
            g.draw(dot);
        }
    }

    /** Writes the text of a mark where it fits before the next mark; where it is tight, the number alone. */
    private static void drawText(Graphics2D g, String label, double begin, double end, float baseline) {
        boolean tight = begin + g.getFontMetrics().stringWidth(label) > end;
        String text = tight ? label.replace("\u00d7", "") : label;
        double width = g.getFontMetrics().stringWidth(text);
        if (text.isEmpty() || begin + width > end) {
            return;
        }
        g.setColor(Color.WHITE);
        g.fill(new Rectangle2D.Double(begin - 1, baseline - 11, width + 2, 14));
        g.setColor(Look.INK);
        g.drawString(text, (float) begin, baseline);
    }

    /** A found line lies between two lines of the spectrum, so the highest of the neighbours counts. */
    private double level(double hertz) {
        int centre = (int) Math.round(hertz / spacingHertz);
        double level = 0;
        for (int i = Math.max(0, centre - 1); i <= Math.min(values.length - 1, centre + 1); i++) {
            level = Math.max(level, values[i]);
        }
        return level;
    }

    private static double highest(double[] levels) {
        double highest = 0;
        for (double level : levels) {
            highest = Math.max(highest, level);
        }
        return highest;
    }
}
