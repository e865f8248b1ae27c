package dev.vibra.docs.survey.demo;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.diagnosis.Finding;
import dev.vibra.docs.notebook.Demonstration;
import dev.vibra.docs.notebook.Notebook;
import dev.vibra.docs.survey.demo.DemoVisits.Visit;
import dev.vibra.docs.survey.input.MachineFile;
import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.point.PointSurvey;
import dev.vibra.docs.survey.input.RecordingSource;
import dev.vibra.quality.RecordingCheck;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.speedrun.PointRun;
import dev.vibra.speedrun.SpeedResonance;
import dev.vibra.speedrun.SpeedSweep;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Survey;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packed demonstration machine is what its generator makes, and describes itself without error. */
class DemoMachineTest {
    /** Set to a folder with {@code machine.json}, recordings and earlier results are written there. */
    private static final String REGENERATE = "vibra.demo.write";

    @Test
    void packedRecordingsAreWhatTheGeneratorMakes(@TempDir Path made, @TempDir Path packed) throws IOException {
        String target = System.getProperty(REGENERATE, "");
        if (!target.isEmpty()) {
            DemoRecordings.writeTo(Path.of(target));
            for (Visit visit : DemoVisits.all()) {
                DemoVisits.write(visit, Path.of(target));
            }
        }
        DemoRecordings.writeTo(made);
        DemoMachine.unpack(packed);
        for (String name : made.toFile().list()) {
            assertArrayEquals(Files.readAllBytes(made.resolve(name)), Files.readAllBytes(packed.resolve(name)), name);
        }
    }

    /** The first visit and the last are surveyed again; what a later version of the program says more is let pass. */
    @Test
    void packedVisitsHoldWhatTheCommandFinds(@TempDir Path again, @TempDir Path packed) throws IOException {
        DemoMachine.unpack(again);
        DemoMachine.unpack(packed);
        List<Visit> visits = DemoVisits.all();
        assertEquals(visits.stream().map(Visit::file).toList(), MachineFile.in(packed).earlier());
        for (Visit visit : List.of(visits.get(0), visits.get(visits.size() - 1))) {
            DemoVisits.write(visit, again);
            List<String> numbers = numbers(again.resolve(visit.file()));
            assertTrue(numbers.size() >= 3 * 9, "descriptors: " + numbers);
            assertEquals(numbers, numbers(packed.resolve(visit.file())), visit.toString());
        }
    }

    /** Descriptors of results with their values, in their order. */
    private static List<String> numbers(Path results) throws IOException {
        return Pattern.compile("\"[A-Za-z0-9-]+\" : \\{\\s+\"value\" : [-0-9.E]+").matcher(Files.readString(results))
                .results().map(MatchResult::group).toList();
    }

    @Test
    void filesAreSmallEnoughToKeepWithTheSources(@TempDir Path packed) throws IOException {
        DemoMachine.unpack(packed);
        long bytes = 0;
        try (var files = Files.walk(packed)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                bytes += Files.size(file);
            }
        }
        assertTrue(bytes < 2_500_000, "bytes " + bytes);
    }

    @Test
    void descriptionHasNoErrorAndNamesEveryRecording(@TempDir Path packed) throws IOException {
        DemoMachine.unpack(packed);
        MachineReading reading = MachineFile.in(packed);
        assertEquals(List.of(), reading.problems());
        assertEquals(List.copyOf(DemoRecordings.all().keySet()),
                reading.sources().values().stream().map(source -> source.channel().file()).toList());
        assertEquals(DemoRecordings.SPEED, reading.machine().orElseThrow().speed().orElseThrow());
        reading.sources().values().forEach(source -> {
            assertEquals(Unit.G, source.unit());
            assertEquals("16-bit whole numbers of ±4 g full scale", source.read(packed).conversion());
            assertEquals(DemoRecordings.FULL_SCALE_G, source.scaling().factor());
        });
    }

    /** Samples as a whole acquisition delivers them: nothing to remark, neither in the check nor in the survey. */
    @Test
    void noRecordingCarriesARemark() {
        DemoRecordings.all().forEach((name, wave) -> assertEquals(List.of(), RecordingCheck.of(wave).remarks(), name));
        assertEquals(List.of(), survey().points().stream().flatMap(point -> point.recording().orElseThrow().quality()
                .remarks().stream()).toList());
    }

    /** What the generator puts in, and nothing else, by the codes of the findings. */
    @Test
    void findingsAreTheFaultsPutIn() {
        List<Finding> findings = survey().findings();
        assertEquals(List.of("unbalance", "rolling-bearing-outer-race", "belt"),
                findings.stream().map(Finding::code).toList());
        assertEquals("unbalance of an overhung wheel", findings.get(0).fault());
        assertTrue(findings.get(0).points().containsAll(List.of("FE-H", "FE-V")), findings.get(0).points().toString());
        assertEquals(List.of("DE-H", "DE-V", "DE-A"), findings.get(1).points());
        assertEquals("M-DE-H", findings.get(2).points().get(0));
    }

    /** The sheet was filled in at the same machine: 5.20 mm/s at 63° behind the mark. */
    @Test
    void recordingAndBalancingSheetTellTheSameVector() {
        PointSurvey point = survey().points().get(0);
        assertEquals("FE-H", point.point().id());
        assertEquals(5.20, point.description().value("velocity-rms-1x").orElseThrow(), 0.01);
        assertEquals(63.0, point.description().value("velocity-1x-lag").orElseThrow(), 0.1);
    }

    /**
     * What the coast-down shows is what it was made with, and what the description states. By the closed form velocity
     * peaks half a percent above the natural frequency at this damping.
     */
    @Test
    void runDownPassesTheResonanceThatWasPutIn(@TempDir Path packed) throws IOException {
        DemoMachine.unpack(packed);
        MachineReading reading = MachineFile.in(packed);
        SpeedSweep sweep = SpeedSweep.read(reading.runs().get(0).tachometer().readTachometer(packed)
                .orElseThrow(), 1)
                .sweep().orElseThrow();
        Map<String, RecordingSource> points = reading.runs().get(0).points();
        PointRun across = PointRun.of("FE-H", points.get("FE-H").read(packed).signal(), sweep);
        SpeedResonance resonance = across.resonances().get(0);
        assertEquals(1, across.resonances().size());
        assertEquals(DemoCoastDown.NATURAL_HERTZ, resonance.hertz(), 0.01 * DemoCoastDown.NATURAL_HERTZ);
        assertEquals(1 / (2 * DemoCoastDown.DAMPING), resonance.amplificationByPhase(), 1);
        assertEquals(List.of(DemoCoastDown.NATURAL_HERTZ), reading.machine().orElseThrow().naturalHertz());
        assertEquals(List.of(), PointRun.of("FE-V", points.get("FE-V").read(packed).signal(), sweep).resonances());
    }

    private static MachineSurvey survey() {
        Demonstration demo = Notebook.demo();
        return Survey.of(demo.machine(), demo.recordings(), demo.tachometers());
    }

    /**
     * The readings were made with an influence of 0.5 mm/s per g, 250° behind: 5.2 at 63° and 2.0 at 40° add
     * to 7.08 at 56.7°, and the correction is 5.2/0.5 = 10.4 g at 63 + 180 - 250 = -7°. The trial mass of 4 g throws
     * with no more than 10 % of the weight per bearing, so there is nothing to doubt.
     */
    @Test
    void balancingJobGivesBackTheUnbalanceItWasMadeWith(@TempDir Path packed) throws IOException {
        DemoMachine.unpack(packed);
        MachineSurvey survey = Survey.begin(MachineFile.in(packed).machine().orElseThrow()).conclude(List.of());
        PlacedMass correction = survey.balancing().orElseThrow().corrections().orElseThrow().in("fan wheel").mass();
        assertEquals(10.4, correction.grams(), 0.05);
        assertEquals(353, correction.angleDegrees(), 0.3);
        assertEquals(List.of(), survey.balancing().orElseThrow().corrections().orElseThrow().remarks());
    }
}
