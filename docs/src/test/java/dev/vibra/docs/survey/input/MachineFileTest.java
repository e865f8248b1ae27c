package dev.vibra.docs.survey.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Unit;
import dev.vibra.survey.machine.BalancingJob;
import dev.vibra.survey.machine.MachineDescription;
import dev.vibra.survey.machine.MachineKind;
import dev.vibra.survey.machine.MeasuringPoint;
import dev.vibra.survey.machine.Mounting;
import dev.vibra.survey.machine.Ring;
import dev.vibra.survey.machine.SupportKind;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
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
        return FULL.replaceFirst(java.util.regex.Pattern.quote(from), java.util.regex.Matcher.quoteReplacement(to));
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
        assertEquals(SupportKind.RIGID, machine.support().orElseThrow());
        assertEquals("1480 r/min (24.67 Hz)", machine.speed().orElseThrow().toString());
        assertEquals(50.0, machine.lineFrequencyHertz().orElseThrow());
        assertEquals("ISO 20816-3:2022", machine.criterion().orElseThrow().toString());
        assertEquals("rotor 64 kg, G6.3, 2 planes, between bearings", machine.rotor().orElseThrow().toString());
        assertEquals(7, machine.blades().orElseThrow());
        assertEquals("reducer: 23/71 teeth", machine.gears().get(0).toString());
        assertEquals(1480 / 60.0, machine.gears().get(0).speedHertz(), 1e-12);
        assertEquals(Set.of(), machine.faultyFields());
    }

    @Test
    void readsBearingPointsAndBaseline() {
        MachineDescription machine = read(FULL).machine().orElseThrow();
        assertEquals("drive end: 9 elements of 7.94 mm on 39.04 mm", machine.bearing("drive end").orElseThrow().toString());
        assertEquals(Ring.INNER, machine.bearings().get(0).rotatingRing());
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
    void readsBalancingJob() {
        BalancingJob job = read(FULL).machine().orElseThrow().balancing().orElseThrow();
        assertEquals("balancing in 2 planes with 2 sensors, mm/s rms, phase lag", job.toString());
        assertEquals(Detector.RMS, job.detector());
        assertEquals("[5.1 at 63°, 3.4 at 201°]", job.initial().toString());
        assertEquals("[drive end, 12 g at 0°, non-drive end, 12 g at 90°]", job.trials().toString());
        assertEquals("[4.8 at 51°, 4.6 at 160°]", job.trials().get(1).readings().toString());
        assertEquals("[0.7 at 12°, 0.5 at 310°]", job.finalRun().toString());
        assertEquals(160.0, job.radiusMillimetres().get("non-drive end"));
        assertEquals(12, job.positions().get("drive end"));
    }

    @Test
    void needsNoMoreThanNameRecordingAndUnit() {
        MachineReading reading = read("{\"name\":\"Fan\",\"points\":[{\"recording\":\"a.wav\",\"unit\":\"m/s2\"}]}");
        assertEquals(List.of(), reading.problems());
        assertEquals("[point 1, a.wav in m/s²]", reading.machine().orElseThrow().points().toString());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        "kind": "pump" | "kind": "pmup" | line 3, kind: must be one of pump, electric motor, generator, fan, blower, compressor, turbine, gear unit, other: "pmup"
        "kind": "pump" | "kind": 3 | line 3, kind: must be a text in quotes: 3
        "ratedPowerKilowatts": 37 | "ratedPowerKilowatts": -5 | line 4, ratedPowerKilowatts: must be finite and > 0 kW: -5
        "ratedPowerKilowatts": 37 | "ratedPowerKilowatts": 1e999 | line 4, ratedPowerKilowatts: must be finite and > 0 kW: 1e999
        "ratedPowerKilowatts": 37 | "ratedPowerKilowatts": "37" | line 4, ratedPowerKilowatts: must be a number: "37"
        "ratedPowerKilowatts": 37 | "ratedPowerKilowatt": 37 | line 4, ratedPowerKilowatt: is not a known field; the nearest known name is "ratedPowerKilowatts"
        "shaftHeightMillimetres": 225 | "shaftHeightMillimetres": null | line 5, shaftHeightMillimetres: must be a number: null
        "support": "rigid" | "support": "Rigid" | line 6, support: must be one of rigid, flexible: "Rigid"
        "speedRevolutionsPerMinute": 1480, | "speedRevolutionsPerMinute": 0, | line 7, speedRevolutionsPerMinute: must be finite and > 0 r/min: 0
        "lineFrequencyHertz": 50, | "lineFrequencyHertz": 50, "lineFrequencyHertz": 60, | line 8, lineFrequencyHertz: must be given once only; it stands on line 8 already
        "standard": "ISO 20816-3" | "standart": "ISO 20816-3" | line 9, criterion.standard: is required: number of the standard, as in "ISO 20816-3"
        "balanceGrade": "G6.3" | "balanceGrade": "6.3" | line 10, rotor.balanceGrade: must be G followed by a number above 0, as in "G6.3": "6.3"
        "planes": 2 | "planes": 1.5 | line 10, rotor.planes: must be a whole number from 1 to 1000000: 1.5
        "blades": 7 | "blades": 0 | line 11, blades: must be a whole number from 1 to 1000000: 0
        [ 23, 71 ] | [ 23 ] | line 12, gears[0].teeth: must hold two wheels or more: [23]
        [ 23, 71 ] | [ 23, "71" ] | line 12, gears[0].teeth[1]: must be a whole number from 1 to 1000000: "71"
        "rollingElements": 9 | "rollingElements": 2 | line 14, bearings[0].rollingElements: must be a whole number from 3 to 1000000: 2
        "ballDiameterMillimetres": 7.94 | "ballDiameterMillimetres": 40 | line 14, bearings[0].ballDiameterMillimetres: must be > 0 mm and < 39.04 mm: 40
        "contactAngleDegrees": 0 | "contactAngleDegrees": 90 | line 15, bearings[0].contactAngleDegrees: must be >= 0 degrees and < 90 degrees: 90
        "rotatingRing": "inner" | "rotatingRing": "middle" | line 15, bearings[0].rotatingRing: must be one of inner, outer: "middle"
        "bearing": "drive end" | "bearing": "drive-end" | line 18, points[0].bearing: must be the id of a bearing, one of drive end: "drive-end"
        "direction": "horizontal" | "direction": "up" | line 18, points[0].direction: must be one of horizontal, vertical, radial, axial: "up"
        "recording": "de-h.wav" | "recording": "../de-h.wav" | line 19, points[0].recording: must be the name of a file inside the survey folder: "../de-h.wav"
        "recording": "de-h.wav", | | line 18, points[0].recording: is required: name of the WAV or CSV file
        "unit": "g" | "unit": "furlong" | line 19, points[0].unit: must be one of m/s2, g, mg, mm/s2, in/s2, m/s, mm/s, in/s, m, mm, um, in, mil: "furlong"
        "unit": "g" | "unit": "mV" | line 19, points[0].unit: must be one of m/s2, g, mg, mm/s2, in/s2, m/s, mm/s, in/s, m, mm, um, in, mil: "mV"
        "unit": "g", | | line 18, points[0].unit: is required: one of m/s2, g, mg, mm/s2, in/s2, m/s, mm/s, in/s, m, mm, um, in, mil
        "scale": 1.5 | "scale": 0.0 | line 19, points[0].scale: must be finite and not 0: 0
        "scale": 1.5 | "scal": 1.5 | line 19, points[0].scal: is not a known field; the nearest known name is "scale"
        "pulsesPerRevolution": 1 | "pulsesPerRevolution": 0 | line 20, points[0].tachometer.pulsesPerRevolution: must be a whole number from 1 to 1000000: 0
        "mounting": "magnet" | "mounting": "string" | line 21, points[0].sensor.mounting: must be one of stud, adhesive, wax, tape, magnet, hand-held: "string"
        "expandedUncertaintyPercent": 5 | "expandedUncertaintyPercent": 101 | line 21, points[0].sensor.expandedUncertaintyPercent: must be >= 0 % and <= 100 %: 101
        "id": "NDE-H" | "id": "DE-H" | line 22, points[1].id: must be given to one point only: "DE-H"
        "sampleRateHertz": 2560 | "sampleRateHertz": -1 | line 24, points[1].sampleRateHertz: must be finite and > 0 Hz: -1
        "sampleRateHertz": 2560 | "scale": 1 | line 24, points[1].sensitivityMillivoltsPerUnit: must not stand beside scale; give one of the two
        "DE-H": { "velocity-rms-10-1000Hz": 1.6 } | "DEH": { "velocity-rms-10-1000Hz": 1.6 } | line 26, baseline.DEH: must be the id of a point, one of DE-H, NDE-H
        "detector": "rms" | "detector": "average" | line 29, balancing.reading.detector: must be one of rms, 0-peak, peak-peak: "average"
        "phase": "lag, degrees" | "phase": "lag" | line 29, balancing.reading.phase: must be one of lag, degrees, lead, degrees: "lag"
        "unit": "mm/s", "detector" | "unit": "knots", "detector" | line 29, balancing.reading.unit: must be one of m/s2, g, mg, mm/s2, in/s2, m/s, mm/s, in/s, m, mm, um, in, mil, V, mV: knots
        "sensors": [ "DE-H", "NDE-H" ] | "sensors": [ "DE-H", "DE-H" ] | line 30, balancing.sensors[1]: must be given once only: "DE-H"
        "amplitude": 3.4 | "amplitude": -3.4 | line 31, balancing.initial[1].amplitude: must be finite and >= 0: -3.4
        { "plane": "non-drive end" | { "plane": "middle" | line 35, balancing.trials[1].plane: must be one of drive end, non-drive end: "middle"
        { "plane": "non-drive end" | { "plane": "drive end" | line 32, balancing.trials: must hold one trial run per plane; plane "drive end" has 2
        "massGrams": 12 | "massGrams": 0 | line 33, balancing.trials[0].massGrams: must be finite and > 0 g: 0
        "positions": { "drive end": 12 | "positions": { "drive end": 1 | line 39, balancing.positions.drive end: must be a whole number from 2 to 1000000: 1
        "radiusMillimetres": { "drive end": 160 | "radiusMillimetres": { "driven end": 160 | line 38, balancing.radiusMillimetres.driven end: is not a known field; the nearest known name is "drive end"
        """)
    void namesFileLineFieldRuleAndValue(String from, String to, String message) {
        List<String> messages = messages(changed(from, to == null ? "" : to));
        assertTrue(messages.contains("machine.json, " + message), () -> String.join("\n", messages));
    }

    @Test
    void readingsMustMatchSensors() {
        String json = changed("{ \"amplitude\": 0.7, \"phaseDegrees\": 12 }, ", "");
        assertEquals(List.of("machine.json, line 37, balancing.final: must hold one reading per sensor, 2: 1"), messages(json));
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
        MachineDescription machine = read(changed("\"ratedPowerKilowatts\"", "\"ratedPowerKiloWatt\"")).machine().orElseThrow();
        assertTrue(machine.ratedPowerKilowatts().isEmpty());
        assertEquals(Set.of("ratedPowerKilowatts"), machine.faultyFields());
        assertEquals(2, machine.points().size());
    }

    @Test
    void withoutNameOrPointsNothingIsSurveyed() {
        MachineReading nameless = read(changed("\"name\": \"Brine pump 2\",", ""));
        assertTrue(nameless.machine().isEmpty());
        assertEquals("[machine.json, line 1, name: is required: what the machine is called]", nameless.problems().toString());
        assertEquals(List.of("machine.json, line 1, points: is required: a list of points, each with a recording and its unit"),
                messages("{\"name\": \"Fan\"}"));
        assertEquals(List.of("machine.json, line 2, points: must hold one point or more: [ ]"),
                messages("{\"name\": \"Fan\",\n\"points\": []}"));
        assertTrue(read("{\"name\": \"Fan\", \"points\": []}").machine().isEmpty());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        {"name": "Fan",} | line 1: is not valid JSON: Unexpected character ('}' (code 125)): was expecting double-quote to start field name
        {"name": NaN} | line 1: is not valid JSON: NaN and infinities are not numbers in JSON
        [1] | line 1: must be an object { }: a list [ ]
        {"name": "Fan"} 2 | line 1: is not valid JSON: something follows the end of the description
        """)
    void invalidJsonNamesTheLine(String json, String message) {
        assertEquals(List.of("machine.json, " + message), messages(json));
        assertTrue(read(json).machine().isEmpty());
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
        assertEquals("machine.json, line 3, ki\ufffd[31mnd: is not a known field; the nearest known name is \"kind\"", message);
    }
}
