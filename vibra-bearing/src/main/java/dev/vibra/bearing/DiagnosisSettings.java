package dev.vibra.bearing;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * What an envelope diagnosis is asked to do; immutable, begun with {@link #withDefaults()}.
 *
 * <table>
 * <caption>Defaults</caption>
 * <tr><th>setting</th><th>default</th><th>why</th></tr>
 * <tr><td>band</td><td>none: octaves in half-octave steps below 1/2.56 of the sample rate, each at least four times as
 *     wide as the highest rate of the bearing</td><td>the ringing resonance isn't known beforehand; all are tried and
 *     the probabilities corrected for it. 2.56: common practice, no source</td></tr>
 * <tr><td>frequency tolerance</td><td>2 %</td><td>slip and contact angle under load: 1–2 % (Randall and Antoni
 *     2011)</td></tr>
 * <tr><td>speed tolerance</td><td>1 %</td><td>slip of an induction motor about its nominal speed; common practice, no
 *     source</td></tr>
 * <tr><td>harmonics</td><td>5</td><td>common practice, no source</td></tr>
 * <tr><td>false alarm probability</td><td>0.001 a diagnosis</td><td>chance that stationary noise makes any element of
 *     the bearing significant; common practice, no source</td></tr>
 * <tr><td>present depth</td><td>1/3</td><td>impacts with the share s of the power in the band read up to 2s: at least
 *     one sixth of the power beats at the rate of the element; common practice, no source</td></tr>
 * <tr><td>absent depth</td><td>0.2</td><td>the same with one tenth of the power; half of it counts as a sign; common
 *     practice, no source</td></tr>
 * <tr><td>revolutions a block</td><td>100</td><td>lines a hundredth of the shaft speed apart tell harmonics of the
 *     bearing from those of the shaft</td></tr>
 * <tr><td>other rates</td><td>none</td><td>gears, belts and other shafts aren't known to a bearing</td></tr>
 * </table>
 */
public final class DiagnosisSettings implements Serializable {
    private static final long serialVersionUID = 1;
    private static final DiagnosisSettings DEFAULTS = new DiagnosisSettings(new Draft());

    private final Band band;
    private final double frequencyTolerance;
    private final double speedTolerance;
    private final int harmonics;
    private final double falseAlarmProbability;
    private final double presentDepth;
    private final double absentDepth;
    private final double revolutionsPerBlock;
    private final List<Double> otherRatesHertz;

    private DiagnosisSettings(Draft draft) {
        band = draft.band;
        frequencyTolerance = Require.within("frequencyTolerance", draft.frequencyTolerance, 1e-4, 0.05, "");
        speedTolerance = Require.within("speedTolerance", draft.speedTolerance, 0, 0.05, "");
        harmonics = (int) Require.within("harmonics", draft.harmonics, 2, 20, "");
        falseAlarmProbability = Require.within("falseAlarmProbability", draft.falseAlarmProbability, 1e-12, 0.1, "");
        presentDepth = Require.within("presentDepth", draft.presentDepth, 0.01, 2, "");
        absentDepth = Require.within("absentDepth", draft.absentDepth, 0, 2, "");
        revolutionsPerBlock = Require.within("revolutionsPerBlock", draft.revolutionsPerBlock,
                BearingDiagnosis.FEWEST_REVOLUTIONS, 1e6, "");
        otherRatesHertz = List.copyOf(draft.otherRatesHertz);
        for (double rate : otherRatesHertz) {
            Require.positive("otherRatesHertz", rate, "Hz");
        }
        if (!(absentDepth <= presentDepth)) {
            throw Require.failure("absentDepth", "at most presentDepth, " + presentDepth, absentDepth);
        }
    }

    /** What becomes settings once one of it is changed; begins with the defaults. */
    private static final class Draft {
        private Band band;
        private double frequencyTolerance = 0.02;
        private double speedTolerance = 0.01;
        private int harmonics = 5;
        private double falseAlarmProbability = 1e-3;
        private double presentDepth = 1.0 / 3;
        private double absentDepth = 0.2;
        private double revolutionsPerBlock = 100;
        private List<Double> otherRatesHertz = List.of();
    }

    private DiagnosisSettings with(Consumer<Draft> change) {
        Draft draft = new Draft();
        draft.band = band;
        draft.frequencyTolerance = frequencyTolerance;
        draft.speedTolerance = speedTolerance;
        draft.harmonics = harmonics;
        draft.falseAlarmProbability = falseAlarmProbability;
        draft.presentDepth = presentDepth;
        draft.absentDepth = absentDepth;
        draft.revolutionsPerBlock = revolutionsPerBlock;
        draft.otherRatesHertz = otherRatesHertz;
        change.accept(draft);
        return new DiagnosisSettings(draft);
    }

    /**
     * Returns the defaults of the table above.
     *
     * @return the settings
     */
    public static DiagnosisSettings withDefaults() {
        return DEFAULTS;
    }

    /**
     * Returns these settings with a band to take the envelope of, in place of the candidates.
     *
     * @param newBand band that holds a ringing resonance
     * @return the settings
     */
    public DiagnosisSettings withBand(Band newBand) {
        Objects.requireNonNull(newBand, "band");
        return with(draft -> draft.band = newBand);
    }

    /**
     * Returns these settings with another window in which an element's rate is searched.
     *
     * @param share half width of the window over the expected rate, 0.0001 to 0.05; covers slip and error of speed
     *     together
     * @return the settings
     * @throws IllegalArgumentException if the share is out of range
     */
    public DiagnosisSettings withFrequencyTolerance(double share) {
        return with(draft -> draft.frequencyTolerance = share);
    }

    /**
     * Returns these settings with another window in which the speed of a ring is refined.
     *
     * @param share half width of the window over the given speed, 0 to 0.05
     * @return the settings
     * @throws IllegalArgumentException if the share is out of range
     */
    public DiagnosisSettings withSpeedTolerance(double share) {
        return with(draft -> draft.speedTolerance = share);
    }

    /**
     * Returns these settings with another number of harmonics.
     *
     * @param number harmonics looked at, the fundamental included, 2 to 20
     * @return the settings
     * @throws IllegalArgumentException if the number is out of range
     */
    public DiagnosisSettings withHarmonics(int number) {
        return with(draft -> draft.harmonics = number);
    }

    /**
     * Returns these settings with another false alarm probability.
     *
     * @param probability chance that noise makes any element significant in one diagnosis, 1e-12 to 0.1
     * @return the settings
     * @throws IllegalArgumentException if the probability is out of range
     */
    public DiagnosisSettings withFalseAlarmProbability(double probability) {
        return with(draft -> draft.falseAlarmProbability = probability);
    }

    /**
     * Returns these settings with another depth that two harmonics must reach for {@code present}.
     *
     * @param depth depth of pulsation, 0.01 to 2, at least the absent depth
     * @return the settings
     * @throws IllegalArgumentException if the depth is out of range
     */
    public DiagnosisSettings withPresentDepth(double depth) {
        return with(draft -> draft.presentDepth = depth);
    }

    /**
     * Returns these settings with another depth that a recording must be able to show for {@code absent}. A pulsation
     * half as deep already counts as a sign of a defect, and keeps the verdict from being {@code absent}.
     *
     * @param depth depth of pulsation, 0 (never absent) to 2, at most the present depth
     * @return the settings
     * @throws IllegalArgumentException if the depth is out of range
     */
    public DiagnosisSettings withAbsentDepth(double depth) {
        return with(draft -> draft.absentDepth = depth);
    }

    /**
     * Returns these settings with another block length.
     *
     * @param revolutions revolutions of the shaft in one block, 50 to 1,000,000; fewer for a shaft that wanders
     * @return the settings
     * @throws IllegalArgumentException if the number is out of range
     */
    public DiagnosisSettings withRevolutionsPerBlock(double revolutions) {
        return with(draft -> draft.revolutionsPerBlock = revolutions);
    }

    /**
     * Returns these settings with rates of other parts of the machine, such as other shafts, belts and gear meshes:
     * lines at their multiples count for no element.
     *
     * @param hertz rates in Hz, each finite, above zero; they replace those given before
     * @return the settings
     * @throws IllegalArgumentException if a rate is out of range
     */
    public DiagnosisSettings withOtherRates(double... hertz) {
        List<Double> rates = Arrays.stream(hertz).boxed().toList();
        return with(draft -> draft.otherRatesHertz = rates);
    }

    /**
     * Returns the band to take the envelope of.
     *
     * @return the band; empty if candidates are tried
     */
    public Optional<Band> band() {
        return Optional.ofNullable(band);
    }

    /**
     * Returns the half width of the search window.
     *
     * @return half width over the expected rate
     */
    public double frequencyTolerance() {
        return frequencyTolerance;
    }

    /**
     * Returns the half width of the window in which a ring's speed is refined.
     *
     * @return half width over the given speed
     */
    public double speedTolerance() {
        return speedTolerance;
    }

    /**
     * Returns the number of harmonics looked at.
     *
     * @return harmonics, the fundamental included
     */
    public int harmonics() {
        return harmonics;
    }

    /**
     * Returns the chance that noise makes any element significant.
     *
     * @return probability of one diagnosis
     */
    public double falseAlarmProbability() {
        return falseAlarmProbability;
    }

    /**
     * Returns the depth that two harmonics must reach for {@code present}.
     *
     * @return depth of pulsation
     */
    public double presentDepth() {
        return presentDepth;
    }

    /**
     * Returns the depth that a recording must be able to show for {@code absent}.
     *
     * @return depth of pulsation
     */
    public double absentDepth() {
        return absentDepth;
    }

    /**
     * Returns the block length.
     *
     * @return revolutions of the shaft
     */
    public double revolutionsPerBlock() {
        return revolutionsPerBlock;
    }

    /**
     * Returns the rates of other parts of the machine.
     *
     * @return rates in Hz, unmodifiable
     */
    public List<Double> otherRatesHertz() {
        return otherRatesHertz;
    }

    /** Depth from which on a significant pulsation is a sign of a defect. */
    double signDepth() {
        return 0.5 * absentDepth;
    }

    /** Returns the settings that a verdict hangs on, in one line. */
    @Override
    public String toString() {
        return (band == null ? "candidate bands" : band) + ", ±" + Digits.compact(100 * frequencyTolerance, 3) + " %, "
                + harmonics + " harmonics, false alarm " + Digits.significant(falseAlarmProbability, 2)
                + ", present from depth " + Digits.significant(presentDepth, 2) + ", absent if "
                + Digits.significant(absentDepth, 2) + " would have been found";
    }
}
