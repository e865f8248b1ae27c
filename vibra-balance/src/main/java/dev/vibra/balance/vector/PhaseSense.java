package dev.vibra.balance.vector;

import dev.vibra.internal.Require;
import java.util.Objects;

/** Sense in which the phase of a vibration is counted from the tachometer mark. */
public enum PhaseSense {
    /**
     * Phase lag: {@code x(t) = A·cos(ωt − φ)}. The peak comes by {@code φ/ω} after the mark has passed the tachometer.
     */
    LAG("lag", -1),
    /**
     * Phase lead: {@code x(t) = A·cos(ωt + φ)}. The peak comes by {@code φ/ω} before the mark passes the tachometer.
     */
    LEAD("lead", 1);

    private final String label;
    private final int sign;

    PhaseSense(String label, int sign) {
        this.label = label;
        this.sign = sign;
    }

    /**
     * Turns a phase in this sense into a lead.
     *
     * @param radians phase in this sense, rad
     * @return the same phase as a lead, rad
     */
    public double toLead(double radians) {
        return sign * Require.finite("radians", radians);
    }

    /**
     * Returns the argument of a phasor in this sense.
     *
     * @param phasor phasor whose argument is a lead
     * @return phase in degrees, from 0 up to, not including, 360
     */
    public double degreesOf(Phasor phasor) {
        return Angles.degrees(sign * Objects.requireNonNull(phasor, "phasor").argument());
    }

    /** Returns {@code lag} or {@code lead}. */
    @Override
    public String toString() {
        return label;
    }
}
