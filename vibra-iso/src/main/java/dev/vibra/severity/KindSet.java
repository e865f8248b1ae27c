package dev.vibra.severity;

import java.util.EnumSet;
import java.util.Set;

/** The kinds of machine that a row of the tables names. */
record KindSet(Set<MachineKind> kinds) {

    /** Names between commas, as in {@code electrical, rotating but pump, fan}: the kinds behind "but" are left away. */
    static KindSet parse(String text) {
        String[] parts = text.split(" but ", 2);
        Set<MachineKind> kinds = named(parts[0]);
        if (parts.length == 2) {
            kinds.removeAll(named(parts[1]));
        }
        return new KindSet(kinds);
    }

    private static Set<MachineKind> named(String text) {
        Set<MachineKind> kinds = EnumSet.noneOf(MachineKind.class);
        for (String word : text.split(",")) {
            Set<MachineKind> family = MachineKind.ofFamily(word.strip());
            kinds.addAll(family.isEmpty() ? Set.of(MachineKind.ofName(word.strip())) : family);
        }
        return kinds;
    }

    /** A machine of unknown kind is taken as any other rotating machine; the choice says so. */
    boolean holds(Machine machine) {
        return kinds.contains(machine.kind().orElse(MachineKind.OTHER));
    }
}
