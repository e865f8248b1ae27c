package dev.vibra.docs.survey.chart;

import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.Set;

/**
 * Brings a drawing of few inks down to 256 colours; its PNG then takes about a quarter of the bytes. Most of a drawing
 * is paper and long strokes, so pixels are counted and looked up by runs of equal ones.
 */
final class FewColours {
    private static final int MOST = 256;
    private static final int INKS = 16;
    private static final int RGB = 0xffffff;

    private final int[] palette;
    private final byte[] indices;

    private FewColours(int[] palette, byte[] indices) {
        this.palette = palette;
        this.indices = indices;
    }

    /**
     * Keeps the most frequent colours as they are; each other pixel takes the nearest of them.
     *
     * @param pixels red, green and blue of each pixel in the three low bytes
     */
    static FewColours of(int[] pixels) {
        ColourTable counts = new ColourTable();
        for (int i = 0; i < pixels.length;) {
            int end = endOfRun(pixels, i);
            counts.add(pixels[i] & RGB, end - i);
            i = end;
        }
        int[] chosen = chosen(counts);
        int[] palette = sorted(chosen);
        ColourTable numbers = new ColourTable();
        for (int i = 0; i < palette.length; i++) {
            numbers.add(palette[i], i);
        }
        for (int slot : counts.slots()) {
            counts.put(slot, numbers.value(nearest(chosen, counts.colour(slot))));
        }
        byte[] indices = new byte[pixels.length];
        for (int i = 0; i < pixels.length;) {
            int end = endOfRun(pixels, i);
            Arrays.fill(indices, i, end, (byte) counts.value(pixels[i] & RGB));
            i = end;
        }
        return new FewColours(palette, indices);
    }

    private static int endOfRun(int[] pixels, int begin) {
        int end = begin + 1;
        while (end < pixels.length && pixels[end] == pixels[begin]) {
            end++;
        }
        return end;
    }

    /** The most frequent colours as they are, then one of each cell of 16 levels per channel, up to 256 in all. */
    private static int[] chosen(ColourTable counts) {
        int[] byFrequency = counts.coloursByCount();
        Set<Integer> chosen = new LinkedHashSet<>();
        Set<Integer> cells = new HashSet<>();
        Arrays.stream(byFrequency).limit(INKS).forEach(chosen::add);
        Arrays.stream(byFrequency).filter(colour -> cells.add(colour & 0xf0f0f0)).forEach(chosen::add);
        return chosen.stream().limit(MOST).mapToInt(Integer::intValue).toArray();
    }

    /** From the lightest to the darkest: neighbours on an edge then differ by little, which a PNG packs well. */
    private static int[] sorted(int[] colours) {
        return Arrays.stream(colours).mapToLong(colour -> (long) -lightness(colour) << 32 | colour).sorted()
                .mapToInt(one -> (int) one).toArray();
    }

    /** Weights of ITU-R BT.601, in thousandths. */
    private static int lightness(int colour) {
        return 299 * red(colour) + 587 * green(colour) + 114 * blue(colour);
    }

    private static int nearest(int[] colours, int colour) {
        int best = 0;
        int least = Integer.MAX_VALUE;
        for (int one : colours) {
            int red = red(one) - red(colour);
            int green = green(one) - green(colour);
            int blue = blue(one) - blue(colour);
            int distance = red * red + green * green + blue * blue;
            if (distance < least) {
                least = distance;
                best = one;
            }
        }
        return best;
    }

    static int red(int colour) {
        return colour >> 16 & 0xff;
    }

    static int green(int colour) {
        return colour >> 8 & 0xff;
    }

    static int blue(int colour) {
        return colour & 0xff;
    }

    /** Returns the colours, red, green and blue in the three low bytes. */
    int[] palette() {
        return palette;
    }

    /** Returns the number in the palette of each pixel. */
    byte[] indices() {
        return indices;
    }
}
