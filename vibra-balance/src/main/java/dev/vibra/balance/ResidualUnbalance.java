package dev.vibra.balance;

import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.internal.Digits;
import java.io.Serializable;
import java.util.Objects;

/**
 * Unbalance that a rotor has in one plane by its vibration and influence coefficients.
 *
 * @param plane name of the plane
 * @param unbalance the unbalance as a mass at the radius of the plane
 * @param permissibleGramMillimetres permissible residual unbalance of the plane in g·mm; NaN without a tolerance
 */
public record ResidualUnbalance(String plane, PlacedMass unbalance, double permissibleGramMillimetres)
        implements Serializable {
    /**
     * Checks the parts.
     *
     * @param plane name of the plane
     * @param unbalance the unbalance as a mass at the radius of the plane
     * @param permissibleGramMillimetres permissible residual unbalance of the plane in g·mm; NaN without a tolerance
     */
    public ResidualUnbalance {
        Objects.requireNonNull(plane, "plane");
        Objects.requireNonNull(unbalance, "unbalance");
    }

    /**
     * Returns the unbalance.
     *
     * @return unbalance in g·mm, zero or more
     */
    public double gramMillimetres() {
        return unbalance.gramMillimetres();
    }

    /** Returns plane, unbalance and what is permissible. */
    @Override
    public String toString() {
        String text = plane + " " + Digits.significant(gramMillimetres(), 4) + " g·mm";
        return Double.isNaN(permissibleGramMillimetres) ? text
                : text + " of " + Digits.significant(permissibleGramMillimetres, 4) + " g·mm";
    }
}
