package dev.vibra.docs.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Changes bytes without a thought for what they mean. */
final class Mutation {
    private static final byte[] TELLING = {0, 1, '\n', '\r', '\t', ' ', '"', ',', ';', '#', '-', '.', 'e', '{', '}',
            '[', ']', ':',
        0x1b, 0x7f, (byte) 0x80, (byte) 0x9b, (byte) 0xc2, (byte) 0xfe, (byte) 0xff};

    private Mutation() {}

    /** Applies none to three changes. */
    static byte[] some(Dice dice, byte[] bytes) {
        byte[] out = bytes;
        for (int i = dice.below(4); i > 0; i--) {
            out = one(dice, out);
        }
        return out;
    }

    static byte[] one(Dice dice, byte[] bytes) {
        if (bytes.length == 0) {
            return new byte[] {dice.oneIn(2) ? 0 : (byte) dice.bits()};
        }
        int at = dice.below(bytes.length);
        int length = 1 + dice.size(bytes.length - at - 1);
        return switch (dice.below(9)) {
            case 0 -> flipped(bytes, at, 1 << dice.below(8));
            case 1 -> replaced(bytes, at, 1, (byte) dice.bits());
            case 2 -> replaced(bytes, at, 1, TELLING[dice.below(TELLING.length)]);
            case 3 -> replaced(bytes, at, length, dice.oneIn(2) ? 0 : (byte) 0xff);
            case 4 -> spliced(bytes, at, at + length, new byte[0]);
            case 5 -> spliced(bytes, at, at, Arrays.copyOfRange(bytes, at, at + length));
            case 6 -> Arrays.copyOf(bytes, at);
            case 7 -> spliced(bytes, at, at, Hostile.number(dice).getBytes(StandardCharsets.UTF_8));
            default -> {
                int from = dice.below(bytes.length);
                yield spliced(bytes, at, at, Arrays.copyOfRange(bytes, from, from + dice.size(bytes.length - from)));
            }
        };
    }

    private static byte[] flipped(byte[] bytes, int at, int bit) {
        byte[] out = bytes.clone();
        out[at] ^= (byte) bit;
        return out;
    }

    private static byte[] replaced(byte[] bytes, int at, int length, byte value) {
        byte[] out = bytes.clone();
        Arrays.fill(out, at, at + length, value);
        return out;
    }

    private static byte[] spliced(byte[] bytes, int from, int to, byte[] put) {
        byte[] out = Arrays.copyOf(bytes, from + put.length + bytes.length - to);
        System.arraycopy(put, 0, out, from, put.length);
        System.arraycopy(bytes, to, out, from + put.length, bytes.length - to);
        return out;
    }
}
