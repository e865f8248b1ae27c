package dev.vibra.rotation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.rotation.ConditionalLogit.Choice;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/**
 * How often the estimate of the speed is right, on thousands of simulated machines, and the fit of its weights. No part
 * of the ordinary tests, since it takes minutes; {@link SpeedEstimateTest} asserts the same of fewer machines.
 *
 * <pre>mvn -q -B -pl vibra-core test -Dtest=SpeedStudy</pre>
 */
class SpeedStudy {
    private static final long FIT_SEED = 11;
    private static final int FITTED = 3000;
    private static final long CHECK_SEED = 12;
    private static final int CHECKED = 3000;

    @Test
    void speedsAreRightAsOftenAsTheirConfidenceSays() {
        SpeedScore score = new SpeedScore();
        for (int i = 0; i < CHECKED; i++) {
            score.add(SimulatedMachine.draw(CHECK_SEED, i), i);
        }
        System.out.println(score);
        for (SpeedScore.Known known : SpeedScore.Known.values()) {
            assertTrue(score.wrong(known) <= 0.005 * score.estimates(known), known.toString());
        }
        for (int tenth = 0; tenth < 10; tenth++) {
            assertTrue(score.count(tenth) >= 100, "confidence tenth " + tenth);
            double told = score.confidence(tenth);
            double scatter = Math.sqrt(told * (1 - told) / score.count(tenth));
            assertEquals(told, score.right(tenth), 3 * scatter + 0.02, "confidence tenth " + tenth);
        }
    }

    /** The weights choose the twelve candidates that are fitted, so that a second fit moves them a little. */
    @Test
    void weightsAreThoseOfTheFit() {
        List<Choice> choices = new ArrayList<>();
        for (int i = 0; i < FITTED; i++) {
            SimulatedMachine machine = SimulatedMachine.draw(FIT_SEED, i);
            LineSet lines = SpeedEstimate.lines(machine.wave()).orElseThrow();
            for (SpeedScore.Known known : SpeedScore.Known.values()) {
                known.of(machine, i).ifPresent(knowledge -> choices.add(choice(machine, lines, knowledge)));
            }
        }
        double[] weights = ConditionalLogit.fit(choices, SpeedClue.values().length);
        System.out.printf(Locale.ROOT, "%-15s %.3f%n", "NONE", weights[0]);
        for (SpeedClue clue : SpeedClue.values()) {
            System.out.printf(Locale.ROOT, "%-15s %.3f%n", clue, weights[clue.ordinal() + 1]);
        }
        assertEquals(weights[0], SpeedClue.NONE, 0.05);
        for (SpeedClue clue : SpeedClue.values()) {
            assertEquals(weights[clue.ordinal() + 1], clue.weight(), 0.05, clue.toString());
        }
    }

    private static Choice choice(SimulatedMachine machine, LineSet lines, SpeedKnowledge known) {
        List<SpeedEvidence> candidates = SpeedCandidates.of(lines, known);
        double[][] values = new double[candidates.size()][];
        double[] offsets = new double[values.length];
        int right = -1;
        for (int i = 0; i < values.length; i++) {
            double hertz = candidates.get(i).shaft().hertz();
            values[i] = candidates.get(i).clues();
            offsets[i] = known.logDensity(hertz);
            right = right < 0 && machine.turnsAt(hertz) ? i : right;
        }
        return new Choice(values, offsets, right);
    }
}
