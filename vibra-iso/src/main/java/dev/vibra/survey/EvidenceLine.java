package dev.vibra.survey;

import java.io.Serializable;
import java.util.Objects;

/**
 * Frequency at which a spectrum was searched, and whether a line was found there.
 *
 * @param group what the line would stand for, for example {@code shaft speed} or {@code outer race}
 * @param label which one of the group, for example {@code 2×}
 * @param hertz frequency searched, or where found that of the line, in Hz
 * @param found true if there is a line
 */
public record EvidenceLine(String group, String label, double hertz, boolean found) implements Serializable {
    /**
     * Checks that group and label are there.
     *
     * @param group see the record
     * @param label see the record
     * @param hertz see the record
     * @param found see the record
     */
    public EvidenceLine {
        Objects.requireNonNull(group, "group");
        Objects.requireNonNull(label, "label");
    }
}
