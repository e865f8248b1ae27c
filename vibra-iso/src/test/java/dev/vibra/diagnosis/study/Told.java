package dev.vibra.diagnosis.study;

import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.quantity.Detector;
import dev.vibra.machine.Arrangement;
import dev.vibra.machine.BearingData;
import dev.vibra.machine.Belt;
import dev.vibra.machine.CoupledParts;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.GearStage;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MachinePart;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.machine.Motor;
import dev.vibra.machine.RotorData;
import dev.vibra.measuring.Direction;
import dev.vibra.point.PartCriterion;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.Coupling;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;

/** What is told of a plant, and where it is measured. */
final class Told {
    private static final Direction[] DIRECTIONS = {Direction.HORIZONTAL, Direction.VERTICAL, Direction.AXIAL};
    private static final double OTHERWISE = 4.5e-3;

    private final Plant plant;
    private final Map<String, BearingGeometry> bearings;
    private final List<Point> points = new ArrayList<>();
    private final Support support;
    private final double nominal;

    /** A point: its housing, direction, sensor and whether it is one of the usual ones. */
    record Point(String id, Housing housing, int direction, Tap tap, boolean reversed, boolean usual) {}

    private Told(Plant plant, Map<String, BearingGeometry> bearings, SplittableRandom random) {
        this.plant = plant;
        this.bearings = bearings;
        support = random.nextDouble() < 0.7 ? Support.RIGID : Support.FLEXIBLE;
        nominal = Math.rint(60 * plant.motorHertz() * (1 + 0.002 * random.nextGaussian()));
    }

    static Told draw(Plant plant, Map<String, BearingGeometry> bearings, SplittableRandom random) {
        Told told = new Told(plant, bearings, random);
        int left = plant.housings.size();
        boolean fewer = left > 3 && random.nextDouble() < 0.3;
        for (Housing housing : plant.housings) {
            boolean skipped = fewer && housing.name().equals("M-NDE") && !bearings.containsKey(housing.name());
            boolean axial = random.nextDouble() < 0.65;
            for (int direction = 0; direction < 3; direction++) {
                boolean usual = !skipped && (direction < 2 ? random.nextDouble() < 0.95 : axial);
                told.points.add(told.point(housing, direction, usual, random));
            }
        }
        return told;
    }

    /** A sensor shows some of the motion across it, up to a twentieth, and is up to 4 % wrong. */
    private Point point(Housing housing, int direction, boolean usual, SplittableRandom random) {
        boolean reversed = random.nextDouble() < 0.3;
        Tap tap = housing.taps()[direction];
        for (int other = 0; other < 3; other++) {
            if (other != direction) {
                tap = tap.plus(random.nextDouble(-0.05, 0.05), housing.taps()[other]);
            }
        }
        tap = tap.times((reversed ? -1 : 1) * random.nextDouble(0.96, 1.04));
        return new Point(housing.name() + "-" + DIRECTIONS[direction].letter(), housing, direction, tap, reversed, usual);
    }

    List<Point> points(boolean everywhere) {
        List<Point> usual = points.stream().filter(one -> everywhere || one.usual()).toList();
        return usual.isEmpty() ? points : usual;
    }

    private MachineKind kind(String part) {
        return switch (part) {
            case "motor" -> plant.kind == Plant.Kind.FAN_ON_MOTOR ? MachineKind.FAN : MachineKind.ELECTRIC_MOTOR;
            case "pump" -> MachineKind.PUMP;
            case "fan" -> MachineKind.FAN;
            case "gearbox" -> MachineKind.GEARBOX;
            default -> MachineKind.BLOWER;
        };
    }

    private Machine machine(String part) {
        return Machine.of(kind(part)).withRatedPowerKilowatts(plant.kilowatts)
                .withShaftHeightMillimetres(1e3 * plant.height).withSupport(support);
    }

    MachineDescription describe(Session session, List<Double> naturalHertz) {
        String last = plant.parts.get(plant.parts.size() - 1);
        boolean overhung = plant.rotors.get(plant.bladed >= 0 ? plant.bladed : 0).overhung();
        MachineDescription machine = MachineDescription.of(plant.kind.name().toLowerCase(Locale.ROOT))
                .withMachine(machine(last).withSpeed(RotationSpeed.ofHertz(nominal / 60))).withTrain(train())
                .withRotor(RotorData.unknown().withArrangement(overhung ? Arrangement.OVERHUNG
                        : Arrangement.BETWEEN_BEARINGS));
        for (int i = 0; plant.parts.size() > 1 && i < plant.parts.size(); i++) {
            machine = machine.withPart(MachinePart.of(plant.parts.get(i), machine(plant.parts.get(i)))
                    .onShaft(plant.rotors.get(plant.firstRotorOf(i)).id()));
        }
        for (var bearing : bearings.entrySet()) {
            machine = machine.withBearing(new BearingData(bearing.getKey(), bearing.getValue(), RotatingRing.INNER));
        }
        for (Point point : points(session.everywhere())) {
            machine = machine.withPoint(point(point, session));
        }
        for (double hertz : session.natural() ? naturalHertz : List.<Double>of()) {
            machine = machine.withNaturalHertz(hertz);
        }
        for (var seen : session.observations().entrySet()) {
            machine = machine.withObservation(seen.getKey(), seen.getValue());
        }
        return machine;
    }

    private MeasuringPoint point(Point point, Session session) {
        Rotor rotor = plant.rotors.get(point.housing().rotor());
        MeasuringPoint told = MeasuringPoint.of(point.id()).withDirection(DIRECTIONS[point.direction()])
                .withHousing(point.housing().name()).withShaft(rotor.id());
        told = plant.parts.size() > 1 ? told.withPart(plant.parts.get(rotor.part())) : told;
        told = bearings.containsKey(point.housing().name()) ? told.withBearing(point.housing().name()) : told;
        told = session.simultaneous() ? told.recordedWith("set") : told;
        return session.axes() ? told.withPositiveAxis(axis(point, rotor)) : told;
    }

    /** The motor stands before the coupling, all else behind it; degrees are counted from the level. */
    private static String axis(Point point, Rotor rotor) {
        return switch (point.direction()) {
            case 0 -> point.reversed() ? "180" : "0";
            case 1 -> point.reversed() ? "270" : "90";
            default -> rotor.part() == 0 == point.reversed() ? "away from the coupling" : "towards the coupling";
        };
    }

    private DriveTrain train() {
        DriveTrain train = DriveTrain.plain();
        for (Rotor rotor : plant.rotors) {
            train = train.withShaft(rotor.id(), rotor.ratio());
        }
        if (plant.coupled) {
            train = train.withCoupling(new CoupledParts("motor", plant.parts.get(1), Coupling.FLEXIBLE));
        }
        for (Plant.Mesh mesh : plant.meshes) {
            train = train.withGear(GearStage.of(mesh.id(), List.of(mesh.drivingTeeth(), mesh.drivenTeeth()))
                    .drivenBy(plant.rotors.get(mesh.driving()).id()));
        }
        if (plant.drive != null) {
            train = train.withBelt(Belt.of("belt", plant.drive.length(), plant.drive.driving(), plant.drive.driven())
                    .drivenBy("motor"));
        }
        if (plant.bladed >= 0) {
            train = train.withBlades(plant.blades).withBladesOn(plant.rotors.get(plant.bladed).id());
            train = plant.guideVanes > 1 ? train.withGuideVanes(plant.guideVanes) : train;
        }
        return train.withMotor(Motor.unknown().withPoles(plant.poles)).withLineHertz(plant.lineHertz);
    }

    /** Boundary B/C of rms velocity at each housing, by the criterion that the library chooses. */
    double[] limits() {
        MachineDescription machine = describe(new Session(false, false, true, 1, false, false, Map.of()), List.of());
        List<PartCriterion> criteria = PartCriterion.of(machine);
        return plant.housings.stream().mapToDouble(housing -> {
            String part = plant.parts.get(plant.rotors.get(housing.rotor()).part());
            PartCriterion own = criteria.stream().filter(one -> one.part().filter(part::equals).isPresent()).findFirst()
                    .orElse(criteria.get(0));
            return own.choice().criteria().stream().filter(Told::isRmsVelocity).mapToDouble(Told::boundary).min()
                    .orElse(OTHERWISE);
        }).toArray();
    }

    private static boolean isRmsVelocity(Criterion criterion) {
        return criterion.quantity() == Quantity.VELOCITY && criterion.detector() == Detector.RMS
                && criterion.limits().size() > 1;
    }

    private static double boundary(Criterion criterion) {
        return criterion.limits().get(1) * criterion.unit().toSi();
    }
}
