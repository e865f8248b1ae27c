package dev.vibra.descriptor;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** A number, or the reason why there is none. Immutable. */
public final class Outcome {
    private final Double value;
    private final String reason;

    private Outcome(Double value, String reason) {
        this.value = value;
        this.reason = reason;
    }

    /**
     * Takes a number.
     *
     * @param value number; one that isn't finite counts as none
     * @return the outcome
     */
    public static Outcome of(double value) {
        return Math.abs(value) < Double.POSITIVE_INFINITY ? new Outcome(value, null)
                : none("its value isn't a finite number");
    }

    /**
     * Takes the reason why there is no number.
     *
     * @param reason reason, without full stop
     * @return the outcome
     */
    public static Outcome none(String reason) {
        return new Outcome(null, Objects.requireNonNull(reason, "reason"));
    }

    /** {@return the number, if there is one} */
    public OptionalDouble value() {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** {@return why there is no number; empty if there is one} */
    public Optional<String> reason() {
        return Optional.ofNullable(reason);
    }

    /** Returns number or reason. */
    @Override
    public String toString() {
        return value == null ? "none: " + reason : value.toString();
    }
}
