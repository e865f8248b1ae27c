package dev.vibra.docs.survey.chart;

import dev.vibra.internal.Digits;
import java.util.List;
import java.util.Locale;

/**
 * Severity of the points of a machine: one row a point, the value with its uncertainty on a common scale that the
 * limits divide into zones. Zones are told by name and place; the grey tone only repeats it.
 */
public final class SeverityFigure {
    private static final int ROW = 34;
    private static final int HEAD = 44;
    /** Room for names of points, at least and at most. */
    private static final double MOST_LEFT = 300;
    private static final double MOST_ZONE = 150;
    private static final int[] TONES = {0xffffff, 0xf2f3f4, 0xe1e3e5, 0xc9ccd0};
    private static final Pen DOTS = Pen.solid(Look.PALE, 1).dotted();
    private static final Pen WHISKER = Pen.solid(Look.INK, 2);

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
        return new Figure((int) (HEAD + rows.size() * ROW + Panel.FOOT), description, figure::draw);
    }

    private void draw(Canvas canvas) {
        double left = Math.max(Look.LEFT, Math.min(MOST_LEFT, 14 + widest(Lettering.TEXT,
                rows.stream().map(Row::label).toList())));
        double zones = Math.min(MOST_ZONE, widest(Lettering.STRONG, rows.stream().map(Row::zone).toList()));
        double values = widest(Lettering.TEXT, rows.stream().map(SeverityFigure::value).toList());
        double right = Look.WIDTH - 6 - zones - 12 - values - 16;
        Panel panel = new Panel(canvas, Axis.linear(0, end), Axis.linear(rows.size(), 0), left, HEAD, right,
                HEAD + rows.size() * ROW);
        drawZones(canvas, panel);
        panel.withXAxis(xTitle, false, true);
        for (int i = 0; i < rows.size(); i++) {
            double y = panel.top() + (i + 0.5) * ROW;
            drawRow(canvas, panel, rows.get(i), y);
            drawTexts(canvas, rows.get(i), y, left, Look.WIDTH - 6 - zones);
        }
    }

    private static double widest(Lettering letters, List<String> texts) {
        return texts.stream().mapToDouble(letters::width).max().orElse(0);
    }

    /** Names of the zones stand above the numbers of the limits between them. */
    private void drawZones(Canvas canvas, Panel panel) {
        Lines strokes = new Lines();
        for (int zone = 0; zone <= limits.size(); zone++) {
            double from = panel.x(zone == 0 ? 0 : limits.get(zone - 1));
            double to = panel.x(zone == limits.size() ? end : limits.get(zone));
            canvas.fill(new Lines().box(from, panel.top(), to - from, panel.bottom() - panel.top()),
                    TONES[Math.min(zone, TONES.length - 1)]);
            Lettering letters = Lettering.STRONG.middle();
            double half = letters.width(names.get(zone)) / 2;
            canvas.text(names.get(zone), Math.max(half + 2, Math.min(Look.WIDTH - half - 2, (from + to) / 2)), 16,
                    letters);
            if (zone > 0) {
                strokes.stroke(from, panel.top() - 7, from, panel.bottom());
                canvas.text(Digits.compact(limits.get(zone - 1), 4), from, panel.top() - 10,
                        Lettering.SMALL.middle());
            }
        }
        canvas.stroke(strokes.stroke(panel.left(), panel.top(), panel.left(), panel.bottom()),
                Pen.solid(Look.INK, 1.4));
    }

    private static void drawRow(Canvas canvas, Panel panel, Row row, double y) {
        double x = panel.x(row.value());
        double low = panel.x(Math.max(0, row.value() - row.uncertainty()));
        double high = panel.x(row.value() + row.uncertainty());
        canvas.stroke(new Lines().stroke(panel.left(), y, low, y), DOTS);
        canvas.stroke(new Lines().stroke(low, y, high, y).stroke(low, y - 6, low, y + 6)
                .stroke(high, y - 6, high, y + 6), WHISKER);
        canvas.fill(new Lines().move(x, y - 7).line(x + 6, y).line(x, y + 7).line(x - 6, y), Look.MARK);
    }

    private static void drawTexts(Canvas canvas, Row row, double y, double left, double zone) {
        List<String> name = Lettering.TEXT.wrapped(row.label(), left - 14, 2);
        double first = y + Lettering.TEXT.half() - (name.size() - 1) * 8;
        for (int i = 0; i < name.size(); i++) {
            canvas.text(name.get(i), left - 10, first + i * 16, Lettering.TEXT.end());
        }
        canvas.text(value(row), zone - 12, y + Lettering.TEXT.half(), Lettering.TEXT.end());
        canvas.text(Lettering.STRONG.fitting(row.zone(), MOST_ZONE), zone, y + Lettering.TEXT.half(), Lettering.STRONG);
    }

    private static String value(Row row) {
        return decimals(row.value(), row.value()) + " \u00b1 " + decimals(row.uncertainty(), row.value());
    }

    /** Three significant digits of the scale, as the tables have; what rounds up to a power of ten has one more. */
    private static String decimals(double number, double scale) {
        int places = scale > 0 ? Math.max(0, 2 - (int) Math.floor(Math.log10(1.0005 * scale))) : 2;
        return String.format(Locale.ROOT, "%." + places + "f", number);
    }
}
