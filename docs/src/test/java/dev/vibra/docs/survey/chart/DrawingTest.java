package dev.vibra.docs.survey.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bandmap.BandCriterion;
import dev.vibra.bandmap.BandMap;
import dev.vibra.quantity.Band;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** One drawing, two files: what both must be, whatever the labels are. */
class DrawingTest {
    private static final String HOSTILE = "<script>&\"' \u202e\u0000\ud800";
    private static final String LONG = "sidebands at the rate at which the poles pass the slip of the rotor, drive "
            + "end, motor, second machine of the line, " + "x".repeat(300);
    private static final String TRACE = "#004f7f";

    private static double[] noise(int length) {
        Random random = new Random(3);
        return random.doubles(length, -1, 1).toArray();
    }

    private static List<Figure> figures(String text) {
        double[] lines = Arrays.stream(noise(4001)).map(Math::abs).toArray();
        List<Lane> lanes = List.of(new Lane("outer race, drive end", List.of(new Lane.Mark(100, "1\u00d7", true),
                new Lane.Mark(110, "2\u00d7", false), new Lane.Mark(999, "3\u00d7", true))),
                new Lane(text, List.of(new Lane.Mark(500, text, true))));
        double[] x = {0, 1, 2, 3};
        double[] y = {1, Double.NaN, 1e9, 1};
        PolarFigure.Field field = new PolarFigure.Field(text, text, false, List.of(new PolarFigure.Arrow(text, 3, 80,
                true, new PolarFigure.Oval(30, 2, 10)), new PolarFigure.Arrow("trial", 3, 81, false),
                new PolarFigure.Arrow("initial", 3.1, 82, false).beginningAt(2, 200),
                new PolarFigure.Arrow("none", 0, 0, true)))
                .withPlaces(List.of(new PolarFigure.Place(text, 200, true))).withMeasures();
        return List.of(SpectrumFigure.of(lines, 0.25).withLanes(lanes).withReference(0.7, text)
                        .withLines(List.of(new SnapLine(100.1, 1.4, text))).withFrequencyTitle(text).draw(text, text),
                SpectrumFigure.of(lines, 0.25).logarithmic().draw(text, text),
                WaveformFigure.of(noise(65_536), 12_800, 0.2, text, text),
                WaveformFigure.stretch(noise(300), 12_800, 10, 200, text, text),
                SeverityFigure.of(List.of(new SeverityFigure.Row(text, 5, 0.2, text), new SeverityFigure.Row("a", 0, 0,
                        "A")), List.of(1.4, 2.8, 4.5), List.of("A", "B", "C", "D"), text, text),
                BandMapFigure.of(new BandMap(BandCriterion.SPECTRAL_KURTOSIS, List.of(new BandMap.Cell(
                        Band.of(0, 500), 1, 0.4))), Band.of(0, 500), text),
                PolarFigure.of(field, field, text), PolarFigure.of(field, text),
                CurveFigure.over(text, 0, 3).panel(text, 0, 2).line(text, x, y).points(text, x, y)
                        .logarithmicPanel(text, 1e-3, 10).limit(text, 2).upright(text, 1.5)
                        .band(text, x, new double[4], x).line(text, x, y).draw(text),
                CurveFigure.overDates(text, Instant.EPOCH, Instant.EPOCH.plusSeconds(90_000)).panel(text, 0, 0)
                        .points(text, new double[] {0.5}, new double[] {0}).draw(text));
    }

    private static Element parsed(String svg) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg))).getDocumentElement();
    }

    @Test
    void svgIsXmlThatCarriesTextAndNothingElse() throws Exception {
        for (String text : List.of(HOSTILE, LONG, "", "Velocity in mm/s rms")) {
            for (Figure figure : figures(text)) {
                Element svg = parsed(figure.svg());
                assertEquals("http://www.w3.org/2000/svg", svg.getNamespaceURI());
                assertEquals("0 0 900 " + figure.height(), svg.getAttribute("viewBox"));
                assertEquals("still", svg.getAttribute("class"));
                NodeList all = svg.getElementsByTagName("*");
                for (int i = 0; i < all.getLength(); i++) {
                    Element one = (Element) all.item(i);
                    assertTrue(List.of("path", "circle", "text").contains(one.getTagName()), one.getTagName());
                    for (String never : List.of("style", "id", "href", "onload", "class")) {
                        assertFalse(one.hasAttribute(never), never);
                    }
                }
            }
        }
    }

    @Test
    void descriptionAndTextsComeThroughAsTheyAre() throws Exception {
        Element svg = parsed(figures(HOSTILE).get(0).svg());
        assertEquals("<script>&\"' \\u202e\\u0000\\ud800", svg.getAttribute("aria-label"));
        NodeList texts = svg.getElementsByTagName("text");
        List<String> written = new ArrayList<>();
        for (int i = 0; i < texts.getLength(); i++) {
            written.add(texts.item(i).getTextContent());
        }
        assertTrue(written.contains("<script>&\"' \\u202e\\u0000\\ud800"), written.toString());
    }

    @Test
    void nothingIsWrittenOrDrawnOutsideOfThePaper() {
        for (String text : List.of(HOSTILE, LONG, "", "Velocity in mm/s rms")) {
            for (Figure figure : figures(text)) {
                RecordingCanvas canvas = RecordingCanvas.of(figure);
                for (RecordingCanvas.Text one : canvas.texts) {
                    assertTrue(one.left() >= -0.5 && one.right() <= figure.width() + 0.5 && one.top() >= -0.5
                            && one.bottom() <= figure.height() + 0.5, figure.height() + " " + one);
                }
                for (double[] point : canvas.points) {
                    assertTrue(point[0] >= -0.5 && point[0] <= figure.width() + 0.5 && point[1] >= -0.5
                            && point[1] <= figure.height() + 0.5, Arrays.toString(point));
                }
            }
        }
    }

    @Test
    void namesOfLanesAreWritten() {
        for (String name : List.of("outer race, drive end", "mesh, stage 1", "sidebands at pole-pass rate",
                "sidebands at the rate at which the poles pass the slip of the rotor")) {
            RecordingCanvas canvas = RecordingCanvas.of(SpectrumFigure.of(new double[101], 1)
                    .withLanes(List.of(new Lane(name, List.of()))).draw("Level in mm/s rms", "test"));
            String all = String.join(" ", canvas.texts.stream().map(RecordingCanvas.Text::text).toList());
            assertTrue(all.contains(name), all);
        }
    }

    /** Arrows of a field trial lie close together; their names, the degrees and the numbers of the circles don't. */
    @Test
    void textsOfAPolarFigureKeepClearOfEachOther() {
        List<PolarFigure.Arrow> arrows = List.of(new PolarFigure.Arrow("initial", 5.4, 57, false),
                new PolarFigure.Arrow("trial 1", 7.2, 59, false), new PolarFigure.Arrow("final", 7.0, 62, true));
        RecordingCanvas canvas = RecordingCanvas.of(PolarFigure.of(new PolarFigure.Field("Readings", "mm/s rms", false,
                arrows), "test"));
        for (int i = 0; i < canvas.texts.size(); i++) {
            for (int k = 0; k < i; k++) {
                assertFalse(canvas.texts.get(i).meets(canvas.texts.get(k)), canvas.texts.get(i) + " "
                        + canvas.texts.get(k));
            }
        }
        List<String> written = canvas.texts.stream().map(RecordingCanvas.Text::text).toList();
        assertTrue(written.containsAll(List.of("0\u00b0", "90\u00b0", "180\u00b0", "270\u00b0", "rotation", "initial",
                "trial 1", "final", "mm/s rms")), written.toString());
    }

    @Test
    void limitsCarryNameAndNumber() {
        RecordingCanvas canvas = RecordingCanvas.of(SpectrumFigure.of(new double[101], 1)
                .withReference(0.2, "least depth").draw("Pulsation depth (1)", "test"));
        assertTrue(canvas.texts.stream().anyMatch(one -> one.text().equals("least depth 0.200")));
    }

    private static List<String> paths(String svg, String colour) {
        Matcher matcher = Pattern.compile(" d=\"([^\"]*)\" stroke=\"" + colour + "\"").matcher(svg);
        List<String> paths = new ArrayList<>();
        while (matcher.find()) {
            paths.add(matcher.group(1));
        }
        return paths;
    }

    /** Smallest and largest x and y, in pixels, by another reading of path data than the writer's. */
    private static double[] extents(String path) {
        Matcher numbers = Pattern.compile("([MmlLhvz])|(-?\\d+)").matcher(path);
        double[] extents = {1e9, -1e9, 1e9, -1e9};
        char command = 'M';
        int x = 0;
        int y = 0;
        boolean second = false;
        while (numbers.find()) {
            if (numbers.group(1) != null) {
                command = numbers.group(1).charAt(0);
                second = false;
                continue;
            }
            int number = Integer.parseInt(numbers.group(2));
            boolean upright = command == 'v' || second;
            x = upright ? x : command == 'M' ? number : x + number;
            y = !upright ? y : command == 'M' ? number : y + number;
            second = (command == 'M' || command == 'l') && !second;
            if (!second) {
                extents[0] = Math.min(extents[0], x / 2.0);
                extents[1] = Math.max(extents[1], x / 2.0);
                extents[2] = Math.min(extents[2], y / 2.0);
                extents[3] = Math.max(extents[3], y / 2.0);
            }
        }
        return extents;
    }

    private static double[] inked(Figure figure, int colour) throws IOException {
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(figure.png()));
        double[] extents = {1e9, -1e9, 1e9, -1e9};
        for (int x = 0; x < image.getWidth(); x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                if ((image.getRGB(x, y) & 0xffffff) == colour) {
                    extents[0] = Math.min(extents[0], x / 2.0);
                    extents[1] = Math.max(extents[1], (x + 1) / 2.0);
                    extents[2] = Math.min(extents[2], y / 2.0);
                    extents[3] = Math.max(extents[3], (y + 1) / 2.0);
                }
            }
        }
        return extents;
    }

    @Test
    void bothFilesShowTheSame() throws IOException {
        double[] values = new double[1001];
        values[300] = 2;
        values[700] = 1;
        Figure figure = SpectrumFigure.of(values, 1).between(100, 900).draw("Level in mm/s rms", "test");
        List<String> paths = paths(figure.svg(), TRACE);
        assertEquals(1, paths.size());
        double[] svg = extents(paths.get(0));
        double[] png = inked(figure, Look.TRACE);
        for (int i = 0; i < 4; i++) {
            assertEquals(svg[i], png[i], 1.1, "half the width of the stroke and of a pixel, side " + i);
        }
    }

    @Test
    void anOrdinaryTraceTakesFewBytesAndKeepsItsPeaks() {
        double[] values = noise(65_536);
        values[12_345] = 3;
        values[54_321] = -3;
        String svg = WaveformFigure.of(values, 12_800, 0.2, "Acceleration in m/s\u00b2", "test").svg();
        assertEquals(2, paths(svg, TRACE).size());
        double[] whole = extents(paths(svg, TRACE).get(0));
        // Both reach 3 of 3.24 on either side of the middle.
        double height = 240 - Panel.FOOT - 8;
        assertEquals(height * 3 / 3.24, whole[3] - whole[2], 0.51);
        paths(svg, TRACE).forEach(path -> assertTrue(path.length() < 6000, "bytes " + path.length()));
        String spectrum = SpectrumFigure.of(Arrays.stream(values).map(Math::abs).toArray(), 0.1)
                .draw("Level in mm/s rms", "test").svg();
        assertTrue(spectrum.length() < 9000, "bytes " + spectrum.length());
        paths(spectrum, TRACE).forEach(path -> assertTrue(path.length() < 6000, "bytes " + path.length()));
    }
}
