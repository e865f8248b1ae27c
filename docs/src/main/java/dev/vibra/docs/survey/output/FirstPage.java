package dev.vibra.docs.survey.output;

import dev.vibra.diagnosis.Decider;
import dev.vibra.diagnosis.Finding;
import dev.vibra.diagnosis.Rank;
import dev.vibra.diagnosis.Sign;
import dev.vibra.point.Omission;
import dev.vibra.survey.AdviceStep;
import dev.vibra.survey.AdviceStep.Kind;
import dev.vibra.survey.MachineSurvey;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What somebody who decides has to know, on one page: how the machine stands, what is wrong, what to do, what was not
 * determined.
 */
final class FirstPage {
    private static final int MOST_SIGNS = 2;

    private final Html html;
    private final SurveyRecord record;
    private final MachineSurvey survey;
    private final Words words;

    private FirstPage(Html html, SurveyRecord record) {
        this.html = html;
        this.record = record;
        this.survey = record.survey();
        this.words = html.words();
    }

    static void write(Html html, SurveyRecord record) {
        FirstPage page = new FirstPage(html, record);
        html.open("section", "front");
        page.state();
        page.facts();
        page.errors();
        page.wrong();
        page.toDo();
        page.open();
        html.close("section");
    }

    private void state() {
        html.open("header", "head").open("div", "").element("h1", survey.machine().name())
                .element("p", "state", words.condition(survey)).close("div");
        html.ruler(survey.zone(), "ruler").close("header");
        List<String> reasons = words.reasons(survey);
        if (!reasons.isEmpty()) {
            html.element("p", "reason", Words.capital(String.join("; ", reasons)) + words.meaning(survey)
                    .map(meaning -> ". " + meaning).orElse("") + ".");
        }
    }

    private void facts() {
        html.open("dl", "facts");
        String measured = Stream.concat(survey.machine().measured().map(Words::time).stream(),
                survey.machine().state().stream()).collect(Collectors.joining("; "));
        if (!measured.isEmpty()) {
            fact(survey.machine().measured().isPresent() ? "front.measured" : "front.state", measured);
        }
        fact("front.speed", words.speed(survey));
        fact("front.machine", words.plates(survey));
        survey.criteria().forEach(criterion -> fact("front.criterion", String.join("; ", Words.criterion(criterion))));
        html.close("dl");
    }

    private void fact(String key, String text) {
        html.open("div", "").element("dt", html.say(key)).element("dd", text).close("div");
    }

    private void errors() {
        if (!record.problems().isEmpty()) {
            html.open("div", "error").element("p", html.say("front.errors")).list(record.problems()).close("div");
        }
    }

    private void wrong() {
        html.element("h2", html.say("front.wrong"));
        if (survey.findings().isEmpty()) {
            html.element("p", html.say("front.nothing-found") + " " + Words.lookedFor(survey));
        } else {
            html.open("ol", "findings");
            survey.findings().forEach(this::finding);
            html.close("ol").element("p", "quiet", html.say("findings.nothing-certain"));
        }
        if (!survey.unexplained().isEmpty()) {
            html.element("p", html.say("front.unexplained")).list(survey.unexplained());
        }
    }

    private void finding(Finding one) {
        html.open("li", "").element("h3", words.title(one)).element("p", "quiet", words.standing(one));
        List<String> seen = one.evidence().stream().limit(MOST_SIGNS).map(Sign::statement).toList();
        part("finding.seen", seen);
        part("finding.alike", one.lookAlikes().isEmpty() ? Words.codes(one.alikeTo())
                : one.lookAlikes().stream().map(Object::toString).toList());
        part("finding.decides", one.decidedBy().stream().limit(1).map(Decider::measurement).toList());
        html.close("li");
    }

    private void part(String key, List<String> parts) {
        if (!parts.isEmpty()) {
            html.labelled("p", html.say(key), String.join("; ", parts) + ".");
        }
    }

    /**
     * What decides on a finding stands with it, and isn't said twice; who has to decide now is given no date to wait for.
     */
    private void toDo() {
        html.element("h2", html.say("front.to-do")).open("ol", "");
        survey.advice().stream().filter(step -> step.kind() != Kind.CAUTION).forEach(step -> html.element("li",
                step.kind() == Kind.DECIDE ? html.say("front.decide") : step.text()));
        if (survey.condition().rank().filter(Rank.DECIDE_NOW::equals).isEmpty()) {
            new HistoryWords(html.phrases(), html.units()).measureAgain(record.history())
                    .ifPresent(step -> html.element("li", step));
        }
        html.close("ol");
        String caution = survey.advice().stream().filter(step -> step.kind() == Kind.CAUTION).map(AdviceStep::text)
                .collect(Collectors.joining(" "));
        html.element("p", "caution", caution);
    }

    /** What a balancing job lacks stands with it; that there is none matters where it may be wanted. */
    private boolean isOpen(Omission one) {
        return switch (one.subject()) {
            case FAULTS, SEVERITY -> false;
            case BALANCING -> survey.balancing().isEmpty() && survey.findings().stream()
                    .anyMatch(finding -> finding.code().equals("unbalance") || finding.alikeTo().contains("unbalance"));
            default -> true;
        };
    }

    private void open() {
        List<String> open = new ArrayList<>(Stream.concat(survey.omissions().stream().filter(this::isOpen)
                .map(Words::omission),
                new OpenQuestions(survey, html.phrases()).list().stream()).toList());
        if (!open.isEmpty()) {
            html.element("h2", html.say("front.not-determined")).list(open);
        }
    }
}
