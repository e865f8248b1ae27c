package dev.vibra.balance.reading;

import dev.vibra.balance.vector.PhaseSense;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;

/**
 * Takes the vector at rotation frequency out of a recording with tachometer marks.
 *
 * <p>Between two marks the angle grows evenly from 0 to 2π. Each block of revolutions is fitted by least squares with a
 * mean, a slope and the orders 1 to 4, as far as they lie below half the samples per revolution; its order 1 is one
 * reading, {@code x = Re(V·exp(iθ))}. Nothing leaks from the fitted orders, whatever the block length; what lies
 * between them does, the less the longer the block.
 */
public final class SynchronousFit implements Serializable {
    private static final long serialVersionUID = 1;
    private static final int ORDERS = 4;
    /** Room below half the sample rate, for marks that don't fall on samples. */
    private static final double MARGIN = 0.05;

    private final int revolutionsPerBlock;

    private SynchronousFit(int revolutionsPerBlock) {
        this.revolutionsPerBlock = Require.atLeast("revolutionsPerBlock", revolutionsPerBlock, 1);
    }

    private Object readResolve() {
        return new SynchronousFit(revolutionsPerBlock);
    }

    /**
     * Returns a fit in blocks of ten revolutions.
     *
     * @return the usual fit
     */
    public static SynchronousFit withDefaults() {
        return new SynchronousFit(10);
    }

    /**
     * Sets the length of a block.
     *
     * @param revolutions revolutions per block, at least 1
     * @return a changed copy
     * @throws IllegalArgumentException if below 1
     */
    public SynchronousFit withRevolutionsPerBlock(int revolutions) {
        return new SynchronousFit(revolutions);
    }

    /**
     * Reads the vector of each block.
     *
     * @param signal recording of the vibration
     * @param markSeconds times of the tachometer mark, one per revolution, rising, on the clock of {@link
     *     Waveform#startSeconds()}; not kept
     * @param sense sense in which the phase is to be shown
     * @return one reading per block, rms in the customary unit of the quantity
     * @throws IllegalArgumentException if marks don't rise, or cover fewer than two blocks of the recording, or a block
     *     or a revolution has too few samples
     */
    public RepeatedReading read(Waveform signal, double[] markSeconds, PhaseSense sense) {
        Objects.requireNonNull(signal, "signal");
        Objects.requireNonNull(markSeconds, "markSeconds");
        double[] marks = markSeconds.clone();
        requireRising(marks);
        double rate = signal.sampleRateHertz();
        double end = signal.startSeconds() + (signal.length() - 1) / rate;
        int first = 0;
        while (first < marks.length && marks[first] < signal.startSeconds()) {
            first++;
        }
        List<VibrationVector> out = new ArrayList<>();
        for (int m = first; revolutionsPerBlock < marks.length - m && marks[m + revolutionsPerBlock] <= end;
                m += revolutionsPerBlock) {
            Phasor peak = fit(signal, marks, m);
            out.add(VibrationVector.ofPeak(peak, signal.quantity().customaryUnit(), Detector.RMS, sense));
        }
        if (out.size() < 2) {
            throw new IllegalArgumentException("marks must cover at least two blocks of " + revolutionsPerBlock
                    + " revolutions of the recording: " + out.size());
        }
        return RepeatedReading.of(out.toArray(VibrationVector[]::new));
    }

    /**
     * Reads the vector of each block, the angle of the shaft being known from a tachometer of any number of pulses.
     *
     * @param signal recording of the vibration
     * @param angle angle of the shaft on the clock of {@link Waveform#startSeconds()}; its whole revolutions are the
     *     marks
     * @param sense sense in which the phase is to be shown
     * @return one reading per block, rms in the customary unit of the quantity
     * @throws IllegalArgumentException as for marks, and if the angle has more than 2^26 revolutions
     */
    public RepeatedReading read(Waveform signal, ShaftAngle angle, PhaseSense sense) {
        Objects.requireNonNull(angle, "angle");
        Require.within("revolutions of angle", angle.revolutions(), 0, Require.MOST_SAMPLES, "");
        double[] marks = new double[(int) Math.floor(angle.revolutions()) + 1];
        for (int k = 0; k < marks.length; k++) {
            marks[k] = angle.secondsAt(k);
        }
        return read(signal, marks, sense);
    }

    private static void requireRising(double[] marks) {
        Require.allFinite("markSeconds", marks);
        for (int i = 1; i < marks.length; i++) {
            if (!(marks[i] > marks[i - 1])) {
                throw new IllegalArgumentException("markSeconds[" + i + "] must be above the mark before it, "
                        + marks[i - 1] + " s: " + marks[i]);
            }
        }
    }

    private Phasor fit(Waveform signal, double[] marks, int firstMark) {
        double rate = signal.sampleRateHertz();
        double start = signal.startSeconds();
        int from = (int) Math.ceil((marks[firstMark] - start) * rate);
        int to = (int) Math.ceil((marks[firstMark + revolutionsPerBlock] - start) * rate);
        int orders = ordersBelowHalf((double) (to - from) / revolutionsPerBlock);
        int columns = 2 + 2 * orders;
        if (to - from < 2 * columns) {
            throw new IllegalArgumentException("samples per block must be at least " + 2 * columns + ": " + (to - from)
                    + "; use more revolutions per block or a higher sample rate");
        }
        double[][] design = new double[to - from][columns];
        double[] values = new double[to - from];
        int mark = firstMark;
        for (int i = from; i < to; i++) {
            double t = start + i / rate;
            while (mark + 1 < firstMark + revolutionsPerBlock && t >= marks[mark + 1]) {
                mark++;
            }
            double angle = 2 * Math.PI * (t - marks[mark]) / (marks[mark + 1] - marks[mark]);
            fill(design[i - from], angle, (double) (i - from) / (to - from) - 0.5, orders);
            values[i - from] = signal.at(i);
        }
        double[] x = new QRDecomposition(new Array2DRowRealMatrix(design, false)).getSolver()
                .solve(new ArrayRealVector(values, false)).toArray();
        return new Phasor(x[2], x[3]);
    }

    /** Higher orders look like lower ones at this sample rate and can't be told from them. */
    private static int ordersBelowHalf(double samplesPerRevolution) {
        int orders = (int) Math.min(ORDERS, Math.ceil(samplesPerRevolution / 2 * (1 - MARGIN)) - 1);
        if (orders < 1) {
            throw new IllegalArgumentException("samples per revolution must be above "
                    + Digits.compact(2 / (1 - MARGIN), 3) + " to tell the order 1: "
                    + Digits.significant(samplesPerRevolution, 3) + "; use a higher sample rate");
        }
        return orders;
    }

    private static void fill(double[] row, double angle, double place, int orders) {
        row[0] = 1;
        row[1] = place;
        for (int order = 1; order <= orders; order++) {
            row[2 * order] = Math.cos(order * angle);
            row[2 * order + 1] = -Math.sin(order * angle);
        }
    }

    /**
     * Returns the mean speed between the first and the last mark.
     *
     * @param markSeconds times of the tachometer mark, one per revolution, rising, at least two; not kept
     * @return mean speed
     * @throws IllegalArgumentException if there are fewer than two marks or they don't rise
     */
    public static RotationSpeed meanSpeed(double... markSeconds) {
        Objects.requireNonNull(markSeconds, "markSeconds");
        double[] marks = markSeconds.clone();
        Require.atLeast("count of marks", marks.length, 2);
        requireRising(marks);
        return RotationSpeed.ofHertz((marks.length - 1) / (marks[marks.length - 1] - marks[0]));
    }

    /** Returns the length of a block. */
    @Override
    public String toString() {
        return "order 1 in blocks of " + revolutionsPerBlock + " revolution(s)";
    }
}
