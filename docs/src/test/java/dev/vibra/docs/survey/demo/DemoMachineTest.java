package dev.vibra.docs.survey.demo;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.docs.survey.input.MachineFile;
import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.quality.RecordingCheck;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Survey;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packed demonstration machine is what its generator makes, and describes itself without error. */
class DemoMachineTest {
    /** Set to a folder, the generator writes the recordings there; see the class comment of the generator. */
    private static final String REGENERATE = "vibra.demo.write";

    @Test
    void packedRecordingsAreWhatTheGeneratorMakes(@TempDir Path made, @TempDir Path packed) throws IOException {
        String target = System.getProperty(REGENERATE, "");
        if (!target.isEmpty()) {
            DemoRecordings.writeTo(Path.of(target));
        }
        DemoRecordings.writeTo(made);
        DemoMachine.unpack(packed);
        for (String name : DemoRecordings.all().keySet()) {
            assertArrayEquals(Files.readAllBytes(made.resolve(name)), Files.readAllBytes(packed.resolve(name)), name);
        }
    }

    @Test
    void filesAreSmallEnoughToKeepWithTheSources(@TempDir Path packed) throws IOException {
        DemoMachine.unpack(packed);
        long bytes = 0;
        try (var files = Files.list(packed)) {
            for (Path file : files.toList()) {
                bytes += Files.size(file);
            }
        }
        assertTrue(bytes < 1_000_000, "bytes " + bytes);
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

    @Test
    void everyRecordingIsSound() {
        DemoRecordings.all().forEach((name, wave) ->
                assertTrue(RecordingCheck.of(wave).sound(), name + ": " + RecordingCheck.of(wave)));
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
