package dev.vibra.spectrum;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * How the spectra of the blocks of a recording become one.
 *
 * @param kind rule of averaging
 * @param newestWeight weight of the newest block under exponential averaging, above 0, at most 1; 1 otherwise
 */
public record Averaging(Kind kind, double newestWeight) implements Serializable {
    /** Rule of averaging. */
    public enum Kind {
        /** Mean of the mean squares: the usual choice, lowers the scatter of noise, not its level. */
        RMS,
        /** Mean of the complex lines: what is not in step with the blocks averages out. */
        VECTOR,
        /** Largest value that each line had. */
        PEAK_HOLD,
        /** Mean of the mean squares with weights that fall with age. */
        EXPONENTIAL
    }

    /**
     * Checks the values.
     *
     * @param kind see the record
     * @param newestWeight see the record
     */
    public Averaging {
        Objects.requireNonNull(kind, "kind");
        if (!(newestWeight > 0 && newestWeight <= 1)) {
            throw Require.failure("newestWeight", "above 0 and at most 1", newestWeight);
        }
    }

    /**
     * Returns the mean of the mean squares.
     *
     * @return rms averaging
     */
    public static Averaging rms() {
        return new Averaging(Kind.RMS, 1);
    }

    /**
     * Returns the mean of the complex lines. Use it on blocks that start at the same angle of the shaft.
     *
     * @return vector (synchronous) averaging
     */
    public static Averaging vector() {
        return new Averaging(Kind.VECTOR, 1);
    }

    /**
     * Returns the largest value of each line.
     *
     * @return peak hold
     */
    public static Averaging peakHold() {
        return new Averaging(Kind.PEAK_HOLD, 1);
    }

    /**
     * Returns a mean that forgets: {@code new = (1 - w)·old + w·block}, started with the first block.
     *
     * @param newestWeight weight w of the newest block, above 0, at most 1
     * @return exponential averaging
     * @throws IllegalArgumentException if the weight is out of range
     */
    public static Averaging exponential(double newestWeight) {
        return new Averaging(Kind.EXPONENTIAL, newestWeight);
    }

    /** Returns the rule in words. */
    @Override
    public String toString() {
        return switch (kind) {
            case RMS -> "rms";
            case VECTOR -> "vector";
            case PEAK_HOLD -> "peak hold";
            case EXPONENTIAL -> "exponential " + newestWeight;
        };
    }
}
