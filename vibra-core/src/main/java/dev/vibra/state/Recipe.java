package dev.vibra.state;

import java.io.Serializable;

/**
 * All that is needed to make a stream's worker anew: its settings and its sample rate, as values of this library. It
 * prints as one line.
 *
 * @param <M> what is made
 */
public interface Recipe<M extends Resumable<M>> extends Serializable {
    /**
     * Makes a worker that has seen nothing.
     *
     * @return a new one each time
     * @throws IllegalArgumentException if the settings don't fit each other
     */
    M make();
}
