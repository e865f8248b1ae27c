package dev.vibra.docs.survey.input;

import dev.vibra.balance.Balancing;
import dev.vibra.balance.BalancingJob;
import dev.vibra.balance.Mass;
import dev.vibra.balance.Reading;
import dev.vibra.balance.influence.CoefficientErrors;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/** Reads the runs of a balancing job. */
final class RunsReader {
    private final FieldReader fields;
    private final List<String> sensors;
    private final List<String> planes;
    private final JobSteps steps;

    private record Fitted(String plane, Mass mass) {}

    private record Coefficient(Reading value, Optional<Double> scatter) {}

    RunsReader(FieldReader fields, List<String> sensors, List<String> planes, JobSteps steps) {
        this.fields = fields;
        this.sensors = sensors;
        this.planes = planes;
        this.steps = steps;
    }

    /** Trial masses tell the radius of planes that have none of their own. */
    void read(Map<String, Double> radii, Unit unit, Detector detector) {
        if (fields.has("runout")) {
            Reading[] runout = readings(fields, "runout");
            if (unit.quantity() != Quantity.DISPLACEMENT) {
                fields.fault("runout", "must be read by displacement sensors, and reading.unit is "
                        + unit.plainSymbol());
            }
            steps.add(job -> job.runout(runout));
        }
        influence(unit.plainSymbol() + " " + detector + " per g");
        boolean leftOn = fields.truth("trialsLeftOn").orElse(false);
        if (leftOn) {
            steps.add(BalancingJob::trialsLeftOn);
        }
        if (leftOn && fields.has("influence")) {
            fields.fault("trialsLeftOn", "must not stand beside influence, which needs no trial runs");
        }
        Reading[] initial = requiredReadings(fields, "initial");
        steps.add(job -> job.initial(initial));
        trials(radii);
        finalRun(radii);
    }

    private Reading[] requiredReadings(FieldReader from, String name) {
        if (!from.has(name)) {
            from.fault(name, "is required: one reading of amplitude and phaseDegrees per sensor");
            return new Reading[0];
        }
        return readings(from, name);
    }

    private Reading[] readings(FieldReader from, String name) {
        List<Reading> readings = from.objects(name, (object, index) -> reading(object));
        if (readings.size() != sensors.size() && !from.faults().contains(name) && !sensors.isEmpty()) {
            from.fault(name, "must hold one reading per sensor, " + sensors.size() + ": " + readings.size());
        }
        return readings.toArray(Reading[]::new);
    }

    private static Optional<Reading> reading(FieldReader object) {
        BalancingReader.require(object, "amplitude", "phaseDegrees");
        Optional<Double> amplitude = BalancingReader.size(object, "amplitude", Range.atLeast(0, ""));
        Optional<Double> phase = object.number("phaseDegrees", BalancingReader.TURN);
        return object.finished(() -> new Reading(amplitude.orElseThrow(), phase.orElseThrow()));
    }

    private void influence(String unit) {
        List<List<Coefficient>> rows = fields.rows("influence", RunsReader::coefficient);
        boolean fits = rows.size() == sensors.size() && rows.stream().allMatch(row -> row.size() == planes.size());
        if (fields.has("influence") && !fits && !fields.faults().contains("influence") && !sensors.isEmpty()
                && !planes.isEmpty()) {
            fields.fault("influence", "must hold one list per sensor, " + sensors.size()
                    + ", of one coefficient per plane, " + planes.size());
        }
        Optional<ReadingScatter> aged = BalancingReader.scatter(fields, "influenceScatter", false);
        fields.text("influenceUnit").filter(given -> !given.equals(unit)).ifPresent(given -> fields.fault(
                "influenceUnit", "must be that of the readings, \"" + unit + "\": \"" + given + "\""));
        if (aged.isPresent() && !fields.has("scatter")) {
            fields.fault("influenceScatter", "must stand beside scatter, that of the readings");
        }
        List.of("influenceScatter", "influenceUnit").stream().filter(name -> fields.has(name)
                && !fields.has("influence")).forEach(name -> fields.fault(name, "must stand beside influence"));
        List<Coefficient> all = rows.stream().flatMap(List::stream).toList();
        long told = all.stream().filter(one -> one.scatter.isPresent()).count();
        if (told != 0 && (told != all.size() || fields.has("influenceScatter"))) {
            fields.fault("influence", "must tell scatter with each coefficient or with none, and not beside"
                    + " influenceScatter");
        }
        if (fields.has("influence")) {
            steps.add(job -> withCoefficients(job, rows, aged, told != 0));
        }
    }

    private static Optional<Coefficient> coefficient(FieldReader object) {
        Optional<Double> scatter = BalancingReader.size(object, "scatter", Range.atLeast(0, ""));
        return reading(object).map(value -> new Coefficient(value, scatter));
    }

    private static BalancingJob withCoefficients(BalancingJob job, List<List<Coefficient>> rows,
            Optional<ReadingScatter> aged, boolean told) {
        InfluenceCoefficients stored = InfluenceCoefficients.ofSheet(job.layout(),
                numbers(rows, one -> one.value.amplitude()), numbers(rows, one -> one.value.phaseDegrees()));
        Optional<CoefficientErrors> errors = told ? Optional.of(CoefficientErrors.ofSheet(job.layout(),
                numbers(rows, one -> one.scatter.orElseThrow())))
                : aged.map(scatter -> CoefficientErrors.of(stored, scatter));
        return errors.map(one -> job.withCoefficients(stored, one)).orElseGet(() -> job.withCoefficients(stored));
    }

    private static double[][] numbers(List<List<Coefficient>> rows, ToDoubleFunction<Coefficient> part) {
        return rows.stream().map(row -> row.stream().mapToDouble(part).toArray()).toArray(double[][]::new);
    }

    private void trials(Map<String, Double> radii) {
        if (fields.has("influence") && fields.has("trials")) {
            fields.fault("trials", "must not stand beside influence; give one of the two");
        } else if (!fields.has("influence") && !fields.has("trials")) {
            fields.fault("trials", "is required, unless influence tells the coefficients");
        } else if (fields.has("trials")) {
            List<String> tried = fields.objects("trials", (object, index) -> trial(object, radii));
            planes.stream().filter(plane -> !tried.contains(plane) && !fields.faults().contains("trials"))
                    .forEach(plane -> fields.fault("trials", "must hold a trial run or more per plane; plane \"" + plane
                            + "\" has none"));
        }
    }

    /** Returns the plane. */
    private Optional<String> trial(FieldReader object, Map<String, Double> radii) {
        Reading[] readings = requiredReadings(object, "readings");
        Optional<Fitted> trial = mass(object, Range.above(0, "g"));
        trial.ifPresent(on -> {
            on.mass.radiusMillimetres().ifPresent(radius -> radii.putIfAbsent(on.plane, radius));
            steps.add(job -> job.trial(on.plane, on.mass, readings));
        });
        return trial.map(Fitted::plane);
    }

    /** Reads a mass in a plane and closes the object. */
    private Optional<Fitted> mass(FieldReader object, Range grams) {
        Optional<String> plane = object.required("plane", "correction plane of the mass");
        plane.filter(name -> !planes.contains(name) && !planes.isEmpty()).ifPresent(name -> object.fault("plane",
                "must be one of " + FieldReader.joined(planes) + ": \"" + name + "\""));
        BalancingReader.require(object, "massGrams", "angleDegrees");
        Optional<Double> mass = BalancingReader.size(object, "massGrams", grams);
        Optional<Double> angle = object.number("angleDegrees", BalancingReader.TURN);
        Optional<Double> radius = BalancingReader.size(object, "radiusMillimetres", Range.above(0, "mm"));
        return object.finished(() -> {
            Mass open = Balancing.mass(mass.orElseThrow(), angle.orElseThrow());
            return new Fitted(plane.orElseThrow(), radius.map(open::atRadius).orElse(open));
        });
    }

    private void finalRun(Map<String, Double> radii) {
        List<Fitted> fitted = fields.objects("fitted", (object, index) -> mass(object, Range.atLeast(0, "g")));
        if (fields.has("fitted") && fitted.isEmpty() && !fields.faults().contains("fitted")) {
            fields.fault("fitted", "must hold a mass or more; leave it out if the masses worked out went on");
        }
        if (!fitted.isEmpty() && !fields.has("final")) {
            fields.fault("fitted", "must stand beside final, the run with these masses");
        }
        fitted.stream().filter(one -> one.mass.radiusMillimetres().isPresent() && !radii.containsKey(one.plane))
                .findFirst().ifPresent(one -> fields.fault("fitted", "needs radiusMillimetres of plane \"" + one.plane
                        + "\" in the job or in a trial to use a mass with a radius of its own"));
        if (!fields.has("final")) {
            return;
        }
        Reading[] readings = readings(fields, "final");
        if (fitted.isEmpty()) { // then the masses worked out went on, and there are none beside an obstacle
            steps.add(job -> job.obstacle().isPresent() ? job : job.finalRun(readings));
        } else {
            steps.add(job -> job.finalRun(planes.stream().map(plane -> inAll(fitted, plane, radii,
                    job.layout().convention().angle())).toList(), job.vectors(readings)));
        }
    }

    /** All masses that were fitted in a plane, as one. */
    private static PlacedMass inAll(List<Fitted> fitted, String plane, Map<String, Double> radii, AngleSense sense) {
        Phasor sum = Phasor.ZERO;
        for (Fitted one : fitted) {
            if (one.plane.equals(plane)) {
                PlacedMass mass = PlacedMass.ofGrams(one.mass.grams(), one.mass.angleDegrees(), sense);
                OptionalDouble radius = one.mass.radiusMillimetres();
                sum = sum.plus((radius.isEmpty() ? mass : mass.atRadius(radius.getAsDouble()).movedTo(radii.get(plane)))
                        .kilograms());
            }
        }
        return PlacedMass.ofPhasor(sum, sense);
    }
}
