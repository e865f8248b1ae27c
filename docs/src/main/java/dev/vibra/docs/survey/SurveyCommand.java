package dev.vibra.docs.survey;

import dev.vibra.docs.survey.demo.DemoMachine;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The command {@code java -jar vibra-survey.jar [FOLDER] [--out OUT]}, or with {@code --score FOLDER}. */
public final class SurveyCommand {
    /** Surveyed, whatever the verdict. */
    public static final int SURVEYED = 0;
    /** Surveyed with parts left out. */
    public static final int PARTS_LEFT_OUT = 1;
    /** Nothing could be surveyed. */
    public static final int NOTHING_SURVEYED = 2;
    /** Wrong use of the command. */
    public static final int WRONG_USE = 64;

    private SurveyCommand() {}

    /**
     * Runs the command and ends the process with its exit code.
     *
     * @param args arguments of the command
     */
    public static void main(String[] args) {
        System.setProperty("java.awt.headless", "true"); // Figures are drawn, never shown.
        System.exit(run(Terminal.ofProcess(), args));
    }

    /** Runs the command; ends no process and starts no thread. */
    static int run(Terminal terminal, String... args) {
        try {
            Arguments arguments = Arguments.parse(args);
            if (arguments.help()) {
                terminal.print(Arguments.USAGE);
                return SURVEYED;
            }
            return arguments.folder().isPresent() ? survey(terminal, arguments, arguments.folder().get())
                    : demonstrate(terminal, arguments);
        } catch (Arguments.WrongUse e) {
            terminal.complain(e.getMessage());
            terminal.complain(Arguments.USAGE);
            return WRONG_USE;
        } catch (IOException e) {
            terminal.complain("Nothing was written: " + e);
            return NOTHING_SURVEYED;
        } catch (RuntimeException e) {
            terminal.complain("Nothing was written; this is an error of the program, please report it:");
            terminal.complain(trace(e));
            return NOTHING_SURVEYED;
        }
    }

    private static String trace(RuntimeException e) {
        StringWriter text = new StringWriter();
        e.printStackTrace(new PrintWriter(text));
        return text.toString();
    }

    private static int survey(Terminal terminal, Arguments arguments, Path folder) throws Arguments.WrongUse,
            IOException {
        Path target = arguments.target(folder);
        if (!Files.isDirectory(folder)) {
            terminal.complain("The survey folder is not there or no folder: " + folder);
            return NOTHING_SURVEYED;
        }
        return arguments.score() ? new FolderScore(folder, target, arguments.insist(), terminal).run()
                : new FolderSurvey(folder, target, arguments.insist(), terminal).run();
    }

    private static int demonstrate(Terminal terminal, Arguments arguments) throws Arguments.WrongUse, IOException {
        Path target = arguments.target(Path.of(DemoMachine.FOLDER));
        Path unpacked = Files.createTempDirectory("vibra-demo");
        try {
            DemoMachine.unpack(unpacked);
            return new FolderSurvey(unpacked, target, arguments.insist(), terminal).run();
        } finally {
            remove(unpacked);
        }
    }

    private static void remove(Path folder) throws IOException {
        List<Path> files;
        try (var list = Files.list(folder)) {
            files = list.toList();
        }
        for (Path file : files) {
            Files.delete(file);
        }
        Files.delete(folder);
    }
}
