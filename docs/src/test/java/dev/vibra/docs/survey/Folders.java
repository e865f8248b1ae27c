package dev.vibra.docs.survey;

import dev.vibra.docs.survey.demo.DemoMachine;
import dev.vibra.docs.survey.output.ReportSettings;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Survey folders made of the demonstration machine, and runs of the command on them. */
public final class Folders {
    private Folders() {}

    /** What a run printed and returned. */
    public record Run(int code, String out, String err) {}

    static Path demo(Path folder) throws IOException {
        Files.createDirectories(folder);
        DemoMachine.unpack(folder);
        return folder;
    }

    static void replace(Path folder, String from, String to) throws IOException {
        Path file = folder.resolve("machine.json");
        String text = Files.readString(file);
        if (!text.contains(from)) {
            throw new IllegalArgumentException("not in machine.json: " + from);
        }
        Files.writeString(file, text.replaceFirst(Pattern.quote(from),
                Matcher.quoteReplacement(to)));
    }

    public static Run run(Object... args) {
        return run(UnaryOperator.identity(), args);
    }

    /** With a report of another kind. */
    public static Run run(UnaryOperator<ReportSettings> report, Object... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Terminal terminal = new Terminal(new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8), StandardCharsets.UTF_8, false);
        String[] texts = Arrays.stream(args).map(Object::toString).toArray(String[]::new);
        int code = SurveyCommand.run(terminal, report, texts);
        return new Run(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    public static List<String> names(Path folder) throws IOException {
        try (var list = Files.list(folder)) {
            return list.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }
}
