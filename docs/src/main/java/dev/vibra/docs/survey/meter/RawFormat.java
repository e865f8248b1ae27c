package dev.vibra.docs.survey.meter;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How a raw sample is stored, as in {@code s24le}. Whole numbers count as fractions of full scale, -1 to just below 1,
 * as those of a WAV file do.
 *
 * @param isWhole true for whole numbers, false for floating point
 * @param bytes bytes of a sample
 * @param order order of the bytes
 */
record RawFormat(boolean isWhole, int bytes, ByteOrder order) {
    private static final List<RawFormat> ALL = all();

    private static List<RawFormat> all() {
        List<RawFormat> all = new ArrayList<>();
        for (ByteOrder order : new ByteOrder[] {ByteOrder.LITTLE_ENDIAN, ByteOrder.BIG_ENDIAN}) {
            for (int bytes = 2; bytes <= 4; bytes++) {
                all.add(new RawFormat(true, bytes, order));
            }
            all.add(new RawFormat(false, 4, order));
            all.add(new RawFormat(false, 8, order));
        }
        return List.copyOf(all);
    }

    static Optional<RawFormat> named(String name) {
        return ALL.stream().filter(format -> format.toString().equals(name)).findFirst();
    }

    static List<String> names() {
        return ALL.stream().map(RawFormat::toString).toList();
    }

    /** Reads the sample at a place of a buffer of this order. */
    double sample(ByteBuffer from, int at) {
        if (!isWhole) {
            return bytes == 4 ? from.getFloat(at) : from.getDouble(at);
        }
        return switch (bytes) {
            case 2 -> from.getShort(at) * 0x1p-15;
            case 3 -> (order == ByteOrder.LITTLE_ENDIAN
                    ? from.get(at + 2) << 16 | Short.toUnsignedInt(from.getShort(at))
                    : from.getShort(at) << 8 | Byte.toUnsignedInt(from.get(at + 2))) * 0x1p-23;
            default -> from.getInt(at) * 0x1p-31;
        };
    }

    /** Returns the name. */
    @Override
    public String toString() {
        return (isWhole ? "s" : "f") + 8 * bytes + (order == ByteOrder.LITTLE_ENDIAN ? "le" : "be");
    }
}
