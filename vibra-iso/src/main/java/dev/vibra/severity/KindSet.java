package dev.vibra.severity;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;

/** The kinds of machine that a row of the tables names. */
final class KindSet {
    private final Set<MachineKind> kinds = EnumSet.noneOf(MachineKind.class);

    static KindSet parse(String text) {
        KindSet set = new KindSet();
        for (String word : text.split(",")) {
            set.add(word.strip());
        }
        return set;
    }

    private void add(String word) {
        if (word.equals("electrical") || word.equals("rotating")) {
            MachineKind.Family family = MachineKind.Family.valueOf(word.toUpperCase(Locale.ROOT));
            for (MachineKind kind : MachineKind.values()) {
                if (kind.family() == family) {
                    kinds.add(kind);
                }
            }
        } else {
            kinds.add(MachineKind.ofName(word));
        }
    }

    /** A machine of unknown kind is taken as any other rotating machine; the choice says so. */
    boolean holds(Machine machine) {
        return kinds.contains(machine.kind().orElse(MachineKind.OTHER));
    }
}
