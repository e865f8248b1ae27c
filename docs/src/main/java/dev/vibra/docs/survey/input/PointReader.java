package dev.vibra.docs.survey.input;

import dev.vibra.quantity.Unit;
import dev.vibra.survey.machine.Direction;
import dev.vibra.survey.machine.MeasuringPoint;
import dev.vibra.survey.machine.Mounting;
import dev.vibra.survey.machine.Tachometer;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Reads the measuring points of a machine; a point with any error is left out as a whole. */
final class PointReader {
    private static final List<String> MOTION_UNITS = Arrays.stream(Unit.values())
            .filter(unit -> unit.quantity().isMotion()).map(Unit::plainSymbol).toList();

    private final Set<String> bearingIds;
    private final Set<String> pointIds = new LinkedHashSet<>();

    PointReader(Set<String> bearingIds) {
        this.bearingIds = bearingIds;
    }

    Set<String> ids() {
        return pointIds;
    }

    Optional<MeasuringPoint> read(FieldReader fields, int index) {
        String id = fields.text("id").orElse("point " + (index + 1));
        if (!pointIds.add(id)) {
            fields.fault("id", "must be given to one point only: \"" + id + "\"");
        }
        Optional<String> recording = recording(fields);
        Optional<Unit> unit = unit(fields);
        MeasuringPoint.Builder point = MeasuringPoint.of(id, recording.orElse(""), unit.orElse(Unit.M_PER_S2));
        readScale(fields, point);
        fields.number("sampleRateHertz", Range.above(0, "Hz")).ifPresent(point::sampleRateHertz);
        fields.choice("direction", List.of(Direction.values())).ifPresent(point::direction);
        bearing(fields).ifPresent(point::bearing);
        fields.object("tachometer").flatMap(object -> tachometer(object, fields)).ifPresent(point::tachometer);
        fields.object("sensor").ifPresent(object -> readSensor(object, fields, point));
        return fields.finish().faulty() ? Optional.empty() : Optional.of(point.build());
    }

    private static Optional<String> recording(FieldReader fields) {
        Optional<String> name = fields.required("recording", "name of the WAV or CSV file");
        if (name.isPresent() && !staysInside(name.get())) {
            fields.fault("recording", "must be the name of a file inside the survey folder: \"" + name.get() + "\"");
        }
        return name;
    }

    private static boolean staysInside(String name) {
        try {
            Path path = Path.of(name);
            return !path.isAbsolute() && !path.normalize().startsWith("..");
        } catch (InvalidPathException e) {
            return false;
        }
    }

    private static Optional<Unit> unit(FieldReader fields) {
        Optional<String> symbol = fields.required("unit", "one of " + FieldReader.joined(MOTION_UNITS));
        if (symbol.isEmpty()) {
            return Optional.empty();
        }
        try {
            Unit unit = Unit.ofSymbol(symbol.get());
            if (unit.quantity().isMotion()) {
                return Optional.of(unit);
            }
        } catch (IllegalArgumentException e) {
            // The message below says the same and names the motion units only.
        }
        fields.fault("unit", "must be one of " + FieldReader.joined(MOTION_UNITS) + ": \"" + symbol.get() + "\"");
        return Optional.empty();
    }

    private static void readScale(FieldReader fields, MeasuringPoint.Builder point) {
        Optional<Double> scale = fields.number("scale", Range.finite(""));
        Optional<Double> sensitivity = fields.number("sensitivityMillivoltsPerUnit", Range.above(0, "mV"));
        if (scale.isPresent() && sensitivity.isPresent()) {
            fields.fault("sensitivityMillivoltsPerUnit", "must not stand beside scale; give one of the two");
        } else if (scale.isPresent() && scale.get() == 0) {
            fields.fault("scale", "must be finite and not 0: 0");
        } else {
            scale.ifPresent(point::scale);
            // A recording without scale holds volts.
            sensitivity.ifPresent(millivolts -> point.scale(1000 / millivolts));
        }
    }

    private Optional<String> bearing(FieldReader fields) {
        Optional<String> bearing = fields.text("bearing");
        if (bearing.isPresent() && !bearingIds.contains(bearing.get())) {
            String known = bearingIds.isEmpty() ? "the description has no bearings" : "one of "
                    + FieldReader.joined(List.copyOf(bearingIds));
            fields.fault("bearing", "must be the id of a bearing, " + known + ": \"" + bearing.get() + "\"");
        }
        return bearing;
    }

    private static Optional<Tachometer> tachometer(FieldReader object, FieldReader point) {
        Optional<String> recording = recording(object);
        int pulses = object.count("pulsesPerRevolution", 1).orElse(1);
        if (object.finish().faulty()) {
            point.faults().add("tachometer");
            return Optional.empty();
        }
        return Optional.of(new Tachometer(recording.orElseThrow(), pulses));
    }

    private static void readSensor(FieldReader object, FieldReader point, MeasuringPoint.Builder builder) {
        object.choice("mounting", List.of(Mounting.values())).ifPresent(builder::mounting);
        object.number("expandedUncertaintyPercent", new Range(0, true, 100, true, "%"))
                .ifPresent(builder::expandedUncertaintyPercent);
        if (object.finish().faulty()) {
            point.faults().add("sensor");
        }
    }
}
