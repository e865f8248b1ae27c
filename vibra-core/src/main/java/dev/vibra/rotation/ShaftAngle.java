package dev.vibra.rotation;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.Arrays;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * Angle of a shaft over time, in revolutions from the first pulse: a cubic spline through the pulses, time as a
 * function of angle. Within the first and the last step the spline is straighter than a shaft that speeds up.
 *
 * @see "K. R. Fyfe, E. D. S. Munck, Analysis of computed order tracking, Mech. Syst. Signal Process. 11 (1997) 187-205"
 */
public final class ShaftAngle implements Serializable {
    private static final long serialVersionUID = 1;
    private static final int FEWEST_PULSES = 4;

    private final double[] revolutions;
    private final double[] seconds;
    private final transient PolynomialSplineFunction timeOverAngle;
    private final transient PolynomialSplineFunction slownessOverAngle;

    private ShaftAngle(double[] revolutions, double[] seconds) {
        this.revolutions = revolutions;
        this.seconds = seconds;
        timeOverAngle = new SplineInterpolator().interpolate(revolutions, seconds);
        slownessOverAngle = timeOverAngle.polynomialSplineDerivative();
    }

    /**
     * Takes a train of evenly spaced marks.
     *
     * @param pulses pulses, at least 4, {@linkplain PulseTrain#repaired() repaired} where needed
     * @param pulsesPerRevolution number of marks, at least 1
     * @return the angle
     * @throws IllegalArgumentException if there are too few pulses
     */
    public static ShaftAngle of(PulseTrain pulses, int pulsesPerRevolution) {
        Require.atLeast("pulsesPerRevolution", pulsesPerRevolution, 1);
        double[] even = new double[pulsesPerRevolution];
        Arrays.fill(even, 1.0 / pulsesPerRevolution);
        return of(pulses, even);
    }

    /**
     * Takes a train of marks of known spacing.
     *
     * @param pulses pulses, at least 4
     * @param markSpacing share of a revolution from each mark to the next, from the mark of the first pulse on; all
     *     above zero, adding up to 1
     * @return the angle
     * @throws IllegalArgumentException if there are too few pulses or the shares don't add up
     * @see PulseTrain#markSpacing
     */
    public static ShaftAngle of(PulseTrain pulses, double[] markSpacing) {
        double[] spacing = markSpacing.clone();
        double sum = 0;
        for (int m = 0; m < spacing.length; m++) {
            sum += Require.positive("markSpacing[" + m + "]", spacing[m], "");
        }
        Require.within("sum of markSpacing", sum, 1 - 1e-9, 1 + 1e-9, "");
        double[] seconds = pulses.seconds();
        Require.atLeast("number of pulses", seconds.length, FEWEST_PULSES);
        double[] revolutions = new double[seconds.length];
        for (int i = 1; i < seconds.length; i++) {
            revolutions[i] = revolutions[i - 1] + spacing[(i - 1) % spacing.length];
        }
        return new ShaftAngle(revolutions, seconds);
    }

    private Object readResolve() {
        return new ShaftAngle(revolutions, seconds);
    }

    /**
     * Returns the angle of the last pulse.
     *
     * @return revolutions from the first pulse
     */
    public double revolutions() {
        return revolutions[revolutions.length - 1];
    }

    /**
     * Returns the time at an angle.
     *
     * @param revolution angle in revolutions, from 0 to {@link #revolutions()}
     * @return time in s
     * @throws IllegalArgumentException if the angle is out of range
     */
    public double secondsAt(double revolution) {
        Require.within("revolution", revolution, 0, revolutions(), "");
        return timeOverAngle.value(revolution);
    }

    /**
     * Returns the speed at an angle.
     *
     * @param revolution angle in revolutions, from 0 to {@link #revolutions()}
     * @return speed of rotation there
     * @throws IllegalArgumentException if the angle is out of range
     */
    public RotationSpeed speedAt(double revolution) {
        Require.within("revolution", revolution, 0, revolutions(), "");
        return RotationSpeed.ofHertz(1 / slownessOverAngle.value(revolution));
    }

    /**
     * Returns the mean speed.
     *
     * @return revolutions over time from the first to the last pulse
     */
    public RotationSpeed meanSpeed() {
        return RotationSpeed.ofHertz(revolutions() / (seconds[seconds.length - 1] - seconds[0]));
    }

    /** Returns revolutions and mean speed. */
    @Override
    public String toString() {
        return Digits.significant(revolutions(), 4) + " revolutions at " + meanSpeed();
    }
}
