package dev.vibra.quantity;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * Frequency band, both ends included.
 *
 * @param lowestHertz lower end in Hz, finite, zero or more
 * @param highestHertz upper end in Hz, finite, above the lower end
 */
public record Band(double lowestHertz, double highestHertz) implements Serializable {
    /**
     * Checks the ends.
     *
     * @param lowestHertz see the record
     * @param highestHertz see the record
     */
    public Band {
        Require.notNegative("lowestHertz", lowestHertz, "Hz");
        if (!(highestHertz > lowestHertz && highestHertz < Double.POSITIVE_INFINITY)) {
            throw Require.failure("highestHertz", "finite and above the lower end of the band, " + lowestHertz + " Hz",
                    highestHertz);
        }
    }

    /**
     * Makes a band.
     *
     * @param lowestHertz lower end in Hz, finite, zero or more
     * @param highestHertz upper end in Hz, finite, above the lower end
     * @return the band
     * @throws IllegalArgumentException if an end is out of range or the band is inverted
     */
    public static Band of(double lowestHertz, double highestHertz) {
        return new Band(lowestHertz, highestHertz);
    }

    /**
     * Returns the middle between the ends.
     *
     * @return arithmetic centre in Hz
     */
    public double centreHertz() {
        return 0.5 * (lowestHertz + highestHertz);
    }

    /**
     * Returns the distance between the ends.
     *
     * @return width in Hz, above zero
     */
    public double widthHertz() {
        return highestHertz - lowestHertz;
    }

    /**
     * Tells whether a frequency lies in the band, ends included.
     *
     * @param hertz frequency in Hz
     * @return true inside or on an end; false for NaN
     */
    public boolean contains(double hertz) {
        return hertz >= lowestHertz && hertz <= highestHertz;
    }

    /**
     * Requires that a recording of the given sample rate can hold this band.
     *
     * @param sampleRateHertz sample rate in Hz
     * @return this band
     * @throws IllegalArgumentException if the upper end lies above half the sample rate
     */
    public Band requireBelowNyquist(double sampleRateHertz) {
        if (!(highestHertz <= sampleRateHertz / 2)) {
            throw Require.failure("band", "at or below half the sample rate, " + sampleRateHertz / 2 + " Hz",
                    highestHertz);
        }
        return this;
    }

    /** Written out: the JDK holds the class loader of the record whose generated one ran last. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Band that && Double.compare(lowestHertz, that.lowestHertz) == 0
                && Double.compare(highestHertz, that.highestHertz) == 0;
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(lowestHertz, highestHertz);
    }

    /** Returns the ends, as in {@code 10–1000 Hz}. */
    @Override
    public String toString() {
        return Digits.compact(lowestHertz, 6) + "\u2013" + Digits.compact(highestHertz, 6) + " Hz";
    }
}
