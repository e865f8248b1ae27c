package dev.vibra.docs.survey.chart;

import java.util.Arrays;
import java.util.List;

/**
 * Cascade: spectra over frequency, each standing on the line of its speed, with dashed lines of the orders. Heights are
 * logarithmic; the carpet of noise is left out.
 */
public final class CascadeFigure {
    private static final int HEIGHT = 506;
    private static final double TOP = 100;
    private static final double RIGHT = Look.WIDTH - 60;
    /** Height of the largest line over the distance of two spectra. */
    private static final double ROWS = 2.6;
    /** Levels below the largest line by more than this ratio lie on the base line. */
    private static final double RANGE = 316;
    /** So do those below this multiple of the median of all lines: noise. */
    private static final double CARPET = 5;
    private static final double BIN = 2;
    private static final double SEEN = 1;
    private static final Pen TRACE = Pen.solid(Look.TRACE, 1);
    private static final Pen ORDER = Pen.solid(Look.PALE, 1).dashed();

    private CascadeFigure() {}

    /**
     * Draws a cascade.
     *
     * @param speeds speeds of the spectra in r/min, rising, two or more
     * @param spectra lines of each from 0 Hz on
     * @param spacingHertz distance of the lines in Hz
     * @param endHertz highest frequency that is drawn
     * @param orders orders whose lines are drawn
     * @param xTitle title of the frequency
     * @param yTitle title of the speed
     * @param scale what the largest line is, in words
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure of(double[] speeds, double[][] spectra, double spacingHertz, double endHertz,
            List<Double> orders, String xTitle, String yTitle, String scale, String description) {
        double most = 0;
        for (double[] spectrum : spectra) {
            for (double level : spectrum) {
                most = Math.max(most, level);
            }
        }
        double largest = most;
        double[] all = Arrays.stream(spectra).flatMapToDouble(Arrays::stream).filter(level -> level > 0).sorted()
                .toArray();
        double floor = all.length == 0 ? 0 : Math.max(most / RANGE, CARPET * all[all.length / 2]);
        Axis across = Axis.linear(0, endHertz);
        Axis upwards = Axis.linear(speeds[0], speeds[speeds.length - 1]);
        double row = (HEIGHT - Panel.FOOT - TOP) / (speeds.length - 1);
        Lines[] outlines = new Lines[speeds.length];
        for (int s = 0; s < speeds.length; s++) {
            double base = HEIGHT - Panel.FOOT - upwards.share(speeds[s]) * (HEIGHT - Panel.FOOT - TOP);
            outlines[s] = outline(spectra[s], spacingHertz, across, base, ROWS * row, largest, floor);
        }
        Lines[] risen = Arrays.stream(outlines).map(CascadeFigure::risen).toArray(Lines[]::new);
        List<Double> drawn = List.copyOf(orders);
        return new Figure(HEIGHT, description, canvas -> {
            Panel panel = new Panel(canvas, across, upwards, Look.LEFT, TOP, RIGHT, HEIGHT - Panel.FOOT)
                    .withXAxis(xTitle, false, true).withYAxis(yTitle);
            Lines bases = new Lines();
            for (double speed : speeds) {
                bases.stroke(Look.LEFT, panel.y(speed), RIGHT, panel.y(speed));
            }
            canvas.fill(new Lines().box(Look.LEFT + 1, TOP - 1, RIGHT - Look.LEFT, HEIGHT - Panel.FOOT - TOP),
                    Look.PAPER);
            canvas.stroke(bases, Look.GRID);
            for (int s = speeds.length - 1; s >= 0; s--) {
                canvas.fill(risen[s], Look.PAPER);
                canvas.stroke(risen[s], TRACE);
            }
            drawOrders(canvas, panel, drawn, speeds);
            canvas.stroke(new Lines().stroke(Look.LEFT + 8, 28, Look.LEFT + 8, 28 - ROWS * row
                    / Math.log10(RANGE)), TRACE);
            canvas.text(scale, Look.LEFT + 16, 22, Lettering.SMALL);
        });
    }

    /** The highest line of each few pixels; where nothing is seen, the base line. */
    private static Lines outline(double[] spectrum, double spacing, Axis across, double base, double highest,
            double largest, double floor) {
        Lines lines = new Lines().move(Look.LEFT, base);
        double width = RIGHT - Look.LEFT;
        int together = (int) Math.max(1, Math.ceil(BIN / (across.share(spacing) * width)));
        double before = 0;
        double beforeX = Look.LEFT;
        for (int k = 0; k < spectrum.length; k += together) {
            double level = 0;
            for (int j = k; j < Math.min(spectrum.length, k + together); j++) {
                level = Math.max(level, spectrum[j]);
            }
            double x = Look.LEFT + across.share((k + 0.5 * (together - 1)) * spacing) * width;
            if (x > RIGHT) {
                break;
            }
            double raised = level > floor ? highest * (1 + Math.log(level / largest) / Math.log(RANGE)) : 0;
            double height = raised < SEEN ? 0 : raised;
            if (height != 0 || before != 0) {
                lines = before == 0 ? lines.line(beforeX, base) : lines;
                lines.line(x, base - height);
            }
            beforeX = x;
            before = height;
        }
        return lines.line(RIGHT, base);
    }

    /** The outline without the parts that lie on the base line. */
    private static Lines risen(Lines outline) {
        double base = outline.y(0);
        Lines risen = new Lines();
        for (int i = 1; i < outline.size(); i++) {
            if (outline.y(i) != base || outline.y(i - 1) != base) {
                if (i == 1 || outline.y(i - 1) == base) {
                    risen.move(outline.x(i - 1), outline.y(i - 1));
                }
                risen.line(outline.x(i), outline.y(i));
            }
        }
        return risen;
    }

    private static void drawOrders(Canvas canvas, Panel panel, List<Double> orders, double[] speeds) {
        double low = speeds[0];
        double high = speeds[speeds.length - 1];
        for (double order : orders) {
            double[] ends = {order * low / 60, order * high / 60};
            panel.line(ends, new double[] {low, high}, ORDER);
            double atX = panel.x(ends[1]);
            boolean leaves = atX > RIGHT;
            String name = SpeedNames.order(order);
            if (leaves) {
                double share = (RIGHT - panel.x(ends[0])) / (atX - panel.x(ends[0]));
                double y = panel.bottom() - share * (panel.bottom() - panel.top());
                if (share > 0) {
                    canvas.text(name, RIGHT + 6, y + Lettering.SMALL.half(), Lettering.SMALL);
                }
            } else {
                canvas.label(name, atX, TOP - 52, Lettering.SMALL.middle());
            }
        }
    }
}
