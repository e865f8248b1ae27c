package dev.vibra.docs.survey.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.util.Locale;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.style.AxesChartStyler;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.markers.SeriesMarkers;

/** Fonts, inks and strokes shared by all figures; sizes are for a figure 900 wide that is printed 170 mm wide. */
final class Look {
    static final int WIDTH = 900;
    /** Room left of the plots, the same in all figures, so that they line up under each other. */
    static final int LEFT = 124;

    static final Color INK = new Color(0x22, 0x26, 0x2b);
    static final Color FAINT = new Color(0xd4, 0xd7, 0xda);
    static final Color PALE = new Color(0x8a, 0x90, 0x96);
    /**
     * Blue and vermilion of the Okabe-Ito set: apart in hue for every kind of colour vision and in lightness on grey
     * paper.
     */
    static final Color TRACE = new Color(0x00, 0x4f, 0x7f);
    static final Color MARK = new Color(0xd5, 0x5e, 0x00);

    static final Font TEXT = new Font(Font.SANS_SERIF, Font.PLAIN, 14);
    static final Font STRONG = new Font(Font.SANS_SERIF, Font.BOLD, 14);
    static final Font SMALL = new Font(Font.SANS_SERIF, Font.PLAIN, 13);

    static final BasicStroke THIN = new BasicStroke(1f);
    static final BasicStroke FIRM = new BasicStroke(1.6f);
    static final BasicStroke FRAME = new BasicStroke(2.4f);
    static final BasicStroke DASHED =
            new BasicStroke(1.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {7, 4}, 0);
    static final BasicStroke DOTTED =
            new BasicStroke(1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {2, 3}, 0);

    private static final String TICKS = "0.########";

    private Look() {}

    /** Makes an empty chart in this look. */
    static XYChart chart(int width, int height, String xTitle, String yTitle) {
        XYChart chart = new XYChart(width, height);
        chart.setXAxisTitle(xTitle);
        chart.setYAxisTitle(yTitle);
        XYStyler style = chart.getStyler();
        style.setLegendVisible(false).setChartTitleVisible(false).setChartPadding(6).setAntiAlias(true)
                .setChartBackgroundColor(Color.WHITE).setPlotBackgroundColor(Color.WHITE).setPlotBorderVisible(false)
                .setChartFontColor(INK).setYAxisLeftWidthHint(LEFT);
        style.setAxisTitleFont(TEXT).setAxisTickLabelsFont(SMALL).setAxisTickLabelsColor(INK)
                .setAxisTickMarksColor(INK).setAxisTickMarksStroke(THIN).setAxisTickMarkLength(5).setPlotMargin(0)
                .setPlotGridLinesColor(FAINT).setPlotGridLinesStroke(THIN).setPlotTicksMarksVisible(false)
                .setAxisTitlePadding(6).setLocale(Locale.ROOT).setXAxisTickMarkSpacingHint(80)
                .setYAxisTickMarkSpacingHint(42)
                .setXAxisDecimalPattern(TICKS).setYAxisDecimalPattern(TICKS)
                .setYAxisLabelAlignment(AxesChartStyler.TextAlignment.Right);
        // A tick exactly on the edge of the plot would be dropped, and with it the zero of the axis.
        style.setPlotContentSize(0.998);
        return chart;
    }

    /**
     * Adds one continuous line to a chart. A point is put half-way between the first two: XChart takes points at equal
     * distances for what the ticks are to stand at, and writes all their digits.
     */
    static void addTrace(XYChart chart, Decimation trace) {
        chart.addSeries("trace", withHalfWay(trace.x()), withHalfWay(trace.y())).setMarker(SeriesMarkers.NONE)
                .setLineColor(TRACE).setLineStyle(THIN);
    }

    private static double[] withHalfWay(double[] values) {
        double[] more = new double[values.length + 1];
        System.arraycopy(values, 1, more, 2, values.length - 1);
        more[0] = values[0];
        more[1] = (values[0] + values[1]) / 2;
        return more;
    }
}
