package dev.vibra.docs.survey.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.function.Consumer;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Draws at double resolution and packs the result as PNG. */
final class Sheet {
    private static final int RESOLUTION = 2;

    private Sheet() {}

    static byte[] png(int width, int height, Consumer<Graphics2D> drawing) {
        BufferedImage image =
                new BufferedImage(width * RESOLUTION, height * RESOLUTION, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        try {
            g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
            g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
            g.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
            g.scale(RESOLUTION, RESOLUTION);
            g.setColor(Color.WHITE);
            g.fillRect(0, 0, width, height);
            drawing.accept(g);
        } finally {
            g.dispose();
        }
        return packed(FewColours.of(image));
    }

    /** Writes from memory: the static cache setting of the image library belongs to the host program. */
    private static byte[] packed(BufferedImage image) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageIO.write(image, "png", out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }
}
