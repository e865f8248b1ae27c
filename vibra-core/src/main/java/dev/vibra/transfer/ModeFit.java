package dev.vibra.transfer;

import dev.vibra.quantity.Band;
import java.util.Objects;
import org.apache.commons.math3.complex.Complex;

/**
 * Natural frequency and damping of a well separated mode from a frequency response (H1).
 *
 * <p>Both ways take the mode as one of viscous damping and want the response as mobility (velocity over force), whose
 * circle is exact for it: {@code Y = iω/(k - ω²m + iωc)}. Receptance or accelerance are turned into mobility by their
 * power of iω.
 *
 * @see "D. J. Ewins, Modal Testing, 2nd ed. 2000, sections 4.2 and 4.3"
 */
public final class ModeFit {
    private ModeFit() {}

    /**
     * Reads the mode from the peak and the two frequencies at which the mobility has fallen by 3.01 dB, interpolated
     * between lines: {@code ζ = (f2 - f1)/(2·fn), fn = √(f1·f2)}, exact for viscous damping. The lines should lie
     * closer than a fifth of the half-power width.
     *
     * @param response response to read, of a motion to any input
     * @param integrations how often the response must be integrated to be a mobility: 1 for an accelerance, 0 for a
     *     mobility, -1 for a receptance
     * @param band band that holds the mode and no other
     * @return the mode
     * @throws IllegalArgumentException if the band holds no peak that falls by 3 dB on both sides
     * @throws IllegalStateException if the input has no power at a line of the band
     */
    public static Mode halfPower(FrequencyResponse response, int integrations, Band band) {
        Objects.requireNonNull(band, "band");
        Mobility mobility = new Mobility(Objects.requireNonNull(response, "response"), integrations, band);
        int top = mobility.highest();
        double level = mobility.magnitude(top) / Math.sqrt(2);
        double lower = mobility.crossing(top, -1, level);
        double upper = mobility.crossing(top, 1, level);
        double natural = Math.sqrt(lower * upper);
        return new Mode(natural, (upper - lower) / (2 * natural));
    }

    /**
     * Fits the circle that the mobility describes in the plane. With the angle θ of a line seen from the middle of the
     * circle, counted from the point of resonance, {@code tan(θ/2) = (ω² - ωn²)/(2ζ·ωn·ω)}: a straight line through the
     * lines within the half-power points gives both unknowns.
     *
     * @param response response to read, of a motion to any input
     * @param integrations how often the response must be integrated to be a mobility: 1 for an accelerance, 0 for a
     *     mobility, -1 for a receptance
     * @param band band that holds the mode and no other
     * @return the mode
     * @throws IllegalArgumentException if fewer than three lines lie on the arc of the mode, or they lie on none
     * @throws IllegalStateException if the input has no power at a line of the band
     */
    public static Mode circle(FrequencyResponse response, int integrations, Band band) {
        Objects.requireNonNull(band, "band");
        Mobility mobility = new Mobility(Objects.requireNonNull(response, "response"), integrations, band);
        int top = mobility.highest();
        int first = mobility.within(top, -1);
        int last = mobility.within(top, 1);
        if (last - first < 2) {
            throw new IllegalArgumentException("at least three lines must lie between the half-power points: "
                    + (last - first + 1));
        }
        Complex middle = mobility.centre(first, last);
        double resonance = resonanceAngle(mobility, middle, top);
        // tan(θ/2)·ω = (ω² - ωn²)/(2ζωn) is a straight line over ω², slope 1/(2ζωn), zero at ωn².
        double[][] rows = new double[last - first + 1][2];
        double[] right = new double[rows.length];
        for (int k = first; k <= last; k++) {
            double omega = 2 * Math.PI * mobility.hertz(k);
            double angle = resonance - mobility.at(k).subtract(middle).getArgument();
            rows[k - first] = new double[] {omega * omega, 1};
            right[k - first] = Math.tan(0.5 * Math.IEEEremainder(angle, 2 * Math.PI)) * omega;
        }
        double[] line = Mobility.leastSquares(rows, right);
        double natural = Math.sqrt(-line[1] / line[0]);
        return new Mode(natural / (2 * Math.PI), 1 / (2 * natural * line[0]));
    }

    /** The circle passes the origin, where the response is far from resonance: the opposite point is resonance. */
    private static double resonanceAngle(Mobility mobility, Complex middle, int top) {
        double angle = middle.getArgument();
        double atTop = mobility.at(top).subtract(middle).getArgument();
        return Math.abs(Math.IEEEremainder(angle - atTop, 2 * Math.PI)) < Math.PI / 2 ? angle : atTop;
    }
}
