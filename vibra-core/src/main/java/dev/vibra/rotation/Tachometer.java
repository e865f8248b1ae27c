package dev.vibra.rotation;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.level.Percentiles;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;

/**
 * How pulses are found in the signal of a tachometer: the signal has to fall below the level less the hysteresis before
 * a rise through the level counts again (and the other way round for falling pulses). Crossings are interpolated
 * between samples by a straight line.
 *
 * @param level level to cross, in the unit of the signal, finite
 * @param hysteresis distance to go back before the next pulse, finite, above zero
 * @param rising true to count rising crossings, false to count falling ones
 */
public record Tachometer(double level, double hysteresis, boolean rising) implements Serializable {
    /**
     * Checks the values.
     *
     * @param level see the record
     * @param hysteresis see the record
     * @param rising see the record
     */
    public Tachometer {
        Require.finite("level", level);
        Require.positive("hysteresis", hysteresis, "");
    }

    /**
     * Chooses level and hysteresis by the signal: half-way between its smallest and its largest value (of 99.8 % of the
     * samples), hysteresis a quarter of that range, rising.
     *
     * @param signal signal of the tachometer
     * @return the trigger
     * @throws IllegalArgumentException if the signal is constant
     */
    public static Tachometer fitting(Waveform signal) {
        Percentiles percentiles = Percentiles.of(Objects.requireNonNull(signal, "signal").samples());
        double low = percentiles.at(0.1);
        double high = percentiles.at(99.9);
        if (!(high > low)) { // pulses shorter than a thousandth of the time
            low = percentiles.at(0);
            high = percentiles.at(100);
        }
        if (!(high > low)) {
            throw new IllegalArgumentException("signal of a tachometer must not be constant: " + low);
        }
        return new Tachometer(0.5 * (low + high), 0.25 * (high - low), true);
    }

    /**
     * Finds the pulses of a recording.
     *
     * @param signal signal of the tachometer
     * @return times of the pulses
     */
    public PulseTrain pulses(Waveform signal) {
        double sign = rising ? 1 : -1;
        double threshold = sign * level;
        double[] times = new double[64];
        int count = 0;
        boolean armed = false;
        double before = sign * Objects.requireNonNull(signal, "signal").at(0);
        for (int i = 0; i < signal.length(); i++) {
            double here = sign * signal.at(i);
            if (armed && here >= threshold) {
                double fraction = (threshold - before) / (here - before);
                times = count == times.length ? Arrays.copyOf(times, 2 * count) : times;
                times[count++] = signal.startSeconds() + (i - 1 + fraction) / signal.sampleRateHertz();
                armed = false;
            }
            armed |= here < threshold - hysteresis;
            before = here;
        }
        return PulseTrain.of(Arrays.copyOf(times, count));
    }

    /** Returns the setting. */
    @Override
    public String toString() {
        return (rising ? "rising through " : "falling through ") + Digits.compact(level, 4) + ", hysteresis "
                + Digits.compact(hysteresis, 4);
    }
}
