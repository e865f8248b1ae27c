package dev.vibra.docs.survey.input;

import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.survey.machine.Phasor;
import dev.vibra.survey.machine.SheetCoefficient;
import dev.vibra.survey.machine.SheetMass;
import dev.vibra.survey.machine.SheetReading;
import dev.vibra.survey.machine.SheetRuns;
import dev.vibra.survey.machine.TrialRun;
import java.util.List;
import java.util.Optional;

/** Reads the runs of a balancing job. */
final class RunsReader {
    private final FieldReader fields;
    private final List<String> sensors;
    private final List<String> planes;

    RunsReader(FieldReader fields, List<String> sensors, List<String> planes) {
        this.fields = fields;
        this.sensors = sensors;
        this.planes = planes;
    }

    SheetRuns read(SheetReading reading) {
        List<Phasor> runout = readings(fields, "runout", false);
        List<Phasor> initial = readings(fields, "initial", true);
        List<List<SheetCoefficient>> influence = influence();
        ReadingScatter influenceScatter = BalancingReader.scatter(fields, "influenceScatter", false);
        String unit = reading.unit().plainSymbol() + " " + reading.detector() + " per g";
        fields.text("influenceUnit").filter(given -> !given.equals(unit)).ifPresent(given -> fields.fault(
                "influenceUnit", "must be that of the readings, \"" + unit + "\": \"" + given + "\""));
        if (influenceScatter != null && !fields.has("scatter")) {
            fields.fault("influenceScatter", "must stand beside scatter, that of the readings");
        }
        for (String name : List.of("influenceScatter", "influenceUnit")) {
            if (fields.has(name) && !fields.has("influence")) {
                fields.fault(name, "must stand beside influence");
            }
        }
        List<TrialRun> trials = trials();
        boolean leftOn = fields.truth("trialsLeftOn").orElse(false);
        if (leftOn && fields.has("influence")) {
            fields.fault("trialsLeftOn", "must not stand beside influence, which needs no trial runs");
        }
        List<Phasor> finalRun = readings(fields, "final", false);
        List<SheetMass> fitted = fields.objects("fitted", (object, index) -> mass(object, Range.atLeast(0, "g")));
        if (fields.has("fitted") && fitted.isEmpty() && !fields.faults().contains("fitted")) {
            fields.fault("fitted", "must hold a mass or more; leave it out if the masses worked out went on");
        }
        if (!fitted.isEmpty() && !fields.has("final")) {
            fields.fault("fitted", "must stand beside final, the run with these masses");
        }
        return new SheetRuns(runout, initial, trials, leftOn, influence, influenceScatter, fitted, finalRun);
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
        BalancingReader.requireField(object, "amplitude");
        BalancingReader.requireField(object, "phaseDegrees");
        return object.finish().faulty() ? Optional.empty() : Optional.of(new Phasor(amplitude.orElseThrow(),
                phase.orElseThrow()));
    }

    private static Optional<SheetCoefficient> coefficient(FieldReader object) {
        double scatter = object.number("scatter", Range.atLeast(0, "")).orElse(Double.NaN);
        return phasor(object).map(one -> new SheetCoefficient(one.amplitude(), one.phaseDegrees(), scatter));
    }

    private List<List<SheetCoefficient>> influence() {
        List<List<SheetCoefficient>> rows = fields.rows("influence", RunsReader::coefficient);
        boolean fits = rows.size() == sensors.size() && rows.stream().allMatch(row -> row.size() == planes.size());
        if (fields.has("influence") && !fits && !fields.faults().contains("influence") && !sensors.isEmpty()
                && !planes.isEmpty()) {
            fields.fault("influence", "must hold one list per sensor, " + sensors.size()
                    + ", of one coefficient per plane, " + planes.size());
        }
        List<SheetCoefficient> all = rows.stream().flatMap(List::stream).toList();
        long told = all.stream().filter(one -> !Double.isNaN(one.scatter())).count();
        if (told != 0 && (told != all.size() || fields.has("influenceScatter"))) {
            fields.fault("influence", "must tell scatter with each coefficient or with none, and not beside"
                    + " influenceScatter");
        }
        return rows;
    }

    private List<TrialRun> trials() {
        if (fields.has("influence")) {
            if (fields.has("trials")) {
                fields.fault("trials", "must not stand beside influence; give one of the two");
            }
            return List.of();
        }
        if (!fields.has("trials")) {
            fields.fault("trials", "is required, unless influence tells the coefficients");
            return List.of();
        }
        List<TrialRun> trials = fields.objects("trials", (object, index) -> trial(object));
        for (String plane : planes) {
            if (trials.stream().noneMatch(trial -> trial.plane().equals(plane))
                    && !fields.faults().contains("trials")) {
                fields.fault("trials", "must hold a trial run or more per plane; plane \"" + plane + "\" has none");
            }
        }
        return trials;
    }

    private Optional<TrialRun> trial(FieldReader object) {
        List<Phasor> readings = readings(object, "readings", true);
        return mass(object, Range.above(0, "g")).map(mass -> new TrialRun(mass.plane(), mass.massGrams(),
                mass.angleDegrees(), mass.radiusMillimetres(), readings));
    }

    /** Reads a mass in a plane and closes the object. */
    private Optional<SheetMass> mass(FieldReader object, Range grams) {
        Optional<String> plane = object.required("plane", "correction plane of the mass");
        if (plane.isPresent() && !planes.contains(plane.get()) && !planes.isEmpty()) {
            object.fault("plane", "must be one of " + FieldReader.joined(planes) + ": \"" + plane.get() + "\"");
        }
        Optional<Double> mass = object.number("massGrams", grams);
        Optional<Double> angle = object.number("angleDegrees", new Range(-360, true, 360, true, "degrees"));
        double radius = object.number("radiusMillimetres", Range.above(0, "mm")).orElse(Double.NaN);
        BalancingReader.requireField(object, "massGrams");
        BalancingReader.requireField(object, "angleDegrees");
        return object.finish().faulty() ? Optional.empty() : Optional.of(new SheetMass(plane.orElseThrow(),
                mass.orElseThrow(), angle.orElseThrow(), radius));
    }
}
