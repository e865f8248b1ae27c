package dev.vibra.diagnosis;

import dev.vibra.fault.FaultTable;
import dev.vibra.fault.Symptom;
import dev.vibra.internal.ShaftSpeeds;
import dev.vibra.symptom.Answer;
import dev.vibra.symptom.Evidence;
import dev.vibra.symptom.Site;
import dev.vibra.symptom.Sites;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** All symptoms asked at all sites of a machine, each once; for one thread. */
final class AnswerSheet {
    /** Sites whose fault is felt on one shaft: of symptoms of shafts they look at those of their own. */
    private static final Set<Site.Kind> ON_ONE_SHAFT = EnumSet.of(Site.Kind.SHAFT, Site.Kind.COUPLING, Site.Kind.MOTOR,
            Site.Kind.BLADES, Site.Kind.BELT);

    private final Map<Asked, Answer> answers;
    private final Map<String, List<Asked>> bySymptom;
    private final Set<Asked> explained;
    /** Each is asked for by many hypotheses. */
    private final Map<Asked, Answer> seenFrom = new HashMap<>();

    /** A symptom at a site. */
    record Asked(String symptom, Site site) {
        /** Written out, since the generated one holds the class loader of the record that used it last. */
        @Override
        public boolean equals(Object other) {
            return other instanceof Asked asked && symptom.equals(asked.symptom) && site.equals(asked.site);
        }

        @Override
        public int hashCode() {
            return 31 * symptom.hashCode() + site.hashCode();
        }
    }

    private AnswerSheet(Map<Asked, Answer> answers, Map<String, List<Asked>> bySymptom, Set<Asked> explained) {
        this.answers = answers;
        this.bySymptom = bySymptom;
        this.explained = explained;
    }

    static AnswerSheet of(Evidence evidence, FaultTable table) {
        List<Site> sites = Sites.of(evidence.machine());
        Map<Asked, Answer> answers = new LinkedHashMap<>();
        for (Symptom symptom : table.symptoms()) {
            for (Site site : sites) {
                if (site.kind() == symptom.site()) {
                    answers.put(new Asked(symptom.code(), site), symptom.ask(evidence, site));
                }
            }
        }
        return of(answers);
    }

    static AnswerSheet of(Map<Asked, Answer> answers) {
        return new AnswerSheet(answers, answers.keySet().stream().collect(Collectors.groupingBy(Asked::symptom)),
                Set.of());
    }

    Set<Asked> asked() {
        return answers.keySet();
    }

    /** The same without answers that an accepted fault explains: they weigh nothing from then on. */
    AnswerSheet without(Set<Asked> more) {
        Set<Asked> all = new HashSet<>(explained);
        all.addAll(more);
        return new AnswerSheet(answers, bySymptom, all);
    }

    /** Where a symptom is asked as seen from a site, explained or not. */
    List<Asked> asked(Symptom symptom, Site from) {
        return bySymptom.getOrDefault(symptom.code(), List.of()).stream().filter(one -> concerns(one.site(), from))
                .toList();
    }

    private static boolean concerns(Site site, Site from) {
        if (site.kind() == from.kind()) {
            return site.equals(from);
        }
        return site.kind() != Site.Kind.SHAFT || !ON_ONE_SHAFT.contains(from.kind())
                || ShaftSpeeds.areSame(site.ratio(), from.ratio());
    }

    /** True if a symptom is seen anywhere and not explained yet. */
    boolean shows(Symptom symptom) {
        return bySymptom.getOrDefault(symptom.code(), List.of()).stream()
                .anyMatch(one -> !explained.contains(one) && answers.get(one).isSeen());
    }

    Answer of(Asked asked) {
        return answers.get(asked);
    }

    /** True if a measurement would answer it: it is asked here, nothing explains it yet, and it wasn't measured. */
    boolean isOpen(Symptom symptom, Site from) {
        List<Asked> asked = asked(symptom, from);
        return !asked.isEmpty() && asked.stream().noneMatch(explained::contains) && !at(symptom, from).isMeasured();
    }

    /** The answer as seen from a site: of several sites one that shows it is enough. Explained ones are left away. */
    Answer at(Symptom symptom, Site from) {
        return seenFrom.computeIfAbsent(new Asked(symptom.code(), from), key -> joined(asked(symptom, from).stream()
                .filter(one -> !explained.contains(one)).map(answers::get).toList()));
    }

    private static Answer joined(List<Answer> answers) {
        if (answers.size() == 1) {
            return answers.get(0);
        }
        List<Answer> seen = answers.stream().filter(Answer::isSeen).toList();
        if (!seen.isEmpty()) {
            return Answer.seen(seen.stream().flatMap(one -> one.points().stream()).distinct().toList(), words(seen));
        }
        List<Answer> measured = answers.stream().filter(Answer::isMeasured).toList();
        return measured.isEmpty() ? Answer.notMeasured(words(answers)) : Answer.notSeen(words(measured));
    }

    private static String words(List<Answer> answers) {
        return answers.stream().map(Answer::words).filter(words -> !words.isEmpty()).distinct()
                .collect(Collectors.joining("; "));
    }

    /** Returns how much was asked. */
    @Override
    public String toString() {
        return answers.size() + " answers, " + answers.values().stream().filter(Answer::isMeasured).count()
                + " measured";
    }
}
