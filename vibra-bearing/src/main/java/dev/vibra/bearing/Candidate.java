package dev.vibra.bearing;

import dev.vibra.bearing.lines.RateFamily;
import dev.vibra.bearing.lines.SearchLines;
import dev.vibra.quantity.Band;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The best family of one element in one band, judged.
 *
 * @param band band whose envelope shows it
 * @param family family of harmonics
 * @param logTotal natural logarithm of its probability, corrected for all that was searched
 * @param rival other explanation; empty if there is none or it wasn't looked for
 */
record Candidate(Band band, RateFamily family, double logTotal, Optional<String> rival) {
    private static final double LOG_SIDEBAND = Math.log(1e-3);
    private static final int SIDEBANDS = 2;

    double depth() {
        return family.depth();
    }

    Candidate explainedBy(Optional<String> found) {
        return new Candidate(band, family, logTotal, found);
    }

    /** Evidence of the family with the sidebands that its modulation puts there, as logarithm. */
    double evidence(double modulationHertz) {
        double sum = -logTotal;
        for (EnvelopeLine sideband : sidebands(modulationHertz)) {
            sum += LOG_SIDEBAND - sideband.log10Probability() * Math.log(10);
        }
        return sum;
    }

    Pulsation pulsation(double modulationHertz) {
        List<EnvelopeLine> evidence = new ArrayList<>();
        for (int h = 1; h <= family.harmonics(); h++) {
            if (family.seen(h)) {
                evidence.add(line(h, 0, family.line(h)));
            }
        }
        evidence.addAll(sidebands(modulationHertz));
        double shown = depth() > 0 ? depth() : family.depthOfFundamental();
        return new Pulsation(band, family.refinedHertz(), shown, logTotal / Math.log(10),
                evidence);
    }

    private List<EnvelopeLine> sidebands(double modulationHertz) {
        List<EnvelopeLine> sidebands = new ArrayList<>();
        for (int h = 1; h <= 2 && modulationHertz > 0; h++) {
            for (int n = -SIDEBANDS; n <= SIDEBANDS; n++) {
                double hertz = h * family.refinedHertz() + n * modulationHertz;
                int at = family.lines().lineAt(hertz);
                if (n != 0 && family.lines().holds(hertz) && family.lines().logProbability(at) < LOG_SIDEBAND) {
                    sidebands.add(line(h, n, at));
                }
            }
        }
        return sidebands;
    }

    private EnvelopeLine line(int harmonic, int sideband, int at) {
        SearchLines lines = family.lines();
        return new EnvelopeLine(harmonic, sideband, lines.interpolated(at), lines.depthAround(at),
                lines.timesFloor(at), lines.logProbability(at) / Math.log(10));
    }
}
