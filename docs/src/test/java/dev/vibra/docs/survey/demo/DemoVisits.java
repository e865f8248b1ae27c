package dev.vibra.docs.survey.demo;

import dev.vibra.docs.survey.Folders;
import dev.vibra.docs.survey.demo.DemoRecordings.Stage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Makes the earlier visits of the demonstration machine: every four weeks a round of three points, surveyed by the
 * command, of which {@code results.json} is kept as it was written. The machine is sound at first; deposits on the
 * wheel grow from the fourth month on, belts wear from the sixth, the bearing begins in the tenth. From day to day the
 * sizes differ by a few hundredths (an assumption).
 */
final class DemoVisits {
    /** Today's visit. */
    static final LocalDate TODAY = LocalDate.of(2026, 3, 4);
    /** Files of the recordings of a round, without their ending. */
    static final List<String> ROUND = List.of("fe-h", "de-h", "m-de-h");

    private static final LocalDate FIRST = LocalDate.of(2025, 3, 12);
    /** A point ends with its sensor. */
    private static final Pattern POINT = Pattern.compile("(?s)\\{ \"id\": \"([A-Z-]+)\", \"part\".*? \\} \\}");

    private DemoVisits() {}

    /** A visit: when, and how far the faults had come. */
    record Visit(LocalDate day, Stage stage) {
        String file() {
            return "earlier/" + day + ".json";
        }
    }

    static List<Visit> all() {
        List<Visit> visits = new ArrayList<>();
        Random random = new Random(5);
        double length = ChronoUnit.DAYS.between(FIRST, TODAY);
        for (LocalDate day = FIRST; day.isBefore(TODAY); day = day.plusWeeks(4)) {
            double past = ChronoUnit.DAYS.between(FIRST, day);
            double wheel = 0.2 + 0.8 * Math.max(0, past - 100) / (length - 100);
            double belts = 0.25 + 0.75 * Math.max(0, past - 160) / (length - 160);
            double race = past < 270 ? 0 : Math.pow(2, (past - length) / 16);
            visits.add(new Visit(day, new Stage(wheel * (1 + 0.03 * random.nextGaussian()), race,
                    belts * (1 + 0.04 * random.nextGaussian()), visits.size() + 1)));
        }
        return visits;
    }

    /** Surveys a visit and writes its results below the folder of the machine. */
    static void write(Visit visit, Path machine) throws IOException {
        Path work = Files.createTempDirectory("vibra-demo-visit");
        try {
            Files.writeString(work.resolve("machine.json"),
                    description(Files.readString(machine.resolve("machine.json")), visit));
            DemoRecordings.at(visit.stage, ROUND).forEach((name, wave) ->
                    DemoRecordings.write(wave, work.resolve(name)));
            Folders.Run run = Folders.run(work, "--out", work.resolve("out"));
            if (run.code() != 0) {
                throw new IllegalStateException(visit + ": " + run);
            }
            Files.createDirectories(machine.resolve("earlier"));
            Files.copy(work.resolve("out/results.json"), machine.resolve(visit.file()),
                    StandardCopyOption.REPLACE_EXISTING);
        } finally {
            DemoMachine.remove(work);
        }
    }

    /** The description of the machine with the points of a round, and without what only today's visit knows. */
    private static String description(String today, Visit visit) {
        int points = today.indexOf("\"points\": [");
        String head = today.substring(0, points)
                .replaceFirst("\"measured\": \"[^\"]*\"", "\"measured\": \"" + visit.day + "T09:30:00Z\"")
                .replaceFirst("(?s) *\"naturalFrequenciesHertz\".*$", "");
        List<String> kept = new ArrayList<>();
        Matcher matcher = POINT.matcher(today.substring(points));
        while (matcher.find()) {
            if (ROUND.contains(matcher.group(1).toLowerCase(Locale.ROOT))) {
                kept.add(matcher.group().replaceAll("\"tachometer\": \\{[^}]*\\},", ""));
            }
        }
        return head + "\"points\": [" + String.join(", ", kept) + " ] }\n";
    }
}
