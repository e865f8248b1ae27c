package dev.vibra.bearing.proportion;

import dev.vibra.bearing.lines.EnvelopeLines;
import dev.vibra.bearing.lines.LineMask;
import dev.vibra.bearing.lines.RateFamily;
import dev.vibra.bearing.lines.SearchField;
import dev.vibra.bearing.lines.SearchLines;
import java.util.List;

/**
 * Speed of rotation, and how well it is known.
 *
 * @param hertz speed in Hz
 * @param reach how far it may be off, over the speed
 * @param read whether it was read from lines of its own
 */
record Shaft(double hertz, double reach, boolean read) {
    /** Within the tolerance of higher multiples, sidebands of bearings are taken for them. */
    private static final int MULTIPLES = 3;
    /** Interpolated lines are read to a quarter of their distance. */
    private static final double READING_BINS = 0.25;

    /** Refines a speed by its multiples in the band that shows them best; it stays as given where none does. */
    static Shaft of(List<EnvelopeLines> bands, double nominal, double tolerance, double falseAlarm) {
        double reach = tolerance * nominal;
        Shaft best = new Shaft(nominal, tolerance, false);
        double least = Math.log(falseAlarm) - Math.log(bands.size());
        for (EnvelopeLines lines : bands) {
            RateFamily family = RateFamily.best(SearchField.of(lines, LineMask.nothing()), nominal - reach,
                    nominal + reach, MULTIPLES);
            double total = family.logProbability() + Math.log(family.places(reach));
            if (total < least) {
                least = total;
                double found = Math.max(nominal - reach, Math.min(nominal + reach, family.refinedHertz()));
                best = best.readAs(found, lines);
            }
        }
        return best;
    }

    /** The speed as lines or sidebands show it. */
    Shaft readAs(double found, SearchLines lines) {
        return new Shaft(found, READING_BINS * lines.resolutionHertz() / found, true);
    }
}
