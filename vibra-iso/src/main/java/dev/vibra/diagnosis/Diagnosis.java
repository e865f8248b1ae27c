package dev.vibra.diagnosis;

import dev.vibra.fault.Counts;
import dev.vibra.fault.Fault;
import dev.vibra.fault.FaultTable;
import dev.vibra.fault.Symptom;
import dev.vibra.internal.Require;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MachinePart;
import dev.vibra.severity.MachineKind;
import dev.vibra.symptom.Evidence;
import dev.vibra.symptom.Site;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What may be wrong with a machine: {@code Diagnosis.of(evidence).findings()}. Faults and symptoms are a table, what a
 * symptom is worth is counted on simulated machines, and what can't be told apart stands together. Immutable. It supports
 * qualified staff and does not replace them.
 *
 * @see "ISO 13379-1:2012, knowledge-based diagnosis by faults and symptoms (from memory, unverified)"
 */
public final class Diagnosis {
    private static final Set<MachineKind> PISTONS = EnumSet.of(MachineKind.RECIPROCATING_COMPRESSOR,
            MachineKind.RECIPROCATING_ENGINE, MachineKind.GENERATING_SET);
    private static final Set<String> KNOCKING = Set.of("rub", "looseness", "gear-tooth");
    private static final List<Observation> OBSERVATIONS =
            List.of(new PulsationHypothesis(), new ImpulsivenessHypothesis());
    /** A fault was looked for where something that at least this share of simulated machines with it show was asked. */
    private static final double OFTEN = 0.3;

    private final FaultTable table;
    private final Counts counts;
    private final Evidence evidence;
    private final AnswerSheet sheet;
    private final List<Hypothesis> hypotheses;
    private final List<Finding> findings;

    private Diagnosis(Evidence evidence, Map<String, Double> priors) {
        this.table = FaultTable.standard();
        this.counts = Counts.standard();
        this.evidence = Objects.requireNonNull(evidence, "evidence");
        this.sheet = AnswerSheet.of(evidence, table);
        Inference inference = new Inference(table, counts);
        this.hypotheses = inference.hypotheses(evidence.machine(), priors).stream()
                .filter(one -> !hasPistons(evidence.machine()) || one.site().kind() == Site.Kind.BEARING).toList();
        FindingWriter writer = new FindingWriter(evidence, table, counts, inference);
        List<Finding> told = inference.rounds(hypotheses, sheet).stream().filter(inference::tells).map(writer::finding)
                .toList();
        this.findings = Stream.concat(told.stream(), OBSERVATIONS.stream().flatMap(one -> one.weigh(evidence).stream())
                .filter(one -> told.stream().noneMatch(other -> knocksFor(other, one))))
                .sorted(Comparator.comparing(Finding::urgency).thenComparing(Finding::groupConfidence).reversed())
                .toList();
    }

    /**
     * Weighs all faults, none of them more likely beforehand than the others, and one machine of four taken as sound.
     *
     * @param evidence machine, points, references
     * @return what comes of it
     */
    public static Diagnosis of(Evidence evidence) {
        return new Diagnosis(evidence, Map.of());
    }

    /**
     * Weighs all faults with what is known beforehand.
     *
     * @param evidence machine, points, references
     * @param priors weight of a code of faults beside the usual 1, above 0; those that aren't named keep 1
     * @return what comes of it
     * @throws IllegalArgumentException if a code is none of the table's or a weight is not finite or not above 0
     */
    public static Diagnosis of(Evidence evidence, Map<String, Double> priors) {
        Set<String> codes = FaultTable.standard().faults().stream().map(Fault::code).collect(Collectors.toSet());
        Map<String, Double> checked = new LinkedHashMap<>();
        Objects.requireNonNull(priors, "priors").forEach((code, weight) -> {
            if (!codes.contains(Objects.requireNonNull(code, "code"))) {
                throw new IllegalArgumentException("code must be that of a fault: " + code);
            }
            checked.put(code, Require.within("weight of " + code, Objects.requireNonNull(weight, "weight"), 1e-6, 1e6, ""));
        });
        return new Diagnosis(evidence, checked);
    }

    /** {@return findings, the most urgent first, then the best supported} */
    public List<Finding> findings() {
        return findings;
    }

    /** {@return faults that what was measured could have shown, in words} */
    public List<String> lookedFor() {
        List<String> words = new ArrayList<>(words(true));
        OBSERVATIONS.stream().filter(one -> one.notExamined(evidence).isEmpty()).map(Observation::fault)
                .forEach(words::add);
        return words;
    }

    /**
     * Names the faults that an analyst would look for on such a machine and that nothing measured could have shown, or
     * that no model knows yet.
     *
     * @return faults in words
     */
    public List<String> notLookedFor() {
        List<String> words = new ArrayList<>(words(false));
        MachineDescription machine = evidence.machine();
        Set<MachineKind> kinds = kinds(machine);
        if (machine.bearings().isEmpty()) {
            words.add("defects of rolling bearings (no geometry is given)");
        }
        if (kinds.contains(MachineKind.GEARBOX) && machine.train().gears().isEmpty()) {
            words.add("gears (no teeth are given)");
        }
        if (machine.train().blades().isEmpty() && kinds.stream().anyMatch(Diagnosis::hasWheel)) {
            words.add("blade or vane passing (no number of blades is given)");
        }
        if (hasPistons(machine)) {
            words.add("faults of machines with pistons (there are no models of them)");
        }
        words.add("instability of plain bearings");
        OBSERVATIONS.forEach(one -> one.notExamined(evidence).ifPresent(words::add));
        return words;
    }

    /** Knocks of unknown origin are of known origin where a fault that knocks is told of the same points. */
    private static boolean knocksFor(Finding fault, Finding knocks) {
        return KNOCKING.contains(fault.code()) && fault.points().containsAll(knocks.points());
    }

    /** What the counts come from has no pistons: lines and knocks of theirs would be taken for faults. */
    private static boolean hasPistons(MachineDescription machine) {
        return kinds(machine).stream().anyMatch(PISTONS::contains);
    }

    private static Set<MachineKind> kinds(MachineDescription machine) {
        return Stream.concat(Stream.of(machine.machine()), machine.parts().stream().map(MachinePart::machine))
                .flatMap(one -> one.kind().stream()).collect(Collectors.toSet());
    }

    private static boolean hasWheel(MachineKind kind) {
        return kind == MachineKind.PUMP || kind == MachineKind.FAN || kind == MachineKind.BLOWER
                || kind == MachineKind.COMPRESSOR;
    }

    /** Faults that a measured symptom could have shown, or those that none could. */
    private List<String> words(boolean examined) {
        Map<String, Boolean> byCode = new LinkedHashMap<>();
        hypotheses.forEach(one -> byCode.merge(one.fault().code().replace('-', ' '), isExamined(one), Boolean::logicalOr));
        return byCode.entrySet().stream().filter(one -> one.getValue() == examined).map(Map.Entry::getKey).toList();
    }

    private boolean isExamined(Hypothesis hypothesis) {
        for (Symptom symptom : table.symptoms()) {
            Optional<Double> with = counts.share(hypothesis.fault(), symptom.code());
            Optional<Double> without = counts.soundShare(hypothesis.site().kind(), symptom.code());
            boolean telling = with.isPresent() && without.isPresent() && with.get() >= OFTEN
                    && with.get() >= 2 * without.get();
            if (telling && sheet.at(symptom, hypothesis.site()).isMeasured()) {
                return true;
            }
        }
        return false;
    }

    /**
     * Names lines of gears, blades, belts and the mains that stand, that no finding names and that no reference of their
     * point could be held against: they are seen, and no verdict on them is possible.
     *
     * @return each rate with the point that shows it most, as in {@code blade passing (0.61 mm/s rms at FE-H)}
     */
    public List<String> linesWithoutVerdict() {
        return LinesSeen.of(evidence, findings);
    }

    /**
     * Says in one sentence, without full stop, what was looked for and what was not.
     *
     * @return the words, as in {@code looked for: unbalance; not looked for: gears (no teeth are given)}
     */
    public String inWords() {
        List<String> looked = lookedFor();
        return "looked for: " + (looked.isEmpty() ? "nothing" : String.join(", ", looked)) + "; not looked for: "
                + String.join(", ", notLookedFor());
    }

    /** Returns the findings in short. */
    @Override
    public String toString() {
        return findings.isEmpty() ? "no finding" : findings.stream().map(Finding::toString)
                .collect(Collectors.joining("; "));
    }
}
