package dev.vibra.quality;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.level.Moments;
import dev.vibra.level.Percentiles;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;

/**
 * Is the level (or the speed) of a recording steady? The recording is cut into segments; their values are tested for a
 * trend by reverse arrangements and for swings by runs about the median, at a significance of 5 % each. Values that
 * differ by less than a tenth of their mean count as steady whatever the tests say: what can't matter isn't refused. A
 * segment above one and a half times the median, or below it by as much, makes a stretch unsteady in any case.
 *
 * @see TrendTests
 * @see "J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, section 10.4.3"
 */
public final class Steadiness implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double SIGNIFICANCE = 0.05;
    private static final double NEGLIGIBLE = 0.1;
    private static final double UNEVEN = 1.5;
    static final int SEGMENTS = 20;
    private static final int FEWEST = 10;

    private final Waveform wave;
    private final double[] values;

    private Steadiness(Waveform wave, double[] values) {
        this.wave = Objects.requireNonNull(wave, "wave");
        this.values = values;
    }

    private Object readResolve() {
        return of(wave, values);
    }

    /**
     * Looks at the rms level of twenty segments.
     *
     * @param wave recording
     * @return the result; empty if the recording has fewer than 400 samples
     */
    public static Optional<Steadiness> ofLevel(Waveform wave) {
        return ofLevel(Objects.requireNonNull(wave, "wave"), wave.samples());
    }

    static Optional<Steadiness> ofLevel(Waveform wave, double[] samples) {
        int length = samples.length / SEGMENTS;
        if (length < 20) {
            return Optional.empty();
        }
        double[] levels = new double[SEGMENTS];
        for (int s = 0; s < SEGMENTS; s++) {
            levels[s] = Moments.of(samples, s * length, length).rms();
        }
        return Optional.of(new Steadiness(wave, levels));
    }

    /**
     * Looks at given values of equal segments of a recording, such as the speed.
     *
     * @param wave recording
     * @param values value of each segment, 10 to 200, all finite; copied
     * @return the result
     * @throws IllegalArgumentException if there are too few or too many values
     */
    public static Steadiness of(Waveform wave, double... values) {
        double[] copy = Objects.requireNonNull(values, "values").clone();
        Require.within("number of values", copy.length, FEWEST, 200, "");
        Require.allFinite("values", copy);
        return new Steadiness(wave, copy);
    }

    /**
     * Tells whether the whole recording is steady.
     *
     * @return true if neither test rejects
     */
    public boolean steady() {
        return steady(0, values.length, TrendTests.inversions(values.length));
    }

    private boolean steady(int from, int count, double[] inversions) {
        double[] part = Arrays.copyOfRange(values, from, from + count);
        Moments moments = Moments.of(part);
        if (moments.peakToPeak() <= NEGLIGIBLE * Math.abs(moments.mean())) {
            return true;
        }
        double median = Percentiles.of(part).at(50);
        if (moments.highest() > UNEVEN * median || moments.lowest() < median / UNEVEN) {
            return false; // A few odd segments are too few for the rank tests to mind, and too far off to pass.
        }
        return TrendTests.reverseArrangementsProbability(inversions, part) > SIGNIFICANCE
                && TrendTests.runsProbability(part) > SIGNIFICANCE;
    }

    /**
     * Returns the longest steady stretch, the earliest of equally long ones.
     *
     * @return the stretch; empty if none of ten segments or more is steady
     */
    public Optional<Waveform> longestSteady() {
        for (int count = values.length; count >= FEWEST; count--) {
            double[] inversions = TrendTests.inversions(count);
            for (int from = 0; from + count <= values.length; from++) {
                if (steady(from, count, inversions)) {
                    int first = (int) ((long) wave.length() * from / values.length);
                    int end = (int) ((long) wave.length() * (from + count) / values.length);
                    return Optional.of(wave.part(first, end - first));
                }
            }
        }
        return Optional.empty();
    }

    /**
     * Returns the values of the segments.
     *
     * @return a new array
     */
    public double[] values() {
        return values.clone();
    }

    /** Returns the spread of the values and whether they are steady. */
    @Override
    public String toString() {
        Moments moments = Moments.of(values);
        return (steady() ? "steady" : "not steady") + ", " + Digits.significant(moments.lowest(), 3) + " to "
                + Digits.significant(moments.highest(), 3) + " over " + values.length + " segments";
    }
}
