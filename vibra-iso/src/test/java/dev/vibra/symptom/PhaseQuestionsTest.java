package dev.vibra.symptom;

import static dev.vibra.symptom.Bench.fan;
import static dev.vibra.symptom.Bench.orders;
import static dev.vibra.symptom.Bench.turned;
import static dev.vibra.symptom.HousingQuestionsTest.pumpSet;
import static dev.vibra.symptom.Site.Kind.COUPLING;
import static dev.vibra.symptom.Site.Kind.SHAFT;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.vibra.machine.MeasuringPoint;
import org.junit.jupiter.api.Test;

/** Phases are those of the sines that the recordings are made of, begun at one instant. */
class PhaseQuestionsTest {
    private static final String TOWARDS = "towards the coupling";
    private static final String AWAY = "away from the coupling";

    private static Bench crossed(double degrees) {
        return Bench.of(fan()).with("B-H", turned(30)).with("B-V", turned(30 + degrees));
    }

    @Test
    void aQuarterTurnEitherWayIsOneAndNothingOrHalfATurnIsStraight() {
        for (double degrees : new double[] {90, -90, 65, 115, 270}) {
            crossed(degrees).seen("phase-directions 1 90 30", SHAFT, "B-H", "B-V");
            crossed(degrees).notSeen("phase-directions 1 0 30", SHAFT);
        }
        for (double degrees : new double[] {0, 180, -25, 205}) {
            crossed(degrees).seen("phase-directions 1 0 30", SHAFT, "B-H", "B-V");
            crossed(degrees).notSeen("phase-directions 1 90 30", SHAFT);
        }
        assertEquals("B-H and B-V: 1\u00d7 is 75\u00b0 apart",
                crossed(75).ask("phase-directions 1 90 30", SHAFT).words());
    }

    @Test
    void aPhaseNeedsOneClockAndALineThatMatters() {
        Bench.of(fan()).with("B-H", turned(0)).with(Bench.point("B-V").recordedWith("later"), turned(90))
                .notMeasured("phase-directions 1 90 30", SHAFT);
        Bench.of(fan()).with("B-H", turned(0)).with("B-V", orders(0.05, 2))
                .notMeasured("phase-directions 1 90 30", SHAFT);
        Bench.of(fan()).with("B-H", turned(0)).with("C-V", turned(90)).notMeasured("phase-directions 1 90 30", SHAFT);
    }

    @Test
    void halfOfTheHousingsDecide() {
        crossed(90).with("C-H", turned(0)).with("C-V", turned(0)).seen("phase-directions 1 90 30", SHAFT, "B-H", "B-V");
        crossed(90).with("C-H", turned(0)).with("C-V", turned(0)).with("D-H", turned(0)).with("D-V", turned(0))
                .notSeen("phase-directions 1 90 30", SHAFT);
    }

    private static Bench ends(String id, String one, String other, double degrees) {
        return Bench.of(fan()).with(Bench.point("DE-" + id).withPositiveAxis(one), turned(0))
                .with(Bench.point("NDE-" + id).withPositiveAxis(other), turned(degrees));
    }

    /** A shaft that tilts moves its ends against each other; a sensor turned over reads the negative. */
    @Test
    void theEndsOfARotorAreOpposedInSpaceNotInTheReading() {
        String asks = "phase-ends 1 radial 60";
        ends("H", "0", "0", 180).seen(asks, SHAFT, "DE-H", "NDE-H");
        ends("H", "0", "0", 0).notSeen(asks, SHAFT);
        ends("H", "0", "180", 0).seen(asks, SHAFT, "DE-H", "NDE-H");
        ends("H", "0", "-180", 180).notSeen(asks, SHAFT);
        ends("H", "0", "0", 125).seen(asks, SHAFT, "DE-H", "NDE-H");
        ends("H", "0", "0", 115).notSeen(asks, SHAFT);
        ends("H", "0", "45", 180).notMeasured(asks, SHAFT);
        Bench.of(fan()).with("DE-H", turned(0)).with("NDE-H", turned(180)).notMeasured(asks, SHAFT);
    }

    @Test
    void alongTheShaftOfOnePartTheCouplingIsOneWay() {
        String asks = "phase-ends 1 axial 60";
        ends("A", TOWARDS, TOWARDS, 180).seen(asks, SHAFT, "DE-A", "NDE-A");
        ends("A", TOWARDS, TOWARDS, 0).notSeen(asks, SHAFT);
        ends("A", TOWARDS, AWAY, 0).seen(asks, SHAFT, "DE-A", "NDE-A");
        ends("A", TOWARDS, AWAY, 180).notSeen(asks, SHAFT);
        ends("A", TOWARDS, "0", 180).notMeasured(asks, SHAFT);
        ends("A", "towards the belt", "away from the belt", 0).seen(asks, SHAFT, "DE-A", "NDE-A");
    }

    private static MeasuringPoint at(String id, String part, String axis) {
        return Bench.point(id).withPart(part).withPositiveAxis(axis);
    }

    /** The coupling lies to the right of the motor and to the left of the pump; to the right is positive in space. */
    private static Bench across(double motor, double pump, boolean motorTowards, boolean pumpTowards) {
        return Bench.of(pumpSet())
                .with(at("M-DE-A", "motor", motorTowards ? TOWARDS : AWAY), turned(motor + (motorTowards ? 0 : 180)))
                .with(at("P-DE-A", "pump", pumpTowards ? TOWARDS : AWAY), turned(pump + (pumpTowards ? 180 : 0)));
    }

    @Test
    void aBodyThatMovesAlongItsShaftAsAWholeIsNotOpposedAcrossTheCoupling() {
        for (int axes = 0; axes < 4; axes++) {
            across(20, 20, axes % 2 == 0, axes / 2 == 0).notSeen("phase-coupling 1 axial 60", COUPLING);
        }
    }

    @Test
    void halvesThatMoveAgainstEachOtherAreOpposedAcrossTheCoupling() {
        for (int axes = 0; axes < 4; axes++) {
            across(20, 200, axes % 2 == 0, axes / 2 == 0)
                    .seen("phase-coupling 1 axial 60", COUPLING, "M-DE-A", "P-DE-A");
        }
    }

    @Test
    void theHousingsBesideTheCouplingAreComparedWhereTheyCanBe() {
        Bench near = Bench.of(pumpSet()).with(at("M-NDE-H", "motor", "0"), turned(0))
                .with(at("M-DE-H", "motor", "0"), turned(180)).with(at("P-DE-H", "pump", "0"), turned(0));
        near.seen("phase-coupling 1 radial 60", COUPLING, "M-DE-H", "P-DE-H");
        Bench far = Bench.of(pumpSet()).with(at("M-NDE-H", "motor", "0"), turned(0))
                .with(Bench.point("M-DE-H").withPart("motor"), turned(180)).with(at("P-DE-H", "pump", "0"), turned(0));
        far.notSeen("phase-coupling 1 radial 60", COUPLING);
        Bench.of(pumpSet()).with(at("M-DE-H", "motor", "0"), turned(0))
                .with(Bench.point("P-DE-H").withPart("pump").withPositiveAxis("0").recordedWith("later"), turned(180))
                .notMeasured("phase-coupling 1 radial 60", COUPLING);
    }
}
