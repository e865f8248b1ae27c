package dev.vibra.diagnosis;

import static dev.vibra.survey.SurveyedMachines.fan;
import static dev.vibra.survey.SurveyedMachines.hammering;
import static dev.vibra.survey.SurveyedMachines.knocking;
import static dev.vibra.survey.SurveyedMachines.line;
import static dev.vibra.survey.SurveyedMachines.quiet;
import static dev.vibra.survey.SurveyedMachines.radial;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.bearing.synthesis.GearMesh;
import dev.vibra.bearing.synthesis.Surroundings;
import dev.vibra.machine.Arrangement;
import dev.vibra.machine.BearingData;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.GearStage;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.machine.RotorData;
import dev.vibra.measuring.Direction;
import dev.vibra.point.PointExamination;
import dev.vibra.point.PointSurvey;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Faults put into signals are raised with what speaks for and against them; healthy machines raise none. */
class HypothesesTest {
    private static List<Finding> findings(MachineDescription machine, Map<MeasuringPoint, Waveform> recordings) {
        MachineDescription whole = machine;
        for (MeasuringPoint point : recordings.keySet()) {
            whole = whole.withPoint(point);
        }
        PointExamination examination = PointExamination.of(whole);
        List<PointSurvey> points = new ArrayList<>();
        recordings.forEach((point, wave) -> points.add(examination.examine(point, wave, Optional.empty())));
        return Hypotheses.weigh(new Evidence(whole, points));
    }

    private static List<Finding> threePoints(MachineDescription machine, double once, double twice, double axial) {
        Map<MeasuringPoint, Waveform> recordings = new LinkedHashMap<>();
        recordings.put(radial("DE-H"), line(line(quiet(20), 1, once), 2, twice).waveform());
        recordings.put(MeasuringPoint.of("DE-V").withDirection(Direction.VERTICAL),
                line(line(quiet(21), 1, 0.9 * once), 2, twice).waveform());
        recordings.put(MeasuringPoint.of("DE-A").withDirection(Direction.AXIAL), line(quiet(22), 1, axial).waveform());
        return findings(machine, recordings);
    }

    @Test
    void unbalanceIsRaisedWhereOneLineDominatesAHighRadialVelocity() {
        Finding finding = threePoints(fan(), 5, 0.4, 0.5).get(0);
        assertEquals("unbalance", finding.code());
        assertEquals(0.8, finding.confidence(), 1e-9);
        assertEquals(List.of("DE-H", "DE-V"), finding.points());
        assertEquals(Rank.DECIDE_NOW, finding.urgency(), "zone D");
        assertTrue(finding.explainsLevel());
        assertFalse(finding.decidedBy().isEmpty());
        assertFalse(finding.notMeasured().isEmpty());
        assertTrue(finding.alikeTo().contains("misalignment"));
    }

    @Test
    void twiceTheSpeedAndAnAxialLineSpeakAgainstUnbalance() {
        Finding finding = threePoints(fan(), 5, 2, 4).get(0);
        assertEquals(0.2, finding.confidence(), 1e-9);
        assertEquals(2, finding.against().size(), finding.against().toString());
    }

    @Test
    void anAxialLineIsASymptomOfAnOverhungRotor() {
        MachineDescription overhung = fan().withRotor(RotorData.unknown().withArrangement(Arrangement.OVERHUNG));
        Finding finding = threePoints(overhung, 5, 0.4, 4).get(0);
        assertEquals(0.7, finding.confidence(), 1e-9);
        assertEquals(List.of(), finding.against());
        assertEquals(List.of("DE-H", "DE-V", "DE-A"), finding.points(), "it explains the axial level too");
    }

    @Test
    void noLineIsSaidToCarryMoreThanTheWhole() {
        Finding finding = threePoints(fan(), 5, 0, 0.5).get(0);
        assertTrue(finding.evidence().get(0).contains("is all of the velocity"), finding.evidence().toString());
    }

    /** ISO 20816-3:2022, group 2, rigid: 2.7 mm/s at 5 Hz are zone B by velocity, and as 86 µm zone D. */
    @Test
    void theZoneOfADisplacementIsNotThatOfTheVelocity() {
        MachineDescription slow = MachineDescription.of("fan").withMachine(Machine.of(MachineKind.FAN)
                .withRatedPowerKilowatts(37).withSupport(Support.RIGID).withSpeed(RotationSpeed.ofHertz(5)));
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 12_800, 256_000).noise(0.01, 5)
                .tone(Math.sqrt(2) * 2 * Math.PI * 5 * 2.7e-3, 5, 0.3).waveform();
        Finding finding = findings(slow, Map.of(radial("P"), wave)).get(0);
        assertTrue(finding.evidence().get(0).contains("zone D by displacement"), finding.evidence().toString());
    }

    @Test
    void noSentenceCallsOneFaultUnableToShowTheLineOfAnother() {
        Finding finding = threePoints(fan(), 5, 0.4, 0.5).get(0);
        assertFalse(finding.evidence().toString().contains("would not leave"), finding.evidence().toString());
    }

    @Test
    void aSmoothMachineRaisesNothing() {
        assertEquals(List.of(), threePoints(fan(), 1, 0.05, 0.05));
    }

    @Test
    void aDefectPutInIsFoundAndExplainsItsKnocks() {
        BearingData bearing = new BearingData("DE", BearingGeometry.of(9, 7.94, 39.04, 0), RotatingRing.INNER);
        // Inner race of the published geometry: 5.4152 times the speed.
        Waveform defect = Synthesis.silence(Quantity.ACCELERATION, 12_800, 51_200).noise(0.5, 31)
                .impacts(ImpactTrain.of(5.4152 * 25, 10, 3000, 0.05).withModulation(25, 0.8).withJitter(0.005), 31)
                        .waveform();
        List<Finding> findings = findings(fan().withBearing(bearing), Map.of(radial("P").withBearing("DE"), defect));
        assertEquals(List.of("rolling-bearing-inner-race"), findings.stream().map(Finding::code).toList());
        assertEquals(0.7, findings.get(0).confidence(), 1e-9);
        assertEquals(Rank.PLAN_REMEDY, findings.get(0).urgency());
        Waveform noise = Synthesis.silence(Quantity.ACCELERATION, 12_800, 51_200).noise(0.5, 32).waveform();
        assertEquals(List.of(), findings(fan().withBearing(bearing), Map.of(radial("P").withBearing("DE"), noise)));
    }

    @Test
    void aDeepPulsationAtNoKnownRateIsAFinding() {
        BearingData bearing = new BearingData("DE", BearingGeometry.of(9, 7.94, 39.04, 0), RotatingRing.INNER);
        // 4.4 times the speed: between the published rates of outer race, 3.5848, and inner race, 5.4152.
        Waveform foreign = Synthesis.silence(Quantity.ACCELERATION, 12_800, 51_200).noise(0.5, 33)
                .impacts(ImpactTrain.of(4.4 * 25, 5, 3000, 0.05).withJitter(0.003), 33).waveform();
        List<Finding> findings = findings(fan().withBearing(bearing), Map.of(radial("P").withBearing("DE"), foreign));
        assertTrue(findings.stream().map(Finding::code).toList().contains("periodic-impacts"), findings.toString());
    }

    @Test
    void knocksWithoutAKnownSourceAreAFindingOfTheirOwn() {
        List<Finding> findings = findings(fan(), Map.of(radial("P"), hammering(2).waveform()));
        assertEquals(List.of("impulsiveness"), findings.stream().map(Finding::code).toList());
        assertEquals(Rank.WATCH, findings.get(0).urgency());
        assertFalse(findings.get(0).explainsLevel());
    }

    private static MachineDescription fanWithBearing() {
        return fan().withBearing(new BearingData("DE", BearingGeometry.of(9, 7.94, 39.04, 0), RotatingRing.INNER));
    }

    private static BearingSignal bearing() {
        return BearingSignal.of(BearingGeometry.of(9, 7.94, 39.04, 0).frequencies(25, 0)).withShaftTones(1);
    }

    @Test
    void aPulsationOfTheCageAloneIsARollingElementOrTheCage() {
        Waveform wave = bearing().withDefect(BearingElement.CAGE, 30).waveform(12_800, 102_400, 1);
        List<Finding> findings = findings(fanWithBearing(), Map.of(radial("P").withBearing("DE"), wave)).stream()
                .filter(one -> !one.code().equals("unbalance")).toList();
        assertEquals(List.of("rolling-bearing-rolling-element"), findings.stream().map(Finding::code).toList());
        assertEquals("rolling bearing, rolling element or cage, DE", findings.get(0).fault());
        assertEquals(List.of("rolling-bearing-cage"), findings.get(0).alikeTo());
        assertTrue(findings.get(0).confidence() <= 0.8);
    }

    @Test
    void aMeshIsTakenAwayAndAVaryingSpeedMadeSteadyBeforeABearingIsJudged() {
        BearingSignal signal = bearing().withDefect(BearingElement.OUTER_RACE, 9)
                .withSurroundings(Surroundings.ofNoise(0.5).withShaftTones(0.6)
                        .withGear(new GearMesh(23 * 25, 3, 25, 0.4)));
        MachineDescription geared = fanWithBearing().withTrain(DriveTrain.plain()
                .withGear(GearStage.of("g", List.of(23, 57))));
        Finding beside = findings(geared, Map.of(radial("P").withBearing("DE"),
                signal.waveform(12_800, 102_400, 2))).stream()
                .filter(one -> one.code().equals("rolling-bearing-outer-race")).findFirst().orElseThrow();
        assertTrue(beside.evidence().get(0).contains("without what repeats with the shafts"));
        SpeedProfile wander = new SpeedProfile(RotationSpeed.ofHertz(25), RotationSpeed.ofHertz(25), 8)
                .withWander(0.02, 0.25);
        Finding wandering = findings(fanWithBearing(), Map.of(radial("P").withBearing("DE"),
                bearing().withDefect(BearingElement.INNER_RACE, 8).waveform(12_800, wander, 3))).stream()
                .filter(one -> one.code().equals("rolling-bearing-inner-race")).findFirst().orElseThrow();
        assertTrue(wandering.evidence().get(0).contains("at the mean speed of a shaft that varies"));
    }

    @Test
    void knocksAtARateOfTheirOwnAreToldWithTheBearingsThatWouldExplainThem() {
        Finding finding = findings(fan(), Map.of(radial("P"), knocking(2).waveform())).get(0);
        assertEquals("periodic-impacts", finding.code());
        assertTrue(finding.alikeTo().contains("rolling-bearing-outer-race"));
        assertTrue(finding.evidence().get(0).matches("P: pulsation at 37\\.[23].*"), finding.evidence()::toString);
        assertEquals(Rank.WATCH, finding.urgency());
    }

    private static String words(MachineDescription machine, Waveform wave) {
        PointSurvey point = PointExamination.of(machine.withPoint(radial("P").withBearing("DE")))
                .examine(radial("P").withBearing("DE"), wave, Optional.empty());
        return Hypotheses.inWords(new Evidence(machine, List.of(point)));
    }

    @Test
    void whatIsNotLookedForDependsOnTheMachine() {
        Waveform wave = line(quiet(40), 1, 1).waveform();
        assertFalse(words(fan(), wave).contains("belts"));
        assertTrue(words(fan().withTrain(DriveTrain.plain().withBlades(7)), wave)
                .contains("blade or vane passing and flow"));
        assertTrue(words(fan().withTrain(DriveTrain.plain().withLineHertz(50)), wave)
                .contains("electrical faults of motor or generator"));
        assertTrue(words(fan(), wave).contains("not looked for: misalignment, "));
    }

    /** A velocity recording shows neither bearings nor knocks; gears hide knocks; nobody looked, nothing is cleared. */
    @Test
    void whatNoRecordingCouldShowWasNotLookedFor() {
        Waveform wave = line(quiet(40), 1, 1).waveform();
        String looked = words(fan(), wave).split(";")[0];
        assertEquals("looked for: unbalance, periodic knocks of unknown origin, knocks of unknown origin", looked);
        assertTrue(words(fan(), wave).endsWith("defects of rolling bearings (no geometry is given)"));
        BearingData bearing = new BearingData("DE", BearingGeometry.of(9, 7.94, 39.04, 0), RotatingRing.INNER);
        String velocity = words(fan().withBearing(bearing), Synthesis.silence(Quantity.VELOCITY, 12_800,
                51_200).noise(1e-5, 41).tone(1e-3, 25, 0).waveform());
        assertTrue(velocity.startsWith("looked for: unbalance; "), velocity);
        assertTrue(velocity.endsWith("defects of rolling bearings (no recording could tell), periodic knocks of unknown"
                + " origin (no envelope could be examined at a known speed), knocks (no sound recording of acceleration)"), velocity);
        MachineDescription geared = fan().withTrain(DriveTrain.plain().withGear(GearStage.of("g", List.of(23, 71))));
        assertTrue(words(geared, wave).endsWith("knocks (gears and pistons knock in health: only a change tells)"));
    }
}
