package dev.vibra.bearing.study;

import dev.vibra.bearing.BearingDiagnosis;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * How well a bearing is diagnosed on thousands of simulated machines, beside a plain squared envelope. No part of the
 * ordinary tests, since it takes minutes; {@link BearingStudyTest} keeps it alive.
 *
 * <pre>
 * mvn -q -B -pl vibra-bearing -am test -Dtest=BearingStudy -Dsurefire.failIfNoSpecifiedTests=false \
 *     -Dstudy="--cases 3000 --seed 1 --csv target/study.csv --markdown ../docs/bearing-how-well.md"
 * mvn … -Dstudy="--case 17"
 * </pre>
 */
class BearingStudy {
    private static final String BEGIN = "<!-- table of BearingStudy -->";
    private static final String END = "<!-- end of table -->";

    @Test
    void study() throws IOException {
        String options = System.getProperty("study", "").strip();
        main(options.isEmpty() ? new String[0] : options.split("\\s+"));
    }

    public static void main(String[] args) throws IOException {
        int cases = 3000;
        long first = 1;
        Path csv = null;
        Path markdown = null;
        for (int i = 0; i + 1 < args.length; i += 2) {
            switch (args[i]) {
                case "--cases" -> cases = Integer.parseInt(args[i + 1]);
                case "--seed" -> first = Long.parseLong(args[i + 1]);
                case "--csv" -> csv = Path.of(args[i + 1]);
                case "--markdown" -> markdown = Path.of(args[i + 1]);
                case "--case" -> {
                    describe(Long.parseLong(args[i + 1]));
                    return;
                }
                default -> throw new IllegalArgumentException("unknown option: " + args[i]);
            }
        }
        List<StudyCase> done = run(first, cases);
        String table = new StudyTable(done).markdown();
        System.out.println(table);
        if (csv != null) {
            List<String> lines = new ArrayList<>(List.of(StudyCase.CSV_HEADER));
            done.forEach(c -> lines.add(c.csv()));
            Files.write(csv, lines);
        }
        if (markdown != null) {
            Files.writeString(markdown, between(Files.exists(markdown) ? Files.readString(markdown) : "", table));
        }
    }

    static List<StudyCase> run(long firstSeed, int cases) {
        List<StudyCase> done = new ArrayList<>();
        for (int i = 0; i < cases; i++) {
            done.add(StudyCase.of(SimulatedBearing.of(firstSeed + i)));
        }
        return done;
    }

    private static void describe(long seed) {
        SimulatedBearing bearing = SimulatedBearing.of(seed);
        System.out.println(bearing);
        System.out.println(bearing.told());
        System.out.println(BearingDiagnosis.of(bearing.wave(), bearing.told()).describe());
        System.out.println(StudyCase.CSV_HEADER + "\n" + StudyCase.of(bearing).csv());
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
