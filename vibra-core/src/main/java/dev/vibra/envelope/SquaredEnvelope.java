package dev.vibra.envelope;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.Locale;
import java.util.Objects;

/**
 * Square of the amplitude envelope of a band of a recording, immutable. It is exactly as wide as the band, so that
 * nothing needs to be cut off it; its values are in the unit of the recording squared and hence no {@link Waveform}.
 *
 * @see "R. B. Randall, J. Antoni, Rolling element bearing diagnostics - a tutorial, Mech. Syst. Signal Process. 25
 *     (2011) 485-520, section on the squared envelope (from memory, unverified)"
 */
public final class SquaredEnvelope implements Serializable {
    private static final long serialVersionUID = 1;

    private final Quantity quantity;
    private final Band band;
    private final double sampleRateHertz;
    private final double startSeconds;
    private final double[] squares;

    SquaredEnvelope(Waveform wave, Band band, double sampleRateHertz, double[] ownedSquares) {
        this(wave.quantity(), band, sampleRateHertz, wave.startSeconds(), ownedSquares);
    }

    private SquaredEnvelope(Quantity quantity, Band band, double sampleRateHertz, double startSeconds,
            double[] ownedSquares) {
        this.quantity = Objects.requireNonNull(quantity, "quantity");
        this.band = Objects.requireNonNull(band, "band");
        this.sampleRateHertz = Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        this.startSeconds = Require.finite("startSeconds", startSeconds);
        squares = Require.allNotNegative("squares", ownedSquares);
    }

    private Object readResolve() {
        return new SquaredEnvelope(quantity, band, sampleRateHertz, startSeconds, squares.clone());
    }

    /**
     * Returns an envelope of the same band at the same rate with other values, as after resampling by the angle of a
     * shaft.
     *
     * @param newStartSeconds time of the first value in s, finite
     * @param newSquares values in the SI unit of the quantity squared, at least 4, each finite, zero or more; copied
     * @return the envelope
     * @throws IllegalArgumentException if an argument is out of range
     */
    public SquaredEnvelope with(double newStartSeconds, double... newSquares) {
        Require.finite("newStartSeconds", newStartSeconds);
        double[] copy = Objects.requireNonNull(newSquares, "newSquares").clone();
        Require.atLeast("number of newSquares", copy.length, 4);
        Require.allNotNegative("newSquares", copy);
        return new SquaredEnvelope(quantity, band, sampleRateHertz, newStartSeconds, copy);
    }

    /**
     * Returns the quantity whose square the values are.
     *
     * @return quantity of the recording
     */
    public Quantity quantity() {
        return quantity;
    }

    /**
     * Returns the band whose envelope this is.
     *
     * @return band of the recording
     */
    public Band band() {
        return band;
    }

    /**
     * Returns the number of values.
     *
     * @return count, at most the number of samples of the recording
     */
    public int length() {
        return squares.length;
    }

    /**
     * Returns the number of values a second.
     *
     * @return sample rate in Hz, two to four times the width of the band, at most that of the recording
     */
    public double sampleRateHertz() {
        return sampleRateHertz;
    }

    /**
     * Returns the time of a value.
     *
     * @param index number of the value from 0
     * @return time in s, on the time scale of the recording
     * @throws IndexOutOfBoundsException if there is no such value
     */
    public double timeSeconds(int index) {
        return startSeconds + Objects.checkIndex(index, squares.length) / sampleRateHertz;
    }

    /**
     * Returns one value.
     *
     * @param index number of the value from 0
     * @return square of the envelope in the SI unit of the quantity squared, zero or more
     * @throws IndexOutOfBoundsException if there is no such value
     */
    public double at(int index) {
        return squares[Objects.checkIndex(index, squares.length)];
    }

    /**
     * Returns all values.
     *
     * @return a new array in the SI unit of the quantity squared
     */
    public double[] squares() {
        return squares.clone();
    }

    /** The values themselves, to be read only. */
    double[] owned() {
        return squares;
    }

    /** Returns the facts, as in {@code squared envelope of acceleration, 4,096 values at 4096 Hz, 3000–5000 Hz}. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "squared envelope of %s, %,d values at %s Hz, %s", quantity, length(),
                Digits.compact(sampleRateHertz, 6), band);
    }
}
