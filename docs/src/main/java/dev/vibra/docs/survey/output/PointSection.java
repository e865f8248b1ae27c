package dev.vibra.docs.survey.output;

import dev.vibra.bearing.ElementFinding;
import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.quantity.Unit;
import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.survey.BearingSurvey;
import dev.vibra.survey.ChangeSurvey;
import dev.vibra.survey.Descriptor;
import dev.vibra.survey.PointSurvey;
import dev.vibra.survey.RecordingSummary;
import java.util.List;
import java.util.Locale;

/** The section of the report on one point. */
final class PointSection {
    private final Html html;
    private final PointSurvey point;

    private PointSection(Html html, PointSurvey point) {
        this.html = html;
        this.point = point;
    }

    static void write(Html html, PointSurvey point, List<Figure> figures) {
        PointSection section = new PointSection(html, point);
        section.head();
        figures.forEach(figure -> html.figure(figure, figure.description()));
        section.changes();
        section.bearings();
        section.peaks();
        section.descriptors();
        section.omissions();
    }

    private void head() {
        String direction = point.point().direction().map(known -> ", " + known).orElse("");
        html.element("h2", point.point().id() + direction);
        html.open("div", "head");
        html.element("p", point.point().recording() + point.recording().map(known -> ": " + line(known)).orElse(""));
        HtmlReport.ruler(html, point.zone(), "ruler small").close("div");
        if (point.insisted()) {
            html.open("div", "error").element("p", "Doubt: " + Phrases.INSISTED + ".").close("div");
        }
        point.recording().ifPresent(known -> html.list(known.quality().remarks().stream().map(Object::toString)
                .toList()));
        if (point.speed().speed().isPresent()) {
            html.element("p", "Speed: " + point.speed() + (point.speed().remark().isEmpty() ? ""
                    : "; " + point.speed().remark()) + ".");
        }
    }

    /** Length, rate and verdict; the remarks follow as a list. */
    private static String line(RecordingSummary known) {
        return String.format(Locale.ROOT, "%.3f s at %s Hz, %s", known.samples() / known.sampleRateHertz(),
                PlainNumber.of(known.sampleRateHertz()), known.quality().sound() ? "sound" : "doubtful");
    }

    private void changes() {
        for (ChangeSurvey one : point.changes()) {
            html.element("p", "Change against the baseline: " + one + ".");
            html.element("p", "Suggested for monitoring, to be agreed with the maker and the owner: " + one.setting()
                    + ".");
            html.list(one.setting().remarks());
        }
    }

    private void bearings() {
        for (BearingSurvey bearing : point.bearings()) {
            html.element("h3", "Bearing " + bearing.bearing());
            html.open("table", "").row("th", "Element", "Verdict", unbroken("Found Hz"), unbroken("Expected Hz"),
                    "Evidence");
            for (ElementFinding finding : bearing.diagnosis().findings()) {
                html.row("td", unbroken(finding.element()), unbroken(finding.verdict()),
                        finding.foundHertz().isPresent() ? PlainNumber.forPeople(finding.foundHertz().getAsDouble())
                                : "",
                        PlainNumber.forPeople(finding.expectedHertz()), finding.evidence());
            }
            html.close("table").element("p", bearing.diagnosis().bandReason());
        }
    }

    private static String unbroken(Object words) {
        return words.toString().replace(' ', '\u00a0');
    }

    private void peaks() {
        if (point.spectrumPeaks().isEmpty()) {
            return;
        }
        html.element("h3", "Largest lines of the velocity spectrum");
        html.open("table", "narrow").row("th", "Frequency Hz", "Order", "Velocity mm/s rms");
        for (SpectralPeak peak : point.spectrumPeaks()) {
            html.row("td", PlainNumber.forPeople(peak.frequencyHertz()),
                    point.speed().speed().map(speed -> PlainNumber.forPeople(peak.order(speed))).orElse(""),
                    PlainNumber.forPeople(peak.level().in(Unit.MM_PER_S)));
        }
        html.close("table");
    }

    private void descriptors() {
        if (point.descriptors().isEmpty()) {
            return;
        }
        html.element("h3", "Descriptors");
        html.open("table", "narrow").row("th", "Name", "Value", "Unit");
        for (Descriptor one : point.descriptors()) {
            html.row("td", one.name(), PlainNumber.forPeople(one.value()), one.unit().equals("1") ? "" : one.unit());
        }
        html.close("table");
    }

    private void omissions() {
        if (!point.omissions().isEmpty()) {
            html.element("h3", "Not determined");
            html.list(point.omissions().stream().map(one -> one.part() + ": " + one.reason()).toList());
        }
    }
}
