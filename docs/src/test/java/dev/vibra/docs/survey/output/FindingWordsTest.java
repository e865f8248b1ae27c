package dev.vibra.docs.survey.output;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.vibra.diagnosis.Decider;
import dev.vibra.diagnosis.Finding;
import dev.vibra.diagnosis.LookAlike;
import dev.vibra.diagnosis.Rank;
import dev.vibra.diagnosis.Sign;
import dev.vibra.fault.Effort;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What is told of a finding, and in which order. */
class FindingWordsTest {
    private static final Finding FINDING = new Finding("unbalance", "unbalance, static", 0.456, 0.83, Rank.PLAN_REMEDY,
            List.of("DE-H", "DE-V"), true,
            List.of(new Sign("1× leads", "DE-H: 1×", "on 93 % of simulated machines with the fault, 61 % without"),
                    Sign.of("b"), new Sign("c", "", "on 1 %"), Sign.of("d"), Sign.of("e")),
            List.of(Sign.of("f")), List.of(),
            List.of(new Decider("quarter-turn", Effort.RUNNING, "both directions", "if so, alpha"),
                    new Decider("foot-lifts", Effort.STOP, "a dial gauge", "if so, beta")),
            List.of("bent-shaft", "soft-foot"),
            List.of(new LookAlike("bent-shaft", "bent shaft", 0.24), new LookAlike("soft-foot", "soft foot", 0.14)), "a book");

    private static final Words WORDS = new Words(Phrases.english());

    @Test
    void whatCanNotBeToldApartIsNoNameOfItsOwn() {
        assertEquals("unbalance, static: plan a remedy, confidence 0.46, with look-alikes 0.83",
                Words.finding(FINDING));
        assertEquals("Unbalance, static, or what looks like it", WORDS.title(FINDING));
        assertEquals("Plan a remedy. At DE-H, DE-V; confidence 0.83 of 1 that it is one of these, 0.46 for the first"
                + " alone.", WORDS.standing(FINDING));
    }

    @Test
    void theSummaryHoldsWhatFitsAndNoCounts() {
        Map<String, List<String>> parts = WORDS.partsInShort(FINDING);
        assertEquals(List.of("looks alike", "at", "next", "for", "against"), List.copyOf(parts.keySet()));
        assertEquals(List.of("bent shaft, soft foot"), parts.get("looks alike"));
        assertEquals(List.of("1× leads (DE-H: 1×)", "b", "c", "(2 more in report.html)"), parts.get("for"));
        assertEquals(List.of("f"), parts.get("against"));
    }

    @Test
    void aCrewIsToldUnderWhichCodeItEntersWhatItFound() {
        assertEquals(List.of("both directions: if so, alpha",
                "a dial gauge: if so, beta (enter as observation foot-lifts)"), WORDS.partsInShort(FINDING).get("next"));
    }
}
