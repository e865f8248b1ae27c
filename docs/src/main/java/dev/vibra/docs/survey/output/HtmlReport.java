package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.Zone;
import dev.vibra.survey.Finding;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.PointSurvey;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Writes {@code report.html}: one page that needs no other file, for screen and for A4 paper. Points are added one by
 * one, so
 * that the signals of a point need not be kept longer than it takes to draw them.
 */
public final class HtmlReport {
    private final Map<String, List<Figure>> figures = new LinkedHashMap<>();
    private final Map<Criterion, Figure> severityFigures = new LinkedHashMap<>();
    private final List<Figure> balancingFigures = new ArrayList<>();
    private final List<Problem> problems = new ArrayList<>();

    /** Makes a report without points. */
    public HtmlReport() {}

    /**
     * Draws the figures of a point.
     *
     * @param point results with traces; without them there are no figures
     */
    public void draw(PointSurvey point) {
        attempt(point.point().id(), () -> figures.put(point.point().id(), PointFigures.of(point)));
    }

    /**
     * Draws the severity of all points.
     *
     * @param survey result of the survey
     */
    public void drawSeverity(MachineSurvey survey) {
        attempt("severity", () -> severityFigures.putAll(SeverityFigures.of(survey)));
    }

    /**
     * Draws the vectors of the balancing job.
     *
     * @param survey result of the survey
     */
    public void drawBalancing(MachineSurvey survey) {
        attempt("balancing", () -> survey.balancing().flatMap(BalancingFigure::of)
                .ifPresent(balancingFigures::add));
    }

    /**
     * A machine without fonts fails in many ways; numbers and verdicts don't depend on figures and are not lost with
     * them.
     */
    private void attempt(String what, Runnable drawing) {
        try {
            drawing.run();
        } catch (RuntimeException | InternalError | LinkageError e) {
            problems.add(new Problem(ReportFiles.REPORT, 0, "", "figures of " + what
                    + " are left out, they can't be drawn"
                    + " here (are fonts installed?): " + e));
        }
    }

    /**
     * Returns what went wrong with the figures.
     *
     * @return problems; empty if all figures were drawn
     */
    public List<Problem> problems() {
        return List.copyOf(problems);
    }

    /**
     * Writes the page.
     *
     * @param survey result of the survey
     * @param folderProblems what was wrong in the survey folder
     * @return content of the file
     */
    public String page(MachineSurvey survey, List<Problem> folderProblems) {
        Html html = new Html().raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        html.element("title", "Vibration survey: " + survey.machine().name());
        html.raw("<style>\n" + style() + "</style>\n</head>\n<body>\n");
        head(html, survey);
        problems(html, folderProblems);
        severity(html, survey);
        findings(html, survey);
        html.element("h2", "Advice").list(survey.advice());
        survey.balancing().ifPresent(balancing -> BalancingSection.write(html, balancing, balancingFigures));
        survey.points().forEach(point -> PointSection.write(html, point, figures.getOrDefault(point.point().id(), List
                .of())));
        html.element("h2", "Not determined for the machine as a whole");
        html.list(survey.omissions().stream().map(one -> one.part() + ": " + one.reason()).toList());
        return html.raw("</body>\n</html>\n").toString();
    }

    private static String style() {
        try (InputStream in = HtmlReport.class.getResourceAsStream("report.css")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void head(Html html, MachineSurvey survey) {
        html.open("div", "head").open("div", "").element("h1", survey.machine().name());
        html.element("p", "quiet", machineLine(survey)).close("div");
        ruler(html, survey.zone(), "ruler").close("div");
        html.element("p", survey.zone().map(zone -> "Zone " + zone + ": " + zone.meaning())
                .orElse("The zone of the machine was not determined."));
        html.element("p", "Criterion: " + survey.criterion().reason() + ".");
        if (!survey.criterion().remarks().isEmpty()) {
            html.list(survey.criterion().remarks());
        }
    }

    private static String machineLine(MachineSurvey survey) {
        List<String> parts = new ArrayList<>();
        survey.machine().kind().ifPresent(kind -> parts.add(kind.toString()));
        survey.machine().ratedPowerKilowatts().ifPresent(power -> parts.add(PlainNumber.of(power) + " kW"));
        survey.machine().shaftHeightMillimetres().ifPresent(h -> parts.add("shaft height " + PlainNumber.of(h)
                + " mm"));
        survey.machine().support().ifPresent(support -> parts.add(support + " support"));
        survey.machine().speed().ifPresent(speed -> parts.add(speed.toString()));
        parts.add(survey.points().size() + " measuring points");
        return String.join(", ", parts);
    }

    /** The zones as letters in a row, the one that holds marked by an inverted, underlined box. */
    static Html ruler(Html html, Optional<Zone> zone, String cssClass) {
        html.open("div", cssClass);
        for (Zone one : Zone.values()) {
            html.element("span", zone.filter(one::equals).isPresent() ? "here" : "", one.name());
        }
        return html.close("div");
    }

    private static void problems(Html html, List<Problem> folderProblems) {
        if (!folderProblems.isEmpty()) {
            html.open("div", "error").element("p", "Left out because of errors:");
            html.list(folderProblems.stream().map(Problem::toString).toList()).close("div");
        }
    }

    private void severity(Html html, MachineSurvey survey) {
        html.element("h2", "Severity");
        severityFigures.forEach((criterion, figure) -> html.figure(figure, criterion
                + ". Diamond: value; bar: expanded uncertainty (k = 2), where stated."));
        html.open("table", "").row("th", "Point", "Direction", "Value", "Zone", "Limits A/B, B/C, C/D", "By");
        for (PointSurvey point : survey.points()) {
            String direction = point.point().direction().map(Object::toString).orElse("");
            if (point.severity().isEmpty()) {
                html.row("td", point.point().id(), direction, "not determined", "", "", Phrases.whyNoZone(point));
            }
            point.severity().ifPresent(verdict -> verdict.judgements().forEach(one -> html.row("td", point.point().id(),
                    direction, Phrases.value(one), Phrases.zone(one), Phrases.limits(one), one.criterion().standard()
                            + " " + one.criterion().clause() + (point.insisted() ? "; " + Phrases.INSISTED : ""))));
        }
        html.close("table");
    }

    private static void findings(Html html, MachineSurvey survey) {
        html.element("h2", "Findings");
        if (survey.findings().isEmpty()) {
            html.element("p", "None that the evidence supports.");
        }
        for (Finding finding : survey.findings()) {
            html.open("div", "finding");
            html.element("h3", String.format(Locale.ROOT, "%s at %s, belief %.1f of 1", finding.fault(),
                    String.join(", ", finding.points()), finding.belief()));
            html.element("p", "Evidence").list(finding.evidence());
            if (!finding.against().isEmpty()) {
                html.element("p", "Against").list(finding.against());
            }
            html.element("p", "Confirm by: " + finding.confirmBy() + ".").close("div");
        }
    }
}
