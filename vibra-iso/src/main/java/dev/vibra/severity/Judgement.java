package dev.vibra.severity;

import dev.vibra.evidence.Confidence;
import dev.vibra.internal.Digits;
import dev.vibra.quantity.Level;
import dev.vibra.uncertainty.DecisionRule;
import dev.vibra.uncertainty.UncertaintyBudget;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.apache.commons.math3.special.Erf;

/**
 * One level judged by one criterion: the zone and everything that it rests on.
 *
 * @see "ISO 20816-1:2016, criterion I (magnitude); JCGM 100:2008, 7.2 (reporting uncertainty); JCGM 106:2012"
 */
public final class Judgement implements Serializable {
    private static final long serialVersionUID = 1;

    private final Criterion criterion;
    private final Measurement measurement;

    Judgement(Criterion criterion, Measurement measurement) {
        this.criterion = criterion;
        this.measurement = measurement;
    }

    /**
     * Returns the zone in which the value lies, its uncertainty left aside.
     *
     * @return the zone; the better one on a boundary
     */
    public Zone zone() {
        return criterion.zoneOf(level());
    }

    /**
     * Returns the level judged.
     *
     * @return the level
     */
    public Level level() {
        return measurement.level();
    }

    /**
     * Returns the level with uncertainty and method.
     *
     * @return the measurement
     */
    public Measurement measurement() {
        return measurement;
    }

    /**
     * Returns the limits used.
     *
     * @return the criterion
     */
    public Criterion criterion() {
        return criterion;
    }

    /**
     * Returns the value in the unit in which the criterion prints its limits.
     *
     * @return value, zero or more
     */
    public double value() {
        return level().in(criterion.unit());
    }

    /**
     * Returns the expanded uncertainty (k = 2) in the unit of {@link #value()}.
     *
     * @return expanded uncertainty; empty if none was stated
     */
    public OptionalDouble expandedUncertainty() {
        return measurement.uncertainty().isEmpty() ? OptionalDouble.empty()
                : OptionalDouble.of(measurement.uncertainty().get().expandedOf(value()));
    }

    /**
     * Returns the zones that the interval value ± expanded uncertainty touches, best first.
     *
     * @return unmodifiable list with {@link #zone()} in it; that zone alone if no uncertainty was stated
     */
    public List<Zone> zonesWithinUncertainty() {
        double si = level().si();
        double spread = measurement.uncertainty().map(budget -> budget.expandedOf(si)).orElse(0.0);
        Zone best = criterion.zoneOfSi(Math.max(0, si - spread));
        Zone worst = criterion.zoneOfSi(si + spread);
        List<Zone> zones = new ArrayList<>();
        for (Zone zone : Zone.values()) {
            if (!best.isWorseThan(zone) && !zone.isWorseThan(worst)) {
                zones.add(zone);
            }
        }
        return Collections.unmodifiableList(zones);
    }

    /**
     * Returns the probability that the true value lies in a zone: that of a normal distribution about the value with
     * its standard uncertainty. What falls below zero is counted to the best zone.
     *
     * @param zone a zone
     * @return probability from 0 to 1, 0 for a zone that the criterion doesn't have; empty if no uncertainty was stated
     * @see "JCGM 106:2012, 7.2 (conformance probability of a normal distribution)"
     */
    public OptionalDouble probabilityOf(Zone zone) {
        if (measurement.uncertainty().isEmpty()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(criterion.zones().contains(zone)
                ? probabilityBetween(criterion.lowerSi(zone), criterion.upperSi(zone)) : 0);
    }

    /** Taken from the tail on the far side of the value, so that small probabilities keep their digits. */
    private double probabilityBetween(double lowerSi, double upperSi) {
        double value = level().si();
        double lower = lowerSi == 0 ? Double.NEGATIVE_INFINITY : lowerSi;
        double standard = measurement.uncertainty().orElseThrow().relativeStandard() * value;
        if (standard == 0) {
            return value > lower && value <= upperSi ? 1 : 0;
        }
        double from = (lower - value) / standard;
        double to = (upperSi - value) / standard;
        return from > 0 ? tail(from) - tail(to) : tail(-to) - tail(-from);
    }

    /** Probability that a normal variable exceeds z. */
    private static double tail(double z) {
        return 0.5 * Erf.erfc(z / Math.sqrt(2));
    }

    /**
     * Finds the zone by a decision rule that counts the uncertainty.
     *
     * @param rule rule agreed between those who rely on the verdict
     * @return the zone; empty if the rule asks for an uncertainty and none was stated
     * @see "JCGM 106:2012, clause 8"
     */
    public Optional<Zone> zoneBy(DecisionRule rule) {
        double si = level().si();
        if (measurement.uncertainty().isEmpty()) {
            return rule.guardFactor() == 0 ? Optional.of(zone()) : Optional.empty();
        }
        return Optional.of(criterion.zoneOfSi(rule.moved(si, measurement.uncertainty().get().expandedOf(si))));
    }

    /**
     * Exports the judgement as plain numbers, strings and lists for a file or a historian.
     *
     * <p>Keys, in order: standard, clause, group, support, quantity, detector, bandLowestHertz, bandHighestHertz,
     * value, unit, limits, zone, confidence; then, where there is one, rating, note, expandedUncertainty,
     * coverageFactor, zonesWithinUncertainty, zoneProbabilities, method and chain. Value, limits and uncertainty are in
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
        if (criterion.hasOwnRatings()) {
            values.put("rating", criterion.rating(zone()));
        }
        if (!criterion.note().isEmpty()) {
            values.put("note", criterion.note());
        }
        expandedUncertainty().ifPresent(uncertainty -> {
            values.put("expandedUncertainty", uncertainty);
            values.put("coverageFactor", UncertaintyBudget.COVERAGE_FACTOR);
            values.put("zonesWithinUncertainty",
                    zonesWithinUncertainty().stream().map(Zone::name).collect(Collectors.toUnmodifiableList()));
            values.put("zoneProbabilities", probabilities());
        });
        measurement.method().ifPresent(method -> values.put("method", method));
        measurement.chain().ifPresent(chain -> values.put("chain", chain.toString()));
        return Collections.unmodifiableMap(values);
    }

    private Map<String, Double> probabilities() {
        Map<String, Double> probabilities = new LinkedHashMap<>();
        for (Zone zone : criterion.zones()) {
            probabilities.put(zone.name(), probabilityOf(zone).orElseThrow());
        }
        return Collections.unmodifiableMap(probabilities);
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
        lines.add("  uncertainty  " + uncertaintyText());
        if (measurement.uncertainty().isPresent()) {
            lines.add("  probability  " + probabilityText());
        }
        if (level().si() == 0) {
            lines.add("  doubt        a running machine doesn't read zero: see to sensor and cable");
        }
        if (measurement.uncertainty().filter(budget -> budget.relativeExpanded() > 1).isPresent()) {
            lines.add("  doubt        the uncertainty is larger than the value (5 % is stated as 0.05): the zone tells"
                    + " little");
        }
        lines.add("  limits       " + criterion.boundaries().stream().map(criterion::named)
                .collect(Collectors.joining(", ")) + " " + criterion.unit() + "; a value on a limit counts to the"
                + " better zone (common use, the standard fixes no rule)");
        lines.add("  criterion    " + criterion.source());
        lines.add("  confidence   " + criterion.confidence()
                + (criterion.note().isEmpty() ? "" : " (" + criterion.note() + ")"));
        lines.add("  measured by  " + measurement.method().orElse("not stated"));
        measurement.chain().ifPresent(chain -> {
            lines.add("  recording    " + chain);
            chain.cautions(criterion.band()).forEach(caution -> lines.add("  doubt        " + caution));
        });
        if (!zone().caution().isEmpty()) {
            lines.add("  caution      " + zone().caution());
        }
        return String.join("\n", lines);
    }

    private String probabilityText() {
        return criterion.zones().stream()
                .map(zone -> criterion.rating(zone) + " " + percent(probabilityOf(zone).orElseThrow()))
                .collect(Collectors.joining(", "));
    }

    /** Never "100 %" or "0 %" for what is only near. */
    private static String percent(double probability) {
        if (probability > 0 && probability < 0.001) {
            return "< 0.1 %";
        }
        return probability > 0.999 && probability < 1 ? "> 99.9 %" : Digits.compact(100 * probability, 3) + " %";
    }

    private String uncertaintyText() {
        if (measurement.uncertainty().isEmpty()) {
            return "not stated";
        }
        return "± " + Printed.uncertainty(expandedUncertainty().getAsDouble()) + " " + criterion.unit() + ": "
                + measurement.uncertainty().get() + "; " + zonesText();
    }

    private String zonesText() {
        List<Zone> zones = zonesWithinUncertainty();
        String text = zones.stream().map(criterion.hasOwnRatings() ? criterion::rating : Zone::name)
                .collect(Collectors.joining(" or "));
        return (criterion.hasOwnRatings() ? "" : "zone ") + text + " within uncertainty";
    }

    private String valueText() {
        return Printed.value(criterion, level().si(), expandedUncertainty().orElse(0)) + " " + criterion.unit() + " "
                + criterion.detector() + " (" + criterion.band() + ")";
    }

    /** Two judgements are equal if criterion and measurement are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Judgement judgement
                && criterion.equals(judgement.criterion)
                && measurement.equals(judgement.measurement);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(criterion, measurement);
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
                + "; "
                + criterion.source();
    }
}
