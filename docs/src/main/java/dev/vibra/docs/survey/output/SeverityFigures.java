package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.docs.survey.chart.SeverityFigure;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.Judgement;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.PointSurvey;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

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
                title(criterion), "Severity of the points against the limits of " + criterion + ".")));
        return figures;
    }

    private static SeverityFigure.Row row(PointSurvey point, Judgement judgement) {
        String zones = judgement.zonesWithinUncertainty().stream().map(Enum::name).collect(Collectors.joining("/"));
        return new SeverityFigure.Row(point.point().id(), judgement.value(), judgement.expandedUncertainty(), zones);
    }

    private static String title(Criterion criterion) {
        String name = criterion.quantity().toString();
        return Character.toUpperCase(name.charAt(0)) + name.substring(1) + " in " + criterion.unit() + " "
                + criterion.detector() + ", " + criterion.band();
    }
}
