package dev.vibra.quality;

import java.io.Serializable;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What was found about a recording.
 *
 * @param remarks findings that make the recording doubtful; none if it is sound
 */
public record RecordingQuality(List<Remark> remarks) implements Serializable {
    /**
     * Copies the list.
     *
     * @param remarks see the record
     */
    public RecordingQuality {
        remarks = List.copyOf(remarks);
    }

    /**
     * Tells whether nothing was found.
     *
     * @return true for a sound recording
     */
    public boolean sound() {
        return remarks.isEmpty();
    }

    /** Returns {@code sound} or the remarks. */
    @Override
    public String toString() {
        return sound() ? "sound" : remarks.stream().map(Remark::toString).collect(Collectors.joining("; "));
    }
}
