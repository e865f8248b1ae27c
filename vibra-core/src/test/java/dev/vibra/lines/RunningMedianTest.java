package dev.vibra.lines;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import org.junit.jupiter.api.Test;

class RunningMedianTest {
    /** Window by window, by the median of Commons Math. */
    @Test
    void isTheMedianOfEachWindow() {
        Random random = new Random(1);
        for (int n : new int[] {1, 2, 7, 300}) {
            for (int reach : new int[] {1, 2, 20, 70, 1000}) {
                for (int first : new int[] {0, 1, 3, 299, 400}) {
                    double[] values = random.doubles(n).map(u -> u < 0.5 ? u : Math.rint(9 * u)).toArray();
                    assertArrayEquals(plainly(values, first, reach), RunningMedian.of(values, first, reach));
                }
            }
        }
    }

    private static double[] plainly(double[] values, int first, int reach) {
        double[] medians = new double[values.length];
        for (int i = first; i < values.length; i++) {
            double[] window = Arrays.copyOfRange(values, Math.max(first, i - reach),
                    Math.min(values.length, i + reach + 1));
            Arrays.sort(window);
            int half = window.length / 2;
            medians[i] = window.length % 2 == 1 ? window[half] : 0.5 * (window[half - 1] + window[half]);
            assertEquals(new Median().evaluate(window), medians[i], 1e-15 * medians[i]);
        }
        Arrays.fill(medians, 0, Math.min(first, values.length), first < values.length ? medians[first] : 0);
        return medians;
    }
}
