package dev.vibra.docs.survey.output;

import dev.vibra.descriptor.DescriptorValue;
import dev.vibra.internal.Digits;
import dev.vibra.quantity.Unit;
import dev.vibra.severity.Criterion;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Units in which people read levels: those of the library, or inches. Velocity is then in in/s with the detector that
 * it had (rms stays rms), displacement in mil, acceleration in g. Files for programs stay metric. Frequencies and what
 * describes the machine (heights, radii, masses) are never changed, nor is the velocity that defines a balance grade.
 *
 * <p>A converted number has as many places more as it needs to tell no less than the metric one, which is one
 * significant digit more at most; limits, which are exact, have that one always.
 */
public enum ShownUnits {
    /** As the library says them: mm/s, µm, m/s². */
    METRIC("metric", Map.of()),
    /** Inches: in/s, mil, g. */
    IMPERIAL("imperial", Map.of(Unit.MM_PER_S, Unit.IN_PER_S, Unit.M_PER_S, Unit.IN_PER_S, Unit.UM, Unit.MIL, Unit.MM,
            Unit.MIL, Unit.M, Unit.MIL, Unit.M_PER_S2, Unit.G, Unit.MM_PER_S2, Unit.G));

    private static final String NUMBER = "(?:[0-9]++(?:\\.[0-9]++)?+(?:[eE][-+]?[0-9]++)?+)";
    /** Several numbers may share a unit: an uncertainty, a range, limits, a change, alarm and trip. */
    private static final String NUMBERS = NUMBER + "(?:(?: ± | to | / |–| and | after |: [-+]|: vector change |, trip )"
            + NUMBER + ")*";
    private static final String BLANK = "[ \u00a0]?";
    /** A length is of the machine unless a detector follows; what the unit begins may be another one. */
    private static final String VIBRATION = "(mm/s²|mm/s2|m/s²|m/s2|mm/s|m/s|µm|\u03bcm|um"
            + "|mm(?= (?:rms|0-peak|peak-peak)))(?![A-Za-z0-9²·/])";
    /** What has no unit has that of the level before it. */
    private static final String LIMITS = "((?<=\\blimits )" + NUMBER + "(?: / " + NUMBER + ")*+(?![A-Za-z0-9.]|" + BLANK
            + "[A-Za-zµ%°])|(?<=more than |within )" + NUMBER + "(?= up or down| in any direction))";
    private static final Pattern SAID = Pattern.compile("(?<![A-Za-z0-9.,])(?<!reached \\()(" + NUMBERS + ")("
            + BLANK + ")" + VIBRATION + "|" + LIMITS);
    private static final Pattern NAMED = Pattern.compile("(?<![A-Za-z0-9])" + VIBRATION);
    private static final Pattern ONE = Pattern.compile(NUMBER);

    private final String word;
    private final Map<Unit, Unit> units;

    ShownUnits(String word, Map<Unit, Unit> units) {
        this.word = word;
        this.units = units;
    }

    /**
     * Finds units by their word.
     *
     * @param word {@code metric} or {@code imperial}
     * @return the units, if there are such
     */
    public static Optional<ShownUnits> named(String word) {
        return Arrays.stream(values()).filter(one -> one.word.equals(word)).findFirst();
    }

    /** {@return the words of all units} */
    public static List<String> words() {
        return Arrays.stream(values()).map(ShownUnits::toString).toList();
    }

    /**
     * Says in which unit a quantity is shown.
     *
     * @param unit unit of the library
     * @return the unit that is shown
     */
    public Unit of(Unit unit) {
        return units.getOrDefault(unit, unit);
    }

    /**
     * Converts a number.
     *
     * @param value value in the unit
     * @param unit unit of the library
     * @return value in the unit that is shown
     */
    public double shown(double value, Unit unit) {
        Unit shown = of(unit);
        return shown == unit ? value : value * unit.toSi() / shown.toSi();
    }

    /**
     * Writes a number for people, three significant digits.
     *
     * @param value value in the unit
     * @param unit unit of the library
     * @return the number without its unit
     */
    String number(double value, Unit unit) {
        return PlainNumber.forPeople(shown(value, unit));
    }

    /** Returns the limits, with less room between them where numbers are longer. */
    String limits(Criterion criterion) {
        String limits = Words.limits(criterion);
        return units.isEmpty() ? limits : numbers(limits, criterion.unit()).replace(" / ", "/");
    }

    /** Returns the limits as numbers, rounded as they are written. */
    List<Double> limitValues(Criterion criterion) {
        return units.isEmpty() ? criterion.limits() : criterion.limits().stream().map(limit ->
                Double.valueOf(converted(PlainNumber.of(limit), criterion.unit(), true))).toList();
    }

    /** Writes a descriptor for people, without its unit. */
    String number(DescriptorValue one) {
        return NAMED.matcher(one.unit()).matches() ? number(one.value(), unit(one.unit()))
                : PlainNumber.forPeople(one.value());
    }

    /**
     * Converts every figure of a sentence that has a unit of vibration.
     *
     * @param sentence words of the library or of the report
     * @return the same words, other numbers and units
     */
    public String shown(String sentence) {
        if (units.isEmpty()) {
            return sentence;
        }
        Matcher found = SAID.matcher(sentence);
        StringBuilder text = new StringBuilder(sentence.length());
        Unit last = null;
        while (found.find()) {
            boolean hasUnit = found.group(3) != null;
            last = hasUnit ? unit(found.group(3)) : last;
            String said = !hasUnit ? last == null ? found.group(4) : numbers(found.group(4), last)
                    : numbers(found.group(1), last) + found.group(2) + of(last).symbol();
            found.appendReplacement(text, Matcher.quoteReplacement(said));
        }
        return found.appendTail(text).toString();
    }

    /**
     * Renames the units of a heading whose numbers stand elsewhere.
     *
     * @param heading heading of a table, title of an axis
     * @return the heading with the units that are shown
     */
    public String heading(String heading) {
        return units.isEmpty() ? heading : NAMED.matcher(heading).replaceAll(found ->
                Matcher.quoteReplacement(of(unit(found.group(1))).symbol()));
    }

    private static Unit unit(String symbol) {
        return Unit.ofSymbol(symbol);
    }

    private String numbers(String numbers, Unit unit) {
        boolean areLimits = numbers.contains(" / ");
        return ONE.matcher(numbers).replaceAll(one -> converted(one.group(), unit, areLimits));
    }

    private String converted(String number, Unit unit, boolean isLimit) {
        BigDecimal given = new BigDecimal(number);
        if (given.signum() == 0) {
            return "0";
        }
        double value = shown(given.doubleValue(), unit);
        int places = given.scale() + (int) Math.ceil(Math.log10(of(unit).toSi() / unit.toSi()) - 0.01);
        if (isLimit || places > 12 || number.matches(".*[eE].*")) {
            return Digits.significant(value, given.precision() + 1);
        }
        return BigDecimal.valueOf(value).setScale(Math.max(0, places), RoundingMode.HALF_EVEN).toPlainString();
    }

    /** Returns the word, as in {@code imperial}. */
    @Override
    public String toString() {
        return word.toLowerCase(Locale.ROOT);
    }
}
