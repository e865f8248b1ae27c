package dev.vibra.docs.survey.input;

import dev.vibra.balance.Balancing;
import dev.vibra.balance.BalancingJob;
import dev.vibra.balance.tolerance.Allocation;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.balance.vector.Convention;
import dev.vibra.machine.RotorData;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads a balancing job and checks that its parts fit together; with any error the job is left out as a whole. */
final class BalancingReader {
    static final Range TURN = new Range(-360, true, 360, true, "degrees");
    /** The solution of a job takes the third power of it. */
    private static final int MOST_NAMES = 100;
    private static final double SMALLEST = 1e-9;
    private static final double LARGEST = 1e9;
    private static final List<String> PHASES = List.of("lag, degrees", "lead, degrees");
    private static final List<String> UNITS = Arrays.stream(Unit.values()).map(Unit::plainSymbol).toList();
    private static final Map<String, Detector> DETECTORS = detectors();

    private final FieldReader fields;
    private final JobSteps steps = new JobSteps();
    private Unit unit = Unit.MM_PER_S;
    private Detector detector = Detector.RMS;
    private Convention convention = Convention.LAG_AGAINST_ROTATION;

    private BalancingReader(FieldReader fields) {
        this.fields = fields;
    }

    /**
     * Returns the job; empty with any error so far. The object is not closed.
     *
     * @param rotor rotor of the machine
     * @param service speed of the machine, which the tolerance is for
     */
    static Optional<BalancingJob> read(FieldReader fields, RotorData rotor, Optional<RotationSpeed> service) {
        return new BalancingReader(fields).job(rotor, service);
    }

    private Optional<BalancingJob> job(RotorData rotor, Optional<RotationSpeed> service) {
        Optional<RotationSpeed> speed = fields.number("speedRevolutionsPerMinute", Plausible.SPEED)
                .map(RotationSpeed::ofRevolutionsPerMinute);
        List<String> sensors = names("sensors", "names of the sensors");
        List<String> planes = names("planes", "names of the correction planes");
        fields.part("reading", this::reading);
        steps.add(job -> job.in(unit, detector).with(convention));
        steps.add(speed, BalancingJob::at);
        rotor.massKilograms().ifPresent(mass -> steps.add(job -> job.rotor(mass)));
        steps.add(scatter(fields, "scatter", true), BalancingJob::scatter);
        Map<String, Double> radii = new HashMap<>();
        Optional<Allocation> shares = new GeometryReader(fields, planes, steps).read(radii);
        steps.add(tolerance(rotor, service.or(() -> speed)), (job, tolerance) -> job.toTolerance(
                tolerance.allocated(shares.orElseGet(() -> Allocation.equalShares(planes.size())))));
        new RunsReader(fields, sensors, planes, steps).read(radii, unit, detector);
        return fields.faulty() ? Optional.empty() : Optional.of(steps.onto(
                Balancing.inPlanes(planes.toArray(String[]::new)).measuredAt(sensors.toArray(String[]::new))));
    }

    private FieldReader reading(FieldReader object) {
        Optional<String> symbol = object.text("unit");
        Optional<Unit> named = symbol.flatMap(text -> Arrays.stream(Unit.values())
                .filter(one -> one.symbol().equals(text) || one.plainSymbol().equals(text)).findFirst());
        symbol.filter(text -> named.isEmpty()).ifPresent(text -> object.fault("unit", "must be one of "
                + FieldReader.joined(UNITS) + ": \"" + text + "\""));
        unit = named.orElse(unit);
        detector = object.choice("detector", List.copyOf(DETECTORS.keySet())).map(DETECTORS::get).orElse(detector);
        convention = object.choice("phase", PHASES).filter(PHASES.get(1)::equals)
                .map(lead -> Convention.LEAD_WITH_ROTATION).orElse(convention);
        return object;
    }

    /** Permissible residual unbalance; empty if mass, grade or speed is missing. */
    private static Optional<BalanceTolerance> tolerance(RotorData rotor, Optional<RotationSpeed> speed) {
        return rotor.massKilograms().isEmpty() ? Optional.empty() : rotor.grade().flatMap(grade -> speed.map(turning ->
                BalanceTolerance.of(grade, rotor.massKilograms().getAsDouble(), turning)));
    }

    /** Scatter of readings or of coefficients, which have no floor; empty if not told. */
    static Optional<ReadingScatter> scatter(FieldReader fields, String name, boolean withFloor) {
        return fields.part(name, object -> {
            require(object, "amplitudePercent", "phaseDegrees");
            Optional<Double> amplitude = object.number("amplitudePercent", new Range(0, true, 100, true, "%"));
            Optional<Double> phase = object.number("phaseDegrees", new Range(0, true, 180, true, "degrees"));
            double floor = withFloor ? size(object, "floor", Range.atLeast(0, "")).orElse(0.0) : 0;
            return object.faulty() ? Optional.<ReadingScatter>empty() : Optional.of(
                    ReadingScatter.of(amplitude.orElseThrow() / 100, phase.orElseThrow()).withFloor(floor));
        }).flatMap(read -> read);
    }

    private List<String> names(String name, String what) {
        List<String> names = fields.texts(name);
        if (!fields.has(name)) {
            fields.fault(name, "is required: " + what);
        } else if (names.isEmpty() && !fields.faults().contains(name)) {
            fields.fault(name, "must hold one name or more: [ ]");
        } else if (names.size() > MOST_NAMES) {
            fields.fault(name, "must hold " + MOST_NAMES + " names at most: " + names.size());
            return List.of();
        }
        return names;
    }

    static void require(FieldReader object, String... names) {
        Arrays.stream(names).filter(name -> !object.has(name)).forEach(name -> object.fault(name, "is required"));
    }

    /** Reads what has a size; far beyond what is ever measured it is a slip of the pen, and no arithmetic holds. */
    static Optional<Double> size(FieldReader object, String name, Range range) {
        Optional<Double> size = object.number(name, range);
        Optional<Double> sound = size.filter(value -> value == 0 || value >= SMALLEST && value <= LARGEST);
        size.filter(value -> sound.isEmpty()).ifPresent(value -> object.fault(name,
                "must be of a size that can be measured, from 1e-9 to 1e9: " + value));
        return sound;
    }

    private static Map<String, Detector> detectors() {
        Map<String, Detector> detectors = new LinkedHashMap<>();
        detectors.put("rms", Detector.RMS);
        detectors.put("0-peak", Detector.ZERO_TO_PEAK);
        detectors.put("peak-peak", Detector.PEAK_TO_PEAK);
        return detectors;
    }
}
