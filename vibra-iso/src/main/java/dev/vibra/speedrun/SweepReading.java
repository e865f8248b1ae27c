package dev.vibra.speedrun;

import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/** What the recording of a tachometer tells: the sweep of the speed, or why there is none. */
public final class SweepReading implements Serializable {
    private static final long serialVersionUID = 1;

    private final SpeedSweep sweep; // null if there is none
    private final String reason;

    private SweepReading(SpeedSweep sweep, String reason) {
        this.sweep = sweep;
        this.reason = Objects.requireNonNull(reason, "reason");
        if ((sweep == null) == reason.isEmpty()) {
            throw new IllegalArgumentException("reason must be given without a sweep and then only: " + reason);
        }
    }

    private Object readResolve() {
        return new SweepReading(sweep, reason);
    }

    static SweepReading of(SpeedSweep sweep) {
        return new SweepReading(sweep, "");
    }

    static SweepReading refused(String reason) {
        return new SweepReading(null, reason);
    }

    /** {@return the sweep; empty for the reason told} */
    public Optional<SpeedSweep> sweep() {
        return Optional.ofNullable(sweep);
    }

    /** {@return why there is no sweep, without full stop; empty text if there is one} */
    public String reason() {
        return reason;
    }

    /** Two readings are equal if sweep and reason are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof SweepReading reading && Objects.equals(sweep, reading.sweep)
                && reason.equals(reading.reason);
    }

    /** Hashes sweep and reason. */
    @Override
    public int hashCode() {
        return 31 * Objects.hashCode(sweep) + reason.hashCode();
    }

    /** Returns the sweep, or why there is none. */
    @Override
    public String toString() {
        return sweep == null ? "no run-up or coast-down: " + reason : sweep.toString();
    }
}
