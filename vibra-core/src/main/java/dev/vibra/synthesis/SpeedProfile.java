package dev.vibra.synthesis;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.Objects;

/**
 * A shaft whose speed changes evenly from one speed to another, and may swing as a sine about that; and what it makes a
 * tachometer and a sensor see. Its speed is
 * {@code from + (to - from)·t/T + wander·(from + to)/2·sin(2π·wanderHertz·t)}.
 *
 * @param from speed at the beginning
 * @param to speed at the end, but for the swing
 * @param seconds duration T in s, finite, above zero
 * @param wander amplitude of the swing over the mean of both speeds, 0 to 0.2, below the lower of the speeds
 * @param wanderHertz swings a second, finite, zero or more
 */
public record SpeedProfile(RotationSpeed from, RotationSpeed to, double seconds, double wander, double wanderHertz)
        implements Serializable {
    private static final double MOST_SAMPLES = 1 << 24;
    private static final int MOST_STEPS = 100;

    /**
     * Checks the values.
     *
     * @param from see the record
     * @param to see the record
     * @param seconds see the record
     * @param wander see the record
     * @param wanderHertz see the record
     */
    public SpeedProfile {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        Require.positive("seconds", seconds, "s");
        Require.within("wander", wander, 0, 0.2, "");
        Require.notNegative("wanderHertz", wanderHertz, "Hz");
        Require.positive("mean speed times seconds", 0.5 * (from.hertz() + to.hertz()) * seconds, "revolutions");
        double least = Math.min(from.hertz(), to.hertz());
        if (!(wander * 0.5 * (from.hertz() + to.hertz()) < least)) {
            throw Require.failure("wander", "so small that the shaft never stands", wander);
        }
    }

    /**
     * Makes a shaft whose speed changes evenly.
     *
     * @param from speed at the beginning
     * @param to speed at the end
     * @param seconds duration in s, finite, above zero
     */
    public SpeedProfile(RotationSpeed from, RotationSpeed to, double seconds) {
        this(from, to, seconds, 0, 0);
    }

    /**
     * Returns this profile with a speed that swings.
     *
     * @param share amplitude of the swing over the mean of both speeds, 0 to 0.2
     * @param hertz swings a second, finite, zero or more
     * @return the profile
     * @throws IllegalArgumentException if an argument is out of range or the shaft would stand
     */
    public SpeedProfile withWander(double share, double hertz) {
        return new SpeedProfile(from, to, seconds, share, hertz);
    }

    /**
     * Returns a speed that the shaft never exceeds.
     *
     * @return the higher of both speeds, with the swing
     */
    public RotationSpeed fastest() {
        return RotationSpeed.ofHertz(Math.max(from.hertz(), to.hertz()) + wanderAmplitude());
    }

    private double wanderAmplitude() {
        return wander * 0.5 * (from.hertz() + to.hertz());
    }

    /**
     * Returns the angle at a time.
     *
     * @param time time in s from the beginning, finite
     * @return angle in revolutions
     * @throws IllegalArgumentException if the time or the angle is beyond all numbers
     */
    public double revolutionsAt(double time) {
        double angle = angleAt(time);
        if (!(Math.abs(angle) < Double.POSITIVE_INFINITY)) {
            throw Require.failure("time", "finite and near the profile's " + seconds + " s", time);
        }
        return angle;
    }

    private double angleAt(double time) {
        double even = (from.hertz() + 0.5 * (to.hertz() - from.hertz()) * time / seconds) * time;
        double omega = 2 * Math.PI * wanderHertz;
        return wander == 0 || omega == 0 ? even : even + wanderAmplitude() * (1 - StrictMath.cos(omega * time)) / omega;
    }

    /**
     * Returns the time at an angle.
     *
     * @param revolution angle in revolutions, from 0 to that of the end
     * @return time in s from the beginning, to the last digits
     * @throws IllegalArgumentException if the angle is out of range
     */
    public double secondsAt(double revolution) {
        Require.within("revolution", revolution, 0, revolutionsAt(seconds), "");
        double low = 0;
        double high = seconds;
        double time = seconds * revolution / revolutionsAt(seconds);
        for (int i = 0; i < MOST_STEPS; i++) {
            double error = revolutionsAt(time) - revolution;
            low = error < 0 ? time : low;
            high = error < 0 ? high : time;
            double next = time - error / speedAt(time).hertz();
            next = next >= low && next <= high ? next : 0.5 * (low + high);
            if (Math.abs(next - time) <= 1e-14 * seconds) {
                return next;
            }
            time = next;
        }
        return time;
    }

    /**
     * Returns the mean speed.
     *
     * @return revolutions over the duration
     */
    public RotationSpeed meanSpeed() {
        return RotationSpeed.ofHertz(revolutionsAt(seconds) / seconds);
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
        return RotationSpeed.ofHertz(from.hertz() + (to.hertz() - from.hertz()) * time / seconds
                + wanderAmplitude() * StrictMath.sin(2 * Math.PI * wanderHertz * time));
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
        double[] marks = new double[Objects.requireNonNull(markSpacing, "markSpacing").length + 1];
        for (int m = 0; m < markSpacing.length; m++) {
            marks[m + 1] = marks[m] + Require.positive("markSpacing[" + m + "]", markSpacing[m], "");
        }
        Require.within("sum of markSpacing", marks[markSpacing.length], 1 - 1e-9, 1 + 1e-9, "");
        double[] volts = new double[samples(sampleRateHertz)];
        for (int i = 0; i < volts.length; i++) {
            double time = i / sampleRateHertz;
            double width = speedAt(Math.min(time, seconds)).hertz() / sampleRateHertz;
            double turned = revolutionsAt(time);
            volts[i] = pulse(turned - Math.floor(turned), marks, width);
        }
        return Waveform.ofSi(Quantity.VOLTAGE, sampleRateHertz, volts);
    }

    private int samples(double sampleRateHertz) {
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        return (int) Require.within("number of samples", Math.rint(seconds * sampleRateHertz), 1, MOST_SAMPLES, "");
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
        Require.notNegative("eccentricityMetres", eccentricityMetres, "m");
        Require.positive("naturalHertz", naturalHertz, "Hz");
        if (!(dampingRatio > 0 && dampingRatio < 1)) {
            throw Require.failure("dampingRatio", "above 0 and below 1", dampingRatio);
        }
        double[] metres = new double[samples(sampleRateHertz)];
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
        return from + " to " + to + " in " + seconds + " s" + (wander == 0 ? ""
                : ", ±" + Digits.compact(100 * wander, 3) + " % at " + Digits.compact(wanderHertz, 3) + " Hz");
    }
}
