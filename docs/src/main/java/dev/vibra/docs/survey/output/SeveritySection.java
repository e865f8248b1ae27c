package dev.vibra.docs.survey.output;

import dev.vibra.point.PointSurvey;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.Judgement;
import dev.vibra.severity.Verdict;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The verdict on each point, with limits and source: points that are judged by the same criteria share a table. */
final class SeveritySection {
    private final Html html;

    private SeveritySection(Html html) {
        this.html = html;
    }

    static void write(Html html, SurveyRecord record, Map<Criterion, FigureSpool.Kept> figures) {
        html.element("h2", html.say("severity.title"));
        figures.forEach((criterion, figure) -> html.figure(figure, html.say("severity.figure",
                Words.capital(criterion.toString()))));
        Map<List<Criterion>, List<PointSurvey>> byCriteria = new LinkedHashMap<>();
        record.survey().points().forEach(point -> byCriteria.computeIfAbsent(point.severity().map(verdict -> verdict
                .judgements().stream().map(Judgement::criterion).toList()).orElse(List.of()),
                key -> new ArrayList<>()).add(point));
        byCriteria.forEach((criteria, points) -> new SeveritySection(html).table(criteria, points, figures.keySet()));
    }

    private void table(List<Criterion> criteria, List<PointSurvey> points, Set<Criterion> told) {
        List<String> head = new ArrayList<>(List.of(html.say("table.point"), html.say("table.direction")));
        criteria.forEach(one -> head.add(html.say("severity.column", Words.capital(one.quantity().toString()),
                one.unit(), one.detector(), one.band())));
        if (criteria.isEmpty()) {
            head.add(html.say("severity.rating"));
        }
        html.open("table", "").row("th", head.toArray(String[]::new));
        points.forEach(point -> html.row("td", cells(point).toArray(String[]::new)));
        html.close("table");
        points.get(0).severity().ifPresent(verdict -> criteria.forEach(one -> source(verdict, one, told.contains(one))));
    }

    private List<String> cells(PointSurvey point) {
        List<String> cells = new ArrayList<>(List.of(point.point().id(),
                point.point().direction().map(Object::toString).orElse("")));
        point.severity().ifPresentOrElse(verdict -> verdict.judgements().forEach(one -> cells.add(
                html.say("severity.cell", Words.value(one, html.units()), html.words().rating(one)) + (point.insisted()
                        ? "; " + html.say("severity.insisted") : ""))), () -> cells.add(html.words().noVerdict(point)));
        return cells;
    }

    /** What is said at a figure isn't said again. */
    private void source(Verdict verdict, Criterion criterion, boolean told) {
        String quantity = Words.capital(criterion.quantity().toString());
        String which = html.words().candidates(verdict, criterion).orElse("");
        if (!told) {
            html.element("p", "quiet", html.say("severity.source", quantity, Words.limits(criterion), criterion.unit(),
                    criterion.standard() + " " + criterion.clause() + Words.flag(criterion)
                            .map(flag -> " (" + flag + ")").orElse("")) + (which.isEmpty() ? "" : ", " + which) + ".");
        } else if (!which.isEmpty()) {
            html.element("p", "quiet", quantity + ": " + which + ".");
        }
    }
}
