package dev.vibra.survey;

import dev.vibra.internal.Digits;
import dev.vibra.quality.RecordingQuality;
import java.io.Serializable;
import java.util.Locale;
import java.util.Objects;

/**
 * Size of a recording and whether it is sound.
 *
 * @param sampleRateHertz sample rate in Hz
 * @param samples number of samples
 * @param quality what the check of the recording found
 */
public record RecordingSummary(double sampleRateHertz, int samples, RecordingQuality quality) implements Serializable {
    /**
     * Checks that the quality is there.
     *
     * @param sampleRateHertz see the record
     * @param samples see the record
     * @param quality see the record
     */
    public RecordingSummary {
        Objects.requireNonNull(quality, "quality");
    }

    /** Returns size and quality, as in {@code 4.000 s at 12800 Hz, sound}. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%.3f s at %s Hz, %s", samples / sampleRateHertz,
                Digits.compact(sampleRateHertz, 6), quality);
    }
}
