package dev.vibra.symptom;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;

/**
 * What the recordings answer to a question.
 *
 * @param state seen, not seen, or not measured
 * @param points ids of the points that show it; empty unless seen
 * @param words figures, as in {@code M-DE-H: 2× is 1.31 of 1×, 2.1 mm/s rms}; where it wasn't measured what was missing
 */
public record Answer(State state, List<String> points, String words) implements Serializable {
    /** Outcomes of a question. */
    public enum State {
        /** The symptom is there. */
        SEEN,
        /** What could have shown it was measured, and doesn't. */
        NOT_SEEN,
        /** Nothing that could have shown it was measured; this weighs nothing. */
        NOT_MEASURED
    }

    /**
     * Checks that points are there where it is seen, and only then.
     *
     * @param state see the record
     * @param points see the record
     * @param words see the record
     */
    public Answer {
        Objects.requireNonNull(state, "state");
        points = Require.copy("points", points);
        words = Objects.requireNonNull(words, "words");
        if (state != State.SEEN && !points.isEmpty()) {
            throw new IllegalArgumentException("points must be empty unless the symptom is seen: " + points);
        }
    }

    /**
     * Makes a yes.
     *
     * @param points ids of the points that show it; empty for a test of the whole machine
     * @param words figures
     * @return the answer
     */
    public static Answer seen(List<String> points, String words) {
        return new Answer(State.SEEN, points, words);
    }

    /**
     * Makes a no.
     *
     * @param words figures
     * @return the answer
     */
    public static Answer notSeen(String words) {
        return new Answer(State.NOT_SEEN, List.of(), words);
    }

    /**
     * Makes the answer where nothing that could have shown it was measured.
     *
     * @param why what was missing, without full stop
     * @return the answer
     */
    public static Answer notMeasured(String why) {
        return new Answer(State.NOT_MEASURED, List.of(), why);
    }

    /** {@return true if the symptom is there} */
    public boolean isSeen() {
        return state == State.SEEN;
    }

    /** {@return false if nothing that could have shown it was measured} */
    public boolean isMeasured() {
        return state != State.NOT_MEASURED;
    }

    /** Returns state and words. */
    @Override
    public String toString() {
        return switch (state) {
            case SEEN -> "seen";
            case NOT_SEEN -> "not seen";
            case NOT_MEASURED -> "not measured";
        } + (words.isEmpty() ? "" : ": " + words);
    }
}
