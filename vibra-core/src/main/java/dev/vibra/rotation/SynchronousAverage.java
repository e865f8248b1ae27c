package dev.vibra.rotation;

import dev.vibra.internal.Require;
import dev.vibra.level.Moments;
import dev.vibra.transform.RealTransform;
import java.io.Serializable;
import java.util.Objects;

/**
 * Mean revolution of an angular waveform: what repeats each turn stays, the rest falls with the root of the number of
 * revolutions.
 *
 * @see "P. D. McFadden, A revised model for the extraction of periodic waveforms by time domain averaging, Mech. Syst.
 *     Signal Process. 1 (1987) 83-95"
 */
public final class SynchronousAverage implements Serializable {
    private static final long serialVersionUID = 1;

    private final AngularWaveform wave;
    private final double[] average;

    private SynchronousAverage(AngularWaveform wave, double[] average) {
        this.wave = wave;
        this.average = average;
        Require.count("length of the average", average.length, wave.samplesPerRevolution(),
                wave.samplesPerRevolution());
        Require.allFinite("average", average);
    }

    private Object readResolve() {
        return new SynchronousAverage(wave, average.clone());
    }

    /**
     * Averages the revolutions of an angular waveform.
     *
     * @param wave angular waveform, at least 2 revolutions
     * @return the average
     * @throws IllegalArgumentException if there are fewer than 2 revolutions
     */
    public static SynchronousAverage of(AngularWaveform wave) {
        Require.atLeast("revolutions", Objects.requireNonNull(wave, "wave").revolutions(), 2);
        int n = wave.samplesPerRevolution();
        double[] average = new double[n];
        for (int i = 0; i < n * wave.revolutions(); i++) {
            average[i % n] += wave.at(i) / wave.revolutions();
        }
        return new SynchronousAverage(wave, average);
    }

    /**
     * Returns the mean revolution.
     *
     * @return a new array of the samples of one revolution in the SI unit of the quantity
     */
    public double[] revolution() {
        return average.clone();
    }

    /**
     * Returns amplitude and phase of an order of the average.
     *
     * @param order whole order, 1 to below half the samples per revolution
     * @return the vector
     * @throws IllegalArgumentException if the order is out of range
     */
    public OrderVector vector(int order) {
        Require.within("order", order, 1, (average.length - 1) / 2, "");
        return OrderVector.of(average, order, average.length);
    }

    /**
     * Returns the residual signal: the waveform less the average in every revolution.
     *
     * @return the part that doesn't repeat
     */
    public AngularWaveform residual() {
        double[] rest = wave.samples();
        for (int i = 0; i < rest.length; i++) {
            rest[i] -= average[i % average.length];
        }
        return new AngularWaveform(wave.quantity(), wave.samplesPerRevolution(), wave.firstRevolution(), wave.angle(),
                rest);
    }

    /**
     * Returns the difference signal: the average less given orders, such as the shaft's own and the mesh harmonics of a
     * gear with their first sidebands. What is left of a sound gear is small and even.
     *
     * @param orders whole orders to take out, each from 0 to half the samples per revolution
     * @return a new array of the samples of one revolution
     * @throws IllegalArgumentException if an order is out of range
     * @see "P. D. McFadden, J. D. Smith, A signal processing technique for detecting local defects in a gear from the
     *     signal average of the vibration, Proc. IMechE 199 C4 (1985) 287-292"
     */
    public double[] difference(int... orders) {
        RealTransform transform = RealTransform.of(average.length);
        double[] spectrum = transform.forward(average, 0, new double[2 * transform.lines()]);
        for (int order : Objects.requireNonNull(orders, "orders")) {
            Require.within("order", order, 0, transform.lines() - 1, "");
            spectrum[2 * order] = 0;
            spectrum[2 * order + 1] = 0;
        }
        return transform.inverse(spectrum, new double[average.length], 0);
    }

    /**
     * Returns the share of the power that repeats each revolution.
     *
     * @return mean square of the average over that of the waveform, 0 to 1
     * @throws IllegalStateException if the waveform is constant
     */
    public double repeatingShare() {
        double all = Moments.of(wave.samples()).rms();
        if (all == 0) {
            throw new IllegalStateException("the waveform is constant");
        }
        double repeating = Moments.of(average).rms();
        return repeating * repeating / (all * all);
    }

    /** Returns the number of revolutions. */
    @Override
    public String toString() {
        return wave.revolutions() + " revolutions averaged, " + average.length + " samples";
    }
}
