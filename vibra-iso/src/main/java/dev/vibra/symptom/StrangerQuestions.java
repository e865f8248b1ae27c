package dev.vibra.symptom;

import static dev.vibra.symptom.LineSize.id;

import dev.vibra.descriptor.DominantLine;
import dev.vibra.point.PointSurvey;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Questions to lines that belong to no rate of the machine. */
final class StrangerQuestions {
    private static final String NAME = "a line of no known rate";

    private StrangerQuestions() {}

    /** What one point says to a question, given its lines of no known rate, the largest first. */
    private interface AtPoint {
        void weigh(Tally tally, PointSurvey point, List<DominantLine> strangers);
    }

    private static void ask(Evidence evidence, PointSurvey point, Tally tally, AtPoint question) {
        if (point.speed().speed().isEmpty()) {
            tally.cannot(id(point), "the speed isn't known");
            return;
        }
        List<DominantLine> strangers = Belonging.of(evidence, point).strangers().stream()
                .filter(line -> matters(point, line) && holds(point, line)
                        && isElsewhere(evidence, point, line)).toList();
        if (strangers.isEmpty()) {
            tally.says(false, List.of(id(point)), 0, id(point) + ": no large line that belongs to no known rate");
        } else {
            question.weigh(tally, point, strangers);
        }
    }

    /** Small beside what is allowed at its frequency it is nobody's business. */
    private static boolean matters(PointSurvey point, DominantLine line) {
        return line.level().si() >= LimitShare.part(point, line.hertz(), LimitShare.MATTERS);
    }

    /** A hump of noise is a natural frequency of this machine. */
    private static boolean holds(PointSurvey point, DominantLine line) {
        return point.pattern().steadyHertz().contains(line.hertz());
    }

    /**
     * Noise makes a narrow hump at each natural frequency, of which one line stands here and another there; what comes
     * from elsewhere has one frequency at all points that show it.
     */
    private static boolean isElsewhere(Evidence evidence, PointSurvey point, DominantLine line) {
        List<PointSurvey> others = evidence.points().stream()
                .filter(one -> one != point && !one.refused() && !one.dominantLines().isEmpty()).toList();
        return others.isEmpty() || others.stream().flatMap(one -> one.dominantLines().stream())
                .anyMatch(one -> ShaftLines.isSame(point, one.hertz(), line.hertz()));
    }

    private static LineSize size(DominantLine line) {
        return new LineSize(line.hertz(), line.level().si(), "");
    }

    private static String words(DominantLine line) {
        return NAME + ", " + line;
    }

    /** Such a line takes half of the energy that the boundary B/C allows. */
    record High() implements Question {
        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            SitePoints.of(evidence, site).forEach(one -> StrangerQuestions.ask(evidence, one, tally,
                    (noted, point, strangers) -> LimitShare.weigh(noted, point,
                            strangers.stream().map(StrangerQuestions::size).toList(), NAME)));
            return tally.any(Way.ANY.noPoint());
        }
    }

    /** Such a line is the largest at a point. */
    record Leads() implements Question {
        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            SitePoints.of(evidence, site).forEach(one -> StrangerQuestions.ask(evidence, one, tally,
                    (noted, point, strangers) -> noted.says(point.dominantLines().get(0).equals(strangers.get(0)),
                            List.of(id(point)), strangers.get(0).level().si(), id(point) + ": "
                                    + words(strangers.get(0)) + "; the largest is " + point.dominantLines().get(0))));
            return tally.any(Way.ANY.noPoint());
        }
    }

    /** Such a line wasn't there in the reference, or was at most half as large, and matters. */
    record Rose() implements Question {
        private static final double ROSE = 2;
        /** A hump of noise peaks here today and there tomorrow; common practice, no source. */
        private static final double NEAR = 0.05;
        /** Smaller lines of a reference aren't told. */
        private static final double TOLD_FROM = 0.05;
        private static final int LINES_TOLD = 8;

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            SitePoints.withReference(evidence, SitePoints.of(evidence, site), tally).forEach(pair ->
                    StrangerQuestions.ask(evidence, pair.now(), tally, (noted, point, strangers) ->
                            strangers.forEach(line -> weigh(noted, pair, line))));
            return tally.any(Way.ANY.noPoint());
        }

        private static void weigh(Tally tally, SitePoints.Pair pair, DominantLine line) {
            Optional<DominantLine> before = pair.then().dominantLines().stream()
                    .filter(one -> Math.abs(one.hertz() / line.hertz() - 1) < NEAR
                            || ShaftLines.isSame(pair.now(), one.hertz(), line.hertz()))
                    .max(Comparator.comparingDouble(one -> one.level().si()));
            double then = before.map(one -> one.level().si()).orElseGet(() -> untold(pair.then()));
            tally.weigh(List.of(id(pair.now())), size(line), Math.max(ROSE * then,
                    ShaftLines.mattersOfVelocity(pair.now(), line.hertz())), "", id(pair.now()) + ": "
                    + words(line) + ", was "
                    + (before.isPresent() ? "" : "at most ") + LineSize.millimetres(then));
        }

        /** The most that a line can have been that wasn't told. */
        private static double untold(PointSurvey then) {
            List<DominantLine> told = then.dominantLines();
            return told.isEmpty() ? 0 : told.size() < LINES_TOLD ? TOLD_FROM * told.get(0).level().si()
                    : told.get(told.size() - 1).level().si();
        }
    }
}
