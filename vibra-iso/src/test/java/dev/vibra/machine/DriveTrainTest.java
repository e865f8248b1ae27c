package dev.vibra.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Rates by the arithmetic of teeth, pulleys and ratios: mesh {@code z·f}, belt {@code π·d·f/L}. */
class DriveTrainTest {
    private static double rate(List<Rate> rates, Rate.Kind kind, String owner) {
        return rates.stream().filter(rate -> rate.kind() == kind && rate.owner().equals(owner)).findFirst()
                .orElseThrow(() -> new AssertionError(kind + " " + owner + " in " + rates)).hertz();
    }

    @Test
    void twoStagesFollowInTheOrderOfThePowerFlow() {
        DriveTrain train = DriveTrain.plain().withGear(GearStage.of("stage 1", List.of(23, 71)))
                .withGear(GearStage.of("stage 2", List.of(19, 88)));
        List<Rate> rates = train.ratesAt(24.667);
        assertEquals(23 * 24.667, rate(rates, Rate.Kind.GEAR_MESH, "stage 1"), 1e-9);
        double middle = 24.667 * 23 / 71;
        assertEquals(middle, rate(rates, Rate.Kind.SHAFT, "output of stage 1"), 1e-9);
        assertEquals(19 * middle, rate(rates, Rate.Kind.GEAR_MESH, "stage 2"), 1e-9);
        assertEquals(middle * 19 / 88, rate(rates, Rate.Kind.SHAFT, "output of stage 2"), 1e-9);
        assertEquals(6 - 1, rates.size(), "shaft, two meshes, two outputs; the input of a stage is a shaft already");
    }

    @Test
    void anIdlerMeshesAtTheSameRateAndChangesNoRatio() {
        List<Rate> rates = DriveTrain.plain().withGear(GearStage.of("drive", List.of(20, 35, 40))).ratesAt(10);
        assertEquals(200, rate(rates, Rate.Kind.GEAR_MESH, "drive"), 1e-9);
        assertEquals(200.0 / 35, rate(rates, Rate.Kind.SHAFT, "idler of drive"), 1e-9);
        assertEquals(5, rate(rates, Rate.Kind.SHAFT, "output of drive"), 1e-9);
    }

    @Test
    void aBeltGoesRoundByItsLengthAndDrivesByItsPulleys() {
        DriveTrain train = DriveTrain.plain().withShaft("motor", 1.5)
                .withBelt(Belt.of("belt", 2.4, 0.2, 0.3).drivenBy("motor"));
        List<Rate> rates = train.ratesAt(16);
        assertEquals(Math.PI * 0.2 * 24 / 2.4, rate(rates, Rate.Kind.BELT, "belt"), 1e-9);
        assertEquals(24, rate(rates, Rate.Kind.SHAFT, "motor"), 1e-9);
        assertTrue(rates.stream().noneMatch(one -> one.owner().startsWith("driven by")),
                "24 Hz over 200/300 mm is the main shaft again: " + rates);
    }

    @Test
    void bladesSitOnTheShaftStatedAndForcesOfTheLineNeedNoRotation() {
        DriveTrain train = DriveTrain.plain().withShaft("fan", 0.5).withBlades(8).withBladesOn("fan").withLineHertz(50);
        List<Rate> rates = train.ratesAt(25);
        assertEquals(100, rate(rates, Rate.Kind.BLADE_PASSING, "blade passing"), 1e-9);
        assertEquals(100, rate(rates, Rate.Kind.TWICE_LINE, "twice the line frequency"), 1e-9);
        assertEquals(false, Rate.Kind.TWICE_LINE.isMechanical());
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> DriveTrain.plain().withBladesOn("none"));
        assertThrows(IllegalArgumentException.class, () -> DriveTrain.plain().withShaft("a", 1).withShaft("a", 2));
        assertThrows(IllegalArgumentException.class, () -> DriveTrain.plain().withShaft("a", Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> GearStage.of("g", List.of(20)));
        assertThrows(IllegalArgumentException.class, () -> GearStage.of("g", List.of(20, 0)));
        assertThrows(IllegalArgumentException.class, () -> Belt.of("b", 0.9, 0.2, 0.3), "shorter than once around");
        assertThrows(IllegalArgumentException.class, () -> Motor.unknown().withPoles(3));
        assertThrows(IllegalArgumentException.class, () -> RotorData.unknown().withMassKilograms(-5));
    }
}
