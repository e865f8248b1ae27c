package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.Figure;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;

/** A figure in two thirds of its size and sixteen colours: a page with many of them stays small. */
final class SmallPicture {
    private static final int[] INKS = {0x22262b, 0x8a9096, 0x004f7f, 0xd55e00};
    /** Shares of ink on paper, as smoothed edges have them. */
    private static final double[] SHARES = {1, 0.66, 0.33};
    private static final int[] MORE = {0xd4d7da, 0xeceeef};

    private SmallPicture() {}

    static byte[] png(Figure figure) throws IOException {
        BufferedImage large = ImageIO.read(new ByteArrayInputStream(figure.png()));
        int width = large.getWidth() * 2 / 3;
        int height = large.getHeight() * 2 / 3;
        BufferedImage small = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = small.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        g.drawImage(large, 0, 0, width, height, null);
        g.dispose();
        return written(few(small));
    }

    private static BufferedImage few(BufferedImage image) {
        int[] colours = colours();
        byte[][] channels = new byte[3][colours.length];
        for (int i = 0; i < colours.length; i++) {
            for (int c = 0; c < 3; c++) {
                channels[c][i] = (byte) channel(colours[i], c);
            }
        }
        BufferedImage few = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_BYTE_BINARY,
                new IndexColorModel(4, colours.length, channels[0], channels[1], channels[2]));
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                few.getRaster().setSample(x, y, 0, nearest(colours, image.getRGB(x, y)));
            }
        }
        return few;
    }

    private static int[] colours() {
        List<Integer> colours = new ArrayList<>(List.of(0xffffff));
        for (int ink : INKS) {
            for (double share : SHARES) {
                Color on = new Color(ink);
                colours.add(mixed(on.getRed(), share) << 16 | mixed(on.getGreen(), share) << 8
                        | mixed(on.getBlue(), share));
            }
        }
        for (int one : MORE) {
            colours.add(one);
        }
        return colours.stream().mapToInt(Integer::intValue).toArray();
    }

    private static int mixed(int ink, double share) {
        return (int) Math.round(share * ink + (1 - share) * 255);
    }

    private static int channel(int colour, int number) {
        return colour >> 16 - 8 * number & 0xff;
    }

    private static int nearest(int[] colours, int colour) {
        int best = 0;
        int least = Integer.MAX_VALUE;
        for (int i = 0; i < colours.length; i++) {
            int distance = 0;
            for (int c = 0; c < 3; c++) {
                int step = channel(colours[i], c) - channel(colour, c);
                distance += step * step;
            }
            if (distance < least) {
                least = distance;
                best = i;
            }
        }
        return best;
    }

    private static byte[] written(BufferedImage image) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        ImageWriteParam param = writer.getDefaultWriteParam();
        param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        param.setCompressionQuality(0);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        writer.setOutput(ImageIO.createImageOutputStream(out));
        writer.write(null, new IIOImage(image, null, null), param);
        ((javax.imageio.stream.ImageOutputStream) writer.getOutput()).close();
        writer.dispose();
        return out.toByteArray();
    }
}
