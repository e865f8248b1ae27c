package dev.vibra.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.sun.management.ThreadMXBean;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import java.lang.management.ManagementFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class CountConversionTest {
    /** 1 g = 9.80665 m/s² (CGPM 1901); a 16-bit converter of ±10 V behind a sensor of 100 mV/g: full scale is 100 g. */
    private static final CountConversion SENSOR = CountConversion.of(Unit.G, 10 / 32_768.0 / 0.1);

    private static void assertRefused(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }

    @Test
    void countsBecomeAcceleration() {
        double[] expected = {0, 980.665 / 2, -980.665, 980.665 * 32_767 / 32_768};
        assertArrayEquals(expected, Waveform.of(Unit.G, 1000, new short[] {0, 16_384, -32_768, 32_767},
                10 / 32_768.0 / 0.1).samples(), 1e-10);
        assertArrayEquals(expected, SENSOR.waveform(1000, new int[] {0, 16_384, -32_768, 32_767}).samples(), 1e-10);
        Waveform wave = Waveform.of(Unit.MM_PER_S, 1000, new int[] {Integer.MIN_VALUE, Integer.MAX_VALUE}, -1);
        assertEquals(Quantity.VELOCITY, wave.quantity());
        assertArrayEquals(new double[] {2_147_483.648, -2_147_483.647}, wave.samples(), 1e-9);
        assertArrayEquals(new double[] {0.25, -3}, Waveform.of(Unit.V, 10, new float[] {0.5f, -6}, 0.5).samples());
    }

    @Test
    void oneChannelIsPickedOutOfFrames() {
        short[] shorts = {1, 2, 3, 4, 5, 6, 7, 8, 9};
        CountConversion second = CountConversion.of(Unit.V, 2).withChannel(2, 3);
        assertArrayEquals(new double[] {4, 10, 16}, second.waveform(10, shorts).samples());
        assertArrayEquals(new double[] {4, 10, 16}, second.waveform(10, new int[] {1, 2, 3, 4, 5, 6, 7, 8, 9})
                .samples());
        assertArrayEquals(new double[] {4, 10, 16}, second.waveform(10, new float[] {1, 2, 3, 4, 5, 6, 7, 8, 9})
                .samples());
        assertArrayEquals(new double[] {4, 10, 16}, second.waveform(10, new double[] {1, 2, 3, 4, 5, 6, 7, 8, 9})
                .samples());
        double[] out = {-1, -1, -1, -1};
        assertSame(out, second.toSi(shorts, 1, out, 1, 2));
        assertArrayEquals(new double[] {-1, 10, 16, -1}, out);
        assertEquals("1 is 2.0 V, channel 2 of 3", second.toString());
    }

    @Test
    void argumentsAreNamed() {
        double[] out = new double[4];
        CountConversion pair = SENSOR.withChannel(1, 2);
        assertRefused("scale must be finite and not zero: 0.0", () -> CountConversion.of(Unit.G, 0));
        assertRefused("channel must be from 1 to 2: 3", () -> SENSOR.withChannel(3, 2));
        assertRefused("channels must be at least 1: 0", () -> SENSOR.withChannel(1, 0));
        assertRefused("samples must be whole frames of 2 channels: 3", () -> pair.waveform(10, new short[3]));
        assertRefused("number of samples must be at least 1: 0", () -> pair.waveform(10, new short[0]));
        assertRefused("sampleRateHertz must be finite and > 0 Hz: 0.0", () -> pair.waveform(0, new short[2]));
        assertRefused("frames of samples must lie inside the array of length 2: offset 1, length 2",
                () -> pair.toSi(new short[5], 1, out, 0, 2));
        assertRefused("out must lie inside the array of length 4: offset 3, length 2",
                () -> pair.toSi(new short[4], 0, out, 3, 2));
        assertRefused("samples[2] must be within ±1e70 in SI units: NaN times 1.0 V", () -> CountConversion.of(Unit.V, 1)
                .waveform(10, new float[] {1, 2, Float.NaN}));
        assertRefused("samples[1] must be within ±1e70 in SI units: 2.0 times 1.0E308 V",
                () -> Waveform.of(Unit.V, 10, new short[] {0, 2}, 1e308));
        assertEquals("samples", assertThrows(NullPointerException.class,
                () -> Waveform.of(Unit.V, 10, (short[]) null, 1)).getMessage());
    }

    @Test
    void convertingAllocatesNothing() {
        short[] frames = new short[4096];
        double[] out = new double[1024];
        CountConversion third = SENSOR.withChannel(3, 4);
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        third.toSi(frames, 0, out, 0, 1024);
        threads.getCurrentThreadAllocatedBytes();
        long before = threads.getCurrentThreadAllocatedBytes();
        for (int i = 0; i < 1000; i++) {
            third.toSi(frames, 0, out, 0, 1024);
        }
        assertEquals(0, threads.getCurrentThreadAllocatedBytes() - before, 1000);
    }
}
