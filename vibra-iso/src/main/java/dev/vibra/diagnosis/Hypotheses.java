package dev.vibra.diagnosis;

import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MachinePart;
import dev.vibra.severity.MachineKind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The faults that are looked for, one row each, and those that are not. */
public final class Hypotheses {
    private static final List<Hypothesis> ROWS = List.of(
            new UnbalanceHypothesis(),
            new BearingHypothesis(),
            new PulsationHypothesis(),
            new ImpulsivenessHypothesis());

    private Hypotheses() {}

    /**
     * Weighs all hypotheses.
     *
     * @param evidence machine and points
     * @return findings, the most urgent first, then the best supported
     */
    public static List<Finding> weigh(Evidence evidence) {
        Objects.requireNonNull(evidence, "evidence");
        return ROWS.stream().flatMap(hypothesis -> hypothesis.weigh(evidence).stream())
                .sorted(Comparator.comparing(Finding::urgency).thenComparing(Finding::confidence).reversed()).toList();
    }

    /**
     * Names the faults that what was measured could have shown.
     *
     * @param evidence machine and points
     * @return faults in words
     */
    public static List<String> lookedFor(Evidence evidence) {
        Objects.requireNonNull(evidence, "evidence");
        return ROWS.stream().filter(row -> row.notExamined(evidence).isEmpty()).map(Hypothesis::fault).toList();
    }

    /**
     * Says in one sentence, without full stop, what was looked for and what was not.
     *
     * @param evidence machine and points
     * @return the words, as in {@code looked for: unbalance; not looked for: misalignment, rub}
     */
    public static String inWords(Evidence evidence) {
        Objects.requireNonNull(evidence, "evidence");
        List<String> looked = lookedFor(evidence);
        return "looked for: " + (looked.isEmpty() ? "nothing" : String.join(", ", looked)) + "; not looked for: "
                + String.join(", ", notLookedFor(evidence));
    }

    /**
     * Names the faults that an analyst would look for on a machine and that have no row here, or that nothing measured
     * could have shown.
     *
     * @param evidence machine and points
     * @return faults in words
     */
    public static List<String> notLookedFor(Evidence evidence) {
        Objects.requireNonNull(evidence, "evidence");
        MachineDescription machine = evidence.machine();
        List<String> faults = new ArrayList<>(List.of("misalignment", "bent shaft", "looseness and soft foot", "rub",
                "resonance", "instability of plain bearings"));
        Set<MachineKind> kinds = Stream.concat(Stream.of(machine.machine()),
                machine.parts().stream().map(MachinePart::machine)).flatMap(one -> one.kind().stream())
                .collect(Collectors.toSet());
        if (kinds.stream().anyMatch(MachineKind::isElectrical) || machine.train().lineHertz().isPresent()) {
            faults.add("electrical faults of motor or generator");
        }
        if (!machine.train().gears().isEmpty() || kinds.contains(MachineKind.GEARBOX)) {
            faults.add("gears");
        }
        if (machine.train().blades().isPresent()) {
            faults.add("blade or vane passing and flow");
        }
        if (!machine.train().belts().isEmpty()) {
            faults.add("belts");
        }
        ROWS.forEach(row -> row.notExamined(evidence).ifPresent(faults::add));
        return faults;
    }
}
