package dev.vibra.docs.survey.chart;

import dev.vibra.internal.Digits;
import java.util.List;

/**
 * Vectors in one or two round fields side by side: zero on the right, angles in the sense that each field names and
 * that the degrees on its ring show. Rotation is counter-clockwise on the paper, as an arrow outside of the ring says.
 * Each field has a scale of its own, written at its circles.
 */
public final class PolarFigure {
    private static final int HEIGHT = 384;
    private static final String ROTATION = "rotation";

    /**
     * One arrow, from the centre or from another place.
     *
     * @param label what it is; may be empty
     * @param size distance of its tip from the centre in the unit of the field, zero or more
     * @param degrees angle of its tip in the sense of the field
     * @param strong true for the one that matters most
     * @param oval where its tip may lie; null if not known
     * @param fromSize distance of its begin from the centre, 0 for the centre itself
     * @param fromDegrees angle of its begin
     */
    public record Arrow(String label, double size, double degrees, boolean strong, Oval oval, double fromSize,
            double fromDegrees) {
        /**
         * Makes an arrow from the centre.
         *
         * @param label what it is
         * @param size length in the unit of the field, zero or more
         * @param degrees angle in the sense of the field
         * @param strong true for the one that matters most
         * @param oval where its tip may lie; null if not known
         */
        public Arrow(String label, double size, double degrees, boolean strong, Oval oval) {
            this(label, size, degrees, strong, oval, 0, 0);
        }

        /**
         * Makes an arrow from the centre of which nobody knows how far it may be off.
         *
         * @param label what it is
         * @param size length in the unit of the field, zero or more
         * @param degrees angle in the sense of the field
         * @param strong true for the one that matters most
         */
        public Arrow(String label, double size, double degrees, boolean strong) {
            this(label, size, degrees, strong, null);
        }

        /**
         * Lets the arrow begin elsewhere.
         *
         * @param beginSize distance of its begin from the centre in the unit of the field, zero or more
         * @param beginDegrees angle of its begin in the sense of the field
         * @return changed arrow
         */
        public Arrow beginningAt(double beginSize, double beginDegrees) {
            return new Arrow(label, size, degrees, strong, oval, beginSize, beginDegrees);
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
     * A place on the rotor, which has an angle and no length.
     *
     * @param label what is there
     * @param degrees angle in the sense of the field
     * @param strong true for the one that matters most
     */
    public record Place(String label, double degrees, boolean strong) {}

    /**
     * One round field.
     *
     * @param title what is drawn
     * @param unit unit of all sizes
     * @param counterclockwise true if angles count counter-clockwise on the paper
     * @param arrows arrows, one or more
     * @param places marks on the ring
     * @param measured true if the sizes and angles of strong arrows are written and drawn
     */
    public record Field(String title, String unit, boolean counterclockwise, List<Arrow> arrows, List<Place> places,
            boolean measured) {
        /**
         * Copies the lists.
         *
         * @param title see the record
         * @param unit see the record
         * @param counterclockwise see the record
         * @param arrows see the record
         * @param places see the record
         * @param measured see the record
         */
        public Field {
            arrows = List.copyOf(arrows);
            places = List.copyOf(places);
        }

        /**
         * Makes a field with arrows only.
         *
         * @param title see the record
         * @param unit see the record
         * @param counterclockwise see the record
         * @param arrows see the record
         */
        public Field(String title, String unit, boolean counterclockwise, List<Arrow> arrows) {
            this(title, unit, counterclockwise, arrows, List.of(), false);
        }

        /**
         * Adds marks on the ring.
         *
         * @param newPlaces places on the rotor
         * @return changed field
         */
        public Field withPlaces(List<Place> newPlaces) {
            return new Field(title, unit, counterclockwise, arrows, newPlaces, measured);
        }

        /** {@return the same with sizes and angles of the strong arrows written and drawn} */
        public Field withMeasures() {
            return new Field(title, unit, counterclockwise, arrows, places, true);
        }
    }

    private PolarFigure() {}

    /**
     * Draws one field alone.
     *
     * @param field the field
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure of(Field field, String description) {
        return new Figure(HEIGHT, description, canvas -> draw(canvas, field, Look.WIDTH / 2.0, ROTATION));
    }

    /**
     * Draws two fields side by side.
     *
     * @param left field on the left
     * @param right field on the right
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure of(Field left, Field right, String description) {
        return of(left, right, ROTATION, description);
    }

    /**
     * Draws two fields side by side with the word of another language.
     *
     * @param left field on the left
     * @param right field on the right
     * @param rotation what stands at the arrow of the rotation
     * @param description what the figure shows
     * @return the figure
     */
    public static Figure of(Field left, Field right, String rotation, String description) {
        return new Figure(HEIGHT, description, canvas -> {
            draw(canvas, left, Look.WIDTH / 4.0, rotation);
            draw(canvas, right, 3 * Look.WIDTH / 4.0, rotation);
        });
    }

    private static void draw(Canvas canvas, Field field, double x, String rotation) {
        double most = Math.max(field.arrows().stream().mapToDouble(PolarFigure::reach).max().orElse(0),
                field.arrows().stream().mapToDouble(Arrow::fromSize).max().orElse(0));
        Ring ring = new Ring(canvas, x, HEIGHT / 2.0 + 10, field.counterclockwise(), most);
        List<String> title = Lettering.STRONG.wrapped(field.title(), Look.WIDTH / 2.0 - 8, 2);
        for (int i = 0; i < title.size(); i++) {
            canvas.text(title.get(i), x, 18 + 17 * i, Lettering.STRONG.middle());
        }
        ring.drawGrid(field.unit(), rotation);
        for (Arrow arrow : field.arrows()) {
            ring.arrow(arrow.fromSize(), arrow.fromDegrees(), arrow.size(), arrow.degrees(), colour(arrow.strong()));
            if (arrow.oval() != null) {
                ring.oval(arrow);
            }
        }
        if (field.measured()) {
            drawAngles(ring, field);
        }
        field.places().forEach(place -> ring.place(place.degrees(), colour(place.strong())));
        for (Arrow arrow : field.arrows()) {
            // An arrow from elsewhere often ends where another does, so its middle is named.
            double share = arrow.fromSize() > 0 ? 0.5 : 1;
            ring.label(text(field, arrow), between(ring.x(arrow.fromSize(), arrow.fromDegrees()),
                    ring.x(arrow.size(), arrow.degrees()), share), between(ring.y(arrow.fromSize(),
                    arrow.fromDegrees()), ring.y(arrow.size(), arrow.degrees()), share), arrow.degrees(),
                    arrow.oval() == null ? 0 : arrow.oval().major(), colour(arrow.strong()));
        }
        field.places().forEach(place -> ring.label(place.label(), ring.end(), place.degrees(), 0,
                colour(place.strong())));
    }

    private static double between(double from, double to, double share) {
        return from + share * (to - from);
    }

    private static int colour(boolean strong) {
        return strong ? Look.MARK : Look.TRACE;
    }

    private static void drawAngles(Ring ring, Field field) {
        int count = 0;
        for (Arrow arrow : field.arrows()) {
            if (arrow.strong()) {
                ring.angle(arrow.degrees(), count++);
            }
        }
    }

    private static String text(Field field, Arrow arrow) {
        return field.measured() && arrow.strong() && !arrow.label().isEmpty() ? arrow.label() + ": "
                + Digits.significant(arrow.size(), 3) + " " + field.unit() + ", " + Math.round(arrow.degrees())
                + "\u00b0" : arrow.label();
    }

    /** Farthest point of an arrow and its oval; an oval far larger than its arrow must not make the arrow vanish. */
    private static double reach(Arrow arrow) {
        return arrow.oval() == null ? arrow.size()
                : Math.min(arrow.size() + arrow.oval().major(), 3 * Math.max(arrow.size(), arrow.oval().minor()));
    }
}
