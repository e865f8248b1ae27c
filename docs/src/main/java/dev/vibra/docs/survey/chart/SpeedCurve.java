package dev.vibra.docs.survey.chart;

import java.util.Objects;

/**
 * An order over speed as it is drawn.
 *
 * @param name what stands beside it, as {@code 1×}
 * @param speeds speeds in r/min
 * @param levels levels in the unit of the figure, as many
 * @param lags lags in degrees, as many; not a number where noise hides them
 */
public record SpeedCurve(String name, double[] speeds, double[] levels, double[] lags) {
    /**
     * Checks that there are as many of each.
     *
     * @param name see the record
     * @param speeds see the record
     * @param levels see the record
     * @param lags see the record
     * @throws IllegalArgumentException if the lengths differ
     */
    public SpeedCurve {
        Objects.requireNonNull(name, "name");
        if (speeds.length != levels.length || speeds.length != lags.length || speeds.length == 0) {
            throw new IllegalArgumentException("speeds, levels and lags must be as many, at least one: "
                    + speeds.length + ", " + levels.length + ", " + lags.length);
        }
    }

    double most() {
        double most = 0;
        for (double level : levels) {
            most = level > most ? level : most;
        }
        return most;
    }

    /** {@return the curve without levels where noise hides the lag} */
    public SpeedCurve standing() {
        double[] out = levels.clone();
        for (int i = 0; i < out.length; i++) {
            out[i] = Double.isNaN(lags[i]) ? Double.NaN : out[i];
        }
        return new SpeedCurve(name, speeds, out, lags);
    }

    double slowest() {
        return Math.min(speeds[0], speeds[speeds.length - 1]);
    }

    double fastest() {
        return Math.max(speeds[0], speeds[speeds.length - 1]);
    }

    /** Number of the point whose speed is nearest. */
    int nearest(double speed) {
        int nearest = 0;
        for (int i = 1; i < speeds.length; i++) {
            nearest = Math.abs(speeds[i] - speed) < Math.abs(speeds[nearest] - speed) ? i : nearest;
        }
        return nearest;
    }

    /** Lags that go on across 360 degrees, the lowest between 0 and 360. */
    double[] goingOn() {
        double[] out = lags.clone();
        double before = Double.NaN;
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < out.length; i++) {
            if (!Double.isNaN(out[i])) {
                out[i] = Double.isNaN(before) ? out[i] : before + Math.IEEEremainder(out[i] - before, 360);
                before = out[i];
                lowest = Math.min(lowest, before);
            }
        }
        double turns = 360 * Math.floor(lowest / 360);
        for (int i = 0; i < out.length && turns != 0; i++) {
            out[i] -= turns;
        }
        return out;
    }
}
