package dev.vibra.lines;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import org.junit.jupiter.api.Test;

class RunningMedianTest {
    @Test
    void isTheMedianOfCommonsMathOverEachWindow() {
        Random random = new Random(11);
        for (int length : new int[] {1, 2, 3, 5, 8, 30, 101}) {
            for (int reach : new int[] {1, 2, 7, 50, 200}) {
                double[] values = random.doubles(length).map(v -> Math.rint(20 * v)).toArray(); // with ties
                for (int first : new int[] {0, 3}) {
                    check(values, first, reach);
                }
            }
        }
    }

    private static void check(double[] values, int first, int reach) {
        double[] found = RunningMedian.of(values, first, reach);
        for (int i = first; i < values.length; i++) {
            double[] window = Arrays.copyOfRange(values, Math.max(first, i - reach),
                    Math.min(values.length, i + reach + 1));
            assertEquals(new Median().evaluate(window), found[i], "index " + i + ", reach " + reach);
        }
    }
}
