package dev.vibra.docs.survey.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.function.Consumer;

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
        return Png.of(image.getWidth(), image.getHeight(), FewColours.of(pixels(image)));
    }

    /** The pixels themselves; a copy of them would take as long as all that is done with them. */
    private static int[] pixels(BufferedImage image) {
        return ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
    }
}
