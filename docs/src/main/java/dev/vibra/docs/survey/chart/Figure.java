package dev.vibra.docs.survey.chart;

import java.util.Objects;
import java.util.function.Consumer;

/**
 * One drawing and the sentence that says what it shows. It is drawn when it is asked for, as text of a page or as
 * pixels; until then it holds little more than the points of its curves.
 */
public final class Figure {
    private final int width;
    private final int height;
    private final String description;
    private final Consumer<Canvas> drawing;

    Figure(int height, String description, Consumer<Canvas> drawing) {
        this.width = Look.WIDTH;
        this.height = height;
        this.description = Objects.requireNonNull(description, "description");
        this.drawing = drawing;
    }

    /** {@return width in CSS pixels} */
    public int width() {
        return width;
    }

    /** {@return height in CSS pixels} */
    public int height() {
        return height;
    }

    /** {@return what the picture shows, for readers who can't see it} */
    public String description() {
        return description;
    }

    /**
     * {@return one {@code svg} element of class {@code still}, to stand in a page or, behind an XML declaration or not,
     * in a file; needs no fonts on this machine}
     */
    public String svg() {
        SvgCanvas canvas = new SvgCanvas(width, height, description);
        drawing.accept(canvas);
        return canvas.finished();
    }

    /** {@return bytes of a PNG file of double resolution; needs fonts on this machine} */
    public byte[] png() {
        return PngCanvas.png(width, height, drawing);
    }

    /** {@return width of the PNG in pixels} */
    public int widthPixels() {
        return width * PngCanvas.RESOLUTION;
    }

    /** {@return height of the PNG in pixels} */
    public int heightPixels() {
        return height * PngCanvas.RESOLUTION;
    }

    /** Draws elsewhere. */
    void drawOn(Canvas canvas) {
        drawing.accept(canvas);
    }

    /** Returns the description. */
    @Override
    public String toString() {
        return description;
    }
}
