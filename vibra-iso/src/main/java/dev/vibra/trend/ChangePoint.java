package dev.vibra.trend;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.math3.distribution.FDistribution;

/**
 * Where readings change: where a flat course begins to rise or fall, or where the level steps.
 *
 * <p>A trend is to be fitted since its beginning, not through the healthy time before. Both tests take the readings as
 * independent; readings that hang together seem to change more often than they do. A prognosis from the readings since
 * a change takes the change as known: its interval is a little too narrow.
 *
 * @param day time of the first reading after the change
 * @param probability probability that scatter alone looks like that; an upper bound
 */
public record ChangePoint(double day, double probability) implements Serializable {
    private static final int LEAST_READINGS = 8;

    /**
     * Checks the values.
     *
     * @param day time in days
     * @param probability from 0 to 1
     * @throws IllegalArgumentException if a value is out of range
     */
    public ChangePoint {
        Require.finite("day", day);
        Require.within("probability", probability, 0, 1, "");
    }

    /**
     * Finds where a flat course begins to rise or fall: the bend of the line {@code a}, then {@code a + b·(t − t₀)},
     * with the least squares among all bends at a reading.
     *
     * <p>The F test of the best bend against no bend, {@code F(1, n − 2)}, is multiplied by the number of bends tried
     * (Bonferroni), so that the search itself finds nothing.
     *
     * @param readings at least 8 readings
     * @param level probability below which a change counts, above 0 and at most 0.5, usually 0.01
     * @return the bend, the day being its own time; empty if none stands out of the scatter
     * @throws IllegalArgumentException if there are too few readings or the level is out of range
     */
    public static Optional<ChangePoint> onset(Readings readings, double level) {
        Objects.requireNonNull(readings, "readings");
        check(readings, level);
        double[] times = readings.days();
        double[] values = LineFits.toOne(readings.values());
        double flat = LineFits.squares(values, LineFits.mean(values));
        int bends = times.length - 2;
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int at = 0; at < bends; at++) {
            double squares = squaresWithBend(times, values, at);
            if (squares < least) {
                least = squares;
                best = at;
            }
        }
        double freedom = times.length - 2.0;
        // No scatter at all: flat readings have no bend, and a bend that leaves nothing over is certain.
        double ratio = flat == 0 ? 0 : least <= 1e-24 * flat ? Double.POSITIVE_INFINITY
                : (flat - least) / least * freedom;
        double one = ratio == Double.POSITIVE_INFINITY ? 0
                : 1 - new FDistribution(null, 1, freedom).cumulativeProbability(ratio);
        return found(times[best], Math.min(1, bends * one), level);
    }

    /** Least squares of a, then a + b·(t − t₀): a straight line in the variable max(0, t − t₀). */
    private static double squaresWithBend(double[] times, double[] values, int at) {
        double[] after = new double[times.length];
        for (int i = at; i < after.length; i++) {
            after[i] = times[i] - times[at];
        }
        Line line = LineFits.leastSquares(after, values);
        double sum = 0;
        for (double residual : LineFits.residuals(after, values, line)) {
            sum += residual * residual;
        }
        return sum;
    }

    /**
     * Finds where the level steps, by Pettitt's test of ranks: wild readings do it little harm.
     *
     * <p>{@code U_t = Σ_{i≤t} Σ_{j>t} sgn(x_i − x_j)}, {@code K = max |U_t|}, probability about {@code 2·exp(−6·K²/(n³
     * + n²))}.
     *
     * @param readings at least 8 readings
     * @param level probability below which a change counts, above 0 and at most 0.5, usually 0.01
     * @return the step, the day being the first reading after it; empty if none stands out of the scatter
     * @throws IllegalArgumentException if there are too few readings or the level is out of range
     * @see "A. N. Pettitt, Applied Statistics 28 (1979) 126-135"
     */
    public static Optional<ChangePoint> step(Readings readings, double level) {
        Objects.requireNonNull(readings, "readings");
        check(readings, level);
        double[] values = readings.values();
        int n = values.length;
        double largest = 0;
        int best = 0;
        double sum = 0;
        for (int t = 0; t < n - 1; t++) {
            for (double other : values) {
                sum += Math.signum(values[t] - other);
            }
            if (Math.abs(sum) > largest) {
                largest = Math.abs(sum);
                best = t;
            }
        }
        double cubes = Math.pow(n, 3) + Math.pow(n, 2);
        double probability = Math.min(1, 2 * Math.exp(-6 * largest * largest / cubes));
        return found(readings.day(best + 1), probability, level);
    }

    private static void check(Readings readings, double level) {
        Require.atLeast("number of readings", readings.size(), LEAST_READINGS);
        if (!(level > 0 && level <= 0.5)) {
            throw Require.failure("level", "above 0 and at most 0.5", level);
        }
    }

    private static Optional<ChangePoint> found(double day, double probability, double level) {
        return probability < level ? Optional.of(new ChangePoint(day, probability)) : Optional.empty();
    }

    /** Returns the day and the probability, as in {@code change at day 84, by chance at most 0.02 %}. */
    @Override
    public String toString() {
        String chance = probability < 1e-4 ? "less than 0.01 %" : "at most " + Digits.compact(100 * probability, 2)
                + " %";
        double shown = Math.abs(day) < 1e12 ? Math.rint(100 * day) / 100 : day;
        return "change at day " + Digits.compact(shown, 9) + ", by chance " + chance;
    }
}
