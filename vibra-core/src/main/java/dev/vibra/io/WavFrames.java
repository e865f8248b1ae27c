package dev.vibra.io;

import dev.vibra.internal.Require;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.OptionalLong;

/** The samples of a WAV file, in their order. */
final class WavFrames implements Frames {
    private final ByteReader in;
    private final WavHeader header;
    private final int frameSize;
    private final long assured;
    private long next;

    WavFrames(ByteReader in) throws IOException {
        this.in = in;
        header = WavHeader.read(in);
        frameSize = header.frameSize();
        assured = in.remaining().isPresent() ? header.frames() : 0;
    }

    @Override
    public int channels() {
        return header.channels();
    }

    @Override
    public List<String> names() {
        return List.of();
    }

    @Override
    public double sampleRateHertz() {
        return header.sampleRateHertz();
    }

    @Override
    public double startSeconds() {
        return 0;
    }

    @Override
    public OptionalLong length() {
        return OptionalLong.of(header.frames());
    }

    @Override
    public long assuredLength() {
        return assured;
    }

    @Override
    public int read(RecordedChannel[] wanted, double[][] out, int offset, int count) throws IOException {
        int all = (int) Math.min(count, header.frames() - next);
        for (int done = 0; done < all; ) {
            int together = Math.min(all - done, ByteReader.BLOCK / frameSize);
            int held = in.ready(together * frameSize);
            if (held < together * frameSize) {
                throw header.cutAfter(next * frameSize + held);
            }
            for (int c = 0; c < wanted.length; c++) {
                decode(wanted[c], out[c], offset + done, together);
            }
            in.skip((long) together * frameSize);
            next += together;
            done += together;
        }
        return all;
    }

    private void decode(RecordedChannel channel, double[] out, int offset, int count) {
        SampleFormat format = header.format();
        ByteBuffer bytes = in.bytes();
        int first = bytes.position() + (channel.number() - 1) * format.bytesPerSample();
        format.decode(bytes, first, frameSize, out, offset, count);
        double scale = channel.scale();
        double toSi = channel.unit().toSi();
        boolean areWithin = format.isFractionOfFullScale() && Math.abs(scale * toSi) <= Require.LARGEST_SAMPLE;
        for (int i = offset; !areWithin && i < offset + count; i++) {
            if (!(Math.abs(out[i] * scale * toSi) <= Require.LARGEST_SAMPLE)) {
                throw in.problem("sample " + (next + i - offset) + " of channel " + channel.number() + " "
                        + channel.complaint(out[i]));
            }
        }
        for (int i = offset; i < offset + count; i++) {
            out[i] = out[i] * scale * toSi;
        }
    }

    @Override
    public long skip(long count) throws IOException {
        long frames = Math.min(count, header.frames() - next);
        long skipped = in.skip(frames * frameSize);
        if (skipped < frames * frameSize) {
            throw header.cutAfter(next * frameSize + skipped);
        }
        next += frames;
        return frames;
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
