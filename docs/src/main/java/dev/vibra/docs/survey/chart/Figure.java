package dev.vibra.docs.survey.chart;

import java.nio.ByteBuffer;

/** One finished picture and the sentence that says what it shows. */
public final class Figure {
    /** Width and height stand in the first chunk, IHDR, of a PNG file (ISO/IEC 15948:2004, 11.2.2). */
    private static final int WIDTH_AT = 16;
    private static final int HEIGHT_AT = 20;

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

    /** {@return width in pixels} */
    public int widthPixels() {
        return ByteBuffer.wrap(png).getInt(WIDTH_AT);
    }

    /** {@return height in pixels} */
    public int heightPixels() {
        return ByteBuffer.wrap(png).getInt(HEIGHT_AT);
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
