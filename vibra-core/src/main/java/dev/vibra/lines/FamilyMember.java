package dev.vibra.lines;

import dev.vibra.spectrum.SpectralPeak;
import java.io.Serializable;

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
    /** Returns number and line. */
    @Override
    public String toString() {
        return number + ": " + peak;
    }
}
