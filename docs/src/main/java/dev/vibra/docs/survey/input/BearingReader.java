package dev.vibra.docs.survey.input;

import dev.vibra.bearing.BearingGeometry;
import dev.vibra.bearing.RotatingRing;
import dev.vibra.internal.Digits;
import dev.vibra.survey.machine.BearingData;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Reads the bearings of a machine and remembers the names of all of them, those with errors included. */
final class BearingReader {
    private final Set<String> ids = new LinkedHashSet<>();

    Set<String> ids() {
        return ids;
    }

    Optional<BearingData> read(FieldReader fields, int index) {
        String id = fields.required("id", "name of the bearing on this machine").orElse("bearing " + (index + 1));
        if (!ids.add(id)) {
            fields.fault("id", "must be given to one bearing only: \"" + id + "\"");
        }
        Optional<Integer> elements = fields.count("rollingElements", 3);
        Optional<Double> pitch = fields.number("pitchDiameterMillimetres", Range.above(0, "mm"));
        Optional<Double> ball = fields.number("ballDiameterMillimetres",
                new Range(0, false, pitch.orElse(Double.POSITIVE_INFINITY), false, "mm"));
        require(fields, "rollingElements", "number of rolling elements");
        require(fields, "ballDiameterMillimetres", "diameter of a rolling element in mm");
        require(fields, "pitchDiameterMillimetres", "diameter of the circle of the element centres in mm");
        double angle = fields.number("contactAngleDegrees", new Range(0, true, 90, true, "degrees")).orElse(0.0);
        RotatingRing ring = fields.choice("rotatingRing", List.of(RotatingRing.values()))
                .orElse(RotatingRing.INNER);
        if (fields.finish().faulty()) {
            return Optional.empty();
        }
        return geometry(fields, elements.orElseThrow(), ball.orElseThrow(), pitch.orElseThrow(), angle)
                .map(geometry -> new BearingData(id, geometry, ring));
    }

    /** The geometry checks what the numbers mean together: whether so many elements fit on the circle. */
    private static Optional<BearingGeometry> geometry(FieldReader fields, int elements, double ball, double pitch,
            double angle) {
        try {
            return Optional.of(BearingGeometry.of(elements, ball, pitch, angle));
        } catch (IllegalArgumentException e) {
            // "ballDiameter must be ...: value"; the value is told as it stands in the file.
            String rule = e.getMessage().replaceFirst("^\\S+ ", "").replaceFirst(": [^:]*$", "");
            fields.fault("ballDiameterMillimetres", rule + ": " + Digits.compact(ball, 6));
            return Optional.empty();
        }
    }

    private static void require(FieldReader fields, String name, String what) {
        if (!fields.has(name)) {
            fields.fault(name, "is required: " + what);
        }
    }
}
