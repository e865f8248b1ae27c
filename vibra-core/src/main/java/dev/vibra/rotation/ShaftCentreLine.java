package dev.vibra.rotation;

import dev.vibra.internal.Require;
import dev.vibra.level.Moments;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Mean position of a shaft in its bearing over time, from the gaps of two probes at right angles, relative to a
 * position at rest.
 *
 * @param points positions in the order of time
 */
public record ShaftCentreLine(List<Point> points) implements Serializable {
    /**
     * One position.
     *
     * @param seconds middle of the time over which was averaged, in s
     * @param x distance from rest along the x probe, in the unit of the gaps
     * @param y distance from rest along the y probe, in the unit of the gaps
     */
    public record Point(double seconds, double x, double y) implements Serializable {
        /**
         * Checks the values.
         *
         * @param seconds see the record
         * @param x see the record
         * @param y see the record
         * @throws IllegalArgumentException if a value is not finite
         */
        public Point {
            Require.finite("seconds", seconds);
            Require.finite("x", x);
            Require.finite("y", y);
        }
    }

    /**
     * Copies the list.
     *
     * @param points see the record
     */
    public ShaftCentreLine {
        points = Require.copy("points", points);
    }

    /**
     * Averages the gaps over equal parts of a recording.
     *
     * @param x recording of the x probe, mean kept
     * @param y recording of the y probe at the same times, mean kept
     * @param restX gap of the x probe at rest, in the SI unit of the recording
     * @param restY gap of the y probe at rest
     * @param parts number of parts, at least 1, at most the number of samples
     * @return the positions
     * @throws IllegalArgumentException if the recordings don't match or an argument is out of range
     */
    public static ShaftCentreLine of(Waveform x, Waveform y, double restX, double restY, int parts) {
        Objects.requireNonNull(y, "y");
        Objects.requireNonNull(x, "x");
        if (x.length() != y.length() || x.sampleRateHertz() != y.sampleRateHertz() || x.quantity() != y.quantity()) {
            throw new IllegalArgumentException("y must match x, " + x + ": " + y);
        }
        Require.finite("restX", restX);
        Require.finite("restY", restY);
        Require.within("parts", parts, 1, x.length(), "");
        double[] xs = x.samples();
        double[] ys = y.samples();
        List<Point> points = new ArrayList<>();
        int length = xs.length / parts;
        for (int p = 0; p < parts; p++) {
            points.add(new Point(x.startSeconds() + (p + 0.5) * length / x.sampleRateHertz(),
                    Moments.of(xs, p * length, length).mean() - restX,
                    Moments.of(ys, p * length, length).mean() - restY));
        }
        return new ShaftCentreLine(points);
    }

    /** Returns the number of positions. */
    @Override
    public String toString() {
        return "shaft centre line of " + points.size() + " positions";
    }
}
