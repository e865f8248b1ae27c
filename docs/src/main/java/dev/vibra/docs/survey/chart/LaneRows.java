package dev.vibra.docs.survey.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * Rows of marks above a spectrum. A name stands beside its row, over two lines if need be; one that is too long for
 * that has lines of its own above the row, so that it can be read whole.
 */
final class LaneRows {
    private static final double ROW = 24;
    private static final double LINE = 15;
    private static final double RADIUS = 4.5;
    private static final double BESIDE = Look.LEFT - 14;
    private static final int MOST_LINES = 3;
    private static final Pen OPEN = Pen.solid(Look.PALE, 1.3);
    private static final Pen DROP = Pen.solid(Look.MARK, 1).dotted();

    /** A lane with the lines of its name. */
    private record Row(Lane lane, List<String> name, boolean beside) {
        double height() {
            return beside ? Math.max(ROW, name.size() * LINE + 4) : ROW + name.size() * LINE;
        }

        /** From the top of the row to the middle of its marks. */
        double middle() {
            return beside ? height() / 2 : name.size() * LINE + ROW / 2;
        }
    }

    private final List<Row> rows;

    LaneRows(List<Lane> lanes) {
        rows = lanes.stream().map(LaneRows::row).toList();
    }

    private static Row row(Lane lane) {
        List<String> beside = Lettering.SMALL.wrapped(lane.label(), BESIDE, 2);
        boolean whole = String.join(" ", beside).equals(lane.label().strip());
        return new Row(lane, whole ? beside : Lettering.SMALL.wrapped(lane.label(),
                Look.WIDTH - Look.LEFT - Look.RIGHT, MOST_LINES), whole);
    }

    int height() {
        return rows.isEmpty() ? 0 : (int) Math.ceil(rows.stream().mapToDouble(Row::height).sum()) + 4;
    }

    /**
     * Draws the rows above a panel.
     *
     * @param level height of the line at a frequency, to which a dotted line drops
     */
    void draw(Canvas canvas, Panel panel, DoubleUnaryOperator level) {
        double top = 2;
        for (Row row : rows) {
            drawName(canvas, row, top);
            draw(canvas, panel, row.lane, top + row.middle(), level);
            top += row.height();
        }
    }

    private static void drawName(Canvas canvas, Row row, double top) {
        double first = row.beside ? top + row.middle() - (row.name.size() - 1) * LINE / 2 + Lettering.SMALL.half()
                : top + LINE - 2;
        for (int i = 0; i < row.name.size(); i++) {
            canvas.text(row.name.get(i), row.beside ? Look.LEFT - 10 : Look.LEFT, first + i * LINE,
                    row.beside ? Lettering.SMALL.end() : Lettering.SMALL);
        }
    }

    private static void draw(Canvas canvas, Panel panel, Lane lane, double y, DoubleUnaryOperator level) {
        canvas.stroke(new Lines().stroke(panel.left(), y, panel.right(), y), Look.GRID);
        List<Lane.Mark> marks = new ArrayList<>(lane.marks().stream().filter(mark -> panel.x(mark.hertz())
                >= panel.left() && panel.x(mark.hertz()) <= panel.right()).toList());
        marks.sort(Comparator.comparingDouble(Lane.Mark::hertz));
        Lines drops = new Lines();
        for (Lane.Mark mark : marks) {
            if (mark.found()) {
                double x = panel.x(mark.hertz());
                drops.stroke(x, y + RADIUS, x, Math.max(panel.top(), panel.y(level.applyAsDouble(mark.hertz()))));
            }
        }
        canvas.stroke(drops, DROP);
        for (Lane.Mark mark : marks) {
            drawMark(canvas, panel.x(mark.hertz()), y, mark.found());
        }
        for (int i = 0; i < marks.size(); i++) {
            double end = i + 1 < marks.size() ? panel.x(marks.get(i + 1).hertz()) - RADIUS - 1 : Look.WIDTH - 2;
            drawText(canvas, marks.get(i).text(), panel.x(marks.get(i).hertz()) + RADIUS + 3, end, y);
        }
    }

    private static void drawMark(Canvas canvas, double x, double y, boolean found) {
        canvas.disc(x, y, RADIUS, found ? Look.MARK : Look.PAPER);
        if (!found) {
            canvas.circle(x, y, RADIUS, OPEN);
        }
    }

    /** Writes the text of a mark where it fits before the next mark; where it is tight, the number alone. */
    private static void drawText(Canvas canvas, String label, double begin, double end, double y) {
        boolean tight = begin + Lettering.SMALL.width(label) > end;
        String text = tight ? label.replace("\u00d7", "") : label;
        if (!text.isEmpty() && begin + Lettering.SMALL.width(text) <= end) {
            canvas.label(text, begin, y + Lettering.SMALL.half(), Lettering.SMALL);
        }
    }
}
