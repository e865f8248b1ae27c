package dev.vibra.bearing;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * What one recording says of the extent of a defect. None of it is a size: depth hangs on load, speed, path and noise,
 * and a spot that grows may pulsate less as its edges wear. The same point in the same state of the machine, visit by
 * visit, tells more than any single value.
 *
 * @param depth depth of the pulsation that two harmonics reach, 0 to 2
 * @param harmonics harmonics that stand out of the noise, 1 or more: few for a smooth swing, many for sharp knocks
 * @param sidebands sidebands that stand out of the noise, zero or more: none where the defect stays in the load zone
 * @param rms rms value of the band in m/s², above zero
 * @see "R. B. Randall, J. Antoni, Rolling element bearing diagnostics: a tutorial, Mechanical Systems and Signal
 *     Processing 25 (2011) 485-520, on what harmonics and sidebands tell"
 */
public record DefectExtent(double depth, int harmonics, int sidebands, double rms) implements Serializable {
    private static final long serialVersionUID = 1;

    /**
     * Checks the values.
     *
     * @param depth see the record
     * @param harmonics see the record
     * @param sidebands see the record
     * @param rms see the record
     * @throws IllegalArgumentException if a value is out of range
     */
    public DefectExtent {
        Require.notNegative("depth", depth, "");
        Require.atLeast("harmonics", harmonics, 1);
        Require.atLeast("sidebands", sidebands, 0);
        Require.positive("rms", rms, "m/s²");
    }

    static DefectExtent of(Pulsation pulsation, double rms) {
        int sidebands = (int) pulsation.lines().stream().filter(EnvelopeLine::isSideband).count();
        return new DefectExtent(pulsation.depth(), Math.max(1, pulsation.lines().size() - sidebands), sidebands, rms);
    }

    /**
     * Returns the least share of the power of the band that beats at the rate: narrow knocks that carry a share read up
     * to twice that as depth.
     *
     * @return share, 0 to 1
     */
    public double leastShare() {
        return Math.min(1, 0.5 * depth);
    }

    /**
     * Returns the rms value of the beating part of the band at the least.
     *
     * @return rms value in m/s²
     */
    public double leastBeatingRms() {
        return rms * Math.sqrt(leastShare());
    }

    /**
     * Compares with an earlier recording of the same point in the same state and band: how many times stronger the
     * beating part is.
     *
     * @param earlier extent at the earlier visit, of a depth above zero
     * @return ratio of the beating rms values, zero or more
     * @throws IllegalArgumentException if nothing, or nearly nothing, beat at the earlier visit
     */
    public double timesThatOf(DefectExtent earlier) {
        Objects.requireNonNull(earlier, "earlier");
        return Require.finite("ratio of the beating rms values", leastBeatingRms()
                / Require.positive("beating rms of the earlier visit", earlier.leastBeatingRms(), "m/s²"));
    }

    /** Returns the facts, as in {@code at least 36 % of the power beats (0.84 m/s² rms), 5 harmonics, 4 sidebands}. */
    @Override
    public String toString() {
        return "at least " + Digits.significant(100 * leastShare(), 2) + " % of the power beats ("
                + Digits.significant(leastBeatingRms(), 2) + " m/s² rms), " + harmonics
                + (harmonics == 1 ? " harmonic, " : " harmonics, ") + sidebands
                + (sidebands == 1 ? " sideband" : " sidebands");
    }
}
