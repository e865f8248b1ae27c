package dev.vibra.alarm;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Readings of one point in one operating state of a sound machine, to compare later ones with.
 *
 * <p>Taken after running in, in steady operation; one baseline for each state (speed, load, temperature) that matters.
 * Begun anew after an overhaul or a change of sensor. All readings have one quantity, detector and band, and one method
 * apart from those that the caller states. Immutable.
 *
 * @param state operating state in words
 * @param readings at least one
 * @see "ISO 13373-1:2002 on baselines; ISO 20816-3:2022, 6.5"
 */
public record Baseline(String state, List<Level> readings) implements Serializable {
    /** Readings from which on a baseline counts as settled: 5 (common practice, no source). */
    public static final int SETTLED_READINGS = 5;

    /**
     * Checks that the readings are of one kind.
     *
     * @param state not blank
     * @param readings at least one
     * @throws IllegalArgumentException if the state is blank, there is no reading, or they are of different kinds
     */
    public Baseline {
        if (Objects.requireNonNull(state, "state").isBlank()) {
            throw new IllegalArgumentException("state must not be blank");
        }
        state = state.strip();
        readings = Require.copy("readings", readings);
        if (readings.isEmpty()) {
            throw new IllegalArgumentException("readings must not be empty");
        }
        Level first = readings.get(0);
        for (Level reading : readings) {
            if (!reading.isLike(first)) {
                throw new IllegalArgumentException("readings must be of one quantity, detector and band: " + first
                        + ", " + reading);
            }
        }
        if (methods(readings).filter(method -> method != LevelMethod.STATED).count() > 1) {
            throw new IllegalArgumentException("readings must be measured by one method: "
                    + methods(readings).map(LevelMethod::toString).collect(Collectors.joining(", ")));
        }
    }

    private static Stream<LevelMethod> methods(List<Level> readings) {
        return readings.stream().map(Level::method).distinct();
    }

    /**
     * Takes the readings of one state.
     *
     * @param state operating state in words, as in {@code 1480 r/min, full load}
     * @param readings at least one, all of one quantity, detector and band
     * @return the baseline
     * @throws IllegalArgumentException if the state is blank, there is no reading, or the readings are of
     *     different kinds
     */
    public static Baseline of(String state, List<Level> readings) {
        return new Baseline(state, readings);
    }

    /**
     * Adds a reading.
     *
     * @param reading reading in the same state
     * @return the longer baseline
     * @throws IllegalArgumentException if the reading is of another quantity, detector or band
     */
    public Baseline with(Level reading) {
        List<Level> longer = new ArrayList<>(readings);
        longer.add(Objects.requireNonNull(reading, "reading"));
        return new Baseline(state, longer);
    }

    /**
     * Tells whether there are enough readings to rely on: {@value #SETTLED_READINGS}.
     *
     * @return true if there are
     */
    public boolean isSettled() {
        return readings.size() >= SETTLED_READINGS;
    }

    /**
     * Returns the mean of the readings.
     *
     * @return level of their quantity, detector and band
     */
    public Level level() {
        double mean = readings.stream().mapToDouble(Level::si).sum() / readings.size();
        return like(mean);
    }

    /**
     * Returns the standard deviation of the readings, with n − 1 below the root.
     *
     * @return level of their quantity, detector and band
     * @throws IllegalStateException if there is one reading only
     */
    public Level standardDeviation() {
        if (readings.size() < 2) {
            throw new IllegalStateException("a standard deviation needs at least 2 readings: " + readings.size());
        }
        double mean = level().si();
        double squares = readings.stream().mapToDouble(reading -> (reading.si() - mean) * (reading.si() - mean)).sum();
        return like(Math.sqrt(squares / (readings.size() - 1.0)));
    }

    /** Of one method if all readings are, else the caller's word. */
    Level like(double si) {
        Level first = readings.get(0);
        Level level = Level.ofSi(Require.finite("level", si), first.quantity(), first.detector());
        return first.band().map(level::within).orElse(level)
                .by(methods(readings).count() == 1 ? first.method() : LevelMethod.STATED);
    }

    /** Returns the mean and its footing, as in {@code 1.60 mm/s rms (10–1000 Hz), mean of 5 (full load)}. */
    @Override
    public String toString() {
        return level() + ", mean of " + Digits.compact(readings.size(), 9) + " (" + state + ")"
                + (isSettled() ? "" : ", not settled");
    }
}
