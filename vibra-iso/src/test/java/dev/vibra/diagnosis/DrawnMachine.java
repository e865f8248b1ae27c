package dev.vibra.diagnosis;

import dev.vibra.diagnosis.AnswerSheet.Asked;
import dev.vibra.fault.FaultTable;
import dev.vibra.fault.Symptom;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.point.PointExamination;
import dev.vibra.point.PointSurvey;
import dev.vibra.signal.Waveform;
import dev.vibra.simulation.SimulatedMachine;
import dev.vibra.symptom.Answer;
import dev.vibra.symptom.Evidence;
import dev.vibra.symptom.Site;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A simulated machine with a fault or without, and its answers to all questions, in one line of text.
 *
 * @param seed seed it was drawn by
 * @param fault id of its fault; empty for a sound one
 * @param owner owner of the site of the fault
 * @param sheet answers
 */
record DrawnMachine(long seed, String fault, String owner, AnswerSheet sheet) {
    static DrawnMachine draw(long seed, List<String> faults, FaultTable table) {
        SimulatedMachine machine = SimulatedMachine.draw(seed, faults);
        MachineDescription description = machine.description();
        for (Map.Entry<String, Boolean> one : machine.observations().entrySet()) {
            description = description.withObservation(one.getKey(), one.getValue());
        }
        Evidence evidence = new Evidence(description, examined(description, machine.recordings(), listens(faults)),
                referenced(description, machine.references()));
        return new DrawnMachine(seed, faults.isEmpty() ? "" : machine.faults().get(0).fault(),
                faults.isEmpty() ? "" : machine.faults().get(0).owner(), AnswerSheet.of(evidence, table));
    }

    /** Bearings take most of the time: they are listened to where they or what sounds like them are at stake. */
    private static boolean listens(List<String> faults) {
        return faults.isEmpty() || faults.stream().anyMatch(one -> one.startsWith("rolling-bearing")
                || one.equals("gear-tooth") || one.equals("looseness/rotating-part") || one.equals("rub"));
    }

    private static List<PointSurvey> examined(MachineDescription machine, Map<String, Waveform> recordings,
            boolean listens) {
        PointExamination all = PointExamination.of(machine);
        PointExamination examination = listens ? all : all.withoutBearings();
        List<PointSurvey> points = new ArrayList<>();
        for (MeasuringPoint point : machine.points()) {
            Optional.ofNullable(recordings.get(point.id())).ifPresent(wave ->
                    points.add(examination.examine(point, wave, Optional.empty()).withoutTraces()));
        }
        return points;
    }

    private static List<PointSurvey> referenced(MachineDescription machine, Map<String, Waveform> recordings) {
        PointExamination examination = PointExamination.of(machine);
        return machine.points().stream().filter(point -> recordings.containsKey(point.id()))
                .map(point -> examination.reference(point, recordings.get(point.id()), Optional.empty()).withoutTraces())
                .toList();
    }

    /** Where the fault sits. */
    Optional<Site> site(FaultTable table) {
        return fault.isEmpty() ? Optional.empty() : sites(table.fault(fault).site()).stream()
                .filter(site -> site.owner().equals(owner)).findFirst();
    }

    List<Site> sites(Site.Kind kind) {
        return sheet.asked().stream().map(Asked::site).filter(site -> site.kind() == kind).distinct().toList();
    }

    /** Seed, fault, owner, then each site with a letter for each of its symptoms; a full stop says that it is whole. */
    String line() {
        Map<Site, StringBuilder> letters = new LinkedHashMap<>();
        for (Asked asked : sheet.asked()) {
            Answer answer = sheet.of(asked);
            letters.computeIfAbsent(asked.site(), key -> new StringBuilder())
                    .append(answer.isSeen() ? 'y' : answer.isMeasured() ? 'n' : '-');
        }
        return seed + "\t" + fault + "\t" + owner + "\t" + letters.entrySet().stream()
                .map(one -> one.getKey().kind().name() + "~" + one.getKey().owner() + "~" + one.getKey().ratio() + "~"
                        + one.getValue()).collect(Collectors.joining("\t")) + "\t.";
    }

    static DrawnMachine parse(String line, FaultTable table) {
        String[] cells = line.split("\t");
        Map<Asked, Answer> answers = new LinkedHashMap<>();
        for (int i = 3; i < cells.length - 1; i++) {
            String[] parts = cells[i].split("~");
            Site site = new Site(Site.Kind.valueOf(parts[0]), parts[1], Double.parseDouble(parts[2]));
            List<Symptom> symptoms = table.symptoms().stream().filter(one -> one.site() == site.kind()).toList();
            for (int k = 0; k < symptoms.size(); k++) {
                answers.put(new Asked(symptoms.get(k).code(), site), switch (parts[3].charAt(k)) {
                    case 'y' -> Answer.seen(List.of(), "");
                    case 'n' -> Answer.notSeen("");
                    default -> Answer.notMeasured("");
                });
            }
        }
        return new DrawnMachine(Long.parseLong(cells[0]), cells[1], cells[2], AnswerSheet.of(answers));
    }
}
