package dev.vibra.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.BearingGeometry;
import dev.vibra.bearing.RotatingRing;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.severity.CriterionRequest;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import dev.vibra.severity.Zone;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.machine.BearingData;
import dev.vibra.survey.machine.Direction;
import dev.vibra.survey.machine.GearData;
import dev.vibra.survey.machine.MachineDescription;
import dev.vibra.survey.machine.MeasuringPoint;
import dev.vibra.survey.machine.Tachometer;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A machine of known signals: levels by closed form, zones by the published table. */
class SurveyTest {
    private static final double RATE = 6400;
    private static final RotationSpeed SPEED = RotationSpeed.ofHertz(25);

    private static MachineDescription.Builder pump() {
        return MachineDescription.named("pump").kind(MachineKind.BLOWER).ratedPowerKilowatts(37).support(Support.RIGID)
                .speed(SPEED);
    }

    private static MeasuringPoint point(String id, Direction direction) {
        return MeasuringPoint.of(id, id + ".wav", Unit.M_PER_S2).direction(direction).expandedUncertaintyPercent(5)
                .build();
    }

    /** Acceleration of a line of given velocity at a multiple of the speed: {@code √2·2πf·v}. */
    private static Synthesis line(Synthesis signal, double order, double velocityMillimetresPerSecond) {
        double hertz = SPEED.hertzOfOrder(order);
        return signal.tone(Math.sqrt(2) * 2 * Math.PI * hertz * velocityMillimetresPerSecond / 1e3, hertz, 0.3);
    }

    private static Synthesis quiet(long seed) {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, 4 * (int) RATE).noise(0.02, seed);
    }

    private static PointSurvey survey(Waveform wave, MachineDescription.Builder machine) {
        return Survey.of(machine.point(point("DE-H", Direction.HORIZONTAL)).build(), Map.of("DE-H", wave)).points()
                .get(0);
    }

    @Test
    void levelsOfALineAreThoseOfTheClosedForm() {
        Synthesis silence = Synthesis.silence(Quantity.ACCELERATION, RATE, 4 * (int) RATE).noise(1e-4, 1);
        PointSurvey point = survey(line(silence, 1, 3).waveform(), pump());
        double acceleration = 3e-3 * 2 * Math.PI * 25;
        assertEquals(acceleration, point.descriptor("acceleration-rms").orElseThrow(), 1e-3 * acceleration);
        assertEquals(1.5, point.descriptor("kurtosis").orElseThrow(), 0.01, "kurtosis of a sine");
        // The chain of ISO 2954:2012 passes 25 Hz with 1/sqrt(1 + (10/25)^6) = 0.99796.
        assertEquals(3 * 0.99796, point.descriptor("velocity-rms-10-1000Hz").orElseThrow(), 0.003);
        assertEquals(3, point.descriptor("velocity-rms-1x").orElseThrow(), 0.003);
        double displacement = 2 * Math.sqrt(2) * 3e-3 / (2 * Math.PI * 25) * 1e6;
        assertEquals(displacement, point.descriptor("displacement-peak-to-peak-10-1000Hz").orElseThrow(),
                0.001 * displacement);
        assertEquals(25, point.spectrumPeaks().get(0).frequencyHertz(), 0.01);
        assertEquals("recording", point.speed().source());
        assertEquals(25, point.speed().speed().orElseThrow().hertz(), 0.01);
    }

    @Test
    void zonesAreThoseOfThePublishedTable() {
        // ISO 20816-3:2022, group 2 (above 15 kW to 300 kW), rigid: 1.4 / 2.8 / 4.5 mm/s.
        double[] velocities = {1.3, 1.6, 2.9, 5};
        Zone[] zones = {Zone.A, Zone.B, Zone.C, Zone.D};
        for (int i = 0; i < zones.length; i++) {
            // At 3 times the speed the chain passes 0.999997 and displacement stays far below its limits.
            PointSurvey point = survey(line(quiet(i), 3, velocities[i]).waveform(), pump());
            assertEquals(zones[i], point.zone().orElseThrow(), velocities[i] + " mm/s");
        }
    }

    @Test
    void verdictCarriesTheUncertaintyOfThePoint() {
        PointSurvey point = survey(line(quiet(5), 3, 2.75).waveform(), pump());
        var deciding = point.severity().orElseThrow().deciding();
        assertEquals(0.05 * 2.75, deciding.expandedUncertainty().orElseThrow(), 0.001);
        assertEquals(List.of(Zone.B, Zone.C), deciding.zonesWithinUncertainty());
    }

    @Test
    void withoutSupportBothAreJudgedAndTheWorseDecides() {
        MachineDescription.Builder machine = MachineDescription.named("pump").kind(MachineKind.BLOWER)
                .ratedPowerKilowatts(37).speed(SPEED);
        PointSurvey point = survey(line(quiet(6), 3, 2.0).waveform(), machine);
        assertEquals(4, point.severity().orElseThrow().judgements().size(), "two supports, two quantities");
        assertEquals(Zone.B, point.zone().orElseThrow());
    }

    @Test
    void aFactGivenWrongIsNotTreatedAsNotGiven() {
        PointSurvey point = survey(line(quiet(7), 3, 2.0).waveform(), MachineDescription.named("pump").speed(SPEED)
                .kind(MachineKind.BLOWER).support(Support.RIGID).faulty("ratedPowerKilowatts"));
        assertTrue(point.zone().isEmpty());
        assertTrue(point.omissions().toString().contains(
                "severity: not determined, the criterion depends on ratedPowerKilowatts"), point.omissions()
                        .toString());
        assertEquals(2.0, point.descriptor("velocity-rms-10-1000Hz").orElseThrow(), 0.01, "levels are still measured");
    }

    @Test
    void anUnsoundRecordingGetsNoLevelAndNoZone() {
        PointSurvey point = survey(line(quiet(8), 1, 3).dropOut(1, 0.1).waveform(), pump());
        assertFalse(point.sound());
        assertTrue(point.zone().isEmpty());
        assertEquals(List.of(), point.descriptors());
        assertEquals(List.of(new Omission("levels, severity and bearings", "the recording is not sound (drop-out)")),
                point.omissions());
        assertTrue(point.traces().orElseThrow().velocity().isEmpty());
    }

    @Test
    void aConstantRecordingIsUnsound() {
        PointSurvey point = survey(Waveform.of(Unit.M_PER_S2, RATE, new double[6400]), pump());
        assertEquals("constant", point.recording().orElseThrow().quality().remarks().get(0).code());
        assertTrue(point.zone().isEmpty());
    }

    @Test
    void aRecordingTooShortToConcludeFromSaysSo() {
        PointSurvey point = survey(line(quiet(9), 1, 3).waveform().part(0, 640), pump());
        assertTrue(point.zone().isEmpty());
        assertEquals("[levels, severity and bearings: not determined, the recording is not sound (too-short)]",
                point.omissions().toString());
    }

    @Test
    void aRecordingTooSlowForTheBandIsNotJudged() {
        Waveform slow = Synthesis.silence(Quantity.ACCELERATION, 1000, 8000).noise(0.02, 9).tone(1, 25, 0).waveform();
        PointSurvey point = survey(slow, pump());
        assertTrue(point.zone().isEmpty());
        String omissions = point.omissions().toString();
        assertTrue(omissions.contains("velocity-rms-10-1000Hz: not determined, band must be at or below"), omissions);
        assertTrue(omissions.contains("severity: not determined, none of the levels"), omissions);
    }

    @Test
    void withoutSpeedWhatNeedsItIsNotDetermined() {
        MachineDescription.Builder machine =
                MachineDescription.named("any").kind(MachineKind.BLOWER).ratedPowerKilowatts(37).support(Support.RIGID);
        PointSurvey point = survey(line(quiet(10), 1, 3).waveform(), machine);
        assertEquals("not determined", point.speed().source());
        assertTrue(point.descriptor("velocity-rms-1x").isEmpty());
        assertTrue(point.omissions().stream().anyMatch(one -> one.part().equals("speed")));
        assertEquals(Zone.C, point.zone().orElseThrow());
    }

    @Test
    void aRecordingOfVelocityIsJudgedWithoutAccelerationDescriptors() {
        Waveform velocity = Synthesis.silence(Quantity.VELOCITY, RATE, 25_600).noise(1e-5, 3)
                .tone(Math.sqrt(2) * 3e-3, 75, 0).waveform();
        MachineDescription machine = pump().point(MeasuringPoint.of("V", "v.wav", Unit.MM_PER_S).build()).build();
        PointSurvey point = Survey.of(machine, Map.of("V", velocity)).points().get(0);
        assertEquals(3, point.descriptor("velocity-rms-10-1000Hz").orElseThrow(), 0.01);
        assertEquals(Zone.C, point.zone().orElseThrow());
        assertTrue(point.descriptor("acceleration-rms").isEmpty());
    }

    @Test
    void theWorstPointDecidesAndAMissingOneIsSaid() {
        MachineDescription machine = pump().point(point("DE-H", Direction.HORIZONTAL))
                .point(point("DE-V", Direction.VERTICAL)).point(point("DE-A", Direction.AXIAL)).build();
        MachineSurvey survey = Survey.of(machine, Map.of("DE-H", line(quiet(11), 3, 1).waveform(),
                "DE-V", line(quiet(12), 3, 3).waveform()));
        assertEquals(Zone.C, survey.zone().orElseThrow());
        assertEquals("DE-A: zone not determined", survey.points().get(2).toString());
        assertEquals("[recording: not determined, there is no recording of this point]",
                survey.points().get(2).omissions().toString());
        assertTrue(survey.advice().toString().contains("Record DE-A again"), survey.advice().toString());
    }

    @Test
    void whatIsNotPartOfThisVersionIsSaid() {
        MeasuringPoint point = MeasuringPoint.of("DE-H", "a.wav", Unit.M_PER_S2).tachometer(new Tachometer("t.wav", 1))
                .build();
        MachineDescription machine = pump().blades(7).gear(new GearData("reducer", List.of(23, 71), 25))
                .baseline("DE-H", Map.of("kurtosis", 3.0)).point(point).build();
        MachineSurvey survey = Survey.of(machine, Map.of("DE-H", quiet(13).waveform()));
        List<String> parts = survey.omissions().stream().map(Omission::part).toList();
        assertTrue(parts.containsAll(List.of("gears", "blade passing", "balancing")),
                parts.toString());
        assertTrue(survey.points().get(0).omissions().contains(new Omission("change of kurtosis",
                "no criterion in force says which change of it matters")),
                survey.points().get(0).omissions().toString());
        assertTrue(survey.points().get(0).omissions().contains(new Omission("tachometer", "t.wav was not read")));
    }

    @Test
    void aRequestedCriterionIsFollowed() {
        MachineDescription.Builder machine = MachineDescription.named("motor").kind(MachineKind.ELECTRIC_MOTOR)
                .ratedPowerKilowatts(11).speed(SPEED).criterion(CriterionRequest.of("ISO 10816-1:1995"));
        // Class I, electrical motors up to 15 kW: 0.71 / 1.8 / 4.5 mm/s.
        PointSurvey point = survey(line(quiet(14), 3, 2.0).waveform(), machine);
        assertEquals(Zone.C, point.zone().orElseThrow());
        assertEquals("ISO 10816-1:1995", point.severity().orElseThrow().deciding().criterion().standard());
    }

    @Test
    void aRecordingOfAnotherQuantityIsRefused() {
        Survey survey = Survey.begin(pump().build());
        Waveform velocity = Waveform.of(Unit.MM_PER_S, RATE, 1, 2, 3);
        IllegalArgumentException failure = assertThrows(IllegalArgumentException.class,
                () -> survey.point(point("DE-H", Direction.AXIAL), velocity));
        assertEquals("recording of DE-H must measure acceleration: velocity", failure.getMessage());
    }

    @Test
    void unbalanceIsRaisedWhereOneLineDominatesAHighRadialVelocity() {
        MachineSurvey survey = threePoints(5, 0.4, 0.5);
        Finding finding = survey.findings().get(0);
        assertEquals("unbalance (belief 0.8) at DE-H, DE-V", finding.toString());
        assertTrue(finding.evidence().get(0)
                .matches("DE-H: 1\u00d7 carries (5|5\\.0.) of 5(\\.0.)? mm/s rms \\(radial, zone D\\)"),
                finding.evidence().get(0));
        assertFalse(finding.against().isEmpty());
    }

    @Test
    void twiceTheSpeedAndAnAxialLineSpeakAgainstUnbalance() {
        Finding finding = threePoints(5, 2, 4).findings().get(0);
        assertEquals(0.2, finding.belief(), 1e-9);
        assertEquals(3, finding.against().size());
    }

    @Test
    void aSmoothMachineRaisesNothing() {
        assertEquals(List.of(), threePoints(1, 0.05, 0.05).findings());
    }

    private static MachineSurvey threePoints(double once, double twice, double axial) {
        MachineDescription machine = pump().point(point("DE-H", Direction.HORIZONTAL))
                .point(point("DE-V", Direction.VERTICAL)).point(point("DE-A", Direction.AXIAL)).build();
        return Survey.of(machine, Map.of("DE-H", line(line(quiet(20), 1, once), 2, twice).waveform(),
                "DE-V", line(line(quiet(21), 1, 0.9 * once), 2, twice).waveform(),
                "DE-A", line(quiet(22), 1, axial).waveform()));
    }

    @Test
    void aResultCanBeShippedBetweenMachines() throws IOException, ClassNotFoundException {
        MachineDescription machine = pump().bearing(new BearingData("DE", BearingGeometry.of(9, 7.94, 39.04, 0),
                RotatingRing.INNER)).point(MeasuringPoint.of("DE-H", "a.wav", Unit.M_PER_S2).bearing("DE").build())
                        .build();
        MachineSurvey survey = Survey.of(machine, Map.of("DE-H", line(quiet(30), 1, 3).waveform()));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(survey);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            MachineSurvey back = (MachineSurvey) in.readObject();
            assertEquals(survey.toString(), back.toString());
            assertEquals(survey.points().get(0).descriptors(), back.points().get(0).descriptors());
            assertEquals(survey.points().get(0).bearings().toString(), back.points().get(0).bearings().toString());
            assertEquals(survey.points().get(0).traces().orElseThrow().waveform(),
                    back.points().get(0).traces().orElseThrow().waveform());
        }
    }

    @Test
    void aDefectPutInIsFoundAndADefectOnAnotherMachineIsNot() {
        MachineDescription machine = pump().bearing(new BearingData("DE", BearingGeometry.of(9, 7.94, 39.04, 0),
                RotatingRing.INNER)).point(MeasuringPoint.of("DE-H", "a.wav", Unit.M_PER_S2).bearing("DE").build())
                        .build();
        // Inner race of the published geometry: 5.4152 times the speed.
        Waveform defect = Synthesis.silence(Quantity.ACCELERATION, 12_800, 51_200).noise(0.5, 31)
                .impacts(ImpactTrain.of(5.4152 * 25, 10, 3000, 0.05).withModulation(25, 0.8).withJitter(0.005), 31)
                        .waveform();
        MachineSurvey survey = Survey.of(machine, Map.of("DE-H", defect));
        assertEquals("[rolling bearing, inner race, DE (belief 0.7) at DE-H]", survey.findings().toString());
        assertTrue(survey.advice().toString().contains("it does not clear the bearing"), survey.advice().toString());
        Traces traces = survey.points().get(0).traces().orElseThrow();
        assertTrue(traces.envelopeLines().stream().anyMatch(one -> one.group().equals("inner race") && one.found()));
        Waveform noise = Synthesis.silence(Quantity.ACCELERATION, 12_800, 51_200).noise(0.5, 32).waveform();
        assertEquals(List.of(), Survey.of(machine, Map.of("DE-H", noise)).findings());
    }

    @Test
    void aBearingWhoseGeometryIsWrongIsNotDetermined() {
        MachineDescription machine = pump().faulty("bearings")
                .point(MeasuringPoint.of("DE-H", "a.wav", Unit.M_PER_S2).bearing("DE").build()).build();
        PointSurvey point = Survey.of(machine, Map.of("DE-H", quiet(33).waveform())).points().get(0);
        assertTrue(point.omissions().toString().contains(
                "bearings: not determined, the geometry of bearing \"DE\" is given with an error"), point.omissions()
                        .toString());
    }
}
