package dev.vibra.docs.survey.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Data of figures as the browser gets them, read back by the JSON reader of others. */
class PlotDataTest {
    private static final AxisTitle HERTZ = new AxisTitle("Frequency", "Hz");
    private static final AxisTitle SECONDS = new AxisTitle("Time", "s");
    private static final AxisTitle VELOCITY = new AxisTitle("Velocity", "mm/s rms");

    private static String json(PlotData data) {
        StringBuilder out = new StringBuilder();
        try {
            data.writeJson(out);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        return out.toString();
    }

    /** All scalars by their path, as in {@code lines/0/x}. */
    private static Map<String, String> scalars(PlotData data) throws IOException {
        Map<String, String> found = new HashMap<>();
        try (JsonParser json = new JsonFactory().createParser(json(data))) {
            for (JsonToken token = json.nextToken(); token != null; token = json.nextToken()) {
                if (token.isScalarValue()) {
                    found.put(json.getParsingContext().pathAsPointer().toString().substring(1), json.getText());
                }
            }
        }
        return found;
    }

    private static double[] values(Map<String, String> json) {
        String coding = List.of("int16", "log16", "float32").stream().filter(json::containsKey).findAny().orElseThrow();
        ByteBuffer bytes = ByteBuffer.wrap(Base64.getDecoder().decode(json.get(coding)))
                .order(ByteOrder.LITTLE_ENDIAN);
        double[] values = new double[bytes.capacity() / (coding.equals("float32") ? 4 : 2)];
        for (int i = 0; i < values.length; i++) {
            values[i] = Double.parseDouble(json.get("scale")) * switch (coding) {
                case "float32" -> bytes.getFloat();
                case "int16" -> bytes.getShort();
                default -> {
                    int code = Short.toUnsignedInt(bytes.getShort());
                    yield code == 0 ? 0 : Math.pow(10, 12 * ((code - 1) / 65534.0 - 1));
                }
            };
        }
        return values;
    }

    private static double[] noise(int length, double size) {
        return new Random(7).doubles(length, -size, size).toArray();
    }

    private static double largestDifference(double[] some, double[] others) {
        assertEquals(some.length, others.length);
        double largest = 0;
        for (int i = 0; i < some.length; i++) {
            largest = Math.max(largest, Math.abs(some[i] - others[i]));
        }
        return largest;
    }

    @Test
    void waveformComesBackTo16Bits() throws IOException {
        for (double size : new double[] {1e-60, 3, 1e60}) {
            double[] wave = noise(10_007, size);
            double largest = Arrays.stream(wave).map(Math::abs).max().orElseThrow();
            Map<String, String> json = scalars(PlotData.waveform(wave, 51_200, SECONDS, VELOCITY));
            // Half a step, and what 24 bits lose before.
            assertTrue(largestDifference(wave, values(json)) < 0.502 * largest / 32767);
            assertEquals(1 / 51_200.0, Double.parseDouble(json.get("step")), 1e-16);
        }
    }

    @Test
    void spectrumComesBackTo24Bits() throws IOException {
        for (double size : new double[] {1e-60, 3, 1e60}) {
            double[] levels = Arrays.stream(noise(10_007, size)).map(Math::abs).toArray();
            assertTrue(largestDifference(levels, values(scalars(PlotData.spectrum(levels, 0.5, HERTZ, VELOCITY))))
                    < size * Math.pow(2, -24));
        }
    }

    @Test
    void nothingIsNothing() throws IOException {
        assertEquals(0, largestDifference(new double[5], values(scalars(
                PlotData.waveform(new double[5], 1000, SECONDS, VELOCITY)))));
    }

    @Test
    void carriesWhatTheFigureShows() throws IOException {
        Map<String, String> json = scalars(PlotData.spectrum(new double[2001], 0.5, HERTZ, VELOCITY).from(10)
                .shown(0, 300).withSpeed(24.8).withReference(0.2, "least depth")
                .withLines(List.of(new SnapLine(24.83, 5.21, "shaft speed")))
                .withLanes(List.of(new Lane("shaft", List.of(new Lane.Mark(24.8, "1\u00d7", true))))));
        Map.of("kind", "spectrum", "x/title", "Frequency in Hz", "y/unit", "mm/s rms", "first", "10", "shown/1", "300",
                "speed", "24.8", "reference/name", "least depth", "lines/0/y", "5.21", "lanes/0/marks/0/found", "true",
                "lanes/0/marks/0/text", "1\u00d7").forEach((path, value) -> assertEquals(value, json.get(path), path));
        assertEquals(1981, values(json).length);
    }

    /** What the HTML standard says about the contents of script elements: neither of these may occur. */
    @Test
    void leavesTheScriptElementWhole() throws IOException {
        String hostile = "</script><script>alert(1)</script><!-- ]]> & \" \\ \u2028\u2029\u0000\ud800 \u00e9";
        PlotData data = PlotData.spectrum(new double[3], 1, new AxisTitle(hostile, "Hz"), VELOCITY)
                .withReference(1, hostile).withLines(List.of(new SnapLine(1, 1, hostile)))
                .withLanes(List.of(new Lane(hostile, List.of(new Lane.Mark(1, hostile, false)))));
        String json = json(data);
        for (String bad : List.of("<", ">", "&", "\u2028", "\u2029", "\u0000", "\ud800", "\n")) {
            assertFalse(json.contains(bad), bad);
        }
        Map<String, String> read = scalars(data);
        assertEquals(hostile, read.get("lines/0/name"));
        assertEquals(hostile, read.get("lanes/0/marks/0/text"));
    }

    @Test
    void outlineKeepsEveryPeak() throws IOException {
        double[] wave = noise(51_203, 1);
        wave[40_123] = 9;
        wave[40_124] = -8;
        PlotData outline = PlotData.waveform(wave, 51_200, SECONDS, VELOCITY).outline(2000);
        assertEquals(OptionalInt.of(52), outline.valuesPerGroup());
        double[] kept = values(scalars(outline));
        assertTrue(kept.length <= 2000 && kept.length > 1900, "length " + kept.length);
        assertEquals(9, Arrays.stream(kept).max().orElseThrow(), 1e-3);
        assertEquals(-8, Arrays.stream(kept).min().orElseThrow(), 1e-3);
        int highest = 0;
        for (int i = 0; i < kept.length; i++) {
            highest = kept[i] > kept[highest] ? i : highest;
        }
        double at = Double.parseDouble(scalars(outline).get("first"))
                + highest * Double.parseDouble(scalars(outline).get("step"));
        assertEquals(40_123 / 51_200.0, at, 39 / 51_200.0); // three quarters of a group
        PlotData whole = PlotData.waveform(new double[2000], 51_200, SECONDS, VELOCITY);
        assertEquals(OptionalInt.empty(), whole.outline(2000).valuesPerGroup());
    }

    /** Over ten decades, so that a floor far below the lines keeps its shape; a step is a 65534th of twelve decades. */
    @Test
    void outlineOfASpectrumKeepsTheFloor() throws IOException {
        double[] levels = new double[4000];
        for (int i = 0; i < levels.length; i++) {
            levels[i] = i == 100 ? 0 : 5 * Math.pow(10, -10.0 * i / levels.length);
        }
        double[] kept = values(scalars(PlotData.spectrum(levels, 1, HERTZ, VELOCITY).outline(2000)));
        assertEquals(2000, kept.length);
        for (int i = 0; i < kept.length; i += 2) { // four values a group, the largest first
            if (i != 50) {
                assertEquals(levels[2 * i], kept[i], levels[2 * i] * (Math.pow(10, 6.001 / 65534) - 1));
                assertEquals(levels[2 * i + 3], kept[i + 1], levels[2 * i + 3] * (Math.pow(10, 6.001 / 65534) - 1));
            }
        }
        assertEquals(0, kept[50]);
    }

    /** Two bytes a sample and four a line, a third more as base64, and some hundred bytes around. */
    @Test
    void sizeIsWhatTheBytesNeed() {
        assertEquals(51_200 * 2 * 4 / 3.0, json(PlotData.waveform(noise(51_200, 1), 51_200, SECONDS, VELOCITY))
                .length(), 400);
        assertEquals(25_601 * 4 * 4 / 3.0, json(PlotData.spectrum(noise(25_601, 1), 1, HERTZ, VELOCITY)).length(),
                400);
        assertEquals(2000 * 2 * 4 / 3.0, json(PlotData.waveform(noise(51_200, 1), 51_200, SECONDS, VELOCITY)
                .outline(2000)).length(), 450);
        assertEquals(2000 * 2 * 4 / 3.0, json(PlotData.spectrum(noise(25_601, 1), 1, HERTZ, VELOCITY).outline(2000))
                .length(), 450);
    }

    @Test
    void refusesWhatCannotBeDrawn() {
        double[] two = new double[2];
        for (Runnable wrong : List.<Runnable>of(() -> PlotData.spectrum(new double[1], 1, HERTZ, VELOCITY),
                () -> PlotData.spectrum(two, 0, HERTZ, VELOCITY),
                () -> PlotData.spectrum(new double[] {1, Double.NaN}, 1, HERTZ, VELOCITY),
                () -> PlotData.waveform(two, 1, SECONDS, VELOCITY).withSpeed(-1),
                () -> PlotData.waveform(two, 1, SECONDS, VELOCITY).from(2),
                () -> PlotData.waveform(two, 1, SECONDS, VELOCITY).outline(1),
                () -> PlotData.waveform(two, 1, SECONDS, VELOCITY).shown(5, 4),
                () -> new SnapLine(Double.NaN, 1, ""), () -> new AxisTitle(" ", "Hz"))) {
            assertThrows(IllegalArgumentException.class, wrong::run);
        }
    }
}
