package dev.vibra.docs.survey.input;

import dev.vibra.fault.FaultTable;
import dev.vibra.machine.MachineDescription;
import dev.vibra.symptom.Site;
import dev.vibra.symptom.Sites;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads what tests and inspections showed; one that isn't known, or at no place of the machine, is left out. */
final class ObservationsReader {
    private static final String NAME = "observations";
    private static final String AT = " at ";
    private static final int MOST = 1000;

    private final FieldReader object;
    private final Set<String> tests = FaultTable.standard().tests();
    /** Empty where not all of the machine could be read, and so not all places are known. */
    private final List<String> places;

    private ObservationsReader(FieldReader object, MachineDescription machine, boolean whole) {
        this.object = object;
        this.places = whole ? Sites.of(machine).stream().map(Site::owner).distinct().toList() : List.of();
    }

    /** The machine is all that was read before. */
    static Map<String, Boolean> read(FieldReader fields, MachineDescription machine) {
        Optional<FieldReader> object = fields.object(NAME);
        if (object.isPresent() && object.get().names().size() > MOST) {
            fields.fault(NAME, "must hold " + MOST + " at most: " + object.get().names().size());
            return Map.of();
        }
        boolean whole = !fields.faulty();
        return object.map(inner -> new ObservationsReader(inner, machine, whole).all()).orElse(Map.of());
    }

    private Map<String, Boolean> all() {
        Map<String, Boolean> seen = new LinkedHashMap<>();
        for (String name : object.names()) {
            Optional<Boolean> truth = object.truth(name);
            Optional<String> objection = objection(name);
            objection.ifPresent(text -> object.fault(name, text));
            truth.filter(one -> objection.isEmpty()).ifPresent(one -> seen.put(name, one));
        }
        object.finish().faults().forEach(seen::remove);
        return seen;
    }

    private Optional<String> objection(String name) {
        int at = name.indexOf(AT);
        String test = at < 0 ? name : name.substring(0, at);
        if (!tests.contains(test)) {
            return Optional.of("is not a known test; the nearest known one is \"" + NearestName.of(test, tests) + "\"");
        }
        return at < 0 || places.isEmpty() || places.contains(name.substring(at + AT.length())) ? Optional.empty()
                : Optional.of("must name a place of this machine behind \"at\", one of " + FieldReader.joined(places));
    }
}
