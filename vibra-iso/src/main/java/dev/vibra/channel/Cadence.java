package dev.vibra.channel;

import dev.vibra.internal.Require;
import dev.vibra.internal.StateFormat;

/** Even intervals of a stream, counted from its first sample. Holds state: where the present one ends. */
final class Cadence {
    static final int STATE = 2;

    private final int samples;
    private long first;
    private long end;

    Cadence(String name, double seconds, double sampleRateHertz) {
        double length = Math.rint(seconds * sampleRateHertz);
        samples = (int) Require.within(name + " times the sample rate", length, 1, 1 << 30, "samples");
    }

    int samples() {
        return samples;
    }

    /** First sample of the present interval. */
    long begin() {
        return end - samples;
    }

    long end() {
        return end;
    }

    boolean holds(long sample) {
        return sample >= begin() && sample < end;
    }

    void startAt(long sample) {
        first = sample;
        end = first + samples;
    }

    /** Goes to the interval that holds a sample at or behind the end of this one. */
    void advanceTo(long sample) {
        end = first + ((sample - first) / samples + 1) * samples;
    }

    int put(double[] out, int at) {
        out[at] = first;
        out[at + 1] = end;
        return at + STATE;
    }

    int take(double[] in, int at) {
        first = StateFormat.count(in, at, StateFormat.LARGEST_COUNT);
        end = StateFormat.count(in, at + 1, StateFormat.LARGEST_COUNT);
        return at + STATE;
    }
}
