package dev.vibra.bearing.proportion;

import dev.vibra.bearing.lines.EnvelopeLines;
import dev.vibra.bearing.lines.LineMask;
import dev.vibra.bearing.lines.RateFamily;
import dev.vibra.bearing.lines.SearchField;
import dev.vibra.quantity.Band;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Search for families of harmonics without knowing their rate: the most improbable first, its lines then being
 * explained for the rest.
 */
final class BlindSearch {
    /** From below any cage to above the inner race of the most elements that fit. */
    private static final double LOWEST_ORDER = 0.25;
    private static final double HIGHEST_ORDER = 15;
    private static final int HARMONICS = 5;
    /** A machine with more has no single origin worth naming; bounds the work. */
    private static final int MOST_FAMILIES = 12;
    private static final int SIDEBANDS = 3;
    /** Share of its frequency that slip spreads a line over; common practice, no source. */
    private static final double SPREAD = 0.01;
    /** The middle of strong sidebands is looked for so many turns to either side, by the first three harmonics. */
    private static final int SHIFTS = 4;
    private static final int CARRIER_HARMONICS = 3;
    private static final double SHIFTED_SHARE = 0.5;
    /** A fundamental pulsates about as deep as its second or third harmonic, or deeper. */
    private static final double COMPARABLE = 0.9;

    private final List<EnvelopeLines> bands;
    private final Shaft shaft;
    private final UnknownBearingSettings settings;
    private final OtherOrigins origins;
    private final double logAlarm;
    private final double highest;
    private final List<SeenPulsation> families = new ArrayList<>();
    private final List<RateElsewhere> elsewhere = new ArrayList<>();

    BlindSearch(List<EnvelopeLines> bands, Shaft shaft, UnknownBearingSettings settings) {
        this.bands = bands;
        this.shaft = shaft;
        this.settings = settings;
        origins = new OtherOrigins(settings);
        logAlarm = Math.log(settings.falseAlarmProbability());
        highest = bands.stream().mapToDouble(EnvelopeLines::highestUsableHertz).max().orElse(0);
        search();
    }

    /** Families without another origin, strongest evidence first. */
    List<SeenPulsation> families() {
        return families;
    }

    List<RateElsewhere> elsewhere() {
        return elsewhere;
    }

    private void search() {
        LineMask mask = LineMask.nothing();
        double places = (HIGHEST_ORDER - LOWEST_ORDER) * shaft.hertz() * HARMONICS / bands.get(0).resolutionHertz();
        double trials = Math.log(places * bands.size());
        for (int i = 0; i < MOST_FAMILIES; i++) {
            Optional<RateFamily> best = best(mask).filter(one -> one.logProbability() + trials < logAlarm);
            if (best.isEmpty()) {
                return;
            }
            SearchField field = SearchField.of(best.get().lines(), mask);
            RateFamily lowest = fundamental(best.get(), field);
            mask = explained(lowest, field, best.get().logProbability() + trials, mask);
        }
    }

    private Optional<RateFamily> best(LineMask mask) {
        RateFamily best = null;
        for (EnvelopeLines lines : bands) {
            SearchField field = SearchField.of(lines, mask);
            RateFamily next = RateFamily.best(field, LOWEST_ORDER * shaft.hertz(), HIGHEST_ORDER * shaft.hertz(),
                    HARMONICS);
            boolean less = best == null || next.logProbability() < best.logProbability();
            best = less && next.depth() > 0 ? next : best;
        }
        return Optional.ofNullable(best);
    }

    /**
     * Where the strength swings strongly with the speed, lines stand at all sums of multiples of rate and speed; the
     * rate itself is in the middle of them, where they are strongest.
     */
    private RateFamily carrier(RateFamily family, SearchField field) {
        RateFamily strongest = family;
        for (int n = -SHIFTS; n <= SHIFTS; n++) {
            double hertz = family.refinedHertz() + n * shaft.hertz();
            if (hertz > LOWEST_ORDER * shaft.hertz()) {
                RateFamily shifted = near(field, hertz);
                boolean deep = shifted.depth() >= SHIFTED_SHARE * family.depth();
                strongest = deep && evidence(shifted) < evidence(strongest) ? shifted : strongest;
            }
        }
        return strongest;
    }

    private static RateFamily near(SearchField field, double hertz) {
        double reach = field.lines().resolutionHertz();
        return RateFamily.best(field, hertz - reach, hertz + reach, HARMONICS);
    }

    private static double evidence(RateFamily family) {
        return IntStream.rangeClosed(1, CARRIER_HARMONICS).filter(family::seen)
                .mapToDouble(h -> family.lines().logProbability(family.line(h))).sum();
    }

    /** Where half or a third of the rate pulsates as deep with its harmonics, that is the fundamental. */
    private static RateFamily fundamental(RateFamily family, SearchField field) {
        RateFamily lowest = family;
        for (int parts = 2; parts <= 3; parts++) {
            RateFamily part = near(field, family.refinedHertz() / parts);
            lowest = part.depth() >= COMPARABLE * family.depth() ? part : lowest;
        }
        return lowest;
    }

    /** Files a family and covers the lines that it explains. */
    private LineMask explained(RateFamily family, SearchField field, double logTotal, LineMask mask) {
        SidebandSearch sidebands = new SidebandSearch(family.lines(), family.refinedHertz(), shaft, mask, settings);
        Optional<OtherOrigins.Origin> origin = origins.of(family.lines(), family.refinedHertz(), sidebands);
        if (origin.isPresent()) {
            elsewhere.add(new RateElsewhere(seen(family, sidebands, logTotal), origin.get().cause()));
            return cover(family.refinedHertz(), mask.with(SidebandSearch.multiples(origin.get().base(), highest),
                    family.lines().spreadHertz()), List.of());
        }
        RateFamily carrier = carrier(family, field);
        SidebandSearch about = new SidebandSearch(carrier.lines(), carrier.refinedHertz(), shaft, mask, settings);
        families.add(seen(carrier, about, logTotal));
        return cover(carrier.refinedHertz(), mask, about.found());
    }

    private SeenPulsation seen(RateFamily family, SidebandSearch sidebands, double logTotal) {
        double hertz = family.refinedHertz();
        return new SeenPulsation(band(family), hertz, family.depth(),
                Math.min(0, logTotal) / Math.log(10), new ObservedRate(hertz / shaft.hertz(), sidebands.found()));
    }

    private Band band(RateFamily family) {
        return bands.stream().filter(lines -> lines == family.lines()).findFirst().orElseThrow().spectrum().band();
    }

    /** Slip spreads lines the further, the higher they are. */
    private LineMask cover(double hertz, LineMask mask, List<SidebandSpacing> sidebands) {
        // Multiples of a cage lie so close together that they would explain everything.
        double last = hertz < shaft.hertz() ? HARMONICS * hertz : highest;
        LineMask covered = mask;
        for (double f : SidebandSearch.multiples(hertz, last).toArray()) {
            DoubleStream lines = DoubleStream.concat(DoubleStream.of(f), sidebands.stream()
                    .flatMapToDouble(side -> SidebandSearch.about(f, side.order() * shaft.hertz(), SIDEBANDS)));
            covered = covered.with(lines, bands.get(0).spreadHertz() + SPREAD * f);
        }
        return covered;
    }
}
