package dev.vibra.docs.survey.output;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.vibra.docs.survey.chart.AxisTitle;
import dev.vibra.docs.survey.chart.PlotData;
import dev.vibra.docs.survey.chart.WaveformFigure;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Names come from anywhere: none steers a spreadsheet, a terminal or a page; numbers stay numbers. */
class HarmlessTextTest {
    private static String csv(Object... cells) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new CsvTable(out).row(cells).flush();
        return out.toString(StandardCharsets.UTF_8);
    }

    @Test
    void aSpreadsheetRunsNoText() throws IOException {
        for (String text : List.of("=cmd|' /C calc'!A0", "@SUM(1+1)", "-2+3", "+1", "\tx", "\rx")) {
            String cell = csv(text).replace("\"", "");
            assertEquals("'" + text + "\r\n", cell);
        }
        assertEquals("DE-H,a=b,\r\n", csv("DE-H", "a=b", ""));
    }

    @Test
    void numbersStayNumbers() throws IOException {
        assertEquals("-0.25,3,\r\n", csv(-0.25, 3.0, Double.POSITIVE_INFINITY));
    }

    @Test
    void jsonHoldsNullForWhatIsNotFinite() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        JsonText.write(JsonText.object("a", Stream.of(1.5, Double.NaN, Double.NEGATIVE_INFINITY)), out);
        assertEquals("{ \"a\" : [ 1.5, null, null ] }", out.toString(StandardCharsets.UTF_8).trim().replaceAll("\\s+",
                " "));
    }

    @Test
    void pagesShowWhatIsNotSeenAsEscapes() {
        assertEquals("&lt;\\u001b]0;x\\u0007\\u202e&gt;", Html.escaped("<\u001b]0;x\u0007\u202e>"));
        TextPage page = new TextPage();
        page.item("  ", "fan\u001b[2J \u202eabc");
        page.row("a\nb ", "c");
        assertEquals("  fan\\u001b[2J \\u202eabc\na\\u000ab c\n", page.toString());
    }

    @Test
    void figuresComeBackOutOfTheFileAsTheyWentIn() throws IOException {
        AxisTitle title = new AxisTitle("Value", "1");
        try (FigureSpool spool = new FigureSpool()) {
            List<Explorable> figures = Stream.of(1, 2, 3).map(k -> new double[] {0, k, -k, 0}).map(values ->
                    new Explorable(WaveformFigure.of(values, 4, 0.5, "Value", "Figure " + (int) values[1]),
                            PlotData.waveform(values, 4, title, title))).toList();
            List<FigureSpool.Kept> kept = figures.stream().map(spool::keep).toList();
            for (int i = 0; i < 3; i++) {
                assertEquals("Figure " + (i + 1), kept.get(i).description());
                assertEquals(figures.get(i).still().svg(), spool.read(kept.get(i).still()));
                StringBuilder json = new StringBuilder();
                figures.get(i).data().orElseThrow().writeJson(json);
                assertEquals(json.toString(), spool.read(kept.get(i).whole()));
            }
        }
    }
}
