package dev.vibra.symptom;

import dev.vibra.internal.Digits;
import dev.vibra.point.PointSurvey;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.severity.Boundary;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.Judgement;
import dev.vibra.severity.Verdict;
import dev.vibra.severity.Zone;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a criterion allows one line alone at its frequency: the limit between zones B and C, as the velocity of a sine;
 * of several judgements the one that allows least.
 *
 * @param velocity rms velocity in m/s
 * @param criterion whose limit it is
 * @param boundary the limit; the highest one where the standard tells no zones C and D apart
 */
record LimitShare(double velocity, Criterion criterion, Boundary boundary) {
    /** The root of a half: squares add up to the square of the limit. Common practice, no source. */
    static final double HIGH = 0.7;
    /** Lines of a sound machine reach this share every day; common practice, no source. */
    static final double MATTERS = 0.2;
    /** A line that rose is looked at from here on; common practice, no source. */
    static final double RISE_MATTERS = 0.1;

    /** Empty where no judgement counts the line: it lies outside their bands. */
    static Optional<LimitShare> of(Verdict verdict, double hertz) {
        return verdict.judgements().stream().map(Judgement::criterion)
                .filter(criterion -> hertz >= criterion.band().lowestHertz())
                .filter(criterion -> hertz <= criterion.band().highestHertz())
                .map(criterion -> of(criterion, hertz)).min(Comparator.comparingDouble(LimitShare::velocity));
    }

    /** A share of what is allowed a line at a point, as rms velocity in m/s; 0 where nothing is known of it. */
    static double part(PointSurvey point, double hertz, double share) {
        return point.severity().flatMap(verdict -> of(verdict, hertz)).map(limit -> share * limit.velocity).orElse(0.0);
    }

    private static LimitShare of(Criterion criterion, double hertz) {
        List<Boundary> boundaries = criterion.boundaries();
        Boundary boundary = boundaries.stream().filter(one -> one.worse().isWorseThan(Zone.B)).findFirst()
                .orElse(boundaries.get(boundaries.size() - 1));
        Level limit = Level.of(boundary.limit(), criterion.unit(), criterion.detector());
        return new LimitShare(limit.sineAs(Quantity.VELOCITY, Detector.RMS, hertz).si(), criterion, boundary);
    }

    /** A line and what is allowed at its frequency. */
    private record Limited(LineSize line, LimitShare limit) {
        double share() {
            return line.size() / limit.velocity;
        }
    }

    /** Weighs lines of one rate at a point: the largest that is known if it is high, else the largest that may be. */
    static void weigh(Tally tally, PointSurvey point, List<LineSize> lines, String what) {
        Optional<Verdict> verdict = point.severity();
        if (verdict.isEmpty()) {
            tally.cannot(LineSize.id(point), "there is no verdict");
            return;
        }
        List<Limited> limited = lines.stream().flatMap(line -> of(verdict.get(), line.hertz()).stream()
                .map(limit -> new Limited(line, limit))).toList();
        Comparator<Limited> byShare = Comparator.comparingDouble(Limited::share);
        Optional<Limited> telling = limited.stream().filter(one -> one.line.isKnown()).max(byShare)
                .filter(one -> one.share() >= HIGH).or(() -> limited.stream().max(byShare));
        telling.ifPresentOrElse(one -> tally.weigh(List.of(LineSize.id(point)), one.line, HIGH * one.limit.velocity, "",
                LineSize.id(point) + ": " + what + " of " + one.line + " is " + LineSize.figure(one.share()) + " of "
                        + one.limit), () -> tally.cannot(LineSize.id(point), what
                                + " lies outside the bands of the criterion"));
    }

    /** Returns the limit, as in {@code the boundary B/C (2.8 mm/s rms)}. */
    @Override
    public String toString() {
        return "the boundary " + boundary.name() + " (" + Digits.compact(boundary.limit(), 4) + " " + criterion.unit()
                + " " + criterion.detector() + ")";
    }
}
