package dev.vibra.docs.survey.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * A round field: circles with their numbers, spokes with their degrees, arrows from place to place, and labels that
 * keep clear of each other and of what is drawn.
 */
final class Ring {
    static final double RADIUS = 130;
    private static final double HEAD_LENGTH = 9;
    private static final double HEAD_SIDE = 0.32;
    private static final double EDGE = 4;
    private static final double DEGREES_AT = RADIUS + 18;
    private static final double ROTATION_AT = RADIUS + 36;
    private static final int SPOKES = 12;
    private static final int NUMBERS = 0x5a6066;

    private record Box(double left, double top, double right, double bottom) {
        boolean holds(double[] point) {
            return point[0] > left && point[0] < right && point[1] > top && point[1] < bottom;
        }

        boolean meets(Box other) {
            return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
        }
    }

    private final Canvas canvas;
    private final double x;
    private final double y;
    private final boolean counterclockwise;
    private final List<Axis.Tick> circles;
    private final double end;
    private final List<Box> taken = new ArrayList<>();
    private final List<double[]> inked = new ArrayList<>();

    /**
     * Makes a field.
     *
     * @param most largest size that is to be drawn; the outer circle is a round number above it
     */
    Ring(Canvas canvas, double x, double y, boolean counterclockwise, double most) {
        this.canvas = canvas;
        this.x = x;
        this.y = y;
        this.counterclockwise = counterclockwise;
        List<Axis.Tick> ticks = Axis.linear(0, most > 0 ? most * 1.02 : 1).ticks(5);
        double step = ticks.get(1).value();
        double outer = step * (Math.floor((most > 0 ? most * 1.02 : 1) / step) + 1);
        circles = Axis.linear(0, outer).ticks(6).stream().filter(tick -> tick.value() > 0).toList();
        end = outer;
    }

    /** Returns the size at the outer circle. */
    double end() {
        return end;
    }

    double turn(double degrees) {
        return Math.toRadians(counterclockwise ? degrees : -degrees);
    }

    double x(double size, double degrees) {
        return x + RADIUS * size / end * Math.cos(turn(degrees));
    }

    double y(double size, double degrees) {
        return y - RADIUS * size / end * Math.sin(turn(degrees));
    }

    /** Draws circles, spokes, degrees, the direction of rotation, and below what the numbers of the circles are. */
    void drawGrid(String unit, String rotation) {
        Lines spokes = new Lines();
        for (int i = 0; i < SPOKES; i++) {
            double degrees = i * 360.0 / SPOKES;
            double turn = turn(degrees);
            spokes.stroke(x, y, x(end, degrees), y(end, degrees));
            write((int) degrees + "\u00b0", x + DEGREES_AT * Math.cos(turn),
                    y - DEGREES_AT * Math.sin(turn) + Lettering.SMALL.half(), Lettering.SMALL.middle());
        }
        canvas.stroke(spokes, Look.GRID);
        circles.forEach(circle -> canvas.circle(x, y, RADIUS * circle.value() / end,
                circle.value() < end ? Look.GRID : Pen.solid(Look.PALE, 1)));
        canvas.circle(x, y, RADIUS, Pen.solid(Look.PALE, 1));
        for (int degrees = 0; degrees < 360; degrees += 3) {
            inked.add(new double[] {x(end, degrees), y(end, degrees)});
        }
        // Between two spokes, in the lower half.
        double turn = Math.toRadians(-75);
        for (Axis.Tick circle : circles) {
            double at = RADIUS * circle.value() / end;
            Lettering letters = Lettering.SMALL.middle().in(NUMBERS);
            canvas.label(circle.label(), x + at * Math.cos(turn), y - at * Math.sin(turn) + 4, letters);
            taken.add(box(circle.label(), x + at * Math.cos(turn), y - at * Math.sin(turn) + 4, letters));
        }
        write(Lettering.SMALL.fitting(unit, Look.WIDTH / 2.0 - 2 * EDGE), x, y + RADIUS + 42,
                Lettering.SMALL.middle().in(NUMBERS));
        drawRotation(rotation);
    }

    private void drawRotation(String word) {
        double from = Math.toRadians(33);
        double to = Math.toRadians(60);
        canvas.stroke(new Lines().arc(x, y, ROTATION_AT, from, to), Pen.solid(Look.INK, 1.2));
        head(x + ROTATION_AT * Math.cos(to), y - ROTATION_AT * Math.sin(to), to + Math.PI / 2, Look.INK);
        write(word, x + ROTATION_AT * Math.cos(from) + 4, y - ROTATION_AT * Math.sin(from), Lettering.SMALL);
    }

    private void write(String text, double atX, double atY, Lettering letters) {
        canvas.text(text, atX, atY, letters);
        taken.add(box(text, atX, atY, letters));
    }

    private static Box box(String text, double atX, double atY, Lettering letters) {
        double left = atX + letters.offset(text);
        return new Box(left - 2, atY - 0.85 * letters.size(), left + letters.width(text) + 2,
                atY + 0.25 * letters.size());
    }

    /** Draws an arrow from one place to another; its head is shorter than the arrow. */
    void arrow(double fromSize, double fromDegrees, double size, double degrees, int colour) {
        double fromX = x(fromSize, fromDegrees);
        double fromY = y(fromSize, fromDegrees);
        double tipX = x(size, degrees);
        double tipY = y(size, degrees);
        canvas.stroke(new Lines().stroke(fromX, fromY, tipX, tipY), Pen.solid(colour, 1.6));
        double length = Math.hypot(tipX - fromX, tipY - fromY);
        if (length > HEAD_LENGTH / 2) {
            head(tipX, tipY, Math.atan2(fromY - tipY, tipX - fromX), colour);
        }
        for (double at = 0; at <= length; at += 4) {
            double share = length > 0 ? at / length : 0;
            inked.add(new double[] {fromX + share * (tipX - fromX), fromY + share * (tipY - fromY)});
        }
        inked.add(new double[] {tipX, tipY});
    }

    private void head(double tipX, double tipY, double turn, int colour) {
        Lines head = new Lines().move(tipX, tipY);
        for (double side : new double[] {-HEAD_SIDE, HEAD_SIDE}) {
            head.line(tipX - HEAD_LENGTH * Math.cos(turn + side), tipY + HEAD_LENGTH * Math.sin(turn + side));
        }
        canvas.fill(head, colour);
    }

    /** Draws where the tip of an arrow may lie. */
    void oval(PolarFigure.Arrow arrow) {
        double scale = RADIUS / end;
        double along = turn(arrow.oval().degrees());
        Lines outline = new Lines();
        for (int i = 0; i <= 72; i++) {
            double angle = i * Math.PI / 36;
            double major = arrow.oval().major() * scale * Math.cos(angle);
            double minor = arrow.oval().minor() * scale * Math.sin(angle);
            double atX = x(arrow.size(), arrow.degrees()) + major * Math.cos(along) - minor * Math.sin(along);
            double atY = y(arrow.size(), arrow.degrees()) - major * Math.sin(along) - minor * Math.cos(along);
            outline.line(Math.max(x - Look.WIDTH / 4.0, Math.min(x + Look.WIDTH / 4.0, atX)), Math.max(0, atY));
            inked.add(new double[] {atX, atY});
        }
        canvas.stroke(outline, Pen.solid(colour(arrow), 1.2).dashed());
    }

    private static int colour(PolarFigure.Arrow arrow) {
        return arrow.strong() ? Look.MARK : Look.TRACE;
    }

    /** Draws the angle from zero as an arc. */
    void angle(double degrees, int number) {
        double turn = turn((degrees % 360 + 360) % 360);
        double radius = 24 + 9 * (number % 6);
        canvas.stroke(new Lines().arc(x, y, radius, 0, turn), Pen.solid(Look.PALE, 1.2));
        if (Math.abs(turn) * radius > HEAD_LENGTH) {
            // The head's axis is a chord of the arc.
            double lean = turn - Math.signum(turn) * HEAD_LENGTH / 2 / radius + Math.signum(turn) * Math.PI / 2;
            head(x + radius * Math.cos(turn), y - radius * Math.sin(turn), lean, Look.PALE);
        }
    }

    /** Marks a place on the ring. */
    void place(double degrees, int colour) {
        double turn = turn(degrees);
        double atX = x + RADIUS * Math.cos(turn);
        double atY = y - RADIUS * Math.sin(turn);
        canvas.fill(new Lines().box(atX - 4.5, atY - 4.5, 9, 9), colour);
        inked.add(new double[] {atX, atY});
    }

    /** Writes what is at the tip of an arrow from the centre. */
    void label(String text, double size, double degrees, double around, int colour) {
        label(text, x(size, degrees), y(size, degrees), degrees, around, colour);
    }

    /**
     * Writes what is at a point: near it, where the room is free; a thin line leads to a label that had to go farther
     * away.
     *
     * @param degrees angle at which the label lies from the point, if there is room
     * @param around radius about the point that is to be kept free, in the unit of the field
     */
    void label(String whole, double pointX, double pointY, double degrees, double around, int colour) {
        if (whole.isEmpty()) {
            return;
        }
        Lettering letters = Lettering.SMALL.in(colour);
        String text = letters.fitting(whole, Look.WIDTH / 2.0 - 2 * EDGE - 4);
        double kept = Math.min(RADIUS, around * RADIUS / end);
        double least = Double.POSITIVE_INFINITY;
        Box best = null;
        for (double away = 8; away <= 88; away += 8) {
            for (int side = 0; side < 16; side++) {
                double lean = turn(degrees) + (side % 2 == 0 ? 1 : -1) * ((side + 1) / 2) * Math.PI / 8;
                Box box = at(pointX + (away + kept) * Math.cos(lean), pointY - (away + kept) * Math.sin(lean), text,
                        letters, lean);
                double cost = away / 8 + side * 0.45 + 25 * taken.stream().filter(box::meets).count()
                        + 6 * inked.stream().filter(box::holds).count();
                if (cost < least) {
                    least = cost;
                    best = box;
                }
            }
        }
        lead(best, pointX, pointY, colour);
        canvas.label(text, best.left + 2, best.bottom - 0.25 * letters.size(), letters);
        taken.add(best);
    }

    /** Room of a text on one side of a point, shifted so that it stays in its half of the paper. */
    private Box at(double atX, double atY, String text, Lettering letters, double lean) {
        double width = letters.width(text);
        double room = Look.WIDTH / 4.0 - EDGE;
        double left = atX - width * (1 - Math.cos(lean)) / 2;
        left = Math.max(x - room, Math.min(x + room - width, left));
        return box(text, left, Math.max(52, Math.min(y + RADIUS + 44, atY + letters.half())), letters);
    }

    private void lead(Box box, double tipX, double tipY, int colour) {
        double nearX = Math.max(box.left, Math.min(box.right, tipX));
        double nearY = Math.max(box.top, Math.min(box.bottom, tipY));
        if (Math.hypot(nearX - tipX, nearY - tipY) > 26) {
            canvas.stroke(new Lines().stroke(tipX, tipY, nearX, nearY), Pen.solid(colour, 0.7).dotted());
        }
    }
}
