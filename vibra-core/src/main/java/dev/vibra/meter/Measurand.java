package dev.vibra.meter;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import java.io.Serializable;
import java.util.Objects;

/**
 * What a meter shows at one of its places: a motion in a band, as a severity instrument measures it.
 *
 * @param quantity acceleration, or velocity or displacement by integration
 * @param band band, from above 0 Hz; its ends are those of the high-pass and the low-pass
 */
public record Measurand(Quantity quantity, Band band) implements Serializable {
    /**
     * Checks the parts.
     *
     * @param quantity see the record
     * @param band see the record
     */
    public Measurand {
        Objects.requireNonNull(quantity, "quantity");
        Objects.requireNonNull(band, "band");
    }

    /** Returns it as printed behind a level, as in {@code velocity (10–1000 Hz)}. */
    @Override
    public String toString() {
        return quantity + " (" + band + ")";
    }
}
