package dev.vibra.docs.survey.output;

import dev.vibra.diagnosis.Finding;
import dev.vibra.point.PointSurvey;
import dev.vibra.severity.Zone;
import dev.vibra.survey.MachineSurvey;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which points keep every value behind their figures: those that need a look, as long as the report stays of a size that
 * opens quickly and can be sent by mail.
 */
final class FullData {
    /** Points that are kept whole for comparison, however good. */
    private static final int HIGHEST = 3;
    /** Bytes of all values together; with words and outlines of 200 points a report stays below 15 MB. */
    private static final long BUDGET = 3_500_000;

    private FullData() {}

    /**
     * Chooses the points.
     *
     * @param survey all points
     * @param bytes what the values of each point take, by its id; a point without figures isn't in it
     * @param all true if every point is wanted, whatever it takes
     * @return ids of points
     */
    static Set<String> points(MachineSurvey survey, Map<String, Long> bytes, boolean all) {
        if (all) {
            return bytes.keySet();
        }
        Set<String> chosen = new LinkedHashSet<>();
        long left = BUDGET;
        for (String id : wanted(survey)) {
            long size = bytes.getOrDefault(id, 0L);
            if (size > 0 && size <= left && chosen.add(id)) {
                left -= size;
            }
        }
        return chosen;
    }

    /** The most urgent first: findings in their order, bad zones, doubts, then the highest. */
    private static Set<String> wanted(MachineSurvey survey) {
        Set<String> wanted = new LinkedHashSet<>();
        survey.findings().stream().map(Finding::points).forEach(wanted::addAll);
        List<PointSurvey> byLevel = new ArrayList<>(survey.points());
        byLevel.sort(Comparator.comparingDouble(FullData::level).reversed());
        byLevel.stream().filter(one -> one.zone().filter(zone -> zone.isWorseThan(Zone.B)).isPresent())
                .forEach(one -> wanted.add(one.point().id()));
        survey.points().stream().filter(one -> !one.sound() || one.refused()).forEach(one -> wanted.add(one.point().id()));
        byLevel.stream().limit(HIGHEST).forEach(one -> wanted.add(one.point().id()));
        return wanted;
    }

    private static double level(PointSurvey point) {
        return point.description().value(Words.VELOCITY).orElse(0);
    }
}
