package dev.vibra.io;

import dev.vibra.signal.Waveform;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;

/** Makes waveforms of frames; memory is taken for frames that are there, not for those that a header promises. */
final class FrameCollector {
    static final int MOST_SAMPLES = Integer.MAX_VALUE - 8;
    private static final int FIRST_CAPACITY = 1 << 12;

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
        double[][] samples = samples(in, frames, (int) most, wanted);
        if (samples[0].length < most && request.length().isPresent()) {
            throw outside(in, request, first + samples[0].length);
        }
        double rate = frames.sampleRateHertz();
        if (!(samples[0].length / rate < Double.POSITIVE_INFINITY)) {
            throw in.problem("recording must end at a finite time: " + samples[0].length + " samples at " + rate
                    + " Hz");
        }
        List<Waveform> waveforms = new ArrayList<>();
        double start = startSeconds(frames, first);
        for (int c = 0; c < wanted.length; c++) {
            waveforms.add(Waveform.ofSi(wanted[c].unit().quantity(), rate, samples[c]).startingAt(start));
            samples[c] = null;
        }
        return waveforms;
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

    private static double[][] samples(ByteReader in, Frames frames, int most, RecordedChannel... wanted)
            throws IOException {
        int capacity = (int) Math.min(most, Math.max(FIRST_CAPACITY, frames.assuredLength()));
        double[][] samples = new double[wanted.length][capacity];
        int length = 0;
        while (true) {
            int read = frames.read(wanted, samples, length, capacity - length);
            length += read;
            if (length < capacity || length == most) {
                break;
            }
            capacity = (int) Math.min(most, 2L * capacity);
            for (int c = 0; c < wanted.length; c++) {
                samples[c] = Arrays.copyOf(samples[c], capacity);
            }
        }
        if (length == MOST_SAMPLES && frames.skip(1) == 1) {
            throw tooMany(in, length + 1L);
        }
        for (int c = 0; c < wanted.length; c++) {
            samples[c] = length == capacity ? samples[c] : Arrays.copyOf(samples[c], length);
        }
        return samples;
    }

    static RecordingFileException tooMany(ByteReader in, long count) {
        return in.problem("a recording may have up to " + MOST_SAMPLES + " samples: " + count);
    }

    static RecordingFileException outside(ByteReader in, ReadRequest request, long length) {
        return in.problem("range must lie within the recording of " + length + " samples: " + request.length().orElse(1)
                + " from sample " + request.first());
    }
}
