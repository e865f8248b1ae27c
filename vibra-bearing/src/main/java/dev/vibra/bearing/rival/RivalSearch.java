package dev.vibra.bearing.rival;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.lines.SearchLines;
import dev.vibra.bearing.lines.LineMask;
import dev.vibra.bearing.lines.RateFamily;
import dev.vibra.bearing.lines.SearchField;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * Looks for another explanation of a family of harmonics. The law of noise says how improbable a family is in noise; a
 * machine full of lines makes any family improbable. So the family must also stand out among fundamentals round about.
 */
public final class RivalSearch {
    /** The evidence of a rival, as logarithm of probability, must stay below this part of the family's. */
    private static final double RIVAL_SHARE = 0.5;
    private static final double FROM = 0.48;
    private static final double TO = 1.52;
    private static final int HARMONICS_WITH_SIDEBANDS = 3;
    private static final int SIDEBANDS = 3;
    private static final double LOG_SWINGS = Math.log(1e-6);
    private static final double LEAST_SWING = 0.2;
    private static final double LOG_STANDS = Math.log(1e-3);
    private static final double LOG_DOES_NOT_SWING = Math.log(1e-2);

    private final KinematicFrequencies kinematics;
    private final Rotation rotation;
    private final Modulation modulation;
    private final double tolerance;

    /**
     * Makes a search.
     *
     * @param kinematics rates of the bearing
     * @param rotation speeds of the rings
     * @param modulation sidebands
     * @param tolerance half width of the window of a rate, over the rate
     */
    public RivalSearch(KinematicFrequencies kinematics, Rotation rotation, Modulation modulation, double tolerance) {
        this.kinematics = Objects.requireNonNull(kinematics, "kinematics");
        this.rotation = Objects.requireNonNull(rotation, "rotation");
        this.modulation = Objects.requireNonNull(modulation, "modulation");
        this.tolerance = tolerance;
    }

    /**
     * Finds what else explains a family.
     *
     * @param element element that the family would belong to
     * @param family family of harmonics
     * @param found rates that are found already
     * @param mask lines explained already
     * @return the explanation in words; empty if there is none
     */
    public Optional<String> explain(BearingElement element, RateFamily family, List<FoundRate> found, LineMask mask) {
        Require.copy("found", found);
        Objects.requireNonNull(element, "element");
        double hertz = Objects.requireNonNull(family, "family").refinedHertz();
        SearchLines lines = family.lines();
        LineMask own = LineMask.nothing().with(modulation.ofFamily(element, hertz), lines.spreadHertz());
        SearchField field = SearchField.of(lines, Objects.requireNonNull(mask, "mask"));
        return outside(element, hertz, lines)
                .or(() -> otherElement(element, hertz, lines))
                .or(() -> multipleOfElement(element, hertz, lines))
                .or(() -> spin(element, hertz, lines))
                .or(() -> rotation(element, hertz, lines))
                .or(() -> multipleOfFound(element, family, hertz, found))
                .or(() -> cageMultiple(element, family, hertz, field))
                .or(() -> strongerSideband(element, family, hertz, field))
                .or(() -> rival(element, family, hertz, SearchField.of(lines, mask.with(own))));
    }

    /** A line at the edge of the window may belong to something whose rate lies beyond it. */
    private Optional<String> outside(BearingElement element, double hertz, SearchLines lines) {
        double rate = kinematics.of(element);
        double off = Math.abs(hertz - rate) - 0.1 * lines.resolutionHertz();
        return off > tolerance * rate ? Optional.of("it lies " + Digits.significant(100 * off / rate, 2)
                + " % off the rate, farther than slip explains") : Optional.empty();
    }

    private Optional<String> otherElement(BearingElement element, double hertz, SearchLines lines) {
        for (BearingElement other : BearingElement.values()) {
            double rate = kinematics.of(other);
            if (other != element && Math.abs(hertz - rate) <= tolerance * rate
                    && !swingsAs(element, other, hertz, lines)) {
                return Optional.of("it may be the " + other + " just as well, whose rate is "
                        + Digits.significant(rate, 4) + " Hz");
            }
        }
        return Optional.empty();
    }

    /** The second and third harmonic of one element may fall on the rate of another. */
    private Optional<String> multipleOfElement(BearingElement element, double hertz, SearchLines lines) {
        for (BearingElement other : BearingElement.values()) {
            double rate = kinematics.of(other);
            for (int n = 2; n <= 3 && other != element && other != BearingElement.CAGE; n++) {
                if (Math.abs(hertz / n - rate) <= tolerance * rate && lines.holds(hertz / n)
                        && lines.logProbability(lines.lineAt(hertz / n)) < LOG_STANDS
                        && !swingsAs(element, other, hertz, lines)) {
                    return Optional.of("it can't be told from " + n + " times the rate of the " + other
                            + ", where a line stands too");
                }
            }
        }
        return Optional.empty();
    }

    /** Nothing but a bearing swings at the rate of its cage. */
    private Optional<String> rotation(BearingElement element, double hertz, SearchLines lines) {
        boolean swings = element == BearingElement.ROLLING_ELEMENT && swings(lines, hertz, kinematics.cageHertz());
        LineMask own = LineMask.nothing().with(modulation.ofLoadZone(element, hertz), lines.spreadHertz());
        return swings ? Optional.empty() : rotation.explains(hertz, lines, own);
    }

    /** A rolling element that strikes one race harder shows half its rate, which may fall on the rate of a race. */
    private Optional<String> spin(BearingElement element, double hertz, SearchLines lines) {
        double rate = kinematics.rollingElementHertz();
        boolean half = element != BearingElement.ROLLING_ELEMENT && element != BearingElement.CAGE
                && Math.abs(2 * hertz - rate) <= tolerance * rate;
        boolean carried = half && (swings(lines, hertz, kinematics.cageHertz())
                || swings(lines, 2 * hertz, kinematics.cageHertz()));
        return carried ? Optional.of("it swings at the rate of the cage, as half the rate of a rolling element does")
                : Optional.empty();
    }

    /** Where two elements have the same rate, the spacing of the sidebands tells which of them it is. */
    private boolean swingsAs(BearingElement element, BearingElement other, double hertz, SearchLines lines) {
        return swings(lines, hertz, kinematics.modulationOf(element))
                && lines.logOfSidebands(hertz, kinematics.modulationOf(other)) > LOG_DOES_NOT_SWING;
    }

    /** What scatters in time has skirts that look like faint sidebands: those of a load zone are nearly as deep. */
    private static boolean swings(SearchLines lines, double hertz, double spacing) {
        return lines.logOfSidebands(hertz, spacing) < LOG_SWINGS && DoubleStream.of(-spacing, spacing)
                .map(shift -> hertz + shift).allMatch(f -> lines.holds(f) && lines.depthAround(lines.lineAt(f))
                        >= LEAST_SWING * lines.depthAround(lines.lineAt(hertz)));
    }

    /** Halves and thirds of what is found, and its multiples of the cage, need no defect of their own. */
    private Optional<String> multipleOfFound(BearingElement element, RateFamily family, double hertz,
            List<FoundRate> found) {
        double reach = SearchLines.LINE_BINS * family.lines().resolutionHertz();
        for (FoundRate rate : found) {
            for (int parts : parts(element, rate.element())) {
                double multiple = Math.rint(hertz / rate.hertz() * parts);
                if (family.depth() < rate.depth() && Math.abs(hertz - multiple * rate.hertz() / parts) <= reach) {
                    return Optional.of("it can't be told from " + (long) multiple + "/" + parts
                            + " of the deeper pulsation of the " + rate.element());
                }
            }
        }
        return Optional.empty();
    }

    private int[] parts(BearingElement element, BearingElement of) {
        boolean ofCage = element != BearingElement.CAGE
                && (of == BearingElement.OUTER_RACE || of == BearingElement.INNER_RACE);
        return ofCage && kinematics.rollingElements().isPresent()
                ? new int[] {2, 3, kinematics.rollingElements().getAsInt()} : new int[] {2, 3};
    }

    /** Rates of bearings lie at or near multiples of the cage rate; the outer race's, without slip, exactly. */
    private Optional<String> cageMultiple(BearingElement element, RateFamily family, double hertz,
            SearchField field) {
        if (element == BearingElement.CAGE || kinematics.cageHertz() == 0) {
            return Optional.empty();
        }
        double reach = tolerance * kinematics.cageHertz();
        RateFamily cage = RateFamily.best(field, kinematics.cageHertz() - reach, kinematics.cageHertz() + reach,
                family.harmonics());
        double multiple = Math.rint(hertz / cage.refinedHertz());
        boolean hit = Math.abs(hertz - multiple * cage.refinedHertz())
                <= SearchLines.LINE_BINS * family.lines().resolutionHertz();
        return hit && cage.depth() >= family.depth()
                ? Optional.of("it may be multiple " + (long) multiple + " of the deeper pulsation at " + text(cage)
                        + ", the rate of the cage")
                : Optional.empty();
    }

    private Optional<String> strongerSideband(BearingElement element, RateFamily family, double hertz,
            SearchField field) {
        double reach = 2 * field.lines().resolutionHertz();
        return modulation.carriers(element, hertz).stream().filter(carrier -> carrier.hertz() > reach)
                .filter(carrier -> evidence(field, carrier.hertz(), carrier.spacingHertz())
                        >= evidence(field, hertz, carrier.spacingHertz()))
                .map(carrier -> RateFamily.best(field, carrier.hertz() - reach, carrier.hertz() + reach,
                        family.harmonics()))
                .filter(side -> side.logProbability() <= family.logProbability())
                .min(Comparator.comparingDouble(RateFamily::logProbability))
                .map(side -> "it may be a sideband of the stronger pulsation at " + text(side));
    }

    /** A carrier stands amid its sidebands: counted with them it explains more than any of them does. */
    private static double evidence(SearchField field, double hertz, double spacing) {
        double sum = 0;
        for (int h = 1; h <= HARMONICS_WITH_SIDEBANDS; h++) {
            for (int n = -SIDEBANDS; n <= SIDEBANDS; n++) {
                double at = h * hertz + n * spacing;
                sum -= field.holds(at) ? field.lines().logProbability(field.lines().lineAt(at)) : 0;
            }
        }
        return sum;
    }

    private Optional<String> rival(BearingElement element, RateFamily family, double hertz, SearchField others) {
        double limit = RIVAL_SHARE * family.logProbability();
        double step = family.lines().resolutionHertz() / (2 * family.harmonics());
        for (double f = FROM * hertz; f <= TO * hertz; f += step) {
            if (RateFamily.fundamentalSeen(others, f) && !isOwn(element, f / hertz)) {
                RateFamily rival = RateFamily.at(others, f, family.harmonics());
                if (rival.logProbability() <= limit) {
                    return Optional.of("it doesn't stand out: the pulsation at " + text(rival)
                            + " has at least half its evidence");
                }
            }
        }
        return Optional.empty();
    }

    /** The window of the element itself and, as a rolling element need not strike both races alike, its spin rate. */
    private boolean isOwn(BearingElement element, double share) {
        double reach = 1.25 * tolerance;
        return Math.abs(share - 1) <= reach || element == BearingElement.ROLLING_ELEMENT
                && (Math.abs(share - 0.5) <= reach || Math.abs(share - 1.5) <= reach);
    }

    private static String text(RateFamily family) {
        return Digits.significant(family.refinedHertz(), 4) + " Hz";
    }

    /** Returns the rates. */
    @Override
    public String toString() {
        return "rivals of " + kinematics;
    }
}
