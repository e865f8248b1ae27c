package dev.vibra.io;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** Finds format and place of the samples in a RIFF or RF64 file; each complaint names the byte where it arose. */
final class WavHeader {
    private static final int EXTENSIBLE = 0xFFFE;
    private static final int LONGEST_FORMAT_CHUNK = 1 << 16;
    private static final long SIZE_ELSEWHERE = 0xFFFF_FFFFL;

    private final Path file;
    private final FileChannel channel;
    private final long fileSize;
    private long dataSize64 = -1;

    private SampleFormat format;
    private int channels;
    private double sampleRateHertz;
    private long dataOffset = -1;
    private long dataSize;

    private WavHeader(Path file, FileChannel channel) throws IOException {
        this.file = file;
        this.channel = channel;
        this.fileSize = channel.size();
    }

    static WavHeader read(Path file, FileChannel channel) throws IOException {
        WavHeader header = new WavHeader(file, channel);
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

    long dataOffset() {
        return dataOffset;
    }

    long frames() {
        return dataSize / frameSize();
    }

    private long frameSize() {
        return (long) channels * format.bytesPerSample();
    }

    private void readChunks() throws IOException {
        String riff = readName(0);
        String wave = readName(8);
        if (!(riff.equals("RIFF") || riff.equals("RF64")) || !wave.equals("WAVE")) {
            throw problem(0, "must begin with RIFF (or RF64) and WAVE: " + riff + ", " + wave);
        }
        long at = 12;
        while (dataOffset < 0 || format == null) {
            if (at + 8 > fileSize) {
                throw problem(at, "file ends before " + (format == null ? "the format" : "the samples"));
            }
            at = readChunk(at);
        }
        checkData();
    }

    private long readChunk(long at) throws IOException {
        String name = readName(at);
        long size = Integer.toUnsignedLong(readBytes(at + 4, 4).getInt());
        long body = at + 8;
        if (name.equals("data") && size == SIZE_ELSEWHERE && dataSize64 >= 0) {
            size = dataSize64;
        }
        if (!name.equals("data") && size > fileSize - body) {
            throw problem(at + 4, "chunk '" + name + "' promises " + size + " bytes, the file holds "
                    + (fileSize - body));
        }
        switch (name) {
            case "ds64" -> dataSize64 = readBytes(body, 16).getLong(8);
            case "fmt " -> readFormat(body, size);
            case "data" -> {
                dataOffset = body;
                dataSize = size;
                checkDataSize();
            }
            default -> { } // Other chunks hold no samples.
        }
        return body + size + (size & 1);
    }

    private void readFormat(long at, long size) throws IOException {
        if (size < 16 || size > LONGEST_FORMAT_CHUNK) {
            throw problem(at - 4, "format must be 16 to " + LONGEST_FORMAT_CHUNK + " bytes long: " + size);
        }
        ByteBuffer bytes = readBytes(at, (int) size);
        int tag = Short.toUnsignedInt(bytes.getShort(0));
        channels = Short.toUnsignedInt(bytes.getShort(2));
        sampleRateHertz = Integer.toUnsignedLong(bytes.getInt(4));
        int bits = Short.toUnsignedInt(bytes.getShort(14));
        if (tag == EXTENSIBLE) {
            if (size < 40) {
                throw problem(at, "extensible format must be at least 40 bytes long: " + size);
            }
            tag = Short.toUnsignedInt(bytes.getShort(24));
        }
        format = SampleFormat.find(tag, bits);
        if (format == null) {
            throw problem(at, "samples must be whole numbers of 16, 24 or 32 bits (format 1) or floating point of 32"
                    + " or 64 bits (format 3): format " + tag + ", " + bits + " bits");
        }
        checkFormat(at, Short.toUnsignedInt(bytes.getShort(12)));
    }

    private void checkFormat(long at, int blockAlign) {
        if (channels < 1) {
            throw problem(at + 2, "number of channels must be at least 1: " + channels);
        }
        if (sampleRateHertz < 1) {
            throw problem(at + 4, "sample rate must be > 0 Hz: " + sampleRateHertz);
        }
        if (blockAlign != frameSize()) {
            throw problem(at + 12, "bytes per sample of all channels must be " + frameSize() + " for " + channels
                    + " channel(s) of " + 8 * format.bytesPerSample() + " bits: " + blockAlign);
        }
    }

    private void checkDataSize() {
        if (dataSize < 0 || dataSize > fileSize - dataOffset) {
            throw problem(dataOffset - 4, "header promises " + Long.toUnsignedString(dataSize)
                    + " bytes of samples, the file"
                    + " holds " + (fileSize - dataOffset));
        }
    }

    private void checkData() {
        if (dataSize == 0) {
            throw problem(dataOffset - 4, "file holds no samples");
        }
        if (dataSize % frameSize() != 0) {
            throw problem(dataOffset - 4, "size of the samples must be a multiple of " + frameSize() + " bytes: "
                    + dataSize);
        }
    }

    private String readName(long at) throws IOException {
        return StandardCharsets.ISO_8859_1.decode(readBytes(at, 4)).toString();
    }

    private ByteBuffer readBytes(long at, int count) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(count).order(ByteOrder.LITTLE_ENDIAN);
        while (bytes.hasRemaining()) {
            if (channel.read(bytes, at + bytes.position()) < 0) {
                throw problem(at, "file ends within the header, " + count + " bytes wanted, " + bytes.position()
                        + " there");
            }
        }
        return bytes.flip();
    }

    private RecordingFileException problem(long at, String message) {
        return new RecordingFileException(file, "byte " + at + ": " + message);
    }
}
