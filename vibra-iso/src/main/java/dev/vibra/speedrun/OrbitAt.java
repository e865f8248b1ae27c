package dev.vibra.speedrun;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.Orbit;
import dev.vibra.rotation.OrderVector;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;

/**
 * The path of a shaft's centre at one speed: as it was recorded over a few turns, and the ellipse once per turn.
 * Immutable.
 */
public final class OrbitAt implements Serializable {
    private static final long serialVersionUID = 1;

    private final RotationSpeed speed;
    private final Orbit ellipse;
    private final OrderVector right;
    private final OrderVector up;
    private final double[] rights;
    private final double[] ups;
    private final int samplesPerTurn;

    OrbitAt(RotationSpeed speed, Orbit ellipse, OrderVector right, OrderVector up, double[] rights, double[] ups,
            int samplesPerTurn) {
        this.speed = Objects.requireNonNull(speed, "speed");
        this.ellipse = Objects.requireNonNull(ellipse, "ellipse");
        this.right = Objects.requireNonNull(right, "right");
        this.up = Objects.requireNonNull(up, "up");
        this.rights = Require.finiteCopy("rights", rights);
        this.ups = Require.finiteCopy("ups", ups);
        this.samplesPerTurn = Require.count("samplesPerTurn", samplesPerTurn, 4, 1024);
        Require.count("length of ups", this.ups.length, this.rights.length, this.rights.length);
    }

    private Object readResolve() {
        return new OrbitAt(speed, ellipse, right, up, rights, ups, samplesPerTurn);
    }

    /** {@return the speed of the shaft} */
    public RotationSpeed speed() {
        return speed;
    }

    /** {@return the ellipse once per turn in m; its inclination counts from the probe from which the shaft turns} */
    public Orbit ellipse() {
        return ellipse;
    }

    /** {@return the vector once per turn to the right, in m} */
    public OrderVector right() {
        return right;
    }

    /** {@return the vector once per turn upwards, in m} */
    public OrderVector up() {
        return up;
    }

    /** {@return places to the right over some turns from a mark on, about their mean, in m: a new array} */
    public double[] rights() {
        return rights.clone();
    }

    /** {@return places upwards at the same times, in m: a new array} */
    public double[] ups() {
        return ups.clone();
    }

    /** {@return places per turn; the first of each turn is that at the mark} */
    public int samplesPerTurn() {
        return samplesPerTurn;
    }

    /** Two are equal if speed, ellipse and places are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof OrbitAt at && speed.equals(at.speed) && ellipse.equals(at.ellipse)
                && right.equals(at.right) && up.equals(at.up) && Arrays.equals(rights, at.rights)
                && Arrays.equals(ups, at.ups) && samplesPerTurn == at.samplesPerTurn;
    }

    /** Hashes speed and places. */
    @Override
    public int hashCode() {
        return 31 * (31 * speed.hashCode() + Arrays.hashCode(rights)) + Arrays.hashCode(ups);
    }

    /** Returns speed, half axes in µm and whether the path goes with the shaft. */
    @Override
    public String toString() {
        return Math.round(speed.revolutionsPerMinute()) + " r/min: " + Digits.significant(
                1e6 * ellipse.longHalfAxis(), 3) + " by " + Digits.significant(1e6 * ellipse.shortHalfAxis(), 3)
                + " \u00b5m, " + (ellipse.isForward() ? "forward" : "backward");
    }
}
