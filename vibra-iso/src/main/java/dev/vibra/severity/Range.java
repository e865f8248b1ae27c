package dev.vibra.severity;

import dev.vibra.internal.Digits;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A condition on one number: bounds in SI units, and what a value that is not known means. */
final class Range {
    /** A number with its bound sign, as in {@code > 15} or {@code <= 300}. */
    private static final Pattern BOUND = Pattern.compile("\\s*(>=|>|<=|<)\\s*(\\d+(?:\\.\\d+)?)");

    /** What the number measures: name, printed unit and the way into SI, the same as in {@link Machine}. */
    enum Fact {
        POWER("rated power", "kW"), SHAFT_HEIGHT("shaft height", "mm"), SPEED("speed", "r/min");

        private final String label;
        private final String unit;

        Fact(String label, String unit) {
            this.label = label;
            this.unit = unit;
        }

        double toSi(double value) {
            return switch (this) {
                case POWER -> value * 1000;
                case SHAFT_HEIGHT -> value / 1000;
                case SPEED -> value / 60;
            };
        }

        private double fromSi(double si) {
            return switch (this) {
                case POWER -> si / 1000;
                case SHAFT_HEIGHT -> si * 1000;
                case SPEED -> si * 60;
            };
        }

        OptionalDouble of(Machine machine) {
            return switch (this) {
                case POWER -> machine.ratedPowerWatts();
                case SHAFT_HEIGHT -> machine.shaftHeightMetres();
                case SPEED -> machine.speed().isEmpty()
                        ? OptionalDouble.empty() : OptionalDouble.of(machine.speed().get().hertz());
            };
        }

        String printed(double si, int digits) {
            if (Double.isInfinite(fromSi(si))) {
                return Double.toString(fromSi(si));
            }
            return Digits.compact(new BigDecimal(fromSi(si)).round(new MathContext(digits)).doubleValue(), digits);
        }

        String printed(double si) {
            return printed(si, 6) + " " + unit;
        }

        @Override
        public String toString() {
            return label;
        }
    }

    private final Fact fact;
    private final double lowest;
    private final boolean lowestIncluded;
    private final double highest;
    private final boolean highestIncluded;
    private final Fit ifUnknown;
    private final boolean onlyUnknown;
    private final String bounds;

    private Range(Fact fact, double lowest, boolean lowestIncluded, double highest, boolean highestIncluded,
            Fit ifUnknown, boolean onlyUnknown) {
        this.fact = fact;
        this.lowest = lowest;
        this.lowestIncluded = lowestIncluded;
        this.highest = highest;
        this.highestIncluded = highestIncluded;
        this.ifUnknown = ifUnknown;
        this.onlyUnknown = onlyUnknown;
        this.bounds = inWords();
    }

    static Range parse(Fact fact, String text) {
        if (text.equals("any") || text.equals("not given")) {
            return new Range(fact, Double.NEGATIVE_INFINITY, false, Double.POSITIVE_INFINITY, false, Fit.MET,
                    text.equals("not given"));
        }
        boolean unknownMeets = text.endsWith("?");
        String bounds = unknownMeets ? text.substring(0, text.length() - 1) : text;
        return parseBounds(fact, text, bounds, unknownMeets ? Fit.MET : Fit.OPEN);
    }

    private static Range parseBounds(Fact fact, String text, String bounds, Fit ifUnknown) {
        double lowest = Double.NEGATIVE_INFINITY;
        double highest = Double.POSITIVE_INFINITY;
        boolean lowestIncluded = false;
        boolean highestIncluded = false;
        Matcher matcher = BOUND.matcher(bounds);
        int end = 0;
        while (end < bounds.length() && matcher.find(end) && matcher.start() == end) {
            double value = fact.toSi(Double.parseDouble(matcher.group(2)));
            boolean included = matcher.group(1).endsWith("=");
            if (matcher.group(1).startsWith(">")) {
                lowest = value;
                lowestIncluded = included;
            } else {
                highest = value;
                highestIncluded = included;
            }
            end = matcher.end();
        }
        if (end == 0 || end != bounds.length() || !(lowest < highest)) {
            throw new IllegalArgumentException("range must be like '> 15 <= 300', 'any' or 'not given': " + text);
        }
        return new Range(fact, lowest, lowestIncluded, highest, highestIncluded, ifUnknown, false);
    }

    Fit fit(Machine machine) {
        if (isAny() && !onlyUnknown) {
            return Fit.MET;
        }
        OptionalDouble value = fact.of(machine);
        if (value.isEmpty()) {
            return ifUnknown;
        }
        return !onlyUnknown && contains(value.getAsDouble()) ? Fit.MET : Fit.NOT_MET;
    }

    /** Names of the facts that the ranges can't be told without. */
    static Set<String> open(List<Range> ranges, Machine machine) {
        return ranges.stream().filter(range -> range.fit(machine) == Fit.OPEN).map(range -> range.fact.toString())
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    private boolean contains(double si) {
        return (lowestIncluded ? si >= lowest : si > lowest) && (highestIncluded ? si <= highest : si < highest);
    }

    boolean isAny() {
        return lowest == Double.NEGATIVE_INFINITY && highest == Double.POSITIVE_INFINITY;
    }

    Fact fact() {
        return fact;
    }

    /** A value with as many digits as it takes to lie on its side of the bounds in print, too. */
    String printed(double si) {
        for (int digits = 6; digits < 17; digits++) {
            String text = fact.printed(si, digits);
            double read = fact.toSi(Double.parseDouble(text));
            if (Math.signum(read - lowest) == Math.signum(si - lowest)
                    && Math.signum(read - highest) == Math.signum(si - highest)) {
                return text + " " + fact.unit;
            }
        }
        return fact.fromSi(si) + " " + fact.unit;
    }

    /** The bounds in words, as in {@code above 15 kW up to 300 kW}. */
    String bounds() {
        return bounds;
    }

    private String inWords() {
        List<String> parts = new ArrayList<>();
        if (lowest > Double.NEGATIVE_INFINITY) {
            parts.add((lowestIncluded ? "from " : "above ") + fact.printed(lowest));
        }
        if (highest < Double.POSITIVE_INFINITY) {
            parts.add((highestIncluded ? "up to " : "below ") + fact.printed(highest));
        }
        return String.join(" ", parts);
    }
}
