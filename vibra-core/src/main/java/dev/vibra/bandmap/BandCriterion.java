package dev.vibra.bandmap;

import dev.vibra.envelope.SquaredEnvelope;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * By what a band is called impulsive; all are figures of its squared envelope y, whatever its level.
 *
 * <p>Values for normal noise that is white within a wide band: 0, then 1 − γ = 0.423, ln 2 − 1/2 + 1 − γ = 0.616 and
 * 0.519, γ being Euler's constant; for impacts that fill the share d of the time with even power: 1/d − 2, ln(1/d), and
 * more the longer and the more regular the train.
 *
 * <p>The ends of the envelope, where the transform sees the recording jump from its end to its start, are not counted:
 * four times the inverse width of the band, at most an eighth of the recording, at each end.
 *
 * @see "J. Antoni, The infogram: entropic evidence of the signature of repetitive transients, Mechanical Systems and
 *     Signal Processing 74 (2016) 73-94"
 */
public enum BandCriterion {
    /**
     * {@code mean(y²)/mean(y)² − 2}: 0 for normal noise, -1 for a steady sine. One large knock outweighs a long train
     * of small ones.
     */
    SPECTRAL_KURTOSIS,
    /** {@code mean(y/ȳ·ln(y/ȳ))}, ȳ the mean: 0 for a steady sine. Favours knocks too, less than kurtosis does. */
    ENVELOPE_NEGENTROPY,
    /**
     * {@code mean(z/z̄·ln(z/z̄))} of the squared magnitudes z of the lines of y, from the first above 0 Hz up to the
     * width of the band: favours what repeats evenly, be it impacts or the beat of two tones, and doesn't see one knock
     * alone.
     */
    ENVELOPE_SPECTRUM_NEGENTROPY,
    /** Mean of the two negentropies: between the single knock and the steady beat. */
    MEAN_NEGENTROPY;

    /**
     * Computes the criterion for the squared envelope of a band.
     *
     * @param envelope squared envelope of a band, at least 4 values
     * @return the value; empty if the envelope is zero
     */
    public OptionalDouble of(SquaredEnvelope envelope) {
        Pulsation pulsation = new Pulsation();
        double[] squares = Objects.requireNonNull(envelope, "envelope").squares();
        return pulsation.take(squares, squares.length, envelope.sampleRateHertz(), envelope.band().widthHertz(), 0)
                ? OptionalDouble.of(pulsation.measured(this)) : OptionalDouble.empty();
    }

    /** Returns the name in words, as in {@code spectral kurtosis}. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
