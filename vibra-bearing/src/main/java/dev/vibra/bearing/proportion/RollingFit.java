package dev.vibra.bearing.proportion;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.proportion.Plausible.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Whether a rolling element, or a cage, explains the first rate, and of which bearings. */
final class RollingFit {
    private RollingFit() {}

    /** Ratios at which an element strikes with a multiple of the speed, over all contact angles. */
    static Interval ratios(double order, double slip) {
        return new Interval(Plausible.ratioOfRolling(order * (1 + slip) / Plausible.COS_STEEPEST),
                Plausible.ratioOfRolling(order * (1 - slip)));
    }

    static Optional<Proportion> of(Sighting seen) {
        Interval ratio = ratios(seen.first().order(), seen.slip()).and(Plausible.RATIO);
        List<ProportionClue> clues = new ArrayList<>();
        Optional<Interval> narrowed = seen.cages().stream().map(seen::ratioOf).map(ratio::and)
                .filter(both -> !both.isEmpty()).findFirst();
        if (seen.swingsWithCage()) {
            clues.add(ProportionClue.SWINGS_WITH_CAGE);
        } else {
            clues.add(ProportionClue.ROLLS_THOUGH_STEADY);
        }
        if (seen.swingsWithSpeed()) {
            clues.add(ProportionClue.STANDS_THOUGH_SWINGING);
        }
        if (!seen.cages().isEmpty()) {
            clues.add(narrowed.isPresent() ? ProportionClue.CAGE_ALLOWS : ProportionClue.CAGE_DISAGREES);
        }
        return proportion(seen, BearingElement.ROLLING_ELEMENT, narrowed.orElse(ratio), clues);
    }

    /** What a rate of the cage alone allows: the cage itself, or an element that the cage carries through the load. */
    static List<Proportion> ofCage(Sighting seen) {
        Interval ratio = seen.ratioOf(seen.cages().get(0)).and(Plausible.RATIO);
        List<Proportion> found = new ArrayList<>();
        proportion(seen, BearingElement.ROLLING_ELEMENT, ratio, List.of(ProportionClue.SWINGS_WITH_CAGE))
                .ifPresent(found::add);
        proportion(seen, BearingElement.CAGE, ratio, List.of()).ifPresent(found::add);
        return found;
    }

    private static Optional<Proportion> proportion(Sighting seen, BearingElement element, Interval ratio,
            List<ProportionClue> known) {
        List<ProportionClue> clues = new ArrayList<>(known);
        List<ObservedRate> explained = new ArrayList<>(seen.strikes().stream().limit(1).toList());
        int[] numbers = numbers(ratio);
        for (ObservedRate other : seen.strikes().stream().skip(1).toList()) {
            int[] fewer = IntStream.of(numbers).filter(n -> isRace(other.order(), n, ratio, seen.slip())).toArray();
            clues.add(fewer.length > 0 ? ProportionClue.SECOND_RATE : ProportionClue.SECOND_RATE_LEFT);
            if (fewer.length > 0) {
                explained.add(other);
                numbers = fewer;
            }
        }
        return numbers.length == 0 ? Optional.empty() : Optional.of(new Proportion(element, seen.turning(), numbers[0],
                numbers[numbers.length - 1], ratio.middle(), ratio.reach(), clues, explained));
    }

    private static int[] numbers(Interval ratio) {
        return IntStream.rangeClosed(Plausible.FEWEST, Plausible.MOST).filter(n -> Plausible.fits(n, ratio)).toArray();
    }

    private static boolean isRace(double order, int elements, Interval ratio, double slip) {
        double share = 2 * order / elements;
        return !Interval.around(share - 1, slip * share).and(ratio).isEmpty()
                || !Interval.around(1 - share, slip * share).and(ratio).isEmpty();
    }
}
