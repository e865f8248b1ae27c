package dev.vibra.docs.survey.chart;

import java.util.Arrays;
import java.util.stream.IntStream;

/** Whole numbers by colour, in open addressing: a picture has a million pixels, and a boxed map a million steps. */
final class ColourTable {
    private static final int FIRST_SIZE = 1 << 10;

    private int[] keys = new int[FIRST_SIZE]; // colour + 1, since 0 is a free slot and black a colour
    private int[] values = new int[FIRST_SIZE];
    private int size;

    /** Adds to the number of a colour, which begins with none. */
    void add(int colour, int more) {
        int slot = slot(keys, colour);
        if (keys[slot] == 0) {
            if (++size > keys.length / 2) {
                grow();
                slot = slot(keys, colour);
            }
            keys[slot] = colour + 1;
        }
        values[slot] += more;
    }

    private void grow() {
        int[] newKeys = new int[2 * keys.length];
        int[] newValues = new int[newKeys.length];
        for (int slot : slots()) {
            int to = slot(newKeys, keys[slot] - 1);
            newKeys[to] = keys[slot];
            newValues[to] = values[slot];
        }
        keys = newKeys;
        values = newValues;
    }

    private static int slot(int[] keys, int colour) {
        int mask = keys.length - 1;
        int slot = colour * 0x9e3779b1 >>> Integer.numberOfLeadingZeros(mask);
        while (keys[slot] != 0 && keys[slot] != colour + 1) {
            slot = slot + 1 & mask;
        }
        return slot;
    }

    /** Returns the number of a colour; 0 if it has none. */
    int value(int colour) {
        return values[slot(keys, colour)];
    }

    /** Returns the places that are taken. */
    int[] slots() {
        return IntStream.range(0, keys.length).filter(slot -> keys[slot] != 0).toArray();
    }

    int colour(int slot) {
        return keys[slot] - 1;
    }

    /** Replaces the number at a place that is taken. */
    void put(int slot, int value) {
        values[slot] = value;
    }

    /** Returns the colours, those with the largest number first, the darker of equals. */
    int[] coloursByCount() {
        long[] sorted = Arrays.stream(slots())
                .mapToLong(slot -> (long) (Integer.MAX_VALUE - values[slot]) << 32 | colour(slot)).sorted().toArray();
        return Arrays.stream(sorted).mapToInt(one -> (int) one).toArray();
    }
}
