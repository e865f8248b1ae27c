package dev.vibra.docs.notebook;

import dev.vibra.docs.survey.chart.Figure;
import java.awt.AWTError;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.Supplier;

/**
 * A figure and the PNG file that it was written to.
 *
 * @param figure the figure
 * @param file its file
 */
public record Plot(Figure figure, Path file) {
    private static final String ENDING = ".png";

    /** Draws, and writes to a file of its own in the folder for temporary files. */
    static Plot inTemporaryFile(String name, Supplier<Figure> drawing) {
        Figure figure = drawing.get();
        byte[] png = png(figure);
        try {
            Path file = Files.createTempFile("vibra-" + name + "-", ENDING);
            Files.write(file, png);
            return new Plot(figure, file);
        } catch (IOException e) {
            throw new UncheckedIOException("the figure can't be written: " + e, e);
        }
    }

    /** A display that is named but doesn't answer breaks even drawing into memory, for the rest of the process. */
    private static byte[] png(Figure figure) {
        try {
            return figure.png();
        } catch (AWTError | NoClassDefFoundError e) {
            throw new IllegalStateException("the display of this machine doesn't answer; start JShell with"
                    + " -R-Djava.awt.headless=true to draw without it: " + e.getMessage(), e);
        }
    }

    /**
     * Writes the figure to another file; a figure that is there is replaced, folders that are missing are made.
     *
     * @param target file that ends in {@code .png}
     * @return the figure with that file
     * @throws IllegalArgumentException if the file ends otherwise
     */
    public Plot savedTo(Path target) {
        Path whole = target.toAbsolutePath().normalize();
        if (!whole.toString().toLowerCase(Locale.ROOT).endsWith(ENDING)) {
            throw new IllegalArgumentException("file must end in " + ENDING + ": " + target);
        }
        try {
            Files.createDirectories(whole.getParent());
            Files.write(whole, png(figure));
            return new Plot(figure, target);
        } catch (IOException e) {
            throw new UncheckedIOException("the figure can't be written: " + e, e);
        }
    }

    /** Returns the size in pixels and where the file lies, as in {@code figure of 1800 x 540 pixels: a.png}. */
    @Override
    public String toString() {
        return "figure of " + figure.widthPixels() + " x " + figure.heightPixels() + " pixels: " + file;
    }
}
