package dev.vibra.bandmap;

import dev.vibra.envelope.SquaredEnvelopePlan;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Bands of a tree and the squared envelope of each: the range up to half the sample rate is parted into 1, 2, 3, 4, 6,
 * 8, 12 … equal bands, the numbers of the tree of halves and thirds.
 *
 * <p>The published tree filters and decimates step by step to save time. Here the recording is transformed once and
 * each band is cut out of its lines and transformed back at a low rate: each band is exact, with edges one line wide
 * instead of the roll-off of a short filter, whose transients would hide short trains in the narrow bands, and the cost
 * is that of one transform of the length of the recording per row of the map.
 *
 * <p>Holds workspace: not thread-safe, one per thread.
 *
 * @see "J. Antoni, Fast computation of the kurtogram for the detection of transient faults, Mechanical Systems and
 *     Signal Processing 21 (2007) 108-124"
 */
public final class BandMapPlan {
    /** Share of the power of the recording below which a band holds rounding errors only. */
    private static final double SILENCE = 1e-20;

    private final int length;
    private final List<BandMap.Cell> tree;
    private final SquaredEnvelopePlan envelopes;
    private final Pulsation pulsation = new Pulsation();
    private final double[] centred;
    private final double[] squares;

    private BandMapPlan(int length, double sampleRateHertz, double narrowestHertz) {
        this.length = Require.count("number of samples", length, 16, Require.MOST_SAMPLES);
        double range = 0.5 * Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        Require.within("narrowestHertz", narrowestHertz, 4 * sampleRateHertz / length, range, "Hz");
        tree = tree(range, narrowestHertz);
        envelopes = SquaredEnvelopePlan.of(length, sampleRateHertz, tree.stream().map(BandMap.Cell::band).toList());
        centred = new double[length];
        int most = 0;
        for (int i = 0; i < tree.size(); i++) {
            most = Math.max(most, envelopes.outputLength(i));
        }
        squares = new double[most];
    }

    private static List<BandMap.Cell> tree(double range, double narrowest) {
        List<BandMap.Cell> cells = new ArrayList<>();
        // A width asked for as a fraction of the range must not be lost to rounding.
        double most = range / narrowest * (1 + 1e-9);
        int parts = 1;
        while (parts <= most) {
            for (int i = 0; i < parts; i++) {
                cells.add(new BandMap.Cell(Band.of(range * i / parts, range * (i + 1) / parts), parts, 0));
            }
            boolean power = Integer.bitCount(parts) == 1;
            parts = power && parts > 1 ? parts / 2 * 3 : parts == 1 ? 2 : parts / 3 * 4;
        }
        return List.copyOf(cells);
    }

    /**
     * Makes a plan.
     *
     * @param length number of samples of a recording, 16 to 2²⁶
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param narrowestHertz least width of a band in Hz, from four times the sample rate over the length to half the
     *     sample rate; an envelope shows impacts that come less often than its band is wide
     * @return a plan with its workspace
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static BandMapPlan of(int length, double sampleRateHertz, double narrowestHertz) {
        return new BandMapPlan(length, sampleRateHertz, narrowestHertz);
    }

    /**
     * Computes the map of a recording.
     *
     * @param in samples; left alone
     * @param offset index of the first sample
     * @param criterion what the bands are compared by
     * @return the map
     * @throws IllegalArgumentException if the range leaves the array or the samples are constant
     */
    public BandMap map(double[] in, int offset, BandCriterion criterion) {
        Objects.requireNonNull(criterion, "criterion");
        return maps(Objects.requireNonNull(in, "in"), offset, List.of(criterion)).get(0);
    }

    /**
     * Computes several maps of a recording, for which its bands are cut out once.
     *
     * @param in samples; left alone
     * @param offset index of the first sample
     * @param criteria what the bands are compared by
     * @return one map a criterion, in their order
     * @throws IllegalArgumentException if the range leaves the array or the samples are constant
     */
    public List<BandMap> maps(double[] in, int offset, List<BandCriterion> criteria) {
        Require.copy("criteria", criteria);
        double meanSquare = centre(Objects.requireNonNull(in, "in"), offset);
        envelopes.load(centred, 0);
        List<List<BandMap.Cell>> cells = new ArrayList<>();
        criteria.forEach(criterion -> cells.add(new ArrayList<>()));
        for (int i = 0; i < tree.size(); i++) {
            BandMap.Cell cell = tree.get(i);
            envelopes.squares(i, squares);
            if (pulsation.take(squares, envelopes.outputLength(i), envelopes.outputSampleRateHertz(i),
                    cell.band().widthHertz(), SILENCE * meanSquare)) {
                for (int c = 0; c < criteria.size(); c++) {
                    cells.get(c).add(new BandMap.Cell(cell.band(), cell.parts(), pulsation.measured(criteria.get(c))));
                }
            }
        }
        List<BandMap> maps = new ArrayList<>();
        for (int c = 0; c < criteria.size(); c++) {
            maps.add(new BandMap(criteria.get(c), cells.get(c)));
        }
        return List.copyOf(maps);
    }

    /** A mean would be a carrier at 0 Hz and everything that swings its modulation. */
    private double centre(double[] in, int offset) {
        Require.range("in", in, offset, length);
        double sum = 0;
        for (int i = 0; i < length; i++) {
            sum += in[offset + i];
        }
        double mean = sum / length;
        double squaresSum = 0;
        for (int i = 0; i < length; i++) {
            centred[i] = in[offset + i] - mean;
            squaresSum += centred[i] * centred[i];
        }
        double meanSquare = squaresSum / length;
        if (!(meanSquare > SILENCE * mean * mean && meanSquare < Double.POSITIVE_INFINITY)) {
            throw Require.failure("mean square of the samples about their mean", "finite and above rounding",
                    meanSquare);
        }
        return meanSquare;
    }

    /** Returns length and number of bands, as in {@code map of 102400 samples, 127 bands}. */
    @Override
    public String toString() {
        return "map of " + length + " samples, " + tree.size() + " bands";
    }
}
