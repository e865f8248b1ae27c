package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.SpeedNames;
import dev.vibra.speedrun.PointRun;
import dev.vibra.speedrun.ProbePairRun;
import dev.vibra.speedrun.SpeedResonance;
import dev.vibra.speedrun.SpeedRun;
import java.util.List;
import java.util.Map;

/** The section of the report on run-ups and coast-downs. */
final class SpeedRunSection {
    private final Html html;
    private final RunWords words;
    private final Map<String, List<FigureSpool.Kept>> figures;

    private SpeedRunSection(Html html, Map<String, List<FigureSpool.Kept>> figures) {
        this.html = html;
        this.words = new RunWords(html.phrases(), html.units());
        this.figures = figures;
    }

    /** Writes the section; nothing without runs. The figures are kept by {@link SpeedRunFigures#key}. */
    static void write(Html html, SurveyRecord record, Map<String, List<FigureSpool.Kept>> figures) {
        if (record.runs().isEmpty()) {
            return;
        }
        SpeedRunSection section = new SpeedRunSection(html, figures);
        html.element("h2", html.say("run.title"));
        html.open("div", "error").element("p", html.say("run.caution")).close("div");
        html.element("p", html.say("run.what"));
        record.runs().forEach(section::run);
        html.element("p", "quiet", html.say("run.terms"));
    }

    private void run(SpeedRun run) {
        html.element("h3", words.heading(run));
        run.sweep().ifPresent(sweep -> {
            html.element("p", words.rate(sweep));
            html.list(sweep.remarks().stream().map(remark -> html.say("run.remark", run.id(), remark.text())).toList());
        });
        if (run.points().stream().anyMatch(point -> !point.resonances().isEmpty())) {
            table(run);
        }
        html.list(run.leftOut().stream().map(left -> run.sweep().isEmpty()
                ? html.say("run.not-followed", left.reason()) : html.say("run.left-out", left.part(), left.reason()))
                .toList());
        html.list(run.points().stream().flatMap(point -> words.notes(run, point).stream()).toList());
        for (PointRun point : run.points()) {
            draw(run, point.id());
        }
        for (ProbePairRun pair : run.pairs()) {
            html.list(pair.orbits().stream().map(orbit -> words.orbit(pair, orbit)).toList());
            html.list(pair.remarks().stream().map(remark -> html.say("run.remark", pair.id(), remark.text())).toList());
            draw(run, pair.id());
        }
    }

    private void draw(SpeedRun run, String part) {
        figures.getOrDefault(SpeedRunFigures.key(run.id(), part), List.of())
                .forEach(figure -> html.figure(figure, figure.description()));
    }

    private void table(SpeedRun run) {
        boolean service = run.service().isPresent();
        html.open("table", "whole").row("th", html.say("run.point"), html.say("run.order"), html.say("run.resonance"),
                html.say("run.frequency"), html.say("run.amplification"), html.say("run.peak"),
                service ? html.say("run.service") : "");
        for (PointRun point : run.points()) {
            for (SpeedResonance one : point.resonances()) {
                html.row("td", point.id(), SpeedNames.order(one.order()), words.speed(one), html.say("run.hertz",
                        PlainNumber.forPeople(one.hertz())), words.factor(one), words.peak(point, one),
                        words.service(run, one));
            }
        }
        html.close("table");
        if (service) {
            html.element("p", "quiet", html.say("run.margin"));
        }
    }
}
