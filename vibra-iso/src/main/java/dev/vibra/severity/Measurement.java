package dev.vibra.severity;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Level;
import dev.vibra.signal.Waveform;
import dev.vibra.uncertainty.LevelUncertainty;
import dev.vibra.uncertainty.UncertaintyBudget;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/** A level, how uncertain it is, and what its recording can show: what a verdict needs besides the limits. */
public final class Measurement implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double LARGEST_UNCERTAINTY = 1000;

    private final Level level;
    private final UncertaintyBudget uncertainty;
    private final MeasuringChain chain;

    private Measurement(Level level, UncertaintyBudget uncertainty, MeasuringChain chain) {
        this.level = Objects.requireNonNull(level, "level");
        this.uncertainty = Objects.requireNonNull(uncertainty, "uncertainty");
        this.chain = chain;
        if (uncertainty.contributions().isEmpty()) {
            throw new IllegalArgumentException("budget must have a contribution: " + uncertainty);
        }
        Require.within("relative expanded uncertainty", uncertainty.relativeExpanded(), 0, LARGEST_UNCERTAINTY, "");
    }

    private Object readResolve() {
        return new Measurement(level, uncertainty, chain);
    }

    /**
     * Takes a level of which nothing else is told: with the default uncertainty of an instrument.
     *
     * @param level level in its band
     * @return the measurement
     * @see LevelUncertainty#of(Level)
     */
    public static Measurement of(Level level) {
        return new Measurement(level, LevelUncertainty.withDefaults().of(level), null);
    }

    /**
     * Takes the rms of a recording, with the uncertainty that follows from it.
     *
     * @param judged recording behind the severity chain
     * @param told what is told of sensor and mounting
     * @return the measurement
     * @throws IllegalArgumentException if the waveform doesn't come from {@link Waveform#throughSeverityChain}
     */
    public static Measurement of(Waveform judged, LevelUncertainty told) {
        Objects.requireNonNull(judged, "judged");
        Objects.requireNonNull(told, "told");
        return new Measurement(judged.rms(), told.of(judged), null);
    }

    /**
     * States the uncertainty.
     *
     * @param budget contributions relative to the level; at least one, since an empty budget states nothing; together
     *     at most 1000 times the level
     * @return the measurement with that uncertainty
     * @throws IllegalArgumentException if the budget has no contribution or is too large
     */
    public Measurement withUncertainty(UncertaintyBudget budget) {
        return new Measurement(level, budget, chain);
    }

    /**
     * States what the recording can show; a criterion whose band it doesn't cover then refuses to judge.
     *
     * @param newChain recording, sensor, mounting
     * @return the measurement with that chain
     */
    public Measurement withChain(MeasuringChain newChain) {
        return new Measurement(level, uncertainty, Objects.requireNonNull(newChain, "chain"));
    }

    /** {@return the level} */
    public Level level() {
        return level;
    }

    /** {@return the contributions to the uncertainty, of one contribution at least} */
    public UncertaintyBudget uncertainty() {
        return uncertainty;
    }

    /** {@return what the recording can show; empty if not stated} */
    public Optional<MeasuringChain> chain() {
        return Optional.ofNullable(chain);
    }

    /** Two measurements are equal if level, uncertainty and chain are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Measurement measurement
                && level.equals(measurement.level)
                && uncertainty.equals(measurement.uncertainty)
                && Objects.equals(chain, measurement.chain);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(level, uncertainty, chain);
    }

    /** Returns level and uncertainty, as in {@code 4.31 mm/s rms (10–1000 Hz) ± 4.9 %}. */
    @Override
    public String toString() {
        return level + " ± " + Digits.compact(100 * uncertainty.relativeExpanded(), 2) + " %";
    }
}
