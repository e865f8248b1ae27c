package dev.vibra.severity;

import dev.vibra.internal.TableText;
import dev.vibra.quantity.Band;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The frequency band in which limits of a standard hold, for speeds in a range and for one class or any; the upper end
 * can be {@code highest}, or {@code orders} times the rotation frequency but at least {@code highest}.
 */
record BandRule(String standard, String group, Range speed, double lowest, double highest, double orders) {
    private static final String NUMBER = "(\\d+(?:\\.\\d+)?)";
    private static final Pattern FIXED = Pattern.compile(NUMBER + " to " + NUMBER);
    private static final Pattern BY_SPEED = Pattern.compile(NUMBER + " to " + NUMBER + " x speed, at least " + NUMBER);

    static BandRule read(TableText.Row row) {
        Range speed = row.read("speed r/min", text -> Range.parse(Range.Fact.SPEED, text));
        BandRule rule = row.read("band Hz", text -> parse(row.text("standard"), row.text("class"), speed, text));
        row.read("band Hz", text -> Band.of(rule.lowest, rule.highest));
        return rule;
    }

    private static BandRule parse(String standard, String group, Range speed, String text) {
        Matcher fixed = FIXED.matcher(text);
        if (fixed.matches()) {
            return new BandRule(standard, group, speed, number(fixed, 1), number(fixed, 2), 0);
        }
        Matcher bySpeed = BY_SPEED.matcher(text);
        if (bySpeed.matches()) {
            return new BandRule(standard, group, speed, number(bySpeed, 1), number(bySpeed, 3), number(bySpeed, 2));
        }
        throw new IllegalArgumentException(
                "band must be like '10 to 1000' or '1 to 3 x speed, at least 125': " + text);
    }

    private static double number(Matcher matcher, int group) {
        return Double.parseDouble(matcher.group(group));
    }

    boolean followsSpeed() {
        return orders > 0;
    }

    /** The band for a machine, whose speed is known if the band follows it. */
    Band band(Machine machine) {
        return Band.of(lowest, followsSpeed() ? Math.max(highest, orders * machine.speed().orElseThrow().hertz())
                : highest);
    }
}
