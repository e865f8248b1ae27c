package dev.vibra.balance.rotor;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * Disc of a lumped rotor; each disc is a plane in which unbalance can act.
 *
 * @param positionMetres place along the axis in m, finite
 * @param massKilograms mass in kg, finite, above zero
 * @param diametralInertia moment of inertia about an axis across in kg·m², finite, zero or more
 * @param polarInertia moment of inertia about the axis of rotation in kg·m², zero up to twice the diametral one
 */
public record Disc(double positionMetres, double massKilograms, double diametralInertia, double polarInertia)
        implements Serializable {
    /**
     * Checks the values.
     *
     * @param positionMetres place along the axis in m, finite
     * @param massKilograms mass in kg, finite, above zero
     * @param diametralInertia moment of inertia about an axis across in kg·m², finite, zero or more
     * @param polarInertia moment of inertia about the axis of rotation in kg·m², zero up to twice the diametral one
     */
    public Disc {
        Require.finite("position of disc", positionMetres);
        Require.positive("mass of disc", massKilograms, "kg");
        Require.notNegative("diametral moment of inertia", diametralInertia, "kg·m²");
        if (!(polarInertia >= 0 && polarInertia / 2 <= diametralInertia)) {
            throw Require.failure("polar moment of inertia", "zero up to twice the diametral one, " + diametralInertia
                    + " kg·m²", polarInertia);
        }
    }

    /**
     * Makes a disc without moments of inertia: a point mass.
     *
     * @param positionMetres place along the axis in m, finite
     * @param massKilograms mass in kg, finite, above zero
     * @return the disc
     * @throws IllegalArgumentException if a value is out of range
     */
    public static Disc pointMass(double positionMetres, double massKilograms) {
        return new Disc(positionMetres, massKilograms, 0, 0);
    }

    /**
     * Makes a solid cylinder.
     *
     * @param positionMetres place of its middle along the axis in m, finite
     * @param massKilograms mass in kg, finite, above zero
     * @param radiusMetres radius in m, finite, above zero
     * @param thicknessMetres length along the axis in m, finite, zero or more
     * @return the disc, with {@code Iₚ = m·r²/2} and {@code I_d = m·(3r² + h²)/12}
     * @throws IllegalArgumentException if a value is out of range
     */
    public static Disc cylinder(double positionMetres, double massKilograms, double radiusMetres,
            double thicknessMetres) {
        double r2 = Math.pow(Require.positive("radius of disc", radiusMetres, "m"), 2);
        double h2 = Math.pow(Require.notNegative("thickness of disc", thicknessMetres, "m"), 2);
        double polar = massKilograms * r2 / 2;
        return new Disc(positionMetres, massKilograms, Math.max(polar / 2, massKilograms * (3 * r2 + h2) / 12), polar);
    }

    /** Returns mass and place. */
    @Override
    public String toString() {
        return Digits.compact(massKilograms, 4) + " kg disc at " + Digits.compact(positionMetres, 4) + " m";
    }
}
