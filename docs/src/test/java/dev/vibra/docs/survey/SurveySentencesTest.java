package dev.vibra.docs.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.docs.survey.Folders.Run;
import dev.vibra.io.SampleFormat;
import dev.vibra.io.WavFile;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.synthesis.Synthesis;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an analyst would not sign: sentences and codes on machines of one point, made here, read from the output. */
class SurveySentencesTest {
    private static final double SPEED_HERTZ = 24.7;
    private static final String FAN = "\"kind\": \"fan\", \"ratedPowerKilowatts\": 45, \"support\": \"rigid\","
            + " \"speedRevolutionsPerMinute\": 1482";

    @TempDir
    private Path temp;

    /** Lines of rms velocity in mm/s at multiples of the speed, in noise. */
    private Run survey(String machine, double... orderAndVelocity) throws IOException {
        Synthesis signal = Synthesis.silence(Quantity.ACCELERATION, 12_800, 102_400).noise(0.05, 7);
        for (int i = 0; i < orderAndVelocity.length; i += 2) {
            double hertz = orderAndVelocity[i] * SPEED_HERTZ;
            signal = signal.tone(1e-3 * orderAndVelocity[i + 1] * Math.sqrt(2) * 2 * Math.PI * hertz, hertz, 0.3 * i);
        }
        Path folder = Files.createDirectories(temp.resolve("machine"));
        WavFile.write(signal.waveform(), folder.resolve("a.wav"), Unit.M_PER_S2, 100, SampleFormat.INTEGER_24);
        Files.writeString(folder.resolve("machine.json"), "{ \"name\": \"Machine\", " + machine
                + " \"points\": [ { \"id\": \"DE-H\", \"direction\": \"horizontal\", \"recording\": \"a.wav\","
                + " \"unit\": \"m/s2\", \"scale\": 100 } ] }");
        return Folders.run(folder);
    }

    private String json() throws IOException {
        return Files.readString(temp.resolve("machine-survey/results.json"));
    }

    private String html() throws IOException {
        return Files.readString(temp.resolve("machine-survey/report.html"));
    }

    private static String unwrapped(String text) {
        return text.replaceAll("\\s+", " ");
    }

    @Test
    void aHealthyMachineIsNotPraisedBeyondWhatWasLookedAt() throws IOException {
        Run run = survey(FAN + ",", 1, 0.8, 2, 0.2);
        assertEquals(0, run.code(), run.out());
        assertTrue(run.out().startsWith("Machine: nothing speaks against it\n"), run.out());
        assertTrue(unwrapped(run.out()).contains("defects of rolling bearings (no geometry is given)"), run.out());
        assertTrue(json().contains("\"mayServeAsBaseline\" : true"), json());
    }

    @Test
    void onePointIsOnePoint() throws IOException {
        Run run = survey(FAN + ",", 1, 0.8, 2, 0.2);
        assertTrue(unwrapped(run.out()).contains("; 1 measuring point "), run.out());
        assertTrue(html().contains("; 1 measuring point<"));
    }

    /** 5 mm/s at 6.37 times the speed belong to nothing that is known of this fan: the line is told with its order. */
    @Test
    void theLinesOfALevelThatNoFindingExplainsAreNamed() throws IOException {
        Run run = survey(FAN + ",", 1, 0.7, 2, 0.2, 6.37, 4.9);
        String text = unwrapped(run.out());
        assertTrue(text.contains("no finding explains DE-H: 4.90 mm/s rms at 157.3 Hz (6.37×)"), text);
        assertTrue(html().contains("4.90 mm/s rms at 157.3 Hz (6.37×)"));
        assertTrue(json().contains("\"order\" : 6.3"), json());
        assertTrue(text.matches(".* 4\\.9\\d ± \\S+ mm/s rms zone D .*"), text);
    }

    /** Without kind and power there is no criterion; the level was measured all the same, and the code stays 0. */
    @Test
    void aLevelWithoutACriterionIsPrinted() throws IOException {
        Run run = survey("\"speedRevolutionsPerMinute\": 1482,", 1, 6.0, 2, 0.3);
        assertTrue(run.out().startsWith("Machine: not determined\n"), run.out());
        String text = unwrapped(run.out());
        assertTrue(text.contains("DE-H horizontal velocity-rms-10-1000Hz 5.99 mm/s, not judged: "), text);
        assertEquals(3, text.split("can't be applied without", -1).length, "with criterion and point only: " + text);
        assertFalse(text.contains("not determined: not determined"), text);
        assertTrue(json().contains("\"word\" : \"not determined\"") && !json().contains("\"rank\""), json());
    }

    /** Displacement limits of this standard are known from a secondary source; they alone put this fan into D. */
    @Test
    void aFlagOfTheLimitsReachesHeadlineTableAndReport() throws IOException {
        Run run = survey(FAN.replace("1482", "592.8") + ",", 0.4, 4.44, 0.8, 0.2);
        String text = unwrapped(run.out());
        assertTrue(text.matches(".* 4\\.4\\d ± \\S+ mm/s rms zone C .*"), text);
        assertTrue(text.matches("Machine: decide now - zone D \\(rests on limits that are not firm: [^)]+\\).*"), text);
        assertTrue(text.contains("22 / 45 / 71 *"), text);
        assertTrue(text.contains("* limits: secondary source"), text);
        assertTrue(html().contains("(secondary source, verify). Diamond"), html());
    }

    /** What a good zone means never stands as praise beside what speaks against the machine. */
    @Test
    void aGoodZoneIsNoPraiseBesideARise() throws IOException {
        Run run = survey(FAN + ", \"baseline\": { \"DE-H\": { \"velocity-rms-10-1000Hz\": 0.8 } },", 1, 2.2);
        String text = unwrapped(run.out());
        assertTrue(text.startsWith("Machine: watch - a rise that matters at DE-H "), text);
        assertFalse(text.contains("acceptable for long operation"), text);
        assertFalse(html().contains("acceptable for long operation"));
    }

    /** A pump of which the category isn't told is judged by both, and each row says by which. */
    @Test
    void rowsOfAnOpenFactSayWhichTheyHoldFor() throws IOException {
        Run run = survey("\"kind\": \"pump\", \"ratedPowerKilowatts\": 75,"
                + " \"speedRevolutionsPerMinute\": 1482,", 1, 4.6);
        String text = unwrapped(run.out());
        assertTrue(text.matches(".*rms zone C .{0,60}if category I, .*rms zone B .{0,60}if category II, .*"), text);
        assertTrue(html().matches("(?s).*if category I, .*if category II, .*"), html());
        assertTrue(text.contains("since the zone depends on it: category"), text);
    }

    @Test
    void anAcceptanceStandardSpeaksItsOwnWords() throws IOException {
        Run run = survey("\"kind\": \"electric motor\", \"ratedPowerKilowatts\": 90, \"shaftHeightMillimetres\": 280,"
                + " \"support\": \"rigid\", \"speedRevolutionsPerMinute\": 1482, \"criterion\":"
                + " { \"standard\": \"IEC 60034-14\", \"group\": \"A\" },", 1, 4.0, 2, 0.2);
        assertTrue(run.out().contains("not accepted"), run.out());
        assertFalse(unwrapped(run.out()).contains("zone D"), run.out());
        assertTrue(json().contains("\"rating\" : \"not accepted\"") && !json().contains("\"zone\""), json());
    }

    @Test
    void aRefusedPointMakesTheCodeOne() throws IOException {
        survey(FAN + ",", 1, 0.8);
        Path folder = temp.resolve("machine");
        WavFile.write(Synthesis.silence(Quantity.ACCELERATION, 12_800, 102_400).noise(1, 3).dropOut(2, 1).waveform(),
                folder.resolve("a.wav"), Unit.M_PER_S2, 100, SampleFormat.INTEGER_24);
        Run run = Folders.run(folder);
        assertEquals(1, run.code(), run.out());
        assertTrue(unwrapped(run.out()).contains("Record DE-H again"), run.out());
    }

    @Test
    void sensitivityOnWholeNumbersIsRefusedWithTheWayOut() throws IOException {
        survey(FAN + ",", 1, 0.8);
        Path folder = temp.resolve("machine");
        Folders.replace(folder, "\"scale\": 100", "\"sensitivityMillivoltsPerUnit\": 100");
        Run run = Folders.run(folder);
        assertEquals(2, run.code(), run.out());
        assertTrue(run.err().startsWith("a.wav: point DE-H is left out: fullScaleVolts is required beside"
                + " sensitivityMillivoltsPerUnit: "), run.err());
        Folders.replace(folder, "\"sensitivityMillivoltsPerUnit\": 100",
                "\"sensitivityMillivoltsPerUnit\": 100, \"fullScaleVolts\": 10");
        assertEquals(0, Folders.run(folder).code());
        String words = "24-bit whole numbers of ±10 V full scale, 100 mV per m/s²";
        assertTrue(json().contains("\"conversion\" : \"" + words + "\""), json());
        assertTrue(html().contains(words));
    }

    @Test
    void theSameInputsGiveTheSameBytesAndOthersAnotherRun() throws IOException {
        survey(FAN + ",", 1, 0.8);
        List<String> first = List.of(json(), html());
        survey(FAN + ",", 1, 0.8);
        assertEquals(first, List.of(json(), html()));
        String run = first.get(0).replaceFirst("(?s).*\"run\" : \"([0-9a-f]{64})\".*", "$1");
        assertTrue(html().contains(", run " + run + "</p>"));
        survey(FAN + ", \"state\": \"half load\",", 1, 0.8);
        assertFalse(json().contains(run));
    }

    /** Format 2 of an earlier visit gives the baseline; the change is told with its origin. */
    @Test
    void earlierResultsGiveTheBaseline() throws IOException {
        survey(FAN + ", \"measured\": \"2026-01-01T08:00:00Z\",", 1, 0.8, 2, 0.2);
        Path earlier = temp.resolve("machine/2026-01.json");
        Files.copy(temp.resolve("machine-survey/results.json"), earlier);
        Run run = survey(FAN + ", \"measured\": \"2026-02-01T08:00:00Z\", \"earlier\": [ \"2026-01.json\" ],", 1, 2.2);
        String text = unwrapped(run.out());
        assertTrue(text.contains("change velocity-rms-10-1000Hz 2.19 after 0.82"), text);
        assertTrue(text.contains("baseline 2026-01.json, measured 2026-01-01T08:00:00Z"), text);
        assertTrue(json().contains("\"matters\" : true") && json().contains("\"mayServeAsBaseline\" : false"), json());
    }

    /** Classes of engines stay open, and their standard joins two zones: letters, never "zone" within. */
    @Test
    void joinedZonesAreNamedByTheirLetters() throws IOException {
        Run run = survey("\"kind\": \"reciprocating engine\", \"ratedPowerKilowatts\": 500,"
                + " \"speedRevolutionsPerMinute\": 1482, \"criterion\": { \"standard\": \"ISO 10816-6\" },", 1, 7.1);
        String text = unwrapped(run.out());
        assertTrue(text.contains("(A or B or C)") || text.contains("(C or D)"), text);
        assertFalse(text.contains("(zone "), text);
        assertTrue(unwrapped(json()).contains("\"zonesWithinUncertainty\" : [ \"C\", \"D\" ]"), json());
    }

    /** A plate 30 % off: what the lines say instead is printed, not only kept in the files. */
    @Test
    void whyTheGivenSpeedHadToDoIsPrinted() throws IOException {
        Run run = survey(FAN.replace("1482", "1925") + ",", 1, 3.2, 2, 0.3);
        assertTrue(unwrapped(run.out()).matches(".*Speed 1925 r/min \\(32.08 Hz\\) as given; .*24.70 Hz.* Points .*"),
                run.out());
    }

    @Test
    void nothingIsLeftUnsaidWhereNothingWasTold() throws IOException {
        Run run = survey("\"parts\": [ { \"id\": \"a\" }, { \"id\": \"b\", \"kind\": \"pump\" } ],", 1, 0.001);
        assertTrue(unwrapped(run.out()).contains("Machine a: nothing is told of it; b: pump;"), run.out());
    }

    /** A sensor that isn't connected: whatever the size of the number, it stands apart from its rating and is plain. */
    @Test
    void tinyLevelsStandApartFromTheirRating() throws IOException {
        survey(FAN + ",", 1, 0.5);
        Folders.replace(temp.resolve("machine"), "\"scale\": 100", "\"scale\": 0.01");
        Run run = Folders.run(temp.resolve("machine"));
        assertTrue(run.out().matches("(?s).* 0\\.0000\\d{3} ± 0\\.00000\\d\\d mm/s rms zone A .*"), run.out());
    }

    @Test
    void everyLineFitsEightyColumns() throws IOException {
        Run run = survey(FAN.replace("1482", "741") + ", \"state\": \"" + "long ".repeat(30).trim() + "\",", 0.5, 4.4);
        Arrays.stream(run.out().split("\n")).filter(line -> !line.startsWith("Written to "))
                .forEach(line -> assertTrue(line.length() <= 80, line));
    }
}
