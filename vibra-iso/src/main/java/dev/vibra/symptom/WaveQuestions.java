package dev.vibra.symptom;

import static dev.vibra.symptom.LineSize.id;

import dev.vibra.point.LinePattern;
import dev.vibra.point.PointSurvey;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** Questions to the shape of the wave in a turn, its course within the recording, and the structure. */
final class WaveQuestions {
    private WaveQuestions() {}

    private static Answer ask(Evidence evidence, Site site, Function<LinePattern, OptionalDouble> value, double limit,
            String what) {
        Tally tally = new Tally();
        for (PointSurvey point : SitePoints.loud(SitePoints.of(evidence, site))) {
            OptionalDouble found = value.apply(point.pattern());
            if (found.isEmpty()) {
                tally.cannot(id(point), "the recording is too short, or no multiple of the speed stands");
            } else {
                tally.says(found.getAsDouble() >= limit, List.of(id(point)), found.getAsDouble(),
                        id(point) + ": " + what + " " + LineSize.figure(found.getAsDouble()));
            }
        }
        return tally.any(Way.ANY.noPoint());
    }

    /** The mean wave of a turn is flattened at one side. */
    record Flattened(double limit) implements Question {
        static Flattened of(Figures figures) {
            return new Flattened(figures.number("LIMIT", 0.01, 10));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            return WaveQuestions.ask(evidence, site, LinePattern::flattening, limit, "skewness of the wave of a turn");
        }
    }

    /** The vector of 1× wanders within the recording. */
    record Wanders(double limit) implements Question {
        static Wanders of(Figures figures) {
            return new Wanders(figures.number("LIMIT", 0.01, 10));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            return WaveQuestions.ask(evidence, site, LinePattern::wander, limit,
                    "1\u00d7 wanders by a share of its mean of");
        }
    }

    /** A natural frequency lies close to a multiple of the speed. */
    record Natural(int order, double share) implements Question {
        static Natural of(Figures figures) {
            return new Natural(figures.whole("ORDER", 1, ShaftLines.HIGHEST_ORDER), figures.number("SHARE", 0.001, 1));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Optional<Double> speed = SitePoints.of(evidence, site).stream().flatMap(point -> point.speed().speed()
                    .stream()).map(one -> one.hertz()).findFirst()
                    .or(() -> evidence.machine().speed().map(one -> one.hertz() * site.ratio()));
            List<Double> naturals = evidence.machine().naturalHertz();
            if (speed.isEmpty() || naturals.isEmpty()) {
                return Answer.notMeasured(naturals.isEmpty() ? "no natural frequency is known"
                        : "the speed isn't known");
            }
            double hertz = order * speed.get();
            double closest = naturals.stream().min(Comparator.comparingDouble(one -> Math.abs(one - hertz)))
                    .orElseThrow();
            String words = "natural frequency " + LineSize.figure(closest) + " Hz, " + ShaftLines.name(order) + " at "
                    + LineSize.figure(hertz) + " Hz";
            return Math.abs(closest - hertz) <= share * hertz ? Answer.seen(List.of(), words) : Answer.notSeen(words);
        }
    }
}
