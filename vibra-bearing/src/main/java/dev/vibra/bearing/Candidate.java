package dev.vibra.bearing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The best family of one element in one band, judged.
 *
 * @param family family of harmonics
 * @param logTotal natural logarithm of its probability, corrected for all that was searched
 * @param rival other explanation; empty if there is none or it wasn't looked for
 */
record Candidate(RateHarmonics family, double logTotal, Optional<String> rival) {
    private static final double LOG_SIDEBAND = Math.log(1e-3);
    private static final int SIDEBANDS = 2;

    double depth() {
        return family.depth();
    }

    Candidate explainedBy(Optional<String> found) {
        return new Candidate(family, logTotal, found);
    }

    Pulsation pulsation(double modulationHertz) {
        List<EnvelopeLine> evidence = new ArrayList<>();
        for (int h = 1; h <= family.harmonics(); h++) {
            if (family.seen(h)) {
                evidence.add(line(h, 0, family.line(h)));
            }
        }
        if (modulationHertz > 0) {
            addSidebands(modulationHertz, evidence);
        }
        return new Pulsation(family.lines().spectrum().band(), family.refinedHertz(), depth(), logTotal / Math.log(10),
                evidence);
    }

    private void addSidebands(double modulationHertz, List<EnvelopeLine> evidence) {
        for (int h = 1; h <= 2; h++) {
            for (int n = -SIDEBANDS; n <= SIDEBANDS; n++) {
                double hertz = h * family.refinedHertz() + n * modulationHertz;
                int at = family.lines().lineAt(hertz);
                if (n != 0 && family.lines().holds(hertz) && family.lines().logProbability(at) < LOG_SIDEBAND) {
                    evidence.add(line(h, n, at));
                }
            }
        }
    }

    private EnvelopeLine line(int harmonic, int sideband, int at) {
        BandLines lines = family.lines();
        return new EnvelopeLine(harmonic, sideband, lines.interpolated(at), lines.depthAround(at),
                Math.sqrt(lines.ratio(lines.peakNear(at))), lines.logProbability(at) / Math.log(10));
    }
}
