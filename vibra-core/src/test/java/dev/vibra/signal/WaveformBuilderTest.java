package dev.vibra.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dev.vibra.quantity.Quantity;
import java.lang.management.ManagementFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class WaveformBuilderTest {
    private static WaveformBuilder builder() {
        return WaveformBuilder.of(Quantity.VELOCITY, 100);
    }

    @Test
    void blocksBecomeOneWaveform() {
        double[] block = {9, 1, 2, 3};
        WaveformBuilder builder = builder().startingAt(2.5).add(block, 1, 3).add(block, 0, 0);
        block[1] = 7;
        assertEquals(3, builder.length());
        builder.add(block, 0, 2);
        Waveform wave = builder.waveform();
        assertEquals(Waveform.ofSi(Quantity.VELOCITY, 100, 1, 2, 3, 9, 7).startingAt(2.5), wave);
    }

    /** What was handed over is no longer the builder's. */
    @Test
    void aBuilderBeginsAnew() {
        WaveformBuilder builder = builder().reserve(2).add(new double[] {1, 2}, 0, 2);
        Waveform first = builder.waveform();
        assertEquals(0, builder.length());
        Waveform second = builder.add(new double[] {3, 4}, 0, 2).waveform();
        assertArrayEquals(new double[] {1, 2}, first.samples());
        assertArrayEquals(new double[] {3, 4}, second.samples());
    }

    @Test
    void manyBlocksAreKeptInOrder() {
        WaveformBuilder builder = builder().reserve(10);
        double[] expected = new double[30_000];
        for (int i = 0; i < expected.length; i += 1000) {
            for (int k = i; k < i + 1000; k++) {
                expected[k] = k;
            }
            builder.add(expected, i, 1000);
        }
        assertArrayEquals(expected, builder.waveform().samples());
    }

    /** A million samples are eight megabytes. */
    @Test
    void whatWasReservedIsTakenOver() {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        double[] block = new double[1000];
        builder().reserve(1000).add(block, 0, 1000).waveform();
        long before = threads.getThreadAllocatedBytes(Thread.currentThread().getId());
        WaveformBuilder builder = builder().reserve(1_000_000);
        for (int i = 0; i < 1000; i++) {
            builder.add(block, 0, 1000);
        }
        assertEquals(1_000_000, builder.waveform().length());
        long taken = threads.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;
        assertTrue(taken < 8_100_000, taken + " bytes");
    }

    private static void assertRefused(Class<? extends RuntimeException> type, String message, Executable call) {
        assertEquals(message, assertThrows(type, call).getMessage());
    }

    @Test
    void argumentsAreNamed() {
        Class<IllegalArgumentException> bad = IllegalArgumentException.class;
        WaveformBuilder builder = builder().add(new double[] {1}, 0, 1);
        assertRefused(bad, "sampleRateHertz must be finite and > 0 Hz: NaN",
                () -> WaveformBuilder.of(Quantity.VELOCITY, Double.NaN));
        assertRefused(bad, "seconds must be finite: Infinity", () -> builder.startingAt(Double.POSITIVE_INFINITY));
        assertRefused(bad, "count must be from 0 to 2147483639: -1", () -> builder.reserve(-1));
        assertRefused(bad, "block must lie inside the array of length 2: offset 1, length 2",
                () -> builder.add(new double[2], 1, 2));
        assertRefused(bad, "samples[1] must be finite: NaN", () -> builder.add(new double[] {2, Double.NaN}, 0, 2));
        assertRefused(bad, "samples[0] must be within ±1e70: 1.0E71", () -> builder.add(new double[] {1e71}, 0, 1));
        assertRefused(NullPointerException.class, "block", () -> builder.add(null, 0, 0));
        assertRefused(IllegalStateException.class, "a waveform must have at least 1 sample: 0",
                () -> builder().waveform());
        assertEquals("1 samples at 100.0 Hz so far, velocity", builder.toString());
        assertArrayEquals(new double[] {1}, builder.waveform().samples());
    }
}
