package dev.vibra.balance.reading;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.Objects;

/**
 * Forward model of a reading: the recording and the tachometer marks that a vector at rotation frequency would give,
 * {@code x(t) = Re(V·exp(iΩ(t − t₀)))} with marks at {@code t₀ + k/f}.
 *
 * @param vector vector at rotation frequency
 * @param speed speed of rotation
 * @param firstMarkSeconds time t₀ of the first mark in s, zero or more and below one revolution
 */
public record SynchronousSignal(VibrationVector vector, RotationSpeed speed, double firstMarkSeconds)
        implements Serializable {
    private static final int MOST = 100_000_000;

    /**
     * Checks the values.
     *
     * @param vector vector at rotation frequency
     * @param speed speed of rotation
     * @param firstMarkSeconds time t₀ of the first mark in s, zero or more and below one revolution
     */
    public SynchronousSignal {
        Objects.requireNonNull(vector, "vector");
        Objects.requireNonNull(speed, "speed");
        if (!(firstMarkSeconds >= 0 && firstMarkSeconds < 1 / speed.hertz())) {
            throw Require.failure("time of the first mark", "zero or more and below one revolution, "
                    + 1 / speed.hertz() + " s", firstMarkSeconds);
        }
    }

    /**
     * Makes a signal whose first mark passes at the first sample.
     *
     * @param vector vector at rotation frequency
     * @param speed speed of rotation
     * @return the signal
     */
    public static SynchronousSignal of(VibrationVector vector, RotationSpeed speed) {
        return new SynchronousSignal(vector, speed, 0);
    }

    /**
     * Makes the recording.
     *
     * @param sampleRateHertz sample rate in Hz, above twice the rotation frequency
     * @param samples number of samples, from 1 to 100 million
     * @return recording in the quantity of the vector
     * @throws IllegalArgumentException if a value is out of range
     */
    public Waveform recording(double sampleRateHertz, int samples) {
        if (!(sampleRateHertz > 2 * speed.hertz() && sampleRateHertz < Double.POSITIVE_INFINITY)) {
            throw Require.failure("sampleRateHertz", "finite and above twice the rotation frequency, "
                    + 2 * speed.hertz() + " Hz", sampleRateHertz);
        }
        if (Require.atLeast("samples", samples, 1) > MOST) {
            throw new IllegalArgumentException("samples must be at most " + MOST + ": " + samples);
        }
        double[] out = new double[samples];
        for (int n = 0; n < out.length; n++) {
            Phasor turn = Phasor.polar(1, speed.radiansPerSecond() * (n / sampleRateHertz - firstMarkSeconds));
            out[n] = vector.peak().times(turn).re();
        }
        return Waveform.ofSi(vector.quantity(), sampleRateHertz, out);
    }

    /**
     * Returns the times of the marks within a recording.
     *
     * @param durationSeconds length of the recording in s, finite, zero or more
     * @return times in s, rising
     * @throws IllegalArgumentException if the duration is out of range
     */
    public double[] marks(double durationSeconds) {
        Require.notNegative("duration", durationSeconds, "s");
        double turns = Math.floor((durationSeconds - firstMarkSeconds) * speed.hertz());
        if (!(turns < MOST)) {
            throw Require.failure("duration", "of at most " + MOST + " revolutions", durationSeconds);
        }
        int count = (int) turns + 1;
        double[] out = new double[Math.max(0, count)];
        for (int k = 0; k < out.length; k++) {
            out[k] = firstMarkSeconds + k / speed.hertz();
        }
        return out;
    }

    /** Returns vector and speed. */
    @Override
    public String toString() {
        return vector + " at " + speed;
    }
}
