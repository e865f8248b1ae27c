package dev.vibra.docs.survey.chart;

import java.util.List;

/**
 * One row of marks above a spectrum that says where lines are expected.
 *
 * @param label what the row stands for, for example {@code outer race}
 * @param marks expected frequencies
 */
public record Lane(String label, List<Mark> marks) {
    /**
     * One expected frequency.
     *
     * @param hertz frequency in Hz
     * @param text label of the mark, for example {@code 1×}; may be empty
     * @param found true if the spectrum shows a line there; the mark is then filled and a dotted line drops from it
     */
    public record Mark(double hertz, String text, boolean found) {}
}
