package dev.vibra.io;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import java.nio.file.Path;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What is wanted of a file.
 *
 * @param unit unit of the values after scaling
 * @param scale factor that turns a stored value into the unit, finite, not zero
 * @param channel number of the channel from 1; empty for the only one
 * @param sampleRateHertz sample rate where the file doesn't tell it
 */
record ReadRequest(Unit unit, double scale, OptionalInt channel, OptionalDouble sampleRateHertz) {
    ReadRequest {
        Objects.requireNonNull(unit, "unit");
        if (!(Math.abs(scale) > 0 && Math.abs(scale) < Double.POSITIVE_INFINITY)) {
            throw Require.failure("scale", "finite and not zero", scale);
        }
        channel.ifPresent(number -> Require.atLeast("channel", number, 1));
        sampleRateHertz.ifPresent(rate -> Require.positive("sampleRateHertz", rate, "Hz"));
    }

    /** The number from 0 of the channel wanted; a file with several is refused if none is, as it would be a guess. */
    int channelOf(Path file, int channels) {
        if (channel.isEmpty() && channels != 1) {
            throw new RecordingFileException(file, "a recording must have one channel unless one is chosen: "
                    + channels);
        }
        int number = channel.orElse(1);
        if (number > channels) {
            throw new RecordingFileException(file, "channel must be from 1 to " + channels + ": " + number);
        }
        return number - 1;
    }

    /** Makes the recording of stored values, which are scaled where they stand. */
    Waveform waveform(double[] owned, double rateHertz, double startSeconds) {
        for (int i = 0; i < owned.length; i++) {
            owned[i] *= scale;
        }
        return Waveform.of(unit, rateHertz, owned).startingAt(startSeconds);
    }
}
