package dev.vibra.survey;

import static dev.vibra.survey.SurveyedMachines.LENGTH;
import static dev.vibra.survey.SurveyedMachines.RATE;
import static dev.vibra.survey.SurveyedMachines.fan;
import static dev.vibra.survey.SurveyedMachines.hammering;
import static dev.vibra.survey.SurveyedMachines.knocking;
import static dev.vibra.survey.SurveyedMachines.line;
import static dev.vibra.survey.SurveyedMachines.quiet;
import static dev.vibra.survey.SurveyedMachines.radial;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.diagnosis.Finding;
import dev.vibra.diagnosis.Rank;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.GearStage;
import dev.vibra.machine.MachineDescription;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.CriterionRequest;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import dev.vibra.severity.Zone;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.AdviceStep.Kind;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** One condition of the machine: the worst of what is known, and never praise where something speaks against it. */
class ConditionTest {
    private static MachineSurvey survey(MachineDescription machine, Waveform wave) {
        return Survey.of(machine.withPoint(radial("P")), Map.of("P", wave));
    }

    private static List<Kind> kinds(MachineSurvey survey) {
        return survey.advice().stream().map(AdviceStep::kind).toList();
    }

    @Test
    void aHealthyMachineMayServeAsBaseline() {
        MachineSurvey survey = survey(fan(), line(quiet(1), 1, 1).waveform());
        assertEquals(Rank.NO_OBJECTION, survey.condition().rank().orElseThrow(), survey.condition().toString());
        assertTrue(survey.condition().mayServeAsBaseline());
        assertTrue(kinds(survey).contains(Kind.BASELINE));
    }

    @Test
    void knocksOfUnknownOriginAreWatchedAndNoBaseline() {
        MachineSurvey survey = survey(fan(), knocking(2).waveform());
        assertEquals(Zone.A, survey.zone().orElseThrow());
        assertEquals(List.of("periodic-impacts"), survey.findings().stream().map(Finding::code).toList());
        assertEquals(Rank.WATCH, survey.condition().rank().orElseThrow());
        assertFalse(survey.condition().mayServeAsBaseline());
        assertFalse(kinds(survey).contains(Kind.BASELINE));
    }

    @Test
    void gearsAndPistonsKnockInHealth() {
        MachineDescription geared = fan().withTrain(DriveTrain.plain().withGear(GearStage.of("g", List.of(23, 71))));
        assertTrue(survey(geared, hammering(3).waveform()).findings().stream()
                .noneMatch(one -> one.code().contains("impuls")), "no knocks of unknown origin where gears may knock");
        MachineDescription pistons = MachineDescription.of("c")
                .withMachine(Machine.of(MachineKind.RECIPROCATING_COMPRESSOR));
        assertEquals(List.of(), survey(pistons, hammering(3).waveform()).findings());
        // Knocks in step with the shaft may be a rub or a loose part: one point alone tells neither, and names both.
        Finding knocks = survey(fan(), hammering(3).waveform()).findings().get(0);
        assertEquals("impulsiveness", knocks.code());
        assertTrue(knocks.alikeTo().containsAll(List.of("rub", "looseness")), () -> "" + knocks.alikeTo());
        assertEquals(1, survey(fan(), hammering(3).waveform()).findings().size());
        // A rate that nothing in the machine makes is no knocking in health.
        assertEquals(List.of("periodic-impacts"), survey(geared, knocking(3).waveform()).findings().stream()
                .map(Finding::code).toList());
    }

    @Test
    void aVibrationTooSmallForARunningMachineIsDoubted() {
        double[] samples = line(quiet(1), 1, 1).waveform().samples();
        for (int i = 0; i < samples.length; i++) {
            samples[i] *= 1e-4;
        }
        MachineSurvey survey = survey(fan(), Waveform.ofSi(Quantity.ACCELERATION, RATE, samples));
        assertEquals(Zone.A, survey.zone().orElseThrow());
        assertEquals(Rank.WATCH, survey.condition().rank().orElseThrow());
        assertFalse(survey.condition().mayServeAsBaseline());
    }

    @Test
    void oneSingleKnockIsRecordedAgain() {
        double[] samples = line(quiet(4), 1, 1).waveform().samples();
        for (int i = 0; i < 64; i++) {
            samples[LENGTH / 2 + i] += 12 * Math.exp(-i / 8.0) * Math.sin(0.9 * i);
        }
        MachineSurvey survey = survey(fan(), Waveform.ofSi(Quantity.ACCELERATION, RATE, samples));
        assertEquals(Rank.WATCH, survey.condition().rank().orElseThrow(), survey.condition().toString());
        assertTrue(kinds(survey).contains(Kind.RECORD_AGAIN));
        assertEquals(List.of(), survey.findings());
    }

    @Test
    void aRecordingThatIsSteadyInPartOnlyIsNotPraised() {
        double[] samples = line(quiet(4), 1, 1).waveform().samples();
        for (int i = (int) (0.6 * LENGTH); i < LENGTH; i++) {
            samples[i] *= 3;
        }
        MachineSurvey survey = survey(fan(), Waveform.ofSi(Quantity.ACCELERATION, RATE, samples));
        assertEquals(Zone.A, survey.zone().orElseThrow());
        assertEquals(Rank.WATCH, survey.condition().rank().orElseThrow());
        assertFalse(survey.condition().mayServeAsBaseline());
        assertEquals(List.of(), survey.findings(), "two levels in one recording are no knocks");
        assertTrue(survey.points().get(0).recording().orElseThrow().quality().toString().contains("3.0 times"),
                survey.points().get(0).recording().toString());
    }

    @Test
    void withoutAnyVerdictItIsNotDetermined() {
        MachineSurvey survey = survey(MachineDescription.of("unknown"), line(quiet(5), 1, 1).waveform());
        assertTrue(survey.condition().rank().isEmpty());
        assertEquals("not determined", survey.condition().word());
        assertFalse(survey.condition().mayServeAsBaseline());
    }

    @Test
    void zonesRankAsTheStandardsWordsDo() {
        // ISO 20816-3:2022, group 2, rigid: 1.4 / 2.8 / 4.5 mm/s.
        Map<Double, Rank> ranks = Map.of(1.0, Rank.NO_OBJECTION, 2.0, Rank.NO_OBJECTION, 3.5, Rank.PLAN_REMEDY,
                7.0, Rank.DECIDE_NOW);
        ranks.forEach((velocity, rank) -> assertEquals(rank,
                survey(fan(), line(quiet(6), 3, velocity).waveform()).condition().rank().orElseThrow(),
                velocity + " mm/s"));
    }

    @Test
    void aRiseThatMattersIsWatchedWhateverTheZone() {
        MachineDescription machine = fan().withBaseline("P", Map.of("velocity-rms-10-1000Hz", 1.2));
        MachineSurvey survey = survey(machine, line(quiet(7), 3, 2.4).waveform());
        assertEquals(Zone.B, survey.zone().orElseThrow());
        assertEquals(Rank.WATCH, survey.condition().rank().orElseThrow());
        assertTrue(kinds(survey).contains(Kind.CHANGE));
    }

    @Test
    void aRefusedPointMakesItAtLeastWatch() {
        MachineDescription machine = fan().withPoint(radial("P")).withPoint(radial("Q"));
        MachineSurvey survey = Survey.of(machine, Map.of("P", line(quiet(8), 1, 1).waveform(),
                "Q", line(quiet(9), 1, 1).dropOut(1, 0.1).waveform()));
        assertEquals(Rank.WATCH, survey.condition().rank().orElseThrow());
        assertFalse(survey.condition().mayServeAsBaseline());
        MachineSurvey missing = Survey.of(machine, Map.of("P", line(quiet(8), 1, 1).waveform()));
        assertEquals(Rank.WATCH, missing.condition().rank().orElseThrow());
    }

    @Test
    void aMachineAtStandstillIsSaidAndNotPraised() {
        Waveform hum = quiet(10).tone(0.05, 50, 0).tone(0.05, 100, 0).waveform();
        MachineSurvey survey = survey(fan().withTrain(DriveTrain.plain().withLineHertz(50)), hum);
        assertEquals(Zone.A, survey.zone().orElseThrow());
        assertEquals(Rank.WATCH, survey.condition().rank().orElseThrow(), survey.condition().toString());
        assertTrue(kinds(survey).contains(Kind.STANDSTILL));
        assertFalse(survey.condition().mayServeAsBaseline());
    }

    @Test
    void standstillNeverLowersAZone() {
        Waveform loud = Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).noise(40, 11).waveform();
        MachineSurvey survey = survey(fan(), loud);
        assertEquals(Zone.D, survey.zone().orElseThrow());
        assertEquals(Rank.DECIDE_NOW, survey.condition().rank().orElseThrow());
    }

    @Test
    void noKindOfAdviceStandsTwiceAndTheCautionIsLast() {
        for (MachineSurvey survey : List.of(survey(fan(), knocking(12).waveform()),
                survey(fan(), line(quiet(13), 1, 6).waveform()), survey(fan(), quiet(14).waveform()))) {
            List<Kind> kinds = kinds(survey);
            assertEquals(kinds.size(), kinds.stream().distinct().count(), kinds.toString());
            assertEquals(Kind.CAUTION, kinds.get(kinds.size() - 1));
            String text = survey.advice().stream().map(AdviceStep::text).collect(Collectors.joining(" "));
            assertFalse(text.contains("Nothing speaks against")
                    && survey.condition().rank().orElseThrow() != Rank.NO_OBJECTION, text);
        }
    }

    @Test
    void aLevelThatNoFindingExplainsNamesItsLines() {
        MachineDescription machine = fan();
        MachineSurvey survey = survey(machine, line(line(quiet(15), 1, 1), 6.37, 5).waveform());
        assertEquals(1, survey.unexplained().size());
        assertEquals(6.37, survey.unexplained().get(0).lines().get(0).order().orElseThrow(), 0.01);
        assertEquals(List.of(), survey(machine, line(quiet(16), 1, 5).waveform()).unexplained(),
                "unbalance explains it");
    }

    /** 3.5 mm/s at 25 Hz beside a speed given as 33 Hz: what is wrong is more likely the speed than the sensor. */
    @Test
    void aSpeedThatNoLineFitsIsDoubtedBeforeTheSensor() {
        Machine plate = fan().machine().withSpeed(RotationSpeed.ofHertz(33));
        MachineSurvey survey = survey(fan().withMachine(plate), line(quiet(17), 1, 3.5).waveform());
        String reasons = survey.condition().because().toString();
        assertTrue(reasons.contains("the speed given may be wrong (3.50 mm/s rms at 25"), reasons);
    }

    @Test
    void aCriterionOutOfScopeIsSaidWithTheCondition() {
        MachineDescription pump = MachineDescription.of("pump").withMachine(Machine.of(MachineKind.PUMP)
                .withRatedPowerKilowatts(75).withSupport(Support.RIGID).withSpeed(SurveyedMachines.SPEED))
                .withCriterion(CriterionRequest.of("ISO 20816-3"));
        MachineSurvey survey = survey(pump, line(quiet(18), 1, 1).waveform());
        assertEquals(Rank.WATCH, survey.condition().rank().orElseThrow());
        String reason = survey.condition().because().get(0);
        assertTrue(reason.startsWith("judged out of scope, as requested: ISO 20816-3:2022"), reason);
    }

    @Test
    void knocksOfGearsAreNotKeptSilent() {
        MachineDescription geared = fan().withTrain(DriveTrain.plain().withGear(GearStage.of("g", List.of(23, 71))));
        String reasons = survey(geared, knocking(3).waveform()).condition().because().toString();
        assertTrue(reasons.contains("which gears and pistons make in health too"), reasons);
    }

    @Test
    void aVerdictThatLacksAFactAsksForNoOtherRecording() {
        MachineSurvey survey = survey(MachineDescription.of("unknown"), line(quiet(5), 1, 1).waveform());
        String advice = survey.advice().get(0).text();
        assertFalse(advice.contains("record"), advice);
        MachineSurvey refused = survey(fan(), line(quiet(9), 1, 1).dropOut(1, 0.1).waveform());
        assertTrue(refused.advice().toString().contains("Record P again: nothing was concluded (drop-out"),
                refused.advice().toString());
    }
}
