package dev.vibra.symptom;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.vibra.machine.BearingData;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.machine.Belt;
import dev.vibra.machine.CoupledParts;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.GearStage;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MachinePart;
import dev.vibra.machine.Motor;
import dev.vibra.severity.Coupling;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Where faults can sit, at which speed, and which points speak of it. */
class SitesTest {
    private static final double RATIO = 17 / 53.0;

    private static String sites(MachineDescription machine) {
        return String.join(", ", Sites.of(machine).stream().map(site -> site.kind() + "/" + site.owner() + "/"
                + String.format(Locale.ROOT, "%.3f", site.ratio())).toList());
    }

    private static MachinePart part(String id, MachineKind kind) {
        return MachinePart.of(id, Machine.of(kind));
    }

    /** Motor at 1, gear unit in at 1 and out at 17/53, fan at 17/53; the speed of the machine is the motor's. */
    private static MachineDescription gearUnit() {
        return MachineDescription.of("drive").withTrain(DriveTrain.plain().withShaft("output", RATIO)
                .withGear(GearStage.of("stage 1", List.of(17, 53))).withBlades(8).withBladesOn("output")
                .withCoupling(new CoupledParts("motor", "gear", Coupling.FLEXIBLE))
                .withCoupling(new CoupledParts("gear", "fan", Coupling.FLEXIBLE)))
                .withPart(part("motor", MachineKind.ELECTRIC_MOTOR)).withPart(part("gear", MachineKind.GEARBOX))
                .withPart(part("fan", MachineKind.FAN).onShaft("output"))
                .withPoint(Bench.point("M-H").withPart("motor")).withPoint(Bench.point("GI-H").withPart("gear"))
                .withPoint(Bench.point("GO-H").withPart("gear").withShaft("output"))
                .withPoint(Bench.point("F-H").withPart("fan"));
    }

    @Test
    void aGearUnitIsCoupledAtTwoSpeeds() {
        assertEquals("machine/machine/1.000, shaft/shaft/1.000, shaft/output/0.321, coupling/motor to gear/1.000,"
                + " coupling/gear to fan/0.321, motor/motor/1.000, gear/stage 1/1.000, blades/blades/0.321",
                sites(gearUnit()));
    }

    /** The speed of the machine is the fan's; the belt drives it from a motor that turns faster. */
    @Test
    void aMotorMayTurnAtAnotherSpeedThanTheMainShaft() {
        MachineDescription fan = MachineDescription.of("fan").withTrain(DriveTrain.plain().withShaft("motor shaft", 1.5)
                .withBelt(Belt.of("belt", 2.4, 0.2, 0.3).drivenBy("motor shaft")))
                .withPart(part("motor", MachineKind.ELECTRIC_MOTOR).onShaft("motor shaft"))
                .withPart(part("fan", MachineKind.FAN))
                .withBearing(new BearingData("M-DE", BearingGeometry.of(9, 7.94, 39.04, 0), RotatingRing.INNER))
                .withPoint(Bench.point("F-H").withPart("fan"))
                .withPoint(Bench.point("M-H").withPart("motor").withBearing("M-DE"));
        assertEquals("machine/machine/1.000, shaft/shaft/1.000, shaft/motor shaft/1.500, motor/motor/1.500,"
                + " belt/belt/1.500, bearing/M-DE/1.500", sites(fan));
    }

    @Test
    void stagesFollowEachOther() {
        DriveTrain train = DriveTrain.plain().withMotor(Motor.unknown().withPoles(4))
                .withGear(GearStage.of("stage 1", List.of(17, 53))).withGear(GearStage.of("stage 2", List.of(19, 61)));
        assertEquals("machine/machine/1.000, motor/motor/1.000, gear/stage 1/1.000, gear/stage 2/0.321",
                sites(MachineDescription.of("drive").withTrain(train)));
    }

    @Test
    void eachSiteHasItsPoints() {
        MachineDescription machine = gearUnit();
        List<String> counted = Sites.of(machine).stream().map(site -> site.name() + ": " + String.join(" ",
                machine.points().stream().filter(point -> SitePoints.counts(machine, site, point))
                        .map(point -> point.id()).toList())).toList();
        assertEquals(List.of("machine: M-H GI-H GO-H F-H", "shaft: M-H GI-H", "shaft output: GO-H F-H",
                "coupling motor to gear: M-H GI-H", "coupling gear to fan: GO-H F-H", "motor: M-H",
                "gear stage 1: M-H GI-H GO-H F-H", "blades: M-H GI-H GO-H F-H"), counted);
    }
}
