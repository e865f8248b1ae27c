package dev.vibra.bearing;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

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
 * <tr><td>absent depth</td><td>0.08</td><td>impacts with a twenty-fifth of the power, 14 dB below the rest, read so
 *     much; of simulated defects above that fewer than one in 200 is called absent</td></tr>
 * <tr><td>revolutions a block</td><td>about 300</td><td>lines so near to each other tell harmonics of the bearing from
 *     those of the shaft; the recording is cut into one, two, four, eight … such blocks side by side, whichever comes
 *     nearest</td></tr>
 * <tr><td>other rates</td><td>none</td><td>gears, belts and other shafts aren't known to a bearing</td></tr>
 * </table>
 *
 * @param bands bands to take the envelope of; empty for the candidates of the table
 * @param frequencyTolerance half width of the window in which the rate of an element is searched, over the rate, 0.0001
 *     to 0.05
 * @param speedTolerance half width of the window in which the speed of a ring is refined, over the speed, 0 to 0.05
 * @param harmonics harmonics looked at, the fundamental included, 2 to 20
 * @param falseAlarmProbability chance that noise makes any element significant in one diagnosis, 1e-12 to 0.1
 * @param presentDepth depth of pulsation that two harmonics must reach for {@code present}, 0.01 to 2
 * @param absentDepth depth that a recording must be able to show for {@code absent}, 0 to the present depth
 * @param revolutionsPerBlock revolutions of the shaft in one block, 20 to 1,000,000
 * @param otherRatesHertz rates of other parts of the machine in Hz, each finite, above zero
 */
public record DiagnosisSettings(List<Band> bands, double frequencyTolerance, double speedTolerance, int harmonics,
        double falseAlarmProbability, double presentDepth, double absentDepth, double revolutionsPerBlock,
        List<Double> otherRatesHertz) implements Serializable {
    private static final long serialVersionUID = 1;
    private static final DiagnosisSettings DEFAULTS = new DiagnosisSettings(List.of(), 0.02, 0.01, 5, 1e-3, 1.0 / 3,
            0.08, 300, List.of());

    /**
     * Checks the values and copies the lists.
     *
     * @param bands see the record
     * @param frequencyTolerance see the record
     * @param speedTolerance see the record
     * @param harmonics see the record
     * @param falseAlarmProbability see the record
     * @param presentDepth see the record
     * @param absentDepth see the record
     * @param revolutionsPerBlock see the record
     * @param otherRatesHertz see the record
     * @throws IllegalArgumentException if a value is out of range
     */
    public DiagnosisSettings {
        bands = Require.copy("bands", bands);
        Require.within("frequencyTolerance", frequencyTolerance, 1e-4, 0.05, "");
        Require.within("speedTolerance", speedTolerance, 0, 0.05, "");
        Require.within("harmonics", harmonics, 2, 20, "");
        Require.within("falseAlarmProbability", falseAlarmProbability, 1e-12, 0.1, "");
        Require.within("presentDepth", presentDepth, 0.01, 2, "");
        Require.within("absentDepth", absentDepth, 0, 2, "");
        Require.within("revolutionsPerBlock", revolutionsPerBlock, BearingDiagnosis.FEWEST_REVOLUTIONS, 1e6, "");
        otherRatesHertz = Require.copy("otherRatesHertz", otherRatesHertz);
        otherRatesHertz.forEach(rate -> Require.positive("otherRatesHertz", rate, "Hz"));
        if (!(absentDepth <= presentDepth)) {
            throw Require.failure("absentDepth", "at most presentDepth, " + presentDepth, absentDepth);
        }
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
        Objects.requireNonNull(newBand, "newBand");
        return new DiagnosisSettings(List.of(newBand), frequencyTolerance, speedTolerance, harmonics,
                falseAlarmProbability, presentDepth, absentDepth, revolutionsPerBlock, otherRatesHertz);
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
        return new DiagnosisSettings(bands, share, speedTolerance, harmonics, falseAlarmProbability, presentDepth,
                absentDepth, revolutionsPerBlock, otherRatesHertz);
    }

    /**
     * Returns these settings with another window in which the speed of a ring is refined.
     *
     * @param share half width of the window over the given speed, 0 to 0.05
     * @return the settings
     * @throws IllegalArgumentException if the share is out of range
     */
    public DiagnosisSettings withSpeedTolerance(double share) {
        return new DiagnosisSettings(bands, frequencyTolerance, share, harmonics, falseAlarmProbability, presentDepth,
                absentDepth, revolutionsPerBlock, otherRatesHertz);
    }

    /**
     * Returns these settings with another number of harmonics.
     *
     * @param number harmonics looked at, the fundamental included, 2 to 20
     * @return the settings
     * @throws IllegalArgumentException if the number is out of range
     */
    public DiagnosisSettings withHarmonics(int number) {
        return new DiagnosisSettings(bands, frequencyTolerance, speedTolerance, number, falseAlarmProbability,
                presentDepth, absentDepth, revolutionsPerBlock, otherRatesHertz);
    }

    /**
     * Returns these settings with another false alarm probability.
     *
     * @param probability chance that noise makes any element significant in one diagnosis, 1e-12 to 0.1
     * @return the settings
     * @throws IllegalArgumentException if the probability is out of range
     */
    public DiagnosisSettings withFalseAlarmProbability(double probability) {
        return new DiagnosisSettings(bands, frequencyTolerance, speedTolerance, harmonics, probability, presentDepth,
                absentDepth, revolutionsPerBlock, otherRatesHertz);
    }

    /**
     * Returns these settings with another depth that two harmonics must reach for {@code present}.
     *
     * @param depth depth of pulsation, 0.01 to 2, at least the absent depth
     * @return the settings
     * @throws IllegalArgumentException if the depth is out of range
     */
    public DiagnosisSettings withPresentDepth(double depth) {
        return new DiagnosisSettings(bands, frequencyTolerance, speedTolerance, harmonics, falseAlarmProbability,
                depth, absentDepth, revolutionsPerBlock, otherRatesHertz);
    }

    /**
     * Returns these settings with another depth that a recording must be able to show for {@code absent}.
     *
     * @param depth depth of pulsation, 0 (never absent) to 2, at most the present depth
     * @return the settings
     * @throws IllegalArgumentException if the depth is out of range
     */
    public DiagnosisSettings withAbsentDepth(double depth) {
        return new DiagnosisSettings(bands, frequencyTolerance, speedTolerance, harmonics, falseAlarmProbability,
                presentDepth, depth, revolutionsPerBlock, otherRatesHertz);
    }

    /**
     * Returns these settings with another block length.
     *
     * @param revolutions revolutions of the shaft in one block, 20 to 1,000,000; fewer for a shaft that wanders
     * @return the settings
     * @throws IllegalArgumentException if the number is out of range
     */
    public DiagnosisSettings withRevolutionsPerBlock(double revolutions) {
        return new DiagnosisSettings(bands, frequencyTolerance, speedTolerance, harmonics, falseAlarmProbability,
                presentDepth, absentDepth, revolutions, otherRatesHertz);
    }

    /**
     * Returns these settings with rates of other parts of the machine, such as other shafts, belts and gear meshes:
     * lines at their multiples, of each the first 100,000, count for no element.
     *
     * @param hertz rates in Hz, each finite, above zero; they replace those given before
     * @return the settings
     * @throws IllegalArgumentException if a rate is out of range
     */
    public DiagnosisSettings withOtherRates(double... hertz) {
        List<Double> rates = Arrays.stream(Objects.requireNonNull(hertz, "hertz")).boxed().toList();
        return new DiagnosisSettings(bands, frequencyTolerance, speedTolerance, harmonics, falseAlarmProbability,
                presentDepth, absentDepth, revolutionsPerBlock, rates);
    }

    /** Depth from which on a significant pulsation is a sign of a defect; common practice, no source. */
    double signDepth() {
        return 0.3 * presentDepth;
    }

    /** Returns the settings that a verdict hangs on, in one line. */
    @Override
    public String toString() {
        String searched = bands.isEmpty() ? "candidate bands"
                : bands.stream().map(Band::toString).collect(Collectors.joining(", "));
        return searched + ", ±" + Digits.compact(100 * frequencyTolerance, 3) + " %, " + harmonics
                + " harmonics, false alarm " + Digits.significant(falseAlarmProbability, 2)
                + ", present from depth " + Digits.significant(presentDepth, 2) + ", absent if "
                + Digits.significant(absentDepth, 2) + " would have been found";
    }
}
