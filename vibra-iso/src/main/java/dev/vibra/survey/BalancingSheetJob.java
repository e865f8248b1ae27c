package dev.vibra.survey;

import dev.vibra.balance.Balancing;
import dev.vibra.balance.BalancingJob;
import dev.vibra.balance.Corrections;
import dev.vibra.balance.Mass;
import dev.vibra.balance.Reading;
import dev.vibra.balance.influence.CoefficientErrors;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.placement.Positions;
import dev.vibra.balance.tolerance.Allocation;
import dev.vibra.balance.tolerance.BalanceGrade;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Convention;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.survey.machine.AxialSheet;
import dev.vibra.survey.machine.BalancingSheet;
import dev.vibra.survey.machine.MachineDescription;
import dev.vibra.survey.machine.Phasor;
import dev.vibra.survey.machine.SheetCoefficient;
import dev.vibra.survey.machine.SheetMass;
import dev.vibra.survey.machine.TrialRun;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** Makes a balancing job of a sheet, step by step as a crew would. */
final class BalancingSheetJob {
    private final BalancingSheet sheet;
    private final MachineDescription machine;

    BalancingSheetJob(BalancingSheet sheet, MachineDescription machine) {
        this.sheet = sheet;
        this.machine = machine;
    }

    /** The job up to the point where corrections are known. */
    BalancingJob beforeCorrection() {
        BalancingJob job = withRunout(withTolerance(withGeometry(setUp())));
        return withTrials(withInfluence(job).initial(readings(sheet.runs().initial())));
    }

    /** The job with its final run. */
    BalancingJob afterCorrection(BalancingJob job) {
        Reading[] readings = readings(sheet.runs().finalRun());
        if (sheet.runs().fitted().isEmpty()) {
            return job.finalRun(readings);
        }
        List<PlacedMass> masses = new ArrayList<>();
        for (String plane : sheet.planes()) {
            masses.add(fittedIn(plane, job.corrections()));
        }
        return job.finalRun(masses, job.vectors(readings));
    }

    /** All masses that were fitted in a plane, as one. */
    private PlacedMass fittedIn(String plane, Corrections corrections) {
        AngleSense sense = corrections.convention().angle();
        PlacedMass sum = PlacedMass.ofGrams(0, 0, sense);
        double radius = corrections.in(plane).mass().radiusMillimetres().orElse(Double.NaN);
        for (SheetMass mass : sheet.runs().fitted()) {
            if (mass.plane().equals(plane)) {
                PlacedMass one = PlacedMass.ofGrams(mass.massGrams(), mass.angleDegrees(), sense);
                if (mass.radiusMillimetres() > 0) {
                    one = one.atRadius(mass.radiusMillimetres()).movedTo(requireRadius(mass, radius));
                }
                sum = PlacedMass.ofPhasor(sum.kilograms().plus(one.kilograms()), sense);
            }
        }
        return sum;
    }

    private static double requireRadius(SheetMass mass, double radius) {
        if (!(radius > 0)) {
            throw new IllegalArgumentException("radiusMillimetres of plane \"" + mass.plane()
                    + "\" must be given to use"
                    + " a fitted mass with a radius: " + mass);
        }
        return radius;
    }

    private BalancingJob setUp() {
        BalancingJob job = Balancing.inPlanes(sheet.planes().toArray(String[]::new))
                .measuredAt(sheet.sensors().toArray(String[]::new))
                .in(sheet.reading().unit(), sheet.reading().detector())
                .with(sheet.reading().phaseIsLag() ? Convention.LAG_AGAINST_ROTATION : Convention.LEAD_WITH_ROTATION);
        job = sheet.speedRevolutionsPerMinute() > 0
                ? job.at(RotationSpeed.ofRevolutionsPerMinute(sheet.speedRevolutionsPerMinute())) : job;
        Optional<Double> mass = machine.rotor().flatMap(rotor -> rotor.massKilograms());
        job = mass.isPresent() ? job.rotor(mass.get()) : job;
        return sheet.reading().scatter() == null ? job : job.scatter(sheet.reading().scatter());
    }

    private BalancingJob withGeometry(BalancingJob start) {
        BalancingJob job = start;
        AngleSense sense = job.layout().convention().angle();
        for (String plane : sheet.planes()) {
            double radius = radius(plane);
            job = radius > 0 ? job.radius(plane, radius) : job;
            if (sheet.geometry().positions().containsKey(plane)) {
                job = job.positions(plane, Positions.of(sheet.geometry().positions().get(plane), sense)
                        .startingAt(sheet.geometry().firstPositionDegrees().getOrDefault(plane, 0.0)));
            }
        }
        AxialSheet axial = sheet.geometry().axial();
        return axial == null ? job : job.alongTheAxis(axial.firstBearingMillimetres(), axial.secondBearingMillimetres(),
                sheet.planes().stream().mapToDouble(axial.planesMillimetres()::get).toArray());
    }

    /** Radius of corrections in a plane: as given, else that of its trial mass; NaN if neither is known. */
    private double radius(String plane) {
        return sheet.geometry().radiusMillimetres().containsKey(plane)
                ? sheet.geometry().radiusMillimetres().get(plane)
                : sheet.runs().trials().stream().filter(trial -> trial.plane().equals(plane))
                        .mapToDouble(TrialRun::radiusMillimetres).findFirst().orElse(Double.NaN);
    }

    private BalancingJob withTolerance(BalancingJob job) {
        return tolerance().map(job::toTolerance).orElse(job);
    }

    /** Permissible residual unbalance; empty if mass, grade or speed is missing. */
    private Optional<BalanceTolerance> tolerance() {
        Optional<Double> mass = machine.rotor().flatMap(rotor -> rotor.massKilograms());
        Optional<String> grade = machine.rotor().flatMap(rotor -> rotor.balanceGrade());
        Optional<RotationSpeed> speed = machine.speed().or(() -> sheet.speedRevolutionsPerMinute() > 0
                ? Optional.of(RotationSpeed.ofRevolutionsPerMinute(sheet.speedRevolutionsPerMinute()))
                : Optional.empty());
        if (mass.isEmpty() || grade.isEmpty() || speed.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(BalanceTolerance.of(BalanceGrade.parse(grade.get()), mass.get(), speed.get())
                .allocated(allocation()));
    }

    private Allocation allocation() {
        AxialSheet axial = sheet.geometry().axial();
        if (axial == null) {
            return Allocation.equalShares(sheet.planes().size());
        }
        return Double.isNaN(axial.centreOfMassMillimetres()) ? Allocation.equalShares(2)
                : Allocation.byLever(axial.firstBearingMillimetres(), axial.secondBearingMillimetres(),
                        axial.centreOfMassMillimetres());
    }

    private BalancingJob withRunout(BalancingJob job) {
        return sheet.runs().runout().isEmpty() ? job : job.runout(readings(sheet.runs().runout()));
    }

    private BalancingJob withInfluence(BalancingJob job) {
        List<List<SheetCoefficient>> rows = sheet.runs().influence();
        if (rows.isEmpty()) {
            return sheet.runs().trialsLeftOn() ? job.trialsLeftOn() : job;
        }
        InfluenceCoefficients stored = InfluenceCoefficients.ofSheet(job.layout(),
                numbers(SheetCoefficient::amplitude), numbers(SheetCoefficient::phaseDegrees));
        if (sheet.runs().influenceScatter() != null) {
            return job.withCoefficients(stored, sheet.runs().influenceScatter());
        }
        boolean told = rows.stream().flatMap(List::stream).noneMatch(one -> Double.isNaN(one.scatter()));
        return told ? job.withCoefficients(stored, CoefficientErrors.ofSheet(job.layout(),
                numbers(SheetCoefficient::scatter))) : job.withCoefficients(stored);
    }

    private double[][] numbers(ToDoubleFunction<SheetCoefficient> part) {
        return sheet.runs().influence().stream().map(row -> row.stream().mapToDouble(part).toArray())
                .toArray(double[][]::new);
    }

    private BalancingJob withTrials(BalancingJob job) {
        BalancingJob read = job;
        for (TrialRun trial : sheet.runs().trials()) {
            Mass mass = Balancing.mass(trial.massGrams(), trial.angleDegrees());
            read = read.trial(trial.plane(), trial.radiusMillimetres() > 0 ? mass.atRadius(trial.radiusMillimetres())
                    : mass, readings(trial.readings()));
        }
        return read;
    }

    private static Reading[] readings(List<Phasor> phasors) {
        return phasors.stream().map(reading -> Balancing.v(reading.amplitude(), reading.phaseDegrees()))
                .toArray(Reading[]::new);
    }
}
