package dev.vibra.fault;

import dev.vibra.internal.Require;
import dev.vibra.internal.TableText;
import dev.vibra.symptom.Site;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * A fault that can be looked for: a row of the table of faults. Immutable.
 *
 * @param id stable code, and its kind after a slash, as in {@code misalignment/angular}
 * @param words what it is in words
 * @param site kind of site where it sits
 * @param on what a machine must have
 * @param urgency how soon something has to happen
 * @param explainsLevel true if it can carry the broad-band velocity
 * @param mimics ids of faults that look alike
 * @param source where its symptoms are from, with edition or its mark
 */
public record Fault(String id, String words, Site.Kind site, Presence on, Urgency urgency, boolean explainsLevel,
        List<String> mimics, String source) {
    /** How soon something has to happen. */
    public enum Urgency {
        /** As the zone of the points that show it says. */
        BY_LEVEL,
        /** A remedy is to be planned, whatever the zone. */
        PLAN,
        /** To be watched. */
        WATCH
    }

    /**
     * Checks what it is given.
     *
     * @param id see the record
     * @param words see the record
     * @param site see the record
     * @param on see the record
     * @param urgency see the record
     * @param explainsLevel see the record
     * @param mimics see the record
     * @param source see the record
     */
    public Fault {
        if (!Objects.requireNonNull(id, "id").matches("[a-z]+(-[a-z]+)*(/[a-z]+(-[a-z]+)*)?")) {
            throw new IllegalArgumentException("id must be lower case with hyphens, its kind behind a slash: " + id);
        }
        words = Require.notBlank("words", words);
        Objects.requireNonNull(site, "site");
        Objects.requireNonNull(on, "on");
        Objects.requireNonNull(urgency, "urgency");
        mimics = Require.copy("mimics", mimics);
        source = Require.notBlank("source", source);
    }

    static Fault read(TableText.Row row) {
        return new Fault(row.text("id"), row.text("words"), row.read("site", FaultTable::kind),
                row.read("on", Presence::ofName), row.read("urgency", Fault::urgency),
                row.read("explains", Fault::explains), Arrays.asList(row.text("mimics").split(",\\s*")),
                row.text("source"));
    }

    private static Urgency urgency(String text) {
        return switch (text) {
            case "by level" -> Urgency.BY_LEVEL;
            case "plan" -> Urgency.PLAN;
            case "watch" -> Urgency.WATCH;
            default -> throw new IllegalArgumentException("urgency must be one of by level, plan, watch: " + text);
        };
    }

    private static boolean explains(String text) {
        return switch (text) {
            case "level" -> true;
            case "no" -> false;
            default -> throw new IllegalArgumentException("explains must be level or no: " + text);
        };
    }

    /** {@return the code without the kind, as in {@code misalignment}} */
    public String code() {
        int slash = id.indexOf('/');
        return slash < 0 ? id : id.substring(0, slash);
    }

    /** Returns the words. */
    @Override
    public String toString() {
        return words;
    }
}
