package dev.vibra.docs.survey.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.MachineDescription.Fact;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.machine.Rate;
import dev.vibra.measuring.Mounting;
import dev.vibra.quantity.Unit;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
    void readsTheMachine() {
        MachineReading reading = read(FULL);
        assertEquals(List.of(), reading.problems());
        MachineDescription machine = reading.machine().orElseThrow();
        assertEquals("Brine pump 2: pump, 37 kW, shaft height 225 mm, rigid support, 1480 r/min (24.67 Hz); 2 points",
                machine.toString());
        assertEquals("2026-03-04T10:20:00Z", machine.measured().orElseThrow().toString());
        assertEquals("80 % load", machine.state().orElseThrow());
        assertEquals("ISO 20816-3:2022, group 2, duty process", machine.criterion().orElseThrow().toString());
        assertEquals("rotor 64 kg, G6.3, 2 planes, between bearings", machine.rotor().toString());
        assertEquals("drive end: 9 × 7.94 mm on 39.04 mm, 0°", machine.bearing("drive end").orElseThrow().toString());
        assertEquals(RotatingRing.INNER, machine.bearings().get(0).rotatingRing());
        assertEquals(1.6, machine.baseline("DE-H").get("velocity-rms-10-1000Hz"));
        assertEquals(List.of("2026-01/results.json"), reading.earlier());
        assertEquals(List.of(48.2, 31.0), machine.naturalHertz());
        assertEquals(Map.of("foot-lifts at motor side", true, "load-raises", false), machine.observations());
        assertEquals(Set.of(), machine.faulty());
    }

    @Test
    void readsPartsAndWhatTurns() {
        MachineDescription machine = read(FULL).machine().orElseThrow();
        assertEquals("[drive: electric motor, 45 kW, flexible support, wet end: pump, support unknown]",
                machine.parts().toString());
        assertEquals("ISO 10816-7, category I", machine.part("wet end").criterion().orElseThrow().toString());
        DriveTrain train = machine.train();
        assertEquals("[drive to wet end, flexible]", train.couplings().toString());
        assertEquals("motor, 4 poles, 40 rotor bars, on a converter", train.motor().toString());
        assertEquals("[belt: 2400 mm, pulleys 200/300 mm]", train.belts().toString());
        assertEquals("motor side", train.belts().get(0).drivingShaft().orElseThrow());
        assertEquals(50.0, train.lineHertz().orElseThrow());
        assertEquals(9, train.guideVanes().orElseThrow());
        assertEquals("[reducer: 23/71 teeth, gear 2: 20/31/40 teeth]", train.gears().toString());
        assertEquals(1480 / 60.0, train.gears().get(0).inputHertz().orElseThrow(), 1e-12);
    }

    /** The pump is the only part that can have blades, and its shaft turns at half the stated speed. */
    @Test
    void bladesSitOnTheShaftOfTheOnePartThatHasAny() {
        assertEquals("blade passing 70.00 Hz", bladeRate(FULL));
        assertEquals("blade passing 140.0 Hz", bladeRate(changed("\"shaft\": \"pump side\",", "")));
        assertEquals("blade passing 140.0 Hz", bladeRate(changed("\"kind\": \"electric motor\"", "\"kind\": \"fan\"")));
    }

    private static String bladeRate(String json) {
        return read(json).machine().orElseThrow().train().ratesAt(20).stream()
                .filter(rate -> rate.kind() == Rate.Kind.BLADE_PASSING).findFirst().orElseThrow().toString();
    }

    /** Wheels 23 to 71, then 19 to 88 on the next shaft: two stages; before, all four were taken as one mesh. */
    @Test
    void fourWheelsAreTwoStagesInTheOrderOfThePowerFlow() {
        DriveTrain train = read(changed("[ 23, 71 ], \"speed", "[ 23, 71, 19, 88 ], \"speed")).machine().orElseThrow()
                .train();
        assertEquals("[reducer stage 1: 23/71 teeth, reducer stage 2: 19/88 teeth]",
                train.gears().subList(0, 2).toString());
        List<Double> mesh = train.ratesAt(24).stream().filter(rate -> rate.kind() == Rate.Kind.GEAR_MESH).limit(2)
                .map(Rate::hertz).toList();
        double input = 1480 / 60.0;
        assertEquals(23 * input, mesh.get(0), 1e-9, "the stated speed of the gear goes before that of the machine");
        assertEquals(19 * input * 23 / 71, mesh.get(1), 1e-9);
    }

    @Test
    void readsPointsAndHowTheirFilesAreRead() {
        MachineReading reading = read(FULL);
        List<MeasuringPoint> points = reading.machine().orElseThrow().points();
        MeasuringPoint first = points.get(0);
        assertEquals("DE-H, horizontal", first.toString());
        assertEquals("wet end, drive end", first.part().orElseThrow() + ", " + first.bearing().orElseThrow());
        assertEquals(1, first.pulsesPerRevolution().orElseThrow());
        assertEquals(Mounting.MAGNET, first.mounting().orElseThrow());
        assertEquals(0.05, first.expandedUncertainty().orElseThrow());
        assertEquals("45", first.positiveAxis().orElseThrow());
        assertEquals("motor side, away from the coupling", points.get(1).shaft().orElseThrow() + ", "
                + points.get(1).positiveAxis().orElseThrow());
        RecordingSource source = reading.sources().get("DE-H");
        assertEquals("pump, drive end", first.housing().orElseThrow());
        assertEquals(List.of("de-h.wav", "tacho.wav", "new/de-h.wav"), source.files());
        assertEquals(3, source.reference().orElseThrow().channel().number().orElseThrow());
        assertEquals("2025-01-07T09:00:00Z", source.reference().orElseThrow().measured().orElseThrow().toString());
        assertEquals(2, source.channel().number().orElseThrow());
        assertEquals("2026-03-04T10:25:00Z", source.measured().orElseThrow().toString());
        assertEquals(1.5, source.scaling().factor());
        RecordingSource second = reading.sources().get("NDE-H");
        assertEquals(List.of("nde-h.csv", "new/nde-h.csv"), second.files());
        assertEquals(Unit.MM_PER_S, second.unit());
        assertEquals(2560.0, second.sampleRateHertz().orElseThrow());
        assertEquals(250.0, second.scaling().factor(), 1e-12, "4 mV per mm/s: one volt is 250 mm/s");
    }

    @Test
    void channelsOfOneFileWereTakenTogether() {
        assertEquals(List.of(Optional.of("set.wav"), Optional.of("set.wav"), Optional.empty()),
                read("{\"name\":\"Fan\",\"points\":[{\"recording\":\"set.wav\",\"channel\":1,\"unit\":\"g\"},"
                        + "{\"recording\":\"set.wav\",\"channel\":2,\"unit\":\"g\"},"
                        + "{\"recording\":\"b.wav\",\"unit\":\"g\"}]}")
                        .machine().orElseThrow().points().stream().map(MeasuringPoint::recordingSet).toList());
    }

    @Test
    void needsNoMoreThanNameRecordingAndUnit() {
        MachineReading reading = read("{\"name\":\"Fan\",\"points\":[{\"recording\":\"a.wav\",\"unit\":\"m/s2\"}]}");
        assertEquals(List.of(), reading.problems());
        assertEquals("[point 1]", reading.machine().orElseThrow().points().toString());
    }

    @ParameterizedTest
    @CsvFileSource(resources = "errors.txt", delimiter = '|', quoteCharacter = '`')
    void namesFileLineFieldRuleAndValue(String from, String to, String message) {
        List<String> messages = messages(changed(from, to == null ? "" : to));
        assertTrue(messages.contains("machine.json, " + message), () -> String.join("\n", messages));
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

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        "ratedPowerKilowatts": 37 | "ratedPowerKiloWatt": 37 | MACHINE
        "kind": "electric motor" | "kind": "moter" | MACHINE
        "speedRevolutionsPerMinute": 1480, | "speedRevolutionsPerMinute": -1480, | SPEED
        "ratio": 1.5 | "ratio": -1.5 | SPEED
        "standard": "ISO 20816-3" | "standart": "ISO 20816-3" | CRITERION
        "velocity-rms-10-1000Hz": 1.6 | "velocity-rms-10-1000Hz": "1.6" | BASELINE
        """)
    void remembersWhichFactWasGivenWrong(String from, String to, Fact fact) {
        MachineDescription machine = read(changed(from, to)).machine().orElseThrow();
        assertEquals(Set.of(fact), machine.faulty());
        assertEquals(2, machine.points().size() + machine.parts().size() - 2);
    }

    /** What hangs on a shaft whose ratio is wrong has no error of its own, and nothing is guessed for it. */
    @Test
    void aWrongShaftIsToldOnce() {
        MachineReading reading = read(changed("\"ratio\": 1.5", "\"ratio\": -1.5"));
        assertEquals(List.of("machine.json, line 41, shafts[0].ratio: must be >= 0.0001 and <= 10000: -1.5"),
                reading.problems().stream().map(Problem::toString).toList());
        assertTrue(reading.machine().orElseThrow().part("drive").shaft().isEmpty());
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
        assertEquals("machine.json, line 3, ki\\u001b[31mnd: is not a known field; the nearest known name is \"kind\"",
                message);
    }
}
