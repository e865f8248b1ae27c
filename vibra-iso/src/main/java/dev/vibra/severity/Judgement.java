package dev.vibra.severity;

import dev.vibra.evidence.Confidence;
import dev.vibra.internal.Digits;
import dev.vibra.quantity.Level;
import dev.vibra.uncertainty.Contribution;
import dev.vibra.uncertainty.DecisionRule;
import dev.vibra.uncertainty.UncertaintyBudget;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One level judged by one criterion: the zone and everything that it rests on.
 *
 * <p>The zone is that of the reading, as limits are compared with what instruments read. Intervals and probabilities
 * lie about the reading less its known effects, see {@link UncertaintyBudget#corrected}.
 *
 * @param criterion limits used
 * @param measurement level with its uncertainty, one that the criterion has no {@linkplain Criterion#objectionTo
 *     objection} to
 * @see "ISO 20816-1:2016, criterion I (magnitude); JCGM 100:2008, 7.2 (reporting uncertainty); JCGM 106:2012"
 */
public record Judgement(Criterion criterion, Measurement measurement) implements Serializable {
    /**
     * Checks that the criterion means such a level.
     *
     * @param criterion limits used
     * @param measurement level with its uncertainty
     * @throws IllegalArgumentException if the criterion objects to the level or the recording doesn't cover its band
     */
    public Judgement {
        Objects.requireNonNull(criterion, "criterion");
        Objects.requireNonNull(measurement, "measurement");
        criterion.check(measurement);
    }

    /** {@return the zone in which the value lies, its uncertainty left aside; the better one on a boundary} */
    public Zone zone() {
        return criterion.zoneOfSi(level().si());
    }

    /** {@return the level judged, which tells how it was measured} */
    public Level level() {
        return measurement.level();
    }

    /** {@return the value in the unit in which the criterion prints its limits, zero or more} */
    public double value() {
        return level().in(criterion.unit());
    }

    /** {@return the expanded uncertainty for 95 % in the unit of {@link #value()}, zero or more} */
    public double expandedUncertainty() {
        return uncertainty().expandedOf(value());
    }

    /**
     * Returns the factor between standard and expanded uncertainty.
     *
     * @return coverage factor from the effective degrees of freedom
     */
    public double coverageFactor() {
        return uncertainty().coverageFactor();
    }

    private UncertaintyBudget uncertainty() {
        return measurement.uncertainty();
    }

    /**
     * Returns the zones that the interval about the corrected value touches, from best to worst.
     *
     * @return unmodifiable list with {@link #zone()} in it
     */
    public List<Zone> zonesWithinUncertainty() {
        double si = level().si();
        double centre = uncertainty().corrected(si);
        double spread = uncertainty().expandedOf(si);
        Zone best = criterion.zoneOfSi(Math.min(si, Math.max(0, centre - spread)));
        Zone worst = criterion.zoneOfSi(Math.max(si, centre + spread));
        return Stream.of(Zone.values()).filter(zone -> !best.isWorseThan(zone) && !zone.isWorseThan(worst)).toList();
    }

    /**
     * Returns the probability that the true value lies in a zone.
     *
     * @param zone a zone
     * @return probability from 0 to 1, 0 for a zone that the criterion doesn't have
     * @see UncertaintyBudget#probabilityBetween
     */
    public double probabilityOf(Zone zone) {
        Objects.requireNonNull(zone, "zone");
        return criterion.zones().contains(zone)
                ? uncertainty().probabilityBetween(level().si(), criterion.lowerSi(zone), criterion.upperSi(zone)) : 0;
    }

    /**
     * Returns the probability of each zone.
     *
     * @return unmodifiable map of the zones that the criterion tells apart, best first
     */
    public Map<Zone, Double> probabilities() {
        Map<Zone, Double> probabilities = new LinkedHashMap<>();
        criterion.zones().forEach(zone -> probabilities.put(zone, probabilityOf(zone)));
        return Collections.unmodifiableMap(probabilities);
    }

    /**
     * Finds the zone by a decision rule that counts the uncertainty.
     *
     * @param rule rule agreed between those who rely on the verdict
     * @return the zone
     * @see "JCGM 106:2012, clause 8"
     */
    public Zone zoneBy(DecisionRule rule) {
        Objects.requireNonNull(rule, "rule");
        double si = level().si();
        // Simple acceptance takes the reading as it is; a guard band begins at the corrected value.
        double from = si + Math.abs(rule.guardFactor()) * (uncertainty().corrected(si) - si);
        return criterion.zoneOfSi(rule.moved(from, uncertainty().expandedOf(si)));
    }

    /**
     * Exports the judgement as plain numbers, strings and lists for a historian.
     *
     * <p>Keys, in order: standard, clause, group, support, quantity, detector, bandLowestHertz, bandHighestHertz,
     * value, unit, limits, zone, confidence, expandedUncertainty, coverageFactor, zonesWithinUncertainty,
     * zoneProbabilities, method; then, where there is one, rating, note and chain. Value, limits and uncertainty are in
     * the unit given; units are in ASCII.
     *
     * @return unmodifiable map with values of type String, Double, List or Map
     */
    public Map<String, Object> values() {
        Map<String, Object> values = new LinkedHashMap<>();
        values.put("standard", criterion.standard());
        values.put("clause", criterion.clause());
        values.put("group", criterion.group());
        values.put("support", criterion.support().map(Support::toString).orElse("any"));
        values.put("quantity", criterion.quantity().toString());
        values.put("detector", criterion.detector().toString());
        values.put("bandLowestHertz", criterion.band().lowestHertz());
        values.put("bandHighestHertz", criterion.band().highestHertz());
        values.put("value", value());
        values.put("unit", criterion.unit().plainSymbol());
        values.put("limits", criterion.limits());
        values.put("zone", zone().name());
        values.put("confidence", criterion.confidence().toString());
        values.put("expandedUncertainty", expandedUncertainty());
        values.put("coverageFactor", coverageFactor());
        values.put("zonesWithinUncertainty", zonesWithinUncertainty().stream().map(Zone::name).toList());
        Map<String, Double> byName = new LinkedHashMap<>();
        probabilities().forEach((zone, probability) -> byName.put(zone.name(), probability));
        values.put("zoneProbabilities", Collections.unmodifiableMap(byName));
        values.put("method", level().method().toString());
        if (criterion.hasOwnRatings()) {
            values.put("rating", criterion.rating(zone()));
        }
        if (!criterion.note().isEmpty()) {
            values.put("note", criterion.note());
        }
        measurement.chain().ifPresent(chain -> values.put("chain", chain.toString()));
        return Collections.unmodifiableMap(values);
    }

    /**
     * Writes the judgement in full, one fact a line.
     *
     * @return several lines without a line break at the end
     */
    public String describe() {
        List<String> lines = new ArrayList<>();
        lines.add(criterion.rating(zone()) + ": " + criterion.meaning(zone()));
        lines.add("  value        " + valueText() + ", " + criterion.quantity());
        lines.add("  uncertainty  ± " + Printed.uncertainty(expandedUncertainty()) + " " + criterion.unit() + ": "
                + uncertainty() + "; " + zonesText());
        lines.add("  probability  " + probabilities().entrySet().stream()
                .map(each -> criterion.rating(each.getKey()) + " " + percent(each.getValue()))
                .collect(Collectors.joining(", ")));
        doubts().forEach(doubt -> lines.add("  doubt        " + doubt));
        lines.add("  limits       " + criterion.boundaries().stream().map(criterion::named)
                .collect(Collectors.joining(", ")) + " " + criterion.unit() + "; a value on a limit counts to the"
                + " better zone (common use, the standard fixes no rule)");
        lines.add("  criterion    " + criterion.source());
        lines.add("  confidence   " + criterion.confidence()
                + (criterion.note().isEmpty() ? "" : " (" + criterion.note() + ")"));
        lines.add("  measured by  " + level().method());
        measurement.chain().ifPresent(chain -> lines.add("  recording    " + chain));
        if (!zone().caution().isEmpty()) {
            lines.add("  caution      " + zone().caution());
        }
        return String.join("\n", lines);
    }

    private List<String> doubts() {
        List<String> doubts = new ArrayList<>();
        if (level().si() == 0) {
            doubts.add("a running machine doesn't read zero: see to sensor and cable");
        }
        if (uncertainty().relativeExpanded() > 1) {
            doubts.add("the uncertainty is larger than the value (5 % is stated as 0.05): the zone tells little");
        }
        String assumed = uncertainty().contributions().stream().filter(Contribution::assumed).map(Contribution::name)
                .collect(Collectors.joining(", "));
        if (!assumed.isEmpty()) {
            doubts.add("not told, so the uncertainty rests on a default: " + assumed);
        }
        double correction = uncertainty().corrected(level().si()) / level().si() - 1;
        if (Math.abs(correction) >= 0.001) {
            doubts.add("known effects make the reading too large; interval and probabilities allow for "
                    + Digits.compact(100 * correction, 2) + " %");
        }
        measurement.chain().ifPresent(chain -> doubts.addAll(chain.cautions(criterion.band())));
        return doubts;
    }

    /** Never "100 %" or "0 %" for what is only near. */
    private static String percent(double probability) {
        if (probability > 0 && probability < 0.001) {
            return "< 0.1 %";
        }
        return probability > 0.999 && probability < 1 ? "> 99.9 %" : Digits.compact(100 * probability, 3) + " %";
    }

    private String zonesText() {
        String text = zonesWithinUncertainty().stream().map(criterion.hasOwnRatings() ? criterion::rating : Zone::name)
                .collect(Collectors.joining(" or "));
        return (criterion.hasOwnRatings() ? "" : "zone ") + text + " within uncertainty";
    }

    private String valueText() {
        return Printed.value(criterion, level().si(), expandedUncertainty()) + " " + criterion.unit() + " "
                + criterion.detector() + " (" + criterion.band() + ")";
    }

    /**
     * Returns the judgement in one line, as in {@code zone C: 4.31 ± 0.16 mm/s rms (10–1000 Hz); limits 1.4 / 2.8 /
     * 4.5; ISO 20816-3:2022 Table A.2, group 2, rigid}; where the interval touches other zones or the limits aren't
     * firm it says so.
     */
    @Override
    public String toString() {
        String straddling = zonesWithinUncertainty().size() > 1 ? "; " + zonesText() : "";
        String flag = criterion.confidence() == Confidence.FIRM ? "" : " (" + criterion.confidence() + ")";
        return criterion.rating(zone()) + ": " + valueText() + straddling + "; limits " + criterion.limitsText() + flag
                + "; " + criterion.source();
    }
}
