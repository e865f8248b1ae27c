package dev.vibra.docs.survey.chart;

import java.awt.Graphics2D;
import java.util.Arrays;
import org.knowm.xchart.XYChart;

/** Waveform of a recording: the whole of it, and beside it the stretch around its largest value drawn out. */
public final class WaveformFigure {
    private static final int HEIGHT = 240;
    private static final int WHOLE = 560;
    /** Shorter stretches are drawn in ms. */
    private static final double BRIEF = 0.15;

    private WaveformFigure() {}

    /**
     * Draws a waveform.
     *
     * @param values samples, two or more; not kept
     * @param sampleRateHertz sample rate in Hz, above zero
     * @param detailSeconds length of the stretch that is drawn out, in s, above zero
     * @param yTitle quantity and unit of the samples
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure of(double[] values, double sampleRateHertz, double detailSeconds, String yTitle,
            String description) {
        double step = 1 / sampleRateHertz;
        int length = (int) Math.max(2, Math.min(values.length, Math.round(detailSeconds * sampleRateHertz)));
        int begin = Math.max(0, Math.min(values.length - length, indexOfLargest(values) - length / 2));
        return new Figure(Sheet.png(Look.WIDTH, HEIGHT, g -> {
            draw(g, WHOLE, yTitle, "Time in s (whole recording)", Decimation.of(values, 0, values.length, step, WHOLE),
                    values);
            g.translate(WHOLE, 0);
            draw(g, Look.WIDTH - WHOLE, "", "Time in s (around the largest value)",
                    Decimation.of(values, begin, begin + length, step, Look.WIDTH - WHOLE), values);
        }), description);
    }

    /**
     * Draws a stretch of a waveform alone.
     *
     * @param values samples; not kept
     * @param sampleRateHertz sample rate in Hz, above zero
     * @param from first sample that is drawn
     * @param to end of the samples that are drawn, exclusive, at least two behind the first
     * @param yTitle quantity and unit of the samples
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure stretch(double[] values, double sampleRateHertz, int from, int to, String yTitle,
            String description) {
        boolean brief = (to - from) / sampleRateHertz < BRIEF;
        Decimation trace = Decimation.of(values, from, to, (brief ? 1000 : 1) / sampleRateHertz, Look.WIDTH);
        double[] drawn = Arrays.copyOfRange(values, from, to);
        return new Figure(Sheet.png(Look.WIDTH, HEIGHT, g -> draw(g, Look.WIDTH, yTitle,
                brief ? "Time in ms" : "Time in s", trace, drawn)), description);
    }

    private static void draw(Graphics2D g, int width, String yTitle, String xTitle, Decimation trace, double[] values) {
        XYChart chart = Look.chart(width, HEIGHT, xTitle, yTitle);
        Look.addTrace(chart, trace);
        double reach = Math.abs(values[indexOfLargest(values)]);
        double limit = reach > 0 ? reach * 1.08 : 1;
        chart.getStyler().setXAxisMin(trace.x()[0]).setXAxisMax(trace.x()[trace.x().length - 1])
                .setYAxisMin(-limit).setYAxisMax(limit);
        if (yTitle.isEmpty()) {
            chart.getStyler().setYAxisTitleVisible(false).setYAxisLeftWidthHint(0);
        }
        chart.paint(g, width, HEIGHT);
    }

    private static int indexOfLargest(double[] values) {
        int largest = 0;
        for (int i = 1; i < values.length; i++) {
            largest = Math.abs(values[i]) > Math.abs(values[largest]) ? i : largest;
        }
        return largest;
    }
}
