package dev.vibra.docs.survey.output;

import dev.vibra.history.DescriptorHistory;
import dev.vibra.history.MachineHistory;
import java.util.List;

/** The section of the report on the visits: what changed, since when, and when it may reach a limit. */
final class HistorySection {
    private HistorySection() {}

    static void write(Html html, MachineHistory history, List<FigureSpool.Kept> figures) {
        if (history.histories().isEmpty() && history.left().isEmpty()) {
            return;
        }
        html.element("h2", html.say("history.title"));
        HistoryWords words = new HistoryWords(html.phrases(), html.units());
        List<DescriptorHistory> told = HistoryWords.worthTelling(history);
        if (!history.histories().isEmpty()) {
            html.element("p", html.say("history.visits", history.visits().size(),
                    HistoryWords.day(history.visits().get(0)), history.histories().size(), told.size()));
        }
        figures.forEach(figure -> html.figure(figure, figure.description()));
        if (!told.isEmpty()) {
            table(html, told, words);
        }
        if (!history.left().isEmpty()) {
            html.element("p", "label", html.say("history.left")).list(history.left());
        }
    }

    private static void table(Html html, List<DescriptorHistory> told, HistoryWords words) {
        html.open("table", "history").row("th", html.say("table.point"), html.say("history.number"), html.say("history.first"),
                html.say("history.now"), html.say("history.since"), html.say("history.limits"), html.say("history.state"),
                html.say("history.outlook"));
        for (DescriptorHistory one : told) {
            html.row("td", one.point(), one.descriptor(), words.value(one, one.first()), words.value(one, one.last()),
                    words.since(one), one.limits().map(limits -> words.value(one, limits.alarm())
                            + (limits.trip().isPresent() ? " / " + words.value(one, limits.trip().getAsDouble()) : ""))
                            .orElse(""), words.state(one), words.outlook(one));
        }
        html.close("table");
        html.list(told.stream().flatMap(one -> one.limits().stream()).map(limits -> limits.source()).distinct()
                .map(source -> html.say("history.source", source)).toList());
        html.element("p", "quiet", html.say("history.note"));
    }
}
