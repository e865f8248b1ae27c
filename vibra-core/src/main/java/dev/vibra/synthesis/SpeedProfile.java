package dev.vibra.synthesis;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.Objects;

/**
 * A shaft whose speed changes evenly from one speed to another, and what it makes a tachometer and a sensor see.
 *
 * @param from speed at the beginning
 * @param to speed at the end
 * @param seconds duration in s, finite, above zero
 */
public record SpeedProfile(RotationSpeed from, RotationSpeed to, double seconds) implements Serializable {
    /**
     * Checks the duration.
     *
     * @param from see the record
     * @param to see the record
     * @param seconds see the record
     */
    public SpeedProfile {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        Require.positive("seconds", seconds, "s");
    }

    /**
     * Returns the angle at a time.
     *
     * @param time time in s from the beginning
     * @return angle in revolutions
     */
    public double revolutionsAt(double time) {
        return (from.hertz() + 0.5 * (to.hertz() - from.hertz()) * time / seconds) * time;
    }

    /**
     * Returns the speed at a time.
     *
     * @param time time in s from the beginning, from 0 to the duration
     * @return speed of rotation
     * @throws IllegalArgumentException if the time is out of range
     */
    public RotationSpeed speedAt(double time) {
        Require.within("time", time, 0, seconds, "s");
        return RotationSpeed.ofHertz(from.hertz() + (to.hertz() - from.hertz()) * time / seconds);
    }

    /**
     * Makes the signal of a tachometer: 1 V over a tenth of the step from each mark on, 0 V elsewhere, edges as steep
     * as the sample rate allows, placed between the samples by a straight line.
     *
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param markSpacing share of a revolution from each mark to the next; all above zero, adding up to 1
     * @return the signal, in V
     * @throws IllegalArgumentException if an argument is out of range
     */
    public Waveform tachometer(double sampleRateHertz, double... markSpacing) {
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        double[] marks = new double[markSpacing.length + 1];
        for (int m = 0; m < markSpacing.length; m++) {
            marks[m + 1] = marks[m] + Require.positive("markSpacing[" + m + "]", markSpacing[m], "");
        }
        Require.within("sum of markSpacing", marks[markSpacing.length], 1 - 1e-9, 1 + 1e-9, "");
        double[] volts = new double[(int) Math.round(seconds * sampleRateHertz)];
        for (int i = 0; i < volts.length; i++) {
            double time = i / sampleRateHertz;
            double width = speedAt(Math.min(time, seconds)).hertz() / sampleRateHertz;
            double turned = revolutionsAt(time);
            volts[i] = pulse(turned - Math.floor(turned), marks, width);
        }
        return Waveform.ofSi(Quantity.VOLTAGE, sampleRateHertz, volts);
    }

    /** An edge takes one sample; half-way up stands exactly at the mark. */
    private static double pulse(double place, double[] marks, double sampleWidth) {
        double highest = 0;
        for (int m = 0; m < marks.length; m++) {
            double length = 0.1 * (m + 1 < marks.length ? marks[m + 1] - marks[m] : marks[1]);
            double rise = (place - marks[m]) / sampleWidth + 0.5;
            double fall = (marks[m] + length - place) / sampleWidth + 0.5;
            highest = Math.max(highest, Math.max(0, Math.min(1, Math.min(rise, fall))));
        }
        return highest;
    }

    /**
     * Makes the displacement of a rotor on springs (one degree of freedom) that an unbalance drives, quasi-steady at
     * each speed: amplitude {@code e·r²/√((1-r²)² + (2ζr)²)} and phase lag {@code atan2(2ζr, 1-r²)} behind the mark, r
     * the speed over the natural frequency.
     *
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param eccentricityMetres distance e of the centre of mass from the axis in m, finite, zero or more
     * @param naturalHertz undamped natural frequency in Hz, finite, above zero
     * @param dampingRatio damping ratio ζ, above 0, below 1
     * @return the displacement, in m
     * @throws IllegalArgumentException if an argument is out of range
     * @see "S. S. Rao, Mechanical Vibrations, section on rotating unbalance"
     */
    public Waveform unbalanceResponse(double sampleRateHertz, double eccentricityMetres, double naturalHertz,
            double dampingRatio) {
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        Require.notNegative("eccentricityMetres", eccentricityMetres, "m");
        Require.positive("naturalHertz", naturalHertz, "Hz");
        if (!(dampingRatio > 0 && dampingRatio < 1)) {
            throw Require.failure("dampingRatio", "above 0 and below 1", dampingRatio);
        }
        double[] metres = new double[(int) Math.round(seconds * sampleRateHertz)];
        for (int i = 0; i < metres.length; i++) {
            double time = i / sampleRateHertz;
            double r = speedAt(Math.min(time, seconds)).hertz() / naturalHertz;
            double stiff = 1 - r * r;
            double damped = 2 * dampingRatio * r;
            double lag = StrictMath.atan2(damped, stiff);
            metres[i] = eccentricityMetres * r * r / Math.sqrt(stiff * stiff + damped * damped)
                    * StrictMath.cos(2 * Math.PI * revolutionsAt(time) - lag);
        }
        return Waveform.ofSi(Quantity.DISPLACEMENT, sampleRateHertz, metres);
    }

    /** Returns speeds and duration. */
    @Override
    public String toString() {
        return from + " to " + to + " in " + seconds + " s";
    }
}
