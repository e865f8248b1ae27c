package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.AxisTitle;
import dev.vibra.docs.survey.chart.Lane;
import dev.vibra.docs.survey.chart.PlotData;
import dev.vibra.docs.survey.chart.SnapLine;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/** A page with one figure of each kind, built of known values, to look at and to try in a browser. */
public final class TrialPage {
    /** Interpolated line of the analysis: between two lines of the spectrum, and higher than both. */
    public static final SnapLine SHAFT = new SnapLine(24.83, 5.21, "shaft speed");
    private static final double SPACING = 0.3125;
    private static final int LINES = 25_601;
    private static final AxisTitle HERTZ = new AxisTitle("Frequency", "Hz");

    private TrialPage() {}

    /** Writes the page into a file named by the only argument. */
    public static void main(String[] args) throws IOException {
        Files.writeString(Path.of(args[0]), html(), StandardCharsets.UTF_8);
    }

    /** {@return the page} */
    public static String html() throws IOException {
        String style = "\n" + report() + PlotAssets.style();
        String script = "\n" + PlotAssets.script();
        StringBuilder page = new StringBuilder("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
                .append(ContentPolicy.meta(List.of(script), List.of(style)))
                .append("\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>Trial</title>\n")
                .append("<style>").append(style).append("</style>\n</head>\n<body>\n<main>\n<h1>Figures</h1>\n");
        add(page, "Velocity spectrum with lines and marks.", velocity());
        add(page, "Envelope spectrum with a level that lines are held against.", envelope());
        page.append("<p>Between the figures a page has something to read.</p>\n".repeat(40));
        add(page, "Waveform of 51,200 samples.", PlotData.waveform(wave(51_200), 25_600,
                new AxisTitle("Time", "s"), new AxisTitle("Acceleration", "m/s\u00b2")));
        add(page, "Outline of a waveform.", PlotData.waveform(wave(512_000), 25_600,
                new AxisTitle("Time", "s"), new AxisTitle("Acceleration", "m/s\u00b2")).outline(2000));
        add(page, "Outline of the velocity spectrum.", velocity().outline(2000));
        add(page, "Waveform of 512,000 samples.", PlotData.waveform(wave(512_000), 25_600,
                new AxisTitle("Time", "s"), new AxisTitle("Acceleration", "m/s\u00b2")));
        return page.append("</main>\n<script type=\"application/json\" id=\"words\">").append(PlotAssets.words(Phrases.english()))
                .append("</script>\n<script>").append(script).append("</script>\n</body>\n</html>\n").toString();
    }

    private static String report() {
        try (var in = TrialPage.class.getResourceAsStream("report.css")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void add(StringBuilder page, String caption, PlotData data) throws IOException {
        page.append("<figure class=\"plot\"><svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 900 270\" role=\"img\""
                + " aria-label=\"").append(Html.escaped(caption)).append("\" class=\"still\"><rect x=\"1\" y=\"1\""
                + " width=\"898\" height=\"268\" fill=\"none\" stroke=\"#22262b\"/><text x=\"30\" y=\"40\">still"
                + " picture</text></svg><figcaption>").append(Html.escaped(caption)).append("</figcaption>"
                + "<script type=\"application/json\">");
        data.writeJson(page);
        page.append("</script></figure>\n");
    }

    private static PlotData velocity() {
        Random random = new Random(1);
        double[] values = new double[LINES];
        for (int i = 0; i < LINES; i++) {
            values[i] = 0.02 * Math.hypot(random.nextGaussian(), random.nextGaussian()) / (1 + i * SPACING / 500);
        }
        SnapLine twice = new SnapLine(2 * SHAFT.hertz(), 1.3, "2 \u00d7 shaft speed");
        SnapLine vanes = new SnapLine(7 * SHAFT.hertz(), 0.466, "vane passing");
        List<SnapLine> lines = List.of(SHAFT, twice, vanes, new SnapLine(1003.3, 0.21, ""));
        lines.forEach(line -> lobe(values, line));
        return PlotData.spectrum(values, SPACING, HERTZ, new AxisTitle("Velocity", "mm/s rms")).from(10).shown(0, 300)
                .withSpeed(SHAFT.hertz()).withLines(lines)
                .withLanes(List.of(lane("shaft speed", SHAFT.hertz(), 10, 2), lane("vane passing of the second stage",
                        vanes.hertz(), 1, 1), lane("twice the line frequency", 100, 2, 0)));
    }

    /** The main lobe of a Hann window around a frequency between the lines (Harris 1978, eq. 27). */
    private static void lobe(double[] values, SnapLine line) {
        for (int i = 1; i < values.length; i++) {
            double off = i - line.hertz() / SPACING;
            if (Math.abs(off) < 2) {
                double share = Math.abs(off) < 1e-9 ? 1 : Math.abs(Math.abs(off) - 1) < 1e-9 ? 0.5
                        : Math.sin(Math.PI * off) / (Math.PI * off) / (1 - off * off);
                values[i] = Math.max(values[i], line.level() * share);
            }
        }
    }

    private static Lane lane(String label, double hertz, int marks, int found) {
        return new Lane(label, IntStream.rangeClosed(1, marks).mapToObj(
                order -> new Lane.Mark(order * hertz, order + "\u00d7", order <= found)).toList());
    }

    private static PlotData envelope() {
        Random random = new Random(2);
        double[] values = random.doubles(3201, 0, 0.02).toArray();
        for (int order = 1; order <= 5; order++) {
            lobe(values, new SnapLine(order * 88.4, 0.4 / order, ""));
        }
        return PlotData.spectrum(values, SPACING, HERTZ, new AxisTitle("Pulsation depth", "1")).shown(0, 500)
                .withSpeed(SHAFT.hertz()).withReference(0.2, "least depth of a defect")
                .withLanes(List.of(lane("outer race", 88.4, 5, 5), lane("inner race", 134.9, 3, 0)));
    }

    private static double[] wave(int length) {
        Random random = new Random(3);
        double[] wave = new double[length];
        for (int i = 0; i < length; i++) {
            wave[i] = 3 * Math.sin(2 * Math.PI * SHAFT.hertz() * i / 25_600) + random.nextGaussian();
        }
        wave[length / 3] = 14;
        return wave;
    }
}
