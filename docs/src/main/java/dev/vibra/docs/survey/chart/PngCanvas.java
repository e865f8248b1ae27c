package dev.vibra.docs.survey.chart;

import dev.vibra.docs.survey.chart.Lettering.Anchor;
import dev.vibra.internal.Printable;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.function.Consumer;

/** Draws at double resolution and packs the result as PNG. */
final class PngCanvas implements Canvas {
    static final int RESOLUTION = 2;

    private final Graphics2D g;

    private PngCanvas(Graphics2D g) {
        this.g = g;
    }

    static byte[] png(int width, int height, Consumer<Canvas> drawing) {
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
            drawing.accept(new PngCanvas(g));
        } finally {
            g.dispose();
        }
        return Png.of(image.getWidth(), image.getHeight(), FewColours.of(pixels(image)));
    }

    /** The pixels themselves; a copy of them would take as long as all that is done with them. */
    private static int[] pixels(BufferedImage image) {
        return ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
    }

    @Override
    public void stroke(Lines lines, Pen pen) {
        take(pen);
        g.draw(path(lines, false));
    }

    private void take(Pen pen) {
        g.setColor(new Color(pen.colour()));
        float[] dashes = pen.dash() > 0 ? new float[] {(float) pen.dash(), (float) pen.gap()} : null;
        g.setStroke(new BasicStroke((float) pen.width(), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, dashes, 0));
    }

    @Override
    public void fill(Lines outlines, int colour) {
        g.setColor(new Color(colour));
        g.fill(path(outlines, true));
    }

    private static Path2D path(Lines lines, boolean closed) {
        Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO, lines.size() + 1);
        for (int i = 0; i < lines.size(); i++) {
            if (lines.begins(i)) {
                if (closed && i > 0) {
                    path.closePath();
                }
                path.moveTo(lines.x(i), lines.y(i));
            } else {
                path.lineTo(lines.x(i), lines.y(i));
            }
        }
        if (closed && lines.size() > 0) {
            path.closePath();
        }
        return path;
    }

    @Override
    public void circle(double x, double y, double radius, Pen pen) {
        take(pen);
        g.draw(new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius));
    }

    @Override
    public void disc(double x, double y, double radius, int colour) {
        g.setColor(new Color(colour));
        g.fill(new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius));
    }

    @Override
    public void text(String text, double x, double y, Lettering lettering) {
        g.setFont(new Font(Font.SANS_SERIF, lettering.bold() ? Font.BOLD : Font.PLAIN, lettering.size()));
        g.setColor(new Color(lettering.colour()));
        String shown = Printable.of(text);
        double width = lettering.anchor() == Anchor.START ? 0 : g.getFontMetrics().stringWidth(shown);
        double begin = lettering.anchor() == Anchor.MIDDLE ? -width / 2 : -width;
        AffineTransform before = g.getTransform();
        g.translate(x, y);
        if (lettering.upright()) {
            g.rotate(-Math.PI / 2);
        }
        g.drawString(shown, (float) begin, 0f);
        g.setTransform(before);
    }
}
