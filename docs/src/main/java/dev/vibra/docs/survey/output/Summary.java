package dev.vibra.docs.survey.output;

import static dev.vibra.docs.survey.output.TextPage.padded;

import dev.vibra.balance.Verification;
import dev.vibra.bearing.ElementFinding;
import dev.vibra.bearing.ElementVerdict;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.severity.Judgement;
import dev.vibra.survey.BalancingSurvey;
import dev.vibra.survey.BearingSurvey;
import dev.vibra.survey.Finding;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Omission;
import dev.vibra.survey.PointSurvey;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The printed summary: plain text of at most 80 columns. */
public final class Summary {
    private final MachineSurvey survey;
    private final TextPage page = new TextPage();

    private Summary(MachineSurvey survey) {
        this.survey = survey;
    }

    /**
     * Writes the summary.
     *
     * @param survey result of the survey
     * @param problems what was wrong in the survey folder
     * @return several lines, each ended by a line feed
     */
    public static String of(MachineSurvey survey, List<Problem> problems) {
        Summary summary = new Summary(survey);
        summary.head(problems.size());
        summary.points();
        summary.bearings();
        summary.findings();
        survey.balancing().ifPresent(summary::balancing);
        summary.advice();
        summary.notDetermined();
        summary.problems(problems);
        return summary.page.toString();
    }

    private void head(int errors) {
        String zone = survey.zone().map(known -> "zone " + known).orElse("zone not determined");
        page.item("", survey.machine().name() + ": " + zone);
        survey.zone().ifPresent(known -> page.item("", known.meaning()));
        if (errors > 0) {
            page.item("", (errors == 1 ? "1 part is" : errors + " parts are")
                    + " left out because of errors, see the end.");
        }
        page.item("Criterion  ", survey.criterion().reason());
        survey.criterion().remarks().forEach(remark -> page.item("           ", remark));
        String speed = survey.machine().speed().map(Object::toString).orElse("not determined");
        page.item("Speed      ", speed);
    }

    private void points() {
        page.heading("Points");
        int width = 2 + survey.points().stream().mapToInt(point -> point.point().id().length()).max().orElse(0);
        for (PointSurvey point : survey.points()) {
            String label = "  " + padded(point.point().id(), width) + padded(direction(point), 12);
            if (point.severity().isEmpty()) {
                page.item(label, "not determined: " + Phrases.whyNoZone(point));
                continue;
            }
            page.row(label, row(point.severity().get().deciding()));
            if (point.insisted()) {
                page.item("    doubt  ", Phrases.INSISTED);
            }
            point.changes().forEach(one -> page.item("    change ", one.toString()));
        }
    }

    private static String row(Judgement deciding) {
        return padded(Phrases.value(deciding), 23) + "zone " + padded(Phrases.zone(deciding), 11)
                + Phrases.limits(deciding);
    }

    private static String direction(PointSurvey point) {
        return point.point().direction().map(Object::toString).orElse("-");
    }

    private void bearings() {
        page.heading("Bearings");
        boolean any = false;
        for (PointSurvey point : survey.points()) {
            for (BearingSurvey bearing : point.bearings()) {
                any = true;
                page.item("  " + point.point().id() + ", " + bearing.bearing() + ": ",
                        bearing.diagnosis().toString());
            }
        }
        if (!any) {
            page.line("  not determined");
        }
    }

    private void findings() {
        page.heading("Findings");
        if (survey.findings().isEmpty()) {
            page.line("  none that the evidence supports");
        }
        for (Finding finding : survey.findings()) {
            page.item("  ", String.format(Locale.ROOT, "%s at %s (belief %.1f)", finding.fault(),
                    String.join(", ", finding.points()), finding.belief()));
            finding.evidence().forEach(one -> page.item("    for      ", one));
            finding.against().forEach(one -> page.item("    against  ", one));
            page.item("    confirm  ", finding.confirmBy());
        }
    }

    private void balancing(BalancingSurvey balancing) {
        page.heading("Balancing");
        balancing.corrections().ifPresent(corrections -> {
            page.item("  ", "Add " + corrections.addedTo() + ":");
            corrections.list().forEach(one -> page.item("    ", one.toString()));
            page.item("  ", "Convention: " + corrections.convention() + ".");
            for (int i = 0; i < corrections.places().size(); i++) {
                page.item("    ", corrections.places().get(i) + ": from " + corrections.present().get(i) + " to "
                        + corrections.predicted().get(i) + ", predicted");
            }
            corrections.uncertainty().ifPresent(one -> page.item("  uncertainty: ", one.toString()));
            corrections.presentUnbalance().forEach(one -> page.item("  unbalance before: ", one.toString()));
            corrections.presentGrade().ifPresent(one -> page.item("  before: ", one.toString()));
            corrections.remarks().forEach(one -> page.item("  doubt    ", one.toString()));
        });
        balancing.verification().ifPresent(this::proof);
        balancing.trim().ifPresent(trim -> page.item("  next, if more is wanted: ", trim.toString()));
        balancing.tolerance().ifPresent(one -> page.item("  permissible: ", one + "; "
                + one.allocation()));
        balancing.corrections().ifPresent(corrections -> corrections.cautions()
                .forEach(one -> page.item("  caution  ", one.text())));
    }

    private void proof(Verification proof) {
        page.item("  final run: ", proof.toString());
        proof.residualUnbalance().forEach(one -> page.item("  residual unbalance: ", one.toString()));
        proof.bearingUnbalance().forEach(one -> page.item("  residual unbalance: ", one.toString()));
        proof.remarks().forEach(one -> page.item("  doubt    ", one.toString()));
    }

    private void advice() {
        page.heading("Advice");
        survey.advice().forEach(one -> page.item("  - ", one));
    }

    private void notDetermined() {
        page.heading("Not determined");
        survey.omissions().forEach(one -> omission("", one));
        for (PointSurvey point : survey.points()) {
            point.omissions().forEach(one -> omission(point.point().id() + " ", one));
            point.bearings().forEach(bearing -> elements(point.point().id() + ", " + bearing.bearing() + ", ",
                    bearing));
        }
    }

    /** Elements that share a reason share a line. */
    private void elements(String where, BearingSurvey bearing) {
        Map<String, List<String>> byReason = new LinkedHashMap<>();
        for (ElementFinding finding : bearing.diagnosis().findings()) {
            if (finding.verdict() == ElementVerdict.NOT_DETERMINED) {
                byReason.computeIfAbsent(finding.reason(), reason -> new ArrayList<>()).add(finding.element()
                        .toString());
            }
        }
        byReason.forEach((reason, elements) -> page.item("  - ", where + String.join(", ", elements) + ": " + reason));
    }

    private void omission(String where, Omission one) {
        page.item("  - ", where + one.part() + ": " + one.reason());
    }

    private void problems(List<Problem> problems) {
        if (!problems.isEmpty()) {
            page.heading("Left out because of errors");
            problems.forEach(problem -> page.item("  - ", problem.toString()));
        }
    }
}
