package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.docs.survey.input.FileTrouble;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.point.PointSurvey;
import dev.vibra.severity.Criterion;
import dev.vibra.speedrun.PointRun;
import dev.vibra.speedrun.ProbePairRun;
import dev.vibra.speedrun.SpeedRun;
import dev.vibra.survey.MachineSurvey;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Supplier;

/**
 * Writes {@code report.html}: one page that needs no other file, for screen and for A4 paper. Figures of
 * points are drawn as the points come, so that their signals need not be kept longer than that.
 */
public final class HtmlReport implements AutoCloseable {
    private final FigureSpool spool = new FigureSpool();
    private final Map<String, List<FigureSpool.Kept>> figures = new LinkedHashMap<>();
    private final Map<String, List<FigureSpool.Kept>> runFigures = new LinkedHashMap<>();
    private final Map<Criterion, FigureSpool.Kept> severityFigures = new LinkedHashMap<>();
    private final List<FigureSpool.Kept> historyFigures = new ArrayList<>();
    private final List<FigureSpool.Kept> balancingFigures = new ArrayList<>();
    private final List<Problem> problems = new ArrayList<>();
    private final ReportSettings settings;
    private Export export = Export.none();
    private int runParts;

    /**
     * Makes a report without points.
     *
     * @param settings how it is written
     */
    public HtmlReport(ReportSettings settings) {
        this.settings = Objects.requireNonNull(settings, "settings");
    }

    /**
     * Writes each figure and what is behind it into files too, as it is drawn.
     *
     * @param into where to; closed by the caller
     */
    public void exportTo(Export into) {
        export = Objects.requireNonNull(into, "into");
    }

    /** The figures of a point, put aside, and what went wrong with them. */
    public static final class Drawing {
        private final String point;
        private final Map<String, List<FigureSpool.Kept>> place;
        private final List<FigureSpool.Kept> kept = new ArrayList<>();
        private final List<Problem> problems = new ArrayList<>();
        private boolean starved;

        private Drawing(String point, Map<String, List<FigureSpool.Kept>> place) {
            this.point = point;
            this.place = place;
        }

        /** {@return true if figures are left out since the memory doesn't suffice} */
        public boolean starved() {
            return starved;
        }
    }

    /**
     * Draws the figures of a point and puts them aside. Several threads may draw at a time.
     *
     * @param point results with traces; without them there are no figures
     * @return the figures, to be added
     */
    public Drawing draw(PointSurvey point) {
        Drawing drawing = new Drawing(point.point().id(), figures);
        List<Explorable> drawn = new ArrayList<>();
        attempt(drawing, () -> {
            drawn.addAll(PointFigures.of(point, settings.phrases(), settings.units()));
            drawn.forEach(figure -> drawing.kept.add(spool.keep(figure)));
        });
        try {
            drawing.problems.addAll(export.point(point, drawn));
        } catch (OutOfMemoryError e) {
            drawing.starved = true;
            drawing.problems.add(new Problem(ReportFiles.REPORT, 0, "", "figures and traces of " + drawing.point
                    + " are not exported: they are too large for the memory of this process (java -Xmx... gives"
                    + " more)"));
        }
        return drawing;
    }

    /**
     * Draws the figures of a point of a run-up or coast-down and puts them aside.
     *
     * @param run the run
     * @param point the point, with its cascade
     * @return the figures, to be added
     */
    public Drawing draw(SpeedRun run, PointRun point) {
        return drawRun(run.id(), point.id(), () -> SpeedRunFigures.of(run, point, settings.phrases(),
                settings.units()));
    }

    /**
     * Draws the figures of a pair of probes and puts them aside.
     *
     * @param run the run
     * @param pair the pair
     * @return the figures, to be added
     */
    public Drawing draw(SpeedRun run, ProbePairRun pair) {
        return drawRun(run.id(), pair.id(), () -> SpeedRunFigures.of(pair, settings.phrases(), settings.units()));
    }

    /** Runs are drawn one after the other, so that their files are numbered in order. */
    private Drawing drawRun(String run, String part, Supplier<List<Figure>> figuresOfRun) {
        Drawing drawing = new Drawing(SpeedRunFigures.key(run, part), runFigures);
        attempt(drawing, () -> {
            List<Figure> drawn = figuresOfRun.get();
            drawn.forEach(figure -> drawing.kept.add(spool.keep(Explorable.still(figure))));
            drawing.problems.addAll(export.figures(Export.SPEED_RUN + "-" + ++runParts, drawn));
        });
        return drawing;
    }

    /**
     * Adds the figures of a point to the report; what went wrong is told in the order in which this is called.
     *
     * @param drawing what was drawn
     */
    public void add(Drawing drawing) {
        drawing.place.put(drawing.point, drawing.kept);
        problems.addAll(drawing.problems);
    }

    /** Draws the severity of all points, and the vectors of the balancing job. */
    void drawWhole(SurveyRecord record) {
        MachineSurvey survey = record.survey();
        Drawing severity = new Drawing("severity", figures);
        attempt(severity, () -> {
            Map<Criterion, Figure> drawn = SeverityFigures.of(survey, settings.phrases(), settings.units());
            drawn.forEach((criterion, figure) -> severityFigures.put(criterion, spool.keep(Explorable.still(figure))));
            severity.problems.addAll(export.figures(Export.SEVERITY, drawn.values()));
        });
        Drawing history = new Drawing("history", figures);
        attempt(history, () -> {
            List<Figure> drawn = HistoryFigures.of(HistoryWords.worthTelling(record.history()), settings.phrases(),
                    settings.units());
            drawn.forEach(figure -> historyFigures.add(spool.keep(Explorable.still(figure))));
            history.problems.addAll(export.figures(Export.HISTORY, drawn));
        });
        problems.addAll(history.problems);
        Drawing balancing = new Drawing("balancing", figures);
        attempt(balancing, () -> survey.balancing().flatMap(job -> BalancingFigure.of(job, settings.phrases()))
                .ifPresent(figure -> {
                    balancingFigures.add(spool.keep(Explorable.still(figure)));
                    balancing.problems.addAll(export.figures(Export.BALANCING, List.of(figure)));
                }));
        problems.addAll(severity.problems);
        problems.addAll(balancing.problems);
    }

    /**
     * A machine without fonts fails in many ways; numbers and verdicts don't depend on figures and are not lost with
     * them.
     */
    private void attempt(Drawing drawing, Runnable work) {
        if (!settings.withFigures()) {
            return;
        }
        String reason;
        try {
            work.run();
            return;
        } catch (UncheckedIOException e) {
            reason = "there is no room for a temporary file: " + FileTrouble.inWords(e.getCause());
        } catch (RuntimeException | InternalError | LinkageError e) {
            reason = "they can't be drawn here (are fonts installed?)";
        } catch (OutOfMemoryError e) {
            drawing.starved = true;
            reason = "they are too large for the memory of this process (java -Xmx... gives more)";
        }
        drawing.kept.clear();
        drawing.problems.add(new Problem(ReportFiles.REPORT, 0, "", "figures of " + drawing.point + " are left out, "
                + reason));
    }

    /** {@return what went wrong with the figures; empty if all were drawn} */
    public List<Problem> problems() {
        return List.copyOf(problems);
    }

    /** Lets go of the figures. */
    @Override
    public void close() throws IOException {
        spool.close();
    }

    /** Writes the page. */
    void write(SurveyRecord record, OutputStream out) throws IOException {
        Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
        try {
            write(record, new Html(writer, spool, settings.phrases(), settings.units()));
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        writer.flush();
    }

    private void write(SurveyRecord record, Html html) {
        MachineSurvey survey = record.survey();
        html.raw("<!DOCTYPE html>\n<html lang=\"").text(html.say("report.language")).raw("\">\n<head>\n"
                + "<meta charset=\"utf-8\">\n"
                + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        String style = PlotAssets.read("report.css") + PlotAssets.style();
        String script = PlotAssets.script();
        html.raw(ContentPolicy.meta(List.of(script), List.of(style)) + "\n");
        html.element("title", html.say("report.title", survey.machine().name()));
        html.raw("<style>" + style + "</style>\n</head>\n<body>\n<main>\n");
        FirstPage.write(html, record);
        if (settings.units() != ShownUnits.METRIC) {
            html.element("p", "quiet", html.say("units.note"));
        }
        ComparisonSection.write(html, record);
        SeveritySection.write(html, record, severityFigures);
        HistorySection.write(html, record.history(), historyFigures);
        FindingsSection.write(html, survey);
        SpeedRunSection.write(html, record, runFigures);
        survey.balancing().ifPresent(balancing -> BalancingSection.write(html.in(ShownUnits.METRIC), balancing,
                balancingFigures));
        Set<String> whole = FullData.points(survey, bytesOfValues(), settings.everyValue());
        survey.points().forEach(point -> PointSection.write(html, record, point,
                figures.getOrDefault(point.point().id(), List.of()), whole.contains(point.point().id())));
        html.element("p", "quiet", html.say("report.run", Library.NAME, Library.VERSION, record.run()));
        html.raw("</main>\n<script type=\"application/json\" id=\"words\">" + PlotAssets.words(html.phrases())
                + "</script>\n<script>" + script + "</script>\n</body>\n</html>\n");
    }

    private Map<String, Long> bytesOfValues() {
        Map<String, Long> bytes = new LinkedHashMap<>();
        figures.forEach((point, kept) -> bytes.put(point, kept.stream().mapToLong(one -> one.whole().length()).sum()));
        return bytes;
    }
}
