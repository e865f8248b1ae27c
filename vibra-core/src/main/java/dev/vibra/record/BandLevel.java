package dev.vibra.record;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Level;
import java.io.Serializable;
import java.util.Objects;

/**
 * A level within a band with the error that the length of the recording leaves in it.
 *
 * @param level the level, with its band
 * @param relativeError what 95 of 100 simulated recordings stay within, a part of the level, 0 to 1e100; see
 *     {@link dev.vibra.integration.MotionPlan} for what is in it
 * @param periods number of periods of the lower end of the band that the recording holds, finite, above zero
 */
public record BandLevel(Level level, double relativeError, double periods) implements Serializable {
    /**
     * Checks the values.
     *
     * @param level see the record
     * @param relativeError see the record
     * @param periods see the record
     */
    public BandLevel {
        if (Objects.requireNonNull(level, "level").band().isEmpty()) {
            throw new IllegalArgumentException("level must have a band: " + level);
        }
        Require.within("relativeError", relativeError, 0, 1e100, "");
        Require.positive("periods", periods, "");
    }

    /** Returns level and error, as in {@code 41.2 µm peak-peak (2–1000 Hz, zero-phase) ± 6.0 %, 8.00 periods}. */
    @Override
    public String toString() {
        return level + " ± " + Digits.significant(100 * relativeError, 2) + " %, " + Digits.significant(periods, 3)
                + " periods";
    }
}
