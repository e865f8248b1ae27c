package dev.vibra.bandmap;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * How impulsive each band of a recording is, over centre frequency and bandwidth, by one criterion.
 *
 * <pre>{@code
 * var map = BandMap.of(wave, BandCriterion.SPECTRAL_KURTOSIS, 400);
 * map.best().band()                                    // 3200–4800 Hz
 * EnvelopeSpectrum.of(wave, map.best().band())         // which rate is it?
 * }</pre>
 *
 * <p>The best band is the most impulsive one, not that of a particular fault: a single knock, an electrical disturbance
 * or a gear's mesh may have it.
 *
 * @param criterion what the bands are compared by
 * @param cells one band or more, from the widest on; a band without vibration has no cell
 * @see "J. Antoni, Fast computation of the kurtogram for the detection of transient faults, Mechanical Systems and
 *     Signal Processing 21 (2007) 108-124"
 */
public record BandMap(BandCriterion criterion, List<Cell> cells) implements Serializable {
    /**
     * Checks and copies the cells.
     *
     * @param criterion see the record
     * @param cells see the record
     */
    public BandMap {
        Objects.requireNonNull(criterion, "criterion");
        cells = Require.copy("cells", cells);
        Require.atLeast("number of cells", cells.size(), 1);
    }

    /**
     * One band of a map.
     *
     * @param band the band
     * @param parts number of equal bands into which its row of the map parts the range, at least 1
     * @param value value of the criterion, finite
     */
    public record Cell(Band band, int parts, double value) implements Serializable {
        /**
         * Checks the values.
         *
         * @param band see the record
         * @param parts see the record
         * @param value see the record
         */
        public Cell {
            Objects.requireNonNull(band, "band");
            Require.atLeast("parts", parts, 1);
            Require.finite("value", value);
        }

        /** Returns band and value, as in {@code 3200–4800 Hz: 4.21}. */
        @Override
        public String toString() {
            return band + ": " + Digits.significant(value, 3);
        }
    }

    /**
     * Computes the map of a recording.
     *
     * @param wave recording, at least 16 samples
     * @param criterion what the bands are compared by
     * @param narrowestHertz least width of a band in Hz, from four times the sample rate over the length to half the
     *     sample rate; a few times the rate of the impacts sought, as an envelope is no wider than its band
     * @return the map
     * @throws IllegalArgumentException if the width is out of range or the recording is constant
     */
    public static BandMap of(Waveform wave, BandCriterion criterion, double narrowestHertz) {
        Objects.requireNonNull(criterion, "criterion");
        Objects.requireNonNull(wave, "wave");
        return BandMapPlan.of(wave.length(), wave.sampleRateHertz(), narrowestHertz).map(wave.samples(), 0, criterion);
    }

    /**
     * Returns the cell of the highest value; of equal ones the widest, then the lowest.
     *
     * @return the most impulsive band
     */
    public Cell best() {
        return highest(cells);
    }

    /**
     * Returns the cell of the highest value among those that lie inside a range, such as that in which the sensor and
     * its mounting can be trusted.
     *
     * @param range the range; a cell lies inside if both its ends do
     * @return the most impulsive band in the range; empty if none lies in it
     */
    public Optional<Cell> bestWithin(Band range) {
        Objects.requireNonNull(range, "range");
        List<Cell> inside = cells.stream()
                .filter(cell -> range.contains(cell.band().lowestHertz()) && range.contains(cell.band().highestHertz()))
                .toList();
        return inside.isEmpty() ? Optional.empty() : Optional.of(highest(inside));
    }

    private static Cell highest(List<Cell> cells) {
        Cell first = cells.get(0);
        // The first of equal ones, where max() of a stream promises none.
        return cells.stream().reduce(first, (a, b) -> b.value() > a.value() ? b : a);
    }

    /** Returns criterion and best cell, as in {@code spectral kurtosis of 127 bands, best 3200–4800 Hz: 4.21}. */
    @Override
    public String toString() {
        return criterion + " of " + cells.size() + " bands, best " + best();
    }
}
