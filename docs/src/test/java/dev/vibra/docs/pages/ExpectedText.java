package dev.vibra.docs.pages;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text that a page expects: its numbers are compared as numbers, the rest as text with runs of white space as one
 * blank.
 *
 * <p>A number is an optional sign, digits (in groups of three with commas, if the page prints them so), optionally a
 * point with decimals, optionally an exponent. A sign belongs to the number unless it directly follows a letter, a
 * digit, an underscore, a point or a closing bracket ({@code 10-1000 Hz} holds no negative number). Digits that
 * directly follow a letter, an underscore or a point are text ({@code x1}), and so are digits with two points
 * ({@code 17.0.15}), {@code NaN} and {@code Infinity}.
 *
 * <p>Each number must lie within half a unit of the last digit that the page prints, or within the tolerance given.
 */
final class ExpectedText {
    private static final String WORD = "\\p{L}\\p{N}_.";
    private static final String UNSIGNED = "(?:[0-9]{1,3}+(?:,[0-9]{3}(?![0-9]))++|[0-9]++)(?:\\.[0-9]++)?+"
            + "(?:[eE][+\\-]?[0-9]{1,4}(?![0-9]))?+(?!\\.[0-9])";
    private static final Pattern NUMBER = Pattern.compile(
            "(?:(?<![" + WORD + ")\\]}])[+\\-\u2212])?+(?<![" + WORD + "])" + UNSIGNED);
    private static final Pattern TOLERANCE = Pattern.compile("^(.*\\S)\\s*\u00b1\\s*(" + UNSIGNED + ")$");

    private final String text;
    private final Optional<String> tolerance;

    /** A part of a text: a number if {@code value} is there, plain text otherwise. */
    private record Part(String text, Optional<BigDecimal> value) {
        boolean agrees(Part actual, Optional<BigDecimal> tolerance) {
            if (value.isEmpty() || actual.value.isEmpty()) {
                return value.isEmpty() && actual.value.isEmpty() && text.equals(actual.text);
            }
            BigDecimal difference = value.get().subtract(actual.value.get()).abs();
            return difference.compareTo(tolerance.orElseGet(this::halfUnit)) <= 0;
        }

        private BigDecimal halfUnit() {
            return value.get().ulp().divide(BigDecimal.valueOf(2));
        }

        /** The actual number with no more digits than this part prints. */
        String renewed(Part actual) {
            BigDecimal number = actual.value.get();
            if (number.scale() <= value.get().scale() || text.indexOf(',') >= 0) {
                return actual.text;
            }
            int exponent = text.toLowerCase(Locale.ROOT).indexOf('e');
            if (exponent < 0) {
                return number.setScale(value.get().scale(), RoundingMode.HALF_EVEN).toPlainString();
            }
            int point = text.indexOf('.');
            int decimals = point < 0 ? 0 : exponent - point - 1;
            BigDecimal rounded = number.round(new MathContext(decimals + 1, RoundingMode.HALF_EVEN));
            return String.format(Locale.ROOT, "%." + decimals + "e", rounded);
        }
    }

    private ExpectedText(String text, Optional<String> tolerance) {
        this.text = collapse(text);
        this.tolerance = tolerance;
    }

    /** Takes the text as printed: {@code ±} is a character like any other. */
    static ExpectedText printed(String text) {
        return new ExpectedText(text, Optional.empty());
    }

    /** Takes the text behind {@code ==>}: {@code ± number} at its end is the tolerance of each number before it. */
    static ExpectedText value(String text) {
        Matcher matcher = TOLERANCE.matcher(collapse(text));
        return matcher.matches() ? new ExpectedText(matcher.group(1), Optional.of(matcher.group(2)))
                : new ExpectedText(text, Optional.empty());
    }

    /** True if a tolerance is given and nothing that it could apply to. */
    boolean hasIdleTolerance() {
        return tolerance.isPresent() && parts(text).stream().allMatch(part -> part.value().isEmpty());
    }

    boolean agrees(String actual) {
        List<Part> expectedParts = parts(text);
        List<Part> actualParts = parts(collapse(actual));
        if (expectedParts.size() != actualParts.size()) {
            return false;
        }
        Optional<BigDecimal> allowed = tolerance.map(ExpectedText::parse);
        for (int i = 0; i < expectedParts.size(); i++) {
            if (!expectedParts.get(i).agrees(actualParts.get(i), allowed)) {
                return false;
            }
        }
        return true;
    }

    /** Writes the text that agrees, in the page's own number of digits where only numbers changed. */
    String renewed(String actual) {
        String end = tolerance.map(value -> " \u00b1 " + value).orElse("");
        String kept = keepingDigits(collapse(actual)) + end;
        return value(kept).agrees(actual) ? kept : collapse(actual) + end;
    }

    private String keepingDigits(String actual) {
        List<Part> expectedParts = parts(text);
        List<Part> actualParts = parts(actual);
        if (expectedParts.size() != actualParts.size()) {
            return actual;
        }
        StringBuilder renewed = new StringBuilder();
        Optional<BigDecimal> allowed = tolerance.map(ExpectedText::parse);
        for (int i = 0; i < expectedParts.size(); i++) {
            Part expected = expectedParts.get(i);
            Part given = actualParts.get(i);
            if (expected.value().isPresent() != given.value().isPresent()) {
                return actual;
            }
            boolean keep = expected.agrees(given, allowed);
            renewed.append(keep ? expected.text() : given.value().isEmpty() ? given.text() : expected.renewed(given));
        }
        return renewed.toString();
    }

    /** Makes one blank of every run of white space and drops it at both ends. */
    static String collapse(String text) {
        return text.replaceAll("[\\s\u00a0\u202f]+", " ").strip();
    }

    private static List<Part> parts(String text) {
        List<Part> parts = new ArrayList<>();
        Matcher matcher = NUMBER.matcher(text);
        int at = 0;
        while (matcher.find()) {
            parts.add(new Part(text.substring(at, matcher.start()), Optional.empty()));
            parts.add(new Part(matcher.group(), Optional.of(parse(matcher.group()))));
            at = matcher.end();
        }
        parts.add(new Part(text.substring(at), Optional.empty()));
        return parts;
    }

    private static BigDecimal parse(String number) {
        return new BigDecimal(number.replace(",", "").replace('\u2212', '-'));
    }

    @Override
    public String toString() {
        return text + tolerance.map(value -> " (tolerance " + value + ")").orElse("");
    }
}
