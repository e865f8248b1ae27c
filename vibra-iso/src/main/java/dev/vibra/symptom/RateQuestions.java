package dev.vibra.symptom;

import static dev.vibra.symptom.LineSize.id;

import dev.vibra.descriptor.DominantLine;
import dev.vibra.point.PointSurvey;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Questions to the lines of a rate: twice the line frequency, a mesh, blades, a belt. */
final class RateQuestions {
    private static final double ROSE = 2;

    private RateQuestions() {}

    /** What one point says to a question, given its lines of the rate: at least one. */
    private interface AtPoint {
        void weigh(Tally tally, PointSurvey point, List<LineSize> lines);
    }

    private static Answer ask(Evidence evidence, Site site, RateLines rate, AtPoint question) {
        Tally tally = new Tally();
        for (PointSurvey point : rate.pointsOf(evidence, site)) {
            List<LineSize> lines = rate.at(point, site);
            if (lines.isEmpty()) {
                tally.cannot(id(point), rate.missing(point));
            } else {
                question.weigh(tally, point, lines);
            }
        }
        return tally.any(Way.ANY.noPoint());
    }

    private static RateLines rate(Figures figures) {
        return figures.choice("RATE", RateLines.ALL);
    }

    /** A multiple takes half of the energy that the boundary B/C allows. */
    record High(RateLines rate) implements Question {
        static High of(Figures figures) {
            return new High(RateQuestions.rate(figures));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            return RateQuestions.ask(evidence, site, rate, (tally, point, lines) ->
                    LimitShare.weigh(tally, point, lines, rate.multiples() == 1 ? rate.words()
                            : "a multiple of " + rate.words()));
        }
    }

    /** A multiple is the largest line at a point, and matters beside what is allowed there. */
    record Leads(RateLines rate) implements Question {
        static Leads of(Figures figures) {
            return new Leads(RateQuestions.rate(figures));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            return RateQuestions.ask(evidence, site, rate, (tally, point, lines) -> {
                Optional<LineSize> first = lines.stream().filter(line -> ShaftLines.leads(point, line)
                        && line.size() >= LimitShare.part(point, line.hertz(), LimitShare.MATTERS)).findFirst();
                LineSize largest = lines.stream().max(Comparator.comparingDouble(LineSize::size)).orElseThrow();
                if (first.isPresent() && !first.get().isKnown()) {
                    tally.cannot(id(point), first.get().doubt());
                } else {
                    tally.says(first.isPresent(), List.of(id(point)), largest.size(), id(point) + ": "
                            + largest(point, first.orElse(largest)));
                }
            });
        }

        private String largest(PointSurvey point, LineSize line) {
            return rate.words() + " makes " + line + " at " + LineSize.figure(line.hertz())
                    + " Hz, the largest line is " + point.dominantLines().stream().findFirst()
                    .map(DominantLine::toString).orElse("none that stands");
        }
    }

    /** Twice or three times the rate is larger than the rate itself, and matters. */
    record Multiples(RateLines rate) implements Question {
        static Multiples of(Figures figures) {
            return new Multiples(RateQuestions.rate(figures));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            return RateQuestions.ask(evidence, site, rate, this::weigh);
        }

        private void weigh(Tally tally, PointSurvey point, List<LineSize> lines) {
            if (lines.size() < 2) {
                tally.cannot(id(point), "twice " + rate.words() + " lies outside the spectrum");
                return;
            }
            LineSize first = lines.get(0);
            LineSize other = lines.stream().skip(1).max(Comparator.comparing(LineSize::isKnown)
                    .thenComparingDouble(LineSize::size)).orElseThrow();
            double matters = ShaftLines.mattersOfVelocity(point, first.hertz());
            String doubt = lines.size() < rate.multiples() ? "higher multiples of " + rate.words()
                    + " lie outside the spectrum" : first.size() < matters ? "" : first.doubt();
            tally.weigh(List.of(id(point)), other, Math.max(first.size(), matters), doubt, id(point) + ": "
                    + rate.words() + " is " + first + ", its largest multiple " + other);
        }
    }

    /** A count of multiples stands and reaches a share of 1×. */
    record Family(RateLines rate, int count, double share) implements Question {
        static Family of(Figures figures) {
            return new Family(RateQuestions.rate(figures), figures.whole("COUNT", 1, 4),
                    figures.number("SHARE", 0.01, 100));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            return RateQuestions.ask(evidence, site, rate, this::weigh);
        }

        private void weigh(Tally tally, PointSurvey point, List<LineSize> lines) {
            Optional<LineSize> once = ShaftLines.order(point, 1);
            if (once.isEmpty()) {
                tally.cannot(id(point), ShaftLines.missing(point, 1));
                return;
            }
            List<LineSize> may = lines.stream().filter(line -> line.size() >= share * once.get().size()).toList();
            List<LineSize> sure = may.stream().filter(LineSize::isKnown).toList();
            int outside = rate.multiples() - lines.size();
            tally.count(id(point), sure.size(), may.size() + outside, count, id(point) + ": " + sure.size()
                    + (sure.size() == 1 ? " multiple of " : " multiples of ") + rate.words() + " reach "
                    + LineSize.figure(share) + " of 1\u00d7, " + once.get(),
                    "noise or other lines hide multiples of " + rate.words());
        }
    }

    /** The multiples together have at least doubled since the reference, and matter. */
    record Rose(RateLines rate) implements Question {
        static Rose of(Figures figures) {
            return new Rose(RateQuestions.rate(figures));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            SitePoints.withReference(evidence, rate.pointsOf(evidence, site), tally).forEach(pair -> {
                List<LineSize> now = rate.at(pair.now(), site);
                List<LineSize> then = rate.at(pair.then(), site);
                if (now.isEmpty() || then.isEmpty()) {
                    tally.cannot(id(pair.now()), rate.missing(now.isEmpty() ? pair.now() : pair.then()));
                } else {
                    weigh(tally, pair, now, then);
                }
            });
            return tally.any(Way.ANY.noPoint());
        }

        /**
         * Noise counts as the level of the reference, and so does a line there that has now's frequency: its speed may
         * have been read less closely. Now noise shows nothing, but may hide as much.
         */
        private void weigh(Tally tally, SitePoints.Pair pair, List<LineSize> now, List<LineSize> then) {
            List<LineSize> standing = now.stream().filter(LineSize::isKnown).toList();
            double was = Math.max(together(then), now.stream().mapToDouble(line ->
                    ShaftLines.standing(pair.then(), line.hertz())).max().orElse(0));
            double needed = Math.max(ROSE * was, ShaftLines.mattersOfVelocity(pair.now(), now.get(0).hertz()));
            LineSize told = together(standing) >= needed || now.size() == standing.size()
                    ? new LineSize(now.get(0).hertz(), together(standing), "")
                    : new LineSize(now.get(0).hertz(), together(now), now.stream().filter(line -> !line.isKnown())
                            .findFirst().orElseThrow().doubt());
            tally.weigh(List.of(id(pair.now())), told, needed, "", id(pair.now()) + ": " + rate.words() + " was "
                    + LineSize.millimetres(was) + ", is " + told);
        }

        private static double together(List<LineSize> lines) {
            return Math.sqrt(lines.stream().mapToDouble(line -> line.size() * line.size()).sum());
        }
    }
}
