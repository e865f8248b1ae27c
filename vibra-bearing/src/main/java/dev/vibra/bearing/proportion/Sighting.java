package dev.vibra.bearing.proportion;

import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.proportion.Plausible.Interval;
import java.util.ArrayList;
import java.util.List;

/**
 * Rates that were seen, parted into strikes and what belongs to a cage.
 *
 * @param strikes rates of impacts, the one to be explained first, at most one other; empty if only a cage was seen
 * @param cages rates and plain sidebands in the range of a cage
 * @param turning ring that turns
 * @param slip largest relative deviation of a rate from its kinematic value
 */
record Sighting(List<ObservedRate> strikes, List<Double> cages, RotatingRing turning, double slip) {
    static Sighting of(List<ObservedRate> rates, RotatingRing turning, double slip) {
        Interval range = Plausible.cage(turning);
        Interval wide = new Interval(range.low() * (1 - slip), range.high() * (1 + slip));
        List<Double> cages = new ArrayList<>();
        List<ObservedRate> strikes = new ArrayList<>();
        for (ObservedRate rate : rates) {
            if (wide.holds(rate.order())) {
                cages.add(rate.order());
            } else if (rate.order() >= Plausible.LOWEST_STRIKE && strikes.size() < 2) {
                strikes.add(rate);
            }
        }
        strikes.stream().limit(1).flatMap(rate -> rate.sidebands().stream()).filter(SidebandSpacing::isPlain)
                .map(SidebandSpacing::order).filter(wide::holds).forEach(cages::add);
        return new Sighting(strikes, cages, turning, slip);
    }

    ObservedRate first() {
        return strikes.get(0);
    }

    /** The range of ratios that a rate of the cage allows. */
    Interval ratioOf(double cage) {
        return Interval.around(Plausible.ratioOfCage(turning, cage), 2 * slip * cage);
    }

    boolean swingsWithCage() {
        return first().has(side -> side.isPlain() && cages.contains(side.order()));
    }

    boolean swingsWithSpeed() {
        return first().has(side -> side.isPlain() && side.isSpeed());
    }

    /** No sidebands at all where they would mean something, not even faint ones. */
    boolean isSteady() {
        return !first().has(side -> side.isSpeed() || cages.contains(side.order()));
    }
}
