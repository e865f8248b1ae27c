package dev.vibra.symptom;

import static dev.vibra.symptom.LineSize.id;

import dev.vibra.machine.CoupledParts;
import dev.vibra.measuring.Direction;
import dev.vibra.point.PointSurvey;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Questions to one multiple of the shaft speed that compare points. */
final class HousingQuestions {
    static final String NO_CROSSED = "no housing here is known to have two points at right angles across the shaft";

    private HousingQuestions() {}

    /** A point with the size of the line that is asked for. */
    private record Sized(PointSurvey point, LineSize line) {
        static List<Sized> of(List<PointSurvey> points, int order) {
            return points.stream().flatMap(point -> ShaftLines.order(point, order).stream()
                    .map(line -> new Sized(point, line))).toList();
        }

        static Optional<Sized> largest(List<Sized> sized) {
            return sized.stream().max(Comparator.comparingDouble(one -> one.line.size()));
        }
    }

    /** Two radial points of one housing at right angles. */
    record Crossed(String housing, PointSurvey first, PointSurvey second) {
        private static final Map<Direction, Direction> ACROSS = Map.of(Direction.HORIZONTAL, Direction.VERTICAL,
                Direction.RADIAL_IN_LINE, Direction.RADIAL_ACROSS, Direction.PROBE_X, Direction.PROBE_Y);

        static List<Crossed> of(List<PointSurvey> points) {
            List<Crossed> pairs = new ArrayList<>();
            SitePoints.byHousing(points).forEach((housing, at) -> at.forEach(first -> at.stream()
                    .filter(second -> second.point().direction().isPresent() && second.point().direction().equals(
                            first.point().direction().map(ACROSS::get)))
                    .forEach(second -> pairs.add(new Crossed(housing, first, second)))));
            return pairs;
        }
    }

    /** A multiple along the shaft reaches a share of the radial one at the same housing. */
    record Axial(int order, double share) implements Question {
        static Axial of(Figures figures) {
            return new Axial(figures.whole("ORDER", 1, ShaftLines.HIGHEST_ORDER), figures.number("SHARE", 0.01, 100));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            return ask(SitePoints.of(evidence, site));
        }

        Answer ask(List<PointSurvey> points) {
            Tally tally = new Tally();
            List<PointSurvey> loud = SitePoints.loud(points);
            SitePoints.byHousing(points).values().stream().filter(at -> at.stream().anyMatch(loud::contains))
                    .forEach(at -> weigh(tally, at));
            return tally.any("no housing here has an axial and a radial point at a known speed");
        }

        private void weigh(Tally tally, List<PointSurvey> at) {
            Optional<Sized> along = Sized.largest(Sized.of(Way.AXIAL.of(at), order));
            Optional<Sized> across = Sized.largest(Sized.of(Way.RADIAL.of(at), order));
            if (along.isPresent() && across.isPresent()) {
                PointSurvey point = along.get().point;
                double needed = share * across.get().line.size();
                double matters = ShaftLines.matters(point);
                tally.weigh(List.of(id(point)), along.get().line, Math.max(needed, matters),
                        needed < matters ? "" : across.get().line.doubt(), id(point) + ": " + ShaftLines.name(order)
                        + " along the shaft is " + along.get().line + ", radially " + across.get().line + " at "
                        + id(across.get().point));
            }
        }
    }

    /** A multiple is several times as large in one radial direction as in the other. */
    record Directional(int order, double factor) implements Question {
        static Directional of(Figures figures) {
            return new Directional(figures.whole("ORDER", 1, ShaftLines.HIGHEST_ORDER),
                    figures.number("FACTOR", 1, 100));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            List<PointSurvey> points = SitePoints.of(evidence, site);
            List<PointSurvey> loud = SitePoints.loud(points);
            for (Crossed pair : Crossed.of(points)) {
                List<Sized> sized = Sized.of(List.of(pair.first, pair.second), order);
                if (!loud.contains(pair.first) && !loud.contains(pair.second)) {
                    continue;
                }
                if (sized.size() < 2) {
                    tally.cannot(pair.housing, ShaftLines.missing(pair.first, order));
                } else {
                    weigh(tally, Sized.largest(sized).orElseThrow(), sized);
                }
            }
            return tally.any(NO_CROSSED);
        }

        private void weigh(Tally tally, Sized larger, List<Sized> both) {
            Sized smaller = both.get(both.get(0) == larger ? 1 : 0);
            double needed = factor * smaller.line.size();
            double matters = ShaftLines.matters(larger.point);
            tally.weigh(List.of(id(larger.point)), larger.line, Math.max(needed, matters),
                    needed < matters ? "" : smaller.line.doubt(), id(larger.point) + ": " + ShaftLines.name(order)
                    + " is " + larger.line + ", at " + id(smaller.point) + " " + smaller.line);
        }
    }

    /** A multiple at one housing is several times that of every other one, in the same direction. */
    record Local(int order, double factor) implements Question {
        static Local of(Figures figures) {
            return new Local(figures.whole("ORDER", 1, ShaftLines.HIGHEST_ORDER), figures.number("FACTOR", 1, 100));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Map<Direction, List<Sized>> directions = new EnumMap<>(Direction.class);
            SitePoints.byHousing(SitePoints.of(evidence, site)).values().stream().flatMap(List::stream)
                    .filter(point -> point.point().direction().isPresent())
                    .flatMap(point -> Sized.of(List.of(point), order).stream()).forEach(one -> directions
                            .computeIfAbsent(one.point.point().direction().orElseThrow(), key -> new ArrayList<>())
                            .add(one));
            Tally tally = new Tally();
            List<PointSurvey> loud = SitePoints.loud(SitePoints.of(evidence, site));
            directions.values().stream().filter(sized -> loud.contains(Sized.largest(sized).orElseThrow().point))
                    .forEach(sized -> weigh(tally, sized));
            return tally.any("no direction is measured at two housings here");
        }

        private void weigh(Tally tally, List<Sized> sized) {
            Sized largest = Sized.largest(sized).orElseThrow();
            Optional<String> housing = largest.point.point().housing();
            Optional<Sized> next = Sized.largest(sized.stream()
                    .filter(one -> !one.point.point().housing().equals(housing)).toList());
            if (next.isPresent()) {
                double needed = factor * next.get().line.size();
                double matters = ShaftLines.matters(largest.point);
                tally.weigh(List.of(id(largest.point)), largest.line, Math.max(needed, matters),
                        needed < matters ? "" : next.get().line.doubt(), id(largest.point) + ": "
                        + ShaftLines.name(order) + " is " + largest.line + ", at the other housings at most "
                        + LineSize.millimetres(next.get().line.size()) + " (" + id(next.get().point) + ")");
            }
        }
    }

    /** A multiple along the shaft, or another one across it, matters at both sides of a coupling. */
    record BothSides(int order, int along, double share) implements Question {
        /** A side whose points stay below this part of the loudest tells nothing; common practice, no source. */
        private static final double QUIET = 0.3;

        static BothSides of(Figures figures) {
            return new BothSides(figures.whole("ORDER", 2, ShaftLines.HIGHEST_ORDER),
                    figures.whole("ALONG", 1, ShaftLines.HIGHEST_ORDER), figures.number("SHARE", 0.01, 100));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            List<PointSurvey> points = SitePoints.of(evidence, site);
            CoupledParts coupled = SitePoints.coupling(evidence, site);
            List<Answer> sides = List.of(side(points, coupled.first()), side(points, coupled.second()));
            String words = sides.get(0).words() + "; " + sides.get(1).words();
            if (sides.stream().allMatch(Answer::isSeen)) {
                return Answer.seen(sides.stream().flatMap(side -> side.points().stream()).distinct().toList(), words);
            }
            Optional<Answer> no = sides.stream().filter(side -> side.isMeasured() && !side.isSeen()).findFirst();
            return no.map(side -> Answer.notSeen(side.words())).orElseGet(() -> Answer.notMeasured(sides.stream()
                    .filter(side -> !side.isMeasured()).map(Answer::words).findFirst().orElseThrow()));
        }

        /** Yes by either sign, no where both were looked for. */
        private Answer side(List<PointSurvey> all, String part) {
            List<PointSurvey> points = SitePoints.ofPart(all, part);
            if (!points.isEmpty() && SitePoints.ofPart(SitePoints.loud(all, QUIET), part).isEmpty()) {
                return Answer.notSeen(part + " is quiet beside the other side");
            }
            Answer across = new OrderQuestions.Ratio(order, 1, share).ask(SitePoints.loud(points));
            Answer axial = new Axial(along, share).ask(points);
            Optional<Answer> decided = Stream.of(across, axial).filter(Answer::isSeen).findFirst()
                    .or(() -> Stream.of(across, axial).filter(one -> !one.isMeasured()).findFirst());
            return decided.orElseGet(() -> Answer.notSeen(across.words() + "; " + axial.words()));
        }
    }
}
