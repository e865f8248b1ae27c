package dev.vibra.docs.survey.input;

import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.speedrun.ProbePair;
import dev.vibra.speedrun.TurningSense;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads run-ups and coast-downs. A point or a pair of probes with an error is left out of its run, a run without
 * tachometer or points is left out.
 */
final class SpeedRunReader {
    private static final Range ORDER = Range.within(0.5, 20, "");
    private static final Range DEGREES = Range.within(-360, 360, "degrees");
    private static final int MOST_ORDERS = 8;
    private static final List<String> SENSES = List.of("away from the probe", "towards the probe");

    private final Optional<RotationSpeed> service;
    private final Ids runs = new Ids("run");

    private SpeedRunReader(Optional<RotationSpeed> service) {
        this.service = service;
    }

    /** Reads the runs of a machine; its speed by the plate is theirs in service unless another one is told. */
    static List<SpeedRunSource> read(FieldReader fields, Optional<RotationSpeed> service) {
        return fields.objects("runs", new SpeedRunReader(service)::run);
    }

    private Optional<SpeedRunSource> run(FieldReader fields, int index) {
        String id = runs.read(fields, index);
        fields.require("tachometer", "the recording of the pulses").require("points", "the recordings that go with it");
        Optional<RecordingSource> tachometer = fields.part("tachometer", SpeedRunReader::tachometer)
                .flatMap(read -> read);
        Optional<Double> told = fields.number("serviceRevolutionsPerMinute", Plausible.SPEED)
                .or(() -> service.map(RotationSpeed::revolutionsPerMinute));
        List<Double> orders = fields.numbers("orders", ORDER);
        if (orders.size() > MOST_ORDERS) {
            fields.fault("orders", "must hold " + MOST_ORDERS + " at most: " + orders.size());
            orders = List.of();
        }
        Ids ids = new Ids("point of the run");
        Map<String, RecordingSource> points = new LinkedHashMap<>();
        fields.objects("points", (object, i) -> point(object, i, ids, points));
        List<SpeedRunSource.Pair> pairs = fields.objects("probes", (object, i) -> pair(object, i, ids));
        fields.finish();
        return tachometer.isEmpty() || points.isEmpty() ? Optional.empty()
                : Optional.of(new SpeedRunSource(id, tachometer.get(), told, orders, points, pairs));
    }

    private static Optional<RecordingSource> tachometer(FieldReader object) {
        Optional<Double> rate = object.number("sampleRateHertz", Plausible.SAMPLE_RATE);
        return PointReader.tachometer(object).map(known -> new RecordingSource(known.channel(), Unit.V,
                new Scaling(Optional.empty(), Optional.empty(), Optional.empty()), rate, Optional.of(known),
                Optional.empty(), Optional.empty()));
    }

    private static Optional<String> point(FieldReader object, int index, Ids ids, Map<String, RecordingSource> points) {
        String id = ids.read(object, index);
        Optional<RecordingSource> source = PointReader.plainSource(object);
        return object.finished(() -> {
            ids.keep(id);
            points.put(id, source.orElseThrow());
            return id;
        });
    }

    private static Optional<SpeedRunSource.Pair> pair(FieldReader object, int index, Ids ids) {
        String id = object.text("id").orElse("probes " + (index + 1));
        object.require("x", "the point of the first probe").require("y", "the point of the second probe")
                .require("xDegrees", "where the first probe stands, counter-clockwise from the right")
                .require("yDegrees", "where the second probe stands, counter-clockwise from the right")
                .require("turning", FieldReader.joined(List.of(TurningSense.values())))
                .require("positive", FieldReader.joined(SENSES));
        Optional<String> x = ids.named(object, "x");
        Optional<String> y = ids.named(object, "y");
        Optional<Double> xDegrees = object.number("xDegrees", DEGREES);
        Optional<Double> yDegrees = object.number("yDegrees", DEGREES);
        Optional<TurningSense> turning = object.choice("turning", List.of(TurningSense.values()));
        Optional<Boolean> away = object.choice("positive", SENSES).map(SENSES.get(0)::equals);
        return object.finish().faulty() || x.isEmpty() || y.isEmpty() ? Optional.empty()
                : Optional.of(new SpeedRunSource.Pair(id, x.get(), y.get(), new ProbePair(xDegrees.orElseThrow(),
                        yDegrees.orElseThrow(), turning.orElseThrow(), away.orElseThrow())));
    }
}
