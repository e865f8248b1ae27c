package dev.vibra.bearing;

import java.util.List;
import java.util.stream.DoubleStream;

/** Speed of a ring as the envelope spectra show it. */
final class ShaftSpeed {
    /** Within the tolerance of higher multiples, sidebands of bearings are taken for them. */
    private static final int MULTIPLES = 3;

    private ShaftSpeed() {}

    /**
     * Refines a speed by its multiples in the band that shows them best.
     *
     * @return the refined speed; the nominal one where no band shows multiples significantly, as there is then nothing
     *     that could be mistaken for a bearing
     */
    static double refined(List<BandLines> bands, double nominal, double tolerance, double logAlarm) {
        double reach = tolerance * nominal;
        LineMask nothing = new LineMask(0, DoubleStream.empty());
        double best = nominal;
        double least = logAlarm - Math.log(bands.size());
        for (BandLines lines : bands) {
            RateHarmonics family = RateHarmonics.best(lines, nominal - reach, nominal + reach, MULTIPLES, nothing);
            double total = family.logProbability() + Math.log(family.places(reach));
            if (total < least) {
                least = total;
                best = Math.max(nominal - reach, Math.min(nominal + reach, family.refinedHertz()));
            }
        }
        return best;
    }
}
