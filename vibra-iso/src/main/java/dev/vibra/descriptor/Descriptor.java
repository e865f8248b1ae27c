package dev.vibra.descriptor;

import dev.vibra.internal.Require;
import dev.vibra.meter.LevelMeter;
import java.util.Objects;
import java.util.function.Function;

/**
 * One row of the table of descriptors: a stable name, and how the number behind it is made.
 *
 * @param name stable name, as in {@code velocity-rms-10-1000Hz}
 * @param unit unit in plain letters, as in {@code mm/s}; {@code 1} for a plain number
 * @param basis what the recording must be good for
 * @param meaning what the number is: quantity, detector, band, method
 * @param rule makes the number, in the unit, from the signals of a recording
 * @param reading reads the same number from a meter that has settled
 */
public record Descriptor(String name, String unit, Basis basis, String meaning,
        Function<Signals, Outcome> rule, Function<LevelMeter, Outcome> reading) {
    /** What a recording must be good for. */
    public enum Basis {
        /** The samples as they are. */
        SAMPLES,
        /** Motion that is integrated from them. */
        MOTION
    }

    /**
     * Checks that the row is complete.
     *
     * @param name see the record
     * @param unit see the record
     * @param basis see the record
     * @param meaning see the record
     * @param rule see the record
     * @param reading see the record
     */
    public Descriptor {
        name = Require.notBlank("name", name);
        unit = Require.notBlank("unit", unit);
        Objects.requireNonNull(basis, "basis");
        meaning = Require.notBlank("meaning", meaning);
        Objects.requireNonNull(rule, "rule");
        Objects.requireNonNull(reading, "reading");
    }

    /**
     * Makes a row that no meter reads.
     *
     * @param name stable name
     * @param unit unit in plain letters
     * @param basis what the recording must be good for
     * @param meaning what the number is
     * @param rule makes the number from the signals of a recording
     */
    public Descriptor(String name, String unit, Basis basis, String meaning, Function<Signals, Outcome> rule) {
        this(name, unit, basis, meaning, rule, meter -> Outcome.none("no meter reads it"));
    }

    /**
     * Adds how a meter reads the number.
     *
     * @param newReading reads it, in the unit, from a meter that has settled
     * @return the row with it
     */
    public Descriptor readBy(Function<LevelMeter, Outcome> newReading) {
        return new Descriptor(name, unit, basis, meaning, rule, newReading);
    }

    /** Returns name, unit and meaning. */
    @Override
    public String toString() {
        return name + " in " + unit + ": " + meaning;
    }
}
