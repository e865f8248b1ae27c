package dev.vibra.rotation;

import dev.vibra.internal.Require;
import dev.vibra.lines.NoiseFloor;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumSettings;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Speed of rotation read from the lines of a vibration recording, where no tachometer was at hand. Immutable.
 *
 * <pre>{@code
 * SpeedEstimate.of(wave).speed()                                             // nothing known
 * SpeedEstimate.of(wave, SpeedKnowledge.none().withNominal(plate))           // within 10 % of the plate
 * SpeedEstimate.of(wave, SpeedKnowledge.none().withMains(60).withInductionMotor())
 * }</pre>
 *
 * <p>A speed is weighed by what it explains: lines at its first ten multiples against those that fall there by chance,
 * half orders weaker than the whole ones beside them, and lines as far apart as it is high (sidebands). Against it
 * speak a first multiple that is missing, odd multiples weaker than the even ones (it is half the speed then), and
 * lines left unexplained at which the shaft might turn as well. Lines at multiples of the mains count for nothing. The
 * weights are fitted to simulated machines; with what is known beforehand they give each speed its probability, the
 * {@linkplain #confidence() confidence}. It is calibrated on such machines, not on all that exist.
 *
 * <p>{@link #speed()} is given from a confidence of {@value #LEAST_CONFIDENCE} on, the lowest at which at most one in
 * two hundred of the simulated machines of which nothing is known gets a wrong speed; its standard uncertainty must be
 * at most 0.3 %, and a single line without multiples, half orders and sidebands is a candidate only, unless what is
 * known leaves a narrow range. Nor is it given where a line that it doesn't explain is more than four times the largest
 * one that it does.
 */
public final class SpeedEstimate implements Serializable {
    private static final long serialVersionUID = 2;
    static final double LEAST_CONFIDENCE = 0.94;
    private static final double LARGEST_UNCERTAINTY = 0.003;
    private static final int MOST_CANDIDATES = 5;
    private static final double FINEST_RESOLUTION = 0.1;
    private static final int FLOOR_LINES = 40;
    private static final int FEWEST_LINES = 64;

    private final SpeedKnowledge knowledge;
    private final List<SpeedCandidate> candidates;
    private final boolean sufficient;
    private final String reason;

    private SpeedEstimate(SpeedKnowledge knowledge, List<SpeedCandidate> candidates, boolean sufficient,
            String reason) {
        this.knowledge = Objects.requireNonNull(knowledge, "knowledge");
        this.candidates = List.copyOf(candidates);
        this.sufficient = sufficient && !candidates.isEmpty();
        this.reason = Objects.requireNonNull(reason, "reason");
    }

    private Object readResolve() {
        return new SpeedEstimate(knowledge, candidates, sufficient, reason);
    }

    /**
     * Looks for the speed of a machine of which nothing is known.
     *
     * @param wave recording of at least a few seconds
     * @return the estimate, with or without a speed
     */
    public static SpeedEstimate of(Waveform wave) {
        return of(Objects.requireNonNull(wave, "wave"), SpeedKnowledge.none());
    }

    /**
     * Looks for the speed of a machine.
     *
     * @param wave recording of at least a few seconds
     * @param knowledge what is known of the speed
     * @return the estimate, with or without a speed
     */
    public static SpeedEstimate of(Waveform wave, SpeedKnowledge knowledge) {
        Objects.requireNonNull(knowledge, "knowledge");
        return lines(Objects.requireNonNull(wave, "wave")).map(lines -> of(lines, knowledge)).orElseGet(() ->
                new SpeedEstimate(knowledge, List.of(), false,
                        "the recording is too short, " + wave.length() + " samples"));
    }

    /** The lines of a recording; empty if it is too short for a floor. */
    static Optional<LineSet> lines(Waveform wave) {
        double resolution = Math.max(2 / wave.durationSeconds(), FINEST_RESOLUTION);
        if (0.5 * wave.sampleRateHertz() < FEWEST_LINES * resolution) {
            return Optional.empty();
        }
        Spectrum spectrum = Spectrum.of(wave, SpectrumSettings.withDefaults().withResolution(resolution));
        return Optional.of(LineSet.of(spectrum, NoiseFloor.of(spectrum, FLOOR_LINES * spectrum.resolutionHertz())));
    }

    /**
     * Looks for the speed in a spectrum and its floor that were made already. Speeds below four lines are not looked
     * for. Best is a resolution of two lines over the duration of the recording, but no finer than 0.1 Hz, since
     * speeds wander; the Hann window; and a floor of 40 lines' width.
     *
     * @param spectrum spectrum with rms averaging
     * @param floor its noise floor
     * @param knowledge what is known of the speed
     * @return the estimate, with or without a speed
     * @throws IllegalArgumentException if the floor isn't that of the spectrum
     */
    public static SpeedEstimate of(Spectrum spectrum, NoiseFloor floor, SpeedKnowledge knowledge) {
        Objects.requireNonNull(spectrum, "spectrum");
        Require.count("number of lines of the floor", Objects.requireNonNull(floor, "floor").lines(), spectrum.lines(),
                spectrum.lines());
        return of(LineSet.of(spectrum, floor), Objects.requireNonNull(knowledge, "knowledge"));
    }

    static SpeedEstimate of(LineSet lines, SpeedKnowledge knowledge) {
        List<SpeedEvidence> evidence = SpeedCandidates.of(lines, knowledge);
        double[] odds = evidence.stream().mapToDouble(one -> Math.exp(SpeedCandidates.logOdds(one, knowledge)))
                .toArray();
        double all = 1;
        for (double one : odds) {
            all += one;
        }
        List<SpeedCandidate> candidates = new ArrayList<>();
        for (int i = 0; i < Math.min(MOST_CANDIDATES, odds.length); i++) {
            candidates.add(evidence.get(i).shaft().refined(odds[i] / all));
        }
        return evidence.isEmpty() ? new SpeedEstimate(knowledge, candidates, false, SpeedReason.none(lines, knowledge))
                : new SpeedEstimate(knowledge, candidates, suffices(candidates.get(0), evidence.get(0)),
                        SpeedReason.of(lines, evidence.get(0), candidates));
    }

    private static boolean suffices(SpeedCandidate best, SpeedEvidence evidence) {
        return best.confidence() >= LEAST_CONFIDENCE && isPrecise(best) && evidence.clue(SpeedClue.LONE) == 0
                && !evidence.leavesMost();
    }

    static boolean isPrecise(SpeedCandidate best) {
        return best.standardUncertaintyHertz() <= LARGEST_UNCERTAINTY * best.speed().hertz();
    }

    /** {@return the speed; empty where it isn't given, for the reason told} */
    public Optional<RotationSpeed> speed() {
        return sufficient ? Optional.of(candidates.get(0).speed()) : Optional.empty();
    }

    /** {@return probability that the shaft turns within 1 % of the best candidate, 0 to 1; 0 if there is none} */
    public double confidence() {
        return candidates.isEmpty() ? 0 : candidates.get(0).confidence();
    }

    /**
     * Returns the speeds that the lines may stand for. Their confidences add up to less than one; the rest is for a
     * shaft that none of them tells.
     *
     * @return up to five, the likeliest first
     */
    public List<SpeedCandidate> candidates() {
        return candidates;
    }

    /** {@return what was known beforehand} */
    public SpeedKnowledge knowledge() {
        return knowledge;
    }

    /**
     * Returns what the best candidate rests on and what speaks against it, or why there is none. Lines left unexplained
     * are compared, as velocity where a motion was measured, with the largest of its first four multiples.
     *
     * @return reason in words, without full stop
     */
    public String reason() {
        return reason;
    }

    /** Returns speed and confidence, or the reason why there is no speed. */
    @Override
    public String toString() {
        return speed().map(speed -> speed + ", confidence " + SpeedCandidate.printed(confidence()))
                .orElse("speed not determined: " + reason);
    }
}
