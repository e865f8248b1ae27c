package dev.vibra.diagnosis.study;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;

/**
 * A fault as it sits in a machine.
 *
 * @param id id in the table of faults
 * @param site kind of site and its owner, as in {@code coupling motor to pump}
 * @param sources what it pushes with
 * @param grows residual unbalance that it needs to show, as a part of the boundary B/C; 0 if none
 * @param change what it does to the structure
 * @param contact what opens or touches, for an amplitude of the residual motion; null if nothing does
 * @param tests probability that a test or inspection says yes
 */
record Planted(String id, String site, List<Source> sources, double grows, UnaryOperator<Structure> change,
        Touch contact, Map<String, Double> tests) {
    /** Makes a contact for an amplitude of motion in m along its first tap. */
    interface Touch {
        /** Motion whose amplitude counts. */
        Tap felt();

        Contact at(double amplitude);
    }

    static Planted pushing(String id, String site, Source... sources) {
        return new Planted(id, site, List.of(sources), 0, null, null, Map.of());
    }

    static Planted changing(String id, String site, double grows, UnaryOperator<Structure> change) {
        return new Planted(id, site, List.of(), grows, change, null, Map.of());
    }

    static Planted touching(String id, String site, double grows, Tap felt,
            java.util.function.DoubleFunction<Contact> contact) {
        return new Planted(id, site, List.of(), grows, null, new Touch() {
            @Override
            public Tap felt() {
                return felt;
            }

            @Override
            public Contact at(double amplitude) {
                return contact.apply(amplitude);
            }
        }, Map.of());
    }

    Planted and(Source... more) {
        return new Planted(id, site, List.of(more), grows, change, contact, tests);
    }

    Planted test(String code, double probability) {
        Map<String, Double> longer = new TreeMap<>(tests);
        longer.put(code, probability);
        return new Planted(id, site, sources, grows, change, contact, longer);
    }

    /** The stable code: what stands before the slash. */
    String code() {
        int slash = id.indexOf('/');
        return slash < 0 ? id : id.substring(0, slash);
    }

    boolean isKnocking() {
        return id.startsWith("rolling-bearing") || id.equals("gear-tooth");
    }
}
