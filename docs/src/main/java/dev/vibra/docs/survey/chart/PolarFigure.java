package dev.vibra.docs.survey.chart;

import dev.vibra.internal.Digits;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.List;

/**
 * Vectors in one or more round fields side by side: zero on the right, angles in the sense that each field names.
 * Each field has its own scale, written at its outer circle.
 */
public final class PolarFigure {
    private static final int HEIGHT = 400;
    private static final int RADIUS = 130;
    private static final int HEAD = 40;
    private static final double HEAD_LENGTH = 9;

    /**
     * One arrow from the centre.
     *
     * @param label what it is
     * @param size length in the unit of the field, zero or more
     * @param degrees angle in the sense of the field
     * @param strong true for the one that matters most
     */
    public record Arrow(String label, double size, double degrees, boolean strong) {}

    /**
     * One round field.
     *
     * @param title what is drawn
     * @param unit unit of all sizes
     * @param counterclockwise true if angles count counter-clockwise on the paper
     * @param arrows arrows, one or more
     */
    public record Field(String title, String unit, boolean counterclockwise, List<Arrow> arrows) {
        /**
         * Copies the list.
         *
         * @param title see the record
         * @param unit see the record
         * @param counterclockwise see the record
         * @param arrows see the record
         */
        public Field {
            arrows = List.copyOf(arrows);
        }
    }

    private PolarFigure() {}

    /**
     * Draws two fields side by side.
     *
     * @param left field on the left
     * @param right field on the right
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure of(Field left, Field right, String description) {
        return new Figure(Sheet.png(Look.WIDTH, HEIGHT, g -> {
            draw(g, left, Look.WIDTH / 4.0);
            draw(g, right, 3 * Look.WIDTH / 4.0);
        }), description);
    }

    private static void draw(Graphics2D g, Field field, double x) {
        double y = HEAD + 24 + RADIUS;
        double most = field.arrows().stream().mapToDouble(Arrow::size).max().orElse(0);
        double end = most > 0 ? most * 1.15 : 1;
        g.setColor(Look.INK);
        g.setFont(Look.STRONG);
        centred(g, field.title(), x, 20);
        g.setStroke(Look.THIN);
        for (double part : new double[] {0.5, 1}) {
            g.setColor(part == 1 ? Look.PALE : Look.FAINT);
            g.draw(new Ellipse2D.Double(x - part * RADIUS, y - part * RADIUS, 2 * part * RADIUS, 2 * part * RADIUS));
        }
        g.setFont(Look.SMALL);
        for (int degrees = 0; degrees < 360; degrees += 90) {
            double turn = turn(field, degrees);
            g.setColor(Look.FAINT);
            g.draw(new Line2D.Double(x, y, x + RADIUS * Math.cos(turn), y - RADIUS * Math.sin(turn)));
            g.setColor(Look.INK);
            centred(g, degrees + "\u00b0", x + (RADIUS + 20) * Math.cos(turn), y - (RADIUS + 16) * Math.sin(turn) + 5);
        }
        centred(g, "outer circle " + Digits.significant(end, 3) + " " + field.unit(), x, y + RADIUS + 46);
        for (int i = 0; i < field.arrows().size(); i++) {
            draw(g, field, field.arrows().get(i), x, y, end);
        }
    }

    private static double turn(Field field, double degrees) {
        return Math.toRadians(field.counterclockwise() ? degrees : -degrees);
    }

    private static void draw(Graphics2D g, Field field, Arrow arrow, double x, double y, double end) {
        double turn = turn(field, arrow.degrees());
        double length = RADIUS * arrow.size() / end;
        g.setColor(arrow.strong() ? Look.MARK : Look.TRACE);
        g.setStroke(Look.FIRM);
        double tipX = x + length * Math.cos(turn);
        double tipY = y - length * Math.sin(turn);
        g.draw(new Line2D.Double(x, y, tipX, tipY));
        Path2D head = new Path2D.Double();
        head.moveTo(tipX, tipY);
        for (double side : new double[] {-0.4, 0.4}) {
            head.lineTo(tipX - HEAD_LENGTH * Math.cos(turn + side), tipY + HEAD_LENGTH * Math.sin(turn + side));
        }
        head.closePath();
        g.fill(head);
        g.setFont(Look.SMALL);
        double labelX = tipX + 14 * Math.cos(turn);
        int width = g.getFontMetrics().stringWidth(arrow.label());
        g.drawString(arrow.label(), (float) (Math.cos(turn) < 0 ? labelX - width : labelX),
                (float) (tipY - 14 * Math.sin(turn) + 5));
    }

    private static void centred(Graphics2D g, String text, double x, double y) {
        g.drawString(text, (float) (x - g.getFontMetrics().stringWidth(text) / 2.0), (float) y);
    }
}
