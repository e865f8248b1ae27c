package dev.vibra.bearing.kinematics;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * Rates at which defects of a rolling bearing repeat if its elements roll without slip; real ones differ by one or two
 * per cent.
 *
 * <p>With the diameter ratio {@code r = (d/D)·cos α}, N elements and the ring speeds {@code f_i} and {@code f_o}:
 *
 * <pre>
 * cage                 f_c = f_i·(1 − r)/2 + f_o·(1 + r)/2
 * outer race passing   N·|f_c − f_o| = N·(1 − r)/2 · |f_i − f_o|
 * inner race passing   N·|f_i − f_c| = N·(1 + r)/2 · |f_i − f_o|
 * spin of an element   D/(2d)·(1 − r²) · |f_i − f_o|
 * element defect       twice the spin: both races are struck in one turn
 * </pre>
 *
 * <p>The spin is counted against the cage. At ring speeds of 1 and 0 the values are the multiples of the shaft speed
 * that data sheets print.
 *
 * @param outerRaceHertz rate at which elements pass a spot of the outer race, Hz
 * @param innerRaceHertz rate at which elements pass a spot of the inner race, Hz
 * @param spinHertz turns of a rolling element about its own axis against the cage, Hz
 * @param cageHertz turns of the cage, Hz; its direction is dropped
 * @param innerRingHertz speed of the inner ring, Hz; its direction is dropped
 * @param outerRingHertz speed of the outer ring, Hz; its direction is dropped
 * @see "P. D. McFadden, J. D. Smith, Vibration monitoring of rolling element bearings by the high-frequency resonance
 *     technique: a review, Tribology International 17 (1984) 3-10"
 */
public record KinematicFrequencies(double outerRaceHertz, double innerRaceHertz, double spinHertz, double cageHertz,
        double innerRingHertz, double outerRingHertz) implements Serializable {
    private static final long serialVersionUID = 1;

    /**
     * Checks that each value is finite and in range.
     *
     * @param outerRaceHertz see the record
     * @param innerRaceHertz see the record
     * @param spinHertz see the record
     * @param cageHertz see the record
     * @param innerRingHertz see the record
     * @param outerRingHertz see the record
     */
    public KinematicFrequencies {
        Require.positive("outerRaceHertz", outerRaceHertz, "Hz");
        Require.positive("innerRaceHertz", innerRaceHertz, "Hz");
        Require.positive("spinHertz", spinHertz, "Hz");
        Require.positive("2 * spinHertz", 2 * spinHertz, "Hz");
        Require.notNegative("cageHertz", cageHertz, "Hz");
        Require.notNegative("innerRingHertz", innerRingHertz, "Hz");
        Require.notNegative("outerRingHertz", outerRingHertz, "Hz");
    }

    static KinematicFrequencies of(BearingGeometry geometry, double inner, double outer) {
        Require.finite("innerRingHertz", inner);
        Require.finite("outerRingHertz", outer);
        double relative = Math.abs(inner - outer);
        if (!(relative > 0)) {
            throw Require.failure("outerRingHertz", "other than innerRingHertz, or nothing rolls", outer);
        }
        double ratio = geometry.diameterRatio();
        double perElement = 0.5 * geometry.rollingElements() * relative;
        double spin = geometry.pitchDiameterMetres() / (2 * geometry.ballDiameterMetres()) * (1 - ratio * ratio);
        double cage = 0.5 * (inner * (1 - ratio) + outer * (1 + ratio));
        return new KinematicFrequencies(perElement * (1 - ratio), perElement * (1 + ratio), spin * relative,
                Math.abs(cage), Math.abs(inner), Math.abs(outer));
    }

    /**
     * Returns the rate at which a defect of a rolling element strikes a raceway: twice the spin.
     *
     * @return rate in Hz
     */
    public double rollingElementHertz() {
        return 2 * spinHertz;
    }

    /**
     * Returns the rate at which a defect of an element shows itself.
     *
     * @param element element with the defect
     * @return rate in Hz
     */
    public double of(BearingElement element) {
        return switch (Objects.requireNonNull(element, "element")) {
            case OUTER_RACE -> outerRaceHertz;
            case INNER_RACE -> innerRaceHertz;
            case ROLLING_ELEMENT -> rollingElementHertz();
            case CAGE -> cageHertz;
        };
    }

    /**
     * Returns the rate at which a defect of an element travels through a load zone that stands still, and so the
     * spacing of its sidebands.
     *
     * @param element element with the defect
     * @return rate in Hz; zero where the defect stands still in the load zone or, for the cage, is that rate itself
     */
    public double modulationOf(BearingElement element) {
        return switch (Objects.requireNonNull(element, "element")) {
            case OUTER_RACE -> outerRingHertz;
            case INNER_RACE -> innerRingHertz;
            case ROLLING_ELEMENT -> cageHertz;
            case CAGE -> 0;
        };
    }

    /**
     * Returns the number of rolling elements, where one ring stands still: both passing rates together are that many
     * times the speed of the other.
     *
     * @return number; empty where both rings turn or the rates are of no such bearing
     */
    public OptionalInt rollingElements() {
        double number = (outerRaceHertz + innerRaceHertz) / shaftHertz();
        boolean oneStands = Math.min(innerRingHertz, outerRingHertz) == 0;
        return oneStands && Math.abs(number - Math.rint(number)) < 1e-6 && number > 1
                ? OptionalInt.of((int) Math.rint(number)) : OptionalInt.empty();
    }

    /**
     * Returns the speed of rotation that the machine shows: the faster of the two rings.
     *
     * @return speed in Hz, above zero
     */
    public double shaftHertz() {
        return Math.max(innerRingHertz, outerRingHertz);
    }

    /** Returns the rates, as in {@code outer race 107.3, inner race 162.2, rolling element 141.2, cage 11.93 Hz}. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        for (BearingElement element : BearingElement.values()) {
            text.append(text.length() == 0 ? "" : ", ").append(element).append(' ')
                    .append(Digits.significant(of(element), 4));
        }
        return text.append(" Hz").toString();
    }
}
