package dev.vibra.octave;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * One band of a fraction of an octave by base ten: {@code G = 10^0.3}, mid-band frequency {@code 1000·G^(x/b)} Hz for
 * an odd fraction 1/b and {@code 1000·G^((2x+1)/(2b))} for an even one, edges {@code G^∓1/(2b)} beside it.
 *
 * @param fraction b of a band of 1/b octave, 1 to 24
 * @param index x, 0 for the band at (or just above) 1000 Hz, at most 900 octaves off
 * @see "IEC 61260-1:2014, 5.2 to 5.5"
 */
public record OctaveBand(int fraction, int index) implements Serializable {
    private static final double RATIO = Math.pow(10, 0.3);
    private static final int MOST_OCTAVES = 900;
    private static final double[] NOMINAL = {1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8};

    /**
     * Checks fraction and index.
     *
     * @param fraction see the record
     * @param index see the record
     */
    public OctaveBand {
        Require.count("fraction", fraction, 1, 24);
        Require.count("index", index, -MOST_OCTAVES * fraction, MOST_OCTAVES * fraction);
    }

    /**
     * Lists the bands whose mid-band frequencies lie in a range.
     *
     * @param fraction b of bands of 1/b octave, 1 to 24
     * @param range range of mid-band frequencies from above 0 Hz
     * @return bands in rising order
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static List<OctaveBand> within(int fraction, Band range) {
        Require.positive("lowest frequency of the range", Objects.requireNonNull(range, "range").lowestHertz(), "Hz");
        Require.count("fraction", fraction, 1, 24);
        double lowest = Math.floor(fraction * Math.log(range.lowestHertz() / 1000) / Math.log(RATIO)) - 1;
        int first = (int) Math.max(-MOST_OCTAVES * fraction, lowest);
        int last = MOST_OCTAVES * fraction;
        List<OctaveBand> bands = new ArrayList<>();
        for (int x = first; x <= last; x++) {
            OctaveBand band = new OctaveBand(fraction, x);
            if (!(band.midbandHertz() <= range.highestHertz() * (1 + 1e-9))) {
                break;
            }
            if (band.midbandHertz() >= range.lowestHertz() * (1 - 1e-9)) {
                bands.add(band);
            }
        }
        return bands;
    }

    /**
     * Returns the exact mid-band frequency.
     *
     * @return frequency in Hz
     */
    public double midbandHertz() {
        double exponent = fraction % 2 == 1 ? (double) index / fraction : (2.0 * index + 1) / (2.0 * fraction);
        return 1000 * Math.pow(RATIO, exponent);
    }

    /**
     * Returns the rounded frequency by which an octave or one-third-octave band is called, as in 31.5 Hz.
     *
     * @return nominal frequency in Hz; for other fractions the exact one to three digits
     */
    public double nominalHertz() {
        if (fraction != 1 && fraction != 3) {
            return Double.parseDouble(Digits.significant(midbandHertz(), 3));
        }
        int thirds = fraction == 1 ? 3 * index : index;
        double nominal = NOMINAL[Math.floorMod(thirds, 10)] * Math.pow(10, 3 + Math.floorDiv(thirds, 10));
        return Double.parseDouble(Digits.significant(nominal, 4));
    }

    /**
     * Returns the edges.
     *
     * @return exact lower and upper edge frequency
     */
    public Band edges() {
        double half = Math.pow(RATIO, 0.5 / fraction);
        return Band.of(midbandHertz() / half, midbandHertz() * half);
    }

    /** Returns fraction and nominal frequency, as in {@code 1/3 octave 31.5 Hz}. */
    @Override
    public String toString() {
        return (fraction == 1 ? "octave " : "1/" + fraction + " octave ") + Digits.compact(nominalHertz(), 4) + " Hz";
    }
}
