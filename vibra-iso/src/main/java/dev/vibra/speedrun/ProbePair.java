package dev.vibra.speedrun;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/**
 * How two displacement probes at one bearing stand. Angles are counted counter-clockwise from the right-hand
 * horizontal, both seen from the same end of the machine.
 *
 * @param xDegrees angle of the first probe in degrees, -360 to 360
 * @param yDegrees angle of the second probe in degrees, -360 to 360
 * @param turning which way the shaft turns, seen from that end
 * @param growsAway true if the signal grows as the shaft moves away from its probe, as a gap does; false if it grows as
 *     the shaft comes nearer
 */
public record ProbePair(double xDegrees, double yDegrees, TurningSense turning, boolean growsAway)
        implements Serializable {
    private static final long serialVersionUID = 1;
    /** How far from a right angle probes may stand to be taken as at right angles; common practice, no source. */
    private static final double OFF_SQUARE = 5;

    /**
     * Checks the values.
     *
     * @param xDegrees see the record
     * @param yDegrees see the record
     * @param turning see the record
     * @param growsAway see the record
     * @throws IllegalArgumentException if an angle is out of range
     */
    public ProbePair {
        Require.within("xDegrees", xDegrees, -360, 360, "degrees");
        Require.within("yDegrees", yDegrees, -360, 360, "degrees");
        Objects.requireNonNull(turning, "turning");
    }

    /**
     * Says why no orbit can be made of the pair.
     *
     * @return the reason, without full stop; empty if the probes are at right angles
     */
    public Optional<String> obstacle() {
        double between = Math.abs(Math.IEEEremainder(yDegrees - xDegrees, 360));
        return Math.abs(between - 90) <= OFF_SQUARE ? Optional.empty()
                : Optional.of("the probes stand " + Digits.compact(between, 4)
                        + " degrees apart; an orbit is made of two at right angles, to within 5 degrees");
    }

    /** {@return true if the second probe is a quarter turn clockwise of the first} */
    private boolean mirrored() {
        return Math.IEEEremainder(yDegrees - xDegrees, 360) < 0;
    }

    /** True if a shaft that turns goes from the first probe to the second. */
    boolean turnsFromXToY() {
        return mirrored() == (turning == TurningSense.CLOCKWISE);
    }

    /** Turns distances along both probes to the right. */
    double right(double alongX, double alongY) {
        double angle = Math.toRadians(xDegrees);
        return alongX * Math.cos(angle) - (mirrored() ? -alongY : alongY) * Math.sin(angle);
    }

    /** Turns distances along both probes upwards. */
    double up(double alongX, double alongY) {
        double angle = Math.toRadians(xDegrees);
        return alongX * Math.sin(angle) + (mirrored() ? -alongY : alongY) * Math.cos(angle);
    }

    /** Sign of the signal that a shaft makes which moves towards the probe. */
    int sign() {
        return growsAway ? -1 : 1;
    }
}
