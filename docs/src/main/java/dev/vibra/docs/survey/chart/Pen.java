package dev.vibra.docs.survey.chart;

/**
 * How a stroke looks.
 *
 * @param colour red, green and blue in the three low bytes
 * @param width width in CSS pixels
 * @param dash length of a dash; 0 for a solid stroke
 * @param gap length between two dashes
 */
record Pen(int colour, double width, double dash, double gap) {
    static Pen solid(int colour, double width) {
        return new Pen(colour, width, 0, 0);
    }

    /** The same stroke in dashes as limits have. */
    Pen dashed() {
        return new Pen(colour, width, 7, 4);
    }

    Pen dotted() {
        return new Pen(colour, width, 2, 3);
    }
}
