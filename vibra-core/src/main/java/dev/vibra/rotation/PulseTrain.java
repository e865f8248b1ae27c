package dev.vibra.rotation;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.level.Percentiles;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/** Times of the pulses of a tachometer, rising. */
public final class PulseTrain implements Serializable {
    private static final long serialVersionUID = 1;
    private static final int NEIGHBOURS = 5;
    private static final double DOUBLE = 0.5;
    private static final double MISSING = 1.6;

    private final double[] times;

    private PulseTrain(double[] times) {
        this.times = times;
    }

    private Object readResolve() {
        return of(times);
    }

    /**
     * Makes a train of given times.
     *
     * @param seconds times in s, rising; copied
     * @return the train
     * @throws IllegalArgumentException if a time is not finite or doesn't rise
     */
    public static PulseTrain of(double... seconds) {
        double[] times = Objects.requireNonNull(seconds, "seconds").clone();
        Require.allFinite("seconds", times);
        for (int i = 1; i < times.length; i++) {
            if (!(times[i] > times[i - 1])) {
                throw Require.failure("seconds[" + i + "]", "after the one before, " + times[i - 1] + " s", times[i]);
            }
        }
        return new PulseTrain(times);
    }

    /**
     * Returns the number of pulses.
     *
     * @return count, zero or more
     */
    public int size() {
        return times.length;
    }

    /**
     * Returns the times.
     *
     * @return a new array, in s
     */
    public double[] seconds() {
        return times.clone();
    }

    /**
     * Finds pulses too many: those that follow the one before in less than half the median of the intervals around.
     *
     * @return numbers of the pulses from 0, none if there are none
     */
    public List<Integer> doubled() {
        List<Integer> found = new ArrayList<>();
        double last = times.length == 0 ? 0 : times[0];
        for (int i = 1; i < times.length; i++) {
            if (times[i] - last < DOUBLE * medianInterval(i)) {
                found.add(i);
            } else {
                last = times[i];
            }
        }
        return found;
    }

    /**
     * Finds gaps: intervals of more than 1.6 times the median of those around.
     *
     * @return numbers of the pulses before the gaps from 0, none if there are none
     */
    public List<Integer> gaps() {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i + 1 < times.length; i++) {
            if (times[i + 1] - times[i] > MISSING * medianInterval(i + 1)) {
                found.add(i);
            }
        }
        return found;
    }

    /**
     * Takes doubled pulses out and fills gaps with evenly spaced ones, so that every pulse is one step of the shaft
     * again.
     *
     * @return the repaired train; this one if nothing is wrong
     */
    public PulseTrain repaired() {
        Set<Integer> doubled = new HashSet<>(doubled());
        double[] single = new double[times.length - doubled.size()];
        for (int i = 0, n = 0; i < times.length; i++) {
            if (!doubled.contains(i)) {
                single[n++] = times[i];
            }
        }
        return doubled.isEmpty() ? filled() : new PulseTrain(single).filled();
    }

    private PulseTrain filled() {
        Set<Integer> gaps = new HashSet<>(gaps());
        if (gaps.isEmpty()) {
            return this;
        }
        List<Double> all = new ArrayList<>();
        for (int i = 0; i < times.length; i++) {
            all.add(times[i]);
            if (gaps.contains(i)) {
                int steps = (int) Math.rint((times[i + 1] - times[i]) / medianInterval(i + 1));
                for (int s = 1; s < steps; s++) {
                    all.add(times[i] + (times[i + 1] - times[i]) * s / steps);
                }
            }
        }
        return new PulseTrain(all.stream().mapToDouble(Double::doubleValue).toArray());
    }

    /** Median of the intervals around the one that ends with a pulse. */
    private double medianInterval(int pulse) {
        int first = Math.max(1, Math.min(pulse - NEIGHBOURS, times.length - 1 - 2 * NEIGHBOURS));
        int last = Math.min(times.length - 1, first + 2 * NEIGHBOURS);
        double[] intervals = new double[last - first + 1];
        for (int i = first; i <= last; i++) {
            intervals[i - first] = times[i] - times[i - 1];
        }
        return Percentiles.of(intervals).at(50);
    }

    /**
     * Measures how unevenly the marks of a shaft are spaced: the mean share of a revolution from each mark to the next.
     * At nearly steady speed over many revolutions this is the geometry of the marks; give it to {@link
     * ShaftAngle#of(PulseTrain, double[])} to calibrate it out.
     *
     * @param pulsesPerRevolution number of marks, at least 1
     * @return share of a revolution to the next mark, for each mark from that of the first pulse on; they add up to 1
     * @throws IllegalArgumentException if there are fewer than 3 revolutions of pulses
     */
    public double[] markSpacing(int pulsesPerRevolution) {
        Require.atLeast("pulsesPerRevolution", pulsesPerRevolution, 1);
        int revolutions = (times.length - 1) / pulsesPerRevolution;
        if (revolutions < 3) {
            throw new IllegalArgumentException("pulses must cover at least 3 revolutions: " + times.length + " pulses, "
                    + pulsesPerRevolution + " a revolution");
        }
        double[] share = new double[pulsesPerRevolution];
        for (int r = 0; r < revolutions; r++) {
            int first = r * pulsesPerRevolution;
            double period = times[first + pulsesPerRevolution] - times[first];
            for (int m = 0; m < pulsesPerRevolution; m++) {
                share[m] += (times[first + m + 1] - times[first + m]) / period / revolutions;
            }
        }
        return share;
    }

    /** Two trains are equal if their times are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof PulseTrain train && Arrays.equals(times, train.times);
    }

    /** Hashes the times. */
    @Override
    public int hashCode() {
        return Arrays.hashCode(times);
    }

    /** Returns number and span. */
    @Override
    public String toString() {
        return times.length == 0 ? "no pulses" : times.length + " pulses in "
                + Digits.significant(times[times.length - 1] - times[0], 4) + " s";
    }
}
