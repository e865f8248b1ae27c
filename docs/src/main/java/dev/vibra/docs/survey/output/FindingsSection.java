package dev.vibra.docs.survey.output;

import dev.vibra.diagnosis.Finding;
import dev.vibra.diagnosis.Sign;
import dev.vibra.survey.MachineSurvey;
import java.util.List;

/** The evidence behind the findings, for those who judge it: what speaks for each and against it, and what would decide. */
final class FindingsSection {
    private final Html html;

    private FindingsSection(Html html) {
        this.html = html;
    }

    static void write(Html html, MachineSurvey survey) {
        if (survey.findings().isEmpty()) {
            return;
        }
        html.element("h2", html.say("findings.title"));
        survey.findings().forEach(new FindingsSection(html)::finding);
        html.element("p", "quiet", Words.lookedFor(survey));
    }

    private void finding(Finding one) {
        html.open("div", "finding").element("h3", html.words().title(one));
        signs("findings.for", one.evidence());
        signs("findings.against", one.against());
        list("findings.not-measured", one.notMeasured());
        list("findings.next", one.decidedBy().stream().map(html.words()::decider).toList());
        html.labelled("p", html.say("findings.source"), one.source() + ".").close("div");
    }

    /** The statement first; the figures behind it are for those who doubt it. */
    private void signs(String key, List<Sign> signs) {
        if (signs.isEmpty()) {
            return;
        }
        html.element("p", "label", html.say(key)).open("ul", "");
        for (Sign one : signs) {
            html.open("li", "").text(Words.capital(one.statement()) + ".");
            String behind = one.figures() + (one.counts().isEmpty() ? "" : (one.figures().isEmpty() ? "" : "; ")
                    + one.counts());
            if (!behind.isEmpty()) {
                html.raw(" ").element("span", "quiet", Words.capital(behind) + ".");
            }
            html.close("li");
        }
        html.close("ul");
    }

    private void list(String key, List<String> items) {
        if (!items.isEmpty()) {
            html.element("p", "label", html.say(key)).list(items.stream().map(Words::capital).toList());
        }
    }
}
