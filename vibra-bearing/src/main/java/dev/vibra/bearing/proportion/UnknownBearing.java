package dev.vibra.bearing.proportion;

import dev.vibra.internal.Digits;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Pulsations of a recording whose bearing isn't known, and the bearings that would explain them.
 *
 * <pre>{@code
 * UnknownBearing.of(wave, RotationSpeed.ofRevolutionsPerMinute(1797))
 * // 3.567x: outer race of 9 or 10 elements, inner race of 6; a candidate is no verdict
 * }</pre>
 *
 * <p>The envelope spectra of octaves in half-octave steps are searched for families of harmonics at any rate, the most
 * improbable in noise first. What is a multiple of the speed, a part of it whose other lines stand, a given rate or
 * twice a line frequency is set aside. {@link Proportions} lists the bearings that would explain the rest.
 *
 * <p>Which element it is, only the geometry of the bearing that is fitted can say.
 *
 * @see "R. B. Randall, J. Antoni, Rolling element bearing diagnostics: a tutorial, Mechanical Systems and Signal
 *     Processing 25 (2011) 485-520: squared envelope, slip"
 */
public final class UnknownBearing implements Serializable {
    /** Revolutions below which lines of bearing and shaft can't be told apart; common practice, no source. */
    public static final int FEWEST_REVOLUTIONS = 20;

    private static final long serialVersionUID = 1;
    private static final int PRINTED = 3;

    private final RotationSpeed speed;
    private final List<SeenPulsation> pulsations;
    private final List<RateElsewhere> elsewhere;
    private final List<Proportion> candidates;
    private final String obstacle;

    UnknownBearing(RotationSpeed speed, List<SeenPulsation> pulsations, List<RateElsewhere> elsewhere,
            List<Proportion> candidates, String obstacle) {
        this.speed = Objects.requireNonNull(speed, "speed");
        this.pulsations = List.copyOf(pulsations);
        this.elsewhere = List.copyOf(elsewhere);
        this.candidates = List.copyOf(candidates);
        this.obstacle = obstacle;
    }

    private Object readResolve() {
        return new UnknownBearing(speed, pulsations, elsewhere, candidates, obstacle);
    }

    /**
     * Searches a recording with the defaults of {@link UnknownBearingSettings}.
     *
     * @param wave recording, best acceleration, of 20 revolutions or more, 100 to 300 do well
     * @param speed speed of rotation, to 1 %
     * @return what was found
     */
    public static UnknownBearing of(Waveform wave, RotationSpeed speed) {
        Objects.requireNonNull(speed, "speed");
        return of(Objects.requireNonNull(wave, "wave"), speed, UnknownBearingSettings.withDefaults());
    }

    /**
     * Searches a recording.
     *
     * @param wave recording, best acceleration, of 20 revolutions or more, 100 to 300 do well
     * @param speed speed of rotation
     * @param settings settings
     * @return what was found
     */
    public static UnknownBearing of(Waveform wave, RotationSpeed speed, UnknownBearingSettings settings) {
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(wave, "wave");
        return new UnknownBearingRun(wave, speed, Objects.requireNonNull(settings, "settings")).result();
    }

    /**
     * Returns the speed, refined by the shaft's own lines where they stand.
     *
     * @return speed of rotation
     */
    public RotationSpeed speed() {
        return speed;
    }

    /**
     * Returns the pulsations without another origin: those of the depth wanted, beside them those half as deep and the
     * faint ones of a cage.
     *
     * @return pulsations, the one that noise makes least likely first
     */
    public List<SeenPulsation> pulsations() {
        return pulsations;
    }

    /**
     * Returns the significant pulsations that something else explains.
     *
     * @return pulsations with their origin
     */
    public List<RateElsewhere> elsewhere() {
        return elsewhere;
    }

    /**
     * Returns the bearings that would explain the first pulsation.
     *
     * @return candidates, those with most in their favour first; empty if no pulsation is deep enough or none fits
     */
    public List<Proportion> candidates() {
        return candidates;
    }

    /**
     * Returns the candidates that nothing decisive parts from the first: what to name if the others are left out.
     *
     * @return candidates, the first included; empty if there is none
     */
    public List<Proportion> likely() {
        return candidates.stream().filter(one -> one.weight() >= candidates.get(0).weight() - Proportion.DECISIVE)
                .toList();
    }

    /**
     * Returns why there was no search.
     *
     * @return reason; empty if there was one
     */
    public Optional<String> obstacle() {
        return Optional.ofNullable(obstacle);
    }

    /**
     * Returns what to look up or to measure next.
     *
     * @return steps, the cheapest first; empty if there is no candidate
     */
    public List<String> decidedBy() {
        List<String> steps = new ArrayList<>();
        if (candidates.isEmpty()) {
            return steps;
        }
        steps.add("number and diameters of the elements of the bearing that is fitted");
        boolean cageSeen = candidates.stream().flatMap(one -> one.clues().stream()).anyMatch(clue ->
                clue == ProportionClue.CAGE_AGREES || clue == ProportionClue.CAGE_DISAGREES);
        List<Proportion> fixed = likely().stream().filter(one -> one.fewest() == one.most()).limit(PRINTED).toList();
        if (!cageSeen && fixed.size() > 1) {
            steps.add(fixed.stream().map(one -> String.format(Locale.ROOT, "%.3fx for %s of %s", one.cageOrder(),
                    one.element(), one.number())).collect(Collectors.joining(", ",
                    "a line at the rate of the cage in a longer recording: ", "")));
        }
        steps.add("the same recording with neighbouring machines at rest");
        return steps;
    }

    /** Returns the rate and the likely candidates, as in {@code 3.567x: outer race of 9 or 10 elements}. */
    @Override
    public String toString() {
        if (obstacle != null) {
            return "not searched: " + obstacle;
        }
        if (candidates.isEmpty()) {
            return "no pulsation that a bearing would explain";
        }
        String order = Digits.significant(candidates.get(0).explains().stream().mapToDouble(ObservedRate::order)
                .findFirst().orElseGet(() -> pulsations.get(0).rate().order()), 4);
        return order + "x: " + Candidates.inWords(likely());
    }

    /**
     * Returns pulsation, first candidates with what speaks for and against each, and what would decide.
     *
     * @return about five lines
     */
    public String describe() {
        List<String> lines = new ArrayList<>();
        lines.add(this + (candidates.isEmpty() ? "" : "; a candidate is no verdict"));
        if (!candidates.isEmpty()) {
            lines.add("seen: " + pulsations.stream().limit(2).map(SeenPulsation::toString)
                    .collect(Collectors.joining("; ")));
            candidates.stream().limit(PRINTED).map(Proportion::describe).forEach(lines::add);
            lines.add("decided by: " + String.join("; ", decidedBy()));
        }
        return String.join(System.lineSeparator(), lines);
    }
}
