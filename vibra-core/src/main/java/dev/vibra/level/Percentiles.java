package dev.vibra.level;

import dev.vibra.internal.Require;
import dev.vibra.internal.Sorted;
import java.io.Serializable;
import java.util.Objects;

/**
 * Levels that were stayed below for a share of the time, with linear interpolation between the sorted values.
 *
 * @see "R. J. Hyndman, Y. Fan, Sample quantiles in statistical packages, The American Statistician 50 (1996) 361-365,
 *     definition 7"
 */
public final class Percentiles implements Serializable {
    private static final long serialVersionUID = 1;

    private final double[] sorted;

    private Percentiles(double[] sorted) {
        this.sorted = sorted;
    }

    private Object readResolve() {
        return of(sorted);
    }

    /**
     * Sorts values.
     *
     * @param values values, at least one, all finite; copied
     * @return the percentiles
     * @throws IllegalArgumentException if there is no value or one is not finite
     */
    public static Percentiles of(double... values) {
        double[] copy = Objects.requireNonNull(values, "values").clone();
        Require.atLeast("number of values", copy.length, 1);
        Require.allFinite("values", copy);
        return new Percentiles(Sorted.copy(copy));
    }

    /**
     * Returns a percentile.
     *
     * @param percent share of the values below, 0 to 100
     * @return the value
     * @throws IllegalArgumentException if the share is out of range
     */
    public double at(double percent) {
        double place = Require.within("percent", percent, 0, 100, "%") / 100 * (sorted.length - 1);
        int below = (int) Math.floor(place);
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }

    /** Returns the median and the number of values. */
    @Override
    public String toString() {
        return "percentiles of " + sorted.length + " values, median " + at(50);
    }
}
