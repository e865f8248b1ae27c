package dev.vibra.docs.pages;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;

/**
 * Compares a figure that a page made with the committed one, made perhaps on a machine with other fonts.
 *
 * <p>PNG: both must have the same size in pixels; then the means of tiles of 16 x 16 pixels are compared, so that other
 * shapes of the same letters mostly cancel. The mean of the absolute differences may be 0.8 % of full scale, and at
 * most half of what the committed figure differs from an empty one, so that an empty figure never passes.
 *
 * <p>Measured on a line chart of 1600 x 900 pixels: another family of letters 0.25 % (with serifs) to 0.7 % (all of one
 * width); letters 10 % larger 0.8 %; an empty picture 1.9 %; one thin curve missing 0.14 %; one peak 20 % higher 0.5 %.
 * So this finds the wrong figure, an empty or a cut one, not a small change of a curve: what a figure shows in numbers
 * must stand on the page as an expectation. Other formats must agree byte by byte.
 */
public final class Picture {
    /** Allowed mean difference as a part of full scale. */
    static final double BOUND = 0.008;
    private static final int TILE = 16;

    private Picture() {}

    /**
     * Tells in what two pictures differ.
     *
     * @param made as it was made now
     * @param committed as it stands in the repository
     * @return the difference in words; empty if they agree
     * @throws IOException if one can't be read
     */
    public static Optional<String> difference(Path made, Path committed) throws IOException {
        if (Arrays.equals(Files.readAllBytes(made), Files.readAllBytes(committed))) {
            return Optional.empty();
        }
        if (!made.toString().toLowerCase(Locale.ROOT).endsWith(".png")) {
            return Optional.of("differs from the committed one");
        }
        BufferedImage a = ImageIO.read(made.toFile());
        BufferedImage b = ImageIO.read(committed.toFile());
        if (a == null || b == null) {
            return Optional.of((a == null ? "as made" : "as committed") + " is no PNG that can be read");
        }
        if (a.getWidth() != b.getWidth() || a.getHeight() != b.getHeight()) {
            return Optional.of("is " + size(a) + " pixels, the committed one " + size(b));
        }
        double allowed = Math.min(BOUND, meanDifference(b, empty(b)) / 2);
        double mean = meanDifference(a, b);
        return mean <= allowed ? Optional.empty() : Optional.of(String.format(Locale.ROOT,
                "differs from the committed one by %.2f %% of full scale in the mean, allowed are %.2f %%",
                100 * mean, 100 * allowed));
    }

    /** Mean over tiles and colours of the absolute difference of the tiles' means, as a part of full scale. */
    static double meanDifference(BufferedImage a, BufferedImage b) {
        long sum = 0;
        for (int y = 0; y < a.getHeight(); y += TILE) {
            for (int x = 0; x < a.getWidth(); x += TILE) {
                sum += tileDifference(a, b, x, y);
            }
        }
        return sum / (3.0 * 255 * a.getWidth() * a.getHeight());
    }

    private static long tileDifference(BufferedImage a, BufferedImage b, int left, int top) {
        long red = 0;
        long green = 0;
        long blue = 0;
        for (int y = top; y < Math.min(top + TILE, a.getHeight()); y++) {
            for (int x = left; x < Math.min(left + TILE, a.getWidth()); x++) {
                int p = a.getRGB(x, y);
                int q = b.getRGB(x, y);
                red += (p >> 16 & 0xff) - (q >> 16 & 0xff);
                green += (p >> 8 & 0xff) - (q >> 8 & 0xff);
                blue += (p & 0xff) - (q & 0xff);
            }
        }
        return Math.abs(red) + Math.abs(green) + Math.abs(blue);
    }

    /** A picture of the same size in nothing but the most frequent colour. */
    private static BufferedImage empty(BufferedImage image) {
        int width = image.getWidth();
        int height = image.getHeight();
        int[] pixels = image.getRGB(0, 0, width, height, null, 0, width);
        int background = IntStream.of(pixels).boxed()
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting())).entrySet().stream()
                .max(Comparator.comparingLong(Map.Entry::getValue)).orElseThrow().getKey();
        BufferedImage empty = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
        Arrays.fill(pixels, background);
        empty.setRGB(0, 0, width, height, pixels, 0, width);
        return empty;
    }

    private static String size(BufferedImage image) {
        return image.getWidth() + " x " + image.getHeight();
    }
}
