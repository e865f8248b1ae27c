package dev.vibra.balance;

import dev.vibra.internal.Digits;
import java.io.Serializable;
import java.util.Objects;

/**
 * Residual unbalance as seen in a bearing plane, the rotor taken as rigid.
 *
 * @param bearing which of the two bearings
 * @param gramMillimetres unbalance in g·mm
 * @param angleDegrees angle in degrees in the sense of the job
 * @param permissibleGramMillimetres permissible residual unbalance in that plane in g·mm; NaN without a tolerance
 * @see "ISO 21940-11:2016, tolerance planes"
 */
public record BearingUnbalance(String bearing, double gramMillimetres, double angleDegrees,
        double permissibleGramMillimetres) implements Serializable {
    /**
     * Checks the name.
     *
     * @param bearing which of the two bearings
     * @param gramMillimetres unbalance in g·mm
     * @param angleDegrees angle in degrees in the sense of the job
     * @param permissibleGramMillimetres permissible residual unbalance in that plane in g·mm; NaN without a tolerance
     */
    public BearingUnbalance {
        Objects.requireNonNull(bearing, "bearing");
    }

    /** Returns bearing, unbalance and what is permissible. */
    @Override
    public String toString() {
        String text = bearing + " " + Digits.significant(gramMillimetres, 4) + " g·mm";
        return Double.isNaN(permissibleGramMillimetres) ? text
                : text + " of " + Digits.significant(permissibleGramMillimetres, 4) + " g·mm";
    }
}
