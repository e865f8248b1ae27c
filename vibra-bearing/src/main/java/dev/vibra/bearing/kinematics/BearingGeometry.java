package dev.vibra.bearing.kinematics;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/**
 * The four numbers of a rolling bearing that fix its kinematics: one row of rolling elements that roll without slip.
 *
 * <p>Of tapered or cylindrical rollers the mean roller diameter counts; of a bearing with several rows, one row.
 *
 * @param rollingElements number of rolling elements in one row, at least 3
 * @param ballDiameterMetres diameter of a rolling element in m, finite, above zero
 * @param pitchDiameterMetres diameter of the circle through the centres of the rolling elements in m; wide enough that
 *     neighbours don't overlap
 * @param contactAngleRadians angle between the line of contact and the radial plane in rad, 0 to π/2
 */
public record BearingGeometry(
        int rollingElements, double ballDiameterMetres, double pitchDiameterMetres, double contactAngleRadians)
        implements Serializable {
    private static final long serialVersionUID = 1;

    /** Rounding of printed sizes that a full complement of touching elements may show. */
    private static final double ROUNDING = 1.01;
    /** Beyond any bearing, so that sizes stay finite in every unit. */
    private static final double LARGEST = 1e6;

    /**
     * Checks the numbers, each for itself and together.
     *
     * @param rollingElements see the record
     * @param ballDiameterMetres see the record
     * @param pitchDiameterMetres see the record
     * @param contactAngleRadians see the record
     */
    public BearingGeometry {
        Require.atLeast("rollingElements", rollingElements, 3);
        Require.positive("ballDiameter", ballDiameterMetres, "m");
        Require.positive("pitchDiameter", pitchDiameterMetres, "m");
        Require.within("pitchDiameter", pitchDiameterMetres, 0, LARGEST, "m");
        Require.within("contactAngle", contactAngleRadians, 0, Math.PI / 2, "rad");
        requireRoom(rollingElements, ballDiameterMetres, pitchDiameterMetres);
    }

    /**
     * Makes a geometry of the sizes that data sheets print.
     *
     * @param rollingElements number of rolling elements in one row, at least 3
     * @param ballDiameterMillimetres diameter of a rolling element in mm, finite, above zero
     * @param pitchDiameterMillimetres pitch diameter in mm, at most 10⁹, wide enough for the elements
     * @param contactAngleDegrees contact angle in degrees, 0 (radial) to 90 (axial)
     * @return the geometry
     * @throws IllegalArgumentException if a number is out of range or the elements don't fit on the pitch circle
     */
    public static BearingGeometry of(int rollingElements, double ballDiameterMillimetres,
            double pitchDiameterMillimetres, double contactAngleDegrees) {
        Require.positive("ballDiameterMillimetres", ballDiameterMillimetres, "mm");
        Require.positive("pitchDiameterMillimetres", pitchDiameterMillimetres, "mm");
        Require.within("contactAngleDegrees", contactAngleDegrees, 0, 90, "degrees");
        return new BearingGeometry(rollingElements, ballDiameterMillimetres / 1e3, pitchDiameterMillimetres / 1e3,
                Math.toRadians(contactAngleDegrees));
    }

    private static void requireRoom(int count, double ball, double pitch) {
        Optional<String> rule = roomRule(count, ball, pitch);
        if (rule.isPresent()) {
            throw Require.failure("ballDiameter", rule.get(), ball * 1e3);
        }
    }

    /**
     * Says why rolling elements don't fit on a pitch circle: neighbours have the chord {@code D·sin(π/N)} between them.
     *
     * @param rollingElements number of rolling elements in one row, at least 3
     * @param ballDiameterMetres diameter of a rolling element in m, finite, above zero
     * @param pitchDiameterMetres pitch diameter in m, finite, above zero
     * @return what the diameter must be, as in {@code at most 13.35 mm, the room that ...}; empty if they fit
     */
    public static Optional<String> roomRule(int rollingElements, double ballDiameterMetres,
            double pitchDiameterMetres) {
        double chord = pitchDiameterMetres * Math.sin(Math.PI / rollingElements);
        return ballDiameterMetres <= chord * ROUNDING ? Optional.empty()
                : Optional.of("at most " + Digits.significant(chord * 1e3, 4) + " mm, the room that " + rollingElements
                        + " rolling elements leave each other on a pitch diameter of "
                        + Digits.significant(pitchDiameterMetres * 1e3, 4) + " mm");
    }

    /**
     * Returns the ratio that all kinematics of the bearing depend on: {@code r = (d / D) · cos α}.
     *
     * @return ratio, from 0 (axial bearing) to below 1
     */
    public double diameterRatio() {
        return ballDiameterMetres / pitchDiameterMetres * Math.cos(contactAngleRadians);
    }

    /**
     * Returns the kinematic frequencies when one ring turns and the other stands still.
     *
     * @param rotating ring that turns
     * @param speed speed of that ring
     * @return the frequencies in Hz
     */
    public KinematicFrequencies frequencies(RotatingRing rotating, RotationSpeed speed) {
        Objects.requireNonNull(speed, "speed");
        return switch (Objects.requireNonNull(rotating, "rotating")) {
            case INNER -> frequencies(speed.hertz(), 0);
            case OUTER -> frequencies(0, speed.hertz());
        };
    }

    /**
     * Returns the kinematic frequencies when both rings may turn, as in a planet wheel or between two shafts.
     *
     * <p>The sign of a speed is its direction; speeds of equal sign turn the same way.
     *
     * @param innerRingHertz speed of the inner ring in revolutions per second, finite
     * @param outerRingHertz speed of the outer ring in revolutions per second, finite, other than that of the inner
     *     ring
     * @return the frequencies in Hz
     * @throws IllegalArgumentException if a speed is not finite or the rings turn together
     */
    public KinematicFrequencies frequencies(double innerRingHertz, double outerRingHertz) {
        return KinematicFrequencies.of(this, innerRingHertz, outerRingHertz);
    }

    /**
     * Returns the kinematic frequencies as multiples of the speed of the rotating ring: those at one revolution per
     * second.
     *
     * @param rotating ring that turns
     * @return the multiples
     */
    public KinematicFrequencies multiples(RotatingRing rotating) {
        return frequencies(rotating, RotationSpeed.ofHertz(1));
    }

    /** Returns the geometry, as in {@code 9 × 7.94 mm on 39.04 mm, 0°}. */
    @Override
    public String toString() {
        return rollingElements + " × " + Digits.compact(ballDiameterMetres * 1e3, 5) + " mm on "
                + Digits.compact(pitchDiameterMetres * 1e3, 5) + " mm, "
                + Digits.compact(Math.toDegrees(contactAngleRadians), 4) + "°";
    }
}
