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
            omissions.add(new Omission("gears", "gear-mesh analysis is not part of this version"));
        }
        machine.blades().ifPresent(count ->
                omissions.add(new Omission("blade passing", "blade-passing analysis is not part of this version")));
        if (!machine.baseline().isEmpty()) {
            omissions.add(new Omission("change against the baseline",
                    "comparison with a baseline is not part of this version"));
        }
        if (balancing == null) {
            omissions.add(new Omission("balancing", machine.faultyFields().contains("balancing")
                    ? "the balancing job has an error" : "no balancing job is given"));
        } else {
            omissions.addAll(balancing.omissions());
        }
        return omissions;
    }
}
