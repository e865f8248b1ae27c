package dev.vibra.io;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Finds format and place of the samples in a RIFF or RF64 file, reading forward to the first sample; each complaint
 * names the byte where it arose.
 */
final class WavHeader {
    private static final int EXTENSIBLE = 0xFFFE;
    private static final int LONGEST_FORMAT_CHUNK = ByteReader.BLOCK;
    private static final long SIZE_ELSEWHERE = 0xFFFF_FFFFL;
    /** Those who describe a recording at length have some dozens; each costs time. */
    private static final int MOST_CHUNKS = 10_000;

    private final ByteReader in;
    private OptionalLong dataSize64 = OptionalLong.empty();
    private boolean hasFormat;

    private SampleFormat format;
    private int channels;
    private double sampleRateHertz;
    private long dataOffset;
    private long dataSize;

    private WavHeader(ByteReader in) {
        this.in = in;
    }

    static WavHeader read(ByteReader in) throws IOException {
        WavHeader header = new WavHeader(in);
        header.readChunks();
        return header;
    }

    SampleFormat format() {
        return format;
    }

    int channels() {
        return channels;
    }

    double sampleRateHertz() {
        return sampleRateHertz;
    }

    long frames() {
        return dataSize / frameSize();
    }

    /** Number of bytes of all channels together, 65535 at most. */
    int frameSize() {
        return channels * format.bytesPerSample();
    }

    private void readChunks() throws IOException {
        String riff = readName();
        in.skip(4);
        String wave = readName();
        if (!(riff.equals("RIFF") || riff.equals("RF64")) || !wave.equals("WAVE")) {
            throw in.problem(0, "must begin with RIFF (or RF64) and WAVE: " + riff + ", " + wave);
        }
        int chunks = 0;
        while (!readChunk()) {
            if (++chunks == MOST_CHUNKS) {
                throw in.problem(in.position(), "file may hold up to " + MOST_CHUNKS + " chunks before the samples");
            }
        }
    }

    /** Tells whether the samples follow. */
    private boolean readChunk() throws IOException {
        long at = in.position();
        if (in.ready(8) < 8) {
            throw in.problem(at, "file ends before " + (hasFormat ? "the samples" : "the format"));
        }
        String name = readName();
        long size = Integer.toUnsignedLong(in.bytes().getInt());
        if (name.equals("data")) {
            startSamples(size == SIZE_ELSEWHERE ? dataSize64.orElse(size) : size);
            return true;
        }
        OptionalLong held = in.remaining();
        if (held.isPresent() && size > held.getAsLong()) {
            throw tooShort(at + 4, name, size, held.getAsLong());
        }
        if (name.equals("fmt ")) {
            readFormat(size);
        } else if (name.equals("ds64")) {
            readSize64(size);
        }
        long rest = at + 8 + size - in.position();
        long skipped = in.skip(rest);
        if (skipped < rest) {
            throw tooShort(at + 4, name, size, size - rest + skipped);
        }
        in.skip(size & 1);
        return false;
    }

    private void readSize64(long size) throws IOException {
        if (size < 16) {
            throw in.problem(in.position() - 4, "sizes of 64 bits must be at least 16 bytes long: " + size);
        }
        ByteBuffer bytes = body("ds64", size, 16);
        dataSize64 = OptionalLong.of(bytes.getLong(bytes.position() + 8));
    }

    private void readFormat(long size) throws IOException {
        if (size < 16 || size > LONGEST_FORMAT_CHUNK) {
            throw in.problem(in.position() - 4, "format must be 16 to " + LONGEST_FORMAT_CHUNK + " bytes long: " + size);
        }
        ByteBuffer bytes = body("fmt ", size, (int) size);
        long at = in.position();
        int start = bytes.position();
        int tag = Short.toUnsignedInt(bytes.getShort(start));
        channels = Short.toUnsignedInt(bytes.getShort(start + 2));
        sampleRateHertz = Integer.toUnsignedLong(bytes.getInt(start + 4));
        int bits = Short.toUnsignedInt(bytes.getShort(start + 14));
        if (tag == EXTENSIBLE) {
            if (size < 40) {
                throw in.problem(at, "extensible format must be at least 40 bytes long: " + size);
            }
            tag = Short.toUnsignedInt(bytes.getShort(start + 24));
        }
        Optional<SampleFormat> found = SampleFormat.find(tag, bits);
        if (found.isEmpty()) {
            throw in.problem(at, "samples must be whole numbers of 16, 24 or 32 bits (format 1) or floating point of 32"
                    + " or 64 bits (format 3): format " + tag + ", " + bits + " bits");
        }
        format = found.get();
        checkFormat(at, Short.toUnsignedInt(bytes.getShort(start + 12)));
        hasFormat = true;
    }

    private void checkFormat(long at, int blockAlign) {
        if (channels < 1) {
            throw in.problem(at + 2, "number of channels must be at least 1: " + channels);
        }
        if (sampleRateHertz < 1) {
            throw in.problem(at + 4, "sample rate must be > 0 Hz: " + sampleRateHertz);
        }
        if (blockAlign != frameSize()) {
            throw in.problem(at + 12, "bytes per sample of all channels must be " + frameSize() + " for " + channels
                    + " channel(s) of " + 8 * format.bytesPerSample() + " bits: " + blockAlign);
        }
    }

    private void startSamples(long size) throws IOException {
        dataOffset = in.position();
        dataSize = size;
        if (!hasFormat) {
            throw in.problem(dataOffset - 8, "the format must stand before the samples");
        }
        OptionalLong held = in.remaining();
        if (held.isPresent() && (dataSize < 0 || dataSize > held.getAsLong())) {
            throw cutAfter(held.getAsLong());
        }
        if (dataSize == 0) {
            throw in.problem(dataOffset - 4, "file holds no samples");
        }
        if (Long.remainderUnsigned(dataSize, frameSize()) != 0) {
            throw in.problem(dataOffset - 4, "size of the samples must be a multiple of " + frameSize() + " bytes: "
                    + Long.toUnsignedString(dataSize));
        }
        if (dataSize < 0) {
            throw in.problem(dataOffset - 4, "header promises " + Long.toUnsignedString(dataSize)
                    + " bytes of samples, more than any file holds");
        }
    }

    /** The file ends within the samples. */
    RecordingFileException cutAfter(long held) {
        return in.problem(dataOffset - 4, "header promises " + Long.toUnsignedString(dataSize)
                + " bytes of samples, the file holds " + held);
    }

    private ByteBuffer body(String name, long size, int wanted) throws IOException {
        int held = in.ready(wanted);
        if (held < wanted) {
            throw tooShort(in.position() - 4, name, size, held);
        }
        return in.bytes();
    }

    private RecordingFileException tooShort(long sizeAt, String name, long size, long held) {
        return in.problem(sizeAt, "chunk '" + name + "' promises " + size + " bytes, the file holds " + held);
    }

    private String readName() throws IOException {
        int held = in.ready(4);
        if (held < 4) {
            throw in.problem(in.position(), "file ends within the header, 4 bytes wanted, " + held + " there");
        }
        byte[] name = new byte[4];
        in.bytes().get(name);
        return new String(name, StandardCharsets.ISO_8859_1);
    }
}
