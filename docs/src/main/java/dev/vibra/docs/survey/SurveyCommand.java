package dev.vibra.docs.survey;

import dev.vibra.docs.survey.demo.DemoMachine;
import dev.vibra.docs.survey.input.FileTrouble;
import dev.vibra.docs.survey.meter.MeterCommand;
import dev.vibra.docs.survey.output.ForeignFileException;
import dev.vibra.docs.survey.output.ReportSettings;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.UnaryOperator;

/**
 * The command {@code java -jar vibra-survey.jar [FOLDER] [OPTIONS]}, or with {@code --score FOLDER}, or with
 * {@code --meter FILE}, or with {@code --jshell}.
 */
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

    /** Runs the command; ends no process and leaves no thread alive. */
    static int run(Terminal terminal, String... args) {
        return run(terminal, UnaryOperator.identity(), args);
    }

    /** Runs the command with a changed report, as one without figures. */
    static int run(Terminal terminal, UnaryOperator<ReportSettings> change, String... args) {
        try {
            if (args.length > 0 && args[0].equals(MeterCommand.OPTION)) {
                return meter(terminal, System.in, args);
            }
            Arguments arguments = Arguments.parse(args);
            if (arguments.printed().isPresent()) {
                terminal.print(arguments.printed().get());
                return SURVEYED;
            }
            ReportSettings settings = change.apply(arguments.report());
            return arguments.folder().isPresent() ? survey(terminal, settings, arguments, arguments.folder().get())
                    : demonstrate(terminal, settings, arguments);
        } catch (Arguments.WrongUse e) {
            terminal.complain(e.getMessage());
            terminal.complain(Arguments.USAGE);
            return WRONG_USE;
        } catch (ForeignFileException e) {
            terminal.complain("Nothing was written: " + e.getMessage());
            return WRONG_USE;
        } catch (IOException e) {
            terminal.complain("Nothing was written: " + FileTrouble.inWords(e));
            return NOTHING_SURVEYED;
        } catch (OutOfMemoryError | StackOverflowError e) {
            terminal.complain("Nothing was written: the memory of this process is too small (java -Xmx... gives more)");
            return NOTHING_SURVEYED;
        } catch (RuntimeException | Error e) {
            terminal.complain("Nothing was written; this is an error of the program, please report it:");
            terminal.complain(trace(e));
            return NOTHING_SURVEYED;
        }
    }

    /** Runs the meter: what follows the option that chose it is its own. */
    static int meter(Terminal terminal, InputStream in, String... args) {
        return new MeterCommand(in, terminal::print, terminal::complain, terminal::isGone)
                .run(Arrays.copyOfRange(args, 1, args.length));
    }

    private static String trace(Throwable e) {
        StringWriter text = new StringWriter();
        e.printStackTrace(new PrintWriter(text));
        return text.toString();
    }

    private static int survey(Terminal terminal, ReportSettings settings, Arguments arguments, Path folder)
            throws Arguments.WrongUse, IOException {
        Path target = arguments.target(folder);
        if (!Files.isDirectory(folder)) {
            terminal.complain("The survey folder is not there or no folder: " + folder);
            return NOTHING_SURVEYED;
        }
        return arguments.score() ? new FolderScore(folder, target, arguments, terminal).run()
                : new FolderSurvey(folder, target, arguments, terminal, settings).run();
    }

    private static int demonstrate(Terminal terminal, ReportSettings settings, Arguments arguments)
            throws Arguments.WrongUse, IOException {
        Path target = arguments.target(Path.of(DemoMachine.FOLDER));
        return DemoMachine.unpacked(unpacked ->
                new FolderSurvey(unpacked, target, arguments, terminal, settings).run());
    }
}
