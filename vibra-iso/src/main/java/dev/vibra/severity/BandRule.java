package dev.vibra.severity;

import dev.vibra.quantity.Band;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The frequency band in which a standard's limits hold, for speeds in a range. */
record BandRule(String standard, Range speed, Band band) {
    private static final Pattern BAND = Pattern.compile("(\\d+(?:\\.\\d+)?) to (\\d+(?:\\.\\d+)?)");

    static BandRule read(TableText.Row row) {
        return new BandRule(row.text("standard"),
                row.read("speed r/min", text -> Range.parse(Range.Fact.SPEED, text)),
                row.read("band Hz", BandRule::band));
    }

    private static Band band(String text) {
        Matcher matcher = BAND.matcher(text);
        if (!matcher.matches()) {
            throw new IllegalArgumentException("band must be like '10 to 1000': " + text);
        }
        return Band.of(Double.parseDouble(matcher.group(1)), Double.parseDouble(matcher.group(2)));
    }
}
