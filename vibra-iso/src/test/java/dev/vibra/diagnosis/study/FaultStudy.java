package dev.vibra.diagnosis.study;

import dev.vibra.fault.FaultTable;
import dev.vibra.fault.Symptom;
import dev.vibra.symptom.Answer;
import dev.vibra.symptom.Site;
import dev.vibra.symptom.Sites;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * How well faults are found on thousands of simulated machines that the counts of the engine don't come from. No part of
 * the ordinary tests, since it takes half an hour on two cores; {@link FaultStudyTest} keeps it alive.
 *
 * <pre>
 * mvn -q -B -pl vibra-iso -am test -Dtest=FaultStudy -Dsurefire.failIfNoSpecifiedTests=false \
 *     -Dstudy="--seed 300001 --machines 4000 --store target/study.tsv --markdown ../docs/faults-how-well.md"
 * mvn … -Dstudy="--machine 300017"
 * </pre>
 *
 * With a store it goes on where it was stopped.
 */
class FaultStudy {
    private static final String BEGIN = "<!-- table of FaultStudy -->";
    private static final String END = "<!-- end of table -->";
    private static final int THREADS = 2;

    @Test
    void study() throws Exception {
        String options = System.getProperty("study", "").strip();
        main(options.isEmpty() ? new String[0] : options.split("\\s+"));
    }

    public static void main(String[] args) throws Exception {
        int machines = 4000;
        long first = 300001;
        Path store = null;
        Path markdown = null;
        for (int i = 0; i + 1 < args.length; i += 2) {
            switch (args[i]) {
                case "--machines" -> machines = Integer.parseInt(args[i + 1]);
                case "--seed" -> first = Long.parseLong(args[i + 1]);
                case "--store" -> store = Path.of(args[i + 1]);
                case "--markdown" -> markdown = Path.of(args[i + 1]);
                case "--machine" -> {
                    describe(Long.parseLong(args[i + 1]));
                    return;
                }
                default -> throw new IllegalArgumentException("unknown option: " + args[i]);
            }
        }
        String table = new StudyTable(run(first, machines, store)).markdown();
        System.out.println(table);
        if (markdown != null) {
            Files.writeString(markdown, between(Files.exists(markdown) ? Files.readString(markdown) : "", table));
        }
    }

    static List<StudyCase> run(long firstSeed, int machines, Path store) throws Exception {
        List<StudyCase> done = new ArrayList<>();
        if (store != null && Files.exists(store)) {
            Files.readAllLines(store).stream().map(StudyCase::parse).filter(one -> one.seed() >= firstSeed
                    && one.seed() < firstSeed + machines).forEach(done::add);
        }
        Set<Long> known = done.stream().map(StudyCase::seed).collect(Collectors.toSet());
        ExecutorService threads = Executors.newFixedThreadPool(THREADS);
        try {
            List<Future<StudyCase>> coming = new ArrayList<>();
            for (long seed = firstSeed; seed < firstSeed + machines; seed++) {
                long now = seed;
                if (!known.contains(seed)) {
                    coming.add(threads.submit(() -> StudyCase.of(StudyMachine.of(now))));
                }
            }
            for (Future<StudyCase> one : coming) {
                StudyCase study = one.get();
                done.add(study);
                keep(store, study);
                if (done.size() % 100 == 0) {
                    System.err.println(done.size() + " of " + machines + " machines");
                }
            }
        } finally {
            threads.shutdownNow();
        }
        done.sort(Comparator.comparingLong(StudyCase::seed));
        return done;
    }

    private static void keep(Path store, StudyCase study) throws IOException {
        if (store != null) {
            Files.writeString(store, study.line() + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
        }
    }

    private static void describe(long seed) {
        StudyMachine machine = StudyMachine.of(seed);
        StudyCase.Visit visit = StudyCase.Visit.of(machine, machine.firstSession(), 0);
        System.out.println(machine);
        System.out.println(machine.faults().isEmpty() ? "sound" : machine.strength());
        visit.evidence().points().forEach(point -> System.out.println(point + " " + point.dominantLines()));
        for (Site site : Sites.of(visit.measured().description())) {
            for (Symptom symptom : FaultTable.standard().symptoms()) {
                Answer answer = symptom.site() == site.kind() ? symptom.ask(visit.evidence(), site) : null;
                if (answer != null && answer.isMeasured()) {
                    System.out.println((answer.isSeen() ? "+ " : "- ") + symptom.code() + " at " + site + ": "
                            + answer.words());
                }
            }
        }
        visit.findings().forEach(one -> System.out.println(one + ", alike " + one.alikeTo() + ", decided by "
                + one.decidedBy().stream().map(d -> d.symptom()).toList()));
        System.out.println(StudyCase.of(machine).line());
    }

    /** Puts the table between the two marks of a page; makes a page of them if there is none. */
    static String between(String page, String table) {
        String block = BEGIN + "\n\n" + table + "\n" + END;
        int from = page.indexOf(BEGIN);
        int to = page.indexOf(END);
        return from < 0 || to < from ? page + block + "\n"
                : page.substring(0, from) + block + page.substring(to + END.length());
    }
}
