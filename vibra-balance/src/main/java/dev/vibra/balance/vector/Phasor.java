package dev.vibra.balance.vector;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * Complex number that stands for a rotating vector.
 *
 * <p>Throughout the library a vibration phasor {@code V} means {@code x(t) = Re(V·exp(iωt))} with {@code t = 0} at the
 * tachometer mark, so its argument is the phase lead; a mass phasor has the angle counted with rotation. With these two
 * senses a rotor answers {@code V = α·U} with one fixed {@code α}.
 *
 * @param re real part, at most 1e250 in size
 * @param im imaginary part, at most 1e250 in size
 */
public record Phasor(double re, double im) implements Serializable {
    /** What a length or a unit makes of it is still a number. */
    private static final double LARGEST = 1e250;

    /** Nothing: 0 + 0i. */
    public static final Phasor ZERO = new Phasor(0, 0);

    /** The number 1. */
    public static final Phasor ONE = new Phasor(1, 0);

    /**
     * Checks the parts.
     *
     * @param re real part, at most 1e250 in size
     * @param im imaginary part, at most 1e250 in size
     */
    public Phasor {
        if (!(Math.abs(Require.finite("real part", re)) <= LARGEST)) {
            throw Require.failure("real part", "at most " + LARGEST + " in size", re);
        }
        if (!(Math.abs(Require.finite("imaginary part", im)) <= LARGEST)) {
            throw Require.failure("imaginary part", "at most " + LARGEST + " in size", im);
        }
    }

    /**
     * Makes a phasor of magnitude and argument.
     *
     * @param magnitude magnitude, finite
     * @param radians argument in rad, finite
     * @return the phasor
     * @throws IllegalArgumentException if a value is not finite
     */
    public static Phasor polar(double magnitude, double radians) {
        Require.finite("magnitude", magnitude);
        Require.finite("radians", radians);
        return new Phasor(magnitude * Math.cos(radians), magnitude * Math.sin(radians));
    }

    /**
     * Adds.
     *
     * @param other summand
     * @return the sum
     */
    public Phasor plus(Phasor other) {
        Objects.requireNonNull(other, "other");
        return new Phasor(re + other.re, im + other.im);
    }

    /**
     * Subtracts.
     *
     * @param other number to take away
     * @return the difference
     */
    public Phasor minus(Phasor other) {
        Objects.requireNonNull(other, "other");
        return new Phasor(re - other.re, im - other.im);
    }

    /**
     * Multiplies.
     *
     * @param other factor
     * @return the product
     */
    public Phasor times(Phasor other) {
        Objects.requireNonNull(other, "other");
        return new Phasor(re * other.re - im * other.im, re * other.im + im * other.re);
    }

    /**
     * Multiplies by a real number.
     *
     * @param factor factor, finite
     * @return the product
     * @throws IllegalArgumentException if the factor is not finite or the product too large
     */
    public Phasor times(double factor) {
        Require.finite("factor", factor);
        return new Phasor(re * factor, im * factor);
    }

    /**
     * Divides.
     *
     * @param divisor number to divide by, not zero
     * @return the quotient
     * @throws IllegalArgumentException if the divisor is zero or the quotient is too large for a double
     */
    public Phasor dividedBy(Phasor divisor) {
        Objects.requireNonNull(divisor, "divisor");
        // Scaling by the larger part keeps the squares in range (R. L. Smith, 1962).
        double scale = Math.max(Math.abs(divisor.re), Math.abs(divisor.im));
        if (!(scale > 0)) {
            throw new IllegalArgumentException("divisor must not be zero: " + divisor);
        }
        double c = divisor.re / scale;
        double d = divisor.im / scale;
        double square = c * c + d * d;
        return new Phasor((re * c + im * d) / square / scale, (im * c - re * d) / square / scale);
    }

    /**
     * Mirrors at the real axis.
     *
     * @return the complex conjugate
     */
    public Phasor conjugate() {
        return new Phasor(re, -im);
    }

    /**
     * Turns by half a revolution.
     *
     * @return the number with both signs changed
     */
    public Phasor negated() {
        return new Phasor(-re, -im);
    }

    /**
     * Returns the magnitude.
     *
     * @return magnitude, zero or more
     */
    public double magnitude() {
        return Math.hypot(re, im);
    }

    /**
     * Returns the argument.
     *
     * @return argument in rad, from -π to π; zero for the number zero
     */
    public double argument() {
        return magnitude() == 0 ? 0 : Math.atan2(im, re);
    }

    /** Written out: the JDK holds the class loader of the record whose generated one ran last. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Phasor that && Double.compare(re, that.re) == 0 && Double.compare(im, that.im) == 0;
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(re, im);
    }

    /** Returns magnitude and argument, as in {@code 5.100 at 63.0°}. */
    @Override
    public String toString() {
        return Digits.significant(magnitude(), 4) + " at " + Angles.text(Angles.degrees(argument()));
    }
}
