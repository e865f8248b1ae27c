package dev.vibra.docs.survey.chart;

import dev.vibra.internal.Digits;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
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
    /** Room between a label and the edge of its half of the sheet. */
    private static final double EDGE = 4;

    /**
     * One arrow from the centre.
     *
     * @param label what it is
     * @param size length in the unit of the field, zero or more
     * @param degrees angle in the sense of the field
     * @param strong true for the one that matters most
     * @param oval where its tip may lie; null if not known
     */
    public record Arrow(String label, double size, double degrees, boolean strong, Oval oval) {
        /**
         * Makes an arrow of which nobody knows how far it may be off.
         *
         * @param label what it is
         * @param size length in the unit of the field, zero or more
         * @param degrees angle in the sense of the field
         * @param strong true for the one that matters most
         */
        public Arrow(String label, double size, double degrees, boolean strong) {
            this(label, size, degrees, strong, null);
        }
    }

    /**
     * Oval about the tip of an arrow.
     *
     * @param major half of the long axis in the unit of the field
     * @param minor half of the short axis
     * @param degrees direction of the long axis in the sense of the field
     */
    public record Oval(double major, double minor, double degrees) {}

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
        double most = field.arrows().stream().mapToDouble(PolarFigure::reach).max().orElse(0);
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
        List<Rectangle2D> taken = new ArrayList<>();
        for (int degrees = 0; degrees < 360; degrees += 90) {
            double turn = turn(field, degrees);
            g.setColor(Look.FAINT);
            g.draw(new Line2D.Double(x, y, x + RADIUS * Math.cos(turn), y - RADIUS * Math.sin(turn)));
            g.setColor(Look.INK);
            taken.add(centred(g, degrees + "\u00b0", x + (RADIUS + 20) * Math.cos(turn),
                    y - (RADIUS + 16) * Math.sin(turn) + 5));
        }
        centred(g, "outer circle " + Digits.significant(end, 3) + " " + field.unit(), x, y + RADIUS + 46);
        for (Arrow arrow : field.arrows()) {
            draw(g, field, arrow, x, y, end, taken);
        }
    }

    /** Farthest point of an arrow and its oval; an oval far larger than its arrow must not make the arrow vanish. */
    private static double reach(Arrow arrow) {
        return arrow.oval() == null ? arrow.size()
                : Math.min(arrow.size() + arrow.oval().major(), 3 * Math.max(arrow.size(), arrow.oval().minor()));
    }

    private static double turn(Field field, double degrees) {
        return Math.toRadians(field.counterclockwise() ? degrees : -degrees);
    }

    private static void draw(Graphics2D g, Field field, Arrow arrow, double x, double y, double end,
            List<Rectangle2D> taken) {
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
        if (arrow.oval() != null) {
            drawOval(g, field, arrow.oval(), tipX, tipY, end);
        }
        g.setFont(Look.SMALL);
        g.setColor(arrow.strong() ? Look.MARK : Look.TRACE);
        if (arrow.label().isEmpty()) {
            return;
        }
        FontMetrics metrics = g.getFontMetrics();
        double width = metrics.stringWidth(arrow.label());
        double away = 14 + (arrow.oval() == null ? 0 : arrow.oval().major() * RADIUS / end);
        double wanted = tipX + away * Math.cos(turn) - (Math.cos(turn) < 0 ? width : 0);
        double room = Look.WIDTH / 4.0 - EDGE;
        double left = Math.max(x - room, Math.min(x + room - width, wanted));
        double base = free(taken, left, tipY - away * Math.sin(turn) + 5, width, metrics, Math.sin(turn) > 0);
        g.drawString(arrow.label(), (float) left, (float) base);
    }

    private static void drawOval(Graphics2D g, Field field, Oval oval, double tipX, double tipY, double end) {
        double scale = RADIUS / end;
        Shape flat = new Ellipse2D.Double(-oval.major() * scale, -oval.minor() * scale, 2 * oval.major() * scale,
                2 * oval.minor() * scale);
        AffineTransform place = AffineTransform.getTranslateInstance(tipX, tipY);
        place.rotate(-turn(field, oval.degrees()));
        g.setStroke(Look.DASHED);
        g.draw(place.createTransformedShape(flat));
    }

    /** Moves a label up, or down in the lower half, until it covers no other; returns its base line. */
    private static double free(List<Rectangle2D> taken, double left, double base, double width, FontMetrics metrics,
            boolean up) {
        double height = metrics.getAscent();
        double step = up ? -height - 2 : height + 2;
        double at = base;
        for (int tries = 0; tries < 8; tries++) {
            Rectangle2D room = new Rectangle2D.Double(left - 2, at - height, width + 4, height + 2);
            if (taken.stream().noneMatch(room::intersects)) {
                break;
            }
            at += step;
        }
        taken.add(new Rectangle2D.Double(left - 2, at - height, width + 4, height + 2));
        return at;
    }

    /** Returns the room that the text takes. */
    private static Rectangle2D centred(Graphics2D g, String text, double x, double y) {
        double width = g.getFontMetrics().stringWidth(text);
        g.drawString(text, (float) (x - width / 2), (float) y);
        double height = g.getFontMetrics().getAscent();
        return new Rectangle2D.Double(x - width / 2 - 2, y - height, width + 4, height + 2);
    }
}
