package dev.vibra.simulation;

import dev.vibra.internal.Digits;

/**
 * Forces of one frequency at the housings of a machine: complex amplitudes {@code F} of {@code Re(F·exp(iφ(t)))} with
 * {@code φ = 2π·(order·turns of the main shaft + offset·t)}, for each housing horizontal, vertical and axial. Under
 * construction until it is handed to a {@link Cause}.
 */
final class Excitation {
    /** Directions of a housing. */
    static final int DIRECTIONS = 3;
    static final int HORIZONTAL = 0;
    static final int VERTICAL = 1;
    static final int AXIAL = 2;

    private final double order;
    private final double offsetHertz;
    private final double[] re;
    private final double[] im;

    private Excitation(double order, double offsetHertz, double[] re, double[] im) {
        this.order = order;
        this.offsetHertz = offsetHertz;
        this.re = re;
        this.im = im;
    }

    static Excitation of(double order, double offsetHertz, int housings) {
        return new Excitation(order, offsetHertz, new double[DIRECTIONS * housings], new double[DIRECTIONS * housings]);
    }

    /** Adds a force in one direction. */
    Excitation push(int housing, int direction, double amplitude, double phase) {
        re[DIRECTIONS * housing + direction] += amplitude * StrictMath.cos(phase);
        im[DIRECTIONS * housing + direction] += amplitude * StrictMath.sin(phase);
        return this;
    }

    /** Adds a force that turns with the shaft, horizontal first: the vertical one follows a quarter turn later. */
    Excitation rotating(int housing, double amplitude, double phase) {
        push(housing, HORIZONTAL, amplitude, phase);
        return push(housing, VERTICAL, amplitude, phase - Math.PI / 2);
    }

    /** Adds a radial force along a line that stands still, at an angle from the horizontal. */
    Excitation along(int housing, double angle, double amplitude, double phase) {
        push(housing, HORIZONTAL, amplitude * StrictMath.cos(angle), phase);
        return push(housing, VERTICAL, amplitude * StrictMath.sin(angle), phase);
    }

    /** The same forces at another frequency, scaled and turned. */
    Excitation at(double newOrder, double newOffsetHertz, double factor, double turn) {
        Excitation other = new Excitation(newOrder, newOffsetHertz, new double[re.length], new double[re.length]);
        double c = factor * StrictMath.cos(turn);
        double s = factor * StrictMath.sin(turn);
        for (int i = 0; i < re.length; i++) {
            other.re[i] = c * re[i] - s * im[i];
            other.im[i] = c * im[i] + s * re[i];
        }
        return other;
    }

    double order() {
        return order;
    }

    double offsetHertz() {
        return offsetHertz;
    }

    double hertz(double mainHertz) {
        return order * mainHertz + offsetHertz;
    }

    int size() {
        return re.length;
    }

    double re(int at) {
        return re[at];
    }

    double im(int at) {
        return im[at];
    }

    /** Returns order and offset. */
    @Override
    public String toString() {
        return "forces at " + Digits.compact(order, 4) + "\u00d7 + " + Digits.compact(offsetHertz, 4) + " Hz";
    }
}
