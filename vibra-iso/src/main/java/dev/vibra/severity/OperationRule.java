package dev.vibra.severity;

import dev.vibra.internal.TableText;
import dev.vibra.evidence.Confidence;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a standard says on change, alarm and trip for one class or any, as parts of boundaries or as numbers. */
record OperationRule(String standard, String clause, String group, Amount change, Amount highestAlarm,
        Amount highestTrip, Confidence confidence) {

    /** A number in the unit of the limits, or a part of a boundary; neither where the standard says nothing. */
    record Amount(double factor, String boundary) {
        private static final Pattern PART = Pattern.compile("(\\d+(?:\\.\\d+)?)(?: x (A/B|B/C|C/D))?");

        static Amount parse(String text) {
            if (text.equals("-")) {
                return new Amount(Double.NaN, "");
            }
            Matcher matcher = PART.matcher(text);
            if (!matcher.matches()) {
                throw new IllegalArgumentException("amount must be like '1.25 x B/C', '5.0' or '-': " + text);
            }
            return new Amount(Double.parseDouble(matcher.group(1)), matcher.group(2) == null ? "" : matcher.group(2));
        }

        /** The amount in the unit of the limits; empty where not given, or where the row lacks the boundary. */
        OptionalDouble of(List<Boundary> boundaries) {
            if (Double.isNaN(factor) || boundary.isEmpty()) {
                return Double.isNaN(factor) ? OptionalDouble.empty() : OptionalDouble.of(factor);
            }
            return boundaries.stream().filter(candidate -> boundary.startsWith(candidate.better().name()))
                    .mapToDouble(candidate -> factor * candidate.limit()).findFirst();
        }
    }

    static OperationRule read(TableText.Row row) {
        return new OperationRule(row.text("standard"), row.text("clause"), row.text("class"),
                row.read("change", Amount::parse), row.read("highest alarm", Amount::parse),
                row.read("highest trip", Amount::parse), row.read("confidence", Confidence::ofName));
    }

    OperatingLimits of(List<Boundary> boundaries) {
        return new OperatingLimits(change.of(boundaries), highestAlarm.of(boundaries), highestTrip.of(boundaries),
                clause, confidence);
    }
}
