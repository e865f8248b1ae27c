package dev.vibra.docs.survey.chart;

import dev.vibra.internal.Digits;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Locale;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * Severity of the points of a machine: one row a point, the value with its uncertainty on a common scale that the
 * limits divide into zones. Zones are told by name and place; the grey tone only repeats it.
 */
public final class SeverityFigure {
    private static final int ROW = 34;
    private static final int HEAD = 24;
    private static final int FOOT = 62;
    /** Room right of the plot for value, uncertainty and zone. */
    private static final int RIGHT = 170;
    private static final int PLOT_WIDTH = Look.WIDTH - RIGHT;
    private static final Color[] TONES = {new Color(0xff, 0xff, 0xff), new Color(0xf2, 0xf3, 0xf4),
        new Color(0xe1, 0xe3, 0xe5), new Color(0xc9, 0xcc, 0xd0)};

    /**
     * One row.
     *
     * @param label name of the point
     * @param value measured value
     * @param uncertainty expanded uncertainty of the value, zero or more
     * @param zone name of the zone, for example {@code C} or {@code B/C}
     */
    public record Row(String label, double value, double uncertainty, String zone) {}

    private final List<Row> rows;
    private final List<Double> limits;
    private final List<String> names;
    private final String xTitle;
    private final double end;

    private SeverityFigure(List<Row> rows, List<Double> limits, List<String> names, String xTitle) {
        this.rows = List.copyOf(rows);
        this.limits = List.copyOf(limits);
        this.names = List.copyOf(names);
        this.xTitle = xTitle;
        double most = rows.stream().mapToDouble(row -> row.value() + row.uncertainty()).max().orElse(0);
        this.end = Math.max(limits.get(limits.size() - 1) * 1.35, most * 1.12);
    }

    /**
     * Draws the points that are judged by the same limits.
     *
     * @param rows one row a point, one or more
     * @param limits limits in ascending order
     * @param names what lies between them, one more: letters of zones, or the words of an acceptance
     * @param xTitle quantity and unit of values and limits
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure of(List<Row> rows, List<Double> limits, List<String> names, String xTitle,
            String description) {
        SeverityFigure figure = new SeverityFigure(rows, limits, names, xTitle);
        return new Figure(Sheet.png(Look.WIDTH, HEAD + figure.plotHeight(), figure::draw), description);
    }

    private int plotHeight() {
        return rows.size() * ROW + FOOT;
    }

    private void draw(Graphics2D g) {
        XYChart chart = Look.chart(PLOT_WIDTH, plotHeight(), xTitle, "");
        chart.addSeries("frame", frame(end), frame(rows.size())).setMarker(SeriesMarkers.NONE)
                .setLineColor(Color.WHITE);
        chart.getStyler().setXAxisMin(0.0).setXAxisMax(end).setYAxisMin(0.0).setYAxisMax((double) rows.size())
                .setYAxisTitleVisible(false).setPlotGridLinesVisible(false).setYAxisTickMarksColor(Color.WHITE)
                .setYAxisTickLabelsColor(Color.WHITE);
        g.translate(0, HEAD);
        chart.paint(g, PLOT_WIDTH, plotHeight());
        drawZones(g, chart);
        for (int i = 0; i < rows.size(); i++) {
            drawRow(g, chart, rows.get(i), chart.getScreenYFromChart(rows.size() - i - 0.5));
        }
    }

    /** Equally spaced values would be taken as ticks as they are, however odd; so these are not. */
    private static double[] frame(double end) {
        return new double[] {0, end / 3, end};
    }

    private void drawZones(Graphics2D g, XYChart chart) {
        double top = chart.getScreenYFromChart(rows.size());
        double bottom = chart.getScreenYFromChart(0);
        g.setFont(Look.STRONG);
        FontMetrics metrics = g.getFontMetrics();
        for (int zone = 0; zone <= limits.size(); zone++) {
            double from = chart.getScreenXFromChart(zone == 0 ? 0 : limits.get(zone - 1));
            double to = chart.getScreenXFromChart(zone == limits.size() ? end : limits.get(zone));
            g.setColor(TONES[zone]);
            g.fill(new Rectangle2D.Double(from, top, to - from, bottom - top));
            g.setColor(Look.INK);
            g.drawString(names.get(zone), (float) ((from + to - metrics.stringWidth(names.get(zone))) / 2),
                    (float) top - 7);
            g.setStroke(zone == 0 ? Look.THIN : Look.FIRM);
            g.draw(new Line2D.Double(from, zone == 0 ? top : top - 18, from, bottom));
            if (zone > 0) {
                g.setFont(Look.SMALL);
                g.drawString(Digits.compact(limits.get(zone - 1), 4), (float) from + 4, (float) top - 7);
                g.setFont(Look.STRONG);
            }
        }
        g.setStroke(Look.THIN);
        g.draw(new Line2D.Double(chart.getScreenXFromChart(0), bottom, chart.getScreenXFromChart(end), bottom));
    }

    private void drawRow(Graphics2D g, XYChart chart, Row row, double y) {
        double x = chart.getScreenXFromChart(row.value());
        double low = chart.getScreenXFromChart(Math.max(0, row.value() - row.uncertainty()));
        double high = chart.getScreenXFromChart(row.value() + row.uncertainty());
        double left = chart.getScreenXFromChart(0);
        g.setColor(Look.PALE);
        g.setStroke(Look.DOTTED);
        g.draw(new Line2D.Double(left, y, low, y));
        g.setColor(Look.INK);
        g.setStroke(new BasicStroke(2f));
        g.draw(new Line2D.Double(low, y, high, y));
        g.draw(new Line2D.Double(low, y - 6, low, y + 6));
        g.draw(new Line2D.Double(high, y - 6, high, y + 6));
        g.setColor(Look.MARK);
        g.fill(diamond(x, y));
        drawTexts(g, row, y, left);
    }

    private static void drawTexts(Graphics2D g, Row row, double y, double left) {
        g.setFont(Look.TEXT);
        FontMetrics metrics = g.getFontMetrics();
        float baseline = (float) y + metrics.getAscent() / 2f - 2;
        g.setColor(Look.INK);
        g.drawString(row.label(), (float) left - 10 - metrics.stringWidth(row.label()), baseline);
        String value = decimals(row.value(), row.value()) + " \u00b1 " + decimals(row.uncertainty(), row.value());
        g.drawString(value, Look.WIDTH - 72 - metrics.stringWidth(value), baseline);
        g.setFont(Look.STRONG);
        g.drawString(row.zone(), Look.WIDTH - 60, baseline);
    }

    private static String decimals(double number, double scale) {
        int places = scale >= 100 ? 0 : scale >= 10 ? 1 : 2;
        return String.format(Locale.ROOT, "%." + places + "f", number);
    }

    private static Path2D diamond(double x, double y) {
        Path2D shape = new Path2D.Double();
        shape.moveTo(x, y - 7);
        shape.lineTo(x + 6, y);
        shape.lineTo(x, y + 7);
        shape.lineTo(x - 6, y);
        shape.closePath();
        return shape;
    }
}
