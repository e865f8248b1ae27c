package dev.vibra.io;

import dev.vibra.signal.Waveform;
import dev.vibra.signal.WaveformBuilder;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;

/** Makes waveforms of frames; memory is taken for frames that are there, not for those that a header promises. */
final class FrameCollector {
    static final int MOST_SAMPLES = Integer.MAX_VALUE - 8;
    private static final int MEGABYTE = 1_000_000;
    private static final int LONGEST_PIECE = 1 << 12;
    private static final int MOST_AT_ONCE = 1 << 16;

    private FrameCollector() {}

    /** Reads the channels wanted in one pass. */
    static List<Waveform> collect(ByteReader in, Frames frames, ReadRequest request, RecordedChannel... wanted)
            throws IOException {
        toFirst(in, frames, request);
        long first = request.first();
        OptionalLong told = frames.length();
        long most = request.length().isPresent() ? request.length().getAsInt()
                : told.isPresent() ? told.getAsLong() - first : MOST_SAMPLES;
        if (most > MOST_SAMPLES) {
            throw tooMany(in, most);
        }
        WaveformBuilder[] channels = new WaveformBuilder[wanted.length];
        for (int c = 0; c < wanted.length; c++) {
            channels[c] = WaveformBuilder.of(wanted[c].unit().quantity(), frames.sampleRateHertz())
                    .startingAt(startSeconds(frames, first));
        }
        reserve(in, channels, (int) Math.min(most, frames.assuredLength()));
        int length = fill(channels, frames, (int) most, wanted);
        if (length < most && request.length().isPresent()) {
            throw outside(in, request, first + length);
        }
        if (length == MOST_SAMPLES && frames.skip(1) == 1) {
            throw tooMany(in, length + 1L);
        }
        if (!(length / frames.sampleRateHertz() < Double.POSITIVE_INFINITY)) {
            throw in.problem("recording must end at a finite time: " + length + " samples at "
                    + frames.sampleRateHertz() + " Hz");
        }
        List<Waveform> waveforms = new ArrayList<>();
        for (WaveformBuilder channel : channels) {
            waveforms.add(channel.waveform());
        }
        return waveforms;
    }

    /** Says what it takes where memory doesn't suffice, which the plain error doesn't. */
    private static void reserve(ByteReader in, WaveformBuilder[] channels, int length) {
        try {
            for (WaveformBuilder channel : channels) {
                channel.reserve(length);
            }
        } catch (OutOfMemoryError e) {
            String message = String.format(Locale.ROOT, "%,d samples of %d channel(s) take %,d MB as a whole, more memory"
                    + " than is free: read a range, block by block, or with a larger -Xmx", length, channels.length,
                    (long) length * channels.length * Double.BYTES / MEGABYTE);
            throw (Error) new OutOfMemoryError(in.problem(message).getMessage()).initCause(e);
        }
    }

    /** Reads by pieces that stay close to the processor, however many channels there are, and tells how many frames. */
    private static int fill(WaveformBuilder[] channels, Frames frames, int most, RecordedChannel... wanted)
            throws IOException {
        int together = Math.max(1, Math.min(LONGEST_PIECE, MOST_AT_ONCE / wanted.length));
        double[][] piece = new double[wanted.length][together];
        int length = 0;
        int asked;
        int read;
        do {
            asked = Math.min(together, most - length);
            read = frames.read(wanted, piece, 0, asked);
            for (int c = 0; c < wanted.length; c++) {
                channels[c].add(piece[c], 0, read);
            }
            length += read;
        } while (read == asked && length < most);
        return length;
    }

    /** Goes to the first frame of the range wanted, which must lie within the recording as far as that is known. */
    static void toFirst(ByteReader in, Frames frames, ReadRequest request) throws IOException {
        long end = request.first() + request.length().orElse(1);
        OptionalLong told = frames.length();
        if (told.isPresent() && (end < 0 || end > told.getAsLong())) {
            throw outside(in, request, told.getAsLong());
        }
        if (!(Math.abs(startSeconds(frames, request.first())) < Double.POSITIVE_INFINITY)) {
            throw in.problem("range must begin at a finite time: from sample " + request.first() + " at "
                    + frames.sampleRateHertz() + " Hz");
        }
        long skipped = frames.skip(request.first());
        if (skipped < request.first()) {
            throw outside(in, request, skipped);
        }
    }

    private static double startSeconds(Frames frames, long first) {
        return first == 0 ? frames.startSeconds() : frames.startSeconds() + first / frames.sampleRateHertz();
    }

    static RecordingFileException tooMany(ByteReader in, long count) {
        return in.problem("a recording may have up to " + MOST_SAMPLES + " samples: " + count);
    }

    static RecordingFileException outside(ByteReader in, ReadRequest request, long length) {
        return in.problem("range must lie within the recording of " + length + " samples: " + request.length().orElse(1)
                + " from sample " + request.first());
    }
}
