package dev.vibra.simulation;

import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.machine.Arrangement;
import dev.vibra.machine.BearingData;
import dev.vibra.machine.Belt;
import dev.vibra.machine.CoupledParts;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.GearStage;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MachinePart;
import dev.vibra.machine.Motor;
import dev.vibra.machine.RotorData;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.Coupling;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import dev.vibra.simulation.MachinePlan.Form;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Draws a plan: all that has a number is random within what machines of that form have (common practice, no
 * source).
 */
final class PlanDraft {
    private static final String MOTOR = "motor";
    /** Frames of motors: power to this in kW, and shaft height in mm above which it begins (order of size only). */
    private static final double[][] FRAMES = {{22, 180}, {45, 225}, {90, 280}, {160, 315}, {1000, 355}};

    private final Form form;
    private final Draws draws;
    private final List<PlanParts.Housing> housings = new ArrayList<>();
    private final List<PlanParts.Rotor> rotors = new ArrayList<>();
    private final List<PlanParts.Link> links = new ArrayList<>();
    private final List<PlanParts.Stage> stages = new ArrayList<>();
    private final Map<String, Machine> parts = new LinkedHashMap<>();
    private final Map<String, String> shafts = new LinkedHashMap<>();
    private final Map<Integer, BearingGeometry> bearings = new LinkedHashMap<>();
    private final double kilowatts;
    private final Support support;
    private final int poles;
    private final double plateLine;
    private final PlanParts.Supply supply;
    private DriveTrain train = DriveTrain.plain();
    private PlanParts.Drive belt;
    private PlanParts.Blades blades;
    private boolean motorIsTold = true;
    private boolean overhung;

    PlanDraft(Form form, Draws draws) {
        this.form = form;
        this.draws = draws;
        kilowatts = Math.rint(draws.logUniform(18, 400));
        support = draws.chance(0.6) ? Support.RIGID : Support.FLEXIBLE;
        poles = draws.pick(List.of(2, 2, 4, 4, 4, 4, 6, 6, 8));
        plateLine = draws.chance(0.75) ? 50 : 60;
        double load = draws.uniform(0.4, 1);
        double line = plateLine * draws.normal(1, 0.0003);
        double slip = load * draws.logUniform(0.006, 0.025);
        double main = (1 - slip) * line / (poles / 2);
        supply = new PlanParts.Supply(main, line, 2 * slip * line, load);
    }

    MachinePlan plan() {
        addPart(MOTOR, MachineKind.ELECTRIC_MOTOR, "M", "shaft", 1, draws.uniform(0.4, 0.6), true);
        switch (form) {
            case MOTOR -> { }
            case DIRECT_FAN -> addDirectFan();
            case PUMP_SET -> addDriven("pump", MachineKind.PUMP, "P", draws.chance(0.6), draws.between(5, 8));
            case COUPLED_FAN -> addDriven("fan", MachineKind.FAN, "F", draws.chance(0.5), draws.between(6, 14));
            case BLOWER -> addDriven("blower", draws.chance(0.5) ? MachineKind.BLOWER : MachineKind.COMPRESSOR, "B",
                    false,
                    draws.between(9, 19));
            case BELT_FAN -> addBeltFan();
            case GEAR_UNIT, TWO_STAGE_GEAR_UNIT -> addGears(form == Form.GEAR_UNIT ? 1 : 2);
        }
        tellTrain();
        Structure structure = new StructureDraft(draws.split(), housings, rotors, supply.mainHertz(),
                support).structure();
        PlanPoints points = new PlanPoints(draws.split(), housings, rotors, links, belt, bearings.keySet());
        MachineDescription description = describe(points);
        return new MachinePlan(new PlanParts(form, List.copyOf(housings), List.copyOf(rotors), List.copyOf(links),
                List.copyOf(stages), belt, blades, supply, sampling(), points.drawn(description),
                Collections.unmodifiableMap(points.measuredBearings(bearings)),
                structure, motorIsTold, description));
    }

    private PlanParts.Sampling sampling() {
        double hertz = draws.pick(List.of(6400.0, 8192.0, 10_240.0, 12_800.0));
        double seconds = Math.max(draws.uniform(5, 9), Math.min(10, 4.5 / supply.polePassHertz()));
        return new PlanParts.Sampling(hertz, (int) Math.rint(seconds * hertz));
    }

    private void addPart(String id, MachineKind kind, String prefix, String owner, double ratio, double plane,
            boolean driver) {
        Machine machine = Machine.of(kind).withRatedPowerKilowatts(kilowatts).withSupport(support);
        if (kind == MachineKind.ELECTRIC_MOTOR) {
            for (double[] frame : FRAMES) {
                if (kilowatts <= frame[0]) {
                    machine = machine.withShaftHeightMillimetres(frame[1]);
                    break;
                }
            }
        }
        parts.put(id, machine);
        addRotor(id, prefix, owner, ratio, plane, driver);
    }

    private void addRotor(String part, String prefix, String owner, double ratio, double plane, boolean driver) {
        int at = housings.size();
        housings.add(new PlanParts.Housing(prefix + (driver ? "-NDE" : "-DE"), part));
        housings.add(new PlanParts.Housing(prefix + (driver ? "-DE" : "-NDE"), part));
        rotors.add(new PlanParts.Rotor(owner, ratio, at, at + 1, plane));
        for (int housing = at; housing < at + 2; housing++) {
            if (draws.chance(0.7)) {
                bearings.put(housing, geometry());
            }
        }
    }

    private BearingGeometry geometry() {
        int elements = draws.between(8, 15);
        double pitch = Math.rint(draws.uniform(50, 160));
        double most = 0.9 * pitch * StrictMath.sin(Math.PI / elements);
        double contact = draws.chance(0.8) ? 0 : draws.pick(List.of(15.0, 25.0, 40.0));
        return BearingGeometry.of(elements, Math.rint(10 * most * draws.uniform(0.75, 1)) / 10, pitch, contact);
    }

    private double wheelPlane(boolean beyond) {
        overhung = beyond;
        return beyond ? draws.uniform(1.2, 1.6) : draws.uniform(0.35, 0.65);
    }

    private void addDirectFan() {
        parts.clear();
        parts.put("fan", Machine.of(MachineKind.FAN).withRatedPowerKilowatts(kilowatts).withSupport(support));
        PlanParts.Rotor motor = rotors.remove(0);
        rotors.add(new PlanParts.Rotor(motor.owner(), 1, motor.first(), motor.second(), wheelPlane(true)));
        addBlades(0, draws.between(6, 14));
    }

    private void addBlades(int rotor, int number) {
        // Not everybody knows the number of blades: then it is no site of faults.
        if (draws.chance(0.93)) {
            blades = new PlanParts.Blades(rotor, number);
        }
    }

    private void addDriven(String id, MachineKind kind, String prefix, boolean beyond, int vanes) {
        addPart(id, kind, prefix, "shaft", 1, wheelPlane(beyond), false);
        links.add(new PlanParts.Link(MOTOR + " to " + id, 1, 2, 0, 1));
        train = train.withCoupling(new CoupledParts(MOTOR, id, Coupling.FLEXIBLE));
        addBlades(1, vanes);
    }

    /** The belt is twice the distance of the shafts and half of each pulley's circumference long, nearly. */
    private void addBeltFan() {
        double driving = Math.rint(draws.uniform(160, 315)) / 1e3;
        double driven = driving / draws.uniform(slowest(), Math.max(1.4, slowest() + 0.2));
        double ratio = driving / driven;
        double apart = Math.max(draws.uniform(0.6, 1.5), 0.75 * (driving + driven));
        double length = Math.rint(1e3 * (2 * apart + Math.PI * (driving + driven) / 2)) / 1e3;
        Belt made = Belt.of("belt", length, driving, driven);
        train = train.withShaft("fan shaft", ratio).withBelt(made);
        addPart("fan", MachineKind.FAN, "F", "fan shaft", ratio, wheelPlane(draws.chance(0.5)), false);
        shafts.put("fan", "fan shaft");
        belt = new PlanParts.Drive("belt", made.hertz(1), draws.uniform(-0.6, 0.6), 1, 2, 0, 1);
        addBlades(1, draws.between(6, 14));
    }

    /**
     * Ratio at which a shaft would turn at 10.8 Hz: slower ones lie outside the usual band, and most recordings of them
     * would be refused. One machine in ten has one all the same.
     */
    private double slowest() {
        return draws.chance(0.1) ? 0.3 : Math.min(1, 10.8 / supply.mainHertz());
    }

    private void addGears(int number) {
        addPart("gear unit", MachineKind.GEARBOX, "G1", "shaft", 1, draws.uniform(0.3, 0.7), false);
        links.add(new PlanParts.Link("motor to gear unit", 1, 2, 0, 1));
        train = train.withCoupling(new CoupledParts(MOTOR, "gear unit", Coupling.FLEXIBLE));
        double ratio = 1;
        for (int i = 1; i <= number; i++) {
            int small = draws.between(17, 29);
            double most = StrictMath.pow(slowest(), -1.0 / number);
            boolean up = most < 1.4 || number == 1 && draws.chance(0.2);
            int large = (int) Math.ceil(small * draws.uniform(1.25, up ? 3 : most));
            int before = up ? large : small;
            int behind = up ? small : large;
            ratio *= (double) before / behind;
            String owner = i == number ? "output" : "intermediate";
            train = train.withShaft(owner, ratio).withGear(GearStage.of("stage " + i, List.of(before, behind)));
            addRotor("gear unit", "G" + (i + 1), owner, ratio, draws.uniform(0.3, 0.7), true);
            stages.add(new PlanParts.Stage("stage " + i, i, i + 1, before, behind));
        }
    }

    /** What of the train a user tells. */
    private void tellTrain() {
        boolean told = draws.chance(0.92);
        train = told ? train.withMotor(Motor.unknown().withPoles(poles)) : train;
        train = draws.chance(0.95) ? train.withLineHertz(plateLine) : train;
        motorIsTold = told || parts.containsKey(MOTOR);
        if (blades != null) {
            train = train.withBlades(blades.number());
            String shaft = rotors.get(blades.rotor()).owner();
            train = "shaft".equals(shaft) ? train : train.withBladesOn(shaft);
        }
    }

    private MachineDescription describe(PlanPoints points) {
        RotationSpeed plate = RotationSpeed.ofHertz(supply.mainHertz() * draws.normal(1, 0.0015));
        boolean single = parts.size() == 1;
        Machine whole = single ? parts.values().iterator().next() : Machine.unknown().withSupport(support);
        MachineDescription description = MachineDescription.of(form.name().toLowerCase(Locale.ROOT)
                .replace('_', ' ')).withMachine(whole.withSpeed(plate)).withTrain(train);
        if (form != Form.MOTOR) {
            description = description.withRotor(RotorData.unknown().withArrangement(overhung ? Arrangement.OVERHUNG
                    : Arrangement.BETWEEN_BEARINGS));
        }
        for (Map.Entry<String, Machine> part : single ? Map.<String, Machine>of().entrySet() : parts.entrySet()) {
            MachinePart made = MachinePart.of(part.getKey(), part.getValue());
            String shaft = shafts.get(part.getKey());
            description = description.withPart(shaft == null ? made : made.onShaft(shaft));
        }
        for (Map.Entry<Integer, BearingGeometry> one : points.measuredBearings(bearings).entrySet()) {
            description = description.withBearing(new BearingData(housings.get(one.getKey()).id(), one.getValue(),
                    RotatingRing.INNER));
        }
        return points.addTo(description, single, rotors);
    }
}
