package dev.vibra.bearing;

import dev.vibra.internal.Digits;
import java.util.Comparator;
import java.util.Optional;

/**
 * Looks for another explanation of a family of harmonics. The law of noise says how improbable a family is in noise; a
 * machine full of lines makes any family improbable. So the family must also stand out among fundamentals round about.
 */
final class RivalSearch {
    /** The evidence of a rival, as logarithm of probability, must stay below this part of the family's. */
    private static final double RIVAL_SHARE = 0.5;
    private static final double FROM = 0.48;
    private static final double TO = 1.52;
    /**
     * Halves are masked; thirds and quarters of the speed are explained where the fundamental hits them this exactly.
     */
    private static final int[] SUBDIVISIONS = {3, 4};
    private static final double EXACT_BINS = 0.3;
    /** A loose or rubbing machine shows parts of its speed up to about this order; common practice, no source. */
    private static final double HIGHEST_ORDER = 10;

    private final KinematicFrequencies kinematics;
    private final Rates rates;
    private final double tolerance;

    RivalSearch(KinematicFrequencies kinematics, Rates rates, double tolerance) {
        this.kinematics = kinematics;
        this.rates = rates;
        this.tolerance = tolerance;
    }

    /**
     * Finds what else explains a family.
     *
     * @param element element that the family would belong to
     * @param family family of harmonics
     * @param mask lines explained already
     * @return the explanation in words; empty if there is none
     */
    Optional<String> explain(BearingElement element, RateHarmonics family, LineMask mask) {
        double hertz = family.refinedHertz();
        return otherElement(element, hertz)
                .or(() -> subdivision(family.lines(), hertz))
                .or(() -> cageMultiple(element, family, hertz, mask))
                .or(() -> strongerSideband(element, family, hertz, mask))
                .or(() -> rival(element, family, hertz, mask));
    }

    private Optional<String> otherElement(BearingElement element, double hertz) {
        for (BearingElement other : BearingElement.values()) {
            double rate = kinematics.of(other);
            if (other != element && Math.abs(hertz - rate) <= tolerance * rate) {
                return Optional.of("it may be the " + other + " just as well, whose rate is "
                        + Digits.significant(rate, 4) + " Hz");
            }
        }
        return Optional.empty();
    }

    private Optional<String> subdivision(BandLines lines, double hertz) {
        for (double ring : rates.rings()) {
            for (int parts : SUBDIVISIONS) {
                double multiple = hertz / ring * parts;
                double miss = Math.abs(multiple - Math.rint(multiple)) * ring / parts;
                if (hertz <= HIGHEST_ORDER * ring && miss <= EXACT_BINS * lines.resolution()) {
                    return Optional.of("it can't be told from " + (long) Math.rint(multiple) + "/" + parts
                            + " of the speed of rotation");
                }
            }
        }
        return Optional.empty();
    }

    /** Rates of bearings lie at or near multiples of the cage rate; the outer race's, without slip, exactly. */
    private Optional<String> cageMultiple(BearingElement element, RateHarmonics family, double hertz, LineMask mask) {
        if (element == BearingElement.CAGE || kinematics.cageHertz() == 0) {
            return Optional.empty();
        }
        BandLines lines = family.lines();
        double reach = tolerance * kinematics.cageHertz();
        RateHarmonics cage = RateHarmonics.best(lines, kinematics.cageHertz() - reach, kinematics.cageHertz() + reach,
                family.harmonics(), mask);
        double multiple = Math.rint(hertz / cage.refinedHertz());
        boolean hit = Math.abs(hertz - multiple * cage.refinedHertz()) <= DiagnosisRun.MASK_BINS * lines.resolution();
        return hit && cage.depth() >= family.depth()
                ? Optional.of("it may be multiple " + (long) multiple + " of the deeper pulsation at " + text(cage)
                        + ", the rate of the cage")
                : Optional.empty();
    }

    private Optional<String> strongerSideband(BearingElement element, RateHarmonics family, double hertz,
            LineMask mask) {
        BandLines lines = family.lines();
        double reach = 2 * lines.resolution();
        return rates.shifted(element, hertz).filter(f -> f > reach).mapToObj(f ->
                        RateHarmonics.best(lines, f - reach, f + reach, family.harmonics(), mask))
                .filter(side -> side.logProbability() <= family.logProbability())
                .min(Comparator.comparingDouble(RateHarmonics::logProbability))
                .map(side -> "it may be a sideband of the stronger pulsation at " + text(side));
    }

    private Optional<String> rival(BearingElement element, RateHarmonics family, double hertz, LineMask mask) {
        LineMask others = mask.with(rates.ofFamily(element, hertz));
        double limit = RIVAL_SHARE * family.logProbability();
        double step = family.lines().resolution() / (2 * family.harmonics());
        for (double f = FROM * hertz; f <= TO * hertz; f += step) {
            if (!isOwn(element, f / hertz)) {
                RateHarmonics rival = RateHarmonics.at(family.lines(), f, family.harmonics(), others);
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

    private static String text(RateHarmonics family) {
        return Digits.significant(family.refinedHertz(), 4) + " Hz";
    }
}
