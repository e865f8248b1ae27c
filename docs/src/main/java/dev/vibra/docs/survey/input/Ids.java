package dev.vibra.docs.survey.input;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Ids of the things of one kind, those with errors included: what names one of these is no error of its own. */
final class Ids {
    private final String noun;
    private final Map<String, Boolean> sound = new LinkedHashMap<>();

    Ids(String noun) {
        this.noun = noun;
    }

    boolean has(String id) {
        return sound.containsKey(id);
    }

    /** Reads the id of a thing, by default its noun and number. */
    String read(FieldReader fields, int index) {
        String id = fields.text("id").orElse(noun + " " + (index + 1));
        if (sound.putIfAbsent(id, false) != null) {
            fields.fault("id", "must be given to one " + noun + " only: \"" + id + "\"");
        }
        return id;
    }

    /** Notes that the thing was read without error. */
    void keep(String id) {
        sound.put(id, true);
    }

    /** Reads a field that names a thing; empty, too, where that thing has an error, which is told already. */
    Optional<String> named(FieldReader fields, String name) {
        Optional<String> id = fields.text(name);
        id.filter(given -> !sound.containsKey(given)).ifPresent(given -> fields.fault(name, rule() + ": \"" + given
                + "\""));
        return id.filter(given -> sound.getOrDefault(given, false));
    }

    String rule() {
        return "must be the id of a " + noun + ", " + (sound.isEmpty() ? "the description has no " + noun + "s"
                : "one of " + FieldReader.joined(sound.keySet()));
    }
}
