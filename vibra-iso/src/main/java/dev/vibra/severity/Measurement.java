package dev.vibra.severity;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Level;
import dev.vibra.uncertainty.UncertaintyBudget;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/** A level with how it was measured and how uncertain it is: what a verdict needs besides the limits. */
public final class Measurement implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double LARGEST_UNCERTAINTY = 1000;

    private final Level level;
    private final UncertaintyBudget uncertainty;
    private final String method;
    private final MeasuringChain chain;

    private Measurement(Level level, UncertaintyBudget uncertainty, String method, MeasuringChain chain) {
        this.level = Objects.requireNonNull(level, "level");
        this.uncertainty = uncertainty;
        this.method = method;
        this.chain = chain;
    }

    /**
     * Takes a level, uncertainty and method not stated.
     *
     * @param level level in its band
     * @return the measurement
     */
    public static Measurement of(Level level) {
        return new Measurement(level, null, null, null);
    }

    /**
     * States the uncertainty.
     *
     * @param budget contributions relative to the level; at least one, since an empty budget states nothing; together
     *     (k = 2) at most 1000 times the level
     * @return the measurement with that uncertainty
     * @throws IllegalArgumentException if the budget has no contribution or is too large
     */
    public Measurement withUncertainty(UncertaintyBudget budget) {
        if (budget.contributions().isEmpty()) {
            throw new IllegalArgumentException("budget must have a contribution: " + budget);
        }
        Require.within("relative expanded uncertainty", budget.relativeExpanded(), 0, LARGEST_UNCERTAINTY, "");
        return new Measurement(level, budget, method, chain);
    }

    /**
     * States how the level was measured.
     *
     * @param newMethod in words, as in {@code band-limiting chain of ISO 2954:2012}
     * @return the measurement with that method
     * @throws IllegalArgumentException if the text is blank
     */
    public Measurement withMethod(String newMethod) {
        if (newMethod.isBlank()) {
            throw new IllegalArgumentException("method must not be blank");
        }
        return new Measurement(level, uncertainty, newMethod.strip(), chain);
    }

    /**
     * States what the recording can show; a criterion whose band it doesn't cover then refuses to judge.
     *
     * @param newChain recording, sensor, mounting
     * @return the measurement with that chain
     */
    public Measurement withChain(MeasuringChain newChain) {
        return new Measurement(level, uncertainty, method, Objects.requireNonNull(newChain, "chain"));
    }

    /**
     * Returns what the recording can show.
     *
     * @return the chain; empty if not stated
     */
    public Optional<MeasuringChain> chain() {
        return Optional.ofNullable(chain);
    }

    /**
     * Returns the level.
     *
     * @return the level
     */
    public Level level() {
        return level;
    }

    /**
     * Returns the contributions to the uncertainty.
     *
     * @return the budget; empty if not stated
     */
    public Optional<UncertaintyBudget> uncertainty() {
        return Optional.ofNullable(uncertainty);
    }

    /**
     * Returns how the level was measured.
     *
     * @return in words; empty if not stated
     */
    public Optional<String> method() {
        return Optional.ofNullable(method);
    }

    /** Two measurements are equal if level, uncertainty, method and chain are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Measurement measurement
                && level.equals(measurement.level)
                && Objects.equals(uncertainty, measurement.uncertainty)
                && Objects.equals(method, measurement.method)
                && Objects.equals(chain, measurement.chain);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(level, uncertainty, method, chain);
    }

    /** Returns level and uncertainty, as in {@code 4.31 mm/s rms (10–1000 Hz), uncertainty 5 % (k = 2)}. */
    @Override
    public String toString() {
        return uncertainty == null ? level + ", uncertainty not stated"
                : level + ", uncertainty " + Digits.compact(100 * uncertainty.relativeExpanded(), 2)
                        + " % (k = 2)";
    }
}
