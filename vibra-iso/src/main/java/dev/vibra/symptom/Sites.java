package dev.vibra.symptom;

import dev.vibra.internal.ShaftSpeeds;
import dev.vibra.machine.Belt;
import dev.vibra.machine.CoupledParts;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.GearStage;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MachinePart;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.machine.Rate;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/** The places of a machine at which faults can sit, as far as its description names them. */
public final class Sites {
    static final Site MACHINE = site(Site.Kind.MACHINE, 1);

    private Sites() {}

    /**
     * Lists the sites of a machine.
     *
     * @param machine what is known of the machine
     * @return the machine, its shafts that a point lies at, couplings, motor, gear stages, blades, belts and bearings
     */
    public static List<Site> of(MachineDescription machine) {
        Objects.requireNonNull(machine, "machine");
        DriveTrain train = machine.train();
        List<Site> sites = new ArrayList<>(List.of(MACHINE));
        addShafts(sites, machine);
        for (CoupledParts coupling : train.couplings()) {
            sites.add(new Site(Site.Kind.COUPLING, ownerOf(coupling), ratioOf(machine, coupling)));
        }
        if (hasMotor(machine)) {
            sites.add(site(Site.Kind.MOTOR, machine.motorRatio()));
        }
        addGears(sites, machine);
        train.blades().ifPresent(blades -> sites.add(site(Site.Kind.BLADES, train.ratesAt(1).stream()
                .filter(rate -> rate.kind() == Rate.Kind.BLADE_PASSING).findFirst().orElseThrow().hertz() / blades)));
        for (Belt belt : train.belts()) {
            sites.add(new Site(Site.Kind.BELT, belt.id(), belt.drivingShaft().map(train::ratioOf).orElse(1.0)));
        }
        machine.bearings().forEach(bearing -> sites.add(new Site(Site.Kind.BEARING, bearing.id(),
                machine.points().stream().filter(point -> point.bearing().filter(bearing.id()::equals).isPresent())
                        .mapToDouble(machine::ratioAt).findFirst().orElse(1))));
        return List.copyOf(sites);
    }

    private static Site site(Site.Kind kind, double ratio) {
        return new Site(kind, kind.toString(), ratio);
    }

    /** A shaft stands once for each speed. */
    private static void addShafts(List<Site> sites, MachineDescription machine) {
        List<Site> shafts = new ArrayList<>();
        for (MeasuringPoint point : machine.points()) {
            double ratio = machine.ratioAt(point);
            if (shafts.stream().noneMatch(shaft -> ShaftSpeeds.areSame(shaft.ratio(), ratio))) {
                shafts.add(new Site(Site.Kind.SHAFT, ShaftSpeeds.areSame(ratio, 1) ? Site.Kind.SHAFT.toString()
                        : shaftOf(machine, point).orElse(Site.Kind.SHAFT.toString()), ratio));
            }
        }
        sites.addAll(shafts);
    }

    private static Optional<String> shaftOf(MachineDescription machine, MeasuringPoint point) {
        return point.shaft().or(() -> point.part().flatMap(part -> machine.part(part).shaft()));
    }

    /** A stage begins at its own shaft, or where the stage before it ends. */
    private static void addGears(List<Site> sites, MachineDescription machine) {
        double input = 1;
        for (GearStage stage : machine.train().gears()) {
            double before = input;
            Optional<Double> stated = stage.inputHertz().isEmpty() ? Optional.empty()
                    : machine.speed().map(main -> stage.inputHertz().getAsDouble() / main.hertz());
            input = stated.or(() -> stage.shaft().map(machine.train()::ratioOf)).orElse(before);
            sites.add(new Site(Site.Kind.GEAR, stage.id(), input));
            input *= stage.ratio();
        }
    }

    private static String ownerOf(CoupledParts coupling) {
        return coupling.first() + " to " + coupling.second();
    }

    /** Of a gear unit that is coupled at both ends the end that turns with the other part counts. */
    private static double ratioOf(MachineDescription machine, CoupledParts coupling) {
        List<Double> first = ratiosOf(machine, coupling.first());
        List<Double> second = ratiosOf(machine, coupling.second());
        return first.stream()
                .filter(ratio -> second.stream().anyMatch(other -> ShaftSpeeds.areSame(ratio, other))).findFirst()
                .orElse(first.get(0));
    }

    /** Of the part's shaft, then of its points; at least one. */
    private static List<Double> ratiosOf(MachineDescription machine, String part) {
        Stream<Double> own = machine.parts().stream().filter(one -> one.id().equals(part)).map(MachinePart::shaft)
                .map(shaft -> shaft.map(machine.train()::ratioOf).orElse(1.0));
        Stream<Double> points = machine.points().stream().filter(point -> point.part().filter(part::equals).isPresent())
                .map(machine::ratioAt);
        List<Double> ratios = Stream.concat(own, points).toList();
        return ratios.isEmpty() ? List.of(1.0) : ratios;
    }

    /** The coupling that a site is, if the machine has it. */
    static Optional<CoupledParts> coupling(MachineDescription machine, Site site) {
        return machine.train().couplings().stream().filter(one -> ownerOf(one).equals(site.owner())).findFirst();
    }

    /** How many couplings there are at the part of a point that turn with its shaft. */
    static long couplingsAt(MachineDescription machine, MeasuringPoint point) {
        return machine.train().couplings().stream().filter(one -> point.part().flatMap(one::coupledTo).isPresent())
                .filter(one -> ShaftSpeeds.areSame(ratioOf(machine, one), machine.ratioAt(point))).count();
    }

    /** Only where a part, or the machine, is an electric motor, or poles or bars of one are told. */
    static boolean hasMotor(MachineDescription machine) {
        return machine.train().motor().poles().isPresent() || machine.train().motor().rotorBars().isPresent()
                || isMotor(machine.machine()) || hasMotorPart(machine);
    }

    static boolean hasMotorPart(MachineDescription machine) {
        return machine.parts().stream().anyMatch(part -> isMotor(part.machine()));
    }

    static boolean isMotor(Machine machine) {
        return machine.kind().filter(kind -> kind == MachineKind.ELECTRIC_MOTOR).isPresent();
    }
}
