package dev.vibra.bearing.proportion;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.proportion.Plausible.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Whether a race of a bearing with a given number of elements explains the first rate. */
final class RaceFit {
    /** Rates of cage and of the race that stands have an exact ratio, whatever the slip; this is for reading them. */
    private static final double COUNT_REACH = 0.2;

    private final Sighting seen;
    private final BearingElement race;
    private final int elements;
    private final boolean turns;
    private final double order;
    private final List<ProportionClue> clues = new ArrayList<>();
    private final List<ObservedRate> explained = new ArrayList<>();
    private Interval ratio;

    private RaceFit(Sighting seen, BearingElement race, int elements) {
        this.seen = seen;
        this.race = race;
        this.elements = elements;
        turns = (race == BearingElement.INNER_RACE) == (seen.turning() == RotatingRing.INNER);
        order = seen.first().order();
        double share = 2 * order / elements;
        ratio = Interval.around(race == BearingElement.INNER_RACE ? share - 1 : 1 - share, seen.slip() * share);
    }

    static Optional<Proportion> of(Sighting seen, BearingElement race, int elements) {
        RaceFit fit = new RaceFit(seen, race, elements);
        return fit.isPlausible() ? Optional.of(fit.proportion()) : Optional.empty();
    }

    private boolean isPlausible() {
        return Plausible.fits(elements, ratio.and(Plausible.RATIO));
    }

    private Proportion proportion() {
        explained.add(seen.first());
        sidebands();
        cage();
        seen.strikes().stream().skip(1).forEach(this::second);
        if (!ratio.and(Plausible.deepGroove(elements)).isEmpty()) {
            clues.add(ProportionClue.DEEP_GROOVE);
        } else if (Plausible.isSparse(elements, ratio.high())) {
            clues.add(ProportionClue.SPARSE);
        }
        return new Proportion(race, seen.turning(), elements, elements, ratio.middle(), ratio.reach(), clues,
                explained);
    }

    private void sidebands() {
        if (seen.swingsWithSpeed()) {
            clues.add(turns ? ProportionClue.SWINGS_WITH_SPEED : ProportionClue.STANDS_THOUGH_SWINGING);
        } else if (seen.isSteady()) {
            clues.add(turns ? ProportionClue.TURNS_THOUGH_STEADY : ProportionClue.STEADY);
        }
        if (seen.swingsWithCage()) {
            clues.add(ProportionClue.RACE_THOUGH_CAGE);
        }
    }

    private void cage() {
        Optional<Double> agreeing = seen.cages().stream().filter(this::agrees).findFirst();
        if (agreeing.isPresent()) {
            clues.add(ProportionClue.CAGE_AGREES);
            ratio = ratio.and(seen.ratioOf(agreeing.get()));
        } else if (!seen.cages().isEmpty()) {
            clues.add(ProportionClue.CAGE_DISAGREES);
        }
    }

    /** All elements pass a spot of the race that stands, inner or outer, once in a turn of the cage. */
    private boolean agrees(double cage) {
        boolean overlaps = !ratio.and(seen.ratioOf(cage)).isEmpty();
        return overlaps && (turns || Math.abs(order / cage - elements) <= COUNT_REACH);
    }

    private void second(ObservedRate other) {
        boolean above = race == BearingElement.OUTER_RACE;
        boolean sums = Math.abs(order + other.order() - elements) <= seen.slip() * elements
                && other.order() > order == above;
        if (sums) {
            clues.add(ProportionClue.SECOND_RACE);
            double difference = Math.abs(other.order() - order) / (order + other.order());
            ratio = Interval.around(difference, seen.slip() * (1 - difference));
        } else {
            boolean rolls = !RollingFit.ratios(other.order(), seen.slip()).and(ratio).isEmpty();
            clues.add(rolls ? ProportionClue.SECOND_RATE : ProportionClue.SECOND_RATE_LEFT);
            if (!rolls) {
                return;
            }
        }
        explained.add(other);
    }
}
