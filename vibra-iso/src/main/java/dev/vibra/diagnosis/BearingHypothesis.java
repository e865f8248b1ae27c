package dev.vibra.diagnosis;

import dev.vibra.bearing.ElementFinding;
import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.point.BearingSurvey;
import dev.vibra.point.PointSurvey;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Defect of one element of one bearing, as heard at all points near that bearing. A pulsation at the cage's rate alone
 * is taken for a rolling element, which the cage carries round, but is said to be either.
 *
 * <p>Confidence is 0.7 where one point shows the element, 0.1 more for each further one up to 0.9, and 0.1 less for
 * each sound point at the same bearing that finds it absent: common practice, no source.
 */
final class BearingHypothesis implements Hypothesis {
    private static final String SOURCE = "kinematic rates: Harris, Rolling Bearing Analysis (1978); envelope symptoms:"
            + " ISO 13373-2:2016 (from memory, unverified); steps: common practice, no source";

    private static final double HIGHEST = 0.9;
    private static final double HIGHEST_IF_CARRIED = 0.8;

    @Override
    public String fault() {
        return "defects of rolling bearings whose geometry is given";
    }

    @Override
    public Optional<String> notExamined(Evidence evidence) {
        return evidence.points().stream().anyMatch(point -> !point.bearings().isEmpty()) ? Optional.empty()
                : Optional.of("defects of rolling bearings (" + (evidence.machine().bearings().isEmpty()
                        ? "no geometry is given" : "no recording could tell") + ")");
    }

    @Override
    public List<Finding> weigh(Evidence evidence) {
        Map<String, Weighing> weighings = new LinkedHashMap<>();
        for (PointSurvey point : evidence.points()) {
            for (BearingSurvey bearing : point.bearings()) {
                for (ElementFinding found : bearing.diagnosis().findings()) {
                    hear(weighings.computeIfAbsent(bearing.bearing() + "/" + found.element(),
                            key -> weighing(bearing.bearing(), found.element())), point.point().id(), found,
                            bearing.preparation());
                }
            }
        }
        List<Finding> named = weighings.values().stream().filter(Weighing::isShown)
                .map(weighing -> finding(weighing, HIGHEST)).toList();
        return named.isEmpty() ? carried(evidence) : named;
    }

    /**
     * Of measured recordings with a pulsation at the cage's rate and nothing else each had a bad rolling element: 18 of
     * 18, which bounds the share at 0.81 (Clopper-Pearson, 95 %, two-sided).
     */
    private static List<Finding> carried(Evidence evidence) {
        Map<String, Weighing> weighings = new LinkedHashMap<>();
        for (PointSurvey point : evidence.points()) {
            for (BearingSurvey bearing : point.bearings()) {
                bearing.diagnosis().rollingElementOrCage().ifPresent(pulsation -> weighings
                        .computeIfAbsent(bearing.bearing(), key -> new Weighing("rolling-bearing-rolling-element",
                                "rolling bearing, rolling element or cage, " + key, 0.6))
                        .shownAt(point.point().id(), "pulsation at the rate of the cage, " + pulsation));
            }
        }
        weighings.values().forEach(weighing -> {
            weighing.opposes(0, "the cage and a rolling element that it carries round pulsate alike");
            weighing.alikeTo("rolling-bearing-cage");
        });
        return weighings.values().stream().map(weighing -> finding(weighing, HIGHEST_IF_CARRIED)).toList();
    }

    private static Weighing weighing(String bearing, BearingElement element) {
        return new Weighing("rolling-bearing-" + element.toString().replace(' ', '-'),
                "rolling bearing, " + element + ", " + bearing, 0.6);
    }

    private static void hear(Weighing weighing, String point, ElementFinding found, String preparation) {
        switch (found.verdict()) {
            case PRESENT -> weighing.shownAt(point, found.evidence()
                    + (preparation.isEmpty() ? "" : "; judged " + preparation));
            case ABSENT -> weighing.opposes(0.1, point + " finds it absent: " + found.reason());
            case NOT_DETERMINED -> weighing.opposes(0, point + " can't tell: " + found.reason());
        }
    }

    private static Finding finding(Weighing weighing, double highest) {
        weighing.points().forEach(point -> weighing.confirm(0.1));
        weighing.notMeasured("trend of the envelope at this rate; temperature and lubricant");
        weighing.decidedBy("temperature, noise and lubricant of the bearing",
                "metal in the lubricant or a rising temperature makes it urgent; clean lubricant leaves it open");
        weighing.decidedBy("a second recording at another load or with another sensor position, in some days",
                "a defect stays at its rate and grows; what another machine sends goes");
        weighing.decidedBy("inspection of the bearing at the next stop",
                "marks on the element confirm it; an unmarked bearing clears it");
        return weighing.finding(highest, Rank.PLAN_REMEDY, false, SOURCE);
    }
}
