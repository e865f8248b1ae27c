package dev.vibra.docs.survey;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.docs.survey.Folders.Run;
import dev.vibra.io.Recordings;
import dev.vibra.io.SampleFormat;
import dev.vibra.io.WavFile;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.InputSource;

/** Figures and traces as files of their own: what they hold, and what of others they leave alone. */
class ExportTest {
    /** A fan at 24.7 Hz with 4 mm/s rms there, and two points whose ids want the same name of a file. */
    private static final String MACHINE = """
            { "name": "Fan", "kind": "fan", "ratedPowerKilowatts": 45, "support": "rigid",
              "speedRevolutionsPerMinute": 1482,
              "points": [ { "id": "DE/H", "recording": "a.wav", "unit": "m/s2", "scale": 100 },
                          { "id": "de?h", "recording": "a.wav", "unit": "m/s2", "scale": 100 } ] }
            """;
    private static final List<String> TRACES = List.of("DE_H-acceleration-spectrum.csv", "DE_H-velocity-spectrum.csv",
            "DE_H-waveform.csv", "de_h-2-acceleration-spectrum.csv", "de_h-2-velocity-spectrum.csv",
            "de_h-2-waveform.csv", "digests.txt");

    @TempDir
    private Path temp;
    private Path folder;
    private Path out;

    @BeforeEach
    void fan() throws IOException {
        folder = Files.createDirectory(temp.resolve("fan"));
        out = temp.resolve("out");
        Files.writeString(folder.resolve("machine.json"), MACHINE);
        double amplitude = 4e-3 * Math.sqrt(2) * 2 * Math.PI * 24.7;
        WavFile.write(Synthesis.silence(Quantity.ACCELERATION, 5120, 40_960).tone(amplitude, 24.7, 0.3).noise(0.05, 7)
                .waveform(), folder.resolve("a.wav"), Unit.M_PER_S2, 100, SampleFormat.INTEGER_24);
    }

    private Run export(String kinds, Object... more) {
        return Folders.run(Stream.concat(Stream.of(folder, "--out", out, "--export", kinds), Arrays.stream(more))
                .toArray());
    }

    private TreeMap<String, String> contents() throws IOException {
        TreeMap<String, String> contents = new TreeMap<>();
        try (Stream<Path> files = Files.walk(out)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                contents.put(out.relativize(file).toString(), Files.readString(file, StandardCharsets.ISO_8859_1));
            }
        }
        return contents;
    }

    private static double[] column(Path file) throws IOException {
        return Files.readAllLines(file).stream().skip(2).mapToDouble(line -> Double.parseDouble(line.split(",")[1]))
                .toArray();
    }

    @Test
    void tracesHoldEveryDigit() throws IOException {
        Run run = export("csv");
        assertEquals(0, run.code(), run.out() + run.err());
        assertTrue(run.out().endsWith("report.html, results.json, results.csv, traces\n"), run.out());
        assertEquals(TRACES, Folders.names(out.resolve("traces")));
        Waveform recorded = Recordings.read(folder.resolve("a.wav"), Unit.M_PER_S2, 100);
        Path csv = out.resolve("traces/DE_H-waveform.csv");
        assertEquals(List.of("# point DE/H, waveform", "time in s,acceleration in m/s2"),
                Files.readAllLines(csv).subList(0, 2));
        assertArrayEquals(recorded.samples(), column(csv));
        assertArrayEquals(recorded.samples(), Recordings.read(csv, Unit.M_PER_S2).samples(), "our own reader takes it");
        assertEquals(5120, Recordings.read(csv, Unit.M_PER_S2).sampleRateHertz(), 1e-6);
        // Parseval: the lines around the tone hold its power times the noise bandwidth of the window, 1.5 lines (Hann).
        List<String> spectrum = Files.readAllLines(out.resolve("traces/DE_H-velocity-spectrum.csv"));
        assertEquals("frequency in Hz,velocity in mm/s rms", spectrum.get(1));
        double power = spectrum.stream().skip(2).map(line -> line.split(",")).filter(line -> Math.abs(Double
                .parseDouble(line[0]) - 24.7) < 3).mapToDouble(line -> Math.pow(Double.parseDouble(line[1]), 2)).sum();
        assertEquals(4, Math.sqrt(power / 1.5), 0.01);
    }

    @Test
    void figuresAreDrawingsAndPixels() throws Exception {
        Run run = export("png,svg");
        assertEquals(0, run.code(), run.out() + run.err());
        List<String> names = Folders.names(out.resolve("figures"));
        assertTrue(names.containsAll(List.of("DE_H-1.png", "DE_H-1.svg", "de_h-2-1.svg", "severity-1.png")),
                names.toString());
        for (String name : names) {
            Path file = out.resolve("figures").resolve(name);
            if (name.endsWith(".png")) {
                assertEquals(1800, ImageIO.read(file.toFile()).getWidth());
            } else if (name.endsWith(".svg")) {
                String text = Files.readString(file);
                assertEquals("svg", DocumentBuilderFactory.newInstance().newDocumentBuilder()
                        .parse(new InputSource(new StringReader(text))).getDocumentElement().getTagName());
                assertTrue(Files.readString(out.resolve("report.html")).contains(text.substring(text.indexOf("<svg"),
                        text.lastIndexOf("</svg>"))), "the one of the report: " + name);
            }
        }
    }

    @Test
    void theSameBytesWhateverTheNumberOfThreads() throws IOException {
        export("csv,svg", "--threads", 1);
        TreeMap<String, String> one = contents();
        export("csv,svg", "--threads", 4);
        assertEquals(one, contents());
        Folders.run(folder, "--out", temp.resolve("plain"));
        assertEquals(Files.readString(temp.resolve("plain/report.html")), Files.readString(out.resolve("report.html")),
                "an export changes nothing else");
    }

    @Test
    void unitsForPeopleLeaveTracesMetric() throws IOException {
        export("csv");
        String metric = contents().get("traces/DE_H-velocity-spectrum.csv");
        export("csv", "--units", "imperial");
        assertEquals(metric, contents().get("traces/DE_H-velocity-spectrum.csv"));
    }

    /** The digests are those of the JDK's own, and a later export takes away what an earlier one has written. */
    @Test
    void anEarlierExportGoes() throws IOException {
        export("csv,png,svg");
        Files.delete(out.resolve("traces/DE_H-waveform.csv"));
        assertEquals(0, export("svg").code());
        assertEquals(List.of("figures", "report.html", "results.csv", "results.json"), Folders.names(out));
        assertTrue(Folders.names(out.resolve("figures")).stream().noneMatch(name -> name.endsWith(".png")));
        List<String> list = Files.readAllLines(out.resolve("figures/digests.txt"));
        assertTrue(list.get(0).matches("# Vibra survey, files of run [0-9a-f]{64}"), list.get(0));
        assertEquals(list.size(), Folders.names(out.resolve("figures")).size());
    }

    @Test
    void whatIsSomebodysOwnStops() throws IOException {
        export("csv");
        Path own = out.resolve("traces/mine.csv");
        Files.writeString(own, "1,2\n");
        TreeMap<String, String> before = contents();
        Run foreign = export("csv");
        assertEquals(64, foreign.code());
        assertTrue(foreign.err().contains("mine.csv is nothing that an earlier export has written"), foreign.err());
        assertEquals(before, contents());
        assertEquals(0, export("svg").code());
        assertEquals("1,2\n", Files.readString(own), "not in the way of figures");
        Files.delete(own);
        Files.writeString(out.resolve("traces/DE_H-waveform.csv"), "# smoothed by hand\n");
        assertTrue(export("csv").err().contains("DE_H-waveform.csv is nothing that"), "changed since");
        Files.delete(out.resolve("traces/digests.txt"));
        assertEquals(64, export("csv").code());
    }

    @Test
    void aFileInPlaceOfAFolderAndAnInputInItStop() throws IOException {
        Files.createDirectories(out);
        Files.writeString(out.resolve("figures"), "mine");
        assertEquals(64, export("svg").code());
        assertEquals(List.of("figures"), Folders.names(out));
        export("csv");
        Files.writeString(folder.resolve("machine.json"), MACHINE.replace(
                "\"a.wav\", \"unit\": \"m/s2\", \"scale\": 100 },", "\"traces/DE_H-waveform.csv\", \"unit\": \"m/s2\" },"));
        Files.move(out.resolve("traces"), folder.resolve("traces"));
        Run inside = Folders.run(folder, "--out", folder, "--export", "csv");
        assertEquals(64, inside.code());
        assertTrue(inside.err().contains("the survey reads DE_H-waveform.csv in it"), inside.err());
    }

    @Test
    void nothingSurveyedLeavesNothing() throws IOException {
        Files.delete(folder.resolve("a.wav"));
        assertEquals(2, export("csv,svg").code());
        assertTrue(Files.notExists(out));
    }

    /** A run that died in the midst of the exchange has left the earlier folder in its hidden one. */
    @Test
    void aRunThatDiedIsTakenBack() throws IOException {
        export("csv");
        Path hidden = Files.createDirectories(out.resolve(".vibra-export-" + "0".repeat(32)));
        Files.move(out.resolve("traces"), hidden.resolve("before-traces"));
        Files.createDirectory(hidden.resolve("traces"));
        Files.writeString(hidden.resolve("traces/half.csv"), "# po");
        assertEquals(0, export("svg").code());
        assertEquals(List.of("figures", "report.html", "results.csv", "results.json"), Folders.names(out));
    }
}
