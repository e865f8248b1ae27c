package dev.vibra.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.diagnosis.Decider;
import dev.vibra.diagnosis.Finding;
import dev.vibra.diagnosis.Rank;
import dev.vibra.fault.Effort;
import dev.vibra.survey.AdviceStep.Kind;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What is advised on findings, whatever they rest on. */
class AdviceTest {
    private static final Decider LOOK = new Decider("foot-lifts", Effort.STOP, "a dial gauge at each foot", "if so, a");
    private static final Decider PHASE = new Decider("joint-steps", Effort.RUNNING, "phase at foot and plate", "if so, b");

    private static Finding finding(String code, List<Decider> deciders, String... alike) {
        return new Finding(code, code, 0.6, 0.6, Rank.PLAN_REMEDY, List.of("P"), true, List.of(), List.of(), List.of(), deciders,
                Arrays.asList(alike), List.of(), "a book");
    }

    private static Map<Kind, String> advice(Finding... findings) {
        return Advice.of(Condition.of(Rank.PLAN_REMEDY, List.of(), false), List.of(), List.of(findings), Optional.empty())
                .stream().collect(Collectors.toMap(AdviceStep::kind, AdviceStep::text));
    }

    @Test
    void balancingIsSpokenOfWhereItMayBeUnbalanceOnly() {
        assertTrue(advice(finding("unbalance", List.of())).get(Kind.BALANCING).startsWith("Before balancing"));
        assertTrue(advice(finding("bent-shaft", List.of(), "unbalance")).containsKey(Kind.BALANCING));
        assertFalse(advice(finding("vane-passing", List.of(), "gear-mesh")).containsKey(Kind.BALANCING));
    }

    @Test
    void theGentlestMeasurementOfAllFindingsStandsFirst() {
        String text = advice(finding("rub", List.of(LOOK)), finding("vane-passing", List.of(PHASE, LOOK))).get(Kind.DECIDE);
        assertEquals("To decide on the findings, begin with: phase at foot and plate; a dial gauge at each foot.", text);
    }

    @Test
    void whoMayLookForALooseFootIsWarnedOfTheBolts() {
        assertTrue(advice(finding("soft-foot", List.of())).get(Kind.BOLTS).contains("no hold-down bolt"));
        assertTrue(advice(finding("unbalance", List.of(PHASE), "looseness")).containsKey(Kind.BOLTS));
        assertFalse(advice(finding("unbalance", List.of(PHASE))).containsKey(Kind.BOLTS));
    }
}
