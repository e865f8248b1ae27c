package dev.vibra.severity;

import dev.vibra.internal.TableText;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;

/**
 * What one zone is called by a standard with a scheme of its own, such as acceptance or start-up, alarm and shutdown.
 *
 * @param part part of the name of the classes it holds for, or {@code any}
 * @param limit name of the limit above this rating; empty for the worst
 * @param acceptance whether the scheme accepts or refuses
 */
record Rating(String standard, String part, Zone zone, String label, String meaning, String limit, boolean acceptance)
        implements Serializable {
    Rating {
        Objects.requireNonNull(standard, "standard");
        Objects.requireNonNull(part, "part");
        Objects.requireNonNull(zone, "zone");
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(meaning, "meaning");
        Objects.requireNonNull(limit, "limit");
    }


    static Rating read(TableText.Row row) {
        return new Rating(row.text("standard"), row.text("class"), row.read("zone", Rating::zone), row.text("rating"),
                row.text("meaning"), row.text("limit"), row.read("acceptance", Rating::yes));
    }

    /** The rating of a standard that has the zones A to D. */
    static Rating ofZone(String standard, Zone zone) {
        return new Rating(standard, "any", zone, "zone " + zone, zone.meaning(), "", false);
    }

    boolean holdsFor(LimitRow row) {
        return standard.equals(row.standard())
                && (part.equals("any") || Arrays.asList(row.group().split(", ")).contains(part));
    }

    private static boolean yes(String text) {
        if (!text.equals("yes") && !text.equals("no")) {
            throw new IllegalArgumentException("acceptance must be yes or no: " + text);
        }
        return text.equals("yes");
    }

    private static Zone zone(String text) {
        for (Zone zone : Zone.values()) {
            if (zone.name().equals(text.toUpperCase(Locale.ROOT))) {
                return zone;
            }
        }
        throw new IllegalArgumentException("zone must be one of A, B, C, D: " + text);
    }
}
