package dev.vibra.speedrun;

import dev.vibra.evidence.Remark;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.PulseTrain;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.rotation.Tachometer;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * Speed of a shaft over time while it runs up or coasts down, from a tachometer. Where the speed stays for a while at
 * either end, the sweep is the stretch between. Immutable.
 *
 * <pre>{@code
 * SpeedSweep sweep = SpeedSweep.read(tachometer, 1).sweep().orElseThrow();
 * sweep.direction()
 * }</pre>
 */
public final class SpeedSweep implements Serializable {
    private static final long serialVersionUID = 1;
    /** The speed at a turn is that over this many turns, so that a ragged pulse doesn't shake it. */
    private static final int SMOOTHED_TURNS = 4;
    /** What ends with the slowest speed so much below the fastest is a run; common practice, no source. */
    private static final double LEAST_RANGE = 1.2;
    /** Turns of the sweep: a dozen points of an order that is followed over eight turns, overlapping by half. */
    private static final int FEWEST_TURNS = 48;
    /** Share of the range by which the speed may turn back on its way. */
    private static final double MOST_BACK = 0.05;
    /** Share of the range within which the speed counts as staying at an end. */
    private static final double AT_END = 0.005;
    /** Share of the range by which the speed may come back outside the sweep without a word. */
    private static final double ELSEWHERE = 0.1;
    private static final int FEWEST_PULSES = 12;

    private final ShaftAngle angle;
    private final double[] seconds;
    private final double[] hertz;
    private final List<Remark> remarks;

    /** Speeds at rising times, never turning back; the arrays are owned. */
    private SpeedSweep(ShaftAngle angle, double[] seconds, double[] hertz, List<Remark> remarks) {
        this.angle = Objects.requireNonNull(angle, "angle");
        this.seconds = Require.finiteCopy("seconds", seconds);
        this.hertz = Require.finiteCopy("hertz", hertz);
        this.remarks = Require.copy("remarks", remarks);
        Require.within("number of speeds", this.hertz.length, Require.atLeast("number of times", this.seconds.length,
                2), this.seconds.length, "");
        int sign = this.hertz[this.hertz.length - 1] > this.hertz[0] ? 1 : -1;
        for (int i = 0; i < this.hertz.length; i++) {
            Require.positive("hertz[" + i + "]", this.hertz[i], "Hz");
            if (i > 0 && !(this.seconds[i] > this.seconds[i - 1])) {
                throw Require.failure("seconds[" + i + "]", "after the one before", this.seconds[i]);
            }
            if (i > 0 && !(sign * (this.hertz[i] - this.hertz[i - 1]) >= 0)) {
                throw Require.failure("hertz[" + i + "]", "going on as the speed before", this.hertz[i]);
            }
        }
        if (!(highest().hertz() > lowest().hertz())) {
            throw Require.failure("highest speed", "above the lowest", highest().hertz());
        }
    }

    private Object readResolve() {
        return new SpeedSweep(angle, seconds, hertz, remarks);
    }

    /**
     * Reads the sweep from the recording of a tachometer. Doubled pulses are taken out and missing ones filled in, and
     * that is remarked; with several marks on the shaft, one pulse of each turn is taken, so that their spacing doesn't
     * matter.
     *
     * @param tachometer recording of the pulses
     * @param pulsesPerRevolution pulses per revolution, 1 to 1,000,000
     * @return the sweep, or why there is none: no pulses, too many wrong ones, a speed that hardly changes or goes to
     *     and fro, too few turns
     * @throws IllegalArgumentException if the number of pulses is out of range
     */
    public static SweepReading read(Waveform tachometer, int pulsesPerRevolution) {
        Require.count("pulsesPerRevolution", pulsesPerRevolution, 1, 1_000_000);
        if (!(Objects.requireNonNull(tachometer, "tachometer").peakToPeak().si() > 0)) {
            return SweepReading.refused("the recording of the tachometer is constant");
        }
        PulseTrain pulses = moving(Tachometer.fitting(tachometer).pulses(tachometer));
        if (pulses.size() < Math.max(FEWEST_PULSES, 4 * (long) pulsesPerRevolution)) {
            return SweepReading.refused("the recording of the tachometer holds " + pulses);
        }
        int doubled = pulses.doubled().size();
        int gaps = pulses.gaps().size();
        if (10 * (doubled + gaps) > pulses.size()) { // common practice, no source
            return SweepReading.refused(doubled + gaps + " of the " + pulses.size()
                    + " pulses of the tachometer are doubled or missing");
        }
        List<Remark> remarks = doubled + gaps == 0 ? List.of() : List.of(Remark.note("pulses-repaired",
                "pulses of the tachometer were repaired: " + doubled + " doubled, " + gaps + (gaps == 1 ? " gap"
                        : " gaps"), doubled + gaps, 0.1 * pulses.size()));
        double[] all = pulses.repaired().seconds();
        double[] turns = new double[(all.length - 1) / pulsesPerRevolution + 1];
        for (int i = 0; i < turns.length; i++) {
            turns[i] = all[i * pulsesPerRevolution];
        }
        return between(turns, remarks);
    }

    /** A shaft that comes to a standstill spaces its last pulses like gaps; these few are left out, at either end. */
    private static PulseTrain moving(PulseTrain pulses) {
        double[] times = pulses.seconds();
        int first = 0;
        int last = times.length - 1;
        while (last - first > 3 && times[first + 1] - times[first] > 1.15 * (times[first + 2] - times[first + 1])) {
            first++;
        }
        while (last - first > 3 && times[last] - times[last - 1] > 1.15 * (times[last - 1] - times[last - 2])) {
            last--;
        }
        return PulseTrain.of(Arrays.copyOfRange(times, first, last + 1));
    }

    private static SweepReading between(double[] turns, List<Remark> remarks) {
        int nodes = turns.length - SMOOTHED_TURNS;
        if (nodes < FEWEST_TURNS) {
            return SweepReading.refused(tooFast(Math.max(0, turns.length - 1)));
        }
        double[] seconds = new double[nodes];
        double[] hertz = new double[nodes];
        int low = 0;
        int high = 0;
        for (int i = 0; i < nodes; i++) {
            seconds[i] = turns[i + SMOOTHED_TURNS / 2];
            hertz[i] = SMOOTHED_TURNS / (turns[i + SMOOTHED_TURNS] - turns[i]);
            low = hertz[i] < hertz[low] ? i : low;
            high = hertz[i] > hertz[high] ? i : high;
        }
        if (!(hertz[high] >= LEAST_RANGE * hertz[low])) {
            return SweepReading.refused("the speed hardly changes, from " + RotationSpeed.ofHertz(hertz[low]) + " to "
                    + RotationSpeed.ofHertz(hertz[high]) + "; a run changes it by a fifth or more");
        }
        double margin = AT_END * (hertz[high] - hertz[low]);
        int sign = high > low ? 1 : -1;
        int begin = Math.min(low, high);
        int end = Math.max(low, high);
        double from = hertz[begin];
        double to = hertz[end];
        for (int i = begin; i < end; i++) {
            begin = sign * (hertz[i] - from) <= margin ? i : begin;
        }
        for (int i = end; i > begin; i--) {
            end = sign * (to - hertz[i]) <= margin ? i : end;
        }
        List<Remark> all = new ArrayList<>(remarks);
        double most = ELSEWHERE * (hertz[high] - hertz[low]);
        boolean elsewhere = false;
        for (int i = 0; i < nodes; i++) {
            elsewhere |= (i < begin || i > end) && sign * (i < begin ? hertz[i] - from : to - hertz[i]) > most;
        }
        if (elsewhere) {
            all.add(Remark.note("part-of-recording", "the speed changes to and fro; the stretch from its lowest to its"
                    + " highest, " + Digits.significant(seconds[begin], 3) + " to "
                    + Digits.significant(seconds[end], 3) + " s, is looked at", seconds[end] - seconds[begin],
                    seconds[nodes - 1] - seconds[0]));
        }
        return swept(turns, Arrays.copyOfRange(seconds, begin, end + 1), Arrays.copyOfRange(hertz, begin, end + 1),
                all);
    }

    private static SweepReading swept(double[] turns, double[] seconds, double[] hertz, List<Remark> remarks) {
        int last = hertz.length - 1;
        if (last < FEWEST_TURNS) {
            return SweepReading.refused(tooFast(last));
        }
        int sign = hertz[last] > hertz[0] ? 1 : -1;
        double most = MOST_BACK * Math.abs(hertz[last] - hertz[0]);
        double[] onward = hertz.clone();
        for (int i = 1; i <= last; i++) {
            onward[i] = sign * Math.max(sign * hertz[i], sign * onward[i - 1]);
            if (!(Math.abs(onward[i] - hertz[i]) <= most)) {
                return SweepReading.refused("the speed goes to and fro, at "
                        + Digits.significant(seconds[i], 3) + " s by "
                        + Digits.significant(60 * Math.abs(onward[i] - hertz[i]), 2) + " r/min; give one run-up or one"
                        + " coast-down");
            }
        }
        return SweepReading.of(new SpeedSweep(ShaftAngle.of(PulseTrain.of(turns), 1), seconds, onward, remarks));
    }

    private static String tooFast(int turns) {
        return "too fast: the shaft turns " + turns + " times while the speed changes, " + FEWEST_TURNS
                + " are needed to follow an order";
    }

    /** {@return whether the speed rises or falls} */
    public RunDirection direction() {
        return hertz[hertz.length - 1] > hertz[0] ? RunDirection.RUN_UP : RunDirection.COAST_DOWN;
    }

    /** {@return the slowest speed of the sweep} */
    public RotationSpeed lowest() {
        return RotationSpeed.ofHertz(Math.min(hertz[0], hertz[hertz.length - 1]));
    }

    /** {@return the fastest speed of the sweep} */
    public RotationSpeed highest() {
        return RotationSpeed.ofHertz(Math.max(hertz[0], hertz[hertz.length - 1]));
    }

    /** {@return when the sweep begins, in s on the time scale of the tachometer} */
    public double beginSeconds() {
        return seconds[0];
    }

    /** {@return when the sweep ends, in s} */
    public double endSeconds() {
        return seconds[seconds.length - 1];
    }

    /** {@return the angle of the shaft over the whole recording of the tachometer} */
    public ShaftAngle angle() {
        return angle;
    }

    /** {@return what is worth knowing about the pulses} */
    public List<Remark> remarks() {
        return remarks;
    }

    /**
     * Returns the speed at a time, a straight line between turns.
     *
     * @param time time in s, from the begin to the end of the sweep
     * @return the speed
     * @throws IllegalArgumentException if the time is out of range
     */
    public RotationSpeed speedAt(double time) {
        Require.within("time", time, beginSeconds(), endSeconds(), "s");
        return RotationSpeed.ofHertz(interpolated(seconds, hertz, time, 1));
    }

    /**
     * Returns when a speed is passed, where it is held for a while the first time.
     *
     * @param speed speed from the lowest to the highest
     * @return time in s
     * @throws IllegalArgumentException if the speed is out of range
     */
    public double secondsAt(RotationSpeed speed) {
        double wanted = Require.within("speed", Objects.requireNonNull(speed, "speed").hertz(), lowest().hertz(),
                highest().hertz(), "Hz");
        return interpolated(hertz, seconds, wanted, direction().sign());
    }

    private static double interpolated(double[] x, double[] y, double at, int sign) {
        int i = 1;
        while (i < x.length - 1 && sign * x[i] < sign * at) {
            i++;
        }
        double share = x[i] == x[i - 1] ? 0 : (at - x[i - 1]) / (x[i] - x[i - 1]);
        return y[i - 1] + Math.max(0, Math.min(1, share)) * (y[i] - y[i - 1]);
    }

    /**
     * Returns how fast the speed changes.
     *
     * @return change of the speed over the time of the sweep in Hz per s, above zero in either direction
     */
    public double meanRateHertzPerSecond() {
        return (highest().hertz() - lowest().hertz()) / (endSeconds() - beginSeconds());
    }

    /**
     * Returns how fast the speed changes between two speeds.
     *
     * @param low lower speed in Hz, at least the lowest
     * @param high higher speed in Hz, at most the highest
     * @return mean rate in Hz per s, above zero in either direction
     */
    double rateBetween(double low, double high) {
        double time = secondsAt(RotationSpeed.ofHertz(high)) - secondsAt(RotationSpeed.ofHertz(low));
        return Math.abs((high - low) / time);
    }

    /** Two sweeps are equal if their speeds over time and their remarks are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof SpeedSweep sweep && Arrays.equals(seconds, sweep.seconds)
                && Arrays.equals(hertz, sweep.hertz) && remarks.equals(sweep.remarks);
    }

    /** Hashes the speeds. */
    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(seconds) + Arrays.hashCode(hertz);
    }

    /** Returns direction, speeds and duration, as in {@code coast-down from 3000 to 300 r/min in 60.0 s}. */
    @Override
    public String toString() {
        RotationSpeed from = RotationSpeed.ofHertz(hertz[0]);
        RotationSpeed to = RotationSpeed.ofHertz(hertz[hertz.length - 1]);
        return direction() + " from " + Math.round(from.revolutionsPerMinute()) + " to "
                + Math.round(to.revolutionsPerMinute()) + " r/min in "
                + Digits.significant(endSeconds() - beginSeconds(), 3) + " s";
    }
}
