package dev.vibra.docs.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.vibra.docs.survey.SurveyCommand;
import dev.vibra.docs.survey.output.TrialPage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The report in a real browser, used as a reader uses it: by mouse, wheel and keys, without script, on paper. Needs
 * Chromium and pdftotext; run by its name, see DEVELOPERS.md. With {@code -Daxe=FILE} it asks axe-core as well, with
 * {@code -Dreport=FILE} it looks at that report in place of the demonstration's, with {@code -Dpictures=FOLDER} it
 * leaves pictures to look at.
 */
class ReportInBrowser {
    /** What is opened: a page of known values, and the report that a survey makes. */
    enum Kind { TRIAL, REPORT }

    @TempDir
    private static Path folder;
    private static Browser browser;

    @BeforeAll
    static void start() throws IOException, InterruptedException {
        Files.writeString(file(Kind.TRIAL), TrialPage.html());
        if (System.getProperty("report") != null) {
            Files.copy(Path.of(System.getProperty("report")), file(Kind.REPORT));
        } else {
            run(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
                    System.getProperty("java.class.path"), SurveyCommand.class.getName(), "--out",
                    folder.resolve("out").toString());
            Files.copy(folder.resolve("out/report.html"), file(Kind.REPORT));
        }
        browser = Browser.start();
    }

    @AfterAll
    static void end() {
        if (browser != null) {
            browser.close();
        }
    }

    private static Path file(Kind kind) {
        return folder.resolve(kind.name().toLowerCase(Locale.ROOT) + ".html");
    }

    private static String run(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(5, TimeUnit.MINUTES), "the process did not end");
        assertEquals(0, process.exitValue(), printed);
        return printed;
    }

    private static void picture(BrowserPage page, Object name) throws IOException {
        String wanted = System.getProperty("pictures");
        if (wanted != null) {
            page.picture(Files.createDirectories(Path.of(wanted)).resolve(name + ".png"));
        }
    }

    /** All figures of the page, brought into view one after the other and built. */
    private static List<PlotOnPage> plots(BrowserPage page) throws IOException {
        List<PlotOnPage> plots = new ArrayList<>();
        int count = (int) page.number("document.querySelectorAll('figure.plot').length");
        for (int i = 0; i < count; i++) {
            plots.add(new PlotOnPage(page, i).built());
        }
        assertTrue(count > 0, "no figure that can be explored");
        return plots;
    }

    @ParameterizedTest
    @EnumSource
    void buildsEachFigureWithoutComplaint(Kind kind) throws Exception {
        try (BrowserPage page = browser.page().open(file(kind))) {
            page.run("new Promise(done => setTimeout(done, 500))");
            int begun = (int) page.number("document.querySelectorAll('figure.explored').length");
            List<PlotOnPage> plots = plots(page);
            assertTrue(begun < plots.size(), "figures far from the window were built at once: " + begun);
            for (PlotOnPage plot : plots) {
                assertTrue(plot.ink() > 100, plot + " shows no curve");
                plot.scroll();
                picture(page, kind + "-" + plot);
            }
            assertEquals(0, page.shown("figure.plot > svg.still"), "still pictures beside what stands in for them");
            page.medium("print");
            assertEquals(0, page.shown(".plot-box"), "controls on paper");
            assertEquals(List.of(), page.complaints());
        }
    }

    @ParameterizedTest
    @EnumSource
    void zoomsAndResets(Kind kind) throws Exception {
        try (BrowserPage page = browser.page().open(file(kind))) {
            for (PlotOnPage plot : plots(page)) {
                plot.scroll();
                plot.press("Whole range");
                double[] whole = plot.range();
                double width = whole[1] - whole[0];
                plot.drag(0.25, 0.5);
                plot.assertRange(whole[0] + 0.25 * width, whole[0] + 0.5 * width);
                plot.press("Whole range");
                plot.assertRange(whole[0], whole[1]);
                plot.type(whole[0] + 0.1 * width, whole[0] + 0.3 * width);
                plot.assertRange(whole[0] + 0.1 * width, whole[0] + 0.3 * width);
                assertTrue(plot.peakInside(), plot + " cuts its peak");
                plot.doubleClick();
                plot.assertRange(whole[0], whole[1]);
                plot.focus();
                page.key("+", false);
                assertTrue(plot.range()[1] - plot.range()[0] < 0.7 * width, plot + " by key");
                page.key("Home", false);
                plot.assertRange(whole[0], whole[1]);
                page.key("+", false);
                page.key("Escape", false);
                plot.assertRange(whole[0], whole[1]);
            }
            assertEquals(List.of(), page.complaints());
        }
    }

    @ParameterizedTest
    @EnumSource
    void refusesLimitsThatAreNone(Kind kind) throws Exception {
        try (BrowserPage page = browser.page().open(file(kind))) {
            PlotOnPage plot = new PlotOnPage(page, 0).built();
            double[] before = plot.range();
            plot.type(before[1] + 1e6, before[0]);
            assertTrue(plot.reading().startsWith("The first limit must be below the second"), plot.reading());
            plot.press("Whole range");
            assertNotEquals(before[1] + 1e6, plot.range()[0]);
        }
    }

    /** A page of figures must scroll: the wheel belongs to the figure only while it has the focus. */
    @ParameterizedTest
    @EnumSource
    void wheelZoomsOnlyWithFocus(Kind kind) throws Exception {
        try (BrowserPage page = browser.page().open(file(kind))) {
            for (PlotOnPage plot : plots(page)) {
                page.run("document.activeElement.blur()");
                plot.scroll();
                double[] before = plot.range();
                double top = page.number("scrollY");
                plot.wheel(top > 300 ? -200 : 200);
                page.awaitTrue("scrollY !== " + top);
                assertEquals(before[1], plot.range()[1], plot + " zooms without focus");
                plot.scroll();
                plot.focus();
                page.run("new Promise(done => setTimeout(done, 100))");
                top = page.number("scrollY");
                plot.wheel(-200);
                page.awaitTrue(plot.script(".querySelectorAll('input')[1].value != " + before[1]));
                double[] after = plot.range();
                assertEquals((before[1] - before[0]) / 1.25, after[1] - after[0], 0.003 * (before[1] - before[0]));
                assertEquals(top, page.number("scrollY"), "the page scrolls while a figure zooms");
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void cursorReadsTheLinesOfTheAnalysis(Kind kind) throws Exception {
        int lines = 0;
        try (BrowserPage page = browser.page().open(file(kind))) {
            for (PlotOnPage plot : plots(page)) {
                plot.scroll();
                for (int line : plot.linesInView()) {
                    plot.point(plot.number(".lines[" + line + "].x"));
                    assertTrue(plot.reading().contains("line of the analysis"), plot.reading());
                    lines++;
                }
            }
        }
        assertTrue(lines > 1, "no lines of the analysis in any figure");
    }

    /** The picture must not say 4.48 where the table says 5.21. */
    @Test
    void cursorReadsWhatTheTableSays() throws Exception {
        int rows = 0;
        try (BrowserPage page = browser.page().open(file(Kind.REPORT))) {
            for (PlotOnPage plot : plots(page)) {
                for (String[] row : plot.rowsOfItsTable()) {
                    plot.scroll();
                    double hertz = Double.parseDouble(row[0]);
                    double reach = Math.max(10 * plot.number(".step"), 0.01 * hertz);
                    plot.type(hertz - reach, hertz + reach);
                    plot.point(plot.nearestLine(hertz));
                    String reading = plot.reading();
                    assertTrue(reading.contains(" " + row[2] + " mm/s rms"), reading + " but " + String.join(" ", row));
                    // Both are rounded, the cursor to hundredths, tables to three digits: half of the last place.
                    int places = Math.min(2, row[1].replaceFirst("^[0-9]*\\.?", "").length());
                    assertTrue(row[1].isEmpty() || Math.abs(plot.orderRead() - Double.parseDouble(row[1]))
                            < 0.51 * Math.pow(10, -places), reading + " but " + String.join(" ", row));
                    assertTrue(reading.contains("line of the analysis" + (row[3].isEmpty() ? "" : ": " + row[3])),
                            reading + " but " + String.join(" ", row));
                    rows++;
                }
            }
        }
        assertTrue(rows > 5, "rows of tables: " + rows);
    }

    /** The depths of a bearing stand in its evidence with two digits, as in {@code 1f 76.05 Hz depth 1.9}. */
    @Test
    void linesOfTheEnvelopeAreThoseOfTheEvidence() throws Exception {
        int lines = 0;
        try (BrowserPage page = browser.page().open(file(Kind.REPORT))) {
            for (PlotOnPage plot : plots(page)) {
                for (int line = 0; plot.text(".y.unit").isEmpty() && line < plot.number(".lines.length"); line++) {
                    String words = page.text("(line => line.name.replace(/.*, /, '') + ' ' + line.x.toPrecision(4)"
                            + " + ' Hz depth ' + line.y.toPrecision(2))(" + plot.data(".lines[" + line + "])"));
                    assertTrue((Boolean) page.run("Array.from(document.querySelectorAll('td')).some(cell =>"
                            + " cell.textContent.includes('" + words + "'))"), words);
                    lines++;
                }
            }
        }
        assertTrue(lines > 3, "lines of envelopes: " + lines);
    }

    /** The page for the decision is one page on paper too. */
    @Test
    void firstPageIsOnePage() throws Exception {
        String html = Files.readString(file(Kind.REPORT));
        int end = html.indexOf("</section>", html.indexOf("<section class=\"front\">"));
        int last = html.lastIndexOf("</li>", end);
        Path marked = folder.resolve("front.html");
        Files.writeString(marked, html.substring(0, last) + " ENDFRONT" + html.substring(last));
        Path pdf = folder.resolve("front.pdf");
        try (BrowserPage page = browser.page().open(marked)) {
            page.print(pdf);
        }
        String[] sheets = run("pdftotext", "-layout", pdf.toString(), "-").split("\f");
        assertEquals(1, sheetOf(sheets, "ENDFRONT"));
    }

    /** The same on the page of known values: 5.21 between two lines of the spectrum that are lower. */
    @Test
    void cursorReadsTheInterpolatedLevel() throws Exception {
        try (BrowserPage page = browser.page().open(file(Kind.TRIAL))) {
            PlotOnPage plot = new PlotOnPage(page, 0).built();
            plot.scroll();
            plot.point(TrialPage.SHAFT.hertz());
            assertEquals("Frequency 24.83 Hz | Order 1.00 | Velocity 5.21 mm/s rms | line of the analysis: shaft speed",
                    plot.reading());
            plot.point(100);
            assertTrue(plot.reading().contains("line of the spectrum") && plot.reading().endsWith(
                    " | twice the line frequency 1\u00d7: no line stands out"), plot.reading());
        }
    }

    @ParameterizedTest
    @EnumSource
    void keysGoFromLineToLine(Kind kind) throws Exception {
        try (BrowserPage page = browser.page().open(file(kind))) {
            for (PlotOnPage plot : plots(page)) {
                List<Integer> lines = plot.linesInView();
                if (lines.size() > 1) {
                    plot.scroll();
                    double[] whole = plot.range();
                    plot.focus();
                    page.key("ArrowRight", true);
                    page.key("ArrowRight", true);
                    assertTrue(plot.reading().contains("line of the analysis"), plot.reading());
                    double at = plot.number(".lines[0].x");
                    plot.type(at - 8 * plot.number(".step"), at + 8 * plot.number(".step"));
                    plot.focus();
                    plot.point(at);
                    assertTrue(plot.reading().contains("line of the analysis"), plot.reading());
                    page.key("ArrowRight", false);
                    assertEquals("polite", plot.outputLive());
                    assertTrue(plot.reading().contains("line of the spectrum"), plot.reading());
                    page.key("ArrowLeft", true);
                    assertTrue(plot.reading().contains("line of the analysis"), plot.reading());
                    for (int i = 0; i < 12; i++) {
                        page.key("ArrowRight", false);
                    }
                    assertTrue(plot.range()[0] > at - 8 * plot.number(".step") && plot.range()[1] < whole[1],
                            "the range doesn't follow the cursor");
                    return;
                }
            }
        }
        throw new AssertionError("no figure with two lines of the analysis");
    }

    @ParameterizedTest
    @EnumSource
    void switchesToLogarithmAndOrders(Kind kind) throws Exception {
        try (BrowserPage page = browser.page().open(file(kind))) {
            for (PlotOnPage plot : plots(page)) {
                if (plot.has("speed")) {
                    plot.scroll();
                    double before = plot.range()[1];
                    plot.press("Orders");
                    assertEquals(before / plot.number(".speed"), plot.range()[1], 2e-3 * before);
                    plot.press("Logarithmic");
                    assertTrue(plot.ink() > 100, plot + " shows no curve on a logarithmic axis");
                    plot.drag(0.1, 0.4);
                    picture(page, kind + "-" + plot + "-log-orders");
                }
            }
            assertEquals(List.of(), page.complaints());
        }
    }

    @ParameterizedTest
    @EnumSource
    void stillPicturesServeWithoutScript(Kind kind) throws Exception {
        try (BrowserPage page = browser.page()) {
            page.scriptAllowed(false);
            page.open(file(kind));
            int figures = Files.readString(file(kind)).split("<figure class=\"plot\">").length - 1;
            assertEquals(figures, page.shown("figure.plot > svg.still"));
            assertEquals(0, page.shown(".plot-box"));
        }
    }

    /** Levels that no axis can bear, and data that are broken: the still picture stays, and the others are built. */
    @Test
    void leavesTheStillPictureWhereNothingCanBeDrawn() throws Exception {
        for (String bad : List.of("\"scale\":1E+60", "\"scale\":1E-60", "\"scale\":1,\"lanes\":7")) {
            Path odd = folder.resolve("odd.html");
            Files.writeString(odd, TrialPage.html().replaceFirst("\"scale\":[^,]*", bad));
            try (BrowserPage page = browser.page().open(odd)) {
                new PlotOnPage(page, 0).scroll();
                for (int i = 1; i < page.number("document.querySelectorAll('figure.plot').length"); i++) {
                    new PlotOnPage(page, i).built();
                }
                assertEquals(1, page.shown("figure.plot:not(.explored) > svg.still"), bad);
                assertEquals(0, page.shown("figure.plot:not(.explored) > .plot-box"), bad);
            }
        }
    }

    /** What a text could smuggle in, did it get past the escaping, is stopped by the policy of the page. */
    @ParameterizedTest
    @EnumSource
    void runsNothingThatIsInjected(Kind kind) throws Exception {
        Path hostile = folder.resolve("hostile.html");
        Files.writeString(hostile, Files.readString(file(kind)).replaceFirst("<body>", "<body><p id=\"evil\""
                + " style=\"position:fixed\" onclick=\"document.title='broken'\">x</p><img src=\"x\""
                + " onerror=\"document.title='broken'\"><script>document.title='broken'</script>"
                + "<style>#evil{visibility:hidden}</style>"));
        try (BrowserPage page = browser.page().open(hostile)) {
            page.run("document.getElementById('evil').click()");
            assertNotEquals("broken", page.text("document.title"));
            assertEquals("static visible", page.text("(s => s.position + ' ' + s.visibility)"
                    + "(getComputedStyle(document.getElementById('evil')))"));
            assertTrue(page.complaints().stream().filter(one -> one.contains("Content Security Policy")).count() >= 5,
                    page.complaints().toString());
        }
    }

    @ParameterizedTest
    @EnumSource
    void printsEachFigureOnOnePage(Kind kind) throws Exception {
        assertEquals(List.of(), cutFigures(Files.readString(file(kind)), kind.name()));
    }

    /** The check above must see a cut where there is one: without the style of the page nothing keeps a figure whole. */
    @Test
    void seesACutFigure() throws Exception {
        assertNotEquals(List.of(), cutFigures(TrialPage.html().replace("<style>", "<style> "), "cut"));
    }

    /** A word is put above and below the contents of each figure; on paper both must stand on the same page. */
    private static List<Integer> cutFigures(String html, String name) throws Exception {
        Path marked = folder.resolve("marked.html");
        int[] count = new int[1];
        Files.writeString(marked, Pattern.compile("(?s)(<figure[^>]*>)(.*?)(</figure>)").matcher(html).replaceAll(
                found -> Matcher.quoteReplacement(found.group(1) + "TOP" + ++count[0] + "\n" + found.group(2) + "\nEND"
                + count[0] + found.group(3))));
        Path pdf = folder.resolve(name + ".pdf");
        try (BrowserPage page = browser.page().open(marked)) {
            int plots = plots(page).size();
            page.medium("print");
            assertEquals(plots, page.shown("figure.plot > svg.still"), "still pictures on paper");
            page.print(pdf);
        }
        if (System.getProperty("pictures") != null) {
            Files.copy(pdf, Files.createDirectories(Path.of(System.getProperty("pictures"))).resolve(name + ".pdf"),
                    StandardCopyOption.REPLACE_EXISTING);
        }
        String[] sheets = run("pdftotext", "-layout", pdf.toString(), "-").split("\f");
        assertTrue(count[0] > 0 && sheets.length > 1, "nothing printed");
        return IntStream.rangeClosed(1, count[0]).filter(i -> sheetOf(sheets, "TOP" + i) != sheetOf(sheets, "END" + i))
                .boxed().toList();
    }

    private static int sheetOf(String[] sheets, String word) {
        for (int i = 0; i < sheets.length; i++) {
            if (Pattern.compile(word + "\\b").matcher(sheets[i]).find()) {
                return i + 1;
            }
        }
        throw new AssertionError(word + " isn't printed");
    }

    @ParameterizedTest
    @EnumSource
    void fitsANarrowWindow(Kind kind) throws Exception {
        try (BrowserPage page = browser.page()) {
            page.width(400);
            page.open(file(kind));
            for (PlotOnPage plot : plots(page)) {
                plot.scroll();
                assertTrue(page.number(plot.script(".scrollWidth")) <= 400, plot + " is wider than the window");
                picture(page, kind + "-" + plot + "-narrow");
            }
            page.width(900);
            page.awaitTrue("document.querySelector('.u-over').clientWidth > 500");
        }
    }

    /** A tap reads a value, and a swipe scrolls the page as if there were no figure. */
    @ParameterizedTest
    @EnumSource
    void nothingBreaksByTouch(Kind kind) throws Exception {
        try (BrowserPage page = browser.page().open(file(kind))) {
            page.touchable();
            PlotOnPage plot = new PlotOnPage(page, 0).built();
            plot.scroll();
            double[] before = plot.range();
            plot.tap();
            page.awaitTrue(plot.script(".querySelector('output').children.length > 1"));
            double top = page.number("scrollY");
            plot.swipeUp();
            page.awaitTrue("scrollY > " + top);
            assertEquals(before[1], plot.range()[1], "a swipe must not zoom");
            assertEquals(List.of(), page.complaints());
        }
    }

    /** Names, contrast, labels: what axe-core 4 calls serious or critical by WCAG 2 A and AA. */
    @ParameterizedTest
    @EnumSource
    void axeFindsNothingSerious(Kind kind) throws Exception {
        String axe = System.getProperty("axe");
        assumeTrue(axe != null, "name a copy by -Daxe=.../axe.min.js, see DEVELOPERS.md");
        try (BrowserPage page = browser.page().open(file(kind))) {
            plots(page).get(0).focus();
            page.run(Files.readString(Path.of(axe)) + "\n;0");
            assertEquals("", page.text("axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa']}).then(found =>"
                    + " found.violations.filter(one => ['serious', 'critical'].includes(one.impact)).map(one => one.id"
                    + " + ': ' + one.nodes.map(node => node.html.slice(0, 200) + ' ' + node.failureSummary)"
                    + ".join('; ')).join('\\n'))"));
            assertTrue(page.number("axe.getRules().length") > 50, "axe didn't come");
        }
    }
}
