package dev.vibra.docs.survey.output;

import static dev.vibra.docs.survey.output.TextPage.padded;

import dev.vibra.balance.Verification;
import dev.vibra.bearing.ElementFinding;
import dev.vibra.bearing.ElementVerdict;
import dev.vibra.diagnosis.Finding;
import dev.vibra.history.DescriptorHistory;
import dev.vibra.point.BearingSurvey;
import dev.vibra.point.Omission;
import dev.vibra.point.PointSurvey;
import dev.vibra.severity.Judgement;
import dev.vibra.severity.Verdict;
import dev.vibra.survey.BalancingSurvey;
import dev.vibra.survey.MachineSurvey;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The printed summary: plain text of at most 80 columns. */
public final class Summary {
    private static final int MOST_HISTORIES = 6;

    private final SurveyRecord record;
    private final MachineSurvey survey;
    private final TextPage page;
    private final ShownUnits units;
    private final List<String> flags = new ArrayList<>();
    private final Phrases phrases = Phrases.english();
    private final Words words = new Words(phrases);

    private Summary(SurveyRecord record, ShownUnits units) {
        this.record = record;
        this.units = units;
        this.page = new TextPage(units);
        this.survey = record.survey();
    }

    /**
     * Writes the summary.
     *
     * @param record the survey
     * @param units units in which it is read
     * @return several lines, each ended by a line feed
     */
    public static String of(SurveyRecord record, ShownUnits units) {
        Summary summary = new Summary(record, units);
        summary.head();
        summary.points();
        summary.bearings();
        summary.findings();
        summary.history();
        summary.runs();
        summary.survey.balancing().ifPresent(summary::balancing);
        summary.list("Advice", summary.survey.advice());
        summary.notDetermined();
        summary.list("Left out because of errors", record.problems());
        return summary.page.toString();
    }

    private void head() {
        page.item("", Words.headline(survey));
        survey.condition().because().forEach(reason -> page.item("  - ", reason));
        words.meaning(survey).ifPresent(meaning -> page.item("", meaning));
        int errors = record.problems().size();
        if (errors > 0) {
            page.item("", (errors == 1 ? "1 part is" : errors + " parts are")
                    + " left out because of errors, see the end.");
        }
        page.item("Machine    ", words.machine(survey));
        survey.criteria().forEach(criterion -> page.items("Criterion  ", Words.criterion(criterion)));
        page.item("Speed      ", words.speed(survey));
        if (units != ShownUnits.METRIC) {
            page.item("Units      ", phrases.say("units.note"));
        }
    }

    private void runs() {
        if (!record.runs().isEmpty()) {
            page.heading(phrases.say("run.title"));
            RunWords said = new RunWords(phrases, units);
            record.runs().forEach(run -> page.items("  ", said.summary(run)));
        }
    }

    private void history() {
        List<DescriptorHistory> told = HistoryWords.worthTelling(record.history());
        if (told.isEmpty() && record.history().left().isEmpty()) {
            return;
        }
        page.heading(phrases.say("history.title"));
        HistoryWords said = new HistoryWords(phrases, units);
        told.stream().limit(MOST_HISTORIES).forEach(one -> page.item("  " + one.point() + "  ", said.line(one)));
        if (told.size() > MOST_HISTORIES) {
            page.line("  " + phrases.say("finding.more", told.size() - MOST_HISTORIES, ReportFiles.REPORT));
        }
        record.history().left().forEach(one -> page.item("  " + phrases.say("history.left") + " ", one));
    }

    private void points() {
        page.heading("Points");
        int gap = units == ShownUnits.METRIC ? 2 : 1; // Numbers in inches are longer.
        int width = gap + survey.points().stream().mapToInt(point -> point.point().id().length()).max().orElse(0);
        for (PointSurvey point : survey.points()) {
            String label = "  " + padded(point.point().id(), width) + padded(direction(point), 10 + gap);
            if (point.severity().isEmpty()) {
                page.item(label, words.noVerdict(point));
                continue;
            }
            Verdict verdict = point.severity().get();
            for (Judgement judgement : verdict.judgements()) {
                page.row(label, row(judgement));
                words.candidates(verdict, judgement.criterion()).ifPresent(which -> page.item("             ", which));
            }
            if (point.zone().isEmpty()) {
                page.item("    open     ", verdict.rating() + ": " + verdict.meaning());
            }
            if (point.insisted()) {
                page.item("    doubt    ", phrases.say("severity.insisted"));
            }
            point.changes().forEach(one -> page.item("    change   ", one.toString()));
            record.baseline(point).ifPresent(origin -> page.item("    baseline ", origin));
            Reference.of(survey, point).map(Reference::words).ifPresent(one -> page.item("    reference ", one));
        }
        flags.forEach(flag -> page.item(" " + mark(flag) + " limits: ", flag));
        survey.unexplained().forEach(one -> page.item("  no finding explains ", one.toString()));
    }

    /** Limits that aren't firm have a mark that is explained below the points. */
    private String row(Judgement judgement) {
        return padded(Words.value(judgement, units), units == ShownUnits.METRIC ? 22 : 24) + " "
                + padded(words.rating(judgement), 15) + " "
                + units.limits(judgement.criterion()) + Words.flag(judgement.criterion()).map(this::mark).orElse("");
    }

    private String mark(String flag) {
        if (!flags.contains(flag)) {
            flags.add(flag);
        }
        return " " + "*".repeat(1 + flags.indexOf(flag));
    }

    private static String direction(PointSurvey point) {
        return point.point().direction().map(Object::toString).orElse("-");
    }

    private void bearings() {
        page.heading("Bearings");
        survey.points().forEach(point -> point.bearings().forEach(bearing -> page.item("  " + point.point().id() + ", "
                + bearing.bearing() + ": ", bearing.diagnosis().toString())));
        if (survey.points().stream().allMatch(point -> point.bearings().isEmpty())) {
            page.line("  none was diagnosed");
        }
    }

    private void findings() {
        page.heading("Findings");
        if (survey.findings().isEmpty()) {
            page.line("  none that the evidence supports");
        } else {
            page.item("  ", phrases.say("findings.nothing-certain"));
        }
        for (Finding finding : survey.findings()) {
            page.item("  ", Words.finding(finding));
            words.partsInShort(finding).forEach((label, parts) ->
                    page.items("    " + padded(label, 14), parts));
        }
        page.item("  ", Words.lookedFor(survey));
    }

    private void balancing(BalancingSurvey balancing) {
        page.heading("Balancing");
        page.in(ShownUnits.METRIC); // The crew reads its own sheet.
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
        page.in(units);
    }

    private void proof(Verification proof) {
        page.item("  final run: ", proof.toString());
        proof.residualUnbalance().forEach(one -> page.item("  residual unbalance: ", one.toString()));
        proof.bearingUnbalance().forEach(one -> page.item("  residual unbalance: ", one.toString()));
        proof.remarks().forEach(one -> page.item("  doubt    ", one.toString()));
    }

    private void list(String heading, List<?> items) {
        if (!items.isEmpty()) {
            page.heading(heading);
            items.forEach(item -> page.item("  - ", item.toString()));
        }
    }

    private void notDetermined() {
        List<String> all = new ArrayList<>(Words.omissions(survey));
        for (PointSurvey point : survey.points()) {
            point.omissions().stream().filter(one -> one.subject() != Omission.Subject.SEVERITY)
                    .forEach(one -> all.add(point.point().id() + " " + Words.omission(one)));
            point.bearings().forEach(bearing -> all.addAll(elements(point.point().id() + ", "
                    + bearing.bearing() + ", ", bearing)));
        }
        list("Not determined", all);
    }

    /** Elements that share a reason share a line. */
    private static List<String> elements(String where, BearingSurvey bearing) {
        Map<String, List<String>> byReason = new LinkedHashMap<>();
        for (ElementFinding finding : bearing.diagnosis().findings()) {
            if (finding.verdict() == ElementVerdict.NOT_DETERMINED) {
                byReason.computeIfAbsent(finding.reason(), reason -> new ArrayList<>()).add(finding.element()
                        .toString());
            }
        }
        return byReason.entrySet().stream().map(one -> where + String.join(", ", one.getValue()) + ": " + one.getKey())
                .toList();
    }
}
