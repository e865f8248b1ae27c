package dev.vibra.quality;

import dev.vibra.evidence.Remark;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What was found about a recording.
 *
 * @param remarks findings, those that disqualify it and those that are only worth knowing
 */
public record RecordingQuality(List<Remark> remarks) implements Serializable {
    /**
     * Copies the list.
     *
     * @param remarks see the record
     */
    public RecordingQuality {
        remarks = Require.copy("remarks", remarks);
    }

    /**
     * Tells whether nothing was found that disqualifies the recording.
     *
     * @return true for a sound recording
     */
    public boolean sound() {
        return remarks.stream().noneMatch(Remark::disqualifying);
    }

    /** Returns {@code sound} or {@code doubtful}, and the remarks. */
    @Override
    public String toString() {
        String verdict = sound() ? "sound" : "doubtful";
        return remarks.isEmpty() ? verdict : verdict + "; "
                + remarks.stream().map(Remark::toString).collect(Collectors.joining("; "));
    }
}
