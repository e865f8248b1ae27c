package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.docs.survey.chart.SeverityFigure;
import dev.vibra.point.PointSurvey;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.Judgement;
import dev.vibra.survey.MachineSurvey;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Draws the severity of all points, one figure for each criterion. */
final class SeverityFigures {
    private SeverityFigures() {}

    static Map<Criterion, Figure> of(MachineSurvey survey) {
        Map<Criterion, List<SeverityFigure.Row>> rows = new LinkedHashMap<>();
        for (PointSurvey point : survey.points()) {
            point.severity().ifPresent(verdict -> verdict.judgements().forEach(judgement ->
                    rows.computeIfAbsent(judgement.criterion(), criterion -> new ArrayList<>())
                            .add(row(point, judgement))));
        }
        Map<Criterion, Figure> figures = new LinkedHashMap<>();
        rows.forEach((criterion, list) -> figures.put(criterion, SeverityFigure.of(list, criterion.limits(),
                criterion.zones().stream().map(zone -> Words.name(criterion, zone)).toList(), title(criterion),
                "Severity of the points against the limits of " + criterion + ".")));
        return figures;
    }

    private static SeverityFigure.Row row(PointSurvey point, Judgement judgement) {
        return new SeverityFigure.Row(point.point().id(), judgement.value(), judgement.expandedUncertainty(),
                String.join("/", Words.ratings(judgement)));
    }

    private static String title(Criterion criterion) {
        return HtmlReport.capital(criterion.quantity().toString()) + " in " + criterion.unit() + " "
                + criterion.detector() + ", " + criterion.band();
    }
}
