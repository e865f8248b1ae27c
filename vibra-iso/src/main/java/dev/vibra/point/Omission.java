package dev.vibra.point;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * Something that was asked for, or that a reader would look for, and was not determined.
 *
 * @param subject what it belongs to
 * @param part what is missing in words, for example {@code severity} or {@code change of velocity-rms-10-1000Hz}
 * @param reason why, and what would be needed; without full stop
 */
public record Omission(Subject subject, String part, String reason) implements Serializable {
    /** What an omission belongs to. */
    public enum Subject {
        /** The recording as a whole. */
        RECORDING("recording"),
        /** The speed of the shaft. */
        SPEED("speed"),
        /** The tachometer. */
        TACHOMETER("tachometer"),
        /** A descriptor. */
        DESCRIPTOR("descriptor"),
        /** The zone or rating. */
        SEVERITY("severity"),
        /** A limit of the criterion. */
        LIMIT("limit"),
        /** The rolling bearing. */
        BEARINGS("bearings"),
        /** The change against the baseline. */
        CHANGE("change"),
        /** Faults that were not looked for. */
        FAULTS("faults"),
        /** The balancing job. */
        BALANCING("balancing");

        private final String label;

        Subject(String label) {
            this.label = label;
        }

        /** Returns the subject in words. */
        @Override
        public String toString() {
            return label;
        }
    }

    /**
     * Checks that all is said.
     *
     * @param subject see the record
     * @param part see the record
     * @param reason see the record
     */
    public Omission {
        Objects.requireNonNull(subject, "subject");
        part = Require.notBlank("part", part);
        reason = Require.notBlank("reason", reason);
    }

    /**
     * Notes that a subject as a whole was not determined.
     *
     * @param subject the subject
     * @param reason why, without full stop
     * @return the omission
     */
    public static Omission of(Subject subject, String reason) {
        Objects.requireNonNull(subject, "subject");
        return new Omission(subject, subject.toString(), reason);
    }

    /** Returns both, as in {@code gears: not determined, ...}. */
    @Override
    public String toString() {
        return part + ": not determined, " + reason;
    }
}
