package dev.vibra.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.diagnosis.AnswerSheet.Asked;
import dev.vibra.fault.Counts;
import dev.vibra.fault.Effort;
import dev.vibra.fault.FaultTable;
import dev.vibra.symptom.Answer;
import dev.vibra.symptom.Site;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The engine on a table small enough for Bayes' rule by hand. */
class InferenceTest {
    private static final FaultTable TABLE = FaultTable.parse("""
            [symptoms]
            code | site | asks | seen as | by | effort
            hot | shaft | test | it is hot | a thermometer | running
            loud | shaft | test | it is loud | an ear | running
            loose | shaft | test | it is loose | a wrench | stop
            far | belt | test | it is far | a rule | running
            [faults]
            id | words | site | on | urgency | explains | mimics | source
            fever/high | high fever | shaft | any | by level | level | noise | a book
            fever/low | low fever | shaft | any | by level | level | noise | a book
            noise | noise | shaft | any | plan | no | fever/high | a book
            rattle | rattle | shaft | any | plan | no | noise | a book
            """);
    /** Of sound machines a tenth is hot; those that are loud are so beside hot ones as often as not. */
    private static final Counts COUNTS = Counts.parse("""
            [draws]
            seed | machines | exponent | highest none | quiet
            1 | 100 | 1 | 0.3 | 0.3
            [counts]
            fault | symptom | given | alone no | alone yes | no no | no yes | yes no | yes yes
            none/shaft | hot | - | 899 | 99 | 0 | 0 | 0 | 0
            none/shaft | loud | hot | 0 | 0 | 890 | 10 | 90 | 10
            none/shaft | loose | - | 979 | 19 | 0 | 0 | 0 | 0
            fever/high | hot | - | 100 | 900 | 0 | 0 | 0 | 0
            fever/high | loud | hot | 0 | 0 | 99 | 1 | 890 | 10
            fever/high | loose | - | 980 | 20 | 0 | 0 | 0 | 0
            fever/low | hot | - | 400 | 600 | 0 | 0 | 0 | 0
            fever/low | loud | hot | 0 | 0 | 396 | 4 | 590 | 10
            fever/low | loose | - | 980 | 20 | 0 | 0 | 0 | 0
            noise | hot | - | 100 | 900 | 0 | 0 | 0 | 0
            noise | loud | hot | 0 | 0 | 5 | 95 | 45 | 855
            noise | loose | - | 980 | 20 | 0 | 0 | 0 | 0
            rattle | hot | - | 900 | 100 | 0 | 0 | 0 | 0
            rattle | loud | hot | 0 | 0 | 890 | 10 | 90 | 10
            rattle | loose | - | 30 | 970 | 0 | 0 | 0 | 0
            """);
    private static final Site SHAFT = new Site(Site.Kind.SHAFT, "shaft", 1);
    private static final Inference INFERENCE = new Inference(TABLE, COUNTS);

    private static AnswerSheet sheet(Boolean hot, Boolean loud, Boolean loose) {
        Map<Asked, Answer> answers = new LinkedHashMap<>();
        answers.put(new Asked("hot", SHAFT), answer(hot));
        answers.put(new Asked("loud", SHAFT), answer(loud));
        answers.put(new Asked("loose", SHAFT), answer(loose));
        return AnswerSheet.of(answers);
    }

    private static Answer answer(Boolean seen) {
        return seen == null ? Answer.notMeasured("") : seen ? Answer.seen(List.of("P"), "") : Answer.notSeen("");
    }

    private static List<Hypothesis> all() {
        return TABLE.faults().stream().map(fault -> new Hypothesis(fault, SHAFT,
                fault.code().equals("fever") ? 1.0 / 6 : 1.0 / 3)).toList();
    }

    private static double share(Ranking ranking, String code) {
        return ranking.candidates().stream().filter(one -> one.code().equals(code)).findFirst().orElseThrow().share();
    }

    /** Sound (99 + 1)/(998 + 2) = 0.1 hot; with high fever (900 + 2·0.1)/1002, of which 0.8 counts; Bayes' rule by hand. */
    @Test
    void oneAnswerIsBayesRule() {
        double high = Math.min(0.8, 900.2 / 1002);
        double low = 600.2 / 1002;
        double rattle = 100.2 / 1002;
        double sum = 0.1 + high / 6 + low / 6 + high / 3 + rattle / 3;
        Ranking ranking = INFERENCE.rank(all(), sheet(true, null, null));
        assertEquals(0.1 / sum, ranking.none(), 1e-12);
        assertEquals((high / 6 + low / 6) / sum, share(ranking, "fever"), 1e-12);
        assertEquals(high / 3 / sum, share(ranking, "noise"), 1e-12);
        assertEquals("fever/high", ranking.candidates().stream().filter(one -> one.code().equals("fever")).findFirst()
                .orElseThrow().leader().fault().id());
    }

    /** Beside "hot", "loud" weighs by its share among the hot ones, 10 of 100 sound ones, not by that among all. */
    @Test
    void dependentAnswersAreCountedTogether() {
        double soundAlone = (20 + 1) / 1002.0;
        double sound = (10 + 4 * soundAlone) / 104;
        double noiseAlone = (950 + 2 * soundAlone) / 1002;
        double noise = (855 + 4 * noiseAlone) / 904;
        assertEquals(Math.log(Math.min(0.8, noise) / sound), INFERENCE.logRatio(all().get(2), TABLE.symptom("loud"),
                sheet(true, true, null)), 1e-12);
        assertEquals(Math.log(0.8 / soundAlone), INFERENCE.logRatio(all().get(2), TABLE.symptom("loud"),
                sheet(null, true, null)), 1e-12);
    }

    /** What recordings show hangs together; what is found by hand doesn't, whatever the exponent. */
    @Test
    void whatACrewFindsCountsWhole() {
        assertEquals(2 + 0.3 * 1 - 0.5, new Inference.Support(2, 1, -0.5).logRatio(0.3), 1e-12);
        Inference.Support support = INFERENCE.support(all().get(3), sheet(null, null, true));
        assertEquals(new Inference.Support(0, 0, Math.log(0.8 / 0.02)), support);
    }

    @Test
    void whatWasNotMeasuredWeighsNothing() {
        AnswerSheet nothing = sheet(null, null, null);
        all().forEach(one -> assertEquals(0, INFERENCE.logRatio(one, nothing)));
        assertEquals(0.5, INFERENCE.rank(all(), nothing).none(), 1e-12);
        assertTrue(INFERENCE.rounds(all(), nothing).stream().noneMatch(round -> INFERENCE.tells(round)));
    }

    /** Two faults: what the first explains is taken off, the second is told by what is left, and nothing else is. */
    @Test
    void secondFaultIsWeighedOnWhatIsLeft() {
        List<Inference.Round> rounds = INFERENCE.rounds(all(), sheet(true, true, true));
        assertEquals(3, rounds.size());
        assertEquals(List.of("noise", "rattle"), rounds.subList(0, 2).stream()
                .map(round -> round.ranking().candidates().get(0).code()).sorted().toList());
        assertFalse(INFERENCE.tells(rounds.get(2)));
        // Each stands beside the other and not against it.
        rounds.subList(0, 2).forEach(round -> assertTrue(round.ranking().candidates().get(0).share() > 0.6,
                () -> "" + round.ranking().candidates()));
    }

    @Test
    void hotAloneLeavesTwoThatCanNotBeToldApart() {
        Ranking ranking = INFERENCE.rank(all(), sheet(true, null, false));
        assertEquals(List.of("noise", "fever"), ranking.group().stream().map(Ranking.Candidate::code).toList());
    }

    /**
     * Two faults alike, sound out of the question: the gain of a test that shows 0.95 and 0.015 of them is that of a
     * channel, here by entropies; a test that both show alike gains nothing and isn't told.
     */
    @Test
    void decidersGainInformation() {
        AnswerSheet sheet = sheet(true, null, null);
        List<Hypothesis> two = List.of(new Hypothesis(TABLE.fault("fever/high"), SHAFT, 1),
                new Hypothesis(TABLE.fault("noise"), SHAFT, 1));
        Ranking ranking = INFERENCE.rank(two, sheet);
        List<Decider> deciders = new DeciderSearch(TABLE, COUNTS, ranking.group(), sheet, ranking.none()).deciders();
        assertEquals(List.of("loud"), deciders.stream().map(Decider::symptom).toList());
        assertEquals("an ear", deciders.get(0).measurement());
        assertEquals("if it is loud, it speaks for noise; if not, for high fever or none of them",
                deciders.get(0).meaning());
        assertEquals(Effort.RUNNING, deciders.get(0).effort());
    }

    /** A capacity in closed form: outcomes that are certain to 0.95 either way give 1 - H(0.05) = 0.7136 bits. */
    @Test
    void gainIsThatOfABinaryChannel() {
        assertEquals(0.7136, Experiment.bits(new double[] {0.5, 0.5}, new double[] {0.95, 0.05}), 5e-5);
        assertEquals(0, Experiment.bits(new double[] {0.2, 0.8}, new double[] {0.3, 0.3}), 1e-12);
        assertEquals(1, Experiment.bits(new double[] {0.5, 0.5}, new double[] {1, 0}), 1e-12);
    }

    /** Nearly all with the fault and hardly a sound one: one answer speaks for it 40 times at most, 4.9 against it. */
    @Test
    void noAnswerSettlesIt() {
        assertEquals(Math.log(0.8 / 0.02), COUNTS.logRatio(TABLE.fault("rattle"), "loose", true, Optional.empty()), 1e-12);
        assertEquals(Math.log(0.2 / 0.98), COUNTS.logRatio(TABLE.fault("rattle"), "loose", false, Optional.empty()), 1e-2);
        assertEquals(0, COUNTS.logRatio(TABLE.fault("rattle"), "far", true, Optional.empty()));
    }
}
