package dev.vibra.docs.survey.meter;

import dev.vibra.internal.Require;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;

/** Raw samples out of a stream, of one channel or of several that take turns; what has come is handed out at once. */
final class RawSource implements SampleSource {
    private static final int BUFFER = 1 << 16;

    private final InputStream in;
    private final MeterOptions options;
    private final RawFormat format;
    private final int frame;
    private final double factor;
    private final ByteBuffer bytes;
    private int held;
    private long position;

    RawSource(InputStream in, MeterOptions options) {
        this.in = in;
        this.options = options;
        format = options.format().orElseThrow();
        frame = options.channels().orElse(1) * format.bytes();
        factor = options.scale() * options.unit().toSi();
        bytes = ByteBuffer.allocate(Math.max(BUFFER / frame, 1) * frame).order(format.order());
    }

    @Override
    public double sampleRateHertz() {
        return options.rate().orElseThrow();
    }

    @Override
    public String words() {
        return "standard input, " + format + SampleSource.scaled(format.isWhole(), options);
    }

    @Override
    public boolean hasFullScale() {
        return format.isWhole();
    }

    /** Samples before a bad one are handed out; the next call finds it as its first. */
    @Override
    public int read(double[] block) throws IOException {
        if (!fill()) {
            return 0;
        }
        int count = Math.min(held / frame, block.length);
        int place = (options.channel().orElse(1) - 1) * format.bytes();
        for (int i = 0; i < count; i++) {
            double value = format.sample(bytes, i * frame + place);
            block[i] = value * factor;
            if (!(Math.abs(block[i]) <= Require.LARGEST_SAMPLE)) {
                if (i == 0) {
                    throw new BadSampleException("sample " + position + " must be a number within ±1e70 m/s²: "
                            + value);
                }
                count = i;
            }
        }
        held -= count * frame;
        System.arraycopy(bytes.array(), count * frame, bytes.array(), 0, held);
        position += count;
        return count;
    }

    /** Waits for one sample at least; returns false at the end. */
    private boolean fill() throws IOException {
        while (held < frame) {
            int more = in.read(bytes.array(), held, bytes.capacity() - held);
            if (more < 0) {
                if (held > 0) {
                    throw new BadSampleException("sample " + position + " is cut off: " + held + " of " + frame
                            + " bytes");
                }
                return false;
            }
            held += more;
        }
        return true;
    }

    @Override
    public void close() {
        // Standard input stays open: it belongs to whoever runs the command.
    }
}
