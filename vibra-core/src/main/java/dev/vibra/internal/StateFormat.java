package dev.vibra.internal;

import java.util.Arrays;
import java.util.Objects;

/**
 * First numbers of a state: kind and version, length, settings; and the checks of the numbers behind them.
 *
 * <p>Kind and version are packed into one whole number below 2⁵³: five bits a letter, seven bits of version.
 */
public final class StateFormat {
    /** Numbers before the first one of the worker's own. */
    public static final int HEADER = 3;
    /** Whole numbers up to here are told apart by a double. */
    public static final double LARGEST_COUNT = 1L << 53;

    private static final int VERSIONS = 128;
    private static final String LETTERS = " abcdefghijklmnopqrstuvwxyz-";

    private final String kind;
    private final int version;
    private final double code;

    /**
     * Makes the format of one kind of worker.
     *
     * @param kind at most nine small letters or hyphens
     * @param version version of the numbers, 1 to 127
     */
    public StateFormat(String kind, int version) {
        this.kind = kind;
        this.version = (int) Require.within("version", version, 1, VERSIONS - 1, "");
        Require.within("length of the kind", kind.length(), 1, 9, "");
        long packed = 0;
        for (char c : kind.toCharArray()) {
            packed = 32 * packed + LETTERS.indexOf(c);
        }
        code = (double) (packed * VERSIONS + version);
    }

    /**
     * Writes the header.
     *
     * @param out receives the state
     * @param offset index of its first number
     * @param length numbers of the whole state
     * @param settings a number that stands for the settings
     * @return index of the first number of the worker's own
     * @throws IllegalArgumentException if the range leaves the array
     */
    public int write(double[] out, int offset, int length, int settings) {
        Require.range("out", out, offset, length);
        out[offset] = code;
        out[offset + 1] = length;
        out[offset + 2] = settings;
        return offset + HEADER;
    }

    /**
     * Checks the header, and that all numbers are finite.
     *
     * @param in holds the state
     * @param offset index of its first number
     * @param length numbers of the whole state
     * @param settings the number that stands for the settings
     * @return index of the first number of the worker's own
     * @throws IllegalArgumentException if it is no such state
     */
    public int check(double[] in, int offset, int length, int settings) {
        Require.range("state", offset, HEADER, Objects.requireNonNull(in, "in").length);
        if (!(in[offset] == code)) {
            throw new IllegalArgumentException("state must be of the kind " + kind + ", version " + version + ": "
                    + told(in[offset]));
        }
        if (!(in[offset + 1] == length && in[offset + 2] == settings)) {
            throw new IllegalArgumentException("state of the kind " + kind
                    + " must come from the same settings and sample rate: length " + in[offset + 1] + " and settings "
                    + in[offset + 2] + ", here " + length + " and " + settings);
        }
        Require.range("state", offset, length, in.length);
        for (int i = offset + HEADER; i < offset + length; i++) {
            if (!(Math.abs(in[i]) < Double.POSITIVE_INFINITY)) {
                throw Require.failure("state[" + i + "]", "finite", in[i]);
            }
        }
        return offset + HEADER;
    }

    private static String told(double code) {
        if (!(code >= 1 && code < LARGEST_COUNT && code == Math.rint(code))) {
            return "begins with " + code;
        }
        StringBuilder kind = new StringBuilder();
        for (long rest = (long) code / VERSIONS; rest > 0; rest /= 32) {
            int letter = (int) (rest % 32);
            kind.insert(0, letter < LETTERS.length() ? LETTERS.charAt(letter) : '?');
        }
        return kind + ", version " + (long) code % VERSIONS;
    }

    /**
     * Reads a count.
     *
     * @param in holds the state
     * @param at index of the number
     * @param highest highest count that can be
     * @return whole number from 0 to the highest
     * @throws IllegalArgumentException if it is none
     */
    public static long count(double[] in, int at, double highest) {
        double value = in[at];
        if (!(value >= 0 && value <= highest && value == Math.rint(value))) {
            throw Require.failure("state[" + at + "]", "a whole number from 0 to " + (long) highest, value);
        }
        return (long) value;
    }

    /**
     * Checks numbers that can't be negative.
     *
     * @param in holds the state
     * @param at index of the first
     * @param length how many
     * @throws IllegalArgumentException if one is negative
     */
    public static void notNegative(double[] in, int at, int length) {
        for (int i = at; i < at + length; i++) {
            if (!(in[i] >= 0)) {
                throw Require.failure("state[" + i + "]", ">= 0", in[i]);
            }
        }
    }

    /**
     * Reads a mark.
     *
     * @param in holds the state
     * @param at index of the number
     * @return true for 1, false for 0
     * @throws IllegalArgumentException if it is neither
     */
    public static boolean flag(double[] in, int at) {
        return count(in, at, 1) == 1;
    }

    /**
     * Writes numbers that must be finite.
     *
     * @param numbers numbers of the worker
     * @param out receives them
     * @param at index of the first
     * @return index behind the last
     * @throws IllegalStateException if one is not finite
     */
    public static int put(double[] numbers, double[] out, int at) {
        for (int i = 0; i < numbers.length; i++) {
            out[at + i] = sound(numbers[i]);
        }
        return at + numbers.length;
    }

    /**
     * Passes on a number that must be finite.
     *
     * @param number number of the worker
     * @return the number
     * @throws IllegalStateException if it is not finite
     */
    public static double sound(double number) {
        if (!(Math.abs(number) < Double.POSITIVE_INFINITY)) {
            throw new IllegalStateException("a sample that is not finite has spoiled the state; reset it");
        }
        return number;
    }

    /**
     * Reads numbers.
     *
     * @param in holds the state, its numbers checked
     * @param at index of the first
     * @param numbers receives them
     * @return index behind the last
     */
    public static int take(double[] in, int at, double[] numbers) {
        System.arraycopy(in, at, numbers, 0, numbers.length);
        return at + numbers.length;
    }

    /**
     * Rounds computed settings, so that the last places, which another runtime may compute otherwise, don't count.
     *
     * @param numbers computed numbers
     * @return a new array of them as float
     */
    public static double[] rounded(double[] numbers) {
        return Arrays.stream(numbers).map(number -> (float) number).toArray();
    }

    /**
     * Makes the number that stands for settings; the same on every runtime.
     *
     * @param numbers numbers of the settings, none computed, or rounded
     * @return the number
     */
    public static int settings(double... numbers) {
        return Arrays.hashCode(numbers);
    }
}
