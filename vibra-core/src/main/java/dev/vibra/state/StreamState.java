package dev.vibra.state;

import java.io.InvalidObjectException;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;

/**
 * State of a worker on a stream, immutable: what it is set to and the numbers it had.
 *
 * <p>Serialisable; or keep {@link #numbers()} in a store of your own beside settings of your own, and put both together
 * again with {@link #of}.
 *
 * @param <M> the worker
 */
public final class StreamState<M extends Resumable<M>> implements Serializable {
    private static final long serialVersionUID = 1;

    private final Recipe<M> recipe;
    private final double[] numbers;

    /** The numbers are not copied: for those that have just made them. */
    StreamState(Recipe<M> recipe, double[] numbers) {
        this.recipe = recipe;
        this.numbers = numbers;
    }

    /**
     * Puts a state together.
     *
     * @param recipe settings, from {@link Resumable#recipe()} of a worker that is set so
     * @param numbers numbers of the state; copied
     * @param <M> the worker
     * @return the state
     * @throws IllegalArgumentException if the numbers aren't the state of such a worker
     */
    public static <M extends Resumable<M>> StreamState<M> of(Recipe<M> recipe, double[] numbers) {
        StreamState<M> state = new StreamState<>(Objects.requireNonNull(recipe, "recipe"),
                Objects.requireNonNull(numbers, "numbers").clone());
        state.resume();
        return state;
    }

    /**
     * Makes a worker that goes on from here.
     *
     * @return a new one each time, independent of each other
     */
    public M resume() {
        M worker = recipe.make();
        if (numbers.length != worker.stateLength()) {
            throw new IllegalArgumentException("state of " + recipe + " must have " + worker.stateLength()
                    + " numbers: " + numbers.length);
        }
        worker.resumeFrom(numbers, 0);
        return worker;
    }

    /**
     * Returns the settings.
     *
     * @return settings and sample rate
     */
    public Recipe<M> recipe() {
        return recipe;
    }

    /**
     * Returns the numbers.
     *
     * @return a new array
     */
    public double[] numbers() {
        return numbers.clone();
    }

    /** Nothing gets in past the checks, and nobody outside holds the array. */
    private Object readResolve() throws InvalidObjectException {
        if (recipe == null || numbers == null) {
            throw new InvalidObjectException("a state needs settings and numbers");
        }
        return of(recipe, numbers);
    }

    /** Two states are equal if settings and numbers are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof StreamState<?> state && recipe.equals(state.recipe)
                && Arrays.equals(numbers, state.numbers);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return 31 * recipe.hashCode() + Arrays.hashCode(numbers);
    }

    /** Returns what it is the state of. */
    @Override
    public String toString() {
        return "state of " + recipe + ", " + numbers.length + " numbers";
    }
}
