package dev.vibra.state;

/**
 * A worker on a stream that can be stopped at any sample and goes on later as if nothing had happened, bit for bit on
 * the same Java runtime (another one may round a sine or a logarithm in the last place).
 *
 * <p>Two ways. {@link #snapshot()} gives a value that knows the settings too: keep or ship it, {@link
 * StreamState#resume()} makes the worker anew. {@link #snapshotTo} writes {@link #stateLength()} numbers into an array
 * of yours and allocates nothing, for those who save often; {@link #resumeFrom} takes them back into a worker of the
 * same settings. The first three numbers say kind and version, length, and settings: a state of something else is
 * refused. A later version of this library reads the states of an earlier one or refuses them by this version.
 *
 * @param <M> the worker itself
 */
public interface Resumable<M extends Resumable<M>> {
    /**
     * Returns what makes such a worker.
     *
     * @return settings and sample rate
     */
    Recipe<M> recipe();

    /**
     * Returns how many numbers the state has; it depends on the settings only.
     *
     * @return count, at least 3
     */
    int stateLength();

    /**
     * Writes the state; allocates nothing.
     *
     * @param out receives {@link #stateLength()} numbers, all finite
     * @param offset index of the first
     * @return index behind the last
     * @throws IllegalArgumentException if the range leaves the array
     * @throws IllegalStateException if a sample that isn't finite has spoiled the state
     */
    int snapshotTo(double[] out, int offset);

    /**
     * Takes up a state; allocates nothing.
     *
     * @param in numbers that {@link #snapshotTo} wrote; left alone
     * @param offset index of the first
     * @return index behind the last
     * @throws IllegalArgumentException if they are the state of another kind, version or setting, or none at all; the
     *     worker then is as after a reset
     */
    int resumeFrom(double[] in, int offset);

    /**
     * Returns the state as a value.
     *
     * @return immutable state with the settings
     * @throws IllegalStateException if a sample that isn't finite has spoiled the state
     */
    default StreamState<M> snapshot() {
        double[] numbers = new double[stateLength()];
        snapshotTo(numbers, 0);
        return new StreamState<>(recipe(), numbers);
    }
}
