package dev.vibra.io;

import java.util.Optional;

/** Tells by its first bytes that a text isn't one of single bytes, which is what the reader of tables takes. */
final class TextEncoding {
    private TextEncoding() {}

    /** Names the wide encoding of a text: by its byte order mark, or by the zero bytes of plain letters and digits. */
    static Optional<String> wide(byte[] head) {
        if (begins(head, 0, 0, 0xFE, 0xFF) || begins(head, 0xFF, 0xFE, 0, 0) || zeros(head, 4) == 3) {
            return Optional.of("UTF-32");
        }
        return begins(head, 0xFE, 0xFF) || begins(head, 0xFF, 0xFE) || zeros(head, 2) == 1
                ? Optional.of("UTF-16") : Optional.empty();
    }

    /** Tells whether no character controls anything but lines and columns. */
    static boolean isPlain(byte[] head) {
        for (byte b : head) {
            if (b >= 0 && b < ' ' && b != '\t' && b != '\n' && b != '\r') {
                return false;
            }
        }
        return true;
    }

    private static boolean begins(byte[] head, int... bytes) {
        for (int i = 0; i < bytes.length; i++) {
            if (i >= head.length || Byte.toUnsignedInt(head[i]) != bytes[i]) {
                return false;
            }
        }
        return true;
    }

    /** In how many places of each group of bytes zero stands in every group, or nearly: text of other letters is rare. */
    private static int zeros(byte[] head, int group) {
        int groups = head.length / group;
        int places = 0;
        for (int place = 0; place < group && groups > 0; place++) {
            int zeros = 0;
            for (int i = 0; i < groups; i++) {
                zeros += head[i * group + place] == 0 ? 1 : 0;
            }
            places += 10 * zeros >= 9 * groups ? 1 : 0;
        }
        return places;
    }
}
