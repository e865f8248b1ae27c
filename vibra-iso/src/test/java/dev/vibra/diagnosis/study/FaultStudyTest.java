package dev.vibra.diagnosis.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.fault.FaultTable;
import dev.vibra.quantity.RotationSpeed;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Keeps {@link FaultStudy} alive. */
class FaultStudyTest {
    private static final int MACHINES = 6;

    @Test
    void runsStoresAndGoesOn(@TempDir Path folder) throws Exception {
        Path store = folder.resolve("study.tsv");
        List<StudyCase> half = FaultStudy.run(1, MACHINES / 2, store);
        List<StudyCase> all = FaultStudy.run(1, MACHINES, store);
        assertEquals(MACHINES, all.size());
        assertEquals(MACHINES, Files.readAllLines(store).size());
        assertEquals(half.stream().map(StudyCase::line).toList(),
                all.subList(0, half.size()).stream().map(StudyCase::line).toList());
        String table = new StudyTable(all).markdown();
        long sound = all.stream().filter(StudyCase::healthy).count();
        assertTrue(table.startsWith(MACHINES + " simulated machines, seeds 1 to " + MACHINES + ": " + sound + " sound"),
                table);
    }

    @Test
    void equalSeedsGiveEqualMachines() {
        StudyMachine.Measured one = StudyMachine.of(3).measure(StudyMachine.of(3).firstSession(), 0);
        StudyMachine.Measured other = StudyMachine.of(3).measure(StudyMachine.of(3).firstSession(), 0);
        assertEquals(one.recordings(), other.recordings());
        assertEquals(StudyMachine.of(3).toString(), StudyMachine.of(3).toString());
    }

    @Test
    void everyFaultOfTheTableIsDrawn() {
        Set<String> drawn = new TreeSet<>();
        for (long seed = 0; seed < 40; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Plant plant = Plant.draw(random);
            var geometry = BearingGeometry.of(9, 7.94, 39.04, 0);
            var rates = geometry.frequencies(RotatingRing.INNER,
                    RotationSpeed.ofHertz(plant.hertz(plant.housings.get(0).rotor())));
            new FaultDraws(plant, Map.of(plant.housings.get(0).name(), rates), random).candidates()
                    .forEach(one -> drawn.add(one.id()));
        }
        Set<String> table = FaultTable.standard().faults().stream().map(fault -> fault.id())
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(table, drawn);
    }

    @Test
    void crewAnswersEveryTestOfTheTable() {
        Set<String> tests = new TreeSet<>();
        for (long seed = 0; seed < 60 && tests.size() < FaultTable.standard().tests().size(); seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Plant plant = Plant.draw(random);
            new FaultDraws(plant, Map.of(), random).candidates().forEach(one -> tests.addAll(one.draw().get().tests()
                    .keySet()));
        }
        assertEquals(FaultTable.standard().tests(), tests);
    }

    @Test
    void tableReplacesOnlyWhatStandsBetweenItsMarks() {
        String page = "before\n" + FaultStudy.between("", "old") + "behind\n";
        assertEquals(page.replace("old", "new"), FaultStudy.between(page, "new"));
    }
}
