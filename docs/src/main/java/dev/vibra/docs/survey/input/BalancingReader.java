package dev.vibra.docs.survey.input;

import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Unit;
import dev.vibra.survey.machine.BalancingSheet;
import dev.vibra.survey.machine.SheetReading;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads a balancing job and checks that its parts fit together; with any error the job is left out as a whole. */
final class BalancingReader {
    private static final List<String> PHASES = List.of("lag, degrees", "lead, degrees");
    private static final Map<String, Detector> DETECTORS = detectors();

    private final FieldReader fields;

    private BalancingReader(FieldReader fields) {
        this.fields = fields;
    }

    /** Returns the job; it means something only if the reader of the fields has no faults afterwards. */
    static BalancingSheet read(FieldReader fields) {
        return new BalancingReader(fields).job();
    }

    private BalancingSheet job() {
        double speed = fields.number("speedRevolutionsPerMinute", Range.above(0, "r/min")).orElse(Double.NaN);
        List<String> sensors = names("sensors", "names of the sensors");
        List<String> planes = names("planes", "names of the correction planes");
        SheetReading reading = reading();
        return new BalancingSheet(speed, reading, sensors, planes, new RunsReader(fields, sensors,
                planes).read(reading),
                new GeometryReader(fields, planes).read());
    }

    private SheetReading reading() {
        Optional<FieldReader> reading = fields.object("reading");
        Unit unit = reading.flatMap(BalancingReader::unit).orElse(Unit.MM_PER_S);
        Detector detector = reading.flatMap(object -> object.choice("detector", List.copyOf(DETECTORS.keySet())))
                .map(DETECTORS::get).orElse(Detector.RMS);
        String phase = reading.flatMap(object -> object.choice("phase", PHASES)).orElse(PHASES.get(0));
        reading.ifPresent(object -> passOn(object, fields, "reading"));
        return new SheetReading(unit, detector, phase.equals(PHASES.get(0)), scatter(fields, "scatter", true));
    }

    /** Scatter of readings or of coefficients, which have no floor; null if not told. */
    static ReadingScatter scatter(FieldReader fields, String name, boolean withFloor) {
        Optional<FieldReader> scatter = fields.object(name);
        if (scatter.isEmpty()) {
            return null;
        }
        FieldReader object = scatter.get();
        Optional<Double> amplitude = object.number("amplitudePercent", new Range(0, true, 100, true, "%"));
        Optional<Double> phase = object.number("phaseDegrees", new Range(0, true, 180, true, "degrees"));
        double floor = withFloor ? object.number("floor", Range.atLeast(0, "")).orElse(0.0) : 0;
        requireField(object, "amplitudePercent");
        requireField(object, "phaseDegrees");
        passOn(object, fields, name);
        return object.faulty() ? null
                : ReadingScatter.of(amplitude.orElseThrow() / 100, phase.orElseThrow()).withFloor(floor);
    }

    private List<String> names(String name, String what) {
        List<String> names = fields.texts(name);
        if (!fields.has(name)) {
            fields.fault(name, "is required: " + what);
        } else if (names.isEmpty() && !fields.faults().contains(name)) {
            fields.fault(name, "must hold one name or more: [ ]");
        }
        return names;
    }

    private static Optional<Unit> unit(FieldReader reading) {
        Optional<String> symbol = reading.text("unit");
        try {
            return symbol.map(Unit::ofSymbol);
        } catch (IllegalArgumentException e) {
            reading.fault("unit", e.getMessage().substring("unit ".length()));
            return Optional.empty();
        }
    }

    /** Closes an object within another; its faults are faults of the field that holds it. */
    static void passOn(FieldReader object, FieldReader holder, String name) {
        if (object.finish().faulty()) {
            holder.faults().add(name);
        }
    }

    static void requireField(FieldReader object, String name) {
        if (!object.has(name)) {
            object.fault(name, "is required");
        }
    }

    private static Map<String, Detector> detectors() {
        Map<String, Detector> detectors = new LinkedHashMap<>();
        detectors.put("rms", Detector.RMS);
        detectors.put("0-peak", Detector.ZERO_TO_PEAK);
        detectors.put("peak-peak", Detector.PEAK_TO_PEAK);
        return detectors;
    }
}
