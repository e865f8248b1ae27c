package dev.vibra.docs.survey.output;

import dev.vibra.diagnosis.Finding;
import dev.vibra.docs.survey.input.FileTrouble;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.point.PointSurvey;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.Verdict;
import dev.vibra.severity.Zone;
import dev.vibra.survey.MachineSurvey;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Writes {@code report.html}: one page that needs no other file, for screen and for A4 paper. Figures of
 * points are drawn as the points come, so that their signals need not be kept longer than that.
 */
public final class HtmlReport implements AutoCloseable {
    private final FigureSpool spool = new FigureSpool();
    private final Map<String, List<FigureSpool.Kept>> figures = new HashMap<>();
    private final Map<Criterion, FigureSpool.Kept> severityFigures = new LinkedHashMap<>();
    private final List<FigureSpool.Kept> balancingFigures = new ArrayList<>();
    private final List<Problem> problems = new ArrayList<>();
    private final boolean withFigures;

    /** Makes a report without points. */
    public HtmlReport() {
        this(true);
    }

    private HtmlReport(boolean withFigures) {
        this.withFigures = withFigures;
    }

    /** {@return a report of words and tables, without points; figures take most of the time} */
    public static HtmlReport withoutFigures() {
        return new HtmlReport(false);
    }

    /** The figures of a point, put aside, and what went wrong with them. */
    public static final class Drawing {
        private final String point;
        private final List<FigureSpool.Kept> kept = new ArrayList<>();
        private final List<Problem> problems = new ArrayList<>();
        private boolean starved;

        private Drawing(String point) {
            this.point = point;
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
        Drawing drawing = new Drawing(point.point().id());
        attempt(drawing, () -> PointFigures.of(point).forEach(figure -> drawing.kept.add(spool.keep(figure))));
        return drawing;
    }

    /**
     * Adds the figures of a point to the report; what went wrong is told in the order in which this is called.
     *
     * @param drawing what was drawn
     */
    public void add(Drawing drawing) {
        figures.put(drawing.point, drawing.kept);
        problems.addAll(drawing.problems);
    }

    /** Draws the severity of all points, and the vectors of the balancing job. */
    void drawWhole(MachineSurvey survey) {
        Drawing severity = new Drawing("severity");
        attempt(severity, () -> SeverityFigures.of(survey).forEach((criterion, figure) ->
                severityFigures.put(criterion, spool.keep(figure))));
        Drawing balancing = new Drawing("balancing");
        attempt(balancing, () -> survey.balancing().flatMap(BalancingFigure::of)
                .ifPresent(figure -> balancingFigures.add(spool.keep(figure))));
        problems.addAll(severity.problems);
        problems.addAll(balancing.problems);
    }

    /**
     * A machine without fonts fails in many ways; numbers and verdicts don't depend on figures and are not lost with
     * them.
     */
    private void attempt(Drawing drawing, Runnable work) {
        if (!withFigures) {
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
            write(record, new Html(writer, spool));
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        writer.flush();
    }

    private void write(SurveyRecord record, Html html) {
        MachineSurvey survey = record.survey();
        html.raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        html.element("title", "Vibration survey: " + survey.machine().name());
        html.raw("<style>\n" + style() + "</style>\n</head>\n<body>\n");
        head(html, survey);
        if (!record.problems().isEmpty()) {
            html.open("div", "error").element("p", "Left out because of errors:").list(record.problems()).close("div");
        }
        severity(html, survey);
        findings(html, survey);
        html.element("h2", "Advice").list(survey.advice());
        survey.balancing().ifPresent(balancing -> BalancingSection.write(html, balancing, balancingFigures));
        survey.points().forEach(point -> PointSection.write(html, record, point,
                figures.getOrDefault(point.point().id(), List.of())));
        html.element("h2", "Not determined for the machine as a whole").list(Words.omissions(survey));
        html.element("p", "quiet", Library.NAME + " " + Library.VERSION + ", run " + record.run());
        html.raw("</body>\n</html>\n");
    }

    private static String style() {
        try (InputStream in = HtmlReport.class.getResourceAsStream("report.css")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void head(Html html, MachineSurvey survey) {
        html.open("div", "head").element("h1", Words.headline(survey));
        ruler(html, survey.zone(), "ruler").close("div");
        html.list(survey.condition().because());
        Words.meaning(survey).ifPresent(meaning -> html.element("p", meaning + "."));
        html.element("p", "quiet", Words.machine(survey));
        survey.criteria().forEach(criterion -> html.element("p", "Criterion: " + String.join("; ",
                Words.criterion(criterion)) + "."));
        html.element("p", "Speed: " + Words.speed(survey) + ".");
    }

    /** The zones as letters in a row, the one that holds in an inverted, underlined box; nothing without a zone. */
    static Html ruler(Html html, Optional<Zone> zone, String cssClass) {
        html.open("div", cssClass);
        for (Zone one : zone.isPresent() ? Zone.values() : new Zone[0]) {
            html.element("span", one == zone.get() ? "here" : "", one.name());
        }
        return html.close("div");
    }

    private void severity(Html html, MachineSurvey survey) {
        html.element("h2", "Severity");
        severityFigures.forEach((criterion, figure) -> html.figure(figure, criterion
                + ". Diamond: value; bar: expanded uncertainty for 95 %."));
        html.open("table", "").row("th", "Point", "Direction", "Value", "Rating", "Limits", "By");
        for (PointSurvey point : survey.points()) {
            String direction = point.point().direction().map(Object::toString).orElse("");
            if (point.severity().isEmpty()) {
                html.row("td", point.point().id(), direction, "", "", "", Words.noVerdict(point));
            }
            point.severity().ifPresent(verdict -> verdict.judgements().forEach(one -> html.row("td", point.point().id(),
                    direction, Words.value(one), Words.rating(one), limits(one.criterion()),
                    by(point, verdict, one.criterion()))));
        }
        html.close("table");
        if (!survey.unexplained().isEmpty()) {
            html.element("p", "No finding explains these levels; the lines that carry them:");
            html.list(survey.unexplained());
        }
    }

    private static String limits(Criterion criterion) {
        return Words.limits(criterion) + Words.flag(criterion).map(flag -> " (" + flag + ")").orElse("");
    }

    private static String by(PointSurvey point, Verdict verdict, Criterion criterion) {
        return criterion.standard() + " " + criterion.clause()
                + Words.candidates(verdict, criterion).map(which -> ", " + which).orElse("")
                + (point.insisted() ? "; " + Words.INSISTED : "");
    }

    private static void findings(Html html, MachineSurvey survey) {
        html.element("h2", "Findings");
        if (survey.findings().isEmpty()) {
            html.element("p", capital(Words.NO_FINDINGS) + ".");
        } else {
            html.element("p", Words.NOTHING_CERTAIN);
        }
        for (Finding finding : survey.findings()) {
            html.open("div", "finding").element("h3", Words.finding(finding));
            Words.parts(finding).forEach((label, words) -> part(html, capital(label), words));
            html.close("div");
        }
        html.element("p", Words.lookedFor(survey));
    }

    private static void part(Html html, String label, List<String> words) {
        if (words.size() == 1) {
            html.element("p", label + ": " + words.get(0));
        } else {
            html.element("p", label + ":").list(words);
        }
    }

    static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
