package dev.vibra.docs.fuzz;

import dev.vibra.docs.survey.Folders;
import dev.vibra.docs.survey.output.ReportSettings;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A survey folder, surveyed by the command itself.
 *
 * @param parent folder to make it in
 * @param files content by name
 * @param insist true if unsound recordings are judged too
 * @param figures true if figures are drawn, which takes most of the time
 * @param threads points worked out at a time; what more than one cost isn't measured
 */
record SurveyInput(Path parent, Map<String, byte[]> files, boolean insist, boolean figures,
        int threads) implements Target.Input {
    private static final Set<Integer> CODES = Set.of(0, 1, 2, 64);
    private static final int LONGEST = 100_000;

    /** Makes a folder of a random machine. */
    static SurveyInput of(Path parent, Dice dice) {
        int points = dice.between(1, 3);
        Json machine = Machines.description(dice, points);
        if (dice.oneIn(3)) {
            machine.mutate(dice);
        }
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("machine.json", machine.toString().getBytes(StandardCharsets.UTF_8));
        for (int i = 0; i < points; i++) {
            files.put("p" + i + ".wav", dice.oneIn(8) ? WavFiles.mutated(dice, 600) : Signals.recording(dice));
        }
        files.put("tacho.wav", dice.oneIn(8) ? WavFiles.mutated(dice, 600) : Signals.tachometer(dice));
        return new SurveyInput(parent, files, dice.oneIn(4), dice.oneIn(25),
                dice.oneIn(10) ? 2 : 1);
    }

    @Override
    public String shown() {
        return (insist ? "--insist, " : "") + "--threads " + threads + ", "
                + files.entrySet().stream().map(file -> file.getKey() + " "
                + file.getValue().length
                + " bytes").collect(Collectors.joining(", ")) + "; machine.json: " + Shown.escaped(new String(
                files.get("machine.json"), StandardCharsets.UTF_8), 4000);
    }

    @Override
    public long size() {
        return files.values().stream().mapToLong(file -> file.length).sum();
    }

    @Override
    public void attempt(Consumer<String> outcomes) throws Exception {
        Path folder = parent.resolve("survey");
        Path out = parent.resolve("out");
        empty(folder);
        empty(out);
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            Files.write(folder.resolve(file.getKey()), file.getValue());
        }
        List<Object> arguments = new ArrayList<>(List.of(folder, "--out", out, "--threads", threads));
        if (insist) {
            arguments.add("--insist");
        }
        Folders.Run run = Folders.run(figures ? UnaryOperator.identity() : ReportSettings::withoutFigures, arguments.toArray());
        check(run);
        if (run.code() == 0 || run.code() == 1) {
            Outputs.check(out);
        } else if (!Folders.names(out).isEmpty()) {
            throw new AssertionError("code " + run.code() + " and written: " + Folders.names(out));
        }
        outcomes.accept("exit code " + run.code());
    }

    private static void check(Folders.Run run) {
        for (String text : List.of(run.out(), run.err())) {
            if (text.contains("are fonts installed?")) {
                throw new AssertionError("figures are left out: " + text);
            } else if (text.contains("error of the program")) {
                String place = text.lines().filter(line -> line.contains("at dev.vibra.")
                        && !line.contains(".internal."))
                        .findFirst().orElse("").trim();
                throw new AssertionError("error of the program " + place + ": " + text.lines().skip(1).limit(12)
                        .collect(Collectors.joining("\n")));
            }
            Shown.require("the terminal", "x" + text.replace("\n", ""), LONGEST);
            Outputs.requireNumbers("the terminal", text);
        }
        if (!CODES.contains(run.code())) {
            throw new AssertionError("exit code: " + run.code());
        }
    }

    private static void empty(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> all = Files.walk(folder)) {
                all.sorted(Comparator.reverseOrder()).forEach(SurveyInput::delete);
            }
        }
        Files.createDirectories(folder);
    }

    private static void delete(Path file) {
        try {
            Files.delete(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
