package dev.vibra.rotation;

import dev.vibra.envelope.SquaredEnvelope;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialFunction;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * Angle of a shaft over time, in revolutions from the first pulse: a cubic spline through the pulses, time as a
 * function of angle. Within the first and the last step the spline is straighter than a shaft that speeds up. Without
 * pulses, {@link TrackedAngle} follows the lines of the vibration.
 *
 * <p>Where the speed varies within a recording, lines smear. {@link #atMeanSpeed(Waveform)} gives the recording as if
 * the shaft had turned at its mean speed all the time, {@link #atMeanSpeed(SquaredEnvelope)} an envelope; spectra of
 * either read in Hz at the mean speed.
 *
 * @see "K. R. Fyfe, E. D. S. Munck, Analysis of computed order tracking, Mech. Syst. Signal Process. 11 (1997) 187-205"
 */
public final class ShaftAngle implements Serializable {
    private static final long serialVersionUID = 1;
    private static final int FEWEST_PULSES = 4;
    private static final int MOST_MARKS = 1_000_000;
    /** Halving alone comes to the last digit in so many. */
    private static final int MOST_STEPS = 60;

    private final double[] revolutions;
    private final double[] seconds;
    private final transient PolynomialSplineFunction timeOverAngle;
    private final transient PolynomialSplineFunction slownessOverAngle;
    private final transient PolynomialFunction[] cubics;

    private ShaftAngle(double[] revolutions, double[] seconds) {
        this.revolutions = rising("revolutions", revolutions);
        this.seconds = rising("seconds", seconds);
        timeOverAngle = new SplineInterpolator().interpolate(revolutions, seconds);
        slownessOverAngle = timeOverAngle.polynomialSplineDerivative();
        cubics = timeOverAngle.getPolynomials();
    }

    /**
     * Takes a train of evenly spaced marks.
     *
     * @param pulses pulses, at least 4, {@linkplain PulseTrain#repaired() repaired} where needed
     * @param pulsesPerRevolution number of marks, 1 to 1,000,000
     * @return the angle
     * @throws IllegalArgumentException if there are too few pulses or the number is out of range
     */
    public static ShaftAngle of(PulseTrain pulses, int pulsesPerRevolution) {
        Require.count("pulsesPerRevolution", pulsesPerRevolution, 1, MOST_MARKS);
        double[] even = new double[pulsesPerRevolution];
        Arrays.fill(even, 1.0 / pulsesPerRevolution);
        return of(Objects.requireNonNull(pulses, "pulses"), even);
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
        double[] spacing = Objects.requireNonNull(markSpacing, "markSpacing").clone();
        double sum = 0;
        for (int m = 0; m < spacing.length; m++) {
            sum += Require.positive("markSpacing[" + m + "]", spacing[m], "");
        }
        Require.within("sum of markSpacing", sum, 1 - 1e-9, 1 + 1e-9, "");
        double[] seconds = Objects.requireNonNull(pulses, "pulses").seconds();
        Require.atLeast("number of pulses", seconds.length, FEWEST_PULSES);
        double[] revolutions = new double[seconds.length];
        for (int i = 1; i < seconds.length; i++) {
            revolutions[i] = revolutions[i - 1] + spacing[(i - 1) % spacing.length];
        }
        return new ShaftAngle(revolutions, seconds);
    }

    /** Takes points of a shaft that was followed otherwise, at least 4; both rise, the first angle is zero. */
    static ShaftAngle through(double[] revolutions, double[] seconds) {
        return new ShaftAngle(revolutions, seconds);
    }

    /**
     * Returns the angle of a shaft that is geared to this one.
     *
     * @param ratio its turns over those of this shaft, 1e-100 to 1e100
     * @return its angle, zero at the same time as this one
     * @throws IllegalArgumentException if the ratio is out of range
     */
    public ShaftAngle geared(double ratio) {
        Require.within("ratio", ratio, 1e-100, 1e100, "");
        return new ShaftAngle(Arrays.stream(revolutions).map(turned -> ratio * turned).toArray(), seconds);
    }

    private Object readResolve() {
        double[] turned = Require.finiteCopy("revolutions", revolutions);
        if (Require.atLeast("number of pulses", turned.length, FEWEST_PULSES) != seconds.length || turned[0] != 0) {
            throw new IllegalArgumentException("revolutions must be as many as seconds, the first 0: " + turned.length
                    + ", " + seconds.length + ", " + turned[0]);
        }
        return new ShaftAngle(turned, seconds.clone());
    }

    private static double[] rising(String name, double[] values) {
        for (int i = 0; i < values.length; i++) {
            if (!(Require.finite(name + "[" + i + "]", values[i]) > (i == 0 ? -Double.MAX_VALUE : values[i - 1]))) {
                throw Require.failure(name + "[" + i + "]", "above the one before", values[i]);
            }
        }
        return values;
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
     * Returns the time of the first pulse.
     *
     * @return time in s
     */
    public double firstSeconds() {
        return seconds[0];
    }

    /**
     * Returns the time of the last pulse.
     *
     * @return time in s
     */
    public double lastSeconds() {
        return seconds[seconds.length - 1];
    }

    /**
     * Returns the time at an angle.
     *
     * @param revolution angle in revolutions, from 0 to {@link #revolutions()}
     * @return time in s
     * @throws IllegalArgumentException if the angle is out of range
     */
    public double secondsAt(double revolution) {
        return timeOverAngle.value(checked(revolution));
    }

    /**
     * Returns the speed at an angle.
     *
     * @param revolution angle in revolutions, from 0 to {@link #revolutions()}
     * @return speed of rotation there
     * @throws IllegalArgumentException if the angle is out of range
     */
    public RotationSpeed speedAt(double revolution) {
        return RotationSpeed.ofHertz(1 / slownessOverAngle.value(checked(revolution)));
    }

    /** Times at equal steps of angle, which all lie within the pulses but for rounding. */
    double[] secondsAt(double first, double step, int count) {
        double[] times = new double[count];
        int at = 0;
        for (int j = 0; j < count; j++) {
            double revolution = first + j * step;
            while (at < cubics.length - 1 && revolution > revolutions[at + 1]) {
                at++;
            }
            times[j] = cubics[at].value(revolution - revolutions[at]);
        }
        return times;
    }

    /** The sum turns a negative zero, for which the spline finds no step, into zero. */
    private double checked(double revolution) {
        return Require.within("revolution", revolution, 0, revolutions(), "") + 0.0;
    }

    /**
     * Returns the angle at a time.
     *
     * @param time time in s, from {@link #firstSeconds()} to {@link #lastSeconds()}
     * @return angle in revolutions
     * @throws IllegalArgumentException if the time is out of range
     */
    public double revolutionsAt(double time) {
        Require.within("time", time, firstSeconds(), lastSeconds(), "s");
        int found = Arrays.binarySearch(seconds, time);
        return found >= 0 ? revolutions[found]
                : inverse(-found - 2, cubics[-found - 2].getCoefficients(), time);
    }

    /** Angles at equal steps of time; before the first pulse that of the first, behind the last that of the last. */
    double[] revolutionsAt(double startSeconds, double rateHertz, int first, int count) {
        double[] angles = new double[count];
        int step = -1;
        double[] cubic = {};
        for (int i = 0; i < count; i++) {
            double time = Math.max(firstSeconds(), Math.min(lastSeconds(), startSeconds + (first + i) / rateHertz));
            int before = step;
            while (step < cubics.length && time >= seconds[step + 1]) {
                step++;
            }
            if (step != before && step < cubics.length) {
                cubic = cubics[step].getCoefficients();
            }
            angles[i] = time == seconds[step] ? revolutions[step] : inverse(step, cubic, time);
        }
        return angles;
    }

    /** Newton's steps within one step of the spline, halved where one would leave it. */
    private double inverse(int step, double[] coefficients, double time) {
        double c0 = coefficients[0];
        double c1 = coefficients.length > 1 ? coefficients[1] : 0;
        double c2 = coefficients.length > 2 ? coefficients[2] : 0;
        double c3 = coefficients.length > 3 ? coefficients[3] : 0;
        double low = 0;
        double high = revolutions[step + 1] - revolutions[step];
        double x = high * (time - seconds[step]) / (seconds[step + 1] - seconds[step]);
        for (int i = 0; i < MOST_STEPS; i++) {
            double error = c0 - time + x * (c1 + x * (c2 + x * c3));
            low = error < 0 ? x : low;
            high = error < 0 ? high : x;
            double next = x - error / (c1 + x * (2 * c2 + x * 3 * c3));
            next = next >= low && next <= high ? next : 0.5 * (low + high);
            if (Math.abs(next - x) <= 1e-13 * (1 + revolutions[step])) {
                return revolutions[step] + next;
            }
            x = next;
        }
        return revolutions[step] + x;
    }

    /**
     * Returns the mean speed.
     *
     * @return revolutions over time from the first to the last pulse
     */
    public RotationSpeed meanSpeed() {
        return RotationSpeed.ofHertz(revolutions() / (seconds[seconds.length - 1] - seconds[0]));
    }

    /**
     * Returns how far the shaft ever runs ahead of one that turns at the mean speed from the first to the last pulse,
     * or falls behind it. A line at so many orders that the product is well below a tenth of a revolution isn't
     * smeared.
     *
     * @return largest distance in revolutions, zero or more; that between the pulses isn't looked at
     */
    public double wanderRevolutions() {
        double mean = meanSpeed().hertz();
        double largest = 0;
        for (int i = 0; i < seconds.length; i++) {
            largest = Math.max(largest, Math.abs(revolutions[i] - mean * (seconds[i] - seconds[0])));
        }
        return largest;
    }

    /**
     * Counts the revolutions that a recording shares with the pulses.
     *
     * @param wave recording on the time scale of the pulses
     * @return revolutions, zero or more
     */
    public double revolutionsWithin(Waveform wave) {
        double from = Math.max(firstSeconds(), Objects.requireNonNull(wave, "wave").startSeconds());
        double to = Math.min(lastSeconds(), wave.startSeconds() + (wave.length() - 1) / wave.sampleRateHertz());
        return to > from ? revolutionsAt(to) - revolutionsAt(from) : 0;
    }

    /**
     * Gives a recording as if the shaft had turned at its {@linkplain #meanSpeed() mean speed} all the time: its
     * samples at equal steps of angle, as many to the second at the mean speed as it has now. What keeps its order
     * becomes a sharp line; what keeps its frequency, such as a resonance or hum, smears as far as the speed varies.
     * Hence envelopes of bands are better resampled themselves where the speed varies by more than a tenth.
     *
     * @param wave recording on the time scale of the pulses
     * @return what lies inside recording and pulses; times are those of a shaft at mean speed from the first pulse on
     * @throws IllegalArgumentException if fewer than 4 samples lie inside both
     */
    public Waveform atMeanSpeed(Waveform wave) {
        Objects.requireNonNull(wave, "wave");
        EvenTurning even = EvenTurning.of(this, wave.startSeconds(), wave.sampleRateHertz(), wave.length());
        return Waveform.ofSi(wave.quantity(), wave.sampleRateHertz(), even.resample(wave.samples()))
                .startingAt(even.firstSeconds());
    }

    /**
     * Gives a squared envelope as if the shaft had turned at its {@linkplain #meanSpeed() mean speed} all the time. The
     * band stays one of the machine, in Hz; only the pulsation follows the shaft. A pulsation of any order of the
     * shaft is a sharp line then, at the order times the mean speed.
     *
     * @param envelope squared envelope of a recording on the time scale of the pulses
     * @return what lies inside recording and pulses, at the same number of values a second
     * @throws IllegalArgumentException if fewer than 4 values lie inside both
     * @see "R. B. Randall, J. Antoni, Mech. Syst. Signal Process. 25 (2011) 485-520, on envelopes at varying speed
     *     (from memory, unverified)"
     */
    public SquaredEnvelope atMeanSpeed(SquaredEnvelope envelope) {
        Objects.requireNonNull(envelope, "envelope");
        EvenTurning even = EvenTurning.of(this, envelope.timeSeconds(0), envelope.sampleRateHertz(),
                envelope.length());
        double[] squares = even.resample(envelope.squares());
        for (int i = 0; i < squares.length; i++) {
            squares[i] = Math.max(0, squares[i]); // Between samples near zero the interpolation may fall below it.
        }
        return envelope.with(even.firstSeconds(), squares);
    }

    /** Returns revolutions and mean speed. */
    @Override
    public String toString() {
        return Digits.significant(revolutions(), 4) + " revolutions at " + meanSpeed();
    }
}
