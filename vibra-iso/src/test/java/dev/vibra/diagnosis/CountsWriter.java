package dev.vibra.diagnosis;

import dev.vibra.fault.Counts;
import dev.vibra.fault.Fault;
import dev.vibra.fault.FaultTable;
import dev.vibra.fault.Symptom;
import dev.vibra.symptom.Answer;
import dev.vibra.symptom.Site;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Makes the table of counts of simulated machines: the tree of dependence, the counts, and what is fitted. */
final class CountsWriter {
    /** Where a line is high something is to be explained, and a fault is told unless this share speaks for none. */
    private static final double HIGHEST_NONE = 0.35;
    /**
     * Machines of another generator (seeds 600001 to 630800 of the study) asked for about a third of what held-back machines of
     * this one do: the symptoms beside the strongest hang together more than these machines show.
     */
    private static final double UNLIKE_THESE = 0.3;

    private final FaultTable table;
    private final List<DrawnMachine> drawn;
    private final long seed;

    /** What one machine answers as seen from a site: a row of the counts. */
    record View(String row, Site site, DrawnMachine machine) {
        Answer answer(Symptom symptom) {
            return machine.sheet().at(symptom, site);
        }
    }

    CountsWriter(FaultTable table, List<DrawnMachine> drawn, long seed) {
        this.table = table;
        this.drawn = drawn;
        this.seed = seed;
    }

    /** The exponent is fitted to machines that the counts of a first pass did not see, the threshold to all. */
    String text() {
        List<DrawnMachine> first = drawn.stream().filter(CountsWriter::isFirstHalf).toList();
        List<DrawnMachine> second = drawn.stream().filter(one -> !isFirstHalf(one)).toList();
        double exponent = UNLIKE_THESE * new CountsFit(table, Counts.parse(text(first, 1, 0.5)), second).exponent();
        Counts all = Counts.parse(text(drawn, exponent, 0.5));
        return text(drawn, exponent, new CountsFit(table, all, drawn).highestNone(exponent));
    }

    /** Each fault is drawn once in a hundred seeds: every other hundred is held back. */
    static boolean isFirstHalf(DrawnMachine machine) {
        return machine.seed() / 100 % 2 == 0;
    }

    String text(List<DrawnMachine> machines, double exponent, double highestNone) {
        List<String> lines = new ArrayList<>();
        lines.add("# Counts of simulated machines: on how many with a fault, and without any, each symptom was seen. They come from the"
                + " library's");
        lines.add("# forward models (dev.vibra.simulation), not from plants, and are written by the command FaultCounting; see"
                + " DEVELOPERS.md.");
        lines.add("# \"given\": the symptom that this one hangs on most; the counts are those where it wasn't measured (alone),"
                + " wasn't seen (no)");
        lines.add("# and was seen (yes), each without and with this one. none/SITE are sound machines as seen from such a site.");
        lines.add("");
        lines.add("[draws]");
        lines.add("seed | machines | exponent | highest none | quiet");
        lines.add(String.format(Locale.ROOT, "%d | %d | %.2f | %.3f | %.3f", seed, machines.size(), exponent,
                HIGHEST_NONE, highestNone));
        lines.add("");
        lines.add("[counts]");
        lines.add("fault | symptom | given | alone no | alone yes | no no | no yes | yes no | yes yes");
        for (Site.Kind kind : Site.Kind.values()) {
            if (table.faults().stream().anyMatch(fault -> fault.site() == kind)) {
                addKind(lines, kind, machines);
            }
        }
        return String.join("\n", lines) + "\n";
    }

    private void addKind(List<String> lines, Site.Kind kind, List<DrawnMachine> machines) {
        Map<String, List<View>> views = views(kind, machines);
        Map<String, String> given = new SymptomTree(table.symptoms(), views).parents();
        views.forEach((row, seen) -> {
            for (Symptom symptom : table.symptoms()) {
                String parent = given.getOrDefault(symptom.code(), "-");
                int[] counts = counts(seen, symptom, parent);
                if (Arrays.stream(counts).sum() > 0) {
                    lines.add(row + " | " + symptom.code() + " | " + parent + " | " + Arrays.stream(counts)
                            .mapToObj(Integer::toString).collect(Collectors.joining(" | ")));
                }
            }
        });
    }

    private Map<String, List<View>> views(Site.Kind kind, List<DrawnMachine> machines) {
        Map<String, List<View>> views = new LinkedHashMap<>();
        views.put(Counts.soundAt(kind), machines.stream().filter(one -> one.fault().isEmpty())
                .flatMap(one -> one.sites(kind).stream().map(site -> new View(Counts.soundAt(kind), site, one))).toList());
        for (Fault fault : table.faults()) {
            if (fault.site() == kind) {
                views.put(fault.id(), machines.stream().filter(one -> one.fault().equals(fault.id()))
                        .flatMap(one -> one.site(table).map(site -> new View(fault.id(), site, one)).stream()).toList());
            }
        }
        return views;
    }

    private int[] counts(List<View> views, Symptom symptom, String parent) {
        int[] counts = new int[6];
        for (View view : views) {
            Answer answer = view.answer(symptom);
            if (answer.isMeasured()) {
                Optional<Answer> other = parent.equals("-") ? Optional.empty()
                        : Optional.of(view.answer(table.symptom(parent))).filter(Answer::isMeasured);
                counts[other.map(one -> one.isSeen() ? 4 : 2).orElse(0) + (answer.isSeen() ? 1 : 0)]++;
            }
        }
        return counts;
    }
}
