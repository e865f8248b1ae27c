package dev.vibra.survey;

import dev.vibra.bearing.ElementFinding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Collects the hypotheses that the results of all points support. */
final class Findings {
    private Findings() {}

    static List<Finding> of(List<PointSurvey> points) {
        List<Finding> findings = new ArrayList<>();
        UnbalanceHypothesis.of(points).ifPresent(findings::add);
        findings.addAll(bearings(points));
        findings.sort(Comparator.comparingDouble(Finding::belief).reversed());
        return findings;
    }

    /** One finding for each element of each bearing that is present at one point or more. */
    private static List<Finding> bearings(List<PointSurvey> points) {
        Map<String, BearingHypothesis> byElement = new LinkedHashMap<>();
        for (PointSurvey point : points) {
            for (BearingSurvey bearing : point.bearings()) {
                for (ElementFinding finding : bearing.diagnosis().findings()) {
                    byElement.computeIfAbsent(bearing.bearing() + "/" + finding.element(),
                            key -> new BearingHypothesis(bearing.bearing(), finding.element())).hear(point, finding);
                }
            }
        }
        return byElement.values().stream().filter(BearingHypothesis::isRaised).map(BearingHypothesis::weigh).toList();
    }
}
