package dev.vibra.symptom;

import static dev.vibra.symptom.LineSize.id;

import dev.vibra.machine.CoupledParts;
import dev.vibra.point.LinePhasor;
import dev.vibra.point.PointSurvey;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Questions to the phase of a multiple of the shaft speed between two points: half of the pairs decide. */
final class PhaseQuestions {
    private static final int HIGHEST_ORDER = 3;
    private static final double OPPOSED = 180;
    private static final String NO_AXES = "the positive axes aren't noted so that they can be compared";

    private PhaseQuestions() {}

    /** Lead of the second point over the first in degrees, or why it isn't known. */
    private record Lead(double degrees, String obstacle) {
        static Lead of(PointSurvey first, PointSurvey second, int order) {
            for (PointSurvey point : List.of(first, second)) {
                Optional<LineSize> line = ShaftLines.order(point, order);
                if (line.isEmpty() || !line.get().isKnown() || line.get().size() < ShaftLines.matters(point)) {
                    return new Lead(0, ShaftLines.name(order) + " doesn't stand or doesn't matter at " + id(point));
                }
            }
            Optional<LinePhasor> one = first.pattern().phasor(order);
            Optional<LinePhasor> other = second.pattern().phasor(order);
            OptionalDouble degrees = one.isPresent() && other.isPresent() && sharesClock(first, second, one.get())
                    ? other.get().degreesAheadOf(one.get()) : OptionalDouble.empty();
            return degrees.isEmpty() ? new Lead(0, "they weren't recorded at the same time, nor with a tachometer")
                    : new Lead(degrees.getAsDouble(), "");
        }

        /** Recordings of different hours may begin at the same time of their own scales. */
        private static boolean sharesClock(PointSurvey first, PointSurvey second, LinePhasor one) {
            return one.tie() == LinePhasor.Tie.TACHOMETER || first.point().recordingSet().isPresent()
                    && first.point().recordingSet().equals(second.point().recordingSet());
        }
    }

    /** Notes whether a pair is as far apart as asked, modulo a turn or half of one. */
    private static void weigh(Tally tally, PointSurvey first, PointSurvey second, Lead lead, Axes axes,
            Asked asked) {
        String pair = id(first) + " and " + id(second);
        if (!lead.obstacle.isEmpty()) {
            tally.cannot(pair, lead.obstacle);
            return;
        }
        double space = lead.degrees + axes.degrees();
        double off = Math.abs(Math.IEEEremainder(space - asked.degrees, asked.modulo));
        long told = Math.round(Math.abs(Math.IEEEremainder(space, 360)));
        tally.says(off <= asked.tolerance, List.of(id(first), id(second)), -off, pair + ": " + ShaftLines.name(asked.order)
                + " is " + told + "\u00b0 apart" + (axes == Axes.OPPOSED ? ", with opposite axes counted" : ""));
    }

    private record Asked(int order, double degrees, double modulo, double tolerance) {}

    private static int order(Figures figures) {
        return figures.whole("ORDER", 1, HIGHEST_ORDER);
    }

    private static double tolerance(Figures figures) {
        return figures.number("TOLERANCE", 1, 90);
    }

    /** Between the two radial directions of one housing; whichever way the sensors look. */
    record Directions(int order, double degrees, double tolerance) implements Question {
        static Directions of(Figures figures) {
            return new Directions(PhaseQuestions.order(figures), figures.number("ANGLE", 0, 180),
                    PhaseQuestions.tolerance(figures));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            for (HousingQuestions.Crossed pair : HousingQuestions.Crossed.of(SitePoints.of(evidence, site))) {
                weigh(tally, pair.first(), pair.second(), Lead.of(pair.first(), pair.second(), order), Axes.ALIKE,
                        new Asked(order, degrees, 180, tolerance));
            }
            return tally.half(HousingQuestions.NO_CROSSED);
        }
    }

    /** Opposed between the ends of a rotor: housings of one part, the same direction. */
    record Ends(int order, Way way, double tolerance) implements Question {
        static Ends of(Figures figures) {
            return new Ends(PhaseQuestions.order(figures), figures.choice("DIRECTION", Way.ONE),
                    PhaseQuestions.tolerance(figures));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            Map<String, List<PointSurvey>> rotors = new LinkedHashMap<>();
            way.of(SitePoints.of(evidence, site)).forEach(point -> rotors.computeIfAbsent(point.point().part()
                    .orElse(""), key -> new ArrayList<>()).add(point));
            rotors.forEach((part, points) -> {
                for (int i = 0; i < points.size(); i++) {
                    for (int k = i + 1; k < points.size(); k++) {
                        weigh(tally, points.get(i), points.get(k), evidence);
                    }
                }
            });
            return tally.half("no two housings of one rotor have " + way + " points in the same direction");
        }

        private void weigh(Tally tally, PointSurvey first, PointSurvey second, Evidence evidence) {
            if (!areEnds(first, second)) {
                return;
            }
            Axes.atOnePart(first.point(), second.point()).filter(axes -> isClear(evidence, first)).ifPresentOrElse(
                    axes -> PhaseQuestions.weigh(tally, first, second, Lead.of(first, second, order), axes,
                            new Asked(order, OPPOSED, 360, tolerance)),
                    () -> tally.cannot(id(first) + " and " + id(second), NO_AXES));
        }
    }

    /** Along the shaft of a part between two couplings at one speed nobody knows which of them is meant. */
    private static boolean isClear(Evidence evidence, PointSurvey point) {
        return point.point().isRadial() || Sites.couplingsAt(evidence.machine(), point.point()) <= 1;
    }

    private static boolean areEnds(PointSurvey first, PointSurvey second) {
        Optional<String> one = first.point().housing();
        Optional<String> other = second.point().housing();
        return one.isPresent() && other.isPresent() && !one.equals(other) && isSameDirection(first, second);
    }

    private static boolean isSameDirection(PointSurvey first, PointSurvey second) {
        return first.point().direction().isPresent() && first.point().direction().equals(second.point().direction());
    }

    /** Opposed across a coupling, between the housings beside it. */
    record Across(int order, Way way, double tolerance) implements Question {
        /** The end away from the coupling is called so; common practice, no source. */
        private static final String FAR_END = "NDE";

        private record Pair(PointSurvey first, PointSurvey second) {
            /** How many of the two lie at the far end of their part. */
            int far() {
                return far(first) + far(second);
            }

            private static int far(PointSurvey point) {
                return point.point().housing().orElse(id(point)).toUpperCase(Locale.ROOT).contains(FAR_END) ? 1 : 0;
            }
        }

        static Across of(Figures figures) {
            return new Across(PhaseQuestions.order(figures), figures.choice("DIRECTION", Way.ONE),
                    PhaseQuestions.tolerance(figures));
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            List<Pair> pairs = pairs(evidence, site);
            pairs.forEach(pair -> weigh(tally, pair, evidence));
            return tally.half("the two sides of the coupling have no " + way + " points in the same direction");
        }

        private void weigh(Tally tally, Pair pair, Evidence evidence) {
            axes(evidence, pair).ifPresentOrElse(axes -> PhaseQuestions.weigh(tally, pair.first, pair.second,
                    Lead.of(pair.first, pair.second, order), axes, new Asked(order, OPPOSED, 360, tolerance)),
                    () -> tally.cannot(id(pair.first) + " and " + id(pair.second), NO_AXES));
        }

        private static Optional<Axes> axes(Evidence evidence, Pair pair) {
            return Axes.acrossCoupling(pair.first.point(), pair.second.point())
                    .filter(axes -> isClear(evidence, pair.first) && isClear(evidence, pair.second));
        }

        /** Of the pairs that can be compared those that lie closest to the coupling; of all where none can. */
        private List<Pair> pairs(Evidence evidence, Site site) {
            CoupledParts coupled = SitePoints.coupling(evidence, site);
            List<PointSurvey> points = way.of(SitePoints.of(evidence, site));
            List<Pair> pairs = SitePoints.ofPart(points, coupled.first()).stream().flatMap(first ->
                    SitePoints.ofPart(points, coupled.second()).stream()
                            .filter(second -> isSameDirection(first, second))
                            .map(second -> new Pair(first, second))).toList();
            List<Pair> comparable = pairs.stream().filter(pair -> axes(evidence, pair).isPresent()
                    && Lead.of(pair.first, pair.second, order).obstacle.isEmpty()).toList();
            List<Pair> from = comparable.isEmpty() ? pairs : comparable;
            int nearest = from.stream().min(Comparator.comparingInt(Pair::far)).map(Pair::far).orElse(0);
            return from.stream().filter(pair -> pair.far() == nearest).toList();
        }
    }
}
