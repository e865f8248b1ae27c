package dev.vibra.bearing.proportion;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * A bearing that would explain a rate of impacts: which element, how many of them, and in what proportion. A candidate
 * and no verdict.
 *
 * @param element element whose defect would make the rate
 * @param turning ring that turns
 * @param fewest least number of rolling elements, at least 3
 * @param most largest number of rolling elements, at least the least; the same where the rate fixes it
 * @param ratio diameter ratio d/D·cos α, above 0, below 1
 * @param ratioReach half width of the range of the ratio, from slip and, for a rolling element, from the contact angle;
 *     zero or more
 * @param clues what speaks for it and against it
 * @param explains rates that it explains, the one it was made for first
 */
public record Proportion(BearingElement element, RotatingRing turning, int fewest, int most, double ratio,
        double ratioReach, List<ProportionClue> clues, List<ObservedRate> explains) implements Serializable {
    private static final long serialVersionUID = 1;
    /** A difference in weight that one strong clue makes; common practice, no source. */
    static final int DECISIVE = 3;

    /**
     * Checks the values and copies the lists.
     *
     * @param element see the record
     * @param turning see the record
     * @param fewest see the record
     * @param most see the record
     * @param ratio see the record
     * @param ratioReach see the record
     * @param clues see the record
     * @param explains see the record
     * @throws IllegalArgumentException if a value is out of range
     */
    public Proportion {
        Objects.requireNonNull(element, "element");
        Objects.requireNonNull(turning, "turning");
        Require.atLeast("fewest", fewest, 3);
        Require.atLeast("most", most, fewest);
        Require.positive("1 − ratio", 1 - Require.positive("ratio", ratio, ""), "");
        Require.notNegative("ratioReach", ratioReach, "");
        clues = Require.copy("clues", clues);
        explains = Require.copy("explains", explains);
    }

    /**
     * Says whether a bearing is among those meant.
     *
     * @param rollingElements number of rolling elements in one row
     * @param diameterRatio ratio d/D·cos α
     * @return true if number and ratio lie within the ranges
     */
    public boolean admits(int rollingElements, double diameterRatio) {
        return fewest <= rollingElements && rollingElements <= most && Math.abs(diameterRatio - ratio) <= ratioReach;
    }

    /**
     * Returns the rate of the cage of such a bearing: where to look for a line that decides.
     *
     * @return rate over speed of rotation, without slip
     */
    public double cageOrder() {
        return Plausible.cage(turning, ratio);
    }

    /** What its clues weigh together: orders candidates, and is no probability. */
    int weight() {
        return clues.stream().mapToInt(ProportionClue::weight).sum();
    }

    Proportion without(ProportionClue clue) {
        return new Proportion(element, turning, fewest, most, ratio, ratioReach,
                clues.stream().filter(one -> one != clue).toList(), explains);
    }

    /** Number of elements in words, as in {@code 9} or {@code 7 to 12}. */
    String number() {
        return fewest == most ? String.valueOf(fewest) : fewest + " to " + most;
    }

    /**
     * Returns the candidate with what speaks for it and against it.
     *
     * @return one line
     */
    public String describe() {
        return this + clues(true, "; for it: ") + clues(false, "; against it: ");
    }

    private String clues(boolean supporting, String label) {
        String text = clues.stream().filter(clue -> clue.supports() == supporting).distinct()
                .map(ProportionClue::toString).collect(Collectors.joining(", "));
        return text.isEmpty() ? "" : label + text;
    }

    /** Returns the candidate, as in {@code outer race of 9 elements, d/D·cos α 0.203 ± 0.012}. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s of %s elements, d/D·cos α %.3f ± %.3f%s", element, number(), ratio,
                ratioReach, turning == RotatingRing.OUTER ? ", outer ring turning" : "");
    }
}
