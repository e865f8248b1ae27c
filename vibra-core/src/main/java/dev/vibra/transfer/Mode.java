package dev.vibra.transfer;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * Natural frequency and damping of one mode.
 *
 * @param naturalHertz natural frequency in Hz, finite, above zero
 * @param dampingRatio damping ratio ζ, zero or more, below 1
 */
public record Mode(double naturalHertz, double dampingRatio) implements Serializable {
    /**
     * Checks the values.
     *
     * @param naturalHertz see the record
     * @param dampingRatio see the record
     */
    public Mode {
        Require.positive("naturalHertz", naturalHertz, "Hz");
        if (!(dampingRatio >= 0 && dampingRatio < 1)) {
            throw Require.failure("dampingRatio", "at least 0 and below 1", dampingRatio);
        }
    }

    /**
     * Takes off the damping that an exponential window added: {@code -ln(endValue)/(2πf·T)}.
     *
     * @param endValue weight of the window at the end of the block, above 0, at most 1
     * @param blockSeconds length of the block in s, above zero
     * @return the mode with the damping of the structure alone
     * @throws IllegalArgumentException if an argument is out of range or the window damped more than was measured
     */
    public Mode withoutWindowDamping(double endValue, double blockSeconds) {
        if (!(endValue > 0 && endValue <= 1)) {
            throw Require.failure("endValue", "above 0 and at most 1", endValue);
        }
        Require.positive("blockSeconds", blockSeconds, "s");
        return new Mode(naturalHertz, dampingRatio + Math.log(endValue) / (2 * Math.PI * naturalHertz * blockSeconds));
    }

    /** Returns frequency and damping, as in {@code 118.4 Hz, damping ratio 0.0123}. */
    @Override
    public String toString() {
        return Digits.significant(naturalHertz, 4) + " Hz, damping ratio " + Digits.significant(dampingRatio, 3);
    }
}
