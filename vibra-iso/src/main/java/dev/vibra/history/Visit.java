package dev.vibra.history;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What an earlier visit measured: values by stable name of the descriptor, by id of the point, when and in which state.
 * Immutable.
 */
public final class Visit implements Serializable {
    private static final long serialVersionUID = 1;

    private final String origin;
    private final Instant measured;
    private final String state;
    private final Map<String, Map<String, Double>> values;

    private Visit(String origin, Instant measured, String state, Map<String, Map<String, Double>> values) {
        this.origin = origin;
        this.measured = measured;
        this.state = state;
        this.values = values;
    }

    private Object readResolve() {
        Visit visit = of(origin, values);
        visit = measured == null ? visit : visit.measuredAt(measured);
        return state == null ? visit : visit.inState(state);
    }

    /**
     * Takes the values of a visit.
     *
     * @param origin where they are from, as in the name of a file; not blank
     * @param values finite values by descriptor by point, those of sound recordings alone; copied
     * @return a visit without date and state
     * @throws IllegalArgumentException if the origin is blank or a value isn't finite
     */
    public static Visit of(String origin, Map<String, Map<String, Double>> values) {
        Map<String, Map<String, Double>> copy = new LinkedHashMap<>();
        Objects.requireNonNull(values, "values").forEach((point, numbers) -> {
            Require.notBlank("point", point);
            Map<String, Double> own = new LinkedHashMap<>();
            Objects.requireNonNull(numbers, () -> "values of " + point).forEach((name, value) -> own.put(
                    Require.notBlank("descriptor", name), Require.finite("value of " + name + " at " + point,
                            Objects.requireNonNull(value, () -> "value of " + name + " at " + point))));
            copy.put(point, Collections.unmodifiableMap(own));
        });
        return new Visit(Require.notBlank("origin", origin), null, null, Collections.unmodifiableMap(copy));
    }

    /**
     * Tells when it was.
     *
     * @param when instant of the measurement
     * @return the visit with its date
     */
    public Visit measuredAt(Instant when) {
        return new Visit(origin, Objects.requireNonNull(when, "when"), state, values);
    }

    /**
     * Tells the state of the machine.
     *
     * @param newState state in words, as in {@code 80 % load}
     * @return the visit with the state
     */
    public Visit inState(String newState) {
        return new Visit(origin, measured, Require.notBlank("state", newState), values);
    }

    /** {@return where the values are from} */
    public String origin() {
        return origin;
    }

    /** {@return when it was, if that is known} */
    public Optional<Instant> measured() {
        return Optional.ofNullable(measured);
    }

    /** {@return the state of the machine, if it is known} */
    public Optional<String> state() {
        return Optional.ofNullable(state);
    }

    /** {@return values by descriptor by point, unmodifiable} */
    public Map<String, Map<String, Double>> values() {
        return values;
    }

    /** Two visits are equal if all that is known of them is. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Visit visit && origin.equals(visit.origin) && Objects.equals(measured, visit.measured)
                && Objects.equals(state, visit.state) && values.equals(visit.values);
    }

    /** Returns a hash code that agrees with {@link #equals}. */
    @Override
    public int hashCode() {
        return Objects.hash(origin, measured, state, values);
    }

    /** Returns origin, date and state, as in {@code 2025-07.json, 2025-07-30T09:30:00Z, 80 % load: 3 points}. */
    @Override
    public String toString() {
        return origin + (measured == null ? "" : ", " + measured) + (state == null ? "" : ", " + state) + ": "
                + values.size() + (values.size() == 1 ? " point" : " points");
    }
}
