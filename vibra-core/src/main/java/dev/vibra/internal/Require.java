package dev.vibra.internal;

import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * Argument checks with one message shape: parameter, rule, unit, value. The conditions are written negated, so that NaN
 * fails each of them.
 */
public final class Require {
    /**
     * Largest magnitude of a sample in SI units, beyond anything measured: its fourth power stays within the range of
     * numbers, however many are added.
     */
    public static final double LARGEST_SAMPLE = 1e70;
    /** Most samples that are made because a number asks for them: 22 minutes at 51.2 kHz, half a gigabyte. */
    public static final int MOST_SAMPLES = 1 << 26;

    private Require() {}

    /**
     * Requires a finite number above zero.
     *
     * @param name parameter as the caller knows it
     * @param value value given
     * @param unit unit symbol for the message; empty for a plain number
     * @return the value
     * @throws IllegalArgumentException if the value is not finite and above zero
     */
    public static double positive(String name, double value, String unit) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw failure(name, "finite and > 0" + spaced(unit), value);
        }
        return value;
    }

    /**
     * Requires a finite number of zero or more.
     *
     * @param name parameter as the caller knows it
     * @param value value given
     * @param unit unit symbol for the message; empty for a plain number
     * @return the value
     * @throws IllegalArgumentException if the value is not finite and at least zero
     */
    public static double notNegative(String name, double value, String unit) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw failure(name, "finite and >= 0" + spaced(unit), value);
        }
        return value;
    }

    /**
     * Requires a finite number.
     *
     * @param name parameter as the caller knows it
     * @param value value given
     * @return the value
     * @throws IllegalArgumentException if the value is NaN or infinite
     */
    public static double finite(String name, double value) {
        if (!(Math.abs(value) < Double.POSITIVE_INFINITY)) {
            throw failure(name, "finite", value);
        }
        return value;
    }

    /**
     * Requires a number within closed limits.
     *
     * @param name parameter as the caller knows it
     * @param value value given
     * @param lowest smallest allowed value
     * @param highest largest allowed value
     * @param unit unit symbol for the message; empty for a plain number
     * @return the value
     * @throws IllegalArgumentException if the value is NaN or outside the limits
     */
    public static double within(String name, double value, double lowest, double highest, String unit) {
        if (!(value >= lowest && value <= highest)) {
            throw failure(name, "within " + lowest + " to " + highest + spaced(unit), value);
        }
        return value;
    }

    /**
     * Requires a whole number of at least the given one.
     *
     * @param name parameter as the caller knows it
     * @param value value given
     * @param lowest smallest allowed value
     * @return the value
     * @throws IllegalArgumentException if the value is below the smallest allowed one
     */
    public static int atLeast(String name, int value, int lowest) {
        if (value < lowest) {
            throw new IllegalArgumentException(name + " must be at least " + lowest + ": " + value);
        }
        return value;
    }

    /**
     * Requires that a range lies inside an array.
     *
     * @param name parameter as the caller knows it
     * @param offset first index used
     * @param length number of elements used
     * @param available length of the array
     * @throws IllegalArgumentException if the range leaves the array
     */
    public static void range(String name, int offset, int length, int available) {
        if (offset < 0 || length < 0 || offset > available - length) {
            throw new IllegalArgumentException(name + " must lie inside the array of length " + available
                    + ": offset " + offset + ", length " + length);
        }
    }

    /**
     * Requires that a range lies inside an array.
     *
     * @param name parameter as the caller knows it
     * @param array the array
     * @param offset first index used
     * @param length number of elements used
     * @throws IllegalArgumentException if the range leaves the array
     * @throws NullPointerException that names the array if there is none
     */
    public static void range(String name, double[] array, int offset, int length) {
        range(name, offset, length, Objects.requireNonNull(array, name).length);
    }

    /**
     * Requires that every element is a finite number.
     *
     * @param name parameter as the caller knows it
     * @param values values to check; not kept
     * @throws IllegalArgumentException if an element is NaN or infinite; the message names its index
     */
    public static void allFinite(String name, double[] values) {
        for (int i = 0; i < values.length; i++) {
            if (!(Math.abs(values[i]) < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException(name + "[" + i + "] must be finite: " + values[i]);
            }
        }
    }

    /**
     * Checks a block of samples before anything of it is taken in.
     *
     * @param samples array that holds the block
     * @param offset index of the first sample
     * @param length number of samples
     * @throws IllegalArgumentException if the range leaves the array or a sample is not finite or beyond 1e70
     */
    public static void samples(double[] samples, int offset, int length) {
        range("samples", offset, length, Objects.requireNonNull(samples, "samples").length);
        for (int i = offset; i < offset + length; i++) {
            if (!(Math.abs(samples[i]) <= LARGEST_SAMPLE)) {
                finite("samples[" + i + "]", samples[i]);
                throw failure("samples[" + i + "]", "within ±1e70", samples[i]);
            }
        }
    }

    /**
     * Copies an array and requires that every element is a finite number: what stays inside a value.
     *
     * @param name parameter as the caller knows it
     * @param values values to copy and check
     * @return the copy
     * @throws IllegalArgumentException if an element is NaN or infinite; the message names its index
     */
    public static double[] finiteCopy(String name, double[] values) {
        double[] copy = Objects.requireNonNull(values, name).clone();
        allFinite(name, copy);
        return copy;
    }

    /**
     * Requires that every element is a finite number of zero or more.
     *
     * @param name parameter as the caller knows it
     * @param values values to check; not kept
     * @return the values
     * @throws IllegalArgumentException if an element is NaN, infinite or negative; the message names its index
     */
    public static double[] allNotNegative(String name, double[] values) {
        for (int i = 0; i < values.length; i++) {
            if (!(values[i] >= 0 && values[i] < Double.POSITIVE_INFINITY)) {
                throw failure(name + "[" + i + "]", "finite and >= 0", values[i]);
            }
        }
        return values;
    }

    /**
     * Copies a list and requires that neither it nor an element of it is null.
     *
     * @param <T> type of the elements
     * @param name parameter as the caller knows it
     * @param values list to copy
     * @return an unmodifiable copy
     * @throws NullPointerException that names the list, or the element with its index
     */
    public static <T> List<T> copy(String name, List<? extends T> values) {
        for (int i = 0; i < Objects.requireNonNull(values, name).size(); i++) {
            Objects.requireNonNull(values.get(i), name + "[" + i + "]");
        }
        return List.copyOf(values);
    }

    /**
     * Requires a whole number within closed limits.
     *
     * @param name parameter as the caller knows it
     * @param value value given
     * @param lowest smallest allowed value
     * @param highest largest allowed value
     * @return the value
     * @throws IllegalArgumentException if the value is outside the limits
     */
    public static int count(String name, int value, int lowest, int highest) {
        if (value < lowest || value > highest) {
            throw new IllegalArgumentException(name + " must be from " + lowest + " to " + highest + ": " + value);
        }
        return value;
    }

    /**
     * Makes the exception for a broken rule, for rules that this class has no method for.
     *
     * @param name parameter as the caller knows it
     * @param rule what is allowed, to be read after "must be"
     * @param value value given
     * @return the exception to throw
     */
    public static IllegalArgumentException failure(String name, String rule, double value) {
        return new IllegalArgumentException(String.format(Locale.ROOT, "%s must be %s: %s", name, rule, value));
    }

    /**
     * Requires text that says something.
     *
     * @param name name of the argument
     * @param text value given
     * @return the text without blanks around it
     */
    public static String notBlank(String name, String text) {
        if (Objects.requireNonNull(text, name).isBlank()) {
            throw new IllegalArgumentException(name + " must not be blank: \"" + text + "\"");
        }
        return text.strip();
    }

    private static String spaced(String unit) {
        return unit.isEmpty() ? "" : " " + unit;
    }
}
