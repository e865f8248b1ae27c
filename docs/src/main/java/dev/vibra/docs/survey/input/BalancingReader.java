package dev.vibra.docs.survey.input;

import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Unit;
import dev.vibra.survey.machine.BalancingSheet;
import dev.vibra.survey.machine.Phasor;
import dev.vibra.survey.machine.TrialRun;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads a balancing job and checks that its parts fit together; with any error the job is left out as a whole. */
final class BalancingReader {
    private static final List<String> PHASES = List.of("lag, degrees", "lead, degrees");
    private static final Map<String, Detector> DETECTORS = detectors();

    private final FieldReader fields;
    private List<String> sensors = List.of();
    private List<String> planes = List.of();

    private BalancingReader(FieldReader fields) {
        this.fields = fields;
    }

    /** Returns the job; it means something only if the reader of the fields has no faults afterwards. */
    static BalancingSheet read(FieldReader fields) {
        return new BalancingReader(fields).job();
    }

    private BalancingSheet job() {
        double speed = fields.number("speedRevolutionsPerMinute", Range.above(0, "r/min")).orElse(Double.NaN);
        sensors = names("sensors", "names of the sensors");
        planes = names("planes", "names of the correction planes");
        Optional<FieldReader> reading = fields.object("reading");
        Unit unit = reading.flatMap(BalancingReader::unit).orElse(Unit.MM_PER_S);
        Detector detector = reading.flatMap(object -> object.choice("detector", List.copyOf(DETECTORS.keySet())))
                .map(DETECTORS::get).orElse(Detector.RMS);
        String phase = reading.flatMap(object -> object.choice("phase", PHASES)).orElse(PHASES.get(0));
        reading.ifPresent(object -> passOn(object, "reading"));
        return new BalancingSheet(speed, unit, detector, phase.equals(PHASES.get(0)), sensors, planes,
                readings(fields, "initial", true), trials(), readings(fields, "final", false), radii(), positions());
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

    private List<Phasor> readings(FieldReader from, String name, boolean required) {
        if (!from.has(name)) {
            if (required) {
                from.fault(name, "is required: one reading of amplitude and phaseDegrees per sensor");
            }
            return List.of();
        }
        List<Phasor> readings = from.objects(name, (object, index) -> phasor(object));
        if (readings.size() != sensors.size() && !from.faults().contains(name) && !sensors.isEmpty()) {
            from.fault(name, "must hold one reading per sensor, " + sensors.size() + ": " + readings.size());
        }
        return readings;
    }

    private static Optional<Phasor> phasor(FieldReader object) {
        Optional<Double> amplitude = object.number("amplitude", Range.atLeast(0, ""));
        Optional<Double> phase = object.number("phaseDegrees", new Range(-360, true, 360, true, "degrees"));
        requireField(object, "amplitude");
        requireField(object, "phaseDegrees");
        return object.finish().faulty() ? Optional.empty() : Optional.of(new Phasor(amplitude.orElseThrow(),
                phase.orElseThrow()));
    }

    private List<TrialRun> trials() {
        requireField(fields, "trials");
        List<TrialRun> trials = fields.objects("trials", (object, index) -> trial(object));
        for (String plane : planes) {
            long runs = trials.stream().filter(trial -> trial.plane().equals(plane)).count();
            if (runs != 1 && !fields.faults().contains("trials")) {
                fields.fault("trials", "must hold one trial run per plane; plane \"" + plane + "\" has " + runs);
            }
        }
        return trials;
    }

    private Optional<TrialRun> trial(FieldReader object) {
        Optional<String> plane = object.required("plane", "correction plane of the trial mass");
        if (plane.isPresent() && !planes.contains(plane.get()) && !planes.isEmpty()) {
            object.fault("plane", "must be one of " + FieldReader.joined(planes) + ": \"" + plane.get() + "\"");
        }
        Optional<Double> mass = object.number("massGrams", Range.above(0, "g"));
        Optional<Double> angle = object.number("angleDegrees", new Range(-360, true, 360, true, "degrees"));
        double radius = object.number("radiusMillimetres", Range.above(0, "mm")).orElse(Double.NaN);
        requireField(object, "massGrams");
        requireField(object, "angleDegrees");
        List<Phasor> readings = readings(object, "readings", true);
        return object.finish().faulty() ? Optional.empty() : Optional.of(new TrialRun(plane.orElseThrow(),
                mass.orElseThrow(), angle.orElseThrow(), radius, readings));
    }

    private Map<String, Double> radii() {
        Map<String, Double> radii = new LinkedHashMap<>();
        fields.object("radiusMillimetres").ifPresent(object -> {
            planes.forEach(plane -> object.number(plane, Range.above(0, "mm")).ifPresent(r -> radii.put(plane, r)));
            finishByPlane(object, "radiusMillimetres");
        });
        return radii;
    }

    private Map<String, Integer> positions() {
        Map<String, Integer> positions = new LinkedHashMap<>();
        fields.object("positions").ifPresent(object -> {
            planes.forEach(plane -> object.count(plane, 3).ifPresent(count -> positions.put(plane, count)));
            finishByPlane(object, "positions");
        });
        return positions;
    }

    /** Without planes nothing is known of the names in the object, and the missing planes are an error already. */
    private void finishByPlane(FieldReader object, String name) {
        if (!planes.isEmpty()) {
            passOn(object, name);
        }
    }

    private void passOn(FieldReader object, String name) {
        if (object.finish().faulty()) {
            fields.faults().add(name);
        }
    }

    private static void requireField(FieldReader object, String name) {
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
