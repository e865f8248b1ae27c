package dev.vibra.transform;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.jtransforms.fft.DoubleFFT_1D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Oracles: the definition of the discrete Fourier transform, and JTransforms' own transform of any length. */
class TransformTest {
    static IntStream lengths() {
        return IntStream.concat(IntStream.rangeClosed(1, 64),
                IntStream.of(75, 96, 97, 121, 127, 131, 210, 251, 625, 961, 1009, 1024, 1155));
    }

    @ParameterizedTest
    @MethodSource("lengths")
    void complexTransformIsItsDefinition(int n) {
        double[] x = noise(2 * n);
        double[] expected = definition(x, n);
        double[] actual = x.clone();
        ComplexTransform transform = ComplexTransform.of(n);
        transform.forward(actual, 0);
        assertArrayEquals(expected, actual, 1e-12 * n);
        transform.inverse(actual, 0);
        assertArrayEquals(x, actual, 1e-14 * n);
    }

    @ParameterizedTest
    @MethodSource("lengths")
    void realTransformIsTheLowerHalfOfTheDefinition(int n) {
        double[] x = noise(n);
        double[] interleaved = new double[2 * n];
        for (int i = 0; i < n; i++) {
            interleaved[2 * i] = x[i];
        }
        RealTransform transform = RealTransform.of(n);
        double[] spectrum = transform.forward(x, 0, new double[2 * transform.lines()]);
        assertEquals(n / 2 + 1, transform.lines());
        assertArrayEquals(Arrays.copyOf(definition(interleaved, n), 2 * transform.lines()), spectrum, 1e-12 * n);
        assertArrayEquals(x, transform.inverse(spectrum, new double[n], 0), 1e-14 * n);
    }

    /** 2^13 and 2^17 are composed, 102,400 = 2^12·25; 121,991 = 43·2837 and the prime 99,991 take the chirp. */
    @ParameterizedTest
    @ValueSource(ints = {8192, 16384, 131072, 12000, 25600, 102400, 121991, 99991})
    void longTransformAgreesWithJTransforms(int n) {
        double[] x = noise(2 * n);
        double[] expected = x.clone();
        new DoubleFFT_1D(n).complexForward(expected);
        double[] actual = x.clone();
        ComplexTransform.of(n).forward(actual, 0);
        double scale = Arrays.stream(expected).map(Math::abs).max().orElseThrow();
        assertArrayEquals(expected, actual, 1e-12 * scale);
    }

    @Test
    void offsetAndNeighboursAreRespected() {
        double[] x = noise(2 * 24 + 7);
        double[] middle = Arrays.copyOfRange(x, 3, 3 + 48);
        double[] shifted = x.clone();
        ComplexTransform.of(24).forward(middle, 0);
        ComplexTransform.of(24).forward(shifted, 3);
        assertArrayEquals(middle, Arrays.copyOfRange(shifted, 3, 51), 0);
        assertArrayEquals(Arrays.copyOf(x, 3), Arrays.copyOf(shifted, 3), 0);
        assertArrayEquals(Arrays.copyOfRange(x, 51, 55), Arrays.copyOfRange(shifted, 51, 55), 0);
    }

    @Test
    void badArgumentsAreNamed() {
        assertEquals("length must be at least 1: 0",
                assertThrows(IllegalArgumentException.class, () -> RealTransform.of(0)).getMessage());
        assertEquals("data must lie inside the array of length 7: offset 0, length 8",
                assertThrows(IllegalArgumentException.class,
                        () -> ComplexTransform.of(4).forward(new double[7], 0)).getMessage());
    }

    @ParameterizedTest
    @ValueSource(ints = {4096, 8192, 12000, 16384, 9973, 204_800})
    void nothingIsAllocatedOnceWarm(int n) {
        RealTransform transform = RealTransform.of(n);
        double[] x = noise(n);
        double[] spectrum = new double[2 * transform.lines()];
        for (int i = 0; i < 20; i++) {
            transform.forward(x, 0, spectrum);
            transform.inverse(spectrum, x, 0);
        }
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        for (int i = 0; i < 20; i++) {
            transform.forward(x, 0, spectrum);
            transform.inverse(spectrum, x, 0);
        }
        long perCall = (threads.getCurrentThreadAllocatedBytes() - before) / 40;
        assertEquals(0, perCall / 64, "bytes allocated per transform: " + perCall);
    }

    /** In a process of its own: the oracle of the other tests starts the pool of threads that is looked for here. */
    @Test
    void noTransformStartsAThread() throws Exception {
        Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                Threads.class.getName()).redirectErrorStream(true).start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(30, TimeUnit.SECONDS), "the process lingers");
        assertEquals("threads: [main]", printed.strip());
    }

    /** Runs transforms of many lengths and prints the threads that do not end by themselves. */
    static final class Threads {
        private Threads() {}

        public static void main(String[] args) {
            for (int n : new int[] {2048, 4096, 8192, 12_000, 12_288, 102_400, 204_800, 121_991, 1 << 20}) {
                ComplexTransform.of(n).forward(new double[2 * n], 0);
                RealTransform real = RealTransform.of(n);
                real.forward(new double[n], 0, new double[2 * real.lines()]);
            }
            System.out.println("threads: " + Thread.getAllStackTraces().keySet().stream()
                    .filter(thread -> !thread.isDaemon()).map(Thread::getName)
                    .filter(name -> !name.equals("DestroyJavaVM"))
                    .sorted().toList());
        }
    }

    private static double[] noise(int n) {
        Random random = new Random(n);
        return random.doubles(n, -1, 1).toArray();
    }

    private static double[] definition(double[] x, int n) {
        double[] out = new double[2 * n];
        for (int k = 0; k < n; k++) {
            for (int i = 0; i < n; i++) {
                double angle = -2 * Math.PI * ((long) i * k % n) / n;
                out[2 * k] += x[2 * i] * Math.cos(angle) - x[2 * i + 1] * Math.sin(angle);
                out[2 * k + 1] += x[2 * i] * Math.sin(angle) + x[2 * i + 1] * Math.cos(angle);
            }
        }
        return out;
    }
}
