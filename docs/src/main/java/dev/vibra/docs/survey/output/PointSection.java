package dev.vibra.docs.survey.output;

import dev.vibra.bearing.ElementFinding;
import dev.vibra.descriptor.DescriptorValue;
import dev.vibra.descriptor.DominantLine;
import dev.vibra.point.BearingSurvey;
import dev.vibra.point.ChangeSurvey;
import dev.vibra.point.PointSurvey;
import dev.vibra.point.RecordingSummary;
import dev.vibra.quantity.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
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

    static void write(Html html, SurveyRecord record, PointSurvey point, List<FigureSpool.Kept> figures,
            boolean whole) {
        PointSection section = new PointSection(html, record, point);
        section.head();
        figures.forEach(figure -> html.figure(figure, whole));
        section.changes();
        point.bearings().forEach(section::bearing);
        section.lines();
        section.descriptors();
        if (!point.omissions().isEmpty()) {
            html.element("h3", html.say("point.not-determined")).list(point.omissions().stream().map(Words::omission).toList());
        }
    }

    private void head() {
        html.open("div", "head").element("h2", point.point().toString()).ruler(point.zone(), "ruler small").close("div");
        html.element("p", point.recording().map(this::recording).orElse(html.say("point.no-recording")));
        if (point.insisted()) {
            html.open("div", "error").element("p", html.say("point.doubt", html.say("severity.insisted"))).close("div");
        }
        point.recording().ifPresent(known -> html.list(known.quality().remarks()));
        if (point.speed().speed().isPresent()) {
            html.element("p", html.say(point.speed().remark().isEmpty() ? "point.speed" : "point.speed-remark",
                    point.speed(), point.speed().remark()));
        }
        point.impulsiveness().ifPresent(known -> html.element("p", Words.capital(known.toString()) + "."));
    }

    /** Length, rate, soundness, conversion and time; the remarks follow as a list. */
    private String recording(RecordingSummary known) {
        return html.say("point.recording", Words.decimal(known.samples() / known.sampleRateHertz(), 3),
                PlainNumber.of(known.sampleRateHertz()), html.say(known.quality().sound() ? "point.sound"
                        : "point.doubtful")) + Stream.concat(record.conversion(point).stream(), record.measured(point)
                .map(when -> html.say("point.measured", Words.time(when))).stream()).map(words -> "; " + words)
                .reduce("", String::concat) + ".";
    }

    private void changes() {
        record.baseline(point).ifPresent(origin -> html.element("p", html.say("point.baseline", origin)));
        for (ChangeSurvey one : point.changes()) {
            html.element("p", html.say("point.change", one));
            one.setting().ifPresent(setting -> html.element("p", html.say("point.setting", setting)).list(setting.remarks()));
        }
        Reference.of(record.survey(), point).map(Reference::words).ifPresent(words -> html.element("p",
                html.say("point.reference", words)));
    }

    private void bearing(BearingSurvey bearing) {
        html.element("h3", html.say("point.bearing", bearing.bearing()));
        html.open("table", "").row("th", html.say("point.element"), html.say("point.verdict"),
                unbroken(html.say("point.found")), unbroken(html.say("point.expected")), html.say("point.evidence"));
        Map<String, List<ElementFinding>> alike = new LinkedHashMap<>();
        bearing.diagnosis().findings().forEach(finding -> alike.computeIfAbsent(finding.verdict() + finding.evidence(),
                key -> new ArrayList<>()).add(finding));
        alike.values().forEach(this::elements);
        html.close("table").element("p", bearing.diagnosis().bandReason()
                + (bearing.preparation().isEmpty() ? "" : "; " + bearing.preparation()));
    }

    /** Elements with the same evidence share a row. */
    private void elements(List<ElementFinding> alike) {
        ElementFinding first = alike.get(0);
        html.row("td", joined(alike, one -> unbroken(one.element())), unbroken(first.verdict()),
                joined(alike, one -> one.foundHertz().isPresent()
                        ? PlainNumber.forPeople(one.foundHertz().getAsDouble()) : ""),
                joined(alike, one -> PlainNumber.forPeople(one.expectedHertz())), first.evidence());
    }

    private static String joined(List<ElementFinding> elements, Function<ElementFinding, String> word) {
        return elements.stream().map(word).filter(one -> !one.isEmpty()).collect(Collectors.joining(", "));
    }

    private static String unbroken(Object words) {
        return words.toString().replace(' ', '\u00a0');
    }

    private void lines() {
        if (point.dominantLines().isEmpty()) {
            return;
        }
        html.element("h3", html.say("point.lines"));
        html.open("table", "narrow").row("th", html.say("table.frequency"), html.say("table.order"),
                html.say("point.velocity"), html.say("point.makes"));
        for (DominantLine line : point.dominantLines()) {
            html.row("td", PlainNumber.forPeople(line.hertz()),
                    line.order().isPresent() ? PlainNumber.forPeople(line.order().getAsDouble()) : "",
                    html.units().number(line.level().in(Unit.MM_PER_S), Unit.MM_PER_S), line.name().orElse(""));
        }
        html.close("table");
    }

    private void descriptors() {
        if (point.description().numbers().isEmpty()) {
            return;
        }
        html.element("h3", html.say("point.descriptors"));
        html.open("ul", "names");
        for (DescriptorValue one : point.description().numbers()) {
            html.element("li", Words.descriptor(one));
        }
        html.close("ul");
    }
}
