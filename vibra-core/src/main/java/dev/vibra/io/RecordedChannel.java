package dev.vibra.io;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Unit;
import java.util.Objects;

/**
 * One channel of a file that holds several, and what its values mean.
 *
 * @param number number of the channel, from 1
 * @param unit unit of the values after scaling
 * @param scale factor that turns a value of the file into the unit, finite, not zero
 */
public record RecordedChannel(int number, Unit unit, double scale) {
    /**
     * Checks what is given.
     *
     * @param number number of the channel
     * @param unit unit of the values after scaling
     * @param scale factor that turns a value of the file into the unit
     * @throws IllegalArgumentException if number or scale are out of range
     */
    public RecordedChannel {
        Require.atLeast("channel", number, 1);
        Objects.requireNonNull(unit, "unit");
        if (!(Math.abs(scale) > 0 && Math.abs(scale) < Double.POSITIVE_INFINITY)) {
            throw Require.failure("scale", "finite and not zero", scale);
        }
    }

    /**
     * Names a channel whose values are in a unit.
     *
     * @param number number of the channel, from 1
     * @param unit unit of the values
     * @return the channel with scale 1
     * @throws IllegalArgumentException if the number is below 1
     */
    public static RecordedChannel of(int number, Unit unit) {
        return new RecordedChannel(number, unit, 1);
    }

    /**
     * Sets the factor that turns a value of the file into the unit.
     *
     * @param newScale factor, finite, not zero; whole numbers of a WAV file count as fractions of full scale, -1 to 1
     * @return the changed channel
     * @throws IllegalArgumentException if the factor is out of range
     */
    public RecordedChannel withScale(double newScale) {
        return new RecordedChannel(number, unit, newScale);
    }

    /** Says what is wrong with a value that isn't finite in the file, or too large in SI units. */
    String complaint(double stored) {
        return Math.abs(stored) < Double.POSITIVE_INFINITY
                ? "must be within ±1e70 in SI units: " + stored + " times " + scale + " " + unit
                : "must be finite: " + stored;
    }

    /** Returns number, factor and unit, as in {@code channel 2, times 4 g}. */
    @Override
    public String toString() {
        return "channel " + number + ", " + (scale == 1 ? "in " : "times " + scale + " ") + unit;
    }
}
