package dev.vibra.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.evidence.Remark;
import dev.vibra.filter.FilterDesign;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RecordingCheckTest {
    private static final double RATE = 12_800;

    private static Synthesis machine() {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, 25_600).tone(3, 24.7, 0).tone(1, 640, 1).noise(0.2, 3);
    }

    private static List<String> codes(Waveform wave) {
        return RecordingCheck.of(wave).remarks().stream().filter(Remark::disqualifying).map(Remark::code).toList();
    }

    @Test
    void cleanRecordingIsSound() {
        assertEquals(List.of(), codes(machine().waveform()));
        assertTrue(RecordingCheck.of(machine().waveform()).sound());
    }

    /**
     * Low tones, rounded coarsely, with little noise or none: a thousand steps, as the top of a sine is flat for long.
     */
    @Test
    void roundingIsNotTakenForClippingOrDropOut() {
        int checked = 0;
        for (double hertz : new double[] {12, 15.3, 25, 50, 99.7, 400}) {
            for (double noise : new double[] {0, 0.2, 0.3, 0.4, 0.5, 0.7, 1, 3, 30}) {
                for (long seed = 1; seed <= 4; seed++) {
                    Waveform wave = Synthesis.silence(Quantity.ACCELERATION, RATE, 25_600).tone(1000, hertz, 0.1 * seed)
                            .noise(noise, seed).quantise(1).waveform();
                    List<String> codes = new ArrayList<>(codes(wave));
                    if (noise == 0) {
                        // A rounded tone without noise does repeat itself, sample by sample.
                        codes.remove("repeated-block");
                    }
                    assertEquals(List.of(), codes, hertz + " Hz, noise " + noise + ", seed " + seed);
                    checked++;
                }
            }
        }
        assertEquals(216, checked);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void noiseAndImpactsAreSound(long seed) {
        Synthesis silence = Synthesis.silence(Quantity.ACCELERATION, RATE, 51_200);
        assertEquals(List.of(), codes(silence.noise(1, seed).waveform()));
        assertEquals(List.of(), codes(silence.noise(0.3, seed)
                .impacts(ImpactTrain.of(57, 20, 3000, 0.03).withJitter(0.01), seed).quantise(0.001).waveform()));
    }

    /** Low and high tones, rounded or not, cut at 0.95 down to 0.3 of their peak. */
    @ParameterizedTest
    @CsvSource({"24.7, 0.95", "24.7, 0.7", "24.7, 0.3", "640, 0.95", "640, 0.6", "3200, 0.8", "4100, 0.7", "4100, 0.4"})
    void clippingIsFound(double hertz, double share) {
        Synthesis signal = Synthesis.silence(Quantity.ACCELERATION, RATE, 25_600).tone(3, hertz, 0.2).noise(0.1, 5);
        assertEquals(List.of("clipping"), codes(signal.clip(3 * share).waveform()));
        assertEquals(List.of("clipping"), codes(signal.clip(3 * share).quantise(1e-3).waveform()));
        assertEquals(List.of("clipping"), codes(signal.clip(3 * share).bias(0.3).waveform()));
    }

    private static Synthesis peaked(double hertz, long seed) {
        return Synthesis.silence(Quantity.ACCELERATION, 6400, 12_800).tone(3, hertz, 0.3).tone(1.5, 2 * hertz, 1.1)
                .tone(0.9, 3 * hertz, 2).noise(0.6, seed);
    }

    /** Where many samples pass close by the rail: every recording with 50 of 12,800 at the rails, and no clean one. */
    @Test
    void shallowClippingIsFound() {
        Random random = new Random(11);
        int clipped = 0;
        for (int i = 0; i < 300; i++) {
            double hertz = 30 + 170 * random.nextDouble();
            Waveform clean = peaked(hertz, i).waveform();
            double limit = (0.8 + 0.19 * random.nextDouble()) * clean.peak().si();
            assertEquals(List.of(), clippingIn(clean), hertz + " Hz, seed " + i);
            if (Arrays.stream(clean.samples()).filter(x -> Math.abs(x) > limit).count() >= 50) {
                clipped++;
                assertEquals(List.of("clipping"), clippingIn(peaked(hertz, i).clip(limit).waveform()),
                        hertz + " Hz, seed " + i);
            }
        }
        assertEquals(96, clipped);
    }

    private static List<String> clippingIn(Waveform wave) {
        return codes(wave).stream().filter("clipping"::equals).toList();
    }

    /**
     * A period of a whole number of samples: each of its samples returns to one value, and those at the top crowd there
     * without being clipped. So do impacts of equal size.
     */
    @Test
    void returningValuesAreNotTakenForClipping() {
        int checked = 0;
        for (int period = 8; period < 400; period += 3) {
            for (double noise : new double[] {0, 1e-3, 1e-2}) {
                double hertz = 6400.0 / period;
                double phase = Math.PI / period; // two samples share the top
                Synthesis silence = Synthesis.silence(Quantity.ACCELERATION, 6400, 12_800).noise(noise, period);
                Synthesis tone = silence.tone(3, hertz, phase);
                assertEquals(List.of(), clippingIn(tone.waveform()), period + " samples, noise " + noise);
                if (period > 24) {
                    Synthesis sum = tone.tone(1.5, 2 * hertz, 2 * phase).tone(0.9, 3 * hertz, 3 * phase);
                    assertEquals(List.of(), clippingIn(sum.waveform()), "sum, " + period + " samples, noise " + noise);
                    checked++;
                }
                assertEquals(List.of(), clippingIn(silence.impacts(ImpactTrain.of(Math.min(hertz, 100), 5, 2000, 0.03),
                        1)
                        .tone(0.5, 25, phase).waveform()), "impacts, " + period + " samples, noise " + noise);
            }
        }
        assertEquals(375, checked);
    }

    /** The rail of an amplifier ahead of a noisy converter isn't one value: 0.03 % of the swing, 3 % of the samples. */
    @Test
    void aNoisyRailIsFound() {
        Synthesis signal = peaked(97, 3);
        double limit = 0.6 * signal.waveform().peak().si();
        assertTrue(Arrays.stream(signal.waveform().samples()).filter(x -> x > limit).count() > 384);
        assertEquals(List.of("clipping"), clippingIn(signal.clip(limit).noise(6e-4 * limit, 5).waveform()));
    }

    /** A peaked signal touches its rail rarely: 0.8 of its peak, random phases and noise. */
    @Test
    void rareClippingIsFound() {
        int found = 0;
        for (long seed = 1; seed <= 20; seed++) {
            Synthesis signal = Synthesis.silence(Quantity.ACCELERATION, RATE, 25_600)
                    .harmonics(24.7, new double[] {3, 2, 1},
                    new double[] {0, 0.3 * seed, 0.7 * seed}).noise(0.1, seed);
            double peak = signal.waveform().peak().si();
            found += codes(signal.clip(0.8 * peak).waveform()).contains("clipping") ? 1 : 0;
            assertEquals(List.of(), codes(signal.waveform()), "seed " + seed);
        }
        assertEquals(20, found);
    }

    @Test
    void clippingBeforeTheConverterIsFound() {
        Waveform railWithNoise = machine().clip(3).noise(1e-3, 8).quantise(1e-3).waveform();
        assertEquals(List.of("clipping"), codes(railWithNoise));
    }

    @Test
    void clippingHasItsFigure() {
        Remark remark = RecordingCheck.of(machine().clip(3.2).waveform()).remarks().stream()
                .filter(Remark::disqualifying).findFirst().orElseThrow();
        assertTrue(remark.value() > remark.limit());
        assertEquals(Rails.LIMIT, remark.limit());
        assertTrue(remark.text().contains("samples lie at the largest or smallest value"), remark.text());
    }

    @Test
    void dropOutIsFoundWithItsPlace() {
        RecordingQuality quality = RecordingCheck.of(machine().dropOut(0.5, 0.02).quantise(1e-3).waveform());
        Remark remark = quality.remarks().get(0);
        assertEquals("drop-out", remark.code());
        assertEquals(257, remark.value(), 1);
        assertTrue(remark.text().endsWith("first at 0.4999 s"), remark.text());
        assertTrue(quality.toString().startsWith("doubtful; drop-out: 25"), quality.toString());
    }

    /** Short drop-outs to zero, and a long one of a biased sensor, whose zero is the lowest value of all. */
    @Test
    void dropOutsToZeroAreFound() {
        double[] x = machine().noise(0.5, 4).waveform().samples();
        for (int d = 0; d < 20; d++) {
            java.util.Arrays.fill(x, 1000 * d + 50, 1000 * d + 62, 0);
        }
        assertEquals(List.of("drop-out"), codes(Waveform.ofSi(Quantity.ACCELERATION, RATE, x)));
        double[] biased = machine().bias(20).waveform().samples();
        java.util.Arrays.fill(biased, 14_000, 14_200, 0);
        assertEquals(List.of("drop-out"), codes(Waveform.ofSi(Quantity.ACCELERATION, RATE, biased)));
    }

    @Test
    void repeatedBlockIsFound() {
        double[] x = machine().quantise(1e-3).waveform().samples();
        System.arraycopy(x, 8000, x, 9024, 1024);
        Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, RATE, x);
        assertEquals(List.of("repeated-block"), codes(wave));
        double value = RecordingCheck.of(wave).remarks().get(0).value();
        assertTrue(value > 512 && value <= 1024, "samples " + value);
    }

    @Test
    void computedTonesAreNotTakenForRepeatedBlocks() {
        assertEquals(List.of(), codes(Synthesis.silence(Quantity.ACCELERATION, RATE, 25_600).tone(1, 50, 0)
                .tone(0.3, 400, 1).quantise(1e-4).waveform()));
    }

    @Test
    void spikesAreFound() {
        double[] x = machine().waveform().samples();
        x[5000] += 60;
        x[9000] -= 60;
        Remark remark = RecordingCheck.of(Waveform.ofSi(Quantity.ACCELERATION, RATE, x)).remarks().get(0);
        assertEquals("spikes", remark.code());
        assertEquals(2, remark.value());
    }

    @Test
    @DisplayName("a sample that stands off its neighbours amid the ringing of an impact is no electrical spike")
    void samplesOfRingingAreNoSpikes() {
        double[][] resonances = {{7111, 9728}, {7498, 10_591}, {5250, 9591}, {7131, 9401}};
        for (double[] pair : resonances) {
            Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, 102_400).noise(1, 3)
                    .impacts(ImpactTrain.of(71.9, 80, pair[0], 0.05).withJitter(0.01), 4)
                    .impacts(ImpactTrain.of(71.9, 80, pair[1], 0.05).withJitter(0.01), 4).waveform();
            assertFalse(codes(wave).contains("spikes"), "resonances at " + pair[0] + " and " + pair[1] + " Hz");
        }
    }

    @Test
    void settlingBiasIsFound() {
        double[] x = machine().waveform().samples();
        for (int i = 0; i < x.length; i++) {
            x[i] += 8 * Math.exp(-i / (0.2 * RATE));
        }
        assertTrue(codes(Waveform.ofSi(Quantity.ACCELERATION, RATE, x)).contains("bias-drift"));
    }

    /** Thermal drift and 1/f noise below the band swamp what integration leaves of a quiet machine. */
    @Test
    void lowFrequencySlopeIsFound() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, RATE, 76_800).tone(0.1, 50, 0).tone(0.5, 3, 1)
                .noise(0.05, 6)
                .waveform();
        assertEquals(List.of("low-frequency-slope"), codes(wave));
        assertEquals(List.of(), RecordingCheck.withDefaults().withBand(Band.of(2, 1000)).check(wave).remarks().stream()
                .filter(Remark::disqualifying).map(Remark::code).toList());
    }

    @Test
    void lengthBandwidthAndMainsAreCheckedWhereKnown() {
        RecordingCheck check = RecordingCheck.withDefaults().withSpeed(RotationSpeed.ofRevolutionsPerMinute(240));
        RecordingQuality quality = check.check(machine().waveform());
        assertEquals("too-short: the recording holds 8.00 revolutions", quality.remarks().get(0).toString());
        assertEquals(10, quality.remarks().get(0).limit());
        assertFalse(RecordingCheck.withDefaults().withUsableTo(800).check(machine().waveform()).sound());
        assertTrue(RecordingCheck.withDefaults().withUsableTo(1000).check(machine().waveform()).sound());
        Waveform hum = machine().tone(9, 50, 0).tone(3, 150, 0).waveform();
        RecordingQuality humming = RecordingCheck.withDefaults().withMains(50).check(hum);
        assertTrue(humming.remarks().stream().anyMatch(r -> r.code().equals("mains-hum") && r.value() > 0.8),
                "" + humming);
        assertTrue(humming.sound());
        Waveform brief = Synthesis.silence(Quantity.ACCELERATION, RATE, 6000).tone(1, 50, 0).noise(0.1, 1).waveform();
        assertEquals(List.of("too-short"), codes(brief));
    }

    @Test
    void aRecordingWithoutRollOffIsNoted() {
        Waveform white = Synthesis.silence(Quantity.ACCELERATION, RATE, 51_200).noise(1, 1).waveform();
        double[] filtered = FilterDesign.butterworth(8).lowPass(5000, RATE).zeroPhase(white.samples());
        assertTrue(RecordingCheck.of(white).remarks().stream().anyMatch(r -> r.code().equals("no-roll-off")));
        assertTrue(RecordingCheck.of(Waveform.ofSi(Quantity.ACCELERATION, RATE, filtered)).remarks().stream()
                .noneMatch(r -> r.code().equals("no-roll-off")));
    }

    @Test
    void unsteadyRecordingsAreFoundAndTheirSteadyPartKept() {
        double[] rising = machine().waveform().samples();
        for (int i = 0; i < rising.length; i++) {
            rising[i] *= 1 + 2.0 * i / rising.length;
        }
        assertEquals(List.of("unsteady"), codes(Waveform.ofSi(Quantity.ACCELERATION, RATE, rising)));
        double[] late = machine().noise(1, 2).waveform().samples();
        for (int i = 0; i < late.length; i++) {
            late[i] *= i < late.length * 0.3 ? 1 + 2 * (1 - i / (0.3 * late.length)) : 1;
        }
        Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, RATE, late);
        RecordingQuality quality = RecordingCheck.of(wave);
        assertTrue(quality.remarks().stream().anyMatch(r -> r.code().equals("partly-steady")), quality.toString());
        Waveform stretch = Steadiness.ofLevel(wave).orElseThrow().longestSteady().orElseThrow();
        assertTrue(stretch.startSeconds() > 0 && stretch.durationSeconds() < wave.durationSeconds(), "" + stretch);
        assertEquals(wave.durationSeconds(), stretch.startSeconds() + stretch.durationSeconds(), 0.11);
    }

    @Test
    void constantAndCoarseRecordingsAreFound() {
        assertEquals("doubtful; constant: all samples are equal",
                RecordingCheck.of(Waveform.ofSi(Quantity.ACCELERATION, 100, new double[50])).toString());
        assertEquals("constant", RecordingCheck.of(Waveform.ofSi(Quantity.ACCELERATION, 100, 7)).remarks().get(0)
                .code());
        Remark coarse = RecordingCheck.of(machine().quantise(0.5).waveform()).remarks().get(0);
        assertEquals("coarse-quantisation", coarse.code());
        assertTrue(coarse.value() < coarse.limit());
    }

    @Test
    void badArgumentsAreNamed() {
        assertEquals("lowest frequency of the band must be finite and > 0 Hz: 0.0", assertThrows(
                IllegalArgumentException.class, () -> RecordingCheck.withDefaults().withBand(Band.of(0, 5)))
                .getMessage());
        assertThrows(IllegalArgumentException.class, () -> RecordingCheck.withDefaults().withMains(0));
        assertThrows(IllegalArgumentException.class, () -> RecordingCheck.withDefaults().withUsableTo(Double.NaN));
    }
}
