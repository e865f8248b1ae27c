package dev.vibra.docs.survey.chart;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/**
 * Packs pictures of a palette as PNG. A row is written as it is or as its difference from the row above, whichever
 * changes less often along the row: strokes that stand upright become rows of zeros.
 *
 * @see "ISO/IEC 15948:2004, clauses 5 (signature, chunks), 9 (filters) and 11.2 (IHDR, PLTE, IDAT, IEND)"
 */
final class Png {
    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};
    private static final byte BITS = 8;
    private static final byte WITH_PALETTE = 3;
    private static final byte AS_IT_IS = 0;
    private static final byte FROM_ABOVE = 2;
    /** Level 6 takes half as long again and saves four bytes in a hundred; level 9 takes twenty times as long. */
    private static final int LEVEL = 4;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 17);

    private Png() {}

    static byte[] of(int width, int height, FewColours picture) {
        Png png = new Png();
        png.out.writeBytes(SIGNATURE);
        byte[] head = new byte[13];
        put(head, 0, width);
        put(head, 4, height);
        head[8] = BITS;
        head[9] = WITH_PALETTE;
        png.chunk("IHDR", head, head.length);
        byte[] colours = colours(picture.palette());
        png.chunk("PLTE", colours, colours.length);
        byte[] rows = rows(width, height, picture.indices());
        Deflater deflater = new Deflater(LEVEL);
        try {
            deflater.setInput(rows);
            deflater.finish();
            byte[] packed = new byte[rows.length / 2 + 64];
            while (!deflater.finished()) {
                png.chunk("IDAT", packed, deflater.deflate(packed));
            }
        } finally {
            deflater.end();
        }
        png.chunk("IEND", new byte[0], 0);
        return png.out.toByteArray();
    }

    private static byte[] colours(int[] palette) {
        byte[] bytes = new byte[3 * palette.length];
        for (int i = 0; i < palette.length; i++) {
            bytes[3 * i] = (byte) FewColours.red(palette[i]);
            bytes[3 * i + 1] = (byte) FewColours.green(palette[i]);
            bytes[3 * i + 2] = (byte) FewColours.blue(palette[i]);
        }
        return bytes;
    }

    /** Each row behind a byte that says how it is written; the row above the first is zero. */
    private static byte[] rows(int width, int height, byte[] indices) {
        byte[] rows = new byte[height * (width + 1)];
        for (int y = 0; y < height; y++) {
            int from = y * width;
            int to = y * (width + 1);
            boolean above = y > 0 && changesLessFromAbove(indices, from, width);
            rows[to] = above ? FROM_ABOVE : AS_IT_IS;
            if (above) {
                for (int x = 0; x < width; x++) {
                    rows[to + 1 + x] = (byte) (indices[from + x] - indices[from + x - width]);
                }
            } else {
                System.arraycopy(indices, from, rows, to + 1, width);
            }
        }
        return rows;
    }

    private static boolean changesLessFromAbove(byte[] indices, int from, int width) {
        int balance = 0;
        for (int i = from + 1; i < from + width; i++) {
            int step = indices[i] - indices[i - 1];
            balance += (step == indices[i - width] - indices[i - 1 - width] ? 0 : 1) - (step == 0 ? 0 : 1);
        }
        return balance < 0;
    }

    /** Length, type, content, and the check sum of the last two. */
    private void chunk(String type, byte[] content, int length) {
        byte[] name = type.getBytes(StandardCharsets.US_ASCII);
        CRC32 check = new CRC32();
        check.update(name);
        check.update(content, 0, length);
        number(length);
        out.writeBytes(name);
        out.write(content, 0, length);
        number((int) check.getValue());
    }

    private void number(int value) {
        byte[] bytes = new byte[4];
        put(bytes, 0, value);
        out.writeBytes(bytes);
    }

    private static void put(byte[] bytes, int at, int value) {
        for (int i = 0; i < 4; i++) {
            bytes[at + i] = (byte) (value >> 24 - 8 * i);
        }
    }
}
