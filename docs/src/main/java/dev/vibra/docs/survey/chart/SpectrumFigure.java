package dev.vibra.docs.survey.chart;

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
 * Spectrum with rows of marks above it. A filled mark with a dotted line says that the expected line was found, an open mark
 * that it was not: shape and position carry the meaning, colour only repeats it.
 */
public final class SpectrumFigure {
    private static final int PLOT_HEIGHT = 270;
    private static final int LANE_HEIGHT = 24;
    private static final double MARK_RADIUS = 4.5;

    private final double[] values;
    private final double spacingHertz;
    private final double highestHertz;
    private final String yTitle;
    private final List<Lane> lanes;

    private SpectrumFigure(double[] values, double spacingHertz, double highestHertz, String yTitle, List<Lane> lanes) {
        this.values = values;
        this.spacingHertz = spacingHertz;
        this.highestHertz = Math.min(highestHertz, (values.length - 1) * spacingHertz);
        this.yTitle = yTitle;
        this.lanes = lanes;
    }

    /**
     * Draws a spectrum from 0 Hz.
     *
     * @param values level of each line from 0 Hz on, two lines or more; not kept
     * @param spacingHertz distance of two lines in Hz, above zero
     * @param highestHertz upper end of the frequency axis in Hz; cut at the last line
     * @param yTitle quantity and unit of the levels
     * @param lanes rows of marks, from top to bottom
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure of(double[] values, double spacingHertz, double highestHertz, String yTitle, List<Lane> lanes,
            String description) {
        SpectrumFigure figure = new SpectrumFigure(values, spacingHertz, highestHertz, yTitle, lanes);
        int height = PLOT_HEIGHT + figure.lanesHeight();
        return new Figure(Sheet.png(Look.WIDTH, height, figure::draw), description);
    }

    private int lanesHeight() {
        return lanes.isEmpty() ? 0 : lanes.size() * LANE_HEIGHT + 4;
    }

    private void draw(Graphics2D g) {
        XYChart chart = Look.chart(Look.WIDTH, PLOT_HEIGHT, "Frequency in Hz", yTitle);
        int to = Math.min(values.length, (int) Math.floor(highestHertz / spacingHertz) + 1);
        Decimation trace = Decimation.of(values, 0, to, spacingHertz, Look.WIDTH);
        Look.addTrace(chart, trace);
        double top = highest(trace.y());
        chart.getStyler().setXAxisMin(0.0).setXAxisMax(highestHertz).setYAxisMin(0.0).setYAxisMax(top * 1.06);
        g.translate(0, lanesHeight());
        chart.paint(g, Look.WIDTH, PLOT_HEIGHT);
        for (int i = 0; i < lanes.size(); i++) {
            drawLane(g, chart, lanes.get(i), (i + 0.5) * LANE_HEIGHT - lanesHeight() + 4);
        }
    }

    private void drawLane(Graphics2D g, XYChart chart, Lane lane, double y) {
        double left = chart.getScreenXFromChart(0);
        double right = chart.getScreenXFromChart(highestHertz);
        g.setFont(Look.SMALL);
        FontMetrics metrics = g.getFontMetrics();
        float baseline = (float) y + metrics.getAscent() / 2f - 1.5f;
        g.setColor(Look.INK);
        g.drawString(lane.label(), (float) left - 10 - metrics.stringWidth(lane.label()), baseline);
        g.setColor(Look.FAINT);
        g.setStroke(Look.THIN);
        g.draw(new Line2D.Double(left, y, right, y));
        List<Lane.Mark> shown = lane.marks().stream().filter(mark -> mark.hertz() <= highestHertz).toList();
        shown.forEach(mark -> drawMark(g, chart, mark, y));
        for (int i = 0; i < shown.size(); i++) {
            double next = i + 1 < shown.size() ? chart.getScreenXFromChart(shown.get(i + 1).hertz()) : right + 30;
            drawText(g, shown.get(i).text(), chart.getScreenXFromChart(shown.get(i).hertz()) + MARK_RADIUS + 3,
                    next - MARK_RADIUS - 1, baseline);
        }
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

    /** Writes the text of a mark where it fits before the next mark. */
    private static void drawText(Graphics2D g, String text, double begin, double end, float baseline) {
        double width = g.getFontMetrics().stringWidth(text);
        if (text.isEmpty() || begin + width > end) {
            return;
        }
        g.setColor(Color.WHITE);
        g.fill(new Rectangle2D.Double(begin - 1, baseline - 11, width + 2, 14));
        g.setColor(Look.INK);
        g.drawString(text, (float) begin, baseline);
    }

    /** A found line stands a little beside the expected place, so the highest of the neighbours counts. */
    private double level(double hertz) {
        int centre = (int) Math.round(hertz / spacingHertz);
        int reach = Math.max(1, (int) Math.round(0.002 * highestHertz / spacingHertz));
        double level = 0;
        for (int i = Math.max(0, centre - reach); i <= Math.min(values.length - 1, centre + reach); i++) {
            level = Math.max(level, values[i]);
        }
        return level;
    }

    private static double highest(double[] levels) {
        double highest = 0;
        for (double level : levels) {
            highest = Math.max(highest, level);
        }
        return highest > 0 ? highest : 1;
    }
}
