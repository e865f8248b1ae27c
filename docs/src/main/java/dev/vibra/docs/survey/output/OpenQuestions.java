package dev.vibra.docs.survey.output;

import dev.vibra.bearing.ElementFinding;
import dev.vibra.bearing.ElementVerdict;
import dev.vibra.point.BearingSurvey;
import dev.vibra.point.Omission;
import dev.vibra.point.PointSurvey;
import dev.vibra.survey.MachineSurvey;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What was not determined at the points, told together where it is the same; the figures stand with the points. */
final class OpenQuestions {
    /** Which single numbers there are, and which of them no standard asks about, is told with the point. */
    private static final Set<Omission.Subject> AT_THE_POINT = EnumSet.of(Omission.Subject.DESCRIPTOR,
            Omission.Subject.CHANGE);

    private final MachineSurvey survey;
    private final Phrases phrases;

    OpenQuestions(MachineSurvey survey, Phrases phrases) {
        this.survey = survey;
        this.phrases = phrases;
    }

    List<String> list() {
        List<String> all = new ArrayList<>();
        Map<String, Set<String>> byOmission = new LinkedHashMap<>();
        for (PointSurvey point : survey.points()) {
            point.omissions().stream().filter(one -> !AT_THE_POINT.contains(one.subject()))
                    .forEach(one -> add(byOmission, one.part() + ": " + one.reason(), point.point().id()));
        }
        byOmission.forEach((what, points) -> all.add(at(points, what)));
        Map<String, Set<String>> byElement = new LinkedHashMap<>();
        survey.points().forEach(point -> point.bearings().forEach(bearing -> elements(point.point().id(), bearing,
                byElement)));
        byElement.forEach((what, points) -> all.add(at(points, what)));
        return all;
    }

    /** Elements of a bearing that lack the same share a line. */
    private void elements(String point, BearingSurvey bearing, Map<String, Set<String>> into) {
        Map<String, List<String>> byReason = new LinkedHashMap<>();
        for (ElementFinding one : bearing.diagnosis().findings()) {
            if (one.verdict() == ElementVerdict.NOT_DETERMINED) {
                boolean silent = one.pulsation().isEmpty() && one.detectableDepth().isPresent();
                byReason.computeIfAbsent(silent ? phrases.say("open.no-sign") : one.reason(),
                        reason -> new ArrayList<>()).add(one.element().toString());
            }
        }
        byReason.forEach((reason, elements) -> add(into, phrases.say("open.elements", bearing.bearing(),
                String.join(", ", elements), reason), point));
    }

    private static void add(Map<String, Set<String>> into, String what, String point) {
        into.computeIfAbsent(what, key -> new LinkedHashSet<>()).add(point);
    }

    private String at(Set<String> points, String what) {
        return points.size() == survey.points().size() && points.size() > 1 ? phrases.say("open.everywhere", what)
                : phrases.say("open.at", String.join(", ", points), what);
    }
}
