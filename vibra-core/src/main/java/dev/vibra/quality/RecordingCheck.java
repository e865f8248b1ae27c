package dev.vibra.quality;

import dev.vibra.evidence.Remark;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.internal.Sorted;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * Checks a recording before anything is concluded from it.
 *
 * <p>Codes that disqualify a recording:
 * <ul>
 * <li>{@code constant}: all samples are equal.
 * <li>{@code coarse-quantisation}: the whole swing is less than 32 steps of the converter.
 * <li>{@code clipping}: far more samples lie at the largest or smallest value than just beside it; see {@link Rails}.
 * <li>{@code drop-out}: a run of equal samples too long for chance, left by a jump; see {@link HeldRuns}.
 * <li>{@code repeated-block}: a stretch of samples stands in the recording twice.
 * <li>{@code spikes}: single samples far off both neighbours.
 * <li>{@code bias-drift}: the mean moves by more than a fifth of the rms from the first eighth to the last half.
 * <li>{@code low-frequency-slope}: of the power that the severity chain reads as velocity, more than a fifth comes
 * from below the band: noise that integration blew up, or real motion that the band leaves out.
 * <li>{@code too-short}: fewer than ten revolutions, or too short for the band.
 * <li>{@code bandwidth}: sensor or mounting don't reach the upper end of the band.
 * <li>{@code unsteady}: see {@link Steadiness}; no stretch of half the recording is steady. Recordings of less than
 * twenty periods of the lower end aren't tested.
 * </ul>
 *
 * <p>Codes worth knowing: {@code mains-hum}: more than half of the power lies at harmonics of the mains;
 * {@code no-roll-off}: there is as much power right below half the sample rate as at lower frequencies, so that the
 * anti-aliasing filter may be missing; {@code partly-steady}: a part of the recording is steady.
 *
 * <p>Defaults: band 10 Hz to 1000 Hz; speed, mains and bandwidth unknown, their checks left out.
 *
 * @see "J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, section 10.4; the limits are common practice, no
 *     source"
 */
public final class RecordingCheck implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double FEWEST_STEPS = 32;
    private static final double FEWEST_REVOLUTIONS = 10;

    private final Band band;
    private final RotationSpeed speed;
    private final Double mainsHertz;
    private final Double usableHertz;

    /** What isn't known is null. */
    private RecordingCheck(Band band, RotationSpeed speed, Double mainsHertz, Double usableHertz) {
        Require.positive("lowest frequency of the band", band.lowestHertz(), "Hz");
        this.band = band;
        this.speed = speed;
        this.mainsHertz = mainsHertz == null ? null : Require.positive("hertz", mainsHertz, "Hz");
        this.usableHertz = usableHertz == null ? null : Require.positive("hertz", usableHertz, "Hz");
    }

    private Object readResolve() {
        return new RecordingCheck(band, speed, mainsHertz, usableHertz);
    }

    /**
     * Returns the check with its defaults.
     *
     * @return a check for the band 10 Hz to 1000 Hz
     */
    public static RecordingCheck withDefaults() {
        return new RecordingCheck(Band.of(10, 1000), null, null, null);
    }

    /**
     * Checks a recording with the defaults.
     *
     * @param wave recording
     * @return what was found
     */
    public static RecordingQuality of(Waveform wave) {
        return withDefaults().check(Objects.requireNonNull(wave, "wave"));
    }

    /**
     * Returns this check for another band.
     *
     * @param newBand band that conclusions shall rest on, from above 0 Hz
     * @return the new check
     * @throws IllegalArgumentException if the band begins at 0 Hz
     */
    public RecordingCheck withBand(Band newBand) {
        return new RecordingCheck(Objects.requireNonNull(newBand, "newBand"), speed, mainsHertz, usableHertz);
    }

    /**
     * Returns this check for a known speed of rotation.
     *
     * @param newSpeed speed of rotation
     * @return the new check
     */
    public RecordingCheck withSpeed(RotationSpeed newSpeed) {
        Objects.requireNonNull(newSpeed, "newSpeed");
        return new RecordingCheck(band, Objects.requireNonNull(newSpeed, "speed"), mainsHertz, usableHertz);
    }

    /**
     * Returns this check for a known mains frequency.
     *
     * @param hertz mains frequency in Hz, finite, above zero
     * @return the new check
     * @throws IllegalArgumentException if the frequency is out of range
     */
    public RecordingCheck withMains(double hertz) {
        return new RecordingCheck(band, speed, hertz, usableHertz);
    }

    /**
     * Returns this check for a sensor and mounting of known bandwidth.
     *
     * @param hertz highest usable frequency in Hz, finite, above zero
     * @return the new check
     * @throws IllegalArgumentException if the frequency is out of range
     */
    public RecordingCheck withUsableTo(double hertz) {
        return new RecordingCheck(band, speed, mainsHertz, hertz);
    }

    /**
     * Checks a recording.
     *
     * @param wave recording
     * @return what was found
     */
    public RecordingQuality check(Waveform wave) {
        double[] x = Objects.requireNonNull(wave, "wave").samples();
        double[] sorted = Sorted.copy(x);
        double step = Steps.smallest(sorted);
        if (step == 0) {
            return new RecordingQuality(List.of(Remark.doubt("constant", "all samples are equal", 0, 0)));
        }
        List<Remark> remarks = new ArrayList<>();
        checkSamples(wave, x, sorted, step, remarks);
        checkLength(wave, remarks);
        if (usableHertz != null && usableHertz < band.highestHertz()) {
            remarks.add(Remark.doubt("bandwidth", "sensor or mounting reach to " + Digits.compact(usableHertz, 4)
                    + " Hz, the band to " + Digits.compact(band.highestHertz(), 4) + " Hz", usableHertz,
                    band.highestHertz()));
        }
        new SpectralChecks(wave, band, mainsHertz).addTo(remarks);
        checkSteadiness(wave, x, remarks);
        return new RecordingQuality(remarks);
    }

    private static void checkSamples(Waveform wave, double[] x, double[] sorted, double step, List<Remark> remarks) {
        double lowest = sorted[0];
        double highest = sorted[sorted.length - 1];
        double steps = Require.finite("highest less lowest sample", highest - lowest) / step;
        if (steps < FEWEST_STEPS) {
            remarks.add(Remark.doubt("coarse-quantisation", "the whole swing is only " + Digits.significant(steps, 2)
                    + " steps of the converter", steps, FEWEST_STEPS));
        }
        HeldRuns held = new HeldRuns(x, lowest, highest, step);
        if (held.samples() > 0) {
            remarks.add(Remark.doubt("drop-out", String.format(Locale.ROOT,
                    "%d samples in runs of equal ones, first at %.4f s",
                    held.samples(), wave.startSeconds() + held.first() / wave.sampleRateHertz()), held.samples(), 0));
        }
        Rails rails = new Rails(held.samples() == 0 ? sorted : Sorted.copy(held.others(x)), step);
        if (rails.samples() > 0) {
            remarks.add(Remark.doubt("clipping", String.format(Locale.ROOT,
                    "%d samples lie at the largest or smallest value,"
                    + " %.0f times as many as beside it", rails.samples(), rails.ratio()), rails.ratio(), Rails.LIMIT));
        }
        int repeated = RepeatedBlocks.samples(x);
        if (repeated > 0) {
            remarks.add(Remark.doubt("repeated-block", repeated + " samples stand in the recording twice", repeated,
                    0));
        }
        int spikes = Spikes.count(x);
        if (spikes > 0) {
            remarks.add(Remark.doubt("spikes", spikes + " single samples stand far off both neighbours", spikes, 0));
        }
        double drift = Drift.ofMeanOverRms(x);
        if (drift > Drift.LIMIT) {
            remarks.add(Remark.doubt("bias-drift", "the mean moves by " + Digits.significant(drift, 2)
                    + " of the rms value", drift, Drift.LIMIT));
        }
    }

    private void checkLength(Waveform wave, List<Remark> remarks) {
        if (speed != null && !(wave.durationSeconds() * speed.hertz() >= FEWEST_REVOLUTIONS)) {
            double revolutions = wave.durationSeconds() * speed.hertz();
            remarks.add(Remark.doubt("too-short", "the recording holds " + Digits.significant(revolutions, 3)
                    + " revolutions", revolutions, FEWEST_REVOLUTIONS));
        }
        double periods = wave.durationSeconds() * band.lowestHertz();
        if (periods < FEWEST_REVOLUTIONS) {
            remarks.add(Remark.doubt("too-short", "the recording holds " + Digits.significant(periods, 3)
                    + " periods of the lower end of the band", periods, FEWEST_REVOLUTIONS));
        }
    }

    private void checkSteadiness(Waveform wave, double[] x, List<Remark> remarks) {
        if (wave.durationSeconds() * band.lowestHertz() < Steadiness.SEGMENTS) {
            return; // Segments shorter than a period of the lower end differ by where they cut it.
        }
        Optional<Steadiness> steadiness = Steadiness.ofLevel(wave, x);
        if (steadiness.isEmpty() || steadiness.get().steady()) {
            return;
        }
        double share = steadiness.get().longestSteady().map(Waveform::durationSeconds).orElse(0.0)
                / wave.durationSeconds();
        String text = "the level isn't steady: " + steadiness.get();
        remarks.add(share >= 0.5 ? Remark.note("partly-steady", text, share, 1)
                : Remark.doubt("unsteady", text, share, 0.5));
    }

    /** Returns the band and what else is known. */
    @Override
    public String toString() {
        return "recording check for " + band + (speed == null ? "" : ", " + speed);
    }
}
