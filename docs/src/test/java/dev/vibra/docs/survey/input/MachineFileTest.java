package dev.vibra.docs.survey.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.RotatingRing;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Unit;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import dev.vibra.survey.machine.BalancingSheet;
import dev.vibra.survey.machine.MachineDescription;
import dev.vibra.survey.machine.MeasuringPoint;
import dev.vibra.survey.machine.Mounting;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Reading of machine.json: every field, and the message for everything that can be wrong with one. */
class MachineFileTest {
    private static final String FULL = full();

    private static String full() {
        try (InputStream in = MachineFileTest.class.getResourceAsStream("full.json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static MachineReading read(String json) {
        return MachineFile.parse("machine.json", json.getBytes(StandardCharsets.UTF_8));
    }

    private static List<String> messages(String json) {
        return read(json).problems().stream().map(Problem::toString).toList();
    }

    private static String changed(String from, String to) {
        assertTrue(FULL.contains(from), from);
        return FULL.replaceFirst(Pattern.quote(from), Matcher.quoteReplacement(to));
    }

    @Test
    void readsEveryField() {
        MachineReading reading = read(FULL);
        assertEquals(List.of(), reading.problems());
        MachineDescription machine = reading.machine().orElseThrow();
        assertEquals("Brine pump 2: pump, 37 kW, 2 points", machine.toString());
        assertEquals(MachineKind.PUMP, machine.kind().orElseThrow());
        assertEquals(37.0, machine.ratedPowerKilowatts().orElseThrow());
        assertEquals(225.0, machine.shaftHeightMillimetres().orElseThrow());
        assertEquals(Support.RIGID, machine.support().orElseThrow());
        assertEquals("1480 r/min (24.67 Hz)", machine.speed().orElseThrow().toString());
        assertEquals(50.0, machine.lineFrequencyHertz().orElseThrow());
        assertEquals("ISO 20816-3:2022, group 2, duty any", machine.criterion().orElseThrow().toString());
        assertEquals("rotor 64 kg, G6.3, 2 planes, between bearings", machine.rotor().orElseThrow().toString());
        assertEquals(7, machine.blades().orElseThrow());
        assertEquals("reducer: 23/71 teeth", machine.gears().get(0).toString());
        assertEquals(1480 / 60.0, machine.gears().get(0).speedHertz(), 1e-12);
        assertEquals(Set.of(), machine.faultyFields());
    }

    @Test
    void readsBearingPointsAndBaseline() {
        MachineDescription machine = read(FULL).machine().orElseThrow();
        assertEquals("drive end: 9 × 7.94 mm on 39.04 mm, 0°", machine.bearing("drive end").orElseThrow().toString());
        assertEquals(RotatingRing.INNER, machine.bearings().get(0).rotatingRing());
        MeasuringPoint first = machine.points().get(0);
        assertEquals("DE-H, horizontal, de-h.wav in g", first.toString());
        assertEquals(1.5, first.scale());
        assertEquals("drive end", first.bearing().orElseThrow());
        assertEquals("tacho.wav, 1 pulse per revolution", first.tachometer().orElseThrow().toString());
        assertEquals(Mounting.MAGNET, first.mounting().orElseThrow());
        assertEquals(5.0, first.expandedUncertaintyPercent().orElseThrow());
        MeasuringPoint second = machine.points().get(1);
        assertEquals(Unit.MM_PER_S, second.unit());
        assertEquals(2560.0, second.sampleRateHertz().orElseThrow());
        assertEquals(250.0, second.scale(), 1e-12, "4 mV per mm/s: one volt is 250 mm/s");
        assertEquals(1.6, machine.baseline().get("DE-H").get("velocity-rms-10-1000Hz"));
    }

    @Test
    void readsBalancingSheet() {
        BalancingSheet job = read(FULL).machine().orElseThrow().balancing().orElseThrow();
        assertEquals("balancing in 2 planes with 2 sensors, mm/s rms, phase lag", job.toString());
        assertEquals(Detector.RMS, job.reading().detector());
        assertEquals("[5.1 at 63°, 3.4 at 201°]", job.runs().initial().toString());
        assertEquals("[drive end, 12 g at 0°, non-drive end, 12 g at 90°]", job.runs().trials().toString());
        assertEquals("[4.8 at 51°, 4.6 at 160°]", job.runs().trials().get(1).readings().toString());
        assertEquals("[0.7 at 12°, 0.5 at 310°]", job.runs().finalRun().toString());
        assertEquals(160.0, job.geometry().radiusMillimetres().get("non-drive end"));
        assertEquals(12, job.geometry().positions().get("drive end"));
    }

    @Test
    void readsTheRestOfABalancingSheet() {
        String more = changed("\"positions\": {", """
                "scatter": { "amplitudePercent": 3, "phaseDegrees": 2, "floor": 0.05 },
                "runout": [ { "amplitude": 0.1, "phaseDegrees": 0 }, { "amplitude": 0.2, "phaseDegrees": 90 } ],
                "trialsLeftOn": true,
                "fitted": [ { "plane": "drive end", "massGrams": 11.5, "angleDegrees": 200,
                "radiusMillimetres": 150 } ],
                "axial": { "bearingsMillimetres": [ 0, 900 ], "centreOfMassMillimetres": 400,
                  "planesMillimetres": { "drive end": 150, "non-drive end": 700 } },
                "firstPositionDegrees": { "drive end": 15 },
                "positions": {""");
        BalancingSheet job = read(more).machine().orElseThrow().balancing().orElseThrow();
        assertEquals("scatter 3 %, 2°, floor 0.05 (one standard deviation)", job.reading().scatter().toString());
        assertEquals("[0.1 at 0°, 0.2 at 90°]", job.runs().runout().toString());
        assertTrue(job.runs().trialsLeftOn());
        assertEquals("[drive end, 11.5 g at 200°]", job.runs().fitted().toString());
        assertEquals(150, job.runs().fitted().get(0).radiusMillimetres());
        assertEquals("bearings at 0 and 900 mm", job.geometry().axial().toString());
        assertEquals(400, job.geometry().axial().centreOfMassMillimetres());
        assertEquals(700.0, job.geometry().axial().planesMillimetres().get("non-drive end"));
        assertEquals(15.0, job.geometry().firstPositionDegrees().get("drive end"));
        assertEquals("radius of 2 plane(s), positions in 2, places along the axis", job.geometry().toString());
    }

    /** The results file tells influence coefficients in the form that the description takes. */
    @Test
    void readsKnownCoefficientsInsteadOfTrials() {
        String known = FULL.replaceAll("(?s)\"trials\": \\[.*?\\] } \\],", """
                "influence": [ [ { "amplitude": 0.2, "phaseDegrees": 10 }, { "amplitude": 0.1, "phaseDegrees": 20 } ],
                  [ { "amplitude": 0.05, "phaseDegrees": 30 }, { "amplitude": 0.3, "phaseDegrees": 40 } ] ],""");
        BalancingSheet job = read(known).machine().orElseThrow().balancing().orElseThrow();
        assertEquals("[[0.2 at 10°, 0.1 at 20°], [0.05 at 30°, 0.3 at 40°]]", job.runs().influence().toString());
        assertEquals(List.of(), job.runs().trials());
        assertEquals(List.of(), messages(known));
        String unit = known.replace("\"influence\":", "\"influenceUnit\": \"um rms per g\", \"influence\":");
        assertEquals(List.of("machine.json, line 32, balancing.influenceUnit: must be that of the readings, \"mm/s rms"
                + " per g\": \"um rms per g\""), messages(unit));
        assertEquals(List.of(), messages(unit.replace("um rms per g", "mm/s rms per g")));
        String scatter = known.replace("\"influence\":",
                "\"scatter\": { \"amplitudePercent\": 2, \"phaseDegrees\": 1 }, \"influenceScatter\":"
                + " { \"amplitudePercent\": 5, \"phaseDegrees\": 3 }, \"influence\":");
        assertEquals("scatter 5 %, 3° (one standard deviation)", read(scatter).machine().orElseThrow().balancing()
                .orElseThrow().runs().influenceScatter().toString());
        String each = known.replaceAll("(\"phaseDegrees\": [1234]0) \\}", "$1, \"scatter\": 0.01 }");
        assertEquals("0.2 ± 0.01 at 10°", read(each).machine().orElseThrow().balancing().orElseThrow().runs()
                .influence().get(0).get(0).toString());
        assertEquals(List.of("machine.json, line 32, balancing.influence: must tell scatter with each coefficient or"
                + " with none, and not beside influenceScatter"), messages(each.replaceFirst(", \"scatter\": 0.01",
                "")));
        assertEquals(List.of("machine.json, line 32, balancing.influenceScatter: must stand beside scatter, that of the"
                + " readings"), messages(known.replace("\"influence\":",
                "\"influenceScatter\": { \"amplitudePercent\": 5, \"phaseDegrees\": 3 }, \"influence\":")));
        String short1 = known.replace("[ { \"amplitude\": 0.05, \"phaseDegrees\": 30 }, ", "[ ");
        assertEquals(List.of("machine.json, line 32, balancing.influence: must hold one list per sensor, 2, of one"
                + " coefficient per plane, 2"), messages(short1));
        assertEquals(List.of("machine.json, line 32, balancing.influence[0][0].amplitude: must be finite and >= 0:"
                + " -0.2"), messages(known.replace("\"amplitude\": 0.2,", "\"amplitude\": -0.2,")));
        assertEquals(List.of("machine.json, line 33, balancing.influence[1]: must be a list [ ]: 3"),
                messages(known.replaceAll("(?s)\\[ \\{ \"amplitude\": 0.05.*?\\} \\]", "3")));
    }

    @Test
    void needsNoMoreThanNameRecordingAndUnit() {
        MachineReading reading = read("{\"name\":\"Fan\",\"points\":[{\"recording\":\"a.wav\",\"unit\":\"m/s2\"}]}");
        assertEquals(List.of(), reading.problems());
        assertEquals("[point 1, a.wav in m/s²]", reading.machine().orElseThrow().points().toString());
    }

    @ParameterizedTest
    @CsvFileSource(resources = "errors.txt", delimiter = '|', quoteCharacter = '`')
    void namesFileLineFieldRuleAndValue(String from, String to, String message) {
        List<String> messages = messages(changed(from, to == null ? "" : to));
        assertTrue(messages.contains("machine.json, " + message), () -> String.join("\n", messages));
    }

    @Test
    void readingsMustMatchSensors() {
        String json = changed("{ \"amplitude\": 0.7, \"phaseDegrees\": 12 }, ", "");
        assertEquals(List.of("machine.json, line 37, balancing.final: must hold one reading per sensor, 2: 1"),
                messages(json));
        assertTrue(read(json).machine().orElseThrow().balancing().isEmpty());
        assertEquals(Set.of("balancing"), read(json).machine().orElseThrow().faultyFields());
    }

    @Test
    void tellsAllErrorsInTheOrderOfTheFile() {
        String json = changed("\"kind\": \"pump\"", "\"kind\": \"pmup\"").replace("\"scale\": 1.5", "\"scal\": 1.5")
                .replace("\"detector\": \"rms\"", "\"detector\": \"mean\"");
        assertEquals(List.of(3, 19, 29), read(json).problems().stream().map(Problem::line).toList());
    }

    @Test
    void leavesOutThePointWithTheErrorAndKeepsTheOther() {
        MachineDescription machine = read(changed("\"unit\": \"g\"", "\"unit\": \"stone\"")).machine().orElseThrow();
        assertEquals(List.of("NDE-H"), machine.points().stream().map(MeasuringPoint::id).toList());
    }

    @Test
    void remembersWhichFieldWasWrongUnderItsRightName() {
        MachineDescription machine = read(changed("\"ratedPowerKilowatts\"", "\"ratedPowerKiloWatt\"")).machine()
                .orElseThrow();
        assertTrue(machine.ratedPowerKilowatts().isEmpty());
        assertEquals(Set.of("ratedPowerKilowatts"), machine.faultyFields());
        assertEquals(2, machine.points().size());
    }

    @Test
    void withoutNameOrPointsNothingIsSurveyed() {
        MachineReading nameless = read(changed("\"name\": \"Brine pump 2\",", ""));
        assertTrue(nameless.machine().isEmpty());
        assertEquals("[machine.json, line 1, name: is required: what the machine is called]", nameless.problems()
                .toString());
        assertEquals(List
                .of("machine.json, line 1, points: is required: a list of points, each with a recording and its unit"),
                messages("{\"name\": \"Fan\"}"));
        assertEquals(List.of("machine.json, line 2, points: must hold one point or more: [ ]"),
                messages("{\"name\": \"Fan\",\n\"points\": []}"));
        assertTrue(read("{\"name\": \"Fan\", \"points\": []}").machine().isEmpty());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        {"name": NaN} | line 1: is not valid JSON: NaN and infinities are not numbers in JSON
        [1] | line 1: must be an object { }: a list [ ]
        {"name": "Fan"} 2 | line 1: is not valid JSON: something follows the end of the description
        """)
    void invalidJsonNamesTheLine(String json, String message) {
        assertEquals(List.of("machine.json, " + message), messages(json));
        assertTrue(read(json).machine().isEmpty());
    }

    @Test
    void aCommaTooManyIsFoundWithItsLine() {
        String message = messages("{\"name\": \"Fan\",\n}").get(0);
        assertTrue(message.startsWith("machine.json, line 2: is not valid JSON: "), message);
    }

    @Test
    void emptyFileAndTruncatedFile() {
        assertEquals(List.of("machine.json, line 1: is not valid JSON: the file is empty"), messages(""));
        String half = FULL.substring(0, 700);
        MachineReading cut = read(half);
        assertTrue(cut.machine().isEmpty());
        assertTrue(cut.problems().get(0).toString()
                .startsWith("machine.json, line " + half.lines().count() + ": is not valid JSON: "),
                cut.problems().toString());
    }

    @Test
    void aByteOrderMarkIsSkipped() {
        assertEquals(List.of(), messages("\ufeff" + FULL));
    }

    @Test
    void nestingIsLimited() {
        String deep = "[".repeat(60) + "]".repeat(60);
        assertEquals(List.of("machine.json, line 1: is not valid JSON: nested deeper than 50 levels"),
                messages("{\"name\": " + deep + "}"));
    }

    @Test
    void namesAMissingFile(@TempDir Path folder) throws IOException {
        assertEquals("[machine.json: is required in the survey folder and not there]",
                MachineFile.in(folder).problems().toString());
        Files.writeString(folder.resolve("machine.json"), FULL);
        assertTrue(MachineFile.in(folder).machine().isPresent());
    }

    @Test
    void controlCharactersNeverReachTheMessage() {
        String message = messages(changed("\"kind\"", "\"ki\\u001b[31mnd\"")).get(0);
        assertEquals("machine.json, line 3, ki\ufffd[31mnd: is not a known field; the nearest known name is \"kind\"",
                message);
    }
}
