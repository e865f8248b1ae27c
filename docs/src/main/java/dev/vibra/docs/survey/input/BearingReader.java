package dev.vibra.docs.survey.input;

import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.internal.Digits;
import dev.vibra.machine.BearingData;
import java.util.List;
import java.util.Optional;

/** Reads the bearings of a machine. */
final class BearingReader {
    private BearingReader() {}

    static Optional<BearingData> read(FieldReader fields, String id) {
        Optional<Integer> elements = fields.count("rollingElements", 3);
        Optional<Double> pitch = fields.number("pitchDiameterMillimetres", Plausible.LENGTH);
        Optional<Double> ball = fields.number("ballDiameterMillimetres",
                new Range(Plausible.LENGTH.lowest(), true, pitch.orElse(Plausible.LENGTH.highest()), false, "mm"));
        fields.require("rollingElements", "number of rolling elements")
                .require("ballDiameterMillimetres", "diameter of a rolling element in mm")
                .require("pitchDiameterMillimetres", "diameter of the circle of the element centres in mm");
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
        Optional<String> rule = BearingGeometry.roomRule(elements, ball / 1e3, pitch / 1e3);
        rule.ifPresent(room -> fields.fault("ballDiameterMillimetres", "must be " + room + ": "
                + Digits.compact(ball, 6)));
        return rule.isPresent() ? Optional.empty() : Optional.of(BearingGeometry.of(elements, ball, pitch, angle));
    }
}
