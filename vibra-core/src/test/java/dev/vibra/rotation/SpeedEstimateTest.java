package dev.vibra.rotation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.lines.NoiseFloor;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.ConditionalLogit.Choice;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The truth is that of the synthesis, which knows nothing of the estimate. */
class SpeedEstimateTest {
    private static final double RATE = 12_800;
    private static final SpeedKnowledge NONE = SpeedKnowledge.none();

    private static Synthesis noise(double rms, long seed) {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, 51_200).noise(rms, seed);
    }

    /** Adds a line at a multiple of a speed, of a velocity in mm/s rms. */
    private static Synthesis order(Synthesis signal, double hertz, double order, double velocity) {
        return signal.tone(Math.sqrt(2) * 2e-3 * Math.PI * order * hertz * velocity, order * hertz, order);
    }

    private static SpeedKnowledge plate(double revolutionsPerMinute) {
        return NONE.withNominal(RotationSpeed.ofRevolutionsPerMinute(revolutionsPerMinute));
    }

    private static void assertSpeed(double revolutionsPerMinute, SpeedEstimate estimate) {
        assertEquals(revolutionsPerMinute, estimate.speed().orElseThrow(() -> new AssertionError(estimate.toString()))
                .revolutionsPerMinute(), 0.002 * revolutionsPerMinute, estimate.toString());
    }

    /** A smaller piece of {@link SpeedStudy}, with seeds of its own. */
    @Test
    void simulatedMachinesAreRightAsOftenAsTold() {
        SpeedScore score = new SpeedScore();
        for (int i = 0; i < 200; i++) {
            score.add(SimulatedMachine.draw(21, i), i);
        }
        for (SpeedScore.Known known : SpeedScore.Known.values()) {
            assertTrue(score.wrong(known) <= 0.01 * score.estimates(known), score.toString());
        }
        assertTrue(score.told(SpeedScore.Known.NOTHING) >= 0.3 * score.estimates(SpeedScore.Known.NOTHING),
                score.toString());
        assertTrue(score.told(SpeedScore.Known.PLATE) >= 0.75 * score.estimates(SpeedScore.Known.PLATE),
                score.toString());
        double told = score.confidence(9);
        assertEquals(told, score.right(9), 3 * Math.sqrt(told * (1 - told) / score.count(9)), score.toString());
        assertTrue(score.precision() > 0.9, score.toString());
    }

    @Test
    void outerRaceDefectDoesNotPassForTheShaft() {
        double hertz = 1485 / 60.0;
        ImpactTrain impacts = ImpactTrain.of(hertz * 3.075, 11, 3300, 0.04).withJitter(0.01);
        Waveform wave = order(order(noise(0.6, 14), hertz, 1, 1.3), hertz, 2, 0.3).impacts(impacts, 14).waveform();
        assertSpeed(1485, SpeedEstimate.of(wave, plate(1480)));
        SpeedEstimate blind = SpeedEstimate.of(wave);
        assertEquals(1485, blind.candidates().get(0).speed().revolutionsPerMinute(), 3, blind.toString());
    }

    @Test
    void halfOrdersDoNotHalveTheSpeed() {
        double hertz = 1460 / 60.0;
        Synthesis loose = noise(0.2, 3);
        for (int n = 1; n <= 10; n++) {
            loose = order(loose, hertz, n, 3.0 / n);
            loose = n <= 4 ? order(loose, hertz, n - 0.5, 0.9 / n) : loose;
        }
        SpeedCandidate best = SpeedEstimate.of(loose.waveform()).candidates().get(0);
        assertEquals(1460, best.speed().revolutionsPerMinute(), 1, best.toString());
        assertTrue(best.confidence() > 0.85, best.toString());
        assertEquals(List.of(1, 2, 3, 4, 5, 6, 7, 8, 9, 10), best.multiples());
        assertSpeed(1460, SpeedEstimate.of(loose.waveform(), plate(1480)));
    }

    @Test
    void loneLineIsACandidateAndWithAPlateASpeed() {
        Waveform wave = noise(0.03, 5).tone(1.3, 24.67, 0.4).waveform();
        SpeedEstimate blind = SpeedEstimate.of(wave);
        assertTrue(blind.speed().isEmpty(), blind.toString());
        assertEquals(24.67, blind.candidates().get(0).speed().hertz(), 0.01);
        assertTrue(blind.reason().startsWith("a line at 24.67 Hz, none at its multiples; "), blind.reason());
        assertSpeed(24.67 * 60, SpeedEstimate.of(wave, plate(1450)));
        assertTrue(SpeedEstimate.of(wave, plate(1000)).speed().isEmpty());
    }

    @Test
    void strongerSecondShaftIsNotTakenForAPlateThatItDoesNotFit() {
        Synthesis both = noise(0.2, 6);
        for (int n = 1; n <= 3; n++) {
            both = order(order(both, 24.3, n, 1.0 / n), 17.9, n, 3.0 / n);
        }
        assertSpeed(24.3 * 60, SpeedEstimate.of(both.waveform(), plate(1480)));
        assertSpeed(17.9 * 60, SpeedEstimate.of(both.waveform(), plate(1100)));
    }

    @ParameterizedTest
    @CsvSource({"1", "2", "3", "4", "5"})
    void noiseAloneTellsNoSpeed(long seed) {
        Waveform wave = noise(0.5, seed).waveform();
        for (SpeedKnowledge known : List.of(NONE, plate(1480), NONE.withMains(50).withInductionMotor())) {
            assertTrue(SpeedEstimate.of(wave, known).speed().isEmpty());
        }
    }

    @Test
    void humIsNoShaft() {
        Synthesis hum = noise(0.05, 8);
        for (int n = 1; n <= 6; n++) {
            hum = order(hum, 50.01, n, 0.5);
        }
        for (SpeedKnowledge known : List.of(NONE, NONE.withMains(50), plate(2980).withMains(50))) {
            SpeedEstimate estimate = SpeedEstimate.of(hum.waveform(), known);
            assertTrue(estimate.speed().isEmpty(), estimate.toString());
            assertTrue(estimate.confidence() < 0.3, estimate.toString());
        }
        String reason = SpeedEstimate.of(hum.waveform(), plate(2980).withMains(50)).reason();
        assertEquals("no line but those of the mains stands out of the noise from 44.7 to 54.63 Hz", reason);
    }

    /** 120 f / p: 1500 r/min for four poles on 50 Hz, 0 to 6 % below with slip. */
    @Test
    void motorsTurnALittleBelowTheirField() {
        List<Band> speeds = NONE.withMains(50).withInductionMotor(4).possible();
        assertEquals(1, speeds.size());
        assertEquals(1410, 60 * speeds.get(0).lowestHertz(), 1e-9);
        assertEquals(1500, 60 * speeds.get(0).highestHertz(), 2);
        assertEquals(4, NONE.withMains(60).withInductionMotor().possible().size());
        assertEquals(8, NONE.withInductionMotor().possible().size());
        Waveform wave = order(order(noise(0.2, 4), 24.2, 1, 1), 24.2, 2, 0.2).waveform();
        assertSpeed(24.2 * 60, SpeedEstimate.of(wave, NONE.withMains(50).withInductionMotor(4)));
        assertTrue(SpeedEstimate.of(wave, NONE.withMains(50).withInductionMotor(6)).speed().isEmpty());
    }

    @Test
    void spectrumAndFloorGiveWhatTheRecordingGives() {
        Waveform wave = order(order(noise(0.2, 4), 24.2, 1, 1), 24.2, 2, 0.2).waveform();
        Spectrum spectrum = Spectrum.of(wave, SpectrumSettings.withDefaults().withResolution(0.5));
        NoiseFloor floor = NoiseFloor.of(spectrum, 20);
        assertEquals(SpeedEstimate.of(wave).toString(), SpeedEstimate.of(spectrum, floor, NONE).toString());
        Spectrum velocity = spectrum.velocity();
        SpeedEstimate read = SpeedEstimate.of(velocity, NoiseFloor.of(velocity, 20), NONE);
        assertEquals(24.2, read.candidates().get(0).speed().hertz(), 0.02);
    }

    @Test
    void toneWithoutNoiseIsALineToo() {
        Waveform pure = Synthesis.silence(Quantity.VELOCITY, RATE, 51_200).tone(1, 24.67, 0).tone(0.3, 49.34, 1)
                .waveform();
        assertEquals(24.67, SpeedEstimate.of(pure, plate(1480)).speed().orElseThrow().hertz(), 0.01);
        SpeedEstimate silent = SpeedEstimate.of(Synthesis.silence(Quantity.VELOCITY, RATE, 51_200).waveform());
        assertEquals(0, silent.confidence());
    }

    @Test
    void whatIsMissingIsSaid() {
        SpeedEstimate none = SpeedEstimate.of(noise(0.5, 1).waveform(), plate(1480));
        assertEquals("speed not determined: no line stands out of the noise from 22.2 to 27.13 Hz", none.toString());
        SpeedEstimate tiny = SpeedEstimate.of(Synthesis.silence(Quantity.ACCELERATION, RATE, 100).waveform());
        assertEquals("the recording is too short, 100 samples", tiny.reason());
        SpeedEstimate odd = SpeedEstimate.of(noise(0.5, 1).waveform(), plate(990).withMains(50).withInductionMotor(2));
        assertTrue(odd.reason().startsWith("what is known contradicts itself"), odd.reason());
        assertEquals("nominal speed 1480 r/min (24.67 Hz); mains 50 Hz: 22.2 to 27.1 Hz",
                plate(1480).withMains(50).toString());
        assertEquals(NONE, SpeedEstimate.of(noise(0.5, 1).waveform()).knowledge());
    }

    @Test
    void knowledgeIsChecked() {
        assertEquals("count must be even: 3.0", assertThrows(IllegalArgumentException.class,
                () -> NONE.withInductionMotor(3)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> NONE.withInductionMotor(0));
        assertThrows(IllegalArgumentException.class, () -> NONE.withMains(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> NONE.withRange(Band.of(0, 50)));
        assertThrows(NullPointerException.class, () -> NONE.withNominal(null));
        assertThrows(IllegalArgumentException.class, () -> new SpeedCandidate(RotationSpeed.ofHertz(25), 0.01,
                Double.NaN, List.of()));
        assertThrows(IllegalArgumentException.class, () -> new SpeedCandidate(RotationSpeed.ofHertz(25), Double.NaN,
                0.5, List.of()));
        assertFalse(NONE.withRange(Band.of(20, 40)).allows(19));
    }

    /** Closed form: one alternative that is right in 70 of 100 choices has odds of 7 to 3. */
    @Test
    void conditionalLogitIsThatOfCounts() {
        List<Choice> choices = new ArrayList<>();
        choices.addAll(Collections.nCopies(700, new Choice(new double[][] {{1}}, new double[1], 0)));
        choices.addAll(Collections.nCopies(300, new Choice(new double[][] {{1}}, new double[1], -1)));
        double[] weights = ConditionalLogit.fit(choices, 1);
        assertEquals(Math.log(7.0 / 3), weights[1] - weights[0], 1e-4);
    }
}
