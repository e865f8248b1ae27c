package dev.vibra.rotation;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;
import org.apache.commons.math3.complex.Complex;

/**
 * Ellipse that a shaft describes at one order, from the vectors of two probes at right angles: the sum of a circle that
 * turns with the shaft (forward) and one that turns against it (backward).
 *
 * <p>Convention: the shaft turns from the x probe towards the y probe. A shaft whose y lags x by 90 degrees at equal
 * amplitudes turns forward in a circle.
 *
 * @param forward amplitude of the forward circle in the unit of the vectors, zero or more
 * @param backward amplitude of the backward circle, zero or more
 * @param inclinationRadians angle of the long axis from the x probe towards the y probe in rad, from 0 to below π
 * @see "ISO 13373-2:2016, orbits and two-sided spectra (principle, from memory, unverified)"
 */
public record Orbit(double forward, double backward, double inclinationRadians) implements Serializable {
    /**
     * Checks the values.
     *
     * @param forward see the record
     * @param backward see the record
     * @param inclinationRadians see the record
     * @throws IllegalArgumentException if a value is out of range
     */
    public Orbit {
        Require.notNegative("forward", forward, "");
        Require.notNegative("backward", backward, "");
        Require.notNegative("forward + backward", forward + backward, "");
        Require.within("inclinationRadians", inclinationRadians, 0, Math.PI, "rad");
    }

    /**
     * Makes the ellipse of the vectors of two probes.
     *
     * @param x vector of the x probe
     * @param y vector of the y probe, 90 degrees on in the direction of rotation
     * @return the ellipse
     */
    public static Orbit of(OrderVector x, OrderVector y) {
        Complex px = pointer(Objects.requireNonNull(x, "x"));
        Complex py = pointer(Objects.requireNonNull(y, "y"));
        // x + iy = F·exp(iωt) + conj-turning B·exp(-iωt), x = Re(px·exp(iωt)), y = Re(py·exp(iωt))
        Complex forward = px.add(py.multiply(Complex.I)).multiply(0.5);
        Complex backward = px.conjugate().add(py.conjugate().multiply(Complex.I)).multiply(0.5);
        double inclination = 0.5 * (forward.getArgument() + backward.getArgument());
        double wrapped = inclination - Math.PI * Math.floor(inclination / Math.PI);
        return new Orbit(forward.abs(), backward.abs(), wrapped);
    }

    private static Complex pointer(OrderVector vector) {
        return new Complex(vector.amplitude() * Math.cos(vector.lagRadians()),
                -vector.amplitude() * Math.sin(vector.lagRadians()));
    }

    /**
     * Returns the long half axis.
     *
     * @return largest distance from the middle
     */
    public double longHalfAxis() {
        return forward + backward;
    }

    /**
     * Returns the short half axis.
     *
     * @return smallest distance from the middle
     */
    public double shortHalfAxis() {
        return Math.abs(forward - backward);
    }

    /**
     * Tells whether the shaft's centre turns with the shaft.
     *
     * @return true if the forward circle is the larger one
     */
    public boolean isForward() {
        return forward > backward;
    }

    /** Returns half axes and direction. */
    @Override
    public String toString() {
        return Digits.significant(longHalfAxis(), 3) + " by " + Digits.significant(shortHalfAxis(), 3)
                + (isForward() ? ", forward" : ", backward") + ", inclined " + Digits.significant(
                        Math.toDegrees(inclinationRadians), 3) + "\u00b0";
    }
}
