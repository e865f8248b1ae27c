package dev.vibra.envelope;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Means;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectrumPlan;
import dev.vibra.window.Window;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Spectrum of the squared envelope of a band, as depth of pulsation: how the vibration power in the band swings in
 * time.
 *
 * <p>Scaling: if the power swings as {@code P·(1 + m·cos 2πft)}, the line at {@code f} reads {@code m}, whatever the
 * level of the recording and the window. Narrow impacts that carry the share {@code s} of the power read up to
 * {@code 2s} at their rate and its first multiples, at most 2. The mean is taken out: the line at 0 Hz holds nothing of
 * use.
 *
 * <p>Hann window, blocks that overlap by half, mean squares averaged.
 *
 * @see "R. B. Randall, J. Antoni, Rolling element bearing diagnostics: a tutorial, Mechanical Systems and Signal
 *     Processing 25 (2011) 485-520, on why the envelope is squared"
 */
public final class EnvelopeSpectrum implements Serializable {
    private static final long serialVersionUID = 1;
    /** Squared correlation of the spectra of Hann-weighted blocks that overlap by half: (1/6)². */
    private static final double NEIGHBOURS = 1 / 36.0;

    private final Level level;
    private final double resolutionHertz;
    private final int blocks;
    private final double kurtosis;
    private final double[] depths;

    private EnvelopeSpectrum(Level level, double resolutionHertz, int blocks, double kurtosis, double[] owned) {
        this.level = level;
        this.resolutionHertz = Require.positive("resolutionHertz", resolutionHertz, "Hz");
        this.blocks = Require.atLeast("blocks", blocks, 1);
        this.kurtosis = Require.finite("kurtosis", kurtosis);
        this.depths = Require.allNotNegative("depths", owned);
        Require.atLeast("number of lines", owned.length, 1);
        if (level.band().isEmpty()) {
            throw new IllegalArgumentException("level must have a band: " + level);
        }
    }

    private Object readResolve() {
        return new EnvelopeSpectrum(level, resolutionHertz, blocks, kurtosis, depths.clone());
    }

    /**
     * Computes the envelope spectrum of a band with the finest resolution that the recording allows: one block.
     *
     * @param wave recording, at least 4 samples
     * @param band band up to half the sample rate, at least two lines of the whole recording wide
     * @return the spectrum
     * @throws IllegalArgumentException if the band is out of range or holds no vibration
     */
    public static EnvelopeSpectrum of(Waveform wave, Band band) {
        Objects.requireNonNull(band, "band");
        return of(Objects.requireNonNull(wave, "wave"), band, 1 / wave.durationSeconds());
    }

    /**
     * Computes the envelope spectrum of a band.
     *
     * @param wave recording, at least 4 samples
     * @param band band up to half the sample rate, at least two lines of the whole recording wide
     * @param resolutionHertz distance of the lines in Hz, finite, above zero, reached as nearly as whole samples allow;
     *     a recording shorter than one block makes one block
     * @return the spectrum
     * @throws IllegalArgumentException if an argument is out of range or the band holds no vibration
     */
    public static EnvelopeSpectrum of(Waveform wave, Band band, double resolutionHertz) {
        Objects.requireNonNull(band, "band");
        return unlessSilent(Envelope.squared(Objects.requireNonNull(wave, "wave"), band), resolutionHertz)
                .orElseThrow(() -> new IllegalArgumentException("band must hold vibration: " + band + " is silent"));
    }

    /**
     * Computes the spectrum of a squared envelope.
     *
     * @param envelope squared envelope of a band, at least 4 values
     * @param resolutionHertz distance of the lines in Hz, finite, above zero, reached as nearly as whole samples allow;
     *     an envelope shorter than one block makes one block
     * @return the spectrum; empty if all values are zero or so small that their squares are
     * @throws IllegalArgumentException if the resolution is out of range
     */
    public static Optional<EnvelopeSpectrum> unlessSilent(SquaredEnvelope envelope, double resolutionHertz) {
        return unlessSilent(List.of(Objects.requireNonNull(envelope, "envelope")), resolutionHertz).get(0);
    }

    /**
     * Computes the spectra of several squared envelopes. Those of equal length share a transform.
     *
     * @param envelopes squared envelopes, each of at least 4 values
     * @param resolutionHertz distance of the lines in Hz, as above
     * @return one spectrum an envelope, in their order; empty where all values are zero or nearly
     * @throws IllegalArgumentException if the resolution is out of range
     */
    public static List<Optional<EnvelopeSpectrum>> unlessSilent(List<SquaredEnvelope> envelopes,
            double resolutionHertz) {
        Require.positive("resolutionHertz", resolutionHertz, "Hz");
        Map<Integer, SpectrumPlan.Worker> workers = new HashMap<>();
        List<Optional<EnvelopeSpectrum>> spectra = new ArrayList<>();
        for (SquaredEnvelope envelope : Require.copy("envelopes", envelopes)) {
            // Rounded down, so that a recording of whole blocks loses none.
            double wanted = Math.max(4, Math.floor(envelope.sampleRateHertz() / resolutionHertz + 1e-6));
            int block = (int) Math.min(envelope.length(), wanted);
            spectra.add(unlessSilent(envelope, block, workers.computeIfAbsent(block,
                    length -> SpectrumPlan.of(length, Window.hann()).newWorker())));
        }
        return List.copyOf(spectra);
    }

    private static Optional<EnvelopeSpectrum> unlessSilent(SquaredEnvelope envelope, int block,
            SpectrumPlan.Worker worker) {
        double[] power = envelope.owned();
        double mean = Means.of(power, 0, power.length);
        if (!(mean > 0)) {
            return Optional.empty();
        }
        double[] sums = new double[block / 2 + 1];
        int blocks = accumulate(worker, block, power, sums);
        for (int k = 0; k < sums.length; k++) {
            sums[k] = Math.sqrt(2 * sums[k] / blocks) / mean;
        }
        return Optional.of(new EnvelopeSpectrum(level(envelope.band(), envelope.quantity(), mean),
                envelope.sampleRateHertz() / block, blocks, kurtosis(power, mean), sums));
    }

    private static Level level(Band band, Quantity quantity, double mean) {
        return Level.ofSi(Math.sqrt(0.5 * mean), quantity, Detector.RMS).within(band).by(LevelMethod.ENVELOPE);
    }

    /** The spectrum of one block, computed elsewhere; the array is owned. */
    static EnvelopeSpectrum ofBlock(Band band, Quantity quantity, double mean, double resolutionHertz, double kurtosis,
            double[] owned) {
        return new EnvelopeSpectrum(level(band, quantity, mean), resolutionHertz, 1, kurtosis, owned);
    }

    private static int accumulate(SpectrumPlan.Worker worker, int block, double[] power, double[] sums) {
        int hop = Math.max(1, block / 2);
        int blocks = 0;
        for (int from = 0; from + block <= power.length; from += hop) {
            worker.addMeanSquares(power, from, sums);
            blocks++;
        }
        return blocks;
    }

    private static double kurtosis(double[] power, double mean) {
        double squares = 0;
        for (double p : power) {
            squares += p / mean * (p / mean);
        }
        return squares / power.length - 2;
    }

    /**
     * Cuts the spectrum off above a frequency.
     *
     * @param hertz last frequency to keep in Hz, finite, above zero
     * @return the lines up to there; the same spectrum if it has no more
     * @throws IllegalArgumentException if the frequency is out of range
     */
    public EnvelopeSpectrum upTo(double hertz) {
        double lines = Math.floor(Require.positive("hertz", hertz, "Hz") / resolutionHertz) + 1;
        return lines >= depths.length ? this
                : new EnvelopeSpectrum(level, resolutionHertz, blocks, kurtosis, Arrays.copyOf(depths, (int) lines));
    }

    /**
     * Returns the band of the recording whose envelope this is.
     *
     * @return the band
     */
    public Band band() {
        return level.band().orElseThrow();
    }

    /**
     * Returns the rms value of the recording in the band, from the mean square of the envelope.
     *
     * @return level in the quantity of the recording
     */
    public Level level() {
        return level;
    }

    /**
     * Returns the number of lines, the one at 0 Hz included.
     *
     * @return number of lines
     */
    public int lines() {
        return depths.length;
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
     * Returns the number of blocks averaged, which overlap by half.
     *
     * @return number of blocks, at least 1
     */
    public int blocks() {
        return blocks;
    }

    /**
     * Returns the number of independent blocks that would scatter as little as the overlapping ones averaged here.
     *
     * @return equivalent number of averages, at least 1
     * @see "P. D. Welch, IEEE Trans. Audio Electroacoust. 15 (1967) 70-73: variance of averaged overlapping blocks"
     */
    public double equivalentAverages() {
        return blocks / (1 + 2 * NEIGHBOURS * (blocks - 1) / blocks);
    }

    /**
     * Returns the spectral kurtosis of the band, {@code mean(e⁴)/mean(e²)² − 2} of the envelope e: 0 for normal noise,
     * -1 for a steady sine, large for rare impacts.
     *
     * @return spectral kurtosis, at least -1
     * @see "J. Antoni, The spectral kurtosis, Mechanical Systems and Signal Processing 20 (2006) 282-307"
     */
    public double spectralKurtosis() {
        return kurtosis;
    }

    /**
     * Returns the frequency of a line.
     *
     * @param line number of the line from 0
     * @return frequency in Hz
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public double frequencyHertz(int line) {
        return Objects.checkIndex(line, depths.length) * resolutionHertz;
    }

    /**
     * Returns the depth of pulsation at a line.
     *
     * @param line number of the line from 0
     * @return depth, 0 to 2
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public double depth(int line) {
        return depths[Objects.checkIndex(line, depths.length)];
    }

    /**
     * Returns the depths of all lines.
     *
     * @return a new array
     */
    public double[] depths() {
        return depths.clone();
    }

    /** Two spectra are equal if level, band, resolution, blocks, kurtosis and every depth are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof EnvelopeSpectrum spectrum
                && level.equals(spectrum.level)
                && Double.compare(resolutionHertz, spectrum.resolutionHertz) == 0
                && blocks == spectrum.blocks
                && Double.compare(kurtosis, spectrum.kurtosis) == 0
                && Arrays.equals(depths, spectrum.depths);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(level, resolutionHertz, blocks, kurtosis, Arrays.hashCode(depths));
    }

    /** Returns band, extent and resolution, as in {@code envelope spectrum of 2000–4000 Hz, 0–600 Hz by 0.300 Hz}. */
    @Override
    public String toString() {
        return "envelope spectrum of " + band() + ", 0–" + Digits.compact((depths.length - 1) * resolutionHertz, 4)
                + " Hz by " + Digits.significant(resolutionHertz, 3) + " Hz";
    }
}
