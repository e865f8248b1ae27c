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

    /**
     * Powers of two, products of all small primes, odd ones, squares and rectangles; 121,991 = 43·2837 and the prime
     * 99,991 take the chirp.
     */
    @ParameterizedTest
    @ValueSource(ints = {2048, 2187, 3125, 4096, 8192, 16384, 131072, 12000, 25600, 102400, 15015, 30030, 2401, 14641,
            28561, 121991, 99991})
    void longTransformAgreesWithJTransforms(int n) {
        double[] x = noise(2 * n);
        double[] expected = x.clone();
        new DoubleFFT_1D(n).complexForward(expected);
        double[] actual = x.clone();
        ComplexTransform.of(n).forward(actual, 0);
        double scale = Arrays.stream(expected).map(Math::abs).max().orElseThrow();
        assertArrayEquals(expected, actual, 1e-12 * scale);
    }

    /** Rows and columns of even and odd number; 3466 = 2·1733 takes the chirp. */
    @ParameterizedTest
    @ValueSource(ints = {2050, 3072, 4050, 4096, 6250, 8192, 9450, 12000, 20020, 25600, 29282, 65536, 102400, 131072,
            3466, 2187, 1200})
    void longRealTransformAgreesWithJTransforms(int n) {
        double[] x = noise(n + 3);
        double[] complex = new double[2 * n];
        for (int i = 0; i < n; i++) {
            complex[2 * i] = x[3 + i];
        }
        new DoubleFFT_1D(n).complexForward(complex);
        double[] expected = Arrays.copyOf(complex, 2 * (n / 2 + 1));
        RealTransform transform = RealTransform.of(n);
        double[] spectrum = transform.forward(x, 3, new double[expected.length]);
        double scale = Arrays.stream(expected).map(Math::abs).max().orElseThrow();
        assertArrayEquals(expected, spectrum, 1e-13 * scale);

        double[] raised = Arrays.stream(x).map(value -> value + 3).toArray();
        assertArrayEquals(spectrum, transform.forward(raised, 3, 3, new double[expected.length]), 1e-13 * scale);

        double[] power = new double[transform.lines()];
        Arrays.fill(power, 1);
        transform.addPower(x, 3, power);
        for (int k = 0; k < power.length; k++) {
            double magnitude = Math.hypot(expected[2 * k], expected[2 * k + 1]);
            assertEquals(1 + magnitude * magnitude, power[k], 1e-12 * scale * scale);
        }

        spectrum[1] = Double.NaN;
        if (n % 2 == 0) {
            spectrum[n + 1] = Double.NaN;
        }
        double[] kept = spectrum.clone();
        double[] back = transform.inverse(spectrum, new double[n + 5], 4);
        assertArrayEquals(Arrays.copyOfRange(x, 3, n + 3), Arrays.copyOfRange(back, 4, n + 4), 1e-14 * Math.log(n));
        assertEquals(0, back[3]);
        assertEquals(0, back[n + 4]);
        assertArrayEquals(kept, spectrum, 0);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 1024, 2048, 2187, 3000, 6250, 8192, 15015, 3466, 1733})
    void powersOfTwoBlocksAddUp(int n) {
        double[] a = noise(n);
        double[] b = noise(n + 1);
        RealTransform single = RealTransform.of(n);
        double[] expected = single.addPower(b, 0, single.addPower(a, 0, new double[n / 2 + 1]));
        PowerPair pair = PowerPair.of(n);
        double[] sums = pair.add(a, b, new double[n / 2 + 1]);
        assertArrayEquals(expected, sums, 1e-11 * n);
        pair.add(a, b, sums);
        for (int k = 0; k < sums.length; k++) {
            assertEquals(2 * expected[k], sums[k], 1e-11 * n);
        }
    }

    @Test
    void fastLengthsHaveFactorsTwoThreeAndFiveOnly() {
        for (int n = 2; n < 5000; n++) {
            int from = RealTransform.fastLengthFrom(n);
            int smaller = from - 2;
            while (smaller >= n && !isFast(smaller)) {
                smaller -= 2;
            }
            assertTrue(isFast(from) && from >= n && smaller < n, n + ": " + from);
            int upTo = RealTransform.fastLength(n);
            assertTrue(isFast(upTo) && upTo <= n && upTo > 15 * n / 16 - 60, n + ": " + upTo);
        }
        assertEquals(102_400, RealTransform.fastLengthFrom(102_397));
        assertEquals(1 << 29, RealTransform.fastLengthFrom(1 << 29));
    }

    private static boolean isFast(int n) {
        int rest = n;
        for (int factor : new int[] {2, 3, 5}) {
            while (rest % factor == 0) {
                rest /= factor;
            }
        }
        return n % 2 == 0 && rest == 1;
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
    @ValueSource(ints = {1024, 4096, 8192, 12000, 16384, 20_020, 9973, 15_015, 3466, 204_800})
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
