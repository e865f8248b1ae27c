package dev.vibra.bearing.lines;

import dev.vibra.quantity.Band;
import java.util.ArrayList;
import java.util.List;

/** Bands to try when none is given. */
public final class EnvelopeBands {
    /** Share of the sample rate up to which an anti-alias filter usually passes; common practice, no source. */
    private static final double USABLE_SHARE_OF_RATE = 1 / 2.56;
    /** The envelope of a band holds nothing above the width of the band: four harmonics of each element must fit. */
    private static final double HARMONICS_IN_WIDTH = 4;
    private static final int MOST_BANDS = 9;

    private EnvelopeBands() {}

    /**
     * Lists octaves in half-octave steps from the top of a recording down.
     *
     * @param sampleRateHertz sample rate in Hz
     * @param highestRateHertz highest rate looked for in Hz; four harmonics of it fit into each band
     * @return at most nine bands, the highest first; empty if not even one is wide enough
     */
    public static List<Band> candidates(double sampleRateHertz, double highestRateHertz) {
        List<Band> bands = new ArrayList<>();
        double top = sampleRateHertz * USABLE_SHARE_OF_RATE;
        while (top / 2 >= HARMONICS_IN_WIDTH * highestRateHertz && bands.size() < MOST_BANDS) {
            bands.add(Band.of(rounded(top / 2), rounded(top)));
            top /= Math.sqrt(2);
        }
        return bands;
    }

    /** Three digits: an edge of a band means no more. */
    private static double rounded(double hertz) {
        double unit = Math.pow(10, Math.floor(Math.log10(hertz)) - 2);
        return Math.floor(hertz / unit + 1e-9) * unit;
    }
}
