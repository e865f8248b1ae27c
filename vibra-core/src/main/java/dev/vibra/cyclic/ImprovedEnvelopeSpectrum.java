package dev.vibra.cyclic;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import java.io.Serializable;
import java.util.Objects;

/**
 * Mean of the squared coherence over a range of carriers, against cyclic frequency. Unlike the spectrum of an envelope
 * it gives each carrier the same say, so that loud lines and a coloured noise in the range don't drown what a weaker
 * carrier shows.
 *
 * @see "D. Abboud, M. Elbadaoui, W. A. Smith, R. B. Randall, Advanced bearing diagnostics: a comparative study of two
 *     powerful approaches, Mechanical Systems and Signal Processing 114 (2019) 604-627 (from memory, unverified)"
 */
public final class ImprovedEnvelopeSpectrum implements Serializable {
    private static final long serialVersionUID = 1;

    private final Band band;
    private final int carriers;
    private final double resolutionHertz;
    private final double averages;
    private final double[] coherences;

    ImprovedEnvelopeSpectrum(Band band, int carriers, double resolutionHertz, double averages, double[] owned) {
        this.band = Objects.requireNonNull(band, "band");
        this.carriers = Require.atLeast("carriers", carriers, 1);
        this.resolutionHertz = Require.positive("resolutionHertz", resolutionHertz, "Hz");
        this.averages = Require.positive("averages", averages, "");
        coherences = Require.allNotNegative("coherences", owned);
        Require.atLeast("number of lines", owned.length, 1);
    }

    private Object readResolve() {
        return new ImprovedEnvelopeSpectrum(band, carriers, resolutionHertz, averages, coherences.clone());
    }

    /**
     * Returns the range of carriers.
     *
     * @return from the lower end of the first to the upper end of the last
     */
    public Band band() {
        return band;
    }

    /**
     * Returns the number of carriers in the range.
     *
     * @return number of carriers J, at least 1
     */
    public int carriers() {
        return carriers;
    }

    /**
     * Returns the number of independent products that the coherence of one carrier is averaged over. Stationary noise
     * reads its inverse 1/n in the mean over lines, and scatters about that by {@code 1/(n·√J)}.
     *
     * @return equivalent number of averages n
     */
    public double averages() {
        return averages;
    }

    /**
     * Returns the number of lines, the one at 0 Hz included.
     *
     * @return number of lines
     */
    public int lines() {
        return coherences.length;
    }

    /**
     * Returns the distance of the lines.
     *
     * @return resolution in Hz
     */
    public double resolutionHertz() {
        return resolutionHertz;
    }

    /**
     * Returns the cyclic frequency of a line.
     *
     * @param line number of the line from 0
     * @return frequency in Hz
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public double frequencyHertz(int line) {
        return Objects.checkIndex(line, coherences.length) * resolutionHertz;
    }

    /**
     * Returns the mean squared coherence at a line.
     *
     * @param line number of the line from 0
     * @return mean squared coherence, 0 to 1
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public double coherence(int line) {
        return coherences[Objects.checkIndex(line, coherences.length)];
    }

    /**
     * Returns the mean squared coherences of all lines.
     *
     * @return a new array
     */
    public double[] coherences() {
        return coherences.clone();
    }

    /**
     * Averages each line with its neighbours: for a rate that doesn't keep to one line because the impacts scatter or
     * the speed drifts. The lines stay; the one at 0 Hz is left alone.
     *
     * @param widthHertz width of the average in Hz, finite, above zero; the same spectrum if that is below two lines
     * @return the spectrum
     * @throws IllegalArgumentException if the width is out of range
     */
    public ImprovedEnvelopeSpectrum smoothed(double widthHertz) {
        int width = (int) Math.min(lines(), Math.round(Require.positive("widthHertz", widthHertz, "Hz")
                / resolutionHertz));
        double[] means = coherences.clone();
        for (int line = 1; line < means.length && width > 1; line++) {
            int first = Math.max(1, line - width / 2);
            int last = Math.min(means.length - 1, line + (width - 1) / 2);
            double sum = 0;
            for (int i = first; i <= last; i++) {
                sum += coherences[i];
            }
            means[line] = sum / (last - first + 1);
        }
        return new ImprovedEnvelopeSpectrum(band, carriers, resolutionHertz, averages, means);
    }

    /** Returns range and extent, as in {@code coherence over 3000–5000 Hz, 0–1000 Hz by 0.250 Hz}. */
    @Override
    public String toString() {
        return "coherence over " + band + ", 0\u2013"
                + Digits.compact((coherences.length - 1) * resolutionHertz, 4) + " Hz by "
                + Digits.significant(resolutionHertz, 3) + " Hz";
    }
}
