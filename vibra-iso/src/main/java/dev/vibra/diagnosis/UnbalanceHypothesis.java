package dev.vibra.diagnosis;

import dev.vibra.descriptor.Descriptors;
import dev.vibra.descriptor.NamedLine;
import dev.vibra.internal.Digits;
import dev.vibra.point.ChangeSurvey;
import dev.vibra.point.PointSurvey;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.severity.Verdict;
import dev.vibra.severity.Zone;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Unbalance: in radial direction nearly all of a high velocity lies in the line at the shaft speed.
 *
 * <p>Confidence is 0.6 where that line carries at least 80 % of the velocity (64 % of its square) at a point in zone C
 * or D or after a rise that matters; 0.1 more where the line at twice the speed is below a quarter of it everywhere,
 * 0.1 more where an axial point has less than half of it; 0.2 less for each of the two that speaks against. On an
 * overhung rotor the axial line is a symptom: it takes nothing, and explains the level of its point. Without phase it
 * never passes 0.8. Shares and steps are common practice, no source.
 */
final class UnbalanceHypothesis implements Hypothesis {
    private static final String SOURCE =
            "ISO 13373-3:2015, symptoms of unbalance (from memory, unverified); shares: common practice, no source";
    private static final double DOMINANT = 0.8;
    private static final double SMALL_TWICE = 0.25;
    private static final double LARGE_AXIAL = 0.5;

    @Override
    public String fault() {
        return "unbalance";
    }

    @Override
    public Optional<String> notExamined(Evidence evidence) {
        return evidence.points().stream().anyMatch(point -> point.point().isRadial() && point.severity().isPresent()
                && point.speed().speed().isPresent()) ? Optional.empty()
                : Optional.of(fault() + " (no radial point has a verdict and a speed)");
    }

    @Override
    public List<Finding> weigh(Evidence evidence) {
        List<PointSurvey> showing = evidence.points().stream()
                .filter(point -> point.point().isRadial() && shows(point)).toList();
        if (showing.isEmpty()) {
            return List.of();
        }
        Weighing weighing = new Weighing("unbalance", fault(), 0.6);
        showing.forEach(point ->
                weighing.shownAt(point.point().id(), share(point) + " (radial, " + rating(point) + ")"));
        if (evidence.machine().rotor().isOverhung()) {
            evidence.points().stream().filter(point -> point.point().isAxial() && shows(point)).forEach(point ->
                    weighing.shownAt(point.point().id(), share(point) + " (axial, " + rating(point) + ")"));
        }
        weighTwice(weighing, showing);
        weighAxial(weighing, evidence, showing.stream().mapToDouble(UnbalanceHypothesis::once).max().orElseThrow());
        weighing.notMeasured("phase of 1\u00d7 between directions and bearings");
        weighing.notMeasured("1\u00d7 during run-down");
        weighing.alikeTo("bent-shaft", "misalignment", "looseness", "resonance");
        weighing.decidedBy("phase at two radial directions of one bearing, and at both bearings",
                "about 90\u00b0 between directions at each bearing speaks for unbalance; 0\u00b0 or 180\u00b0 for"
                + " looseness, resonance or misalignment");
        weighing.decidedBy("1\u00d7 and its phase during run-down",
                "it falls with the square of the speed for unbalance; a peak with a turn of the phase is a resonance;"
                + " what stays at crawling speed is a bow");
        weighing.decidedBy("a trial run for balancing",
                "a trial mass that changes 1\u00d7 as the rotor's model says confirms unbalance");
        Zone worst = showing.stream().flatMap(point -> point.zone().stream()).max(Zone::compareTo).orElse(Zone.A);
        Rank urgency = worst == Zone.D ? Rank.DECIDE_NOW : worst == Zone.C ? Rank.PLAN_REMEDY : Rank.WATCH;
        return List.of(weighing.finding(0.8, urgency, true, SOURCE));
    }

    private static boolean shows(PointSurvey point) {
        boolean high = point.zone().filter(zone -> zone.isWorseThan(Zone.B)).isPresent()
                || point.changes().stream().anyMatch(ChangeSurvey::rose);
        return high && point.severity().isPresent() && once(point) >= DOMINANT * velocity(point);
    }

    /** Noise and the edges of the band can leave a line larger than the whole, which no reader would believe. */
    private static String share(PointSurvey point) {
        return once(point) < 0.995 * velocity(point)
                ? "1\u00d7 carries " + figure(once(point)) + " of " + figure(velocity(point)) + " mm/s rms"
                : "1\u00d7 of " + figure(once(point)) + " mm/s rms is all of the velocity";
    }

    /** The rating with the quantity that decides it, where that isn't the velocity of the sentence. */
    private static String rating(PointSurvey point) {
        Verdict verdict = point.severity().orElseThrow();
        Quantity quantity = verdict.deciding().criterion().quantity();
        return verdict.rating() + (quantity == Quantity.VELOCITY ? "" : " by " + quantity);
    }

    private static void weighTwice(Weighing weighing, List<PointSurvey> showing) {
        double largest = showing.stream().mapToDouble(point -> point.shaftLine(2).map(UnbalanceHypothesis::millimetres)
                .orElse(0.0) / once(point)).max().orElse(0);
        if (largest < SMALL_TWICE) {
            weighing.supports(0.1, "2\u00d7 is " + percent(largest) + " of 1\u00d7 at most: it doesn't point to"
                    + " misalignment or looseness, which can yet show 1\u00d7 alone");
        } else {
            weighing.opposes(0.2, "2\u00d7 reaches " + percent(largest)
                    + " of 1\u00d7: misalignment or looseness is possible");
        }
    }

    private static void weighAxial(Weighing weighing, Evidence evidence, double highestOnce) {
        OptionalDouble axial = evidence.points().stream().filter(point -> point.point().isAxial())
                .filter(point -> point.shaftLine(1).isPresent()).mapToDouble(UnbalanceHypothesis::once).max();
        if (axial.isEmpty()) {
            weighing.notMeasured("1\u00d7 along the shaft, soundly recorded");
            weighing.opposes(0, "without an axial recording misalignment and a bent shaft are not ruled out");
        } else if (evidence.machine().rotor().isOverhung()) {
            weighing.supports(0, "1\u00d7 along the shaft is " + figure(axial.getAsDouble())
                    + " mm/s rms: on an overhung rotor unbalance shows there too");
        } else if (axial.getAsDouble() < LARGE_AXIAL * highestOnce) {
            weighing.supports(0.1, "1\u00d7 along the shaft is only " + figure(axial.getAsDouble()) + " mm/s rms");
        } else {
            weighing.opposes(0.2, "1\u00d7 along the shaft is " + figure(axial.getAsDouble())
                    + " mm/s rms: a bent shaft or misalignment is possible");
        }
    }

    private static double once(PointSurvey point) {
        return point.shaftLine(1).map(UnbalanceHypothesis::millimetres).orElse(0.0);
    }

    private static double millimetres(NamedLine line) {
        return line.level().in(Unit.MM_PER_S);
    }

    /** Broad-band velocity; of several bands that with the most, since a slow machine is judged in a lower one too. */
    private static double velocity(PointSurvey point) {
        OptionalDouble judged = point.measurements().stream().map(one -> one.level())
                .filter(level -> level.quantity() == Quantity.VELOCITY)
                .mapToDouble(level -> level.in(Unit.MM_PER_S)).max();
        String usual = Descriptors.rms(Quantity.VELOCITY, Descriptors.USUAL_BAND).name();
        return Math.max(judged.orElse(0), point.description().value(usual).orElse(judged.isPresent() ? 0
                : Double.POSITIVE_INFINITY));
    }

    private static String figure(double value) {
        return Digits.significant(value, 3);
    }

    private static String percent(double share) {
        return Math.round(100 * share) + " %";
    }
}
