package dev.vibra.descriptor;

import dev.vibra.integration.BandLimitingChain;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.level.Moments;
import dev.vibra.lines.NoiseFloor;
import dev.vibra.machine.Rate;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.AngularWaveform;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.transform.RealTransform;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What numbers of one recording are made of: spectrum, noise floor, velocity and displacement, each made once, when it
 * is first asked for. A workspace: for one thread, not for keeping.
 */
public final class Signals {
    /**
     * Lines this close part the multiples of the slowest shafts; a longer block would smear what speed does within
     * it.
     */
    private static final double FINEST_RESOLUTION = 0.1;
    private static final int FEWEST_SAMPLES = 128;
    /** Wide against a line and its sidebands, narrow against a resonance; common practice, no source. */
    private static final double FLOOR_LINES = 40;
    private static final double PERIODS_OF_INTEGRATION = 9;
    private static final int SAMPLES_PER_REVOLUTION = 64;
    /** Two whole turns lie within four, wherever they begin. */
    static final int FEWEST_TURNS = 4;

    private final Waveform wave;
    private final RotationSpeed speed;
    private final double speedTolerance;
    private final ShaftAngle angle;
    private final Made made;
    private List<NamedLine> shaftLines;
    private AngularWaveform turns;

    private Signals(Waveform wave, RotationSpeed speed, double speedTolerance, ShaftAngle angle, Made made) {
        this.wave = Objects.requireNonNull(wave, "wave");
        this.speed = speed;
        this.speedTolerance = speedTolerance;
        this.angle = angle;
        this.made = made;
    }

    /** What has been made so far; none of it depends on the speed. */
    private static final class Made {
        private Moments moments;
        private Spectrum spectrum;
        private Spectrum velocity;
        private NoiseFloor floor;
        private LineReader reader;
        private LineReader fineReader;
        private final Map<String, Waveform> chained = new HashMap<>();
    }

    /**
     * Takes a recording.
     *
     * @param wave a motion, sound and steady as far as the caller cares
     * @return its signals, speed unknown
     */
    public static Signals of(Waveform wave) {
        return new Signals(wave, null, 0, null, new Made());
    }

    /**
     * Tells the speed of the shaft.
     *
     * @param newSpeed speed during the recording
     * @param tolerance share of it by which it may be off, 0 to 0.1; the line at the speed is looked for within it
     * @return the same signals with it
     */
    public Signals at(RotationSpeed newSpeed, double tolerance) {
        Objects.requireNonNull(newSpeed, "newSpeed");
        return new Signals(wave, newSpeed, Require.within("tolerance", tolerance, 0, 0.1, ""), angle, made);
    }

    /**
     * Tells the angle of the shaft by a tachometer, and so its speed.
     *
     * @param newAngle angle on the time scale of the recording
     * @return the same signals with it
     */
    public Signals at(ShaftAngle newAngle) {
        Objects.requireNonNull(newAngle, "newAngle");
        return new Signals(wave, newAngle.meanSpeed(), 0, newAngle, made);
    }

    /** {@return the recording} */
    public Waveform wave() {
        return wave;
    }

    /** {@return speed of the shaft, if known} */
    public Optional<RotationSpeed> speed() {
        return Optional.ofNullable(speed);
    }

    /** {@return share of the speed by which it may be off} */
    double speedTolerance() {
        return speedTolerance;
    }

    /** {@return angle of the shaft, if a tachometer told it} */
    public Optional<ShaftAngle> angle() {
        return Optional.ofNullable(angle);
    }

    /**
     * {@return whole turns of the shaft at 64 samples each, from the mark of the tachometer on; empty without one, or
     * where recording and pulses have fewer than four turns in common}
     */
    public Optional<AngularWaveform> turns() {
        if (turns == null && angle != null && angle.revolutionsWithin(wave) >= FEWEST_TURNS) {
            turns = AngularWaveform.of(wave, angle, SAMPLES_PER_REVOLUTION);
        }
        return Optional.ofNullable(turns);
    }

    /** {@return statistics of the samples} */
    public Moments moments() {
        if (made.moments == null) {
            made.moments = wave.moments();
        }
        return made.moments;
    }

    /** {@return true if the recording is long enough for a spectrum} */
    public boolean hasSpectrum() {
        return wave.length() >= FEWEST_SAMPLES;
    }

    /**
     * Makes the spectrum of the recording as it is: Hann window, half overlap, lines of two over the duration but not
     * finer than 0.1 Hz.
     *
     * @return the spectrum
     * @throws IllegalStateException if there is none, see {@link #hasSpectrum()}
     */
    public Spectrum spectrum() {
        requireSpectrum();
        if (made.spectrum == null) {
            double resolution = Math.max(2 / wave.durationSeconds(), FINEST_RESOLUTION);
            made.spectrum = Spectrum.of(wave, SpectrumSettings.withDefaults().withResolution(resolution));
        }
        return made.spectrum;
    }

    private void requireSpectrum() {
        if (!hasSpectrum()) {
            throw new IllegalStateException("recording must have at least " + FEWEST_SAMPLES + " samples: "
                    + wave.length());
        }
    }

    /** {@return the spectrum read as velocity} */
    public Spectrum velocitySpectrum() {
        if (made.velocity == null) {
            made.velocity = spectrum().velocity();
        }
        return made.velocity;
    }

    /** {@return noise under the lines of {@link #spectrum()}} */
    public NoiseFloor floor() {
        if (made.floor == null) {
            made.floor = floorOf(spectrum());
        }
        return made.floor;
    }

    private static NoiseFloor floorOf(Spectrum spectrum) {
        double end = spectrum.frequencyHertz(spectrum.lines() - 1);
        return NoiseFloor.of(spectrum, Math.min(FLOOR_LINES * spectrum.resolutionHertz(), end / 2));
    }

    /**
     * Reads lines of {@link #velocitySpectrum()}.
     *
     * @return the reader
     * @throws IllegalStateException if there is no spectrum, see {@link #hasSpectrum()}
     */
    public LineReader reader() {
        if (made.reader == null) {
            made.reader = new LineReader(wave.quantity(), velocitySpectrum(), floor());
        }
        return made.reader;
    }

    /**
     * Reads lines as fine as the whole recording gives them: one block under a Hann window, its lines one over the
     * duration apart. Up to a tenth of the recording is left out at its ends, where the window weighs least, so that
     * the transform is a fast one.
     *
     * @return the reader
     * @throws IllegalStateException if there is no spectrum, see {@link #hasSpectrum()}
     */
    public LineReader fineReader() {
        if (made.fineReader == null) {
            requireSpectrum();
            int length = RealTransform.fastLength(wave.length());
            Spectrum fine = Spectrum.of(wave.part((wave.length() - length) / 2, length), SpectrumSettings.withDefaults()
                    .withResolution(wave.sampleRateHertz() / length));
            made.fineReader = new LineReader(wave.quantity(), fine.velocity(), floorOf(fine));
        }
        return made.fineReader;
    }

    /** {@return the multiples of the shaft speed, found or not; empty without speed or spectrum} */
    public List<NamedLine> shaftLines() {
        if (shaftLines == null) {
            shaftLines = speed == null || !hasSpectrum() ? List.of() : new LineSearch(this).shaftLines();
        }
        return shaftLines;
    }

    /**
     * Looks for the rates of a machine.
     *
     * @param rates rates at {@link #speed()}
     * @return their multiples, found or not, those of the point's shaft first; empty without speed or spectrum
     */
    public List<NamedLine> lines(List<Rate> rates) {
        Require.copy("rates", rates);
        return shaftLines().isEmpty() ? List.of() : new LineSearch(this).lines(rates);
    }

    /**
     * Picks the largest lines of the velocity spectrum.
     *
     * @param known lines that have names
     * @return at most eight lines that stand out of the noise, the largest first; empty without spectrum
     */
    public List<DominantLine> dominantLines(List<NamedLine> known) {
        Require.copy("known", known);
        return hasSpectrum() ? new LineSearch(this).dominant(known) : List.of();
    }

    /**
     * Says why a motion can't be measured through the chain of ISO 2954 in a band.
     *
     * @param quantity motion asked for
     * @param band band asked for
     * @return the reason; empty if it can be measured
     */
    public Optional<String> chainObstacle(Quantity quantity, Band band) {
        Objects.requireNonNull(quantity, "quantity");
        Objects.requireNonNull(band, "band");
        if (wave.quantity().integrationsTo(quantity) < 0) {
            return Optional.of("the recording measures " + wave.quantity() + ", not " + quantity);
        }
        if (!(band.lowestHertz() > 0)) {
            return Optional.of("the band " + band + " has no lower end");
        }
        if (!(band.highestHertz() <= 0.4 * wave.sampleRateHertz())) {
            return Optional.of("the band " + band + " asks for a sample rate of at least "
                    + Digits.compact(2.5 * band.highestHertz(), 5) + " Hz: "
                    + Digits.compact(wave.sampleRateHertz(), 6) + " Hz");
        }
        int settling = BandLimitingChain.of(wave.quantity(), quantity, band, wave.sampleRateHertz()).settlingSamples();
        return tooShort(2.0 * settling / wave.sampleRateHertz(), band);
    }

    /**
     * Says why a motion can't be had in a band without phase shift.
     *
     * @param band band asked for
     * @return the reason; empty if {@link Waveform#displacement(Band)} and its like can be asked
     */
    public Optional<String> integrationObstacle(Band band) {
        Objects.requireNonNull(band, "band");
        if (!(band.highestHertz() <= 0.5 * wave.sampleRateHertz())) {
            return Optional.of("the band " + band + " asks for a sample rate of at least "
                    + Digits.compact(2 * band.highestHertz(), 5) + " Hz: "
                    + Digits.compact(wave.sampleRateHertz(), 6) + " Hz");
        }
        return tooShort(PERIODS_OF_INTEGRATION / band.lowestHertz(), band);
    }

    private Optional<String> tooShort(double neededSeconds, Band band) {
        return wave.durationSeconds() >= neededSeconds ? Optional.empty()
                : Optional.of("the band " + band + " asks for at least " + Digits.significant(neededSeconds, 3)
                        + " s: the recording has " + Digits.significant(wave.durationSeconds(), 3) + " s");
    }

    /**
     * Measures a motion as the severity standards mean it, through the chain of ISO 2954.
     *
     * @param quantity motion
     * @param band band
     * @return output of the chain after its start-up
     * @throws IllegalArgumentException if there is an obstacle, see {@link #chainObstacle}
     */
    public Waveform throughChain(Quantity quantity, Band band) {
        Objects.requireNonNull(quantity, "quantity");
        Objects.requireNonNull(band, "band");
        return made.chained.computeIfAbsent(quantity + " " + band, key -> wave.throughSeverityChain(quantity, band));
    }

    /** Returns the recording and the speed. */
    @Override
    public String toString() {
        return "signals of " + wave + (speed == null ? "" : " at " + speed);
    }
}
