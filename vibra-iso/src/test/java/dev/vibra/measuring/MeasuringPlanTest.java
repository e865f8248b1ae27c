package dev.vibra.measuring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.measuring.PlannedPoint.Need;
import java.util.HashSet;
import java.util.List;
import org.junit.jupiter.api.Test;

class MeasuringPlanTest {
    private static final MachineLayout PUMP = MachineLayout.of(Orientation.HORIZONTAL)
            .withPart("motor").withBearing(BearingType.ROLLING).withBearing(BearingType.ROLLING)
            .withPart("pump").withBearing(BearingType.ROLLING).withThrustBearing(BearingType.ROLLING);

    private static String ids(MachineLayout layout, Need need) {
        return String.join(" ", MeasuringPlan.of(layout).points(need).stream().map(PlannedPoint::id).toList());
    }

    @Test
    void coupledPump() {
        assertEquals("1H 1V 1A 2H 2V 2A 3H 3V 3A 4H 4V 4A", MeasuringPlan.of(PUMP).toString());
        assertEquals("1H 1V 2H 2V 2A 3H 3V 4H 4V 4A", ids(PUMP, Need.ALWAYS));
        assertEquals("1A 3A", ids(PUMP, Need.FOR_DIAGNOSIS));
        assertEquals("", ids(PUMP, Need.WHERE_FITTED));
    }

    @Test
    void withoutThrustBearingTheOneBesideTheCouplingServes() {
        MachineLayout plain = MachineLayout.of(Orientation.HORIZONTAL)
                .withPart("motor").withBearing(BearingType.ROLLING).withBearing(BearingType.ROLLING)
                .withPart("fan").withBearing(BearingType.ROLLING).withBearing(BearingType.ROLLING);
        assertEquals("1H 1V 2H 2V 2A 3H 3V 3A 4H 4V", ids(plain, Need.ALWAYS));
        MachineLayout overhung = plain.withOverhungRotor();
        assertEquals("1H 1V 2H 2V 2A 3H 3V 4H 4V 4A", ids(overhung, Need.ALWAYS));
        assertTrue(MeasuringPlan.of(overhung).points().get(11).toString().startsWith(
                "4A fan, axial (always): unbalance of the overhung rotor"));
        MachineLayout alone = MachineLayout.of(Orientation.HORIZONTAL).withPart("motor")
                .withBearing(BearingType.ROLLING).withBearing(BearingType.ROLLING);
        assertEquals("1H 1V 2H 2V 2A", ids(alone, Need.ALWAYS));
    }

    /** The impeller of a close-coupled pump sits on the shaft of the motor, whose bearings carry it. */
    @Test
    void aRotorWithoutBearingsIsCarriedByThePartBefore() {
        MachineLayout motor = MachineLayout.of(Orientation.HORIZONTAL).withPart("motor")
                .withBearing(BearingType.ROLLING).withBearing(BearingType.ROLLING);
        MachineLayout pump = motor.withPart("pump", Link.COMMON_SHAFT).withOverhungRotor();
        assertEquals("2A motor, axial (always): unbalance of the overhung rotor, misalignment, bent shaft",
                MeasuringPlan.of(pump).points().get(5).toString());
        assertEquals("2A motor, axial (always): misalignment, bent shaft, thrust",
                MeasuringPlan.of(motor).points().get(5).toString());
        assertEquals("horizontal: motor; 1 bearing", MachineLayout.of(Orientation.HORIZONTAL).withPart("motor")
                .withBearing(BearingType.ROLLING).toString());
    }

    @Test
    void beltAddsItsDirectionOnBothSides() {
        MachineLayout fan = MachineLayout.of(Orientation.HORIZONTAL)
                .withPart("motor").withBearing(BearingType.ROLLING).withBearing(BearingType.ROLLING)
                .withPart("fan", Link.BELT).withBearing(BearingType.ROLLING).withBearing(BearingType.ROLLING);
        assertEquals("1A 1B 2B 3B 4A 4B", ids(fan, Need.FOR_DIAGNOSIS));
        MachineLayout three = fan.withPart("brake").withBearing(BearingType.ROLLING);
        assertTrue(MeasuringPlan.of(three).points().stream().noneMatch(point -> point.id().equals("5B")));
    }

    @Test
    void fluidFilmAddsProbesAndUprightShaftsHaveTheirOwnDirections() {
        MachineLayout pump = MachineLayout.of(Orientation.VERTICAL).withPart("motor")
                .withThrustBearing(BearingType.FLUID_FILM).withBearing(BearingType.ROLLING);
        assertEquals("1R 1S 1A 1X 1Y 2R 2S 2A", MeasuringPlan.of(pump).toString());
        assertEquals("1X 1Y", ids(pump, Need.WHERE_FITTED));
        assertEquals("2A", ids(pump, Need.FOR_DIAGNOSIS));
        assertEquals("vertical: motor; 2 bearings", pump.toString());
        List<PlannedPoint> upright = MeasuringPlan.of(pump).points();
        assertTrue(upright.get(0).purpose().contains("top of an upright machine"));
        assertTrue(upright.get(1).purpose().contains("pull of piping"));
        List<PlannedPoint> lying = MeasuringPlan.of(PUMP).points();
        assertTrue(lying.get(0).purpose().contains("softer direction"));
        assertTrue(lying.get(1).purpose().contains("stiffer direction"));
    }

    @Test
    void notesFollowTheMachine() {
        assertEquals(4, MeasuringPlan.of(PUMP).notes().size());
        MachineLayout geared = PUMP.withPart("blower", Link.GEAR).withBearing(BearingType.FLUID_FILM);
        assertEquals(5, MeasuringPlan.of(geared).notes().size());
        MachineLayout turbine = MachineLayout.of(Orientation.HORIZONTAL).withPart("turbine")
                .withBearing(BearingType.FLUID_FILM);
        assertEquals(3, MeasuringPlan.of(turbine).notes().size());
        String text = MeasuringPlan.of(PUMP).describe();
        assertTrue(text.startsWith("horizontal: motor, pump; 4 bearings; bearings counted from the free end of the"
                + " driver,"
                + " sides as seen from there\n  1H motor, horizontal (always): unbalance"), text);
        assertTrue(text.contains("\nnote: note speed, load"), text);
        for (String caution : WorkCautions.list()) {
            assertTrue(text.contains("\ncaution: " + caution), caution);
        }
        assertTrue(text.contains("local codes"));
    }

    @Test
    void idsAreUniqueAndComplete() {
        List<PlannedPoint> points = MeasuringPlan.of(PUMP).points();
        assertEquals(points.size(), new HashSet<>(points.stream().map(PlannedPoint::id).toList()).size());
        HashSet<String> letters = new HashSet<>();
        for (Direction direction : Direction.values()) {
            assertTrue(letters.add(direction.letter()), direction::toString);
        }
        assertEquals("shaft, 45° to the right of the reference", Direction.PROBE_X.toString());
    }

    @Test
    void badInputIsNamed() {
        MachineLayout empty = MachineLayout.of(Orientation.HORIZONTAL);
        assertEquals("a part must be added first", assertThrows(IllegalStateException.class,
                () -> empty.withBearing(BearingType.ROLLING)).getMessage());
        assertThrows(IllegalStateException.class, empty::withOverhungRotor);
        assertThrows(IllegalStateException.class, () -> empty.withThrustBearing(BearingType.ROLLING));
        assertEquals("layout must have a bearing: horizontal: motor; 0 bearings", assertThrows(
                IllegalArgumentException.class, () -> MeasuringPlan.of(empty.withPart("motor"))).getMessage());
        assertEquals("name must not be taken: motor", assertThrows(IllegalArgumentException.class,
                () -> PUMP.withPart("motor")).getMessage());
        assertEquals("name must not be blank", assertThrows(IllegalArgumentException.class,
                () -> PUMP.withPart(" ")).getMessage());
        assertThrows(UnsupportedOperationException.class, () -> MeasuringPlan.of(PUMP).points().clear());
    }

    @Test
    void comparesByLayout() {
        MachineLayout same = MachineLayout.of(Orientation.HORIZONTAL)
                .withPart("motor").withBearing(BearingType.ROLLING).withBearing(BearingType.ROLLING)
                .withPart("pump").withBearing(BearingType.ROLLING).withThrustBearing(BearingType.ROLLING);
        assertEquals(PUMP, same);
        assertEquals(PUMP.hashCode(), same.hashCode());
        assertEquals(MeasuringPlan.of(PUMP), MeasuringPlan.of(same));
        assertEquals(MeasuringPlan.of(PUMP).hashCode(), MeasuringPlan.of(same).hashCode());
        assertNotEquals(PUMP, same.withOverhungRotor());
        assertNotEquals(MeasuringPlan.of(PUMP), MeasuringPlan.of(same.withOverhungRotor()));
        assertEquals(List.of("motor", "pump"), PUMP.partNames());
        assertEquals(Orientation.HORIZONTAL, PUMP.orientation());
    }
}
