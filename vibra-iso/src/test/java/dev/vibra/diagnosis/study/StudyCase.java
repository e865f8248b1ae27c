package dev.vibra.diagnosis.study;

import dev.vibra.diagnosis.Decider;
import dev.vibra.diagnosis.Diagnosis;
import dev.vibra.diagnosis.Finding;
import dev.vibra.fault.Fault;
import dev.vibra.fault.FaultTable;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.point.PointExamination;
import dev.vibra.point.PointSurvey;
import dev.vibra.signal.Waveform;
import dev.vibra.symptom.Evidence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A simulated machine, what was said of it, and what was said once the measurements that would decide were done.
 *
 * @param seed seed of the machine
 * @param kind kind of the machine
 * @param faults ids of its faults in the table; empty for a sound machine
 * @param decibels strongest line of the faults over the noise in 1 Hz; 0 for a sound machine
 * @param level the same line as a part of the boundary B/C; 0 for a sound machine
 * @param zone worst zone, or a dash
 * @param said findings on the first visit
 * @param after findings after the deciding measurements
 * @param decidedBy codes of the symptoms that were measured to decide, in their order
 */
record StudyCase(long seed, String kind, List<String> faults, double decibels, double level, String zone,
        List<Said> said, List<Said> after, List<String> decidedBy) {
    private static final Set<String> PHASES = Set.of("quarter-turn", "straight", "ends-opposed", "ends-axial-opposed",
            "across-axial-opposed", "across-radial-opposed");
    private static final Set<String> CODES = FaultTable.standard().faults().stream().map(fault -> fault.code())
            .collect(Collectors.toSet());
    private static final Set<String> SYMPTOMS = FaultTable.standard().symptoms().stream().map(one -> one.code())
            .collect(Collectors.toSet());

    /** What a finding says: its code and confidence, that of its group, and the codes that are alike to it. */
    record Said(String code, double confidence, double together, List<String> alikeTo) {
        static Said of(Finding finding) {
            return new Said(finding.code(), finding.confidence(), finding.groupConfidence(), finding.alikeTo());
        }

        boolean names(String code) {
            return this.code.equals(code) || alikeTo.contains(code);
        }

        int size() {
            return 1 + alikeTo.size();
        }

        /** False for knocks and pulsations of no known cause. */
        boolean isFault() {
            return CODES.contains(code);
        }

        private String line() {
            return String.format(Locale.ROOT, "%s:%.4f:%.4f:%s", code, confidence, together, String.join("+", alikeTo));
        }

        private static Said parse(String text) {
            String[] cells = text.split(":", -1);
            return new Said(cells[0], Double.parseDouble(cells[1]), Double.parseDouble(cells[2]), cells[3].isEmpty()
                    ? List.of() : List.of(cells[3].split("\\+")));
        }
    }

    /** Measures a machine, asks for a diagnosis, does what would decide, and asks again. */
    static StudyCase of(StudyMachine machine) {
        Visit visit = Visit.of(machine, machine.firstSession(), 0);
        List<Said> said = visit.said();
        String zone = visit.zone();
        List<String> decidedBy = visit.deciders();
        List<Said> after = decidedBy.isEmpty() ? said : visit.after(decidedBy).said();
        boolean sound = machine.faults().isEmpty();
        Strength strength = sound ? new Strength(0, 0) : machine.strength();
        return new StudyCase(machine.seed(), machine.plant().kind.name().toLowerCase(Locale.ROOT), machine.faults().stream()
                .map(Planted::id).toList(), strength.decibels(), strength.level(), zone, said, after, decidedBy);
    }

    /** A machine as it was measured in one session, with the diagnosis. */
    record Visit(StudyMachine machine, Session session, StudyMachine.Measured measured, Evidence evidence,
            List<Finding> findings) {
        static Visit of(StudyMachine machine, Session session, int number) {
            StudyMachine.Measured measured = machine.measure(session, number);
            PointExamination examination = PointExamination.of(measured.description());
            Evidence evidence = new Evidence(measured.description(),
                    examined(measured.description(), measured.recordings(), (point, wave) ->
                            examination.examine(point, wave, Optional.empty())),
                    examined(measured.description(), measured.references(), (point, wave) ->
                            examination.reference(point, wave, Optional.empty())));
            return new Visit(machine, session, measured, evidence, Diagnosis.of(evidence).findings());
        }

        private static List<PointSurvey> examined(MachineDescription machine, Map<String, Waveform> recordings,
                BiFunction<MeasuringPoint, Waveform, PointSurvey> examination) {
            return machine.points().stream().filter(point -> recordings.containsKey(point.id()))
                    .map(point -> examination.apply(point, recordings.get(point.id())).withoutTraces()).toList();
        }

        List<Said> said() {
            return findings.stream().map(Said::of).toList();
        }

        String zone() {
            return evidence.points().stream().flatMap(point -> point.zone().stream()).max(Comparator.naturalOrder())
                    .map(Enum::name).orElse("-");
        }

        /** What would decide on the group with the most confidence; confirmations have no symptom. */
        List<String> deciders() {
            return findings.stream().filter(one -> Said.of(one).isFault())
                    .max(Comparator.comparingDouble(Finding::groupConfidence)).stream()
                    .flatMap(one -> one.decidedBy().stream().map(Decider::symptom)).filter(SYMPTOMS::contains).distinct()
                    .toList();
        }

        /** The same machine with symptoms measured: words of a crew are added, recordings are taken anew where needed. */
        Visit after(List<String> symptoms) {
            Session next = session;
            boolean anew = false;
            for (String symptom : symptoms) {
                if (FaultTable.standard().tests().contains(symptom)) {
                    next = next.observed(symptom, machine.observe(symptom));
                } else if (symptom.equals("near-natural")) {
                    next = next.withNatural();
                } else {
                    next = PHASES.contains(symptom) ? next.atOnce().withAll() : next.withAll();
                    anew = true;
                }
            }
            return anew ? of(machine, next.longer(2), 1) : told(next);
        }

        private Visit told(Session next) {
            Evidence more = new Evidence(machine.describe(next), evidence.points(), evidence.references());
            return new Visit(machine, next, measured, more, Diagnosis.of(more).findings());
        }
    }

    // ---- what came of it

    boolean healthy() {
        return faults.isEmpty();
    }

    boolean single() {
        return faults.size() == 1;
    }

    static String code(String id) {
        int slash = id.indexOf('/');
        return slash < 0 ? id : id.substring(0, slash);
    }

    /** Code of the only fault. */
    String code() {
        return code(faults.get(0));
    }

    /** Finding whose group has the most confidence, of those that are faults of the table. */
    static Optional<Said> leading(List<Said> findings) {
        return findings.stream().filter(Said::isFault).max(Comparator.comparingDouble(Said::together));
    }

    /** A fault that is told by level, whose strongest line sound machines have too: it begins. */
    boolean begins() {
        return FaultTable.standard().faults().stream().filter(one -> one.code().equals(code()))
                .anyMatch(fault -> fault.urgency() == Fault.Urgency.BY_LEVEL) && level < Sizes.LEAST;
    }

    boolean inGroup() {
        return leading(said).filter(one -> one.names(code())).isPresent();
    }

    boolean firstRight() {
        return leading(said).filter(one -> one.code().equals(code())).isPresent();
    }

    boolean rightAfter() {
        return leading(after).filter(one -> one.code().equals(code())).isPresent();
    }

    /** How many of the faults some finding names. */
    int found() {
        return (int) faults.stream().filter(id -> said.stream().anyMatch(one -> one.names(code(id)))).count();
    }

    // ---- one line of a store

    String line() {
        return String.join("\t", Long.toString(seed), kind, String.join(",", faults),
                String.format(Locale.ROOT, "%.2f\t%.4f", decibels, level), zone, lines(said), lines(after),
                String.join(",", decidedBy));
    }

    private static String lines(List<Said> findings) {
        return findings.stream().map(Said::line).collect(Collectors.joining(","));
    }

    static StudyCase parse(String line) {
        String[] cells = line.split("\t", -1);
        return new StudyCase(Long.parseLong(cells[0]), cells[1], list(cells[2]), Double.parseDouble(cells[3]),
                Double.parseDouble(cells[4]), cells[5], list(cells[6]).stream().map(Said::parse).toList(),
                list(cells[7]).stream().map(Said::parse).toList(), list(cells[8]));
    }

    private static List<String> list(String cell) {
        return cell.isEmpty() ? List.of() : Arrays.asList(cell.split(","));
    }

    static Stream<String> codesOf(List<StudyCase> cases) {
        return cases.stream().flatMap(one -> one.faults().stream()).distinct().sorted();
    }
}
