package dev.vibra.simulation;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.fault.Fault;
import dev.vibra.fault.FaultTable;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.machine.Rate;
import dev.vibra.point.PartCriterion;
import dev.vibra.quality.RecordingCheck;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.severity.Zone;
import dev.vibra.signal.Waveform;
import dev.vibra.symptom.Site;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class SimulatedMachineTest {
    private static final FaultTable TABLE = FaultTable.standard();

    @Test
    void everyFaultOfTheTableHasAModel() {
        assertEquals(TABLE.faults().stream().map(Fault::id).collect(Collectors.toCollection(TreeSet::new)),
                new TreeSet<>(SimulatedMachine.faultIds()));
    }

    /**
     * What is told of a machine fits what is recorded, and each fault sits where the description has a place for
     * it.
     */
    @Test
    void descriptionRecordingsAndFaultsFitTogether() {
        for (Fault fault : TABLE.faults()) {
            for (int seed = 0; seed < 2; seed++) {
                SimulatedMachine machine = SimulatedMachine.draw(seed, List.of(fault.id()));
                List<String> ids = machine.description().points().stream().map(MeasuringPoint::id).toList();
                assertEquals(ids, List.copyOf(machine.recordings().keySet()));
                assertEquals(ids, List.copyOf(machine.references().keySet()));
                machine.recordings().values().forEach(SimulatedMachineTest::assertRecording);
                machine.references().values().forEach(SimulatedMachineTest::assertRecording);
                Truth truth = machine.faults().get(0);
                assertEquals(fault.id(), truth.fault());
                List<String> owners = TABLE.sitesOf(fault, machine.description()).stream().map(Site::owner).toList();
                assertTrue(owners.contains(truth.owner()), () -> truth + ", but places are " + owners);
                assertTrue(machine.decibels().isPresent());
            }
        }
    }

    private static void assertRecording(Waveform wave) {
        assertEquals(Quantity.ACCELERATION, wave.quantity());
        assertTrue(wave.durationSeconds() >= 5 && wave.durationSeconds() <= 10.01, wave::toString);
        double rms = wave.rms().si();
        assertTrue(rms > 1e-3 && rms < 1e3, wave::toString);
    }

    @Test
    void equalSeedsGiveEqualMachinesAndOthersOthers() {
        SimulatedMachine one = SimulatedMachine.draw(17, List.of("rub"));
        SimulatedMachine same = SimulatedMachine.draw(17, List.of("rub"));
        one.recordings().forEach((id, wave) -> assertArrayEquals(wave.samples(), same.recordings().get(id).samples()));
        assertEquals(one.observations(), same.observations());
        assertEquals(one.toString(), same.toString());
        SimulatedMachine other = SimulatedMachine.draw(one.plan(), 18, List.of("rub"));
        String id = one.description().points().get(0).id();
        assertFalse(one.recordings().get(id).at(100) == other.recordings().get(id).at(100));
        assertEquals(one.plan().description().points().size(), other.recordings().size());
    }

    /**
     * Nineteen of twenty recordings are good for an assessment of motion, or the counts would rest on what is
     * refused.
     */
    @Test
    void recordingsAreSound() {
        List<String> faults = new ArrayList<>(SimulatedMachine.faultIds());
        int sound = 0;
        int all = 0;
        for (int i = 0; i < 26; i++) {
            SimulatedMachine machine = SimulatedMachine.draw(900 + i, List.of(faults.get(i % faults.size())));
            for (MeasuringPoint point : machine.description().points()) {
                RecordingCheck check = RecordingCheck.withDefaults()
                        .withSpeed(machine.description().speedAt(point).orElseThrow());
                sound += check.check(machine.recordings().get(point.id())).sound() ? 1 : 0;
                all++;
            }
        }
        assertTrue(sound >= 0.95 * all, sound + " of " + all);
    }

    /** Of 60 sound machines 57 are expected in zone A or B; fewer than 51 would be chance once in some hundred. */
    @Test
    void soundMachinesAreInZoneAOrB() {
        int good = 0;
        int better = 0;
        for (int seed = 0; seed < 60; seed++) {
            Zone worst = worst(SimulatedMachine.draw(seed, List.of()));
            good += worst == Zone.A || worst == Zone.B ? 1 : 0;
            better += worst == Zone.A ? 1 : 0;
        }
        assertTrue(good >= 51, good + " of 60");
        assertTrue(better < 51, "not all are quiet: " + better);
    }

    private static Zone worst(SimulatedMachine machine) {
        List<PartCriterion> criteria = PartCriterion.of(machine.description());
        Zone worst = Zone.A;
        for (MeasuringPoint point : machine.description().points()) {
            PartCriterion criterion = criteria.stream().filter(one -> criteria.size() == 1
                    || one.part().equals(point.part())).findFirst().orElseThrow();
            Optional<Zone> zone = criterion.severity().judge(machine.recordings().get(point.id())
                    .throughSeverityChain(Quantity.VELOCITY, Band.of(10, 1000)).rms()).zone();
            worst = zone.isPresent() && zone.get().isWorseThan(worst) ? zone.get() : worst;
        }
        return worst;
    }

    @Test
    void testsThatACrewCanMakeAreAnsweredRightMostly() {
        Set<String> codes = TABLE.tests();
        assertRight("bent-shaft", "slow-roll-stays");
        assertRight("unbalance/static", "trial-mass-answers");
        assertRight("eccentric-rotor", "power-cut-drops");
        assertRight("foreign-line", "stays-when-stopped");
        assertRight("soft-foot", "foot-lifts");
        assertRight("gear-tooth", "tooth-marks");
        SimulatedMachine machine = SimulatedMachine.draw(3, List.of("misalignment/angular"));
        machine.observations().keySet().forEach(key -> assertTrue(codes.contains(key.split(" at ")[0]), key));
    }

    /** With the fault the test shows it in most machines, without in few. */
    private static void assertRight(String fault, String test) {
        double with = share(List.of(fault), test);
        double without = share(List.of(), test);
        boolean usual = test.equals("trial-mass-answers");
        assertTrue(with > 0.5 && (usual || without < 0.3), () -> fault + ": " + test + " in " + with + ", sound " + without);
    }

    /** Outcomes need no samples. */
    private static double share(List<String> faults, String test) {
        int seen = 0;
        int machines = 0;
        for (int seed = 0; seed < 60; seed++) {
            Draws draws = Draws.of(seed);
            Scene scene = new Scene(MachinePlan.draw(seed, faults));
            Health.addTo(scene, draws);
            List<Truth> truths = faults.stream().map(fault -> new Truth(fault, FaultModels.of(fault).apply()
                    .apply(scene, draws))).toList();
            Map<String, Boolean> outcomes = new CrewTests(scene, truths, new Recorder(scene, draws), draws).outcomes();
            String own = truths.isEmpty() ? "" : truths.get(0).owner();
            Optional<Boolean> outcome = Optional.ofNullable(outcomes.getOrDefault(test + " at " + own,
                    outcomes.get(test)));
            seen += outcome.filter(Boolean::booleanValue).isPresent() ? 1 : 0;
            machines += outcome.isPresent() ? 1 : 0;
        }
        return machines == 0 ? 0 : (double) seen / machines;
    }

    /** The slip speed times the number of poles: 2970 r/min of two poles at 50 Hz gives 1 Hz, 1480 of four 1.33 Hz. */
    @Test
    void ratesFollowFromSlipAndBelt() {
        assertEquals(1.0, 2 * (50 - 2970 / 60.0), 1e-9);
        for (int seed = 0; seed < 50; seed++) {
            MachinePlan plan = MachinePlan.draw(MachinePlan.Form.BELT_FAN, seed);
            PlanParts.Supply supply = plan.parts().supply();
            int poles = (int) (2 * Math.round(supply.lineHertz() / supply.mainHertz()));
            assertEquals(poles * (2 * supply.lineHertz() / poles - supply.mainHertz()), supply.polePassHertz(), 1e-9);
            MachineDescription told = plan.description();
            double belt = told.train().ratesAt(supply.mainHertz()).stream()
                    .filter(rate -> rate.kind() == Rate.Kind.BELT).findFirst().orElseThrow().hertz();
            assertEquals(belt, plan.parts().belt().order() * supply.mainHertz(), 1e-9);
        }
    }

    @Test
    void askedForWhatCannotBeItSaysSo() {
        assertTrue(assertThrows(IllegalArgumentException.class, () -> SimulatedMachine.draw(1, List.of("rust")))
                .getMessage().endsWith("rust"));
        assertThrows(IllegalArgumentException.class, () -> SimulatedMachine.draw(1, List.of("rub", "rub")));
        assertThrows(IllegalArgumentException.class, () -> SimulatedMachine.draw(1, List.of("belt", "gear-mesh")));
        MachinePlan motor = MachinePlan.draw(MachinePlan.Form.MOTOR, 1);
        assertFalse(motor.canHold("belt"));
        assertThrows(IllegalArgumentException.class, () -> SimulatedMachine.draw(motor, 1, List.of("belt")));
    }
}
