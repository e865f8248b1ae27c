package dev.vibra.cyclic;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import java.io.Serializable;
import java.util.Objects;

/**
 * Range of carriers that a rate modulates.
 *
 * @param band the range
 * @param cyclicHertz the rate in Hz, above zero, as found within the tolerance
 * @param excess how far the coherences stand above those beside them, in standard deviations of stationary noise for
 *     the mean over the range; the largest of so many tries reaches 4 to 8 in noise alone (measured on 60 recordings of
 *     4 s with 64 carriers and a tolerance of 1 Hz)
 */
public record CoherentBand(Band band, double cyclicHertz, double excess) implements Serializable {
    /**
     * Checks the values.
     *
     * @param band see the record
     * @param cyclicHertz see the record
     * @param excess see the record
     */
    public CoherentBand {
        Objects.requireNonNull(band, "band");
        Require.positive("cyclicHertz", cyclicHertz, "Hz");
        Require.finite("excess", excess);
    }

    /** Returns band, rate and excess, as in {@code 3400–4800 Hz at 87.3 Hz, excess 41}. */
    @Override
    public String toString() {
        return band + " at " + Digits.significant(cyclicHertz, 4) + " Hz, excess " + Digits.significant(excess, 2);
    }
}
