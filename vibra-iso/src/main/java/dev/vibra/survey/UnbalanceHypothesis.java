package dev.vibra.survey;

import dev.vibra.internal.Digits;
import dev.vibra.severity.Zone;
import dev.vibra.survey.machine.Direction;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Unbalance: in radial direction nearly all of a high velocity lies in the line at the shaft speed.
 *
 * <p>Belief is 0.6 where the once-per-revolution line carries at least 80 % of the velocity (64 % of its square) at a
 * point
 * in zone C or D; 0.1 more where the line at twice the speed is below a quarter of it everywhere, 0.1 more where an
 * axial
 * point was measured and has less than half of it; 0.2 less for each of the two that speaks against. Without phase it
 * never
 * passes 0.8: a bent shaft, a resonance or an eccentric part can look the same. Shares and steps are common practice,
 * no
 * source; the symptom is that of ISO 13373-3:2015 and of the textbooks (from memory, unverified).
 */
final class UnbalanceHypothesis {
    static final String FAULT = "unbalance";

    private static final String CONFIRM_BY = "phase at two radial directions of one bearing (about 90\u00b0 apart for"
            + " unbalance) and at both bearings; 1\u00d7 during run-down (a resonance shows as a peak); then a trial"
            + " run for balancing";
    private static final String ONCE = DescriptorNames.velocityAtOrder(1);
    private static final String TWICE = DescriptorNames.velocityAtOrder(2);
    private static final double DOMINANT = 0.8;
    private static final double SMALL_TWICE = 0.25;
    private static final double LARGE_AXIAL = 0.5;

    private final List<PointSurvey> showing;
    private final double highestOnce;
    private final List<String> evidence = new ArrayList<>();
    private final List<String> against = new ArrayList<>();
    private double belief = 0.6;

    private UnbalanceHypothesis(List<PointSurvey> showing) {
        this.showing = showing;
        this.highestOnce = showing.stream().mapToDouble(point -> value(point, ONCE)).max().orElse(0);
    }

    static Optional<Finding> of(List<PointSurvey> points) {
        List<PointSurvey> showing = points.stream().filter(UnbalanceHypothesis::shows).toList();
        return showing.isEmpty() ? Optional.empty() : Optional.of(new UnbalanceHypothesis(showing).weigh(points));
    }

    private static boolean shows(PointSurvey point) {
        boolean high = point.zone().filter(zone -> zone.isWorseThan(Zone.B)).isPresent();
        return high && isRadial(point) && value(point, ONCE) >= DOMINANT * velocity(point);
    }

    private Finding weigh(List<PointSurvey> points) {
        showing.forEach(point -> evidence.add(String.format(Locale.ROOT,
                "%s: 1\u00d7 carries %s of %s mm/s rms (radial, zone %s)", point.point().id(),
                figure(value(point, ONCE)), figure(velocity(point)), point.zone().orElseThrow())));
        weighTwice();
        weighAxial(points);
        against.add("without phase, a bent shaft, an eccentric part or a resonance near the speed can look the same");
        return new Finding(FAULT, Math.max(0.1, Math.min(0.8, belief)),
                showing.stream().map(point -> point.point().id()).toList(), evidence, against,
                CONFIRM_BY);
    }

    private void weighTwice() {
        double largest = showing.stream().mapToDouble(point -> value(point, TWICE) / value(point, ONCE))
                .filter(ratio -> ratio > 0).max().orElse(0);
        if (largest < SMALL_TWICE) {
            belief += 0.1;
            evidence.add("2\u00d7 is " + percent(largest)
                    + " of 1\u00d7 at most, as misalignment or looseness would not leave it");
        } else {
            belief -= 0.2;
            against.add("2\u00d7 reaches " + percent(largest) + " of 1\u00d7: misalignment or looseness is possible");
        }
    }

    private void weighAxial(List<PointSurvey> points) {
        OptionalDouble axial = points.stream()
                .filter(point -> point.point().direction().filter(d -> d == Direction.AXIAL).isPresent())
                .mapToDouble(point -> value(point, ONCE)).filter(once -> once > 0).max();
        if (axial.isEmpty()) {
            against.add("no sound axial recording: misalignment and a bent shaft are not ruled out");
        } else if (axial.getAsDouble() < LARGE_AXIAL * highestOnce) {
            belief += 0.1;
            evidence.add("1\u00d7 along the shaft is only " + figure(axial.getAsDouble()) + " mm/s rms");
        } else {
            belief -= 0.2;
            against.add("1\u00d7 along the shaft is " + figure(axial.getAsDouble())
                    + " mm/s rms: a bent shaft, misalignment or an overhung rotor is possible");
        }
    }

    private static boolean isRadial(PointSurvey point) {
        return point.point().direction().filter(Direction::isRadial).isPresent();
    }

    /** Broad-band velocity; of several bands that with the most, since a slow machine is judged in a lower one too. */
    private static double velocity(PointSurvey point) {
        return point.descriptors().stream().filter(one -> one.name().matches("velocity-rms-.*Hz"))
                .mapToDouble(Descriptor::value).max().orElse(Double.POSITIVE_INFINITY);
    }

    /** Value of a descriptor, 0 if it was not determined. */
    private static double value(PointSurvey point, String name) {
        return point.descriptor(name).orElse(0);
    }

    private static String figure(double value) {
        return Digits.significant(value, 3);
    }

    private static String percent(double share) {
        return Math.round(100 * share) + " %";
    }
}
