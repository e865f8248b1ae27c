package dev.vibra.point;

import dev.vibra.bearing.BearingDiagnosis;
import dev.vibra.bearing.ElementVerdict;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * What a recording says about a bearing.
 *
 * @param bearing id of the bearing
 * @param diagnosis finding on each element, with the evidence
 */
public record BearingSurvey(String bearing, BearingDiagnosis diagnosis) implements Serializable {
    /**
     * Checks that both are there.
     *
     * @param bearing see the record
     * @param diagnosis see the record
     */
    public BearingSurvey {
        bearing = Require.notBlank("bearing", bearing);
        Objects.requireNonNull(diagnosis, "diagnosis");
    }

    /** {@return true if an element shows a defect} */
    public boolean showsDefect() {
        return diagnosis.findings().stream().anyMatch(finding -> finding.verdict() == ElementVerdict.PRESENT);
    }

    /** Returns the bearing and its elements in one line. */
    @Override
    public String toString() {
        return bearing + ": " + diagnosis;
    }
}
