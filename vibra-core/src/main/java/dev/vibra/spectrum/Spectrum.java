package dev.vibra.spectrum;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.transform.PlanCache;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/**
 * Averaged one-sided spectrum of a recording, immutable.
 *
 * <p>Scaling, the same for every window. A sine of amplitude A on a line, and white noise of standard deviation σ:
 *
 * <table><caption>What a line reads</caption>
 * <tr><th>asked as</th><th>sine</th><th>noise</th></tr>
 * <tr><td>{@code amplitude(k, RMS)}</td><td>A/√2</td><td>σ·√(2·B/fs)</td></tr>
 * <tr><td>{@code amplitude(k, ZERO_TO_PEAK)}</td><td>A</td><td>σ·√(4·B/fs)</td></tr>
 * <tr><td>{@code amplitude(k, PEAK_TO_PEAK)}</td><td>2A</td><td>σ·√(16·B/fs)</td></tr>
 * <tr><td>{@code density(k)}</td><td>A²/(2·B)</td><td>2·σ²/fs</td></tr>
 * <tr><td>{@code bandLevel(all)}</td><td>A/√2</td><td>σ</td></tr>
 * </table>
 *
 * <p>B is the noise bandwidth of a line in Hz, fs the sample rate. The mean of each block is taken out. A spectrum of
 * acceleration is read as velocity or displacement by dividing each line by 2πf once or twice; the line at 0 Hz, which
 * has no integral, reads 0 then.
 *
 * @see "P. D. Welch, IEEE Trans. Audio Electroacoust. 15 (1967) 70-73; ISO 18431-1:2005"
 */
public final class Spectrum implements Serializable {
    private static final long serialVersionUID = 1;
    /** Fewer blocks take less time one by one than the tables for two at a time. */
    private static final int FEWEST_FOR_PAIRS = 12;

    private final SpectrumSettings settings;
    private final Quantity measured;
    private final Quantity quantity;
    private final double sampleRateHertz;
    private final int blockLength;
    private final int blocks;
    private final double noiseBandwidthBins;
    private final double[] meanSquares;

    private Spectrum(Waveform wave, SpectrumSettings settings, PlanCache plans) {
        this.settings = settings;
        measured = wave.quantity();
        quantity = measured;
        sampleRateHertz = wave.sampleRateHertz();
        blockLength = settings.blockLength(wave);
        SpectrumPlan plan = SpectrumPlan.of(blockLength, settings.window(), plans);
        noiseBandwidthBins = plan.noiseBandwidth();
        meanSquares = new double[plan.lines()];
        blocks = average(wave, new Accumulator(plan, settings.averaging(), plan.worker(plans)));
        Require.allFinite("mean squares of the lines", meanSquares);
    }

    private Spectrum(Spectrum other, Quantity quantity) {
        settings = other.settings;
        measured = other.measured;
        this.quantity = quantity;
        sampleRateHertz = other.sampleRateHertz;
        blockLength = other.blockLength;
        blocks = other.blocks;
        noiseBandwidthBins = other.noiseBandwidthBins;
        meanSquares = other.meanSquares;
    }

    private Object readResolve() {
        measured.integrationsTo(quantity);
        SpectrumPlan plan = SpectrumPlan.of(Require.count("blockLength", blockLength, 2, 2 * meanSquares.length),
                settings.window());
        Require.count("number of lines", meanSquares.length, plan.lines(), plan.lines());
        return new Spectrum(new Spectrum(measured, sampleRateHertz, plan, settings, blocks, meanSquares.clone()),
                quantity);
    }

    /**
     * Makes the spectrum of a recording with the {@linkplain SpectrumSettings#withDefaults() default settings}.
     *
     * @param wave recording, at least 2 samples
     * @return the spectrum
     * @throws IllegalArgumentException if the recording is too short
     */
    public static Spectrum of(Waveform wave) {
        return of(Objects.requireNonNull(wave, "wave"), SpectrumSettings.withDefaults());
    }

    /**
     * Makes the spectrum of a recording. The block length is the sample rate over the resolution, rounded to a whole
     * number of samples, or the whole recording if that is shorter. Samples behind the last whole block are not used.
     *
     * @param wave recording, at least 2 samples
     * @param settings window, resolution, overlap
     * @return the spectrum
     * @throws IllegalArgumentException if the recording is too short
     */
    public static Spectrum of(Waveform wave, SpectrumSettings settings) {
        return of(wave, settings, PlanCache.ofSize(2));
    }

    /**
     * Makes the spectrum of a recording as {@link #of(Waveform, SpectrumSettings)} does, with the tables that are kept.
     *
     * @param wave recording, at least 2 samples
     * @param settings window, resolution, overlap
     * @param plans plans of the thread
     * @return the spectrum
     * @throws IllegalArgumentException if the recording is too short
     */
    public static Spectrum of(Waveform wave, SpectrumSettings settings, PlanCache plans) {
        Require.atLeast("number of samples", Objects.requireNonNull(wave, "wave").length(), 2);
        return new Spectrum(wave, Objects.requireNonNull(settings, "settings"),
                Objects.requireNonNull(plans, "plans"));
    }

    /** For meters, which average block by block themselves. */
    Spectrum(Quantity measured, double sampleRateHertz, SpectrumPlan plan, SpectrumSettings settings, int blocks,
            double[] ownedMeanSquares) {
        this.settings = settings;
        this.measured = measured;
        this.quantity = measured;
        this.sampleRateHertz = Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        this.blockLength = plan.length();
        this.blocks = Require.atLeast("blocks", blocks, 1);
        this.noiseBandwidthBins = plan.noiseBandwidth();
        this.meanSquares = Require.allNotNegative("mean squares of the lines", ownedMeanSquares);
    }

    private int average(Waveform wave, Accumulator accumulator) {
        double[] two = new double[2 * blockLength];
        int step = settings.step(blockLength);
        int whole = (wave.length() - blockLength) / step + 1;
        int together = whole < FEWEST_FOR_PAIRS ? 1 : 2;
        for (int block = 0; block < whole; block += together) {
            int taken = Math.min(together, whole - block);
            for (int i = 0; i < taken; i++) {
                wave.copyTo((block + i) * step, two, i * blockLength, blockLength);
            }
            if (taken == 1) {
                accumulator.add(two, 0);
            } else {
                accumulator.addTwo(two);
            }
        }
        accumulator.meanSquares(meanSquares);
        return Math.toIntExact(accumulator.count());
    }

    /**
     * Reads this spectrum as acceleration.
     *
     * @return the same lines as acceleration
     * @throws IllegalArgumentException if a motion was not measured
     */
    public Spectrum acceleration() {
        return as(Quantity.ACCELERATION);
    }

    /**
     * Reads this spectrum as velocity.
     *
     * @return the same lines as velocity
     * @throws IllegalArgumentException if a motion was not measured
     */
    public Spectrum velocity() {
        return as(Quantity.VELOCITY);
    }

    /**
     * Reads this spectrum as displacement.
     *
     * @return the same lines as displacement
     * @throws IllegalArgumentException if a motion was not measured
     */
    public Spectrum displacement() {
        return as(Quantity.DISPLACEMENT);
    }

    private Spectrum as(Quantity target) {
        measured.integrationsTo(target);
        return new Spectrum(this, target);
    }

    /**
     * Returns what the lines measure.
     *
     * @return the quantity
     */
    public Quantity quantity() {
        return quantity;
    }

    /**
     * Returns the number of lines.
     *
     * @return lines from 0 Hz to half the sample rate
     */
    public int lines() {
        return meanSquares.length;
    }

    /**
     * Returns the number of blocks averaged.
     *
     * @return number of blocks, at least 1
     */
    public int blocks() {
        return blocks;
    }

    /**
     * Returns the distance of lines.
     *
     * @return resolution in Hz
     */
    public double resolutionHertz() {
        return sampleRateHertz / blockLength;
    }

    /**
     * Returns the noise bandwidth of a line.
     *
     * @return noise bandwidth in Hz
     */
    public double noiseBandwidthHertz() {
        return noiseBandwidthBins * resolutionHertz();
    }

    /**
     * Returns the frequency of a line.
     *
     * @param line number of the line from 0
     * @return frequency in Hz
     * @throws IllegalArgumentException if the number is negative
     */
    public double frequencyHertz(int line) {
        return Require.atLeast("line", line, 0) * sampleRateHertz / blockLength;
    }

    /**
     * Returns the amplitude of a line.
     *
     * @param line number of the line from 0
     * @param detector rms, zero-to-peak or peak-to-peak of the sine that the line stands for
     * @return amplitude in the SI unit of the quantity
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public double amplitude(int line, Detector detector) {
        Objects.requireNonNull(detector, "detector");
        return Math.sqrt(meanSquare(line)) * detector.ofUnitSine() / Detector.RMS.ofUnitSine();
    }

    /**
     * Returns the amplitudes of all lines.
     *
     * @param detector rms, zero-to-peak or peak-to-peak of the sine that a line stands for
     * @return a new array of {@link #lines()} amplitudes in the SI unit of the quantity
     */
    public double[] amplitudes(Detector detector) {
        double[] values = new double[lines()];
        for (int k = 0; k < values.length; k++) {
            values[k] = amplitude(k, Objects.requireNonNull(detector, "detector"));
        }
        return values;
    }

    /**
     * Returns the power spectral density at a line.
     *
     * @param line number of the line from 0
     * @return density in the SI unit squared per Hz
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public double density(int line) {
        return meanSquare(line) / noiseBandwidthHertz();
    }

    /**
     * Returns the power spectral density at all lines.
     *
     * @return a new array of {@link #lines()} densities in the SI unit squared per Hz
     */
    public double[] densities() {
        double[] values = new double[lines()];
        for (int k = 0; k < values.length; k++) {
            values[k] = density(k);
        }
        return values;
    }

    /**
     * Returns the energy spectral density at a line, for a transient that lies whole in one block.
     *
     * @param line number of the line from 0
     * @return density in the SI unit squared times s per Hz
     * @throws IllegalStateException if the spectrum is an average of several blocks
     * @throws IndexOutOfBoundsException if there is no such line
     * @see "J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, section 12.6"
     */
    public double energyDensity(int line) {
        if (blocks != 1) {
            throw new IllegalStateException("energy density needs a spectrum of one block: " + blocks);
        }
        return density(line) / resolutionHertz();
    }

    /**
     * Returns the number of independent blocks that would scatter as little as the overlapping ones averaged here.
     *
     * @return equivalent number of averages, at least 1
     * @throws IllegalStateException if the averaging is not rms
     * @see "P. D. Welch, IEEE Trans. Audio Electroacoust. 15 (1967) 70-73, equation for the variance"
     */
    public double equivalentAverages() {
        if (settings.averaging().kind() != Averaging.Kind.RMS) {
            throw new IllegalStateException("equivalent averages need rms averaging: " + settings.averaging());
        }
        double shared = 1.0 - (double) settings.step(blockLength) / blockLength;
        double sum = 1;
        for (int j = 1; j < blocks; j++) {
            double overlap = 1 - j * (1 - shared);
            if (overlap <= 0) {
                break;
            }
            double correlation = settings.window().overlapCorrelation(overlap);
            sum += 2 * (1 - (double) j / blocks) * correlation * correlation;
        }
        return blocks / sum;
    }

    /**
     * Returns the interval in which the true density at a line lies, for noise of normal distribution: chi-square with
     * twice the {@linkplain #equivalentAverages() equivalent averages} as degrees of freedom.
     *
     * @param line number of the line from 0
     * @param probability probability that the interval holds the truth, above 0, below 1, as in 0.95
     * @return the interval in the SI unit squared per Hz
     * @throws IllegalArgumentException if the probability is out of range
     * @throws IllegalStateException if the averaging is not rms
     * @throws IndexOutOfBoundsException if there is no such line
     * @see "J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, equation 8.159"
     */
    public ConfidenceInterval densityInterval(int line, double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw Require.failure("probability", "above 0 and below 1", probability);
        }
        double freedom = 2 * equivalentAverages();
        ChiSquaredDistribution chi = new ChiSquaredDistribution(freedom);
        double tail = 0.5 * (1 - probability);
        return new ConfidenceInterval(freedom * density(line) / chi.inverseCumulativeProbability(1 - tail),
                freedom * density(line) / chi.inverseCumulativeProbability(tail));
    }

    /** Returns the mean square of a line in the quantity that this spectrum is read as. */
    double meanSquare(int line) {
        double square = meanSquares[Objects.checkIndex(line, meanSquares.length)];
        int integrations = integrations();
        if (integrations == 0) {
            return square;
        }
        double turning = 2 * Math.PI * frequencyHertz(line);
        double once = integrations > 0 ? square / (turning * turning) : square * (turning * turning);
        return line == 0 ? 0 : integrations * integrations == 1 ? once
                : integrations > 0 ? once / (turning * turning) : once * (turning * turning);
    }

    private int integrations() {
        return measured == quantity ? 0 : measured.integrationsTo(quantity);
    }

    /**
     * Computes the rms level of a band by Parseval's relation: the sum of the mean squares of the lines from the lower
     * to the upper end, both included, over the noise bandwidth in bins. A brick wall at line resolution, the
     * counterpart of the severity chain with its slopes.
     *
     * @param band band up to half the sample rate that holds at least one line
     * @return the level in that band
     * @throws IllegalArgumentException if the band reaches above half the sample rate or holds no line
     * @see Waveform#throughSeverityChain
     */
    public Level bandLevel(Band band) {
        Objects.requireNonNull(band, "band").requireBelowNyquist(sampleRateHertz);
        // A line that lies on an end belongs to the band, whatever the rounding of the quotient.
        int first = (int) Math.ceil(band.lowestHertz() / resolutionHertz() - 1e-9);
        int last = Math.min(lines() - 1, (int) Math.floor(band.highestHertz() / resolutionHertz() + 1e-9));
        if (first > last) {
            throw new IllegalArgumentException("band must hold at least one line, " + resolutionHertz()
                    + " Hz apart: " + band);
        }
        double sum = 0;
        for (int k = first; k <= last; k++) {
            sum += meanSquare(k);
        }
        return Level.ofSi(Math.sqrt(sum / noiseBandwidthBins), quantity, Detector.RMS).within(band)
                .by(LevelMethod.SPECTRUM_BAND);
    }

    /**
     * Finds the largest peaks, each interpolated between the bins with the window's own response: for an isolated line
     * within 0.02 bin and 0.5 %. Lines within half a main lobe of 0 Hz and of half the sample rate are left out, since
     * they meet their own image there.
     *
     * @param count largest number of peaks wanted, at least 1
     * @return peaks as rms levels, the largest first; fewer if there are fewer
     * @throws IllegalArgumentException if the count is below 1
     */
    public PeakList peaks(int count) {
        return peaks(Require.atLeast("count", count, 1), 0, Double.POSITIVE_INFINITY);
    }

    /**
     * Finds the largest peaks within a band; see {@link #peaks(int)}.
     *
     * @param count largest number of peaks wanted, at least 1
     * @param band band in which the peaks shall lie
     * @return peaks as rms levels, the largest first; fewer if there are fewer
     * @throws IllegalArgumentException if the count is below 1
     */
    public PeakList peaks(int count, Band band) {
        Objects.requireNonNull(band, "band");
        return peaks(Require.atLeast("count", count, 1), band.lowestHertz(), band.highestHertz());
    }

    private PeakList peaks(int count, double fromHertz, double toHertz) {
        PeakPlan plan = PeakPlan.of(lines(), resolutionHertz(), settings.window()).between(fromHertz, toHertz)
                .withIntegrations(integrations());
        double[] hertz = new double[Math.min(count, lines() / 2 + 1)];
        double[] rms = new double[hertz.length];
        int found = plan.largest(meanSquares, hertz.length, hertz, rms);
        return PeakList.of(quantity, Arrays.copyOf(hertz, found), rms);
    }

    /**
     * Finds the largest peak near a frequency.
     *
     * @param hertz frequency in Hz
     * @param toleranceHertz distance allowed in Hz, zero or more
     * @return the peak; empty if no line stands above its neighbours there
     * @throws IllegalArgumentException if an argument is not finite or negative
     */
    public Optional<SpectralPeak> peakNear(double hertz, double toleranceHertz) {
        Require.notNegative("hertz", hertz, "Hz");
        Require.notNegative("toleranceHertz", toleranceHertz, "Hz");
        return peaks(1, hertz - toleranceHertz, hertz + toleranceHertz).stream().findFirst();
    }

    /** Returns lines, resolution, averages and window. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s spectrum, %,d lines of %s Hz to %s Hz, %d average%s, %s", quantity,
                lines(), Digits.compact(resolutionHertz(), 4), Digits.compact(sampleRateHertz / 2, 6), blocks,
                blocks == 1 ? "" : "s",
                settings.window());
    }
}
