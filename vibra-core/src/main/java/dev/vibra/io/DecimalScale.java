package dev.vibra.io;

import java.math.BigInteger;

/**
 * Whole numbers of 64 bits times powers of ten, rounded to the nearest double. The leading 64 bits of the power leave
 * the product uncertain by less than one in its upper 64 bits; where a tie might lie within that, nothing is told, which
 * happens once in a thousand numbers. Holds powers once used: one per thread.
 *
 * @see "D. Lemire, Number parsing at a gigabyte per second, Software: Practice and Experience 51 (2021), 1700-1727,
 *     which leaves no case open by a wider product"
 */
final class DecimalScale {
    private static final int MOST_TENS = 300;
    /** Bits of a double with its leading 1, and the exponents that leave its last bit within normal numbers. */
    private static final int BITS = 53;
    private static final int LOWEST = -1022;
    private static final int HIGHEST = 1023 - BITS;

    /** Leading bits of each power, the highest one set: the power is at least this and below one more, times 2^shift. */
    private final long[] leading = new long[2 * MOST_TENS + 1];
    private final int[] shifts = new int[leading.length];

    /** Rounds unsigned digits times 10^tens; NaN if that isn't certain. */
    double product(long digits, int tens) {
        if (digits == 0) {
            return 0;
        }
        if (Math.abs(tens) > MOST_TENS) {
            return Double.NaN;
        }
        int index = tens + MOST_TENS;
        if (leading[index] == 0) {
            add(index, tens);
        }
        int zeros = Long.numberOfLeadingZeros(digits);
        long factor = digits << zeros;
        long power = leading[index];
        // Both highest bits are set: the signed product lacks each factor once.
        long high = Math.multiplyHigh(factor, power) + factor + power;
        int extra = (int) (high >>> 63) + 63 - BITS;
        long rest = high & (1L << extra) - 1;
        long half = 1L << extra - 1;
        int exponent = shifts[index] + 64 - zeros + extra;
        if (rest == half - 1 || rest == half && factor * power == 0 || exponent < LOWEST || exponent > HIGHEST) {
            return Double.NaN;
        }
        long mantissa = (high >>> extra) + (rest >= half ? 1 : 0);
        return mantissa * Double.longBitsToDouble((long) (exponent + 1023) << BITS - 1);
    }

    private void add(int index, int tens) {
        BigInteger power = BigInteger.TEN.pow(Math.abs(tens));
        int size = power.bitLength();
        leading[index] = (tens >= 0 ? power.shiftLeft(64).shiftRight(size)
                : BigInteger.ONE.shiftLeft(63 + size).divide(power)).longValue();
        shifts[index] = tens >= 0 ? size - 64 : -63 - size;
    }
}
