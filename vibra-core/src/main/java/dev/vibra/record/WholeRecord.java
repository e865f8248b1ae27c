package dev.vibra.record;

import dev.vibra.bandmap.BandMap;
import dev.vibra.bandmap.DyadicMapPlan;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.envelope.EnvelopeSpectrumPlan;
import dev.vibra.integration.MotionPlan;
import dev.vibra.internal.Digits;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.transform.PlanCache;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * A recording transformed once, and what is asked of it in its bands:
 *
 * <pre>{@code
 * WholeRecord record = WholeRecord.of(wave);
 * record.rms(Quantity.VELOCITY, Band.of(10, 1000))            // 4.31 mm/s rms (10–1000 Hz, zero-phase) ± 0.61 %, …
 * record.peakToPeak(Quantity.DISPLACEMENT, Band.of(2, 1000))  // 41.2 µm peak-peak (2–1000 Hz, zero-phase) ± 6.0 %, …
 * record.envelopeSpectrum(Band.of(2000, 6000), 1000)
 * record.dyadicMap(6).best()                                  // 3200–4800 Hz: 4.21
 * }</pre>
 *
 * <p>What it gives is immutable; it uses the plans of a cache itself and is, like them, for one thread at a time.
 */
public final class WholeRecord {
    private static final int PLANS = 16;

    private final Waveform wave;
    private final PlanCache plans;
    private final double[] lines;

    private WholeRecord(Waveform wave, PlanCache plans) {
        this.wave = wave;
        this.plans = plans;
        RecordTransform transform = plans.get(RecordTransform.class, wave.length(),
                () -> new RecordTransform(wave.length()));
        lines = new double[transform.spectrumLength()];
        wave.copyTo(0, lines, 0, wave.length());
        transform.forward(lines, 0, lines);
    }

    /**
     * Transforms a recording.
     *
     * @param wave recording, at least 16 samples
     * @return the record, with plans of its own
     * @throws IllegalArgumentException if the recording is shorter
     */
    public static WholeRecord of(Waveform wave) {
        return of(wave, PlanCache.ofSize(PLANS));
    }

    /**
     * Transforms a recording with the plans that a caller keeps, so that the next one of the same length has them.
     *
     * @param wave recording, at least 16 samples
     * @param plans the caller's plans, of this thread
     * @return the record
     * @throws IllegalArgumentException if the recording is shorter
     */
    public static WholeRecord of(Waveform wave, PlanCache plans) {
        Objects.requireNonNull(plans, "plans");
        return new WholeRecord(Objects.requireNonNull(wave, "wave"), plans);
    }

    /**
     * Measures the rms value of a motion within a band.
     *
     * @param target the recording's motion or an integral of it
     * @param band band from above 0 Hz to at most half the sample rate
     * @return level and its error
     * @throws IllegalArgumentException if the band is out of range or the recording shorter than seven periods of its
     *     lower end
     * @see MotionPlan
     */
    public BandLevel rms(Quantity target, Band band) {
        MotionPlan plan = motion(target, band);
        return level(plan, plan.rms(), target, Detector.RMS, band);
    }

    /**
     * Measures the peak-to-peak value of a motion within a band.
     *
     * @param target the recording's motion or an integral of it
     * @param band band from above 0 Hz to at most half the sample rate
     * @return level and its error
     * @throws IllegalArgumentException if the band is out of range or the recording shorter than seven periods of its
     *     lower end
     * @see MotionPlan
     */
    public BandLevel peakToPeak(Quantity target, Band band) {
        MotionPlan plan = motion(target, band);
        return level(plan, plan.peakToPeak(), target, Detector.PEAK_TO_PEAK, band);
    }

    private MotionPlan motion(Quantity target, Band band) {
        Objects.requireNonNull(band, "band");
        Objects.requireNonNull(target, "target");
        List<Object> settings = List.of(wave.length(), wave.sampleRateHertz(), wave.quantity(), target, band);
        MotionPlan plan = plans.get(MotionPlan.class, settings, () -> MotionPlan.of(wave.length(),
                wave.sampleRateHertz(), wave.quantity(), target, band));
        plan.take(lines);
        return plan;
    }

    private static BandLevel level(MotionPlan plan, double si, Quantity target, Detector detector, Band band) {
        Level level = Level.ofSi(si, target, detector).within(band).by(LevelMethod.ZERO_PHASE_BAND);
        return new BandLevel(level, plan.relativeError(), plan.periods());
    }

    /**
     * Computes the envelope spectrum of a band.
     *
     * @param band band up to half the sample rate that holds at least two lines of the recording
     * @param highestHertz frequency up to which lines are wanted, in Hz, at most the width of the band
     * @return the spectrum, as fine as the recording allows
     * @throws IllegalArgumentException if an argument is out of range or the band holds no vibration
     * @see EnvelopeSpectrumPlan
     */
    public EnvelopeSpectrum envelopeSpectrum(Band band, double highestHertz) {
        List<Object> settings = List.of(wave.length(), wave.sampleRateHertz(), Objects.requireNonNull(band, "band"),
                highestHertz);
        return plans.get(EnvelopeSpectrumPlan.class, settings, () -> EnvelopeSpectrumPlan.of(wave.length(),
                wave.sampleRateHertz(), band, highestHertz)).spectrum(lines, wave.quantity());
    }

    /**
     * Searches for the most impulsive band by spectral kurtosis among 2, 4, 8 … equal ones.
     *
     * @param levels number of times that the range is halved, 2 to 12, as long as the narrowest bands hold four lines
     * @return the map
     * @throws IllegalArgumentException if the number of levels is out of range or the recording is constant
     * @see DyadicMapPlan
     */
    public BandMap dyadicMap(int levels) {
        DyadicMapPlan plan = plans.get(DyadicMapPlan.class, List.of(wave.length(), wave.sampleRateHertz(), levels),
                () -> DyadicMapPlan.of(wave.length(), wave.sampleRateHertz(), levels));
        plan.take(lines);
        if (!plan.hasVibration()) {
            throw new IllegalArgumentException("recording must vibrate to have an impulsive band: " + wave);
        }
        return plan.map();
    }

    /** Returns the facts of the recording and its lines, as in {@code …, 51,201 lines 0.25 Hz apart}. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s, %,d lines %s Hz apart", wave, lines.length / 2,
                Digits.compact(wave.sampleRateHertz() / wave.length(), 4));
    }
}
