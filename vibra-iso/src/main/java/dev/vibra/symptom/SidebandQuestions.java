package dev.vibra.symptom;

import static dev.vibra.symptom.LineSize.id;

import dev.vibra.machine.Rate;
import dev.vibra.point.PointSurvey;
import dev.vibra.point.Sidebands;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;

/** Questions to lines beside other lines. */
final class SidebandQuestions {
    private static final String POLE_PASS = "pole-pass";
    private static final String SHAFT = "shaft";
    /** Noise that reaches this share of the line between them would hide them; common practice, no source. */
    private static final double HIDDEN = 0.1;
    private static final double ROSE = 2;

    private SidebandQuestions() {}

    private static void weigh(Tally tally, PointSurvey point, List<Sidebands> there, int pairs, double share,
            boolean ofMotor) {
        List<Sidebands> standing = there.stream().filter(one -> one.carrier().stands()).toList();
        if (standing.isEmpty()) {
            tally.cannot(id(point), there.isEmpty() ? missing(point, ofMotor) : there.get(0).carrier().name()
                    + " doesn't stand");
            return;
        }
        Sidebands most = standing.stream().max(Comparator.comparing((Sidebands one) -> reaches(one, pairs, share))
                .thenComparing(Sidebands::largest)).orElseThrow();
        double hidden = Math.max(most.lowerStands() ? 0 : most.lower(), most.upperStands() ? 0 : most.upper())
                / most.carrier().level().si();
        if (!reaches(most, pairs, share) && hidden >= Math.max(HIDDEN, share)) {
            tally.cannot(id(point), "noise would hide lines beside " + most.carrier().name());
            return;
        }
        double reached = most.largest() / most.carrier().level().si();
        tally.says(reaches(most, pairs, share), List.of(id(point)), reached,
                id(point) + ": " + most + ", " + LineSize.figure(reached) + " of it");
    }

    /** Lines of a motor need a line frequency and poles; what lies too close together isn't listed. */
    private static String missing(PointSurvey point, boolean ofMotor) {
        return ofMotor && !point.pattern().twiceLineObstacle().isEmpty() ? point.pattern().twiceLineObstacle()
                : "the recording is too short to part such lines, or what they follow from isn't known";
    }

    private static boolean reaches(Sidebands one, int pairs, double share) {
        return one.pairs() >= pairs && one.largest() >= share * one.carrier().level().si();
    }

    private static List<Sidebands> of(PointSurvey point, Predicate<Rate> carrier, Rate.Kind spacing) {
        return point.pattern().sidebands().stream().filter(one -> carrier.test(one.carrier().rate())
                && one.spacing().kind() == spacing).toList();
    }

    /** Pairs at the speed of a shaft stand beside a multiple of a rate and reach a share of it. */
    record OfRate(RateLines rate, int pairs, double share) implements Question {
        static OfRate of(Figures figures) {
            RateLines rate = figures.choice("RATE", RateLines.ALL);
            figures.choice("SPACING", List.of(SHAFT));
            return new OfRate(rate, figures.whole("PAIRS", 1, 5), figures.numberOr("SHARE", 0, 10, 0));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            SitePoints.of(evidence, site).forEach(point -> weigh(tally, point, SidebandQuestions.of(point,
                    carrier -> rate.isOf(carrier, site), Rate.Kind.SHAFT), pairs, share, rate == RateLines.TWICE_LINE));
            return tally.any(Way.ANY.noPoint());
        }
    }

    /** Pairs at the pole-pass rate stand beside a multiple of the shaft speed. */
    record OfOrder(int order, int pairs) implements Question {
        static OfOrder of(Figures figures) {
            int order = figures.whole("ORDER", 1, ShaftLines.HIGHEST_ORDER);
            figures.choice("SPACING", List.of(POLE_PASS));
            return new OfOrder(order, figures.whole("PAIRS", 1, 5));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            SitePoints.of(evidence, site).forEach(point -> weigh(tally, point, SidebandQuestions.of(point,
                    carrier -> carrier.kind() == Rate.Kind.SHAFT, Rate.Kind.POLE_PASS).stream()
                    .filter(one -> one.carrier().order() == order).toList(), pairs, 0, true));
            return tally.any(Way.ANY.noPoint());
        }
    }

    /** The lines beside a rate have at least doubled since the reference, and matter beside it. */
    record Rose(RateLines rate) implements Question {
        private static final double MATTERS = 0.1;

        static Rose of(Figures figures) {
            return new Rose(figures.choice("RATE", RateLines.ALL));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            SitePoints.withReference(evidence, SitePoints.of(evidence, site), tally).forEach(pair -> {
                List<Sidebands> now = at(pair.now(), site);
                List<Sidebands> then = at(pair.then(), site);
                if (now.isEmpty() || then.isEmpty()) {
                    tally.cannot(id(pair.now()), missing(pair.now(), rate == RateLines.TWICE_LINE));
                } else {
                    weigh(tally, pair.now(), now, then);
                }
            });
            return tally.any(Way.ANY.noPoint());
        }

        private List<Sidebands> at(PointSurvey point, Site site) {
            return SidebandQuestions.of(point, carrier -> rate.isOf(carrier, site), Rate.Kind.SHAFT);
        }

        private void weigh(Tally tally, PointSurvey point, List<Sidebands> now, List<Sidebands> then) {
            double standing = Math.sqrt(now.stream().mapToDouble(one -> squares(one, false)).sum());
            double most = Math.sqrt(now.stream().mapToDouble(one -> squares(one, true)).sum());
            double was = Math.sqrt(then.stream().mapToDouble(one -> squares(one, true)).sum());
            double carrier = now.stream().mapToDouble(one -> one.carrier().level().si()).max().orElseThrow();
            double needed = Math.max(ROSE * was, MATTERS * carrier);
            double hertz = now.get(0).carrier().hertz();
            LineSize told = standing >= needed ? new LineSize(hertz, standing, "") : new LineSize(hertz, most,
                    standing == most ? "" : "noise would hide lines beside " + rate.words());
            tally.weigh(List.of(id(point)), told, needed, "", id(point) + ": the lines beside " + rate.words()
                    + " were " + LineSize.millimetres(was) + ", are " + told);
        }

        /** Lines in the noise count with its level where it could hide them. */
        private static double squares(Sidebands one, boolean withNoise) {
            return (withNoise || one.lowerStands() ? one.lower() * one.lower() : 0)
                    + (withNoise || one.upperStands() ? one.upper() * one.upper() : 0);
        }
    }
}
