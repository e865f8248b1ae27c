package dev.vibra.survey;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * One thing to do next.
 *
 * @param kind what it is about; each kind stands once
 * @param text what to do, one or more sentences
 */
public record AdviceStep(Kind kind, String text) implements Serializable {
    /** What a piece of advice is about. */
    public enum Kind {
        /** What the condition asks for. */
        CONDITION,
        /** The values may serve as a baseline. */
        BASELINE,
        /** A change against the baseline. */
        CHANGE,
        /** Recordings to take again. */
        RECORD_AGAIN,
        /** A machine that may not have been running. */
        STANDSTILL,
        /** What would decide on the findings. */
        DECIDE,
        /** What is not to be touched meanwhile. */
        BOLTS,
        /** What a zone does not say of bearings. */
        BEARINGS,
        /** Before and during balancing. */
        BALANCING,
        /** Facts that would decide on a zone. */
        FACTS,
        /** The usual caution. */
        CAUTION
    }

    /**
     * Checks that both are there.
     *
     * @param kind see the record
     * @param text see the record
     */
    public AdviceStep {
        Objects.requireNonNull(kind, "kind");
        text = Require.notBlank("text", text);
    }

    /** Returns the text. */
    @Override
    public String toString() {
        return text;
    }
}
