package dev.vibra.symptom;

import dev.vibra.descriptor.Descriptors;
import dev.vibra.descriptor.DominantLine;
import dev.vibra.descriptor.NamedLine;
import dev.vibra.machine.Rate;
import dev.vibra.point.PointSurvey;
import dev.vibra.point.RecordingSummary;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import java.util.OptionalDouble;
import java.util.Optional;
import java.util.stream.IntStream;

/** Multiples of the speed of the shaft at a point, and what they are held against. */
final class ShaftLines {
    /** A line matters from this share of the largest one on; common practice, no source. */
    static final double MATTERS = 0.1;
    static final int HIGHEST_ORDER = 10;
    /** Two lines that a recording doesn't part make one, up to this much larger than either. */
    private static final double LEADS = 0.6;
    private static final double FINEST_RESOLUTION = 0.1;

    private ShaftLines() {}

    static String name(int order) {
        return order + "\u00d7";
    }

    /** Empty without speed, and where the spectrum ends before it. */
    static Optional<LineSize> order(PointSurvey point, int order) {
        return point.lines().stream().filter(line -> line.rate().kind() == Rate.Kind.SHAFT && line.order() == order
                && line.rate().owner().equals(Rate.Kind.SHAFT.toString())).findFirst()
                .map(line -> LineSize.of(line, name(order))).map(line -> point.pattern().mixedOrders().contains(order)
                        ? line.doubted(name(order) + " isn't parted from twice the line frequency") : line);
    }

    /** Why there is no such line. */
    static String missing(PointSurvey point, int order) {
        return point.speed().speed().isEmpty() ? "the speed isn't known"
                : name(order) + " lies outside the spectrum, or the recording is too short for it";
    }

    /** Rms velocity of the largest multiple that stands; empty if none does. */
    static OptionalDouble largest(PointSurvey point) {
        return IntStream.rangeClosed(1, HIGHEST_ORDER).mapToObj(order -> order(point, order)).flatMap(Optional::stream)
                .filter(LineSize::isKnown).mapToDouble(LineSize::size).max();
    }

    /** What a multiple has to reach to matter; whatever stands matters where it stands alone. */
    static double matters(PointSurvey point) {
        return MATTERS * largest(point).orElse(0);
    }

    /** The same beside what is allowed at its frequency too. */
    static double matters(PointSurvey point, double hertz) {
        return Math.max(matters(point), LimitShare.part(point, hertz, LimitShare.RISE_MATTERS));
    }

    /** Broad-band velocity in m/s; of several bands that with the most: a slow machine is judged in a lower one too. */
    static OptionalDouble velocity(PointSurvey point) {
        OptionalDouble judged = point.measurements().stream().map(one -> one.level())
                .filter(level -> level.quantity() == Quantity.VELOCITY).mapToDouble(level -> level.si()).max();
        String usual = Descriptors.rms(Quantity.VELOCITY, Descriptors.USUAL_BAND).name();
        OptionalDouble described = point.description().value(usual);
        return judged.isEmpty() && described.isEmpty() ? OptionalDouble.empty()
                : OptionalDouble.of(Math.max(judged.orElse(0), described.orElse(0) * Unit.MM_PER_S.toSi()));
    }

    /** What a line of a rate has to reach to matter. */
    static double mattersOfVelocity(PointSurvey point, double hertz) {
        return Math.max(MATTERS * velocity(point).orElse(0), LimitShare.part(point, hertz, LimitShare.RISE_MATTERS));
    }

    /** True if a line is the largest of its point, and not in the shadow of a multiple beside it. */
    static boolean leads(PointSurvey point, LineSize line) {
        Optional<DominantLine> first = point.dominantLines().stream().findFirst();
        return first.isPresent() && Math.abs(first.get().hertz() - line.hertz()) < resolution(point)
                && line.size() >= LEADS * first.get().level().si() && line.size() >= largest(point).orElse(0);
    }

    /** Distance of the lines of the spectrum in Hz. */
    static double resolution(PointSurvey point) {
        RecordingSummary recording = point.recording().orElseThrow();
        return Math.max(2 * recording.sampleRateHertz() / recording.samples(), FINEST_RESOLUTION);
    }

    /** True if two frequencies are the same line of the spectrum. */
    static boolean isSame(PointSurvey point, double hertz, double other) {
        return Math.abs(hertz - other) < 0.5 * resolution(point);
    }

    /** Rms velocity of the largest line that stands at a frequency, whatever makes it; 0 without one. */
    static double standing(PointSurvey point, double hertz) {
        return point.dominantLines().stream().filter(line -> isSame(point, line.hertz(), hertz))
                .mapToDouble(line -> line.level().si()).max().orElse(0);
    }

    static boolean standsAt(PointSurvey point, NamedLine line, double hertz) {
        return line.stands() && isSame(point, line.hertz(), hertz);
    }
}
