package dev.vibra.simulation;

/**
 * Bearing forces of a rigid rotor on two bearings.
 *
 * <p>A force at a part {@code u} of the span loads the bearings with {@code (1 - u)} and {@code u} of it; beyond the
 * span ({@code u > 1}) the far bearing is pulled the other way. A couple loads them with opposite forces.
 *
 * @see "statics of a beam on two supports"
 */
final class RotorForces {
    private RotorForces() {}

    /** Adds a force that turns, at a part of the span. */
    static Excitation rotating(Excitation forces, PlanParts.Rotor rotor, double plane, double size, double phase) {
        forces.rotating(rotor.first(), size * (1 - plane), phase);
        return forces.rotating(rotor.second(), size * plane, phase);
    }

    /** Adds a couple that turns. */
    static Excitation couple(Excitation forces, PlanParts.Rotor rotor, double size, double phase) {
        forces.rotating(rotor.first(), size, phase);
        return forces.rotating(rotor.second(), -size, phase);
    }

    /** Adds a force along a line that stands still, at a part of the span. */
    static Excitation along(Excitation forces, PlanParts.Rotor rotor, double plane, double angle, double size,
            double phase) {
        forces.along(rotor.first(), angle, size * (1 - plane), phase);
        return forces.along(rotor.second(), angle, size * plane, phase);
    }

    /** Adds forces along the shaft at both ends, in the same sense or opposed. */
    static Excitation axial(Excitation forces, PlanParts.Rotor rotor, double first, double second, double phase) {
        forces.push(rotor.first(), Excitation.AXIAL, first, phase);
        return forces.push(rotor.second(), Excitation.AXIAL, second, phase);
    }
}
