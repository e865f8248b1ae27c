package dev.vibra.docs.survey.chart;

import dev.vibra.bandmap.BandMap;
import dev.vibra.internal.Digits;
import dev.vibra.quantity.Band;
import java.util.List;
import java.util.stream.Stream;

/**
 * Map of bands: frequency to the right, one row a bandwidth, the widest on top; the darker, the higher the value. The
 * chosen band is framed and named. A band without vibration stays white.
 */
public final class BandMapFigure {
    private static final int ROW = 22;
    private static final int HEAD = 30;
    private static final int LIGHTEST = 0xecf3f8;
    private static final int KEY_WIDTH = 120;
    private static final int SHADES = 24;
    private static final double KEY_LINE = 19;
    private static final Pen GAPS = Pen.solid(Look.PAPER, 1);
    private static final Pen FRAME = Pen.solid(Look.MARK, 2.4);

    /**
     * Words of the figure.
     *
     * @param frequency title of the frequencies
     * @param width title of the widths of the bands
     * @param chosen what stands at the frame, before the band
     */
    public record Titles(String frequency, String width, String chosen) {}

    private static final Titles ENGLISH = new Titles("Frequency in Hz", "Width in Hz", "chosen:");

    private final BandMap map;
    private final Band chosen;
    private final Titles titles;
    private final List<Integer> rows;
    private final double range;
    private final double lowest;
    private final double highest;

    private BandMapFigure(BandMap map, Band chosen, Titles titles) {
        this.map = map;
        this.chosen = chosen;
        this.titles = titles;
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
        return of(map, chosen, ENGLISH, description);
    }

    /**
     * Draws a map with words of another language.
     *
     * @param map the map
     * @param chosen band to frame, a cell of the map or not
     * @param titles words
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure of(BandMap map, Band chosen, Titles titles, String description) {
        BandMapFigure figure = new BandMapFigure(map, chosen, titles);
        return new Figure((int) (HEAD + figure.rows.size() * ROW + Panel.FOOT), description, figure::draw);
    }

    private void draw(Canvas canvas) {
        Panel panel = new Panel(canvas, Axis.linear(0, range), Axis.linear(rows.size(), 0), Look.LEFT, HEAD,
                Look.WIDTH - Look.RIGHT, HEAD + rows.size() * ROW);
        drawCells(canvas, panel);
        panel.withXAxis(titles.frequency(), false, true);
        drawWidths(canvas);
        drawChosen(canvas, panel);
        drawKey(canvas, panel.right());
    }

    /** All cells of one shade at a time. */
    private void drawCells(Canvas canvas, Panel panel) {
        List<Lines> shades = Stream.generate(Lines::new).limit(SHADES).toList();
        Lines gaps = new Lines();
        for (BandMap.Cell cell : map.cells()) {
            double share = highest > lowest ? (cell.value() - lowest) / (highest - lowest) : 0;
            addBox(shades.get((int) Math.rint(share * (SHADES - 1))), panel, cell.band(), rows.indexOf(cell.parts()));
            addBox(gaps, panel, cell.band(), rows.indexOf(cell.parts()));
        }
        for (int i = 0; i < SHADES; i++) {
            canvas.fill(shades.get(i), shade(i));
        }
        canvas.stroke(gaps, GAPS);
    }

    private void addBox(Lines boxes, Panel panel, Band band, int row) {
        double left = panel.x(band.lowestHertz());
        boxes.box(left, HEAD + row * ROW, panel.x(Math.min(range, band.highestHertz())) - left, ROW);
    }

    private static int shade(int number) {
        int colour = 0;
        for (int shift = 16; shift >= 0; shift -= 8) {
            int from = LIGHTEST >> shift & 0xff;
            int to = Look.TRACE >> shift & 0xff;
            colour = colour << 8 | (int) Math.rint(from + number * (to - from) / (SHADES - 1.0));
        }
        return colour;
    }

    private void drawWidths(Canvas canvas) {
        canvas.text(Lettering.SMALL.fitting(titles.width(), Look.LEFT - 12), Look.LEFT - 10, KEY_LINE,
                Lettering.SMALL.end());
        for (int row = 0; row < rows.size(); row++) {
            canvas.text(Digits.compact(Math.rint(range / rows.get(row)), 5), Look.LEFT - 10,
                    HEAD + (row + 0.5) * ROW + Lettering.SMALL.half(), Lettering.SMALL.end());
        }
    }

    private void drawChosen(Canvas canvas, Panel panel) {
        int nearest = 0;
        for (int row = 1; row < rows.size(); row++) {
            nearest = distance(row) < distance(nearest) ? row : nearest;
        }
        Lines frame = new Lines();
        addBox(frame, panel, chosen, nearest);
        canvas.stroke(frame.box(panel.left() + 1, KEY_LINE - 10, 18, 11), FRAME);
        canvas.text(titles.chosen() + " " + chosen, panel.left() + 26, KEY_LINE, Lettering.TEXT);
    }

    private double distance(int row) {
        return Math.abs(Math.log(range / rows.get(row) / chosen.widthHertz()));
    }

    /** Criterion, lowest value, a bar of the shades, highest value, up to the right end of the plot. */
    private void drawKey(Canvas canvas, double end) {
        String most = Digits.significant(highest, 2);
        double right = end - Lettering.SMALL.width(most) - 6;
        canvas.text(most, right + 6, KEY_LINE, Lettering.SMALL);
        double left = right - KEY_WIDTH;
        canvas.text(map.criterion() + " " + Digits.significant(lowest, 2), left - 6, KEY_LINE, Lettering.SMALL.end());
        double step = (double) KEY_WIDTH / SHADES;
        for (int i = 0; i < SHADES; i++) {
            canvas.fill(new Lines().box(left + i * step, KEY_LINE - 11, step, 13), shade(i));
        }
    }
}
