package dev.vibra.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.BearingGeometry;
import dev.vibra.bearing.RotatingRing;
import dev.vibra.quality.Steadiness;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import dev.vibra.severity.Zone;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.machine.BearingData;
import dev.vibra.survey.machine.GearData;
import dev.vibra.survey.machine.MachineDescription;
import dev.vibra.survey.machine.MeasuringPoint;
import dev.vibra.survey.machine.Mounting;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Unsound and unsteady recordings, change against a baseline, rates of other parts. */
class QualityAndChangeTest {
    private static final double RATE = 12_800;
    private static final int LENGTH = 51_200;

    private static MachineDescription.Builder pump() {
        return MachineDescription.named("pump").kind(MachineKind.BLOWER).ratedPowerKilowatts(37).support(Support.RIGID)
                .speed(RotationSpeed.ofHertz(25));
    }

    private static MeasuringPoint.Builder point() {
        return MeasuringPoint.of("P", "p.wav", Unit.M_PER_S2);
    }

    /** 75 Hz of given rms velocity in noise. */
    private static Synthesis tone(double millimetresPerSecond) {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).noise(0.05, 5)
                .tone(Math.sqrt(2) * 2 * Math.PI * 75 * millimetresPerSecond / 1e3, 75, 0.3);
    }

    @Test
    void insistingGivesTheVerdictAndSaysSo() {
        MachineDescription machine = pump().point(point().build()).build();
        Waveform wave = tone(3).dropOut(1, 0.05).waveform();
        Survey survey = Survey.begin(machine);
        assertTrue(survey.point(machine.points().get(0), wave).zone().isEmpty());
        PointSurvey insisted = survey.insisting().point(machine.points().get(0), wave);
        assertEquals(Zone.C, insisted.zone().orElseThrow());
        assertTrue(insisted.insisted());
        assertEquals("P: zone C, insisted on an unsound recording", insisted.toString());
        String advice = survey.conclude(List.of(insisted)).advice().toString();
        assertTrue(advice.contains("Record P again: numbers and verdict were insisted on"), advice);
        assertFalse(survey.insisting().point(machine.points().get(0), tone(3).waveform()).insisted());
    }

    @Test
    void noSignalGivesNothingHoweverMuchOneInsists() {
        MachineDescription machine = pump().point(point().build()).build();
        PointSurvey point = Survey.begin(machine).insisting().point(machine.points().get(0),
                Waveform.of(Unit.M_PER_S2, RATE, new double[LENGTH]));
        assertTrue(point.zone().isEmpty());
        assertFalse(point.insisted());
    }

    @Test
    void levelsComeFromTheLongestSteadyStretch() {
        double[] x = tone(2).waveform().samples();
        for (int i = (int) (0.7 * LENGTH); i < LENGTH; i++) {
            x[i] *= 1 + 3.0 * (i - 0.7 * LENGTH) / LENGTH;
        }
        MachineDescription machine = pump().point(point().build()).build();
        Waveform wave = Waveform.of(Unit.M_PER_S2, RATE, x);
        PointSurvey point = Survey.begin(machine).point(machine.points().get(0), wave);
        String remarks = point.recording().orElseThrow().quality().remarks().toString();
        assertTrue(remarks.contains("steady-stretch: levels and spectra are taken from 0 s to 3."), remarks);
        Waveform stretch = Steadiness.ofLevel(wave).orElseThrow().longestSteady().orElseThrow();
        double level = point.descriptor("acceleration-rms").orElseThrow();
        assertEquals(stretch.moments().rms(), level, 1e-12);
        assertTrue(level < 0.97 * wave.moments().rms(), level + " of " + wave.moments().rms());
    }

    @Test
    void aDoubtOfLowFrequenciesStopsVelocityButNotTheBearing() {
        BearingData bearing = new BearingData("DE", BearingGeometry.of(9, 7.94, 39.04, 0), RotatingRing.INNER);
        MachineDescription machine = pump().bearing(bearing).point(point().bearing("DE").build()).build();
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).noise(0.5, 31).tone(0.3, 2.5, 0)
                .impacts(ImpactTrain.of(5.4152 * 25, 10, 3000, 0.05).withModulation(25, 0.8).withJitter(0.005), 31)
                .waveform();
        PointSurvey point = Survey.begin(machine).point(machine.points().get(0), wave);
        assertEquals("[levels and severity: not determined, the recording is not sound (low-frequency-slope)]",
                point.omissions().toString());
        assertTrue(point.bearings().toString().contains("inner race"), point.bearings().toString());
        assertTrue(point.zone().isEmpty());
    }

    @Test
    void aHandHeldProbeIsRemarkedAndNotRefused() {
        MachineDescription machine = pump().point(point().mounting(Mounting.HAND_HELD).build()).build();
        PointSurvey point = Survey.begin(machine).point(machine.points().get(0), tone(2).waveform());
        assertTrue(point.sound());
        assertTrue(point.recording().orElseThrow().quality().remarks().stream()
                .anyMatch(remark -> remark.code().equals("mounting")));
    }

    /** ISO 20816-3:2022, group 2, rigid: B/C 2.8 mm/s; a quarter of it, 0.7 mm/s, matters. */
    @Test
    void aQuarterOfTheBoundaryMatters() {
        assertChange(1.2, false);
        assertChange(1.4, false);
        assertChange(1.2 - 0.05, true);
        assertChange(2.65, true);
        assertChange(2.5, false);
    }

    private static void assertChange(double reference, boolean matters) {
        MachineDescription machine = pump().point(point().build())
                .baseline("P", Map.of("velocity-rms-10-1000Hz", reference)).build();
        MachineSurvey survey = Survey.of(machine, Map.of("P", tone(1.88).waveform()));
        ChangeSurvey change = survey.points().get(0).changes().get(0);
        assertEquals(1, survey.points().get(0).changes().size());
        assertEquals(0.7, change.change().significantChange(), 1e-12);
        assertEquals(matters, change.change().isSignificant(), change.toString());
        assertEquals(reference + 0.7, change.setting().alarm(), 1e-9);
        assertEquals(4.5, change.setting().trip().orElseThrow(), 1e-9);
        assertEquals(matters, survey.advice().toString().contains("The change against the baseline matters at P"));
    }

    @Test
    void aMeshAtTheRateOfARaceIsNoDefect() {
        // Inner race of this bearing: 5.4152 times 25 Hz; a gear of 13 teeth at 5.4152*25/13 Hz meshes there.
        BearingData bearing = new BearingData("DE", BearingGeometry.of(9, 7.94, 39.04, 0), RotatingRing.INNER);
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).noise(0.5, 31)
                .impacts(ImpactTrain.of(5.4152 * 25, 10, 3000, 0.05), 31).waveform();
        MachineDescription.Builder without = pump().bearing(bearing).point(point().bearing("DE").build());
        assertFalse(Survey.of(without.build(), Map.of("P", wave)).findings().isEmpty());
        MachineDescription with = without.gear(new GearData("pinion", List.of(13, 31), 5.4152 * 25 / 13)).build();
        assertEquals(List.of(), Survey.of(with, Map.of("P", wave)).findings());
    }

    @Test
    void bladePassingIsMarkedWhereItStandsOut() {
        MachineDescription machine = pump().blades(7).point(point().build()).build();
        Waveform wave = tone(1).tone(2, 175, 0).waveform();
        List<EvidenceLine> lines = Survey.of(machine, Map.of("P", wave)).points().get(0).traces().orElseThrow()
                .velocityLines().stream().filter(line -> line.group().equals("blade passing")).toList();
        assertEquals(175, lines.get(0).hertz(), 0.05);
        assertEquals(List.of(true, false, false), lines.stream().map(EvidenceLine::found).toList());
    }
}
