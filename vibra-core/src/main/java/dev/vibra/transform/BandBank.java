package dev.vibra.transform;

import dev.vibra.internal.Require;

/**
 * The lines of a real recording cut into 2, 4, 8 … equal bands, each transformed back on its own: the sums of the
 * squares and of the fourth powers of the magnitudes of the analytic signal of every band, at as many complex values as
 * the band has lines.
 *
 * <p>Level l has 2ˡ bands of {@code linesPerBand(l)} lines each, one after the other from line 0 on; each is twice as
 * many as those of the next level. The lines of the deepest level are the largest number without a prime factor above
 * 13 that fits, so that a few lines below half the sample rate may be left out (none of a recording of 102,400 samples
 * and six levels, 9 of 100,000 samples' 50,001).
 *
 * <p>All bands are transformed together, one a column of a matrix. Of the values of a band every other one is the sum
 * of those of the two bands it falls into at the next level, so that half of every other level costs no transform.
 *
 * <p>An instance holds workspace: it is not thread-safe, one per thread. Nothing is allocated after it was made.
 */
public final class BandBank {
    private static final int MOST_LEVELS = 12;

    private final int length;
    private final int levels;
    private final int narrowest;
    private final Rows lines;
    private final BandPair[] pairs;
    private final double[][] squares;
    private final double[][] fourths;

    private BandBank(int length, int levels) {
        this.levels = Require.count("levels", levels, 2, MOST_LEVELS);
        this.length = Require.count("length", length, 1 << (levels + 2), 1 << 26);
        narrowest = longestHandled((length / 2) >> levels);
        lines = Rows.of(1 << levels, narrowest);
        squares = new double[levels + 1][];
        fourths = new double[levels + 1][];
        for (int level = 1; level <= levels; level++) {
            squares[level] = new double[1 << level];
            fourths[level] = new double[1 << level];
        }
        RowTransform transform = new RowTransform(narrowest, 3 << (levels - 1));
        Rows columns = Rows.of(narrowest, 3 << (levels - 1));
        Rows differences = Rows.of(1 << (levels - 1), narrowest);
        pairs = new BandPair[(levels + 1) / 2];
        for (int p = 0; p < pairs.length; p++) {
            boolean copied = p > 0 && p < pairs.length - 1;
            pairs[p] = new BandPair(lines, copied, differences, transform, columns, 1 << 2 * p);
        }
    }

    private static int longestHandled(int longest) {
        int n = longest;
        while (!RowTransform.handles(n)) {
            n--;
        }
        return n;
    }

    /**
     * Makes a bank.
     *
     * @param length number of samples of the recording, at least four for each band of the deepest level, at most 2²⁶
     * @param levels number of levels, 2 to 12
     * @return a bank with its workspace
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static BandBank of(int length, int levels) {
        return new BandBank(length, levels);
    }

    /**
     * Returns the number of samples of the recording.
     *
     * @return the length
     */
    public int length() {
        return length;
    }

    /**
     * Returns the number of levels.
     *
     * @return levels, at least 2
     */
    public int levels() {
        return levels;
    }

    /**
     * Returns the number of lines of each band of a level, which is that of its complex values, too.
     *
     * @param level level, 1 to {@link #levels()}
     * @return lines, at least 1
     * @throws IllegalArgumentException if there is no such level
     */
    public int linesPerBand(int level) {
        return narrowest << (levels - Require.count("level", level, 1, levels));
    }

    /**
     * Returns the number of values of each band of a level that are left out of the sums at its start, and as many at
     * its end: 4 to 8 at the two deepest levels, 4ᵖ to 2·4ᵖ at the p-th two above them (p from 1 on), but none if a band
     * of the deepest level has fewer than 8 lines, and no more than an eighth. There the transform, to which a
     * recording is periodic, sees it jump from its end to its start, which rings in every band.
     *
     * @param level level, 1 to {@link #levels()}
     * @return number of values at each end
     * @throws IllegalArgumentException if there is no such level
     */
    public int leftOut(int level) {
        int above = levels - Require.count("level", level, 1, levels);
        int parts = 1 << above / 2 * 2;
        return BandPair.endsOf(narrowest, parts) * parts << above % 2;
    }

    /**
     * Takes in the lines of a recording and transforms all bands.
     *
     * @param spectrum lines as {@link RealTransform#forward} writes them, {@code 2·(length / 2 + 1)} values; left alone
     * @throws IllegalArgumentException if the array is too short
     */
    public void load(double[] spectrum) {
        Require.range("spectrum", spectrum, 0, 2 * (length / 2 + 1));
        for (int row = 0, at = 0; row < lines.re().length; row++) {
            double[] re = lines.re()[row];
            double[] im = lines.im()[row];
            for (int i = 0; i < narrowest; i++) {
                re[i] = spectrum[at++];
                im[i] = spectrum[at++];
            }
        }
        for (int p = 0; p < pairs.length; p++) {
            int level = levels - 2 * p;
            pairs[p].measure(squares[level], fourths[level], squares[level - 1], fourths[level - 1]);
        }
    }

    /**
     * Writes the sums over the values of each band but those {@linkplain #leftOut left out} at its ends, unscaled as the
     * lines were: {@code Σ|z|²} and {@code Σ|z|⁴} with {@code z[t] = Σ X[k]·exp(2πi·kt/w)} over the w lines of the band.
     *
     * @param level level, 1 to {@link #levels()}
     * @param squareSums receives 2ˡᵉᵛᵉˡ sums of squares, from the lowest band on
     * @param fourthSums receives as many sums of fourth powers
     * @throws IllegalArgumentException if there is no such level or an array is too short
     */
    public void sums(int level, double[] squareSums, double[] fourthSums) {
        int bands = 1 << Require.count("level", level, 1, levels);
        Require.range("squareSums", squareSums, 0, bands);
        Require.range("fourthSums", fourthSums, 0, bands);
        System.arraycopy(squares[level], 0, squareSums, 0, bands);
        System.arraycopy(fourths[level], 0, fourthSums, 0, bands);
    }

    /** Returns the number of samples and levels. */
    @Override
    public String toString() {
        return "bank of " + levels + " levels for " + length + " samples";
    }
}
