package dev.vibra.docs.survey.chart;

/** Waveform of a recording: the whole of it, and beside it the stretch around its largest value drawn out. */
public final class WaveformFigure {
    private static final int HEIGHT = 240;
    private static final double TOP = 8;
    /** Right end of the whole recording, and left end of the stretch beside it. */
    private static final double WHOLE = 560;
    private static final double DETAIL = 584;
    private static final double RIGHT = Look.WIDTH - Look.RIGHT;
    private static final Pen TRACE = Pen.solid(Look.TRACE, 1);
    /** Shorter stretches are drawn in ms. */
    private static final double BRIEF = 0.15;

    private WaveformFigure() {}

    /**
     * Words at the axes.
     *
     * @param value quantity and unit of the samples
     * @param whole what lies under the whole recording
     * @param detail what lies under the stretch around the largest value
     */
    public record Titles(String value, String whole, String detail) {}

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
        return of(values, sampleRateHertz, detailSeconds, new Titles(yTitle, "Time in s (whole recording)",
                "Time in s (around the largest value)"), description);
    }

    /**
     * Draws a waveform with words of another language.
     *
     * @param values samples, two or more; not kept
     * @param sampleRateHertz sample rate in Hz, above zero
     * @param detailSeconds length of the stretch that is drawn out, in s, above zero
     * @param titles words at the axes
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure of(double[] values, double sampleRateHertz, double detailSeconds, Titles titles,
            String description) {
        double step = 1 / sampleRateHertz;
        int length = (int) Math.max(2, Math.min(values.length, Math.round(detailSeconds * sampleRateHertz)));
        int begin = Math.max(0, Math.min(values.length - length, indexOfLargest(values) - length / 2));
        Decimation whole = Decimation.ofPixels(values, 0, values.length, step, WHOLE - Look.LEFT);
        Decimation detail = Decimation.ofPixels(values, begin, begin + length, step, RIGHT - DETAIL);
        Axis wholeTime = Axis.linear(0, (values.length - 1) * step);
        Axis detailTime = Axis.linear(begin * step, (begin + length - 1) * step);
        Axis axis = upwards(values);
        return new Figure(HEIGHT, description, canvas -> {
            panel(canvas, wholeTime, axis, Look.LEFT, WHOLE).withXAxis(titles.whole(), true, true)
                    .withYAxis(titles.value()).line(whole.x(), whole.y(), TRACE);
            panel(canvas, detailTime, axis, DETAIL, RIGHT).withXAxis(titles.detail(), true, true)
                    .withYAxis("", false).line(detail.x(), detail.y(), TRACE);
        });
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
        double step = (brief ? 1000 : 1) / sampleRateHertz;
        Decimation trace = Decimation.ofPixels(values, from, to, step, RIGHT - Look.LEFT);
        Axis time = Axis.linear(from * step, (to - 1) * step);
        Axis axis = upwards(trace.y());
        return new Figure(HEIGHT, description, canvas -> panel(canvas, time, axis, Look.LEFT, RIGHT)
                .withAxes(brief ? "Time in ms" : "Time in s", yTitle).line(trace.x(), trace.y(), TRACE));
    }

    private static Axis upwards(double[] values) {
        double reach = Math.abs(values[indexOfLargest(values)]);
        return reach > 0 ? Axis.linear(-reach * 1.08, reach * 1.08) : Axis.linear(-1, 1);
    }

    private static Panel panel(Canvas canvas, Axis time, Axis upwards, double left, double right) {
        return new Panel(canvas, time, upwards, left, TOP, right, HEIGHT - Panel.FOOT);
    }

    private static int indexOfLargest(double[] values) {
        int largest = 0;
        for (int i = 1; i < values.length; i++) {
            largest = Math.abs(values[i]) > Math.abs(values[largest]) ? i : largest;
        }
        return largest;
    }
}
