package dev.vibra.bandmap;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.transform.BandBank;
import dev.vibra.transform.RealTransform;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * Spectral kurtosis of 2, 4, 8 … equal bands up to half the sample rate, from the lines of a whole recording, which
 * other stages share: the fast search for the band in which a recording is most impulsive.
 *
 * <p>A band of w lines is cut out of the spectrum and transformed back to w complex samples z, as few as it holds;
 * with n of them counted, {@code n·Σ|z|⁴/(Σ|z|²)² − 2}, which is 0 for normal noise, -1 for a steady sine and {@code
 * 1/d − 2} for impacts that fill the share d of the time with even power. The bands of the last level hold as many
 * lines as fit, lessened to a number without large prime factors ({@link BandBank}), those of each level before twice
 * as many; what is left over at half the sample rate is in no band.
 *
 * <p>The ends of a band aren't counted, since the transform sees the recording jump there from its end to its start:
 * four times the inverse width of the band at least, see {@link BandBank#leftOut}. {@link BandMapPlan} parts by thirds
 * as well and knows other criteria.
 *
 * <p>Holds workspace: not thread-safe, one per thread; allocates nothing once made but in {@link #map}.
 *
 * @see "J. Antoni, Fast computation of the kurtogram for the detection of transient faults, Mechanical Systems and
 *     Signal Processing 21 (2007) 108-124; the bands here are cut exactly and not by a tree of short filters"
 */
public final class DyadicMapPlan {
    /** Fewest lines of a band. */
    private static final int FEWEST_LINES = 4;
    private static final int MOST_LEVELS = 12;
    /** Share of the power of the recording below which a band holds rounding errors only. */
    private static final double SILENCE = 1e-20;

    private final int length;
    private final int levels;
    private final BandBank bank;
    private final List<Band> bands;
    private final double[] kurtosis;
    private final boolean[] silent;
    private final double[] squares;
    private final double[] fourths;
    private int best = -1;

    private DyadicMapPlan(int length, double sampleRateHertz, int levels) {
        this.length = Require.count("number of samples", length, 32, Require.MOST_SAMPLES);
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        int most = Math.min(MOST_LEVELS, Integer.numberOfTrailingZeros(Integer.highestOneBit(length / 2 / FEWEST_LINES)));
        this.levels = Require.count("levels", levels, 2, most);
        bank = BandBank.of(length, levels);
        bands = bands(sampleRateHertz / length);
        kurtosis = new double[bands.size()];
        silent = new boolean[bands.size()];
        squares = new double[1 << levels];
        fourths = new double[1 << levels];
        Arrays.fill(silent, true);
    }

    /**
     * Makes a plan.
     *
     * @param length number of samples of a recording, 32 to 2²⁶
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param levels number of times that the range is halved, 2 to 12, as long as the narrowest bands hold four lines
     * @return a plan with its workspace
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static DyadicMapPlan of(int length, double sampleRateHertz, int levels) {
        return new DyadicMapPlan(length, sampleRateHertz, levels);
    }

    private List<Band> bands(double resolution) {
        List<Band> all = new ArrayList<>();
        for (int level = 1; level <= levels; level++) {
            double width = bank.linesPerBand(level) * resolution;
            for (int i = 0; i < 1 << level; i++) {
                all.add(Band.of(i * width, (i + 1) * width));
            }
        }
        return List.copyOf(all);
    }

    /**
     * Takes the lines of a recording and computes the spectral kurtosis of all bands. The line at 0 Hz should be 0: a
     * mean is a carrier whose modulation is everything that swings.
     *
     * @param spectrum {@code length / 2 + 1} interleaved lines as {@link RealTransform#forward} gives them; left alone
     * @throws IllegalArgumentException if the array is too short
     */
    public void take(double[] spectrum) {
        Require.range("spectrum", spectrum, 0, 2 * (length / 2 + 1));
        bank.load(spectrum);
        double least = 0;
        best = -1;
        int index = 0;
        for (int level = 1; level <= levels; level++) {
            bank.sums(level, squares, fourths);
            int values = bank.linesPerBand(level) - 2 * bank.leftOut(level);
            if (level == 1) {
                least = SILENCE * (squares[0] + squares[1]) / values;
            }
            for (int i = 0; i < 1 << level; i++) {
                set(index++, values, squares[i], fourths[i], least);
            }
        }
    }

    /** The sum of squares over the number of samples is the sum over the lines, comparable among levels. */
    private void set(int index, int samples, double square, double fourth, double least) {
        silent[index] = !(square / samples > least && fourth > 0 && fourth < Double.POSITIVE_INFINITY);
        kurtosis[index] = silent[index] ? 0 : samples * (fourth / square / square) - 2;
        if (!silent[index] && (best < 0 || kurtosis[index] > kurtosis[best])) {
            best = index;
        }
    }

    /**
     * Returns the number of bands of all levels, {@code 2^(levels + 1) − 2}.
     *
     * @return number of bands
     */
    public int count() {
        return kurtosis.length;
    }

    /**
     * Returns a band.
     *
     * @param index number of the band from 0: the two widest first, then four, each row from 0 Hz on
     * @return the band
     * @throws IndexOutOfBoundsException if there is no such band
     */
    public Band band(int index) {
        return bands.get(Objects.checkIndex(index, bands.size()));
    }

    /**
     * Tells whether a band of the recording taken last holds nothing, rounding errors only, or values whose fourth
     * powers are out of the range of numbers.
     *
     * @param index number of the band
     * @return true if it has no kurtosis
     * @throws IndexOutOfBoundsException if there is no such band
     */
    public boolean isSilent(int index) {
        return silent[Objects.checkIndex(index, silent.length)];
    }

    /**
     * Returns the spectral kurtosis of a band of the recording taken last.
     *
     * @param index number of the band
     * @return spectral kurtosis, at least -1
     * @throws IndexOutOfBoundsException if there is no such band
     * @throws IllegalStateException if it is {@linkplain #isSilent silent}
     */
    public double kurtosis(int index) {
        if (isSilent(index)) {
            throw new IllegalStateException("band must hold vibration: " + band(index) + " is silent");
        }
        return kurtosis[index];
    }

    /**
     * Tells whether any band of the recording taken last holds vibration.
     *
     * @return true if there is a best one
     */
    public boolean hasVibration() {
        return best >= 0;
    }

    /**
     * Returns the number of the most impulsive band of the recording taken last; of equal ones the widest, then the
     * lowest.
     *
     * @return number of the band
     * @throws IllegalStateException if all bands are silent
     */
    public int best() {
        if (!hasVibration()) {
            throw new IllegalStateException("recording must hold vibration: all its bands are silent");
        }
        return best;
    }

    /**
     * Makes the map of the recording taken last.
     *
     * @return the map; a silent band has no cell
     * @throws IllegalStateException if all bands are silent
     */
    public BandMap map() {
        best();
        List<BandMap.Cell> cells = new ArrayList<>(kurtosis.length);
        for (int i = 0; i < kurtosis.length; i++) {
            if (!silent[i]) {
                // Rows of 2, 4, 8 … bands begin at 0, 2, 6 …
                cells.add(new BandMap.Cell(bands.get(i), Integer.highestOneBit(i + 2), kurtosis[i]));
            }
        }
        return new BandMap(BandCriterion.SPECTRAL_KURTOSIS, cells);
    }

    /** Returns length and number of bands, as in {@code dyadic map of 102400 samples, 126 bands}. */
    @Override
    public String toString() {
        return "dyadic map of " + length + " samples, " + kurtosis.length + " bands";
    }
}
