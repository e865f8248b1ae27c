package dev.vibra.diagnosis.study;

import java.util.SplittableRandom;

/**
 * A casing on four feet: a rigid body with six degrees of freedom. x is level, y upright, z along the shaft; places are
 * counted from its centre, which lies at shaft height.
 */
final class Casing {
    private final int first;
    private final double mass;
    private final double halfLength;
    private final double height;

    private Casing(int first, double mass, double halfLength, double height) {
        this.first = first;
        this.mass = mass;
        this.halfLength = halfLength;
        this.height = height;
    }

    /** Box of a mass, as long as twice the half length, as wide and high as twice the shaft height. */
    static Casing of(Structure structure, double mass, double halfLength, double height, SplittableRandom random) {
        int first = structure.mass(mass);
        structure.mass(mass);
        structure.mass(mass);
        double along = mass * (halfLength * halfLength + height * height) / 3;
        structure.mass(along * random.nextDouble(0.8, 1.2));
        structure.mass(along * random.nextDouble(0.8, 1.2));
        structure.mass(mass * 2 * height * height / 3 * random.nextDouble(0.8, 1.2));
        return new Casing(first, mass, halfLength, height);
    }

    double mass() {
        return mass;
    }

    double halfLength() {
        return halfLength;
    }

    double height() {
        return height;
    }

    /** Level motion at a place. */
    Tap x(double y, double z) {
        return Tap.of(first).plus(z, Tap.of(first + 4)).plus(-y, Tap.of(first + 5));
    }

    /** Upright motion at a place. */
    Tap y(double x, double z) {
        return Tap.of(first + 1).plus(x, Tap.of(first + 5)).plus(-z, Tap.of(first + 3));
    }

    /** Motion along the shaft at a place. */
    Tap z(double x, double y) {
        return Tap.of(first + 2).plus(y, Tap.of(first + 3)).plus(-x, Tap.of(first + 4));
    }

    /** Rocking about the level, upright and shaft axis: 0, 1, 2. */
    Tap turn(int axis) {
        return Tap.of(first + 3 + axis);
    }
}
