package dev.vibra.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RecordingCheckTest {
    private static Synthesis machine() {
        return Synthesis.silence(Quantity.ACCELERATION, 12_800, 25_600).tone(3, 24.7, 0).tone(1, 640, 1).noise(0.2, 3);
    }

    @Test
    void cleanRecordingIsSound() {
        RecordingQuality quality = RecordingCheck.of(machine().waveform());
        assertTrue(quality.sound());
        assertEquals("sound", quality.toString());
    }

    /** A converter of 16 bits over ±50 m/s² leaves a clean recording sound, noisy or not. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.001, 0.2})
    void roundingIsNotTakenForClippingOrDropOut(double noise) {
        Waveform slow = Synthesis.silence(Quantity.ACCELERATION, 25_600, 102_400).tone(3, 5, 0.1).noise(noise, 1)
                .quantise(50.0 / 32_768).waveform();
        assertTrue(RecordingCheck.of(slow).sound(), () -> RecordingCheck.of(slow).toString());
    }

    @Test
    void clippingIsFoundWithItsFigure() {
        Waveform clipped = machine().clip(3.2).quantise(3.2 / 32_768).waveform();
        RecordingQuality quality = RecordingCheck.of(clipped);
        Remark remark = quality.remarks().get(0);
        long flat = java.util.stream.IntStream.range(0, clipped.length()).filter(i -> Math.abs(clipped.at(i)) == 3.2).count();
        assertFalse(quality.sound());
        assertEquals(1, quality.remarks().size());
        assertEquals("clipping", remark.code());
        assertTrue(remark.value() > 0.4 * flat && remark.value() <= flat, remark + " of " + flat);
        assertEquals(0, remark.limit());
    }

    @Test
    void dropOutIsFoundWithItsPlace() {
        RecordingQuality quality = RecordingCheck.of(machine().dropOut(0.5, 0.02).quantise(1e-3).waveform());
        assertEquals(1, quality.remarks().size());
        Remark remark = quality.remarks().get(0);
        assertEquals("drop-out", remark.code());
        assertEquals(257, remark.value(), 1);
        assertTrue(remark.text().endsWith("first at 0.4999 s"), remark.text());
    }

    @Test
    void constantAndCoarseRecordingsAreFound() {
        assertEquals("constant: all samples are equal",
                RecordingCheck.of(Waveform.ofSi(Quantity.ACCELERATION, 100, new double[50])).toString());
        assertEquals("constant", RecordingCheck.of(Waveform.ofSi(Quantity.ACCELERATION, 100, 7)).remarks().get(0).code());
        RecordingQuality coarse = RecordingCheck.of(machine().quantise(0.5).waveform());
        assertEquals("coarse-quantisation", coarse.remarks().get(0).code());
        assertTrue(coarse.remarks().get(0).value() < coarse.remarks().get(0).limit());
    }
}
