package dev.vibra.simulation;

import dev.vibra.internal.Digits;
import java.util.ArrayList;
import java.util.List;

/**
 * One origin of vibration: forces at one or several frequencies whose sizes to each other are told by physics, and
 * how large the vibration is that they make. Under construction until it is handed to a {@link Scene}.
 */
final class Cause {
    private final List<Excitation> excitations = new ArrayList<>();
    private final List<Knocks> knocks = new ArrayList<>();
    private double level;
    private boolean relative = true;
    private Wander wander = Wander.NONE;
    private Origin origin = Origin.MACHINE;

    /** What keeps it going. */
    enum Origin {
        /** Rotation of this machine. */
        MACHINE,
        /** The motor's field, gone at once when the power is cut. */
        MAGNETISM,
        /** Another machine. */
        OUTSIDE
    }

    /** Makes a cause whose strongest point reaches a level, told as part of the boundary B/C of that point. */
    static Cause reaching(double level) {
        Cause cause = new Cause();
        cause.level = level;
        return cause;
    }

    /** The same forces, reaching another level. */
    Cause reachingInstead(double newLevel) {
        level = newLevel;
        relative = true;
        return this;
    }

    /** Makes a cause whose forces are told as they are. */
    static Cause scaledBy(double factor) {
        Cause cause = reaching(factor);
        cause.relative = false;
        return cause;
    }

    Cause with(Excitation excitation) {
        excitations.add(excitation);
        return this;
    }

    Cause with(Knocks train) {
        knocks.add(train);
        return this;
    }

    Cause wandering(Wander how) {
        wander = how;
        return this;
    }

    Cause from(Origin where) {
        origin = where;
        return this;
    }

    Origin origin() {
        return origin;
    }

    List<Excitation> excitations() {
        return excitations;
    }

    List<Knocks> knocks() {
        return knocks;
    }

    Wander wander() {
        return wander;
    }

    boolean isRelative() {
        return relative;
    }

    /** Level as part of the boundary, or factor of the forces. */
    double level() {
        return level;
    }

    /** Returns level and number of frequencies. */
    @Override
    public String toString() {
        return Digits.compact(level, 3) + (relative ? " of B/C, " : " times, ") + excitations.size() + " frequencies";
    }
}
