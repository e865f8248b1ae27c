package dev.vibra.docs.survey.output;

import dev.vibra.bearing.ElementFinding;
import dev.vibra.descriptor.DescriptorValue;
import dev.vibra.descriptor.DominantLine;
import dev.vibra.point.BearingSurvey;
import dev.vibra.point.ChangeSurvey;
import dev.vibra.point.PointSurvey;
import dev.vibra.point.RecordingSummary;
import dev.vibra.quantity.Unit;
import java.util.List;
import java.util.stream.Stream;

/** The section of the report on one point. */
final class PointSection {
    private final Html html;
    private final SurveyRecord record;
    private final PointSurvey point;

    private PointSection(Html html, SurveyRecord record, PointSurvey point) {
        this.html = html;
        this.record = record;
        this.point = point;
    }

    static void write(Html html, SurveyRecord record, PointSurvey point, List<FigureSpool.Kept> figures) {
        PointSection section = new PointSection(html, record, point);
        section.head();
        figures.forEach(figure -> html.figure(figure, figure.description()));
        section.changes();
        point.bearings().forEach(section::bearing);
        section.lines();
        section.descriptors();
        if (!point.omissions().isEmpty()) {
            html.element("h3", "Not determined").list(point.omissions().stream().map(Words::omission).toList());
        }
    }

    private void head() {
        html.element("h2", point.point().toString());
        html.open("div", "head").element("p", point.recording().map(this::recording).orElse("no recording"));
        HtmlReport.ruler(html, point.zone(), "ruler small").close("div");
        if (point.insisted()) {
            html.open("div", "error").element("p", "Doubt: " + Words.INSISTED + ".").close("div");
        }
        point.recording().ifPresent(known -> html.list(known.quality().remarks()));
        if (point.speed().speed().isPresent()) {
            html.element("p", "Speed: " + point.speed() + (point.speed().remark().isEmpty() ? ""
                    : "; " + point.speed().remark()) + ".");
        }
        point.impulsiveness().ifPresent(known -> html.element("p", HtmlReport.capital(known.toString()) + "."));
    }

    /** Length, rate, soundness, conversion and time; the remarks follow as a list. */
    private String recording(RecordingSummary known) {
        return Words.decimal(known.samples() / known.sampleRateHertz(), 3) + " s at "
                + PlainNumber.of(known.sampleRateHertz()) + " Hz, " + (known.quality().sound() ? "sound" : "doubtful")
                + Stream.concat(record.conversion(point).stream(), record.measured(point).map(when -> "measured "
                + when).stream()).map(words -> "; " + words).reduce("", String::concat);
    }

    private void changes() {
        record.baseline(point).ifPresent(origin -> html.element("p", "Baseline: " + origin + "."));
        for (ChangeSurvey one : point.changes()) {
            html.element("p", "Change against the baseline: " + one + ".");
            one.setting().ifPresent(setting -> html.element("p", "Suggested for monitoring, to be agreed with the maker"
                    + " and the owner: " + setting + ".").list(setting.remarks()));
        }
        Reference.of(record.survey(), point).map(Reference::words).ifPresent(words -> html.element("p",
                "Against the reference recording: " + words + "."));
    }

    private void bearing(BearingSurvey bearing) {
        html.element("h3", "Bearing " + bearing.bearing());
        html.open("table", "").row("th", "Element", "Verdict", unbroken("Found Hz"), unbroken("Expected Hz"),
                "Evidence");
        for (ElementFinding finding : bearing.diagnosis().findings()) {
            html.row("td", unbroken(finding.element()), unbroken(finding.verdict()),
                    finding.foundHertz().isPresent() ? PlainNumber.forPeople(finding.foundHertz().getAsDouble()) : "",
                    PlainNumber.forPeople(finding.expectedHertz()), finding.evidence());
        }
        html.close("table").element("p", bearing.diagnosis().bandReason()
                + (bearing.preparation().isEmpty() ? "" : "; " + bearing.preparation()));
    }

    private static String unbroken(Object words) {
        return words.toString().replace(' ', '\u00a0');
    }

    private void lines() {
        if (point.dominantLines().isEmpty()) {
            return;
        }
        html.element("h3", "Largest lines of the velocity spectrum");
        html.open("table", "narrow").row("th", "Frequency Hz", "Order", "Velocity mm/s rms", "What makes it");
        for (DominantLine line : point.dominantLines()) {
            html.row("td", PlainNumber.forPeople(line.hertz()),
                    line.order().isPresent() ? PlainNumber.forPeople(line.order().getAsDouble()) : "",
                    PlainNumber.forPeople(line.level().in(Unit.MM_PER_S)), line.name().orElse(""));
        }
        html.close("table");
    }

    private void descriptors() {
        if (point.description().numbers().isEmpty()) {
            return;
        }
        html.element("h3", "Descriptors");
        html.open("table", "narrow").row("th", "Name", "Value", "Unit");
        for (DescriptorValue one : point.description().numbers()) {
            html.row("td", one.name(), PlainNumber.forPeople(one.value()), one.unit().equals("1") ? "" : one.unit());
        }
        html.close("table");
    }
}
