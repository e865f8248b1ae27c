package dev.vibra.cyclic;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/**
 * Squared spectral coherence of a recording over carrier and cyclic frequency: how far a rate modulates the vibration
 * at a carrier, 0 to 1, whatever its level there.
 *
 * <pre>{@code
 * var coherence = SpectralCoherence.of(wave, 200, 1000);     // carriers 200 Hz wide, rates up to 1000 Hz
 * var found = coherence.bestBand(87.3, 1).orElseThrow();     // about 87.3 Hz: 3400–4800 Hz
 * coherence.improvedEnvelopeSpectrum(found.band());
 * }</pre>
 *
 * <p>White noise whose amplitude swings as {@code 1 + m·cos 2πat} reads {@code (m/(1 + m²/2))²} at the cyclic frequency
 * a and {@code (m²/4/(1 + m²/2))²} at 2a, at every carrier. Stationary noise reads {@code 1/n} in the mean over n
 * averages. Two steady tones read as much as any modulation: what a coherence of tones says is only their distance. A
 * rate that doesn't keep to one line loses: halfway between two lines it reads 0.4 of its value in both.
 *
 * <p>Takes eight bytes a value: 4.5 MB for 120 carriers and rates up to 1000 Hz of a recording of 4.7 s.
 *
 * @see "J. Antoni, G. Xin, N. Hamzaoui, Fast computation of the spectral correlation, Mechanical Systems and Signal
 *     Processing 92 (2017) 248-277, on what it shows; the estimate here is that of the plan"
 * @see SpectralCoherencePlan
 */
public final class SpectralCoherence implements Serializable {
    private static final long serialVersionUID = 1;

    private final double carrierHertz;
    private final double resolutionHertz;
    private final double averages;
    private final int carriers;
    private final int lines;
    private final double[] coherences;

    private SpectralCoherence(SpectralCoherencePlan plan, double[] owned) {
        carrierHertz = plan.carrier(0).widthHertz();
        resolutionHertz = plan.resolutionHertz();
        averages = plan.averages();
        carriers = plan.carriers();
        lines = plan.lines();
        coherences = owned;
    }

    /** A copy, checked: what comes from a stream. */
    private SpectralCoherence(SpectralCoherence read) {
        carrierHertz = Require.positive("carrierHertz", read.carrierHertz, "Hz");
        resolutionHertz = Require.positive("resolutionHertz", read.resolutionHertz, "Hz");
        averages = Require.positive("averages", read.averages, "");
        carriers = Require.atLeast("carriers", read.carriers, 1);
        lines = Require.atLeast("lines", read.lines, 2);
        Require.positive("upper end of the last carrier", carriers * carrierHertz, "Hz");
        coherences = Require.allNotNegative("coherences", read.coherences.clone());
        Require.within("carriers * lines", (double) carriers * lines, coherences.length, coherences.length, "");
    }

    private Object readResolve() {
        return new SpectralCoherence(this);
    }

    /**
     * Computes the coherence of a recording.
     *
     * @param wave recording, at least 64 samples
     * @param carrierHertz width of a carrier band in Hz, at least eight lines of the whole recording
     * @param highestCyclicHertz highest cyclic frequency in Hz, from the inverse duration to a quarter of the sample
     *     rate
     * @return the coherence
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static SpectralCoherence of(Waveform wave, double carrierHertz, double highestCyclicHertz) {
        Objects.requireNonNull(wave, "wave");
        SpectralCoherencePlan plan =
                SpectralCoherencePlan.of(wave.length(), wave.sampleRateHertz(), carrierHertz, highestCyclicHertz);
        double[] out = new double[plan.carriers() * plan.lines()];
        return new SpectralCoherence(plan, plan.process(wave.samples(), 0, out));
    }

    /**
     * Returns the number of carrier bands.
     *
     * @return number of bands, at least 1
     */
    public int carriers() {
        return carriers;
    }

    /**
     * Returns a carrier band; it holds the lower of the two lines that are compared.
     *
     * @param carrier number of the carrier from 0
     * @return the band
     * @throws IndexOutOfBoundsException if there is no such carrier
     */
    public Band carrier(int carrier) {
        return carriers(Objects.checkIndex(carrier, carriers), carrier);
    }

    private Band carriers(int first, int last) {
        return Band.of(first * carrierHertz, (last + 1) * carrierHertz);
    }

    /**
     * Returns the number of cyclic frequencies, the one at 0 Hz included.
     *
     * @return number of lines, at least 2
     */
    public int lines() {
        return lines;
    }

    /**
     * Returns the distance of the cyclic frequencies.
     *
     * @return inverse duration of the recording in Hz
     */
    public double resolutionHertz() {
        return resolutionHertz;
    }

    /**
     * Returns the number of independent products that a value is averaged over; stationary noise reads its inverse in
     * the mean, and more than x at one line with the chance {@code (1 − x)^(n − 1)}.
     *
     * @return equivalent number of averages n
     */
    public double averages() {
        return averages;
    }

    /**
     * Returns one value.
     *
     * @param carrier number of the carrier from 0
     * @param line number of the cyclic frequency from 0
     * @return squared coherence, 0 to 1; 1 at 0 Hz, 0 for a silent carrier
     * @throws IndexOutOfBoundsException if there is no such carrier or line
     */
    public double at(int carrier, int line) {
        return coherences[Objects.checkIndex(carrier, carriers) * lines + Objects.checkIndex(line, lines)];
    }

    /**
     * Computes the mean over the carriers of a range: one spectrum over cyclic frequency in which each carrier has the
     * same say, whatever its level.
     *
     * @param range range of carriers; those whose centre lies in it count
     * @return the spectrum
     * @throws IllegalArgumentException if no carrier has its centre in the range
     */
    public ImprovedEnvelopeSpectrum improvedEnvelopeSpectrum(Band range) {
        int first = (int) Math.ceil(Objects.requireNonNull(range, "range").lowestHertz() / carrierHertz - 0.5 - 1e-9);
        int last = (int) Math.min(carriers - 1, Math.floor(range.highestHertz() / carrierHertz - 0.5 + 1e-9));
        if (last < first) {
            throw new IllegalArgumentException("range must hold the centre of a carrier, " + carrierHertz
                    + " Hz wide up to " + carriers * carrierHertz + " Hz: " + range);
        }
        double[] means = new double[lines];
        for (int c = first; c <= last; c++) {
            for (int a = 0; a < lines; a++) {
                means[a] += coherences[c * lines + a] / (last - first + 1);
            }
        }
        return new ImprovedEnvelopeSpectrum(carriers(first, last), last - first + 1, resolutionHertz, averages, means);
    }

    /**
     * Seeks the carriers that a rate modulates most clearly: among all ranges of neighbouring carriers that in which
     * the coherences at the rate and its next two multiples stand highest above those beside them.
     *
     * @param cyclicHertz rate in Hz, above zero
     * @param toleranceHertz how far the rate may lie off in Hz, zero or more; it is sought by the inverse duration
     * @return the range and the rate; empty if the rate lies beyond the cyclic frequencies
     * @throws IllegalArgumentException if an argument is out of range
     */
    public Optional<CoherentBand> bestBand(double cyclicHertz, double toleranceHertz) {
        Require.positive("cyclicHertz", cyclicHertz, "Hz");
        Require.notNegative("toleranceHertz", toleranceHertz, "Hz");
        return new CarrierSearch(coherences, carriers, lines, cyclicHertz / resolutionHertz,
                toleranceHertz / resolutionHertz).best()
                .map(run -> new CoherentBand(carriers(run.first(), run.last()), run.line() * resolutionHertz,
                        run.excess()));
    }

    /** Returns extent, as in {@code coherence of 59 carriers 200 Hz wide, 0–1000 Hz by 0.213 Hz, 889 averages}. */
    @Override
    public String toString() {
        return "coherence of " + carriers + " carriers " + Digits.significant(carrierHertz, 3)
                + " Hz wide, 0\u2013" + Digits.compact((lines - 1) * resolutionHertz, 4) + " Hz by "
                + Digits.significant(resolutionHertz, 3) + " Hz, " + Math.round(averages) + " averages";
    }
}
