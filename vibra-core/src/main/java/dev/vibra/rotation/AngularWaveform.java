package dev.vibra.rotation;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.Locale;
import java.util.Objects;

/**
 * Samples at equal steps of the angle of a shaft instead of equal steps of time: whatever keeps its order stays sharp,
 * however the speed changes.
 */
public final class AngularWaveform implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double MOST_REVOLUTIONS = 1e9;
    /** Finer steps of angle show nothing more of the recording. */
    private static final int MOST_FINER = 16;
    private static final int FREE_SAMPLES = 1 << 20;

    private final Quantity quantity;
    private final int samplesPerRevolution;
    private final double firstRevolution;
    private final ShaftAngle angle;
    private final double[] samples;

    /** The array is owned: callers pass a fresh one. */
    AngularWaveform(Quantity quantity, int samplesPerRevolution, double firstRevolution, ShaftAngle angle,
            double[] owned) {
        this.quantity = Objects.requireNonNull(quantity, "quantity");
        this.samplesPerRevolution = Require.atLeast("samplesPerRevolution", samplesPerRevolution, 4);
        this.firstRevolution = Require.notNegative("firstRevolution", firstRevolution, "");
        this.angle = Objects.requireNonNull(angle, "angle");
        this.samples = owned;
        Require.atLeast("number of samples", owned.length, samplesPerRevolution);
        Require.within("end of the samples in revolutions", firstRevolution + revolutions(), 0,
                angle.revolutions() + 1e-9 * (1 + angle.revolutions()), "");
        Require.allFinite("samples", owned);
    }

    private Object readResolve() {
        return new AngularWaveform(quantity, samplesPerRevolution, firstRevolution, angle, samples.clone());
    }

    /**
     * Resamples a recording at equal steps of angle (computed order tracking). What lies above half the samples per
     * revolution at the speed of the moment is filtered out on the way. The result begins and ends with whole
     * revolutions that lie inside the recording and the pulses.
     *
     * @param wave recording on the time scale of the pulses
     * @param angle angle of the shaft
     * @param samplesPerRevolution samples per revolution, at least 4; 2.56 times the highest order wanted, or more
     * @return the angular waveform
     * @throws IllegalArgumentException if no whole revolution lies inside both, or more than 2²⁰ samples and more than
     *     sixteen times those of the recording are asked for
     */
    public static AngularWaveform of(Waveform wave, ShaftAngle angle, int samplesPerRevolution) {
        Require.atLeast("samplesPerRevolution", samplesPerRevolution, 4);
        double[] x = Objects.requireNonNull(wave, "wave").samples();
        double start = wave.startSeconds();
        double end = start + (x.length - 1) / wave.sampleRateHertz();
        Require.within("revolutions of the angle", Objects.requireNonNull(angle, "angle").revolutions(), 0,
                MOST_REVOLUTIONS, "");
        int first = Math.max(0, wholeAt(angle, start) - 1);
        while (first <= angle.revolutions() && angle.secondsAt(first) < start) {
            first++;
        }
        int last = Math.min((int) Math.floor(angle.revolutions() + 1e-9), wholeAt(angle, end) + 2);
        while (last > first && angle.secondsAt(Math.min(last, angle.revolutions())) > end) {
            last--;
        }
        if (last <= first) {
            throw new IllegalArgumentException("a whole revolution must lie inside the recording and the pulses: "
                    + wave
                    + "; " + angle);
        }
        long most = Math.min(Require.MOST_SAMPLES, Math.max(FREE_SAMPLES, (long) MOST_FINER * x.length));
        if ((long) (last - first) * samplesPerRevolution > most) {
            throw new IllegalArgumentException("samplesPerRevolution must be at most " + most / (last - first) + " for "
                    + (last - first) + " revolutions of " + x.length + " samples: " + samplesPerRevolution);
        }
        double[] out = new double[(last - first) * samplesPerRevolution];
        for (int j = 0; j < out.length; j++) {
            double revolution = first + (double) j / samplesPerRevolution;
            double angularRate = samplesPerRevolution * angle.speedAt(revolution).hertz();
            double bandwidth = Math.min(1, angularRate / wave.sampleRateHertz());
            out[j] = SincInterpolator.at(x, (angle.secondsAt(revolution) - start) * wave.sampleRateHertz(), bandwidth);
        }
        return new AngularWaveform(wave.quantity(), samplesPerRevolution, first, angle, out);
    }

    /** Whole revolutions that the shaft has turned at a time, give or take one. */
    private static int wholeAt(ShaftAngle angle, double time) {
        return (int) angle.revolutionsAt(Math.max(angle.firstSeconds(), Math.min(angle.lastSeconds(), time)));
    }

    /**
     * Returns what the samples measure.
     *
     * @return the quantity
     */
    public Quantity quantity() {
        return quantity;
    }

    /**
     * Returns the samples per revolution.
     *
     * @return samples per revolution, at least 4
     */
    public int samplesPerRevolution() {
        return samplesPerRevolution;
    }

    /**
     * Returns the number of samples.
     *
     * @return number of samples
     */
    public int length() {
        return samples.length;
    }

    /**
     * Returns the number of whole revolutions.
     *
     * @return revolutions, at least 1
     */
    public int revolutions() {
        return samples.length / samplesPerRevolution;
    }

    /**
     * Returns one sample.
     *
     * @param index number of the sample from 0
     * @return sample in the SI unit of the quantity
     * @throws IndexOutOfBoundsException if there is no such sample
     */
    public double at(int index) {
        return samples[Objects.checkIndex(index, samples.length)];
    }

    /**
     * Returns all samples.
     *
     * @return a new array in the SI unit of the quantity
     */
    public double[] samples() {
        return samples.clone();
    }

    /** Returns the angle at which the samples begin. */
    double firstRevolution() {
        return firstRevolution;
    }

    /** Returns the angle of the shaft over time. */
    ShaftAngle angle() {
        return angle;
    }

    /** Returns revolutions and steps. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%,d revolutions of %d samples, %s", revolutions(), samplesPerRevolution,
                quantity);
    }
}
