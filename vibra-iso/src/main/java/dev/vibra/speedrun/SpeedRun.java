package dev.vibra.speedrun;

import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * One run-up or coast-down with all its points. Immutable; points are added as their recordings come, so that no two
 * recordings need be kept at a time.
 *
 * <p>A machine that passes its resonances moves with large amplitudes: run it up and down under the local codes, within
 * what maker and owner allow, with trips and protection on, and keep clear of it.
 */
public final class SpeedRun implements Serializable {
    private static final long serialVersionUID = 1;

    private final String id;
    private final SpeedSweep sweep; // null if there is none
    private final RotationSpeed service; // null if it isn't known
    private final List<PointRun> points;
    private final List<ProbePairRun> pairs;
    private final List<Left> leftOut;

    /**
     * Something that was asked for and couldn't be followed.
     *
     * @param part what it is: a point, a pair of probes or the run itself
     * @param reason why, without full stop
     */
    public record Left(String part, String reason) implements Serializable {
        private static final long serialVersionUID = 1;

        /**
         * Checks the texts.
         *
         * @param part see the record
         * @param reason see the record
         */
        public Left {
            Require.notBlank("part", part);
            Require.notBlank("reason", reason);
        }

        /** Returns both. */
        @Override
        public String toString() {
            return part + ": " + reason;
        }
    }

    private SpeedRun(String id, SpeedSweep sweep, RotationSpeed service, List<PointRun> points,
            List<ProbePairRun> pairs, List<Left> leftOut) {
        this.id = Require.notBlank("id", id);
        this.sweep = sweep;
        this.service = service;
        this.points = Require.copy("points", points);
        this.pairs = Require.copy("pairs", pairs);
        this.leftOut = Require.copy("leftOut", leftOut);
        if (sweep == null && leftOut.isEmpty()) {
            throw new IllegalArgumentException("leftOut must tell why there is no sweep: " + id);
        }
    }

    private Object readResolve() {
        return new SpeedRun(id, sweep, service, points, pairs, leftOut);
    }

    /**
     * Begins a run without points.
     *
     * @param id name of the run
     * @param sweep speed over time
     * @return the run
     */
    public static SpeedRun of(String id, SpeedSweep sweep) {
        return new SpeedRun(id, Objects.requireNonNull(sweep, "sweep"), null, List.of(), List.of(), List.of());
    }

    /**
     * Makes a run that couldn't be followed.
     *
     * @param id name of the run
     * @param reason why, without full stop
     * @return the run
     */
    public static SpeedRun without(String id, String reason) {
        return new SpeedRun(id, null, null, List.of(), List.of(), List.of(new Left(id, reason)));
    }

    /**
     * Sets the speed in service, to which the distance of resonances is told.
     *
     * @param speed speed in service of the shaft with the tachometer
     * @return the run
     */
    public SpeedRun inService(RotationSpeed speed) {
        return new SpeedRun(id, sweep, Objects.requireNonNull(speed, "speed"), points, pairs, leftOut);
    }

    /**
     * Adds a point.
     *
     * @param point what its recording shows
     * @return the run
     */
    public SpeedRun with(PointRun point) {
        return new SpeedRun(id, sweep, service, added(points, Objects.requireNonNull(point, "point")), pairs, leftOut);
    }

    /**
     * Adds a pair of probes.
     *
     * @param pair what they show
     * @return the run
     */
    public SpeedRun with(ProbePairRun pair) {
        return new SpeedRun(id, sweep, service, points, added(pairs, Objects.requireNonNull(pair, "pair")), leftOut);
    }

    /**
     * Notes what couldn't be followed.
     *
     * @param part a point or a pair of probes
     * @param reason why, without full stop
     * @return the run
     */
    public SpeedRun leaving(String part, String reason) {
        return new SpeedRun(id, sweep, service, points, pairs, added(leftOut, new Left(part, reason)));
    }

    private static <T> List<T> added(List<T> list, T one) {
        List<T> more = new ArrayList<>(list);
        more.add(one);
        return more;
    }

    /** {@return name of the run} */
    public String id() {
        return id;
    }

    /** {@return the speed over time; empty for the reason that {@link #leftOut()} tells} */
    public Optional<SpeedSweep> sweep() {
        return Optional.ofNullable(sweep);
    }

    /** {@return the speed in service, if it was told} */
    public Optional<RotationSpeed> service() {
        return Optional.ofNullable(service);
    }

    /** {@return the points that were followed} */
    public List<PointRun> points() {
        return points;
    }

    /** {@return pairs of probes} */
    public List<ProbePairRun> pairs() {
        return pairs;
    }

    /** {@return what couldn't be followed, and why} */
    public List<Left> leftOut() {
        return leftOut;
    }

    /** Returns name, sweep and number of points. */
    @Override
    public String toString() {
        return id + ": " + (sweep == null ? leftOut.get(0).reason() : sweep + ", " + points.size()
                + (points.size() == 1 ? " point" : " points"));
    }
}
