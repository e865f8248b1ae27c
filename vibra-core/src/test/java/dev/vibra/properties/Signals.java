package dev.vibra.properties;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import java.util.Random;

/** What the properties share: random signals, random cuts of them, and closeness relative to the largest value. */
final class Signals {
    private Signals() {}

    /** A step of a stream: input, its offset, output, its offset, length. */
    interface Stream {
        void process(double[] in, int inOffset, double[] out, int outOffset, int length);
    }

    /** A taker of blocks: samples, offset, length. */
    interface Sink {
        void push(double[] samples, int offset, int length);
    }

    static double[] noise(int length, long seed) {
        return new Random(seed).doubles(length, -1, 1).toArray();
    }

    static double[] normal(int length, long seed) {
        Random random = new Random(seed);
        return random.doubles(length).map(u -> random.nextGaussian()).toArray();
    }

    static Waveform wave(double sampleRateHertz, double... samples) {
        return Waveform.ofSi(Quantity.ACCELERATION, sampleRateHertz, samples);
    }

    /** Pushes all samples in blocks of random size, empty ones included. */
    static void pushInBlocks(Sink sink, double[] samples, long seed) {
        Random random = new Random(seed);
        int done = 0;
        while (done < samples.length) {
            int length = Math.min(samples.length - done, random.nextInt(4) == 0 ? 0 : random.nextInt(700));
            sink.push(samples, done, length);
            done += length;
        }
    }

    /** Processes all samples in blocks of random size, some of them in place. */
    static double[] inBlocks(Stream stream, double[] samples, long seed) {
        double[] out = new double[samples.length];
        boolean inPlace = seed % 2 == 0;
        if (inPlace) {
            System.arraycopy(samples, 0, out, 0, out.length);
        }
        pushInBlocks((x, offset, length) -> stream.process(inPlace ? out : x, offset, out, offset, length), samples,
                seed);
        return out;
    }

    static double[] atOnce(Stream stream, double[] samples) {
        double[] out = new double[samples.length];
        stream.process(samples, 0, out, 0, samples.length);
        return out;
    }

    static double largest(double... values) {
        double largest = 0;
        for (double value : values) {
            largest = Math.max(largest, Math.abs(value));
        }
        return largest;
    }

    static void assertClose(double[] expected, double[] actual, double relative) {
        assertClose(expected, actual, relative, 0);
    }

    /** Compares all values but some at each end. */
    static void assertClose(double[] expected, double[] actual, double relative, int margin) {
        assertEquals(expected.length, actual.length);
        double tolerance = relative * largest(expected);
        for (int i = margin; i < expected.length - margin; i++) {
            assertEquals(expected[i], actual[i], tolerance, "index " + i);
        }
    }

    static double[] combined(double[] x, double factor, double[] y) {
        double[] sum = new double[x.length];
        for (int i = 0; i < sum.length; i++) {
            sum[i] = x[i] + factor * y[i];
        }
        return sum;
    }

    static double[] reversed(double... x) {
        double[] y = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            y[i] = x[x.length - 1 - i];
        }
        return y;
    }
}
