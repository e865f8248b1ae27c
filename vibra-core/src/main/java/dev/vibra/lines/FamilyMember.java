package dev.vibra.lines;

import dev.vibra.internal.Require;
import dev.vibra.spectrum.SpectralPeak;
import java.io.Serializable;
import java.util.Objects;

/**
 * A line that belongs to a family.
 *
 * @param number multiple of the fundamental, or number of the sideband, negative below the carrier
 * @param peak the line that was found
 * @param expectedHertz frequency at which it was expected in Hz
 * @param probability probability that noise alone reads as much within the search width
 */
public record FamilyMember(int number, SpectralPeak peak, double expectedHertz, double probability)
        implements Serializable {
    /**
     * Checks the values.
     *
     * @param number see the record
     * @param peak see the record
     * @param expectedHertz see the record
     * @param probability see the record
     * @throws IllegalArgumentException if a value is out of range
     */
    public FamilyMember {
        Objects.requireNonNull(peak, "peak");
        Require.positive("expectedHertz", expectedHertz, "Hz");
        Require.within("probability", probability, 0, 1, "");
    }

    /** Returns number and line. */
    @Override
    public String toString() {
        return number + ": " + peak;
    }
}
