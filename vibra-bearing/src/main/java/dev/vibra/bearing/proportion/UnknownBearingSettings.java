package dev.vibra.bearing.proportion;

import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * How pulsations of an unknown bearing are searched; immutable, begun with {@link #withDefaults()}.
 *
 * <table>
 * <caption>Defaults</caption>
 * <tr><th>setting</th><th>default</th><th>why</th></tr>
 * <tr><td>ring that turns</td><td>inner</td><td>the usual case: the shaft turns in a fixed housing</td></tr>
 * <tr><td>false alarm probability</td><td>0.001 a recording</td><td>chance that stationary noise makes a family
 *     anywhere; common practice, no source</td></tr>
 * <tr><td>speed tolerance</td><td>1 %</td><td>slip of an induction motor about its nominal speed; common practice, no
 *     source</td></tr>
 * <tr><td>slip</td><td>1.5 %</td><td>slip and contact angle under load: 1–2 % (Randall and Antoni 2011)</td></tr>
 * <tr><td>depth</td><td>1/3</td><td>at least one sixth of the power in the band beats at the rate; common practice, no
 *     source</td></tr>
 * <tr><td>line frequencies</td><td>50 and 60 Hz</td><td>currents swing forces at twice their frequency; the mains of
 *     nearly all places</td></tr>
 * <tr><td>other rates</td><td>none</td><td>gears, belts and other shafts aren't known to a recording</td></tr>
 * </table>
 *
 * @param turning ring or rings that may turn, at least one
 * @param falseAlarmProbability chance that noise makes a family anywhere in a recording, 1e-12 to 0.1
 * @param speedTolerance half width of the window in which the speed is refined, over the speed, 0 to 0.05
 * @param slip largest deviation of a rate from its kinematic value over that value, 0 to 0.05
 * @param depth depth of pulsation that two harmonics must reach, 0.01 to 2
 * @param lineFrequenciesHertz line frequencies in Hz, each finite, above zero
 * @param otherRatesHertz rates of other parts of the machine in Hz, each finite, above zero
 */
public record UnknownBearingSettings(List<RotatingRing> turning, double falseAlarmProbability, double speedTolerance,
        double slip, double depth, List<Double> lineFrequenciesHertz, List<Double> otherRatesHertz)
        implements Serializable {
    private static final long serialVersionUID = 1;
    private static final UnknownBearingSettings DEFAULTS = new UnknownBearingSettings(List.of(RotatingRing.INNER), 1e-3,
            0.01, Proportions.SLIP, 1.0 / 3, List.of(50.0, 60.0), List.of());

    /**
     * Checks the values and copies the lists.
     *
     * @param turning see the record
     * @param falseAlarmProbability see the record
     * @param speedTolerance see the record
     * @param slip see the record
     * @param depth see the record
     * @param lineFrequenciesHertz see the record
     * @param otherRatesHertz see the record
     * @throws IllegalArgumentException if a value is out of range
     */
    public UnknownBearingSettings {
        turning = Require.copy("turning", turning).stream().distinct().toList();
        Require.atLeast("number of rings that may turn", turning.size(), 1);
        Require.within("falseAlarmProbability", falseAlarmProbability, 1e-12, 0.1, "");
        Require.within("speedTolerance", speedTolerance, 0, 0.05, "");
        Require.within("slip", slip, 0, 0.05, "");
        Require.within("depth", depth, 0.01, 2, "");
        lineFrequenciesHertz = Require.copy("lineFrequenciesHertz", lineFrequenciesHertz);
        lineFrequenciesHertz.forEach(line -> Require.positive("lineFrequenciesHertz", line, "Hz"));
        otherRatesHertz = Require.copy("otherRatesHertz", otherRatesHertz);
        otherRatesHertz.forEach(rate -> Require.positive("otherRatesHertz", rate, "Hz"));
    }

    /**
     * Returns the defaults of the table above.
     *
     * @return the settings
     */
    public static UnknownBearingSettings withDefaults() {
        return DEFAULTS;
    }

    /**
     * Returns these settings for another ring that turns, or for both if it isn't known which.
     *
     * @param rings ring or rings that may turn, at least one
     * @return the settings
     * @throws IllegalArgumentException if there is none
     */
    public UnknownBearingSettings withTurning(RotatingRing... rings) {
        Objects.requireNonNull(rings, "rings");
        return new UnknownBearingSettings(Arrays.asList(rings), falseAlarmProbability, speedTolerance, slip, depth,
                lineFrequenciesHertz, otherRatesHertz);
    }

    /**
     * Returns these settings with another false alarm probability.
     *
     * @param probability chance that noise makes a family anywhere in a recording, 1e-12 to 0.1
     * @return the settings
     * @throws IllegalArgumentException if the probability is out of range
     */
    public UnknownBearingSettings withFalseAlarmProbability(double probability) {
        return new UnknownBearingSettings(turning, probability, speedTolerance, slip, depth, lineFrequenciesHertz,
                otherRatesHertz);
    }

    /**
     * Returns these settings with another tolerance of the speed.
     *
     * @param share half width of the window in which the speed is refined, over the speed, 0 (known exactly) to 0.05
     * @return the settings
     * @throws IllegalArgumentException if the share is out of range
     */
    public UnknownBearingSettings withSpeedTolerance(double share) {
        return new UnknownBearingSettings(turning, falseAlarmProbability, share, slip, depth, lineFrequenciesHertz,
                otherRatesHertz);
    }

    /**
     * Returns these settings with another slip.
     *
     * @param share largest deviation of a rate from its kinematic value over that value, 0 to 0.05
     * @return the settings
     * @throws IllegalArgumentException if the share is out of range
     */
    public UnknownBearingSettings withSlip(double share) {
        return new UnknownBearingSettings(turning, falseAlarmProbability, speedTolerance, share, depth,
                lineFrequenciesHertz, otherRatesHertz);
    }

    /**
     * Returns these settings with another depth of pulsation that counts.
     *
     * @param least depth that two harmonics must reach, 0.01 to 2
     * @return the settings
     * @throws IllegalArgumentException if the depth is out of range
     */
    public UnknownBearingSettings withDepth(double least) {
        return new UnknownBearingSettings(turning, falseAlarmProbability, speedTolerance, slip, least,
                lineFrequenciesHertz, otherRatesHertz);
    }

    /**
     * Returns these settings with the line frequency of the place, in place of the usual two.
     *
     * @param hertz line frequencies in Hz, each finite, above zero; none for a machine without currents
     * @return the settings
     * @throws IllegalArgumentException if a frequency is out of range
     */
    public UnknownBearingSettings withLineFrequencies(double... hertz) {
        return new UnknownBearingSettings(turning, falseAlarmProbability, speedTolerance, slip, depth,
                Arrays.stream(Objects.requireNonNull(hertz, "hertz")).boxed().toList(), otherRatesHertz);
    }

    /**
     * Returns these settings with the rates of other parts: other shafts, gears, belts, other bearings.
     *
     * @param hertz rates in Hz, each finite, above zero; their multiples belong to them too
     * @return the settings
     * @throws IllegalArgumentException if a rate is out of range
     */
    public UnknownBearingSettings withOtherRates(double... hertz) {
        return new UnknownBearingSettings(turning, falseAlarmProbability, speedTolerance, slip, depth,
                lineFrequenciesHertz, Arrays.stream(Objects.requireNonNull(hertz, "hertz")).boxed().toList());
    }

    /** Returns what matters most, as in {@code inner ring turning, depth 0.33, 0 other rates}. */
    @Override
    public String toString() {
        return String.join(" or ", turning.stream().map(RotatingRing::toString).toList()) + " ring turning, depth "
                + Digits.significant(depth, 2) + ", " + otherRatesHertz.size() + " other rates";
    }
}
