package dev.vibra.symptom;

import dev.vibra.machine.MeasuringPoint;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Whether the positive axes of two sensors show the same way in space or opposite ways, as far as they are noted.
 *
 * <p>Across the shaft they are noted in degrees. Along the shaft they are noted in words. At one part
 * {@code towards the coupling} is one way in space. At the two parts of a coupling it is not: the sensor at the left
 * part looks to the right, that at the right part looks to the left, so equal words mean opposite ways. A machine that
 * moves along its shaft as one body makes such a pair read a velocity and its negative, half a turn apart; parts that
 * move against each other make it read the same, though in space they are opposed.
 */
enum Axes {
    /** The sensors read one motion alike. */
    ALIKE(0),
    /** One sensor reads a motion as the other reads its negative. */
    OPPOSED(180);

    private static final Pattern ALONG = Pattern.compile("(towards|away from) (.+)");
    private static final Pattern DEGREES = Pattern.compile("[+-]?[0-9]{1,6}(\\.[0-9]{1,9})?");
    /** Sensors are set by eye; common practice, no source. */
    private static final double SAME_WITHIN = 20;

    private final double degrees;

    Axes(double degrees) {
        this.degrees = degrees;
    }

    /** What has to be added to a difference of phases to have it in space. */
    double degrees() {
        return degrees;
    }

    /** Sensors in the same direction at one part; empty where the axes aren't noted, or can't be compared. */
    static Optional<Axes> atOnePart(MeasuringPoint one, MeasuringPoint other) {
        return one.isAxial() ? along(one, other, false) : across(one, other);
    }

    /** Sensors in the same direction at the two parts of a coupling; empty as above. */
    static Optional<Axes> acrossCoupling(MeasuringPoint one, MeasuringPoint other) {
        return one.isAxial() ? along(one, other, true) : across(one, other);
    }

    private static Optional<Axes> along(MeasuringPoint one, MeasuringPoint other, boolean facing) {
        Matcher first = ALONG.matcher(one.positiveAxis().orElse(""));
        Matcher second = ALONG.matcher(other.positiveAxis().orElse(""));
        if (!first.matches() || !second.matches() || !first.group(2).equals(second.group(2))) {
            return Optional.empty();
        }
        return Optional.of(first.group(1).equals(second.group(1)) == facing ? OPPOSED : ALIKE);
    }

    private static Optional<Axes> across(MeasuringPoint one, MeasuringPoint other) {
        String first = one.positiveAxis().orElse("");
        String second = other.positiveAxis().orElse("");
        if (!DEGREES.matcher(first).matches() || !DEGREES.matcher(second).matches()) {
            return Optional.empty();
        }
        double apart = Math.abs(Math.IEEEremainder(Double.parseDouble(first) - Double.parseDouble(second), 360));
        return apart <= SAME_WITHIN ? Optional.of(ALIKE)
                : apart >= 180 - SAME_WITHIN ? Optional.of(OPPOSED) : Optional.empty();
    }
}
