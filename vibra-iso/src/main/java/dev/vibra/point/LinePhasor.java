package dev.vibra.point;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A multiple of the shaft speed as a vector: velocity of size and phase at one instant, or at the mark of a tachometer.
 *
 * @param order multiple of the shaft speed, at least 1
 * @param hertz frequency in Hz, &gt; 0
 * @param real rms velocity in phase with a cosine that begins at the instant, in m/s
 * @param imaginary rms velocity that leads it by a quarter turn, in m/s
 * @param tie what the phase is counted from
 * @param instant time of the instant, the middle of the recording, on its scale in s; 0 with a tachometer
 */
public record LinePhasor(int order, double hertz, double real, double imaginary, Tie tie, double instant)
        implements Serializable {
    /** What a phase is counted from. */
    public enum Tie {
        /** The mark of a tachometer: vectors of different recordings can be compared. */
        TACHOMETER,
        /** An instant of the recording: only vectors of recordings taken at the same time can be compared. */
        INSTANT
    }

    /** No velocity is as large, and its size can be worked out. */
    private static final double MOST = 1e100;
    /** Instants this close are the same one: a thousandth of a turn at 100 Hz. */
    private static final double SAME_INSTANT = 1e-5;

    /**
     * Checks what it is given.
     *
     * @param order see the record
     * @param hertz see the record
     * @param real see the record
     * @param imaginary see the record
     * @param tie see the record
     * @param instant see the record
     */
    public LinePhasor {
        Require.atLeast("order", order, 1);
        Require.positive("hertz", hertz, "Hz");
        Require.within("real", real, -MOST, MOST, "m/s");
        Require.within("imaginary", imaginary, -MOST, MOST, "m/s");
        Objects.requireNonNull(tie, "tie");
        Require.finite("instant", instant);
    }

    /** {@return rms velocity in m/s} */
    public double size() {
        return Math.hypot(real, imaginary);
    }

    /**
     * Works out how far this vector leads another one of the same order.
     *
     * @param other vector of a recording taken at the same time, or with a tachometer at the same shaft
     * @return degrees from -180 to 180; empty where the two have no common instant or mark
     */
    public OptionalDouble degreesAheadOf(LinePhasor other) {
        Objects.requireNonNull(other, "other");
        boolean comparable = order == other.order && tie == other.tie
                && Math.abs(instant - other.instant) < SAME_INSTANT && size() > 0 && other.size() > 0;
        return comparable ? OptionalDouble.of(Math.toDegrees(Math.atan2(
                imaginary * other.real - real * other.imaginary, real * other.real + imaginary * other.imaginary)))
                : OptionalDouble.empty();
    }

    /** Returns order, size and phase, as in {@code 1×: 4.21 mm/s rms at 63°}. */
    @Override
    public String toString() {
        return order + "\u00d7: " + Digits.significant(1e3 * size(), 3) + " mm/s rms at "
                + Math.round(Math.toDegrees(Math.atan2(imaginary, real))) + "\u00b0";
    }
}
