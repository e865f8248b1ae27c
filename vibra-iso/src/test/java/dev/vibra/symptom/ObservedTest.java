package dev.vibra.symptom;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.GearStage;
import dev.vibra.machine.MachineDescription;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a crew noted, for the machine or for a place. */
class ObservedTest {
    private static final MachineDescription SET = HousingQuestionsTest.pumpSet()
            .withPoint(Bench.point("M-DE-H").withPart("motor")).withPoint(Bench.point("P-DE-H").withPart("pump"));

    private static Answer ask(MachineDescription machine, String code, Site.Kind kind, int site) {
        return Questions.parse(code, "test").ask(Evidence.of(machine, List.of()), Sites.of(machine).stream()
                .filter(one -> one.kind() == kind).toList().get(site));
    }

    private static void assertState(Answer.State state, Answer answer) {
        assertEquals(state, answer.state(), answer::toString);
    }

    @Test
    void aCodeAloneHoldsForTheWholeMachine() {
        assertState(Answer.State.SEEN, ask(SET.withObservation("creeps", true), "creeps", Site.Kind.SHAFT, 0));
        assertState(Answer.State.NOT_SEEN, ask(SET.withObservation("creeps", false), "creeps", Site.Kind.SHAFT, 0));
        assertState(Answer.State.NOT_MEASURED, ask(SET.withObservation("creeps", true), "cap-loose", Site.Kind.SHAFT,
                0));
    }

    @Test
    void aPlaceGoesBeforeTheMachine() {
        MachineDescription gears = Bench.fan().withTrain(DriveTrain.plain().withGear(GearStage.of("stage 1",
                List.of(17, 53))).withGear(GearStage.of("stage 2", List.of(19, 61))))
                .withObservation("tooth-marks", false).withObservation("tooth-marks at stage 2", true);
        assertState(Answer.State.NOT_SEEN, ask(gears, "tooth-marks", Site.Kind.GEAR, 0));
        assertState(Answer.State.SEEN, ask(gears, "tooth-marks", Site.Kind.GEAR, 1));
    }

    @Test
    void ofSeveralPartsOrHousingsOneYesIsAYes() {
        MachineDescription loose = SET.withObservation("cap-loose at motor", false)
                .withObservation("cap-loose at P-DE", true);
        Answer answer = ask(loose, "cap-loose", Site.Kind.SHAFT, 0);
        assertState(Answer.State.SEEN, answer);
        assertEquals(List.of("P-DE-H"), answer.points());
        assertState(Answer.State.NOT_SEEN, ask(SET.withObservation("cap-loose at motor", false), "cap-loose",
                Site.Kind.SHAFT, 0));
        assertState(Answer.State.SEEN, ask(SET.withObservation("alignment-off at motor to pump", true), "alignment-off",
                Site.Kind.COUPLING, 0));
        assertState(Answer.State.NOT_MEASURED, ask(SET.withObservation("power-cut-drops at pump", true),
                "power-cut-drops", Site.Kind.MOTOR, 0));
    }
}
