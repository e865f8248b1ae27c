package dev.vibra.fault;

import dev.vibra.internal.TableText;
import dev.vibra.machine.MachineDescription;
import dev.vibra.symptom.Site;
import dev.vibra.symptom.Sites;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Faults and symptoms as a table: {@code FaultTable.standard().faults()}. Immutable; shared by all threads.
 *
 * @see "ISO 13379-1:2012, fault and symptom tables (from memory, unverified)"
 */
public final class FaultTable {
    private static final FaultTable STANDARD = parse(resource("faults.txt"));

    private final List<Symptom> symptoms;
    private final List<Fault> faults;
    private final List<Confirmation> confirmations;
    private final Map<String, Symptom> byCode;

    private FaultTable(List<Symptom> symptoms, List<Fault> faults, List<Confirmation> confirmations) {
        this.confirmations = confirmations;
        this.symptoms = symptoms;
        this.faults = faults;
        requireDistinct("symptom", symptoms.stream().map(Symptom::code).toList());
        requireDistinct("fault", faults.stream().map(Fault::id).toList());
        byCode = symptoms.stream().collect(Collectors.toMap(Symptom::code, one -> one));
        Set<String> ids = faults.stream().map(Fault::id).collect(Collectors.toSet());
        for (Fault fault : faults) {
            for (String other : fault.mimics()) {
                if (!ids.contains(other)) {
                    throw new IllegalArgumentException("mimics of " + fault.id() + " must be ids of faults: " + other);
                }
            }
        }
        for (Confirmation one : confirmations) {
            if (faults.stream().noneMatch(fault -> fault.code().equals(one.code()))) {
                throw new IllegalArgumentException("code of a confirmation must be that of a fault: " + one.code());
            }
        }
    }

    /** {@return the table of the library} */
    public static FaultTable standard() {
        return STANDARD;
    }

    /**
     * Reads a table.
     *
     * @param text sections {@code [symptoms]}, {@code [faults]} and {@code [confirmations]} in the form of the library's own
     * @return the table
     * @throws IllegalArgumentException if the text has another form; the message names the line
     */
    public static FaultTable parse(String text) {
        Map<String, List<String>> columns = new LinkedHashMap<>();
        columns.put("symptoms", List.of("code", "site", "asks", "seen as", "by", "effort"));
        columns.put("faults", List.of("id", "words", "site", "on", "urgency", "explains", "mimics", "source"));
        columns.put("confirmations", List.of("code", "effort", "measurement", "if so", "if not"));
        TableText tables = TableText.parse("table of faults", text, columns);
        return new FaultTable(tables.rows("symptoms").stream().map(Symptom::read).toList(),
                tables.rows("faults").stream().map(Fault::read).toList(),
                tables.rows("confirmations").stream().map(Confirmation::read).toList());
    }

    static String resource(String name) {
        try (InputStream in = FaultTable.class.getResourceAsStream(name)) {
            return new String(Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void requireDistinct(String what, List<String> names) {
        Set<String> seen = new HashSet<>();
        for (String name : names) {
            if (!seen.add(name)) {
                throw new IllegalArgumentException(what + " must be given once only: " + name);
            }
        }
    }

    static Site.Kind kind(String name) {
        for (Site.Kind kind : Site.Kind.values()) {
            if (kind.toString().equals(name)) {
                return kind;
            }
        }
        throw new IllegalArgumentException("site must be a kind of site: " + name);
    }

    /** {@return all symptoms in the order of the table} */
    public List<Symptom> symptoms() {
        return symptoms;
    }

    /** {@return all faults in the order of the table} */
    public List<Fault> faults() {
        return faults;
    }

    /**
     * Finds a fault.
     *
     * @param id its id, as in {@code misalignment/angular}
     * @return the fault
     * @throws IllegalArgumentException if there is none
     */
    public Fault fault(String id) {
        Objects.requireNonNull(id, "id");
        return faults.stream().filter(fault -> fault.id().equals(id)).findFirst()
                .orElseThrow(() -> new IllegalArgumentException("id must be that of a fault: " + id));
    }

    /**
     * Finds a symptom.
     *
     * @param code its code, as in {@code twice-half}
     * @return the symptom
     * @throws IllegalArgumentException if there is none
     */
    public Symptom symptom(String code) {
        Symptom found = byCode.get(Objects.requireNonNull(code, "code"));
        if (found == null) {
            throw new IllegalArgumentException("code must be that of a symptom: " + code);
        }
        return found;
    }

    /**
     * Lists what settles a fault once it leads.
     *
     * @param code code of a fault, without its kind
     * @return measurements in the order of the table
     */
    public List<Confirmation> confirmations(String code) {
        Objects.requireNonNull(code, "code");
        return confirmations.stream().filter(one -> one.code().equals(code)).toList();
    }

    /** {@return codes of the symptoms that a crew answers, as they may stand in a machine description} */
    public Set<String> tests() {
        return symptoms.stream().filter(Symptom::isTest).map(Symptom::code)
                .collect(Collectors.toUnmodifiableSet());
    }

    /**
     * Lists where a fault can sit on a machine.
     *
     * @param fault a fault
     * @param machine what is known of the machine
     * @return its sites; empty if it can't sit on this machine as described
     */
    public List<Site> sitesOf(Fault fault, MachineDescription machine) {
        Objects.requireNonNull(fault, "fault");
        Objects.requireNonNull(machine, "machine");
        return Sites.of(machine).stream().filter(site -> site.kind() == fault.site() && fault.on().isAt(machine, site))
                .toList();
    }

    /** Returns how much it holds. */
    @Override
    public String toString() {
        return "table of " + faults.size() + " faults and " + symptoms.size() + " symptoms";
    }
}
