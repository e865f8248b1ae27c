package dev.vibra.symptom;

import static dev.vibra.symptom.LineSize.id;

import dev.vibra.descriptor.NamedLine;
import dev.vibra.machine.Rate;
import dev.vibra.point.PointSurvey;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Questions to multiples of the shaft speed at single points. */
final class OrderQuestions {
    private OrderQuestions() {}

    /** A line takes half of the energy that the boundary B/C allows. */
    record High(int order, Way way) implements Question {
        static High of(Figures figures) {
            return new High(figures.whole("ORDER", 1, ShaftLines.HIGHEST_ORDER), figures.choice("DIRECTION", Way.ALL));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            for (PointSurvey point : way.of(SitePoints.of(evidence, site))) {
                ShaftLines.order(point, order).ifPresentOrElse(
                        line -> LimitShare.weigh(tally, point, List.of(line), ShaftLines.name(order)),
                        () -> tally.cannot(id(point), ShaftLines.missing(point, order)));
            }
            return tally.any(way.noPoint());
        }
    }

    /** A line is the largest of all points in a direction: the point with the largest line decides. */
    record Leads(int order, Way way) implements Question {
        static Leads of(Figures figures) {
            return new Leads(figures.whole("ORDER", 1, ShaftLines.HIGHEST_ORDER), figures.choice("DIRECTION", Way.ALL));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            List<PointSurvey> points = way.of(SitePoints.of(evidence, site)).stream()
                    .filter(point -> ShaftLines.order(point, order).isPresent()).toList();
            Optional<PointSurvey> loudest = points.stream().filter(point -> !point.dominantLines().isEmpty())
                    .max(Comparator.comparingDouble(point -> point.dominantLines().get(0).level().si()));
            if (loudest.isEmpty()) {
                return points.isEmpty() ? Answer.notMeasured(way.noPoint() + ", or the speed isn't known")
                        : Answer.notSeen("no line stands");
            }
            LineSize there = ShaftLines.order(loudest.get(), order).orElseThrow();
            boolean largest = ShaftLines.leads(loudest.get(), there);
            String words = id(loudest.get()) + ": the largest line is " + (largest
                    ? ShaftLines.name(order) + ", " + there
                    : loudest.get().dominantLines().get(0) + ", " + ShaftLines.name(order) + " is " + there);
            if (largest && !there.isKnown()) {
                return Answer.notMeasured(there.doubt() + " (" + id(loudest.get()) + ")");
            }
            return !largest ? Answer.notSeen(words) : Answer.seen(points.stream().filter(point ->
                    ShaftLines.leads(point, ShaftLines.order(point, order).orElseThrow())).map(LineSize::id).toList(),
                    words);
        }
    }

    /** One multiple reaches a share of another one at a point where it matters. */
    record Ratio(int order, int other, double share) implements Question {
        static Ratio of(Figures figures) {
            return new Ratio(figures.whole("A", 1, ShaftLines.HIGHEST_ORDER), figures.whole("B", 1,
                    ShaftLines.HIGHEST_ORDER), figures.number("SHARE", 0.01, 100));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            return ask(SitePoints.loud(SitePoints.of(evidence, site)));
        }

        Answer ask(List<PointSurvey> points) {
            Tally tally = new Tally();
            points.forEach(point -> weigh(tally, point));
            return tally.any(Way.ANY.noPoint());
        }

        private void weigh(Tally tally, PointSurvey point) {
            Optional<LineSize> line = ShaftLines.order(point, order);
            Optional<LineSize> base = ShaftLines.order(point, other);
            if (line.isEmpty() || base.isEmpty()) {
                tally.cannot(id(point), ShaftLines.missing(point, Math.max(order, other)));
                return;
            }
            double matters = ShaftLines.matters(point, line.get().hertz());
            double needed = share * base.get().size();
            // Noise where the other line would be hides none that matters less than this one has to.
            String doubt = needed < matters ? "" : base.get().doubt();
            String ratio = base.get().isKnown() ? LineSize.figure(line.get().size() / base.get().size()) + " of "
                    + ShaftLines.name(other) + ", " + line.get() : line.get() + ", " + ShaftLines.name(other) + " "
                    + base.get();
            tally.weigh(List.of(id(point)), line.get(), Math.max(needed, matters), doubt,
                    id(point) + ": " + ShaftLines.name(order) + " is " + ratio);
        }
    }

    /** A count of multiples from 3× to 10× reaches a share of the largest; those of other rates don't count. */
    record Row(int count, double share) implements Question {
        private static final int FIRST = 3;

        static Row of(Figures figures) {
            return new Row(figures.whole("COUNT", 1, ShaftLines.HIGHEST_ORDER - FIRST + 1),
                    figures.number("SHARE", 0.01, 1));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            for (PointSurvey point : SitePoints.loud(SitePoints.of(evidence, site))) {
                if (ShaftLines.order(point, 1).isEmpty()) {
                    tally.cannot(id(point), ShaftLines.missing(point, 1));
                } else {
                    weigh(tally, point);
                }
            }
            return tally.any(Way.ANY.noPoint());
        }

        private void weigh(Tally tally, PointSurvey point) {
            List<Integer> own = IntStream.rangeClosed(FIRST, ShaftLines.HIGHEST_ORDER).boxed()
                    .filter(order -> !isOfAnotherRate(point, order)).toList();
            double needed = ShaftLines.matters(point) / ShaftLines.MATTERS * share;
            List<Integer> sure = new ArrayList<>();
            List<Integer> possible = new ArrayList<>();
            for (int order : own) {
                Optional<LineSize> line = ShaftLines.order(point, order);
                if (line.isEmpty() || line.get().size() >= needed) {
                    (line.isPresent() && line.get().isKnown() ? sure : possible).add(order);
                }
            }
            String told = sure.isEmpty() ? "none of 3\u00d7 to 10\u00d7 reaches" : sure.stream().map(ShaftLines::name)
                    .collect(Collectors.joining(", ")) + (sure.size() == 1 ? " reaches" : " reach");
            tally.count(id(point), sure.size(), sure.size() + possible.size(), Math.min(count, own.size()), id(point)
                    + ": " + told + " " + LineSize.figure(share) + " of the largest multiple, "
                    + LineSize.millimetres(ShaftLines.largest(point).orElse(0)),
                    "noise or the end of the spectrum hides multiples");
        }

        /** Blades and teeth make multiples of the speed in a sound machine. */
        private static boolean isOfAnotherRate(PointSurvey point, int order) {
            return ShaftLines.order(point, order).filter(own -> point.lines().stream()
                    .filter(line -> line.rate().kind() != Rate.Kind.SHAFT)
                    .anyMatch(line -> ShaftLines.standsAt(point, line, own.hertz()))).isPresent();
        }
    }

    /** A count of the odd halves 0.5×, 1.5×, 2.5×, 3.5× stands and reaches a share of the largest multiple. */
    record Halves(int count, double share) implements Question {
        private static final int HIGHEST = 4;

        static Halves of(Figures figures) {
            return new Halves(figures.whole("COUNT", 1, HIGHEST), figures.number("SHARE", 0, 1));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            for (PointSurvey point : SitePoints.of(evidence, site)) {
                List<NamedLine> halves = point.pattern().halves().stream().limit(HIGHEST).toList();
                if (halves.isEmpty()) {
                    tally.cannot(id(point), "halves of the speed can't be parted");
                } else {
                    weigh(tally, point, halves);
                }
            }
            return tally.any(Way.ANY.noPoint());
        }

        private void weigh(Tally tally, PointSurvey point, List<NamedLine> halves) {
            double needed = ShaftLines.largest(point).orElse(0) * share;
            List<NamedLine> may = halves.stream().filter(line -> line.level().si() >= needed).toList();
            List<NamedLine> sure = may.stream().filter(NamedLine::stands).toList();
            String told = sure.stream().map(line -> LineSize.figure(line.order() / 2.0) + "\u00d7 "
                    + LineSize.millimetres(line.level().si())).collect(Collectors.joining(", "));
            tally.count(id(point), sure.size(), may.size(), count, id(point) + ": "
                    + (told.isEmpty() ? "no half of the speed stands" : told), "noise hides halves of the speed");
        }
    }

    /** A multiple has at least doubled since the reference, and matters. */
    record Rose(int order) implements Question {
        private static final double ROSE = 2;

        static Rose of(Figures figures) {
            return new Rose(figures.whole("ORDER", 1, ShaftLines.HIGHEST_ORDER));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            SitePoints.withReference(evidence, SitePoints.of(evidence, site), tally)
                    .forEach(pair -> weigh(tally, pair));
            return tally.any(Way.ANY.noPoint());
        }

        private void weigh(Tally tally, SitePoints.Pair pair) {
            Optional<LineSize> now = ShaftLines.order(pair.now(), order);
            Optional<LineSize> then = ShaftLines.order(pair.then(), order);
            if (now.isEmpty() || then.isEmpty()) {
                tally.cannot(id(pair.now()), ShaftLines.missing(now.isEmpty() ? pair.now() : pair.then(), order));
                return;
            }
            double matters = ShaftLines.matters(pair.now(), now.get().hertz());
            tally.weigh(List.of(id(pair.now())), now.get(), Math.max(ROSE * then.get().size(), matters), "",
                    id(pair.now()) + ": " + ShaftLines.name(order) + " was " + then.get() + ", is " + now.get());
        }
    }
}
