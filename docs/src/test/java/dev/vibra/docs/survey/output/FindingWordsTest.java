package dev.vibra.docs.survey.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.diagnosis.Decider;
import dev.vibra.diagnosis.Finding;
import dev.vibra.diagnosis.Rank;
import dev.vibra.fault.Effort;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What is told of a finding, and in which order. */
class FindingWordsTest {
    private static final Finding FINDING = new Finding("unbalance", "unbalance, static", 0.456, 0.83, Rank.PLAN_REMEDY,
            List.of("DE-H", "DE-V"), true,
            List.of("1× leads [on 93 % of simulated machines with the fault, 61 % without]", "b", "c [on 1 %]", "d", "e"),
            List.of("with what was measured it can't be told apart from: bent shaft (0.24)", "f"), List.of(),
            List.of(new Decider("quarter-turn", Effort.RUNNING, "both directions", "if so, alpha"),
                    new Decider("foot-lifts", Effort.STOP, "a dial gauge", "if so, beta")),
            List.of("bent-shaft", "soft-foot"), "a book");

    @Test
    void whatToDoStandsBeforeTheReasons() {
        assertEquals("unbalance, static: plan a remedy, confidence 0.46, with look-alikes 0.83",
                Words.finding(FINDING));
        Map<String, List<String>> parts = Words.parts(FINDING);
        assertEquals(List.of("looks alike", "at", "next", "for", "against", "source"), List.copyOf(parts.keySet()));
        assertEquals(List.of("bent shaft, soft foot"), parts.get("looks alike"));
        assertEquals(5, parts.get("for").size());
        assertTrue(parts.get("for").get(0).endsWith("61 % without]"));
    }

    @Test
    void aCrewIsToldUnderWhichCodeItEntersWhatItFound() {
        assertEquals(List.of("both directions: if so, alpha",
                "a dial gauge: if so, beta (enter as observation foot-lifts)"), Words.parts(FINDING).get("next"));
    }

    @Test
    void theSummaryHoldsWhatFitsAndNoCounts() {
        Map<String, List<String>> parts = Words.partsInShort(FINDING);
        assertEquals(List.of("1× leads", "b", "c", "(2 more in report.html)"), parts.get("for"));
        assertEquals(List.of("f"), parts.get("against"), "it stands under looks alike");
        assertFalse(parts.containsKey("source"));
    }
}
