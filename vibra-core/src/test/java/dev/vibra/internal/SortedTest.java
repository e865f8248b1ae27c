package dev.vibra.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.vibra.level.Percentiles;
import java.util.Arrays;
import java.util.Random;
import java.util.function.IntFunction;
import java.util.stream.Stream;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SortedTest {
    /** Even, bell-shaped, stepped, with far ones, of two values, all equal, of all magnitudes, at the ends of range. */
    static Stream<IntFunction<double[]>> kinds() {
        Random random = new Random(3);
        return Stream.of(n -> random.doubles(n).toArray(),
                n -> random.doubles(n).map(u -> random.nextGaussian()).toArray(),
                n -> random.doubles(n).map(u -> Math.rint(300 * random.nextGaussian())).map(v -> v + 0.0).toArray(),
                n -> random.doubles(n).map(u -> Math.pow(random.nextGaussian(), 9)).toArray(),
                n -> random.doubles(n).map(u -> u < 0.3 ? 1e-9 : u < 0.99 ? 1 : 1e9 * u).toArray(),
                n -> random.doubles(n).map(u -> u < 0.3 ? -1 : 1).toArray(),
                n -> random.doubles(n).map(u -> 7).toArray(),
                n -> random.doubles(n).map(u -> Math.pow(10, 600 * u - 300)).toArray(),
                n -> random.doubles(n).map(u -> (2 * u - 1) * Double.MAX_VALUE).toArray(),
                n -> random.doubles(n).map(u -> u * 1e-320).toArray());
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void sortsAsThePlainSortDoes(IntFunction<double[]> kind) {
        for (int n : new int[] {0, 1, 2, 255, 256, 257, 5000, 30_000}) {
            double[] values = kind.apply(n);
            double[] kept = values.clone();
            double[] expected = values.clone();
            Arrays.sort(expected);
            assertArrayEquals(expected, Sorted.copy(values));
            assertArrayEquals(kept, values);
        }
    }

    /** Definition 7 of Hyndman and Fan, by Commons Math and by the sorted values. */
    @ParameterizedTest
    @MethodSource("kinds")
    void selectsWhatLiesAtAPlace(IntFunction<double[]> kind) {
        Percentile oracle = new Percentile().withEstimationType(EstimationType.R_7);
        for (int n : new int[] {1, 2, 3, 100, 256, 1001, 20_000}) {
            double[] values = kind.apply(n);
            double[] kept = values.clone();
            for (double percent : new double[] {0, 0.01, 10, 50, 95, 99.99, 100}) {
                double found = Sorted.percentile(values, percent);
                assertEquals(Percentiles.of(values).at(percent), found);
                if (percent > 0 && Math.abs(found) < 1e300) {
                    double expected = oracle.evaluate(values, percent);
                    assertEquals(expected, found, 1e-9 * Math.abs(expected) + Double.MIN_NORMAL);
                }
            }
            assertArrayEquals(kept, values);
        }
    }
}
