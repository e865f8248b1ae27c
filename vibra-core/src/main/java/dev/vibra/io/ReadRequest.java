package dev.vibra.io;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Unit;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What is wanted of a file.
 *
 * @param scale factor that turns a stored value into its unit, finite, not zero
 * @param channel number of the channel from 1; empty for the only one
 * @param sampleRateHertz sample rate where the file doesn't tell it
 * @param first number of the first sample, from 0
 * @param length number of samples, at least 1; empty for all that follow
 * @param inPieces whether the samples are handed on in pieces, so that they needn't all be held
 */
record ReadRequest(double scale, OptionalInt channel, OptionalDouble sampleRateHertz, long first, OptionalInt length,
        boolean inPieces) {
    static final ReadRequest ALL = new ReadRequest(1, OptionalInt.empty(), OptionalDouble.empty(), 0,
            OptionalInt.empty(), false);

    ReadRequest {
        if (!(Math.abs(scale) > 0 && Math.abs(scale) < Double.POSITIVE_INFINITY)) {
            throw Require.failure("scale", "finite and not zero", scale);
        }
        Require.atLeast("channel", channel.orElse(1), 1);
        Require.positive("sampleRateHertz", sampleRateHertz.orElse(1), "Hz");
        if (first < 0) {
            throw new IllegalArgumentException("first must be at least 0: " + first);
        }
        Require.atLeast("length", length.orElse(1), 1);
    }

    ReadRequest withScale(double newScale) {
        return new ReadRequest(newScale, channel, sampleRateHertz, first, length, inPieces);
    }

    ReadRequest withChannel(int newChannel) {
        return new ReadRequest(scale, OptionalInt.of(newChannel), sampleRateHertz, first, length, inPieces);
    }

    ReadRequest withSampleRate(double newRate) {
        return new ReadRequest(scale, channel, OptionalDouble.of(newRate), first, length, inPieces);
    }

    ReadRequest withRange(long newFirst, int newLength) {
        return new ReadRequest(scale, channel, sampleRateHertz, newFirst, OptionalInt.of(newLength), true);
    }

    ReadRequest handedOnInPieces() {
        return new ReadRequest(scale, channel, sampleRateHertz, first, length, true);
    }

    /** The channel wanted; a file with several is refused if none is, as it would be a guess. */
    RecordedChannel channelOf(ByteReader in, int channels, Unit unit) {
        if (channel.isEmpty() && channels != 1) {
            throw in.problem("a recording must have one channel unless one is chosen: " + channels);
        }
        return new RecordedChannel(channel.orElse(1), unit, scale);
    }
}
