package dev.vibra.survey;

import dev.vibra.survey.machine.MachineDescription;
import java.util.ArrayList;
import java.util.List;

/** What the description gives, or a reader would look for, and this version does not work out. */
final class Unexamined {
    private Unexamined() {}

    static List<Omission> of(MachineDescription machine, SeverityCheck severity, BalancingSurvey balancing) {
        List<Omission> omissions = new ArrayList<>();
        severity.obstacle().ifPresent(reason -> omissions.add(new Omission("severity", reason)));
        if (!machine.gears().isEmpty()) {
            omissions.add(new Omission("gears", "no verdict on gears is part of this version; lines at the mesh"
                    + " are marked in the spectrum and count for no bearing"));
        }
        machine.blades().ifPresent(count ->
                omissions.add(new Omission("blade passing", "no verdict on blades is part of this version; lines at the"
                        + " blade-passing rate are marked in the spectrum and count for no bearing")));
        if (balancing == null) {
            omissions.add(new Omission("balancing", machine.faultyFields().contains("balancing")
                    ? "the balancing job has an error" : "no balancing job is given"));
        } else {
            omissions.addAll(balancing.omissions());
        }
        return omissions;
    }
}
