package dev.vibra.balance.reading;

import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.evidence.Remark;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Several readings of one vector under the same conditions: their mean, their scatter, and whether they were steady.
 *
 * @see "ISO 21940-13:2012: readings are to be repeated to know how far they can be trusted"
 */
@SuppressWarnings("serial") // the collections are unmodifiable copies, which are serializable
public final class RepeatedReading implements Serializable {
    private static final long serialVersionUID = 1;

    private final List<VibrationVector> readings;
    private final VibrationVector mean;

    private RepeatedReading(List<VibrationVector> readings) {
        this.readings = Require.copy("readings", readings);
        if (this.readings.size() < 2) {
            throw new IllegalArgumentException("readings must be at least two to tell their scatter: "
                    + this.readings.size());
        }
        VibrationVector sum = this.readings.get(0);
        for (VibrationVector reading : this.readings.subList(1, this.readings.size())) {
            sum = sum.plus(reading);
        }
        Phasor average = sum.peak().times(1.0 / this.readings.size());
        this.mean = VibrationVector.ofPeak(average, sum.unit(), sum.detector(), sum.sense());
    }

    private Object readResolve() {
        return new RepeatedReading(readings);
    }

    /**
     * Takes readings together.
     *
     * @param readings readings of one quantity at one place, at least two, in the order in which they were taken
     * @return the readings
     * @throws IllegalArgumentException if there are fewer than two or the quantities differ
     */
    public static RepeatedReading of(VibrationVector... readings) {
        Objects.requireNonNull(readings, "readings");
        return new RepeatedReading(List.of(readings));
    }

    /**
     * Returns the single readings.
     *
     * @return readings in the order in which they were taken
     */
    public List<VibrationVector> readings() {
        return readings;
    }

    /**
     * Returns the vector mean, shown as the first reading is.
     *
     * @return mean of the phasors
     */
    public VibrationVector mean() {
        return mean;
    }

    /**
     * Returns the scatter of the amplitude along the mean: standard deviation of one reading as a share of the mean.
     *
     * @return standard deviation with n − 1 in the divisor, over the amplitude of the mean
     * @throws IllegalStateException if the mean is zero
     */
    public double amplitudeScatter() {
        return deviations(true);
    }

    /**
     * Returns the scatter of the phase: standard deviation of one reading across the mean, as an angle seen from zero.
     *
     * @return standard deviation with n − 1 in the divisor, in degrees
     * @throws IllegalStateException if the mean is zero
     */
    public double phaseScatterDegrees() {
        return Math.toDegrees(deviations(false));
    }

    /**
     * Returns the scatter of one such reading, for a job that notes readings taken singly.
     *
     * @return standard deviations of amplitude and phase, without floor
     * @throws IllegalStateException if the mean is zero
     * @throws IllegalArgumentException if the readings scatter by more than their mean
     */
    public ReadingScatter scatter() {
        return ReadingScatter.of(amplitudeScatter(), phaseScatterDegrees());
    }

    /**
     * Returns the scatter of the mean, for a job that notes means of as many readings: that of one over √n.
     *
     * @return standard deviations of amplitude and phase of the mean, without floor
     * @throws IllegalStateException if the mean is zero
     * @throws IllegalArgumentException if the mean is less than its own scatter
     * @see "JCGM 100:2008, 4.2.3, standard uncertainty of a mean of independent observations"
     */
    public ReadingScatter scatterOfMean() {
        double root = Math.sqrt(readings.size());
        return ReadingScatter.of(amplitudeScatter() / root, phaseScatterDegrees() / root);
    }

    private double deviations(boolean along) {
        double square = 0;
        for (VibrationVector reading : readings) {
            Phasor ratio = ratio(reading);
            double deviation = along ? ratio.re() - 1 : ratio.im();
            square += deviation * deviation;
        }
        return Math.sqrt(square / (readings.size() - 1));
    }

    private Phasor ratio(VibrationVector reading) {
        if (!(mean.amplitude() > 0)) {
            throw new IllegalStateException("mean of the readings must not be zero to tell a scatter");
        }
        return reading.peak().dividedBy(mean.peak());
    }

    /**
     * Returns what speaks against balancing on these readings, by the usual limits.
     *
     * @return remarks; empty if the vector was steady
     * @throws IllegalStateException if the mean is zero
     */
    public List<Remark> remarks() {
        return remarks(ScatterLimits.withDefaults());
    }

    /**
     * Returns what speaks against balancing on these readings: single ones far from the mean, or a drift, where the
     * mean of the second half lies away from that of the first by more than the limits.
     *
     * @param limits allowed distances
     * @return remarks; empty if the vector was steady
     * @throws IllegalStateException if the mean is zero
     */
    public List<Remark> remarks(ScatterLimits limits) {
        Objects.requireNonNull(limits, "limits");
        double amplitude = 0;
        double phase = 0;
        double floor = limits.floor() / mean.amplitude();
        for (VibrationVector reading : readings) {
            Phasor ratio = ratio(reading);
            if (ratio.minus(Phasor.ONE).magnitude() > floor) {
                amplitude = Math.max(amplitude, Math.abs(ratio.magnitude() - 1));
                phase = Math.max(phase, Math.toDegrees(Math.abs(ratio.argument())));
            }
        }
        List<Remark> out = new ArrayList<>();
        if (amplitude > limits.amplitudeShare()) {
            out.add(Remark.note("amplitude-unsteady", "a reading lies " + Digits.significant(amplitude * 100, 3)
                    + " % from the mean amplitude", amplitude, limits.amplitudeShare()));
        }
        if (phase > limits.phaseDegrees()) {
            out.add(Remark.note("phase-unsteady", "a reading lies " + Digits.significant(phase, 3)
                    + "° from the mean phase", phase, limits.phaseDegrees()));
        }
        addDrift(limits, out);
        return List.copyOf(out);
    }

    private void addDrift(ScatterLimits limits, List<Remark> out) {
        int half = readings.size() / 2;
        if (half < 2) {
            return;
        }
        Phasor early = meanRatio(readings.subList(0, half));
        Phasor late = meanRatio(readings.subList(readings.size() - half, readings.size()));
        double moved = late.minus(early).magnitude();
        double limit = Math.max(limits.floor() / mean.amplitude(),
                Math.min(limits.amplitudeShare(), Math.toRadians(limits.phaseDegrees())));
        if (moved > limit) {
            out.add(Remark.note("vector-drifting", "the mean of the later readings lies "
                    + Digits.significant(moved * 100, 3) + " % of the amplitude away from that of the earlier ones:"
                    + " wait for warm bearings and steady load", moved, limit));
        }
    }

    private Phasor meanRatio(List<VibrationVector> part) {
        Phasor sum = Phasor.ZERO;
        for (VibrationVector reading : part) {
            sum = sum.plus(ratio(reading));
        }
        return sum.times(1.0 / part.size());
    }

    /**
     * Requires a steady vector by the usual limits.
     *
     * @return the mean
     * @throws IllegalStateException if the readings are unsteady; the message says how
     */
    public VibrationVector steadyMean() {
        return steadyMean(ScatterLimits.withDefaults());
    }

    /**
     * Requires a steady vector.
     *
     * @param limits allowed distances
     * @return the mean
     * @throws IllegalStateException if the readings are unsteady; the message says how
     */
    public VibrationVector steadyMean(ScatterLimits limits) {
        Objects.requireNonNull(limits, "limits");
        List<Remark> doubts = remarks(limits);
        if (!doubts.isEmpty()) {
            throw new IllegalStateException("readings must be steady: "
                    + String.join("; ", doubts.stream().map(Remark::text).toList()));
        }
        return mean;
    }

    /**
     * Counts the readings.
     *
     * @return number of readings, at least two
     */
    public int count() {
        return readings.size();
    }

    /** Returns mean, count and scatter in one line. */
    @Override
    public String toString() {
        String text = mean + ", mean of " + readings.size();
        if (mean.amplitude() == 0) {
            return text;
        }
        return amplitudeScatter() > 1 || phaseScatterDegrees() > 90 ? text + " (they scatter by more than their mean)"
                : text + " (scatter " + Digits.significant(amplitudeScatter() * 100, 2) + " %, "
                + Digits.significant(phaseScatterDegrees(), 2) + "°)";
    }
}
