package dev.vibra.docs.survey.chart;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Brings a drawing of few inks down to 256 colours; its PNG then takes about a third of the bytes. */
final class FewColours {
    private static final int MOST = 256;
    private static final int INKS = 64;

    private FewColours() {}

    /** Keeps the most frequent colours as they are; each other pixel takes the nearest of them. */
    static BufferedImage of(BufferedImage image) {
        int width = image.getWidth();
        int[] pixels = image.getRGB(0, 0, width, image.getHeight(), null, 0, width);
        Map<Integer, Integer> frequency = new HashMap<>();
        for (int pixel : pixels) {
            frequency.merge(pixel, 1, Integer::sum);
        }
        int[] palette = palette(frequency);
        Map<Integer, Integer> indexOf = new HashMap<>();
        for (int colour : frequency.keySet()) {
            indexOf.put(colour, nearest(palette, colour));
        }
        byte[] indices = new byte[pixels.length];
        for (int i = 0; i < pixels.length; i++) {
            indices[i] = (byte) (int) indexOf.get(pixels[i]);
        }
        IndexColorModel model = new IndexColorModel(8, palette.length, palette, 0, false, -1, 0);
        BufferedImage indexed = new BufferedImage(width, image.getHeight(), BufferedImage.TYPE_BYTE_INDEXED, model);
        indexed.getRaster().setDataElements(0, 0, width, image.getHeight(), indices);
        return indexed;
    }

    /** The most frequent colours as they are, then one of each cell of 16 levels per channel, up to 256 in all. */
    private static int[] palette(Map<Integer, Integer> frequency) {
        Comparator<Map.Entry<Integer, Integer>> order = Map.Entry.<Integer, Integer>comparingByValue().reversed()
                .thenComparing(Map.Entry.comparingByKey());
        List<Integer> byFrequency = frequency.entrySet().stream().sorted(order).map(Map.Entry::getKey).toList();
        Set<Integer> chosen = new LinkedHashSet<>(byFrequency.subList(0, Math.min(INKS, byFrequency.size())));
        Set<Integer> cells = new HashSet<>();
        byFrequency.stream().filter(colour -> cells.add(colour & 0xf0f0f0)).forEach(chosen::add);
        return chosen.stream().limit(MOST).mapToInt(Integer::intValue).toArray();
    }

    private static int nearest(int[] palette, int colour) {
        int best = 0;
        int least = Integer.MAX_VALUE;
        for (int i = 0; i < palette.length; i++) {
            int red = (palette[i] >> 16 & 0xff) - (colour >> 16 & 0xff);
            int green = (palette[i] >> 8 & 0xff) - (colour >> 8 & 0xff);
            int blue = (palette[i] & 0xff) - (colour & 0xff);
            int distance = red * red + green * green + blue * blue;
            if (distance < least) {
                least = distance;
                best = i;
            }
        }
        return best;
    }
}
