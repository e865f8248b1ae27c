package dev.vibra.rotation;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.lines.HarmonicFamily;
import dev.vibra.lines.NoiseFloor;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumSettings;
import java.io.Serializable;
import java.util.Optional;

/**
 * Speed of rotation read from the vibration itself, where no tachometer was at hand.
 *
 * <p>Each speed of a range is scored by how far the lines at its first ten multiples stand above the noise floor (in
 * nepers, none counting more than {@value #MOST_PER_LINE}); the first must stand out itself. The confidence is the lead
 * of the best speed over the best one that differs by more than 2 % and two and a half lines, over the best: 1 without
 * any rival, 0 for two equals. Below
 * {@value #LEAST_CONFIDENCE}, or without a significant first multiple, no speed is given: a wrong one would be worth
 * less than none.
 *
 * <p>A range of less than an octave around the nominal speed keeps its half and its double out; within an octave, lines
 * of another shaft can still be taken for it.
 */
public final class SpeedEstimate implements Serializable {
    private static final long serialVersionUID = 1;
    private static final int MULTIPLES = 10;
    private static final double MOST_PER_LINE = 4;
    private static final double LEAST_CONFIDENCE = 0.2;
    private static final double RIVAL = 0.02;
    private static final double LOBE = 2.5;
    private static final double FALSE_ALARM = 1e-4;
    private static final double LINES_PER_SPEED = 40;

    private final RotationSpeed speed;
    private final double confidence;
    private final String reason;

    private SpeedEstimate(RotationSpeed speed, double confidence, String reason) {
        this.speed = speed;
        this.confidence = confidence;
        this.reason = reason;
    }

    /**
     * Looks for the speed of a machine.
     *
     * @param wave recording, at least 20 revolutions at the lowest speed of the range
     * @param range range of speeds in Hz (revolutions per second), from above 0 Hz, below a tenth of the sample rate
     * @return the estimate, with or without a speed
     * @throws IllegalArgumentException if the range is out of bounds or the recording too short
     */
    public static SpeedEstimate of(Waveform wave, Band range) {
        Require.positive("lowest frequency of the range", range.lowestHertz(), "Hz");
        if (!(range.highestHertz() < wave.sampleRateHertz() / 10)) {
            throw Require.failure("range", "below a tenth of the sample rate, " + wave.sampleRateHertz() / 10 + " Hz",
                    range.highestHertz());
        }
        Require.within("revolutions at the lowest speed", wave.durationSeconds() * range.lowestHertz(), 20,
                Double.MAX_VALUE, "");
        double resolution = Math.max(2 / wave.durationSeconds(), range.lowestHertz() / LINES_PER_SPEED);
        Spectrum spectrum = Spectrum.of(wave, SpectrumSettings.withDefaults().withResolution(resolution));
        double width = Math.min(40 * spectrum.resolutionHertz(), spectrum.frequencyHertz(spectrum.lines() - 1) / 2);
        return new Search(spectrum, NoiseFloor.of(spectrum, width), range).result();
    }

    /**
     * Returns the speed.
     *
     * @return the speed; empty if it is ambiguous or nothing stands out
     */
    public Optional<RotationSpeed> speed() {
        return Optional.ofNullable(speed);
    }

    /**
     * Returns how far the best speed leads.
     *
     * @return confidence, 0 to 1
     */
    public double confidence() {
        return confidence;
    }

    /**
     * Returns what the estimate rests on, or why there is none.
     *
     * @return reason in words
     */
    public String reason() {
        return reason;
    }

    /** Returns speed and confidence, or the reason why there is no speed. */
    @Override
    public String toString() {
        return speed == null ? "speed not determined: " + reason
                : speed + ", confidence " + Digits.significant(confidence, 2);
    }

    /** Scores the speeds of a range. */
    private static final class Search {
        private final Spectrum spectrum;
        private final NoiseFloor floor;
        private final double[] speeds;
        private final double[] scores;

        Search(Spectrum spectrum, NoiseFloor floor, Band range) {
            this.spectrum = spectrum;
            this.floor = floor;
            // Fine enough that the tenth multiple moves by no more than a line from one speed to the next.
            double step = spectrum.resolutionHertz() / MULTIPLES;
            speeds = new double[(int) Math.floor(range.widthHertz() / step) + 1];
            scores = new double[speeds.length];
            for (int i = 0; i < speeds.length; i++) {
                speeds[i] = range.lowestHertz() + i * step;
                scores[i] = score(speeds[i]);
            }
        }

        private double score(double hertz) {
            double sum = 0;
            for (int n = 1; n <= MULTIPLES && n * hertz < spectrum.frequencyHertz(spectrum.lines() - 2); n++) {
                int line = (int) Math.rint(n * hertz / spectrum.resolutionHertz());
                double rms = spectrum.amplitude(line, Detector.RMS);
                double ratio = Math.log(rms / floor.rms(n * hertz));
                double counted = ratio > 0 ? Math.min(ratio, MOST_PER_LINE) : 0;
                if (n == 1 && counted == 0) {
                    return 0;
                }
                sum += counted;
            }
            return sum;
        }

        SpeedEstimate result() {
            int best = 0;
            for (int i = 0; i < scores.length; i++) {
                best = scores[i] > scores[best] ? i : best;
            }
            HarmonicFamily family = HarmonicFamily.of(spectrum, floor, speeds[best], 3,
                    spectrum.resolutionHertz() / speeds[best], FALSE_ALARM);
            if (scores[best] == 0 || family.members().isEmpty() || family.members().get(0).number() != 1) {
                return new SpeedEstimate(null, 0, "no line in the range stands out of the noise");
            }
            // Within its main lobe a line is no rival of itself.
            double apart = Math.max(RIVAL * speeds[best], LOBE * spectrum.resolutionHertz());
            double rival = 0;
            for (int i = 0; i < scores.length; i++) {
                if (Math.abs(speeds[i] - speeds[best]) > apart) {
                    rival = Math.max(rival, scores[i]);
                }
            }
            double confidence = 1 - rival / scores[best];
            if (confidence < LEAST_CONFIDENCE) {
                return new SpeedEstimate(null, confidence, "another speed of the range fits nearly as well, confidence "
                        + Digits.significant(confidence, 2));
            }
            return new SpeedEstimate(RotationSpeed.ofHertz(family.fundamentalHertz()), confidence, family.toString());
        }
    }
}
