package dev.vibra.bearing.lines;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.testing.Reference;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.apache.commons.math3.special.Beta;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class RankProbabilityTest {
    /** With all numbers but k equal to 1, only the k-th rank can be improbable. */
    @Test
    @DisplayName("each rank has the binomial tail of SciPy, times the ranks tried")
    void binomialTails() {
        Reference reference = Reference.of("scipy-ranks.txt");
        double[] x = reference.row("x");
        for (int n : new int[] {2, 3, 5}) {
            for (int i = 0; i < x.length; i++) {
                double least = 0;
                for (int k = 2; k <= n; k++) {
                    least = Math.min(least, reference.row(n + "." + k)[i] + Math.log(n - 1));
                }
                double[] logs = new double[n];
                java.util.Arrays.fill(logs, Math.log(x[i]));
                assertEquals(least, RankProbability.log(logs, n), 1e-5 * Math.max(1, -least), n + " of " + x[i]);
            }
        }
    }

    /** Above and below one half, where few lines are summed and where many are not: Commons Math's binomial law. */
    @Test
    void binomialTailsOfManyLines() {
        for (int n : new int[] {2, 7, 20, 32, 33, 60}) {
            for (double x : new double[] {1e-5, 0.01, 0.3, 0.5, 0.6, 0.99, 1 - 1e-9}) {
                double least = 0;
                BinomialDistribution law = new BinomialDistribution(null, n, x);
                for (int k = 2; k <= n; k++) {
                    double tail = 1 - law.cumulativeProbability(k - 1);
                    tail = tail > 1e-3 ? tail : Beta.regularizedBeta(x, k, n - k + 1.0);
                    least = Math.min(least, Math.log(tail) + Math.log(n - 1));
                }
                double[] logs = new double[n];
                java.util.Arrays.fill(logs, Math.log(x));
                assertEquals(least, RankProbability.log(logs, n), 1e-9 * Math.max(1, -least), n + " of " + x);
            }
        }
    }

    @Test
    void oneLineHoweverHighProvesNothing() {
        assertEquals(0, RankProbability.log(new double[] {-1e6, 0, 0, 0, 0}, 5));
        assertEquals(0, RankProbability.log(new double[] {-1e6, Double.NaN}, 1));
        assertEquals(0, RankProbability.log(new double[0], 0));
    }

    @Test
    void twoLinesNeedWhatTheInverseSays() {
        double line = RankProbability.logLineOfTwo(-30, 5);
        assertEquals(-30, RankProbability.log(new double[] {line, line, 0, 0, 0}, 5), 1e-4);
    }

    @Test
    void countsBeyondTheLinesAreRefused() {
        assertEquals("count must be from 0 to 2: 64", assertThrows(IllegalArgumentException.class, () ->
                RankProbability.log(new double[2], 64)).getMessage());
        assertEquals("n must be from 2 to 1000000: 1", assertThrows(IllegalArgumentException.class, () ->
                RankProbability.logLineOfTwo(-1, 1)).getMessage());
        assertTrue(RankProbability.log(DoubleStream.generate(() -> -14).limit(100).toArray(), 100) > -1e4);
    }
}
