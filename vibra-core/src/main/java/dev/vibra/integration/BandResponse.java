package dev.vibra.integration;

import dev.vibra.quantity.Band;
import java.util.Arrays;

/**
 * What each line is multiplied by: {@code (2πi·f)⁻ⁿ} of n integrations within the band, beside it skirts of half a
 * cosine, two fifths of the lower end wide below and a tenth of the upper end wide above. Only lines of the band and
 * its skirts are kept.
 */
final class BandResponse {
    private static final double LOWER_SKIRT = 0.4;
    private static final double UPPER_SKIRT = 0.1;
    /** Times the upper end of a band: above it nothing is kept. */
    static final double UPPER_END = 1 + UPPER_SKIRT;

    private final int integrations;
    private final Band band;
    /** One factor for the real and one for the imaginary part of each line, sign of the turn by -90° included. */
    private final double[] factors;
    private final int first;

    /** The lines are those from 0 Hz on that an array holds. */
    BandResponse(int lines, double resolutionHertz, int integrations, Band band) {
        this.integrations = integrations;
        this.band = band;
        first = (int) Math.min(lines, Math.max(0, Math.floor((1 - LOWER_SKIRT) * band.lowestHertz() / resolutionHertz)));
        int end = (int) Math.min(lines, Math.ceil(highestHertz(band) / resolutionHertz) + 1);
        factors = new double[2 * Math.max(first, end)];
        for (int k = first; k < end; k++) {
            double hertz = k * resolutionHertz;
            double skirt = skirt(hertz);
            double factor = skirt == 0 ? 0 : skirt * power(2 * Math.PI * hertz);
            factors[2 * k] = realSign() * factor;
            factors[2 * k + 1] = imaginarySign() * factor;
        }
    }

    /** Frequency above which nothing is kept. */
    static double highestHertz(Band band) {
        return UPPER_END * band.highestHertz();
    }

    /** Signs of what becomes of a real and of an imaginary part: 1, -i, -1 or i times a line. */
    private int realSign() {
        int turns = Math.floorMod(integrations, 4);
        return turns == 0 || turns == 3 ? 1 : -1;
    }

    private int imaginarySign() {
        return Math.floorMod(integrations, 4) < 2 ? 1 : -1;
    }

    private double power(double omega) {
        double power = 1;
        for (int i = 0; i < Math.abs(integrations); i++) {
            power *= omega;
        }
        return integrations > 0 ? 1 / power : power;
    }

    private double skirt(double hertz) {
        double below = band.lowestHertz() - hertz;
        double above = hertz - band.highestHertz();
        double distance = Math.max(below / (LOWER_SKIRT * band.lowestHertz()),
                above / (UPPER_SKIRT * band.highestHertz()));
        if (!(distance > 0)) {
            return 1;
        }
        return distance >= 1 ? 0 : 0.5 + 0.5 * Math.cos(Math.PI * distance);
    }

    /** Adds up the squares of the lines that lie below all that is kept. */
    double squaresBelow(double[] spectrum) {
        return squares(spectrum, 0, 2 * first);
    }

    /** Adds up the squares of all lines that are kept. */
    double squares(double[] spectrum) {
        return squares(spectrum, 2 * first, factors.length);
    }

    private static double squares(double[] spectrum, int from, int to) {
        double even = 0;
        double odd = 0;
        for (int i = from; i < to; i += 2) {
            even += spectrum[i] * spectrum[i];
            odd += spectrum[i + 1] * spectrum[i + 1];
        }
        return even + odd;
    }

    /** What a line at the lower end of the band is multiplied by. */
    double gainAtLowest() {
        return power(2 * Math.PI * band.lowestHertz());
    }

    /** Works in place on interleaved lines, all of which the array holds. */
    void apply(double[] spectrum) {
        Arrays.fill(spectrum, 0, 2 * first, 0);
        Arrays.fill(spectrum, factors.length, spectrum.length, 0);
        for (int i = 0; i < factors.length; i++) {
            spectrum[i] *= factors[i];
        }
        if (integrations % 2 != 0) {
            for (int i = 2 * first; i < factors.length; i += 2) {
                double re = spectrum[i];
                spectrum[i] = spectrum[i + 1];
                spectrum[i + 1] = re;
            }
        }
    }
}
