package dev.vibra.speedrun;

import dev.vibra.internal.Require;
import dev.vibra.level.Percentiles;
import dev.vibra.quantity.Quantity;
import dev.vibra.rotation.AngularWaveform;
import dev.vibra.rotation.OrderTrack;
import dev.vibra.rotation.OrderVector;
import dev.vibra.rotation.SpeedPoint;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * One order over a sweep, with the noise beside it: the mean of both sides a quarter of an order away, where no
 * multiple of half the speed lies. Immutable.
 */
public final class FollowedOrder implements Serializable {
    private static final long serialVersionUID = 1;
    /** Where the noise is read, in orders beside the order; with eight turns the Hann window has a zero there. */
    private static final double BESIDE = 0.25;
    private static final int SMOOTHED = 4;
    /** Amplitude over that of the noise from which an order stands out; noise alone reaches it once in ten thousand. */
    private static final double STANDS = 3;

    private final Quantity quantity;
    private final OrderTrack track;
    private final double[] noise;

    private FollowedOrder(Quantity quantity, OrderTrack track, double[] noise) {
        this.quantity = Objects.requireNonNull(quantity, "quantity");
        this.track = Objects.requireNonNull(track, "track");
        this.noise = Require.allNotNegative("noise", Objects.requireNonNull(noise, "noise").clone());
        Require.count("length of noise", noise.length, track.points().size(), track.points().size());
    }

    private Object readResolve() {
        return new FollowedOrder(quantity, track, noise);
    }

    /** Follows an order over blocks of turns; what lies outside the sweep is left out. */
    static FollowedOrder of(AngularWaveform wave, SpeedSweep sweep, double order, int turns) {
        List<SpeedPoint> on = within(sweep, OrderTrack.of(wave, order, turns));
        List<SpeedPoint> above = within(sweep, OrderTrack.of(wave, order + BESIDE, turns));
        List<SpeedPoint> below = within(sweep, OrderTrack.of(wave, order - BESIDE, turns));
        double[] powers = new double[on.size()];
        for (int i = 0; i < powers.length; i++) {
            powers[i] = 0.5 * (square(above.get(i)) + square(below.get(i)));
        }
        double[] noise = new double[powers.length];
        for (int i = 0; i < noise.length; i++) {
            double[] around = Arrays.copyOfRange(powers, Math.max(0, i - SMOOTHED), Math.min(powers.length,
                    i + SMOOTHED + 1));
            noise[i] = Math.sqrt(Percentiles.of(around).at(50));
        }
        return new FollowedOrder(wave.quantity(), new OrderTrack(order, on), noise);
    }

    /** The speed of the sweep is smoother than that at a single turn. */
    private static List<SpeedPoint> within(SpeedSweep sweep, OrderTrack track) {
        return track.points().stream().filter(point -> point.seconds() >= sweep.beginSeconds()
                && point.seconds() <= sweep.endSeconds()).map(point -> new SpeedPoint(point.seconds(),
                        sweep.speedAt(point.seconds()), point.vector())).toList();
    }

    private static double square(SpeedPoint point) {
        return point.vector().amplitude() * point.vector().amplitude();
    }

    /** {@return the order that is followed} */
    public double order() {
        return track.order();
    }

    /** {@return the quantity of the vectors, in its SI unit, zero-to-peak} */
    public Quantity quantity() {
        return quantity;
    }

    /** {@return amplitude and lag over speed in the order of time} */
    public OrderTrack track() {
        return track;
    }

    /**
     * Returns the noise at a point.
     *
     * @param index number of the point from 0
     * @return amplitude that noise alone would read, rms, in the SI unit of the quantity
     * @throws IndexOutOfBoundsException if there is no such point
     */
    public double noise(int index) {
        return noise[Objects.checkIndex(index, noise.length)];
    }

    /**
     * Tells whether the order stands out of the noise at a point.
     *
     * @param index number of the point from 0
     * @return true from three times the noise on
     * @throws IndexOutOfBoundsException if there is no such point
     */
    public boolean stands(int index) {
        return track.points().get(index).vector().amplitude() > STANDS * noise(index);
    }

    /** {@return share of the points at which the order stands out of the noise, 0 to 1} */
    public double standingShare() {
        int count = 0;
        for (int i = 0; i < noise.length; i++) {
            count += stands(i) ? 1 : 0;
        }
        return (double) count / noise.length;
    }

    /**
     * Turns the vectors into another quantity of motion, each at the frequency of its order and speed, as if the speed
     * stood still there.
     *
     * @param target displacement, velocity or acceleration
     * @return the same order in that quantity
     * @throws IllegalArgumentException if either isn't a motion
     */
    public FollowedOrder in(Quantity target) {
        int times = quantity.integrationsTo(Objects.requireNonNull(target, "target"));
        if (times == 0) {
            return this;
        }
        double[] scaled = new double[noise.length];
        List<SpeedPoint> points = new ArrayList<>();
        for (int i = 0; i < scaled.length; i++) {
            SpeedPoint point = track.points().get(i);
            double factor = Math.pow(2 * Math.PI * point.speed().hertzOfOrder(order()), -times);
            scaled[i] = noise[i] * factor;
            points.add(with(point, point.vector().amplitude() * factor,
                    point.vector().lagRadians() + times * 0.5 * Math.PI));
        }
        return new FollowedOrder(target, new OrderTrack(order(), points), scaled);
    }

    /** Takes a vector that doesn't depend on speed off every point. */
    FollowedOrder without(OrderVector steady) {
        double re = steady.amplitude() * Math.cos(steady.lagRadians());
        double im = steady.amplitude() * Math.sin(steady.lagRadians());
        List<SpeedPoint> points = track.points().stream().map(point -> {
            double x = point.vector().amplitude() * Math.cos(point.vector().lagRadians()) - re;
            double y = point.vector().amplitude() * Math.sin(point.vector().lagRadians()) - im;
            return with(point, Math.hypot(x, y), Math.atan2(y, x));
        }).toList();
        return new FollowedOrder(quantity, new OrderTrack(order(), points), noise);
    }

    private static SpeedPoint with(SpeedPoint point, double amplitude, double lag) {
        return new SpeedPoint(point.seconds(), point.speed(), new OrderVector(amplitude, lag));
    }

    /** Two are equal if order, quantity, points and noise are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof FollowedOrder order && quantity == order.quantity && track.equals(order.track)
                && Arrays.equals(noise, order.noise);
    }

    /** Hashes points and noise. */
    @Override
    public int hashCode() {
        return 31 * track.points().hashCode() + Arrays.hashCode(noise);
    }

    /** Returns order, quantity and number of points. */
    @Override
    public String toString() {
        return quantity + ", " + track;
    }
}
