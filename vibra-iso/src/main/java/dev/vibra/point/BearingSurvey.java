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
 * @param preparation what was done to the recording before, as in {@code at the mean speed of a shaft that varies};
 *     empty if nothing was
 */
public record BearingSurvey(String bearing, BearingDiagnosis diagnosis, String preparation) implements Serializable {
    /**
     * Checks that all are there.
     *
     * @param bearing see the record
     * @param diagnosis see the record
     * @param preparation see the record
     */
    public BearingSurvey {
        bearing = Require.notBlank("bearing", bearing);
        Objects.requireNonNull(diagnosis, "diagnosis");
        Objects.requireNonNull(preparation, "preparation");
    }

    /** {@return true if an element shows a defect, or a pulsation is a rolling element's or the cage's} */
    public boolean showsDefect() {
        return diagnosis.rollingElementOrCage().isPresent()
                || diagnosis.findings().stream().anyMatch(finding -> finding.verdict() == ElementVerdict.PRESENT);
    }

    /** {@return the same without the envelope spectrum, which is much larger than the findings} */
    public BearingSurvey withoutSpectrum() {
        return new BearingSurvey(bearing, diagnosis.withoutSpectrum(), preparation);
    }

    /** Returns the bearing and its elements in one line. */
    @Override
    public String toString() {
        return bearing + ": " + diagnosis;
    }
}
