package dev.vibra.point;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quality.RecordingQuality;
import java.io.Serializable;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;

/**
 * Size of a recording, whether it is sound, and what it is not good for.
 *
 * @param sampleRateHertz sample rate in Hz, &gt; 0
 * @param samples number of samples, at least 1
 * @param quality what the check of the recording found
 * @param refused what was not concluded from it for that
 */
public record RecordingSummary(double sampleRateHertz, int samples, RecordingQuality quality, Set<Aspect> refused)
        implements Serializable {
    static final String STEADY_STRETCH = "steady-stretch";

    /**
     * Checks size and parts.
     *
     * @param sampleRateHertz see the record
     * @param samples see the record
     * @param quality see the record
     * @param refused see the record
     */
    public RecordingSummary {
        Objects.requireNonNull(refused, "refused");
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        Require.atLeast("samples", samples, 1);
        Require.finite("duration", samples / sampleRateHertz);
        Objects.requireNonNull(quality, "quality");
        Set<Aspect> copy = EnumSet.noneOf(Aspect.class);
        refused.forEach(aspect -> copy.add(Objects.requireNonNull(aspect, "an aspect of refused")));
        refused = Collections.unmodifiableSet(copy);
    }

    /** {@return true if the level was steady in a part of the recording only, and numbers are taken from that} */
    public boolean partlySteady() {
        return quality.remarks().stream().anyMatch(remark -> remark.code().equals(STEADY_STRETCH));
    }

    /** Returns size and quality, as in {@code 4.000 s at 12800 Hz, sound}. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%.3f s at %s Hz, %s", samples / sampleRateHertz,
                Digits.compact(sampleRateHertz, 6), quality);
    }
}
