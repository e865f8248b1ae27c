package dev.vibra.severity;

import dev.vibra.internal.Digits;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A condition on one number: bounds in SI units, and what a value that is not known means. */
final class Range {
    private static final String NUMBER = "\\s*(\\d+(?:\\.\\d+)?)\\s*";
    /** A number with its bound sign, as in {@code > 15} or {@code <= 300}. */
    private static final Pattern BOUND = Pattern.compile("(>=|>|<=|<)" + NUMBER);
    private static final Pattern FORM = Pattern.compile("(?<bounds>any|not given|(?:(?:>=|>|<=|<)" + NUMBER + ")*)"
            + "(?<near>(?<not>not )?near(?<values>(?: \\d+)+))?\\??");
    /** How near is near: common practice, no source. */
    private static final double NEAR = 0.02;

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
    /** Nominal values that the range is bound to, or has to stay clear of if {@code apart}; none if empty. */
    private final List<Double> nominal;
    private final boolean apart;
    private final Fit ifUnknown;
    private final boolean onlyUnknown;
    private final String bounds;

    private Range(Fact fact, String text) {
        this.fact = fact;
        Matcher form = FORM.matcher(text);
        if (!form.matches()) {
            throw malformed(text);
        }
        onlyUnknown = text.equals("not given");
        boolean any = text.equals("any") || onlyUnknown;
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        boolean withLow = false;
        boolean withHigh = false;
        for (Matcher bound = BOUND.matcher(form.group("bounds")); bound.find();) {
            double value = fact.toSi(Double.parseDouble(bound.group(2)));
            boolean included = bound.group(1).endsWith("=");
            if (bound.group(1).startsWith(">")) {
                low = value;
                withLow = included;
            } else {
                high = value;
                withHigh = included;
            }
        }
        lowest = low;
        highest = high;
        lowestIncluded = withLow;
        highestIncluded = withHigh;
        nominal = form.group("values") == null ? List.of() : Arrays.stream(form.group("values").strip().split("\\s+"))
                .map(value -> fact.toSi(Double.parseDouble(value))).toList();
        apart = form.group("not") != null;
        ifUnknown = any || text.endsWith("?") ? Fit.MET : Fit.OPEN;
        if (!any && isAny() || !(lowest < highest)) {
            throw malformed(text);
        }
        bounds = inWords();
    }

    static Range parse(Fact fact, String text) {
        return new Range(fact, text);
    }

    private static IllegalArgumentException malformed(String text) {
        return new IllegalArgumentException("range must be like '> 15 <= 300', 'near 1500 1800', 'any' or 'not given': "
                + text);
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
        return (lowestIncluded ? si >= lowest : si > lowest) && (highestIncluded ? si <= highest : si < highest)
                && (nominal.isEmpty() || apart != nominal.stream().anyMatch(value -> isNear(si, value)));
    }

    private static boolean isNear(double si, double value) {
        return Math.abs(si - value) <= NEAR * value;
    }

    boolean isAny() {
        return lowest == Double.NEGATIVE_INFINITY && highest == Double.POSITIVE_INFINITY && nominal.isEmpty();
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

    /** The fact and its value, as in {@code rated power 11 kW}; the value is known. */
    String given(Machine machine) {
        return fact + " " + printed(fact.of(machine).orElseThrow());
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
        if (!nominal.isEmpty()) {
            parts.add((apart ? "but not near " : "near ") + nominal.stream().map(value -> fact.printed(value, 6))
                    .collect(Collectors.joining(", ")) + " " + fact.unit);
        }
        return String.join(" ", parts);
    }
}
