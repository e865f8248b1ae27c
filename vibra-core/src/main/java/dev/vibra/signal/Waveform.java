package dev.vibra.signal;

import dev.vibra.integration.BandLimitingChain;
import dev.vibra.integration.SpectralIntegration;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.level.Moments;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.transform.PlanCache;
import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Samples of one channel, evenly spaced in time, in SI units, immutable.
 *
 * <p>Levels are taken about the mean of the samples. A waveform that was limited to a band remembers it and how, and
 * its levels carry both.
 */
public final class Waveform implements Serializable {
    private static final long serialVersionUID = 1;

    private final Quantity quantity;
    private final double sampleRateHertz;
    private final double startSeconds;
    private final double[] samples;
    private final Band band;
    private final LevelMethod method;

    /** The array is owned: callers pass a fresh one, and check its samples where they didn't before. */
    private Waveform(Quantity quantity, double sampleRateHertz, double startSeconds, double[] owned, Band band,
            LevelMethod method) {
        this.quantity = Objects.requireNonNull(quantity, "quantity");
        this.sampleRateHertz = Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        this.startSeconds = Require.finite("startSeconds", startSeconds);
        this.samples = owned;
        this.band = band;
        this.method = Objects.requireNonNull(method, "method");
        Require.atLeast("number of samples", owned.length, 1);
        Require.positive("number of samples over the sample rate", owned.length / sampleRateHertz, "s");
    }

    private Waveform checked() {
        Require.samples(samples, 0, samples.length);
        return this;
    }

    private Object readResolve() {
        return new Waveform(quantity, sampleRateHertz, startSeconds, samples.clone(), band, method).checked();
    }

    /**
     * Makes a waveform of samples in a unit.
     *
     * @param unit unit of the samples
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param samples samples, at least one, all finite and within ±1e70 in SI units; copied
     * @return the waveform
     * @throws IllegalArgumentException if the sample rate is out of range, there is no sample or one is out of range
     */
    public static Waveform of(Unit unit, double sampleRateHertz, double... samples) {
        Objects.requireNonNull(unit, "unit");
        double[] si = Objects.requireNonNull(samples, "samples").clone();
        double toSi = unit.toSi();
        for (int i = 0; i < si.length; i++) {
            si[i] *= toSi;
        }
        return ofChecked(unit.quantity(), sampleRateHertz, 0, si).checked();
    }

    /**
     * Makes a waveform of whole numbers, as converters give them. {@link CountConversion} picks one channel out of
     * several that follow each other.
     *
     * @param unit unit of the samples after scaling
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param samples samples, at least one; copied
     * @param scale value in the unit that 1 stands for, finite, not zero
     * @return the waveform
     * @throws IllegalArgumentException if sample rate or scale are out of range, there is no sample, or one isn't
     *     within ±1e70 in SI units
     */
    public static Waveform of(Unit unit, double sampleRateHertz, short[] samples, double scale) {
        return CountConversion.of(unit, scale).waveform(sampleRateHertz, samples);
    }

    /**
     * Makes a waveform of whole numbers, as converters give them.
     *
     * @param unit unit of the samples after scaling
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param samples samples, at least one; copied
     * @param scale value in the unit that 1 stands for, finite, not zero
     * @return the waveform
     * @throws IllegalArgumentException if sample rate or scale are out of range, there is no sample, or one isn't
     *     within ±1e70 in SI units
     */
    public static Waveform of(Unit unit, double sampleRateHertz, int[] samples, double scale) {
        return CountConversion.of(unit, scale).waveform(sampleRateHertz, samples);
    }

    /**
     * Makes a waveform of samples of single precision.
     *
     * @param unit unit of the samples after scaling
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param samples samples, at least one, all finite; copied
     * @param scale value in the unit that 1 stands for, finite, not zero
     * @return the waveform
     * @throws IllegalArgumentException if sample rate or scale are out of range, there is no sample, or one isn't
     *     within ±1e70 in SI units
     */
    public static Waveform of(Unit unit, double sampleRateHertz, float[] samples, double scale) {
        return CountConversion.of(unit, scale).waveform(sampleRateHertz, samples);
    }

    /** Makes a waveform of an array that nobody else holds, whose samples were checked. */
    static Waveform ofChecked(Quantity quantity, double sampleRateHertz, double startSeconds, double[] owned) {
        return new Waveform(quantity, sampleRateHertz, startSeconds, owned, null, LevelMethod.WHOLE_SIGNAL);
    }

    /**
     * Makes a waveform of samples in the SI unit of a quantity.
     *
     * @param quantity what the samples measure
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param samples samples, at least one, all finite and within ±1e70 in SI units; copied
     * @return the waveform
     * @throws IllegalArgumentException if the sample rate is out of range, there is no sample or one is out of range
     */
    public static Waveform ofSi(Quantity quantity, double sampleRateHertz, double... samples) {
        return ofChecked(quantity, sampleRateHertz, 0, Objects.requireNonNull(samples, "samples").clone()).checked();
    }

    /**
     * Returns what the samples measure.
     *
     * @return the quantity
     */
    public Quantity quantity() {
        return quantity;
    }

    /**
     * Returns the sample rate.
     *
     * @return samples per second
     */
    public double sampleRateHertz() {
        return sampleRateHertz;
    }

    /**
     * Returns the number of samples.
     *
     * @return number of samples, at least 1
     */
    public int length() {
        return samples.length;
    }

    /**
     * Returns the duration, number of samples over sample rate.
     *
     * @return duration in s
     */
    public double durationSeconds() {
        return samples.length / sampleRateHertz;
    }

    /**
     * Returns the time of the first sample, counted from the first sample of the recording that this was cut from.
     *
     * @return start in s
     */
    public double startSeconds() {
        return startSeconds;
    }

    /**
     * Returns the band that this waveform was limited to.
     *
     * @return the band; empty if it was not limited
     */
    public Optional<Band> band() {
        return Optional.ofNullable(band);
    }

    /**
     * Returns how it was limited to its band: what its levels are measured by.
     *
     * @return whole signal, zero-phase band or severity chain
     */
    public LevelMethod method() {
        return method;
    }

    /**
     * Returns one sample.
     *
     * @param index number of the sample from 0
     * @return sample in the SI unit of the quantity
     * @throws IndexOutOfBoundsException if there is no such sample
     */
    public double at(int index) {
        return samples[Objects.checkIndex(index, samples.length)];
    }

    /**
     * Returns all samples.
     *
     * @return a new array in the SI unit of the quantity
     */
    public double[] samples() {
        return samples.clone();
    }

    /**
     * Returns all samples in a unit.
     *
     * @param unit unit of this waveform's quantity
     * @return a new array in that unit
     * @throws IllegalArgumentException if the unit measures another quantity
     */
    public double[] in(Unit unit) {
        if (Objects.requireNonNull(unit, "unit").quantity() != quantity) {
            throw new IllegalArgumentException("unit must measure " + quantity + ": " + unit + " measures "
                    + unit.quantity());
        }
        double[] values = samples.clone();
        double toSi = unit.toSi();
        for (int i = 0; i < values.length; i++) {
            values[i] /= toSi;
        }
        return values;
    }

    /**
     * Copies a part of the samples.
     *
     * @param from index of the first sample to copy
     * @param target receives the samples in SI units
     * @param offset index of the first one in the target
     * @param length number of samples to copy
     * @throws IllegalArgumentException if a range leaves its array
     */
    public void copyTo(int from, double[] target, int offset, int length) {
        Require.range("samples", from, length, samples.length);
        Require.range("target", offset, length, Objects.requireNonNull(target, "target").length);
        System.arraycopy(samples, from, target, offset, length);
    }

    /**
     * Cuts out a part.
     *
     * @param from index of the first sample
     * @param length number of samples, at least 1
     * @return the part, with its start time
     * @throws IllegalArgumentException if the part leaves the waveform or is empty
     */
    public Waveform part(int from, int length) {
        Require.atLeast("length", length, 1);
        Require.range("samples", from, length, samples.length);
        double[] part = new double[length];
        System.arraycopy(samples, from, part, 0, length);
        return new Waveform(quantity, sampleRateHertz, startSeconds + from / sampleRateHertz, part, band, method);
    }

    /**
     * Returns the same samples on another time scale.
     *
     * @param seconds time of the first sample in s, finite
     * @return the shifted waveform
     * @throws IllegalArgumentException if the time is not finite
     */
    public Waveform startingAt(double seconds) {
        return new Waveform(quantity, sampleRateHertz, Require.finite("seconds", seconds), samples, band, method);
    }

    /**
     * Computes mean, extremes and moments.
     *
     * @return the moments in SI units
     */
    public Moments moments() {
        return Moments.of(samples);
    }

    /**
     * Computes the root mean square about the mean.
     *
     * @return the level
     */
    public Level rms() {
        return level(moments().rms(), Detector.RMS);
    }

    /**
     * Finds the largest distance from the mean: the true peak, not one derived from rms.
     *
     * @return the level
     */
    public Level peak() {
        return level(moments().peak(), Detector.ZERO_TO_PEAK);
    }

    /**
     * Finds the distance from the smallest to the largest sample: the true peak-to-peak value, not one derived from
     * rms.
     *
     * @return the level
     */
    public Level peakToPeak() {
        return level(moments().peakToPeak(), Detector.PEAK_TO_PEAK);
    }

    private Level level(double si, Detector detector) {
        Level level = Level.ofSi(si, quantity, detector);
        return (band == null ? level : level.within(band)).by(method);
    }

    /**
     * Computes the crest factor, peak over rms.
     *
     * @return crest factor, at least 1
     * @throws IllegalStateException if the samples are constant
     */
    public double crestFactor() {
        return moments().crestFactor();
    }

    /**
     * Computes the skewness.
     *
     * @return skewness, 0 for a symmetric distribution
     * @throws IllegalStateException if the samples are constant
     * @see Moments#skewness()
     */
    public double skewness() {
        return moments().skewness();
    }

    /**
     * Computes the kurtosis: 1.5 for a sine, 3 for normal noise.
     *
     * @return kurtosis, at least 1
     * @throws IllegalStateException if the samples are constant
     * @see Moments#kurtosis()
     */
    public double kurtosis() {
        return moments().kurtosis();
    }

    /**
     * Integrates or differentiates to velocity within a band, without phase shift. Within the band the response is
     * exact; beside it, it falls to nothing at 0.6 times the lower end and 1.1 times the upper end, so that what lies
     * between counts in part. Three periods of the lower end are left out at each end of the recording. For the band
     * filters that a standard prescribes, see {@link #throughSeverityChain}.
     *
     * @param newBand band from above 0 Hz to at most half the sample rate
     * @return the velocity of the settled part
     * @throws IllegalArgumentException if the band is out of range or the recording shorter than nine periods of its
     *     lower end
     * @see SpectralIntegration
     */
    public Waveform velocity(Band newBand) {
        return within(Quantity.VELOCITY, newBand, null);
    }

    /**
     * Does what {@link #velocity(Band)} does, with the tables of a plan that a caller keeps for the next recording.
     *
     * @param newBand band as there
     * @param plans the caller's plans, of this thread
     * @return the velocity of the settled part
     * @throws IllegalArgumentException if the band is out of range or the recording too short for it
     */
    public Waveform velocity(Band newBand, PlanCache plans) {
        return within(Quantity.VELOCITY, newBand, Objects.requireNonNull(plans, "plans"));
    }

    /**
     * Integrates to displacement within a band, without phase shift, with the response of {@link #velocity(Band)}.
     * Three periods of the lower end are left out at each end of the recording.
     *
     * @param newBand band from above 0 Hz to at most half the sample rate
     * @return the displacement of the settled part
     * @throws IllegalArgumentException if the band is out of range or the recording shorter than nine periods of its
     *     lower end
     * @see SpectralIntegration
     * @see dev.vibra.record.WholeRecord levels of shorter recordings, with their error
     */
    public Waveform displacement(Band newBand) {
        return within(Quantity.DISPLACEMENT, newBand, null);
    }

    /**
     * Does what {@link #displacement(Band)} does, with the tables of a plan that a caller keeps for the next recording.
     *
     * @param newBand band as there
     * @param plans the caller's plans, of this thread
     * @return the displacement of the settled part
     * @throws IllegalArgumentException if the band is out of range or the recording too short for it
     */
    public Waveform displacement(Band newBand, PlanCache plans) {
        return within(Quantity.DISPLACEMENT, newBand, Objects.requireNonNull(plans, "plans"));
    }

    /**
     * Limits to a band, or differentiates to acceleration within it, without phase shift, with the response of {@link
     * #velocity(Band)}. Three periods of the lower end are left out at each end of the recording, nothing if it is 0
     * Hz.
     *
     * @param newBand band up to half the sample rate
     * @return the acceleration of the settled part
     * @throws IllegalArgumentException if the band is out of range or the recording shorter than nine periods of its
     *     lower end
     * @see SpectralIntegration
     */
    public Waveform acceleration(Band newBand) {
        return within(Quantity.ACCELERATION, newBand, null);
    }

    /**
     * Does what {@link #acceleration(Band)} does, with the tables of a plan that a caller keeps for the next recording.
     *
     * @param newBand band as there
     * @param plans the caller's plans, of this thread
     * @return the acceleration of the settled part
     * @throws IllegalArgumentException if the band is out of range or the recording too short for it
     */
    public Waveform acceleration(Band newBand, PlanCache plans) {
        return within(Quantity.ACCELERATION, newBand, Objects.requireNonNull(plans, "plans"));
    }

    /** Makes a plan of its own where it is given none to choose from. */
    private Waveform within(Quantity target, Band newBand, PlanCache plans) {
        Objects.requireNonNull(newBand, "newBand");
        Supplier<SpectralIntegration> made = () ->
                SpectralIntegration.of(samples.length, sampleRateHertz, quantity, target, newBand);
        SpectralIntegration plan = plans == null ? made.get() : plans.get(SpectralIntegration.class,
                List.of(samples.length, sampleRateHertz, quantity, target, newBand), made);
        double[] out = plan.process(samples, 0, new double[plan.settledLength()]);
        return new Waveform(target, sampleRateHertz, startSeconds + plan.settledFrom() / sampleRateHertz, out, newBand,
                LevelMethod.ZERO_PHASE_BAND).checked();
    }

    /**
     * Passes through the measuring chain of a vibration-severity instrument: integration (none where the target is this
     * waveform's own motion) and third-order Butterworth band limits, 0.7071 at both ends of the band. Severity limits
     * are meant for levels measured this way. The start-up of the chain, four periods of the lower end, is left out.
     *
     * @param target this waveform's motion or an integral of it
     * @param newBand band from above 0 Hz to at most 0.4 times the sample rate
     * @return output of the chain after its start-up
     * @throws IllegalArgumentException if the band is out of range, the recording not at least twice as long as the
     *     start-up, or this waveform already limited to a band, which the chain would limit once more
     * @see BandLimitingChain
     * @see "ISO 2954:2012, 5.3 and 5.4"
     */
    public Waveform throughSeverityChain(Quantity target, Band newBand) {
        Objects.requireNonNull(newBand, "newBand");
        Objects.requireNonNull(target, "target");
        if (band != null) {
            throw new IllegalArgumentException("waveform must not be limited to a band before the severity chain: "
                    + band + ", " + method);
        }
        BandLimitingChain chain = BandLimitingChain.of(quantity, target, newBand, sampleRateHertz);
        int settling = chain.settlingSamples();
        if (samples.length < 2L * settling) {
            throw new IllegalArgumentException("recording must be at least " + Digits.significant(
                    2 * settling / sampleRateHertz, 3) + " s long for the severity chain " + newBand + ": "
                    + Digits.significant(durationSeconds(), 3) + " s");
        }
        double[] out = new double[samples.length];
        chain.process(samples, 0, out, 0, out.length);
        double[] settled = new double[out.length - settling];
        System.arraycopy(out, settling, settled, 0, settled.length);
        return new Waveform(target, sampleRateHertz, startSeconds + settling / sampleRateHertz, settled, newBand,
                LevelMethod.SEVERITY_CHAIN).checked();
    }

    /** Two waveforms are equal if quantity, sample rate, start, band, method and every sample are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Waveform wave
                && quantity == wave.quantity
                && Double.compare(sampleRateHertz, wave.sampleRateHertz) == 0
                && Double.compare(startSeconds, wave.startSeconds) == 0
                && Objects.equals(band, wave.band)
                && method == wave.method
                && Arrays.equals(samples, wave.samples);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(quantity, sampleRateHertz, startSeconds, band, Arrays.hashCode(samples));
    }

    /** Returns size, rate, quantity, duration and peak, as in {@code 102,400 samples at 25,600 Hz, acceleration, …}. */
    @Override
    public String toString() {
        String limited = band == null ? "" : " " + band;
        return String.format(Locale.ROOT, "%,d samples at %s Hz, %s%s, %s s, %s %s peak", samples.length,
                rate(), quantity, limited, Digits.significant(durationSeconds(), 4),
                Digits.significant(peak().in(quantity.customaryUnit()), 3), quantity.customaryUnit());
    }

    private String rate() {
        return sampleRateHertz == Math.rint(sampleRateHertz) && sampleRateHertz < 1e9
                ? String.format(Locale.ROOT, "%,d", (long) sampleRateHertz) : Digits.significant(sampleRateHertz, 6);
    }
}
