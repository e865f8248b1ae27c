package dev.vibra.docs.survey.input;

import dev.vibra.internal.Digits;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.measuring.Direction;
import dev.vibra.measuring.Mounting;
import dev.vibra.quantity.Unit;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Reads the measuring points of a machine and where their recordings lie; a point with any error is left out. */
final class PointReader {
    private static final List<Unit> MOTION_UNITS = Arrays.stream(Unit.values())
            .filter(unit -> unit.quantity().isMotion()).toList();
    private static final String UNIT_RULE =
            "one of " + FieldReader.joined(MOTION_UNITS.stream().map(Unit::plainSymbol).toList());
    private static final String INSIDE = "must be the name of a file inside the survey folder: \"";
    private static final List<String> ALONG_SHAFT = List.of("towards the coupling", "away from the coupling");

    private final Ids points = new Ids("point");
    private final Ids parts;
    private final Ids shafts;
    private final Ids bearings;

    PointReader(Ids parts, Ids shafts, Ids bearings) {
        this.parts = parts;
        this.shafts = shafts;
        this.bearings = bearings;
    }

    /** A point and where its recording lies. */
    record Found(MeasuringPoint point, RecordingSource source) {}

    Ids ids() {
        return points;
    }

    Optional<Found> read(FieldReader fields, int index) {
        String id = points.read(fields, index);
        Optional<RecordingSource> source = source(fields);
        Chain<MeasuringPoint> point = new Chain<>(MeasuringPoint.of(id))
                .with(fields.choice("direction", List.of(Direction.values())), MeasuringPoint::withDirection)
                .with(parts.named(fields, "part"), MeasuringPoint::withPart)
                .with(shafts.named(fields, "shaft"), MeasuringPoint::withShaft)
                .with(bearings.named(fields, "bearing"), MeasuringPoint::withBearing)
                .with(fields.text("housing"), MeasuringPoint::withHousing)
                .with(positive(fields), MeasuringPoint::withPositiveAxis)
                .with(source.flatMap(RecordingSource::tachometer).map(RecordingSource.Tachometer::pulsesPerRevolution),
                        MeasuringPoint::withTachometer);
        fields.part("sensor", object -> sensor(object, point));
        return fields.finished(() -> new Found(point.value(), source.orElseThrow()));
    }

    private static boolean sensor(FieldReader object, Chain<MeasuringPoint> point) {
        point.with(object.choice("mounting", List.of(Mounting.values())), MeasuringPoint::withMounting)
                .with(object.number("expandedUncertaintyPercent", new Range(0, true, 100, true, "%")),
                        MeasuringPoint::withExpandedUncertaintyPercent);
        return true;
    }

    /** Words along the shaft, degrees across it. */
    private static Optional<String> positive(FieldReader fields) {
        return fields.isNumber("positive")
                ? fields.number("positive", new Range(-360, true, 360, true, "degrees"))
                        .map(degrees -> Digits.compact(degrees, 6))
                : fields.choice("positive", ALONG_SHAFT);
    }

    private static Optional<RecordingSource> source(FieldReader fields) {
        Optional<RecordingSource.Channel> channel = channel(fields);
        Optional<Unit> unit = unit(fields);
        Optional<Scaling> scaling = scaling(fields);
        Optional<Double> rate = fields.number("sampleRateHertz", Plausible.SAMPLE_RATE);
        Optional<RecordingSource.Tachometer> tachometer = fields.part("tachometer", PointReader::tachometer)
                .flatMap(read -> read);
        var measured = fields.instant("measured");
        Optional<RecordingSource.Reference> reference = reference(fields, channel);
        return channel.isEmpty() || unit.isEmpty() || scaling.isEmpty() ? Optional.empty() : Optional.of(
                new RecordingSource(channel.get(), unit.get(), scaling.get(), rate, tachometer, measured, reference));
    }

    /** A recording with neither tachometer nor reference of its own. */
    static Optional<RecordingSource> plainSource(FieldReader fields) {
        Optional<RecordingSource.Channel> channel = channel(fields);
        Optional<Unit> unit = unit(fields);
        Optional<Scaling> scaling = scaling(fields);
        Optional<Double> rate = fields.number("sampleRateHertz", Plausible.SAMPLE_RATE);
        return channel.isEmpty() || unit.isEmpty() || scaling.isEmpty() ? Optional.empty() : Optional.of(
                new RecordingSource(channel.get(), unit.get(), scaling.get(), rate, Optional.empty(), Optional.empty(),
                        Optional.empty()));
    }

    private static Optional<RecordingSource.Channel> channel(FieldReader fields) {
        Optional<String> file = fields.required("recording", "name of the WAV or CSV file");
        Optional<Integer> number = fields.count("channel", 1);
        file.filter(name -> !staysInside(name)).ifPresent(name -> fields.fault("recording", INSIDE + name + "\""));
        return file.map(name -> new RecordingSource.Channel(name, number));
    }

    /** A file alone is read as the point's own is. */
    private static Optional<RecordingSource.Reference> reference(FieldReader fields,
            Optional<RecordingSource.Channel> own) {
        if (!fields.isText("reference")) {
            return fields.part("reference", object -> channel(object).map(channel ->
                    new RecordingSource.Reference(channel, object.instant("measured")))).flatMap(read -> read);
        }
        Optional<String> file = fields.text("reference");
        file.filter(name -> !staysInside(name)).ifPresent(name -> fields.fault("reference", INSIDE + name + "\""));
        return file.map(name -> new RecordingSource.Reference(new RecordingSource.Channel(name,
                own.flatMap(RecordingSource.Channel::number)), Optional.empty()));
    }

    static boolean staysInside(String name) {
        try {
            Path path = Path.of(name);
            return !path.isAbsolute() && !path.normalize().startsWith("..");
        } catch (InvalidPathException e) {
            return false;
        }
    }

    private static Optional<Unit> unit(FieldReader fields) {
        Optional<String> symbol = fields.required("unit", UNIT_RULE);
        Optional<Unit> unit = symbol.flatMap(given -> MOTION_UNITS.stream()
                .filter(one -> one.symbol().equals(given) || one.plainSymbol().equals(given)).findFirst());
        symbol.filter(given -> unit.isEmpty()).ifPresent(given -> fields.fault("unit", "must be " + UNIT_RULE + ": \""
                + given + "\""));
        return unit;
    }

    /** Three ways: a factor, a sensitivity, a sensitivity with the voltage of full scale; none means a factor of 1. */
    private static Optional<Scaling> scaling(FieldReader fields) {
        Optional<Double> scale = fields.number("scale", Plausible.NUMBER);
        Optional<Double> sensitivity = fields.number("sensitivityMillivoltsPerUnit", Plausible.SENSITIVITY);
        Optional<Double> fullScale = fields.number("fullScaleVolts", Plausible.FULL_SCALE);
        if (fields.has("scale") && fields.has("sensitivityMillivoltsPerUnit")) {
            fields.fault("sensitivityMillivoltsPerUnit", "must not stand beside scale; give one of the two");
        }
        if (fields.has("fullScaleVolts")) {
            fields.require("sensitivityMillivoltsPerUnit", "fullScaleVolts is of use beside it only");
        }
        scale.filter(factor -> !(Math.abs(factor) >= Plausible.SMALLEST_SCALE)).flatMap(tiny -> fields.given("scale"))
                .ifPresent(node -> fields.fault("scale", "must be at least 1e-12, or negative and at most -1e-12: "
                        + node.shown()));
        return fields.faulty() ? Optional.empty() : Optional.of(new Scaling(scale, sensitivity, fullScale));
    }

    static Optional<RecordingSource.Tachometer> tachometer(FieldReader object) {
        Optional<RecordingSource.Channel> channel = channel(object);
        int pulses = object.count("pulsesPerRevolution", 1).orElse(1);
        return channel.map(known -> new RecordingSource.Tachometer(known, pulses));
    }
}
