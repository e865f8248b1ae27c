package dev.vibra.point;

import static dev.vibra.survey.SurveyedMachines.LENGTH;
import static dev.vibra.survey.SurveyedMachines.RATE;
import static dev.vibra.survey.SurveyedMachines.SPEED;
import static dev.vibra.survey.SurveyedMachines.fan;
import static dev.vibra.survey.SurveyedMachines.line;
import static dev.vibra.survey.SurveyedMachines.quiet;
import static dev.vibra.survey.SurveyedMachines.radial;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.descriptor.Descriptors;
import dev.vibra.machine.BearingData;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.GearStage;
import dev.vibra.machine.MachineDescription.Fact;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MachinePart;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.measuring.Mounting;
import dev.vibra.quality.Steadiness;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.CriterionRequest;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import dev.vibra.severity.Verdict;
import dev.vibra.severity.Zone;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What a recording is good for, which limits are measured and judged, by which criterion. */
class PointExaminationTest {
    private static final BearingData BEARING =
            new BearingData("DE", BearingGeometry.of(9, 7.94, 39.04, 0), RotatingRing.INNER);

    private static PointSurvey examine(MachineDescription machine, MeasuringPoint point, Waveform wave) {
        return PointExamination.of(machine.withPoint(point)).examine(point, wave, Optional.empty());
    }

    private static boolean omits(PointSurvey point, Omission.Subject subject) {
        return point.omissions().stream().anyMatch(one -> one.subject() == subject);
    }

    /** What no machine does counts as no recording; zeros are a recording that isn't sound. */
    @Test
    void aRecordingThatNoMachineMakesIsRefused() {
        double[] samples = quiet(1).waveform().samples();
        for (double factor : new double[] {1e-300, 1e-200, 1e-100, 1e40, 1e60}) {
            double[] scaled = Arrays.stream(samples).map(x -> x * factor).toArray();
            for (Quantity quantity : List.of(Quantity.ACCELERATION, Quantity.VELOCITY, Quantity.DISPLACEMENT)) {
                PointSurvey point = examine(fan(), radial("P"), Waveform.ofSi(quantity, RATE, scaled));
                assertTrue(point.refused() && point.recording().isEmpty());
                assertTrue(point.omissions().get(0).reason().endsWith("look at unit and scale"));
            }
        }
        assertTrue(examine(fan(), radial("P"), Waveform.ofSi(Quantity.ACCELERATION, RATE, new double[LENGTH]))
                .recording().isPresent());
    }

    @Test
    void aRecordingSampledTooSlowlyForAnyVibrationIsRefused() {
        for (double rate : new double[] {0.1, 1, 2, 4.9}) {
            for (int length : new int[] {1, 2, 10, 1000}) {
                PointSurvey point = examine(fan(), radial("P"), Waveform.ofSi(Quantity.ACCELERATION, rate,
                        Arrays.copyOf(quiet(1).waveform().samples(), length)));
                assertTrue(point.omissions().get(0).reason().startsWith("is sampled at "), point.omissions()
                        .toString());
            }
        }
        assertTrue(examine(fan(), radial("P"), Waveform.ofSi(Quantity.ACCELERATION, 5,
                Arrays.copyOf(quiet(1).waveform().samples(), 1000))).recording().isPresent());
    }

    /** Inner race of the published geometry: 5.4152 times the speed. */
    private static Synthesis innerRace() {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).noise(0.5, 31)
                .impacts(ImpactTrain.of(5.4152 * 25, 10, 3000, 0.05).withModulation(25, 0.8).withJitter(0.005), 31);
    }

    @Test
    void zonesAreThoseOfThePublishedTable() {
        // ISO 20816-3:2022, group 2 (above 15 kW to 300 kW), rigid: 1.4 / 2.8 / 4.5 mm/s.
        double[] velocities = {1.3, 1.6, 2.9, 5};
        for (Zone zone : Zone.values()) {
            // At 3 times the speed the chain passes 0.999997 and displacement stays far below its limits.
            PointSurvey point = examine(fan(), radial("P"),
                    line(quiet(zone.ordinal()), 3, velocities[zone.ordinal()]).waveform());
            assertEquals(zone, point.zone().orElseThrow());
        }
    }

    @Test
    void everyLimitOfTheCriterionIsMeasured() {
        // IEC 60034-14:2018, grade A, rigid, 132 to 280 mm: acceleration 4.4 mm/s·... is limited beside velocity.
        MachineDescription motor = MachineDescription.of("motor").withMachine(Machine.of(MachineKind.ELECTRIC_MOTOR)
                .withRatedPowerKilowatts(90).withShaftHeightMillimetres(280).withSupport(Support.RIGID)
                .withSpeed(SPEED)).withCriterion(CriterionRequest.of("IEC 60034-14").withGroup("grade A"));
        Waveform ringing = quiet(5).tone(8, 900, 0).waveform();
        PointSurvey point = examine(motor, radial("P"), ringing);
        Verdict verdict = point.severity().orElseThrow(() -> new AssertionError(point.omissions()));
        assertEquals(Set.of(Quantity.ACCELERATION, Quantity.VELOCITY, Quantity.DISPLACEMENT),
                EnumSet.copyOf(verdict.judgements().stream().map(one -> one.level().quantity()).toList()));
        assertEquals(List.of(), verdict.notJudged());
        assertTrue(verdict.isAcceptance());
        assertEquals("not accepted", verdict.rating());
        // 8 m/s² peak at 900 Hz, which the chain passes with 1/sqrt(1 + 0.9^6): above the limit of 2.8 m/s² rms.
        assertEquals(8 / Math.sqrt(2) / Math.sqrt(1 + Math.pow(0.9, 6)), verdict.deciding().value(), 0.02);
    }

    @Test
    void aLimitThatCannotBeMeasuredIsSaid() {
        Waveform slow = Synthesis.silence(Quantity.ACCELERATION, 1000, 8000).noise(0.02, 9).tone(1, 25, 0).waveform();
        PointSurvey point = examine(fan(), radial("P"), slow);
        assertTrue(point.severity().isEmpty());
        assertTrue(omits(point, Omission.Subject.LIMIT), point.omissions().toString());
        assertTrue(omits(point, Omission.Subject.SEVERITY), point.omissions().toString());
    }

    @Test
    void eachPartIsJudgedByItsOwnCriterion() {
        MachineDescription set = MachineDescription.of("pump set")
                .withMachine(Machine.unknown().withSupport(Support.RIGID).withSpeed(SPEED))
                .withPart(MachinePart.of("motor", Machine.of(MachineKind.ELECTRIC_MOTOR).withRatedPowerKilowatts(75)
                        .withShaftHeightMillimetres(280)))
                .withPart(MachinePart.of("pump", Machine.of(MachineKind.PUMP).withRatedPowerKilowatts(75)));
        Waveform wave = line(quiet(6), 3, 4.6).waveform();
        PointSurvey motor = examine(set, MeasuringPoint.of("M").withPart("motor"), wave);
        PointSurvey pump = examine(set, MeasuringPoint.of("P").withPart("pump"), wave);
        assertEquals("ISO 20816-3:2022", motor.severity().orElseThrow().deciding().criterion().standard());
        assertEquals("ISO 10816-7:2009", pump.severity().orElseThrow().deciding().criterion().standard());
        // ISO 10816-7:2009 up to 200 kW, mm/s: category I 2.5 / 4.0 / 6.6, II 3.2 / 5.1 / 8.5; the worse decides.
        assertEquals(Zone.C, pump.zone().orElseThrow());
        assertEquals(List.of(Zone.B, Zone.C), pump.severity().orElseThrow().zonesPossible());
        PointSurvey nowhere = examine(set, MeasuringPoint.of("N"), wave);
        assertTrue(omits(nowhere, Omission.Subject.SEVERITY), "a point of no part is not judged");
    }

    @Test
    void aCriterionAskedForHoldsForThePartsThatItCovers() {
        MachineDescription set = MachineDescription.of("pump set")
                .withMachine(Machine.unknown().withSupport(Support.RIGID).withSpeed(SPEED))
                .withCriterion(CriterionRequest.of("ISO 10816-7").withGroup("category I, up to 200 kW"))
                .withPart(MachinePart.of("motor", Machine.of(MachineKind.ELECTRIC_MOTOR).withRatedPowerKilowatts(75)
                        .withShaftHeightMillimetres(280)))
                .withPart(MachinePart.of("pump", Machine.of(MachineKind.PUMP).withRatedPowerKilowatts(75)));
        List<PartCriterion> criteria = PartCriterion.of(set);
        assertEquals(Set.of("ISO 20816-3:2022"), standards(criteria.get(0)));
        assertEquals(Set.of("ISO 10816-7:2009"), standards(criteria.get(1)));
    }

    private static Set<String> standards(PartCriterion criterion) {
        return criterion.choice().criteria().stream().map(Criterion::standard).collect(Collectors.toSet());
    }

    @Test
    void aFactGivenWrongIsNotTreatedAsNotGiven() {
        PointSurvey point = examine(fan().withFaulty(Fact.MACHINE), radial("P"), line(quiet(7), 3, 2.0).waveform());
        assertTrue(point.severity().isEmpty());
        assertTrue(omits(point, Omission.Subject.SEVERITY));
        assertEquals(2.0, point.description().value("velocity-rms-10-1000Hz").orElseThrow(), 0.01,
                "levels are still measured");
    }

    @Test
    void anUnsoundRecordingGivesNothing() {
        PointSurvey point = examine(fan(), radial("P"), line(quiet(8), 1, 3).dropOut(1, 0.1).waveform());
        assertFalse(point.sound());
        assertTrue(point.refused());
        assertTrue(point.severity().isEmpty());
        assertEquals(List.of(), point.description().numbers());
        assertEquals(Descriptors.standard().names(), List.copyOf(point.description().missing().keySet()));
        assertEquals("the recording is not sound (drop-out)", point.description().missing().get("kurtosis"));
        assertEquals(SpeedFound.Source.GIVEN, point.speed().source(), "none is read from an unsound recording");
    }

    @Test
    void aDoubtOfLowFrequenciesTakesVelocityOnly() {
        MeasuringPoint at = radial("P").withBearing("DE");
        PointSurvey point = examine(fan().withBearing(BEARING), at, innerRace().tone(0.3, 2.5, 0).waveform());
        assertEquals(Set.of(Aspect.MOTION), point.recording().orElseThrow().refused());
        assertTrue(point.severity().isEmpty());
        assertTrue(point.description().value("kurtosis").isPresent());
        assertTrue(point.description().value("velocity-rms-10-1000Hz").isEmpty());
        assertEquals("the recording is not sound (low-frequency-slope)",
                point.description().missing().get("velocity-rms-10-1000Hz"));
        assertEquals(Set.copyOf(Descriptors.standard().names()), Stream.concat(point.description().values().keySet()
                .stream(), point.description().missing().keySet().stream()).collect(Collectors.toSet()));
        assertTrue(point.showsBearingDefect());
    }

    @Test
    void insistingGivesTheVerdictAndSaysSo() {
        MachineDescription machine = fan().withPoint(radial("P"));
        Waveform wave = line(quiet(12), 3, 3).dropOut(1, 0.05).waveform();
        PointSurvey insisted = PointExamination.of(machine).insisting().examine(radial("P"), wave, Optional.empty());
        assertEquals(Zone.C, insisted.zone().orElseThrow());
        assertTrue(insisted.insisted());
        assertFalse(PointExamination.of(machine).insisting()
                .examine(radial("P"), line(quiet(12), 3, 3).waveform(), Optional.empty()).insisted());
        PointSurvey nothing = PointExamination.of(machine).insisting().examine(radial("P"),
                Waveform.of(Unit.M_PER_S2, RATE, new double[LENGTH]), Optional.empty());
        assertTrue(nothing.severity().isEmpty(), "no signal gives nothing however much one insists");
    }

    @Test
    void levelsComeFromTheLongestSteadyStretch() {
        double[] x = line(quiet(13), 3, 2).waveform().samples();
        for (int i = (int) (0.7 * LENGTH); i < LENGTH; i++) {
            x[i] *= 1 + 3.0 * (i - 0.7 * LENGTH) / LENGTH;
        }
        Waveform wave = Waveform.of(Unit.M_PER_S2, RATE, x);
        PointSurvey point = examine(fan(), radial("P"), wave);
        assertTrue(point.recording().orElseThrow().quality().remarks().stream()
                .anyMatch(remark -> remark.code().equals("steady-stretch")));
        Waveform stretch = Steadiness.ofLevel(wave).orElseThrow().longestSteady().orElseThrow();
        assertEquals(stretch.moments().rms(), point.description().value("acceleration-rms").orElseThrow(), 1e-12);
    }

    /** A sensor that dies: nothing is steadier than nothing, and no level is taken from it. */
    @Test
    void whatADeadSensorGivesIsNoSteadyStretch() {
        double[] x = line(quiet(13), 3, 2).waveform().samples();
        java.util.Arrays.fill(x, (int) (0.3 * LENGTH), LENGTH, 0);
        PointSurvey point = examine(fan(), radial("P"), Waveform.of(Unit.M_PER_S2, RATE, x));
        var remarks = point.recording().orElseThrow().quality().remarks();
        assertTrue(remarks.stream().noneMatch(remark -> remark.code().equals("steady-stretch")), remarks::toString);
        assertTrue(remarks.stream().anyMatch(remark -> remark.disqualifying()), remarks::toString);
        assertTrue(point.severity().isEmpty());
    }

    @Test
    void aHandHeldProbeIsRemarkedAndNotRefused() {
        PointSurvey point = examine(fan(), radial("P").withMounting(Mounting.HAND_HELD),
                line(quiet(14), 3, 2).waveform());
        assertTrue(point.sound());
        assertTrue(point.recording().orElseThrow().quality().remarks().stream()
                .anyMatch(remark -> remark.code().equals("mounting")));
    }

    @Test
    void theUncertaintyIsAlwaysThereAndHasTheSensorInIt() {
        Waveform wave = line(quiet(15), 3, 2.75).waveform();
        double untold = examine(fan(), radial("P"), wave).severity().orElseThrow().deciding().expandedUncertainty();
        double coarse = examine(fan(), radial("P").withExpandedUncertaintyPercent(20), wave).severity().orElseThrow()
                .deciding().expandedUncertainty();
        assertTrue(untold > 0.05 * 2.75, "default of sensor and mounting, chain: " + untold);
        // 20 % stated with k = 2 is 10 % standard; with many degrees of freedom k is 1.96 (JCGM 100, table G.2).
        assertTrue(coarse > 1.95 * 0.1 * 2.75, "a sensor of 20 % can't give less: " + coarse);
    }

    /** ISO 20816-3:2022, group 2, rigid: B/C 2.8 mm/s; a quarter of it, 0.7 mm/s, matters. */
    @Test
    void aQuarterOfTheBoundaryMatters() {
        Map<Double, Boolean> matters = Map.of(1.2, false, 1.4, false, 1.15, true, 2.65, true, 2.5, false);
        matters.forEach((reference, expected) -> {
            MachineDescription machine = fan().withBaseline("P", Map.of("velocity-rms-10-1000Hz", reference,
                    "kurtosis", 3.0));
            PointSurvey point = examine(machine, radial("P"), line(quiet(16), 3, 1.88).waveform());
            assertEquals(1, point.changes().size());
            ChangeSurvey change = point.changes().get(0);
            assertEquals(0.7, change.change().significantChange(), 1e-12);
            assertEquals(expected, change.change().isSignificant(), change.toString());
            assertEquals((reference + 0.7) / 1e3, change.setting().orElseThrow().alarm().si(), 1e-12);
            assertTrue(omits(point, Omission.Subject.CHANGE), "no criterion says which change of the kurtosis matters");
        });
    }

    @Test
    void aBaselineAboveTheTripLeavesTheChange() {
        // ISO 10816-1:1995, class I, caps no alarm; C/D is 4.5 mm/s.
        MachineDescription machine = MachineDescription.of("small").withMachine(Machine.of(MachineKind.OTHER)
                .withRatedPowerKilowatts(10).withSupport(Support.RIGID).withSpeed(SPEED))
                .withBaseline("P", Map.of("velocity-rms-10-1000Hz", 9.0));
        PointSurvey point = examine(machine, radial("P"), line(quiet(17), 3, 1.88).waveform());
        assertTrue(point.changes().get(0).change().isSignificant());
        assertTrue(point.changes().get(0).setting().isEmpty());
        assertFalse(point.changes().get(0).rose());
    }

    @Test
    void aMeshAtTheRateOfARaceIsNoDefect() {
        // A gear of 13 teeth at 5.4152·25/13 Hz meshes at the rate of the inner race.
        MeasuringPoint at = radial("P").withBearing("DE");
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).noise(0.5, 31)
                .impacts(ImpactTrain.of(5.4152 * 25, 10, 3000, 0.05), 31).waveform();
        assertTrue(examine(fan().withBearing(BEARING), at, wave).showsBearingDefect());
        MachineDescription geared = fan().withBearing(BEARING).withTrain(DriveTrain.plain()
                .withGear(GearStage.of("pinion", List.of(13, 31)).withInputHertz(5.4152 * 25 / 13)));
        assertFalse(examine(geared, at, wave).showsBearingDefect());
    }

    @Test
    void aBearingWhoseGeometryIsWrongIsNotDetermined() {
        PointSurvey point = examine(fan(), radial("P").withBearing("DE"), line(quiet(18), 1, 1).waveform());
        assertTrue(omits(point, Omission.Subject.BEARINGS));
    }

    @Test
    void aRecordingOfVelocityIsJudgedWithoutAccelerationDescriptors() {
        Waveform velocity = Synthesis.silence(Quantity.VELOCITY, RATE, LENGTH).noise(1e-5, 3)
                .tone(Math.sqrt(2) * 3e-3, 75, 0).waveform();
        PointSurvey point = examine(fan(), radial("P"), velocity);
        assertEquals(Zone.C, point.zone().orElseThrow());
        assertTrue(point.description().value("acceleration-rms").isEmpty());
        assertTrue(point.impulsiveness().isEmpty());
    }

    @Test
    void whatIsNoMotionIsRefused() {
        Waveform volts = Synthesis.silence(Quantity.VOLTAGE, RATE, LENGTH).noise(1, 1).waveform();
        assertThrows(IllegalArgumentException.class, () -> examine(fan(), radial("P"), volts));
    }
}
