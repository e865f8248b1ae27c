package dev.vibra.bearing;

import java.util.List;

/** Speed of a ring as the envelope spectra show it: the fundamental that gathers most from the first multiples. */
final class ShaftSpeed {
    private static final int MULTIPLES = 8;

    private ShaftSpeed() {}

    static double refined(List<BandLines> bands, double nominal, double tolerance) {
        double step = bands.get(0).resolution() / (2 * MULTIPLES);
        double best = nominal;
        double most = gathered(bands, nominal);
        int steps = (int) (tolerance * nominal / step);
        for (int i = -steps; i <= steps; i++) {
            double here = gathered(bands, nominal + i * step);
            if (here > most) {
                most = here;
                best = nominal + i * step;
            }
        }
        return best;
    }

    /** Logarithms, so that one strong line doesn't outvote the others. */
    private static double gathered(List<BandLines> bands, double hertz) {
        double sum = 0;
        for (BandLines lines : bands) {
            for (int n = 1; n <= MULTIPLES; n++) {
                if (lines.holds(n * hertz)) {
                    sum += Math.log(Math.max(1, lines.ratio(lines.lineAt(n * hertz))));
                }
            }
        }
        return sum;
    }
}
