package dev.vibra.docs.survey.chart;

/** One finished picture and the sentence that says what it shows. */
public final class Figure {
    private final byte[] png;
    private final String description;

    Figure(byte[] png, String description) {
        this.png = png;
        this.description = description;
    }

    /** {@return copy of the bytes of a PNG file} */
    public byte[] png() {
        return png.clone();
    }

    /** {@return what the picture shows, for readers who can't see it} */
    public String description() {
        return description;
    }

    /** Returns the description. */
    @Override
    public String toString() {
        return description;
    }
}
