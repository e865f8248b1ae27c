package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.docs.survey.chart.SeverityFigure;
import dev.vibra.point.PointSurvey;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.Judgement;
import dev.vibra.survey.MachineSurvey;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Draws the severity of all points, one figure for each criterion. */
final class SeverityFigures {
    private static final int MOST_ROWS = 30;

    private SeverityFigures() {}

    static Map<Criterion, Figure> of(MachineSurvey survey, Phrases phrases, ShownUnits units) {
        Map<Criterion, List<SeverityFigure.Row>> rows = new LinkedHashMap<>();
        for (PointSurvey point : survey.points()) {
            point.severity().ifPresent(verdict -> verdict.judgements().forEach(judgement ->
                    rows.computeIfAbsent(judgement.criterion(), criterion -> new ArrayList<>())
                            .add(row(point, judgement, units))));
        }
        Map<Criterion, Figure> figures = new LinkedHashMap<>();
        rows.forEach((criterion, list) -> figures.put(criterion, SeverityFigure.of(highest(list),
                units.limitValues(criterion),
                criterion.zones().stream().map(zone -> Words.name(criterion, zone)).toList(), title(criterion, phrases, units),
                units.shown(phrases.say("severity.description", criterion)) + (list.size() > MOST_ROWS
                        ? " " + phrases.say("severity.most", list.size(), MOST_ROWS) : ""))));
        return figures;
    }

    /** A picture of thousands of rows would help nobody and fit no memory; the order of the points stays. */
    private static List<SeverityFigure.Row> highest(List<SeverityFigure.Row> rows) {
        List<SeverityFigure.Row> sorted = new ArrayList<>(rows);
        sorted.sort(Comparator.comparingDouble(SeverityFigure.Row::value).reversed());
        Set<SeverityFigure.Row> shown = Collections.newSetFromMap(new IdentityHashMap<>());
        shown.addAll(sorted.subList(0, Math.min(MOST_ROWS, sorted.size())));
        return rows.stream().filter(shown::contains).toList();
    }

    private static SeverityFigure.Row row(PointSurvey point, Judgement judgement, ShownUnits units) {
        return new SeverityFigure.Row(point.point().id(), units.shown(judgement.value(), judgement.criterion().unit()),
                units.shown(judgement.expandedUncertainty(), judgement.criterion().unit()),
                String.join("/", Words.ratings(judgement)));
    }

    private static String title(Criterion criterion, Phrases phrases, ShownUnits units) {
        return phrases.say("severity.axis", Words.capital(criterion.quantity().toString()), units.of(criterion.unit()),
                criterion.detector(), criterion.band());
    }
}
