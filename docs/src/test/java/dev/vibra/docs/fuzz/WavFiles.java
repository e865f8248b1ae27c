package dev.vibra.docs.fuzz;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** WAV files of every kind, now and then with a field of the header that lies. */
final class WavFiles {
    private static final int EXTENSIBLE = 0xFFFE;
    private static final long[] LIES = {0, 1, 2, 3, 7, 15, 16, 17, 39, 40, 255, 65535, 65536, 0x7fff_ffffL,
            0x8000_0000L,
        0xffff_fffeL, 0xffff_ffffL, 0x1_0000_0000L, Long.MAX_VALUE, Long.MIN_VALUE, -1};

    private final Dice dice;
    private final boolean honest;
    private final boolean rf64;
    private final int bytesPerSample;
    private final int tag;
    private final int channels;

    private WavFiles(Dice dice, boolean honest) {
        this.dice = dice;
        this.honest = honest;
        this.rf64 = dice.oneIn(5);
        this.tag = dice.oneIn(2) ? 1 : 3;
        this.bytesPerSample = tag == 1 ? dice.between(2, 4) : dice.pick(4, 8);
        this.channels = dice.oneIn(3) ? dice.between(2, 4) : 1;
    }

    static byte[] mutated(Dice dice, int largest) {
        return Mutation.some(dice, new WavFiles(dice, dice.oneIn(2)).file(largest));
    }

    static byte[] sound(Dice dice, int largest) {
        return new WavFiles(dice, true).file(largest);
    }

    private byte[] file(int largest) {
        int frames = 1 + dice.size(Math.max(1, largest / (bytesPerSample * channels)));
        byte[] data = samples(frames * channels);
        List<byte[]> chunks = new ArrayList<>();
        if (rf64) {
            chunks.add(ds64(data.length, frames));
        }
        others(chunks);
        chunks.add(chunk("fmt ", format()));
        others(chunks);
        chunks.add(chunk("data", data));
        others(chunks);
        if (!honest && dice.oneIn(6)) {
            chunks.add(dice.below(chunks.size()), dice.pick(chunks));
        }
        if (!honest && dice.oneIn(8)) {
            chunks.remove(dice.below(chunks.size()));
        }
        return whole(chunks);
    }

    private byte[] whole(List<byte[]> chunks) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int size = 4 + chunks.stream().mapToInt(chunk -> chunk.length).sum();
        out.writeBytes(bytes(8).put(name(rf64 ? "RF64" : "RIFF")).putInt((int) lie(rf64 ? -1 : size)).array());
        out.writeBytes(name("WAVE"));
        chunks.forEach(out::writeBytes);
        return out.toByteArray();
    }

    private byte[] format() {
        boolean extensible = dice.oneIn(4);
        ByteBuffer out = bytes(extensible ? 40 : dice.pick(16, 18)).putShort((short) lie(extensible ? EXTENSIBLE
                : tag));
        int rate = dice.pick(1, 100, 2560, 25600, 48000, -1);
        out.putShort((short) lie(channels)).putInt((int) lie(rate))
                .putInt((int) lie((long) rate * channels * bytesPerSample))
                .putShort((short) lie(channels * bytesPerSample)).putShort((short) lie(8 * bytesPerSample));
        if (extensible) {
            out.putShort((short) lie(22)).putShort((short) lie(8 * bytesPerSample)).putInt((int) dice.bits())
                    .putShort((short) lie(tag));
        }
        return out.array();
    }

    private byte[] ds64(long dataSize, long frames) {
        byte[] body = bytes(28).putLong(lie(dataSize + 72)).putLong(lie(dataSize)).putLong(lie(frames)).array();
        return chunk("ds64", body);
    }

    /** Chunks that hold no samples: odd sizes, strange names, many of them. */
    private void others(List<byte[]> chunks) {
        for (int i = dice.oneIn(3) ? dice.size(honest ? 3 : 40) : 0; i > 0; i--) {
            byte[] body = new byte[dice.size(60)];
            chunks.add(chunk(dice.pick("LIST", "JUNK", "bext", "fact", "PEAK", "cue ", "id3 ", "\u001b[2J", "\0\0\0\0",
                    "\u0085\u009b\u00ff\n"),
                    body));
        }
    }

    private byte[] chunk(String name, byte[] body) {
        long size = rf64 && name.equals("data") && dice.oneIn(2) ? -1 : body.length;
        return bytes(8 + body.length + (body.length & 1)).put(name(name)).putInt((int) lie(size)).put(body).array();
    }

    private byte[] samples(int count) {
        ByteBuffer out = bytes(count * bytesPerSample);
        int kind = dice.below(6);
        for (int i = 0; i < count; i++) {
            double value = Math.sin(i * 0.7) + 0.01 * (i % 13);
            if (tag == 1) {
                long whole = kind == 0 ? dice.bits() : (long) (value * (1L << 8 * bytesPerSample - 2));
                for (int b = 0; b < bytesPerSample; b++) {
                    out.put((byte) (whole >> 8 * b));
                }
            } else {
                putReal(out, kind == 0 && dice.oneIn(50) ? Hostile.real(dice) : kind == 1 ? value * 1e38 : value);
            }
        }
        return out.array();
    }

    private void putReal(ByteBuffer out, double value) {
        if (bytesPerSample == 4) {
            out.putFloat((float) value);
        } else {
            out.putDouble(value);
        }
    }

    private long lie(long truth) {
        return honest || !dice.oneIn(14) ? truth : LIES[dice.below(LIES.length)];
    }

    private static ByteBuffer bytes(int size) {
        return ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
    }

    private static byte[] name(String name) {
        return name.getBytes(StandardCharsets.ISO_8859_1);
    }
}
