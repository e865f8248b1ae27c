package dev.vibra.docs.survey.chart;

import dev.vibra.bandmap.BandMap;
import dev.vibra.internal.Digits;
import dev.vibra.quantity.Band;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * Map of bands: frequency to the right, one row a bandwidth, the widest on top; the darker, the higher the value. The
 * chosen band is framed and named. A band without vibration stays white.
 */
public final class BandMapFigure {
    private static final int ROW = 22;
    private static final int HEAD = 30;
    private static final int FOOT = 62;
    /** The charting library draws no axis in less. */
    private static final int LEAST_PLOT = 110;
    private static final Color LIGHTEST = new Color(0xec, 0xf3, 0xf8);
    private static final int KEY_WIDTH = 120;
    private static final int KEY_STEPS = 24;

    private final BandMap map;
    private final Band chosen;
    private final List<Integer> rows;
    private final double range;
    private final double lowest;
    private final double highest;

    private BandMapFigure(BandMap map, Band chosen) {
        this.map = map;
        this.chosen = chosen;
        rows = map.cells().stream().map(BandMap.Cell::parts).distinct().sorted().toList();
        BandMap.Cell any = map.cells().get(0);
        range = any.band().widthHertz() * any.parts();
        lowest = map.cells().stream().mapToDouble(BandMap.Cell::value).min().orElseThrow();
        highest = map.best().value();
    }

    /**
     * Draws a map.
     *
     * @param map the map
     * @param chosen band to frame, a cell of the map or not; its frame stands in the row whose width is nearest to its
     *     own
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure of(BandMap map, Band chosen, String description) {
        BandMapFigure figure = new BandMapFigure(map, chosen);
        return new Figure(Sheet.png(Look.WIDTH, HEAD + figure.plotHeight(), figure::draw), description);
    }

    private int plotHeight() {
        return Math.max(LEAST_PLOT, rows.size() * ROW) + FOOT;
    }

    private void draw(Graphics2D g) {
        XYChart chart = Look.chart(Look.WIDTH, plotHeight(), "Frequency in Hz", "");
        // Equally spaced values would be taken as ticks as they are, however odd; so these are not.
        chart.addSeries("frame", new double[] {0, range / 3, range}, new double[] {0, rows.size() / 3.0, rows.size()})
                .setMarker(SeriesMarkers.NONE).setLineColor(Color.WHITE);
        chart.getStyler().setXAxisMin(0.0).setXAxisMax(range).setYAxisMin(0.0).setYAxisMax((double) rows.size())
                .setYAxisTitleVisible(false).setPlotGridLinesVisible(false).setYAxisTickMarksColor(Color.WHITE)
                .setYAxisTickLabelsColor(Color.WHITE);
        g.translate(0, HEAD);
        chart.paint(g, Look.WIDTH, plotHeight());
        map.cells().forEach(cell -> drawCell(g, chart, cell));
        drawWidths(g, chart);
        drawChosen(g, chart);
        drawKey(g, chart.getScreenXFromChart(range));
    }

    private double top(XYChart chart, int row) {
        return chart.getScreenYFromChart(rows.size() - row);
    }

    private void drawCell(Graphics2D g, XYChart chart, BandMap.Cell cell) {
        int row = rows.indexOf(cell.parts());
        double share = highest > lowest ? (cell.value() - lowest) / (highest - lowest) : 0;
        g.setColor(shade(share));
        g.fill(box(chart, cell.band(), row));
        g.setColor(Color.WHITE);
        g.setStroke(Look.THIN);
        g.draw(box(chart, cell.band(), row));
    }

    private Rectangle2D box(XYChart chart, Band band, int row) {
        double left = chart.getScreenXFromChart(band.lowestHertz());
        double right = chart.getScreenXFromChart(Math.min(range, band.highestHertz()));
        return new Rectangle2D.Double(left, top(chart, row), right - left, top(chart, row + 1) - top(chart, row));
    }

    private static Color shade(double share) {
        return new Color(mixed(LIGHTEST.getRed(), Look.TRACE.getRed(), share),
                mixed(LIGHTEST.getGreen(), Look.TRACE.getGreen(), share),
                mixed(LIGHTEST.getBlue(), Look.TRACE.getBlue(), share));
    }

    private static int mixed(int from, int to, double share) {
        return (int) Math.round(from + share * (to - from));
    }

    private void drawWidths(Graphics2D g, XYChart chart) {
        g.setFont(Look.SMALL);
        g.setColor(Look.INK);
        FontMetrics metrics = g.getFontMetrics();
        double left = chart.getScreenXFromChart(0);
        g.drawString("Width in Hz", (float) left - 10 - metrics.stringWidth("Width in Hz"), -11);
        for (int row = 0; row < rows.size(); row++) {
            String width = Digits.compact(Math.rint(range / rows.get(row)), 5);
            double middle = 0.5 * (top(chart, row) + top(chart, row + 1));
            g.drawString(width, (float) left - 10 - metrics.stringWidth(width),
                    (float) middle + metrics.getAscent() / 2f - 1.5f);
        }
        g.setStroke(Look.THIN);
        double bottom = top(chart, rows.size());
        g.draw(new Line2D.Double(left, bottom, chart.getScreenXFromChart(range), bottom));
    }

    private void drawChosen(Graphics2D g, XYChart chart) {
        int nearest = 0;
        for (int row = 1; row < rows.size(); row++) {
            nearest = distance(row) < distance(nearest) ? row : nearest;
        }
        g.setColor(Look.MARK);
        g.setStroke(Look.FRAME);
        g.draw(box(chart, chosen, nearest));
        double left = chart.getScreenXFromChart(0);
        g.draw(new Rectangle2D.Double(left + 1, -21, 18, 11));
        g.setColor(Look.INK);
        g.setFont(Look.TEXT);
        g.drawString("chosen: " + chosen, (float) left + 26, -11);
    }

    private double distance(int row) {
        return Math.abs(Math.log(range / rows.get(row) / chosen.widthHertz()));
    }

    /** Criterion, lowest value, a bar of the shades, highest value, up to the right end of the plot. */
    private void drawKey(Graphics2D g, double end) {
        g.setFont(Look.SMALL);
        FontMetrics metrics = g.getFontMetrics();
        String most = Digits.significant(highest, 2);
        String least = map.criterion() + " " + Digits.significant(lowest, 2);
        double right = end - metrics.stringWidth(most) - 6;
        g.setColor(Look.INK);
        g.drawString(most, (float) right + 6, -11);
        double left = right - KEY_WIDTH;
        g.drawString(least, (float) left - 6 - metrics.stringWidth(least), -11);
        double step = (double) KEY_WIDTH / KEY_STEPS;
        for (int i = 0; i < KEY_STEPS; i++) {
            g.setColor(shade(i / (KEY_STEPS - 1.0)));
            g.fill(new Rectangle2D.Double(left + i * step, -22, step + 0.5, 13));
        }
    }
}
