package dev.vibra.docs.survey;

import dev.vibra.docs.notebook.StartUpFile;
import dev.vibra.docs.survey.input.FileTrouble;
import dev.vibra.docs.survey.output.Digest;
import dev.vibra.docs.survey.output.Export;
import dev.vibra.docs.survey.output.Phrases;
import dev.vibra.docs.survey.output.ReportSettings;
import dev.vibra.docs.survey.output.ShownUnits;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What the command was asked for.
 *
 * @param folder survey folder; empty for the demonstration machine
 * @param out folder to write to; empty for the folder beside the survey folder
 * @param insist true if unsound recordings shall be judged too
 * @param score true if labelled folders below the folder shall be scored
 * @param threads points worked out at a time
 * @param everyFigure true if the figures of all points shall hold all their values
 * @param words file with the texts of the report in another language, if there is one
 * @param units units in which people read the results, if they are chosen
 * @param export what is written into files of its own
 * @param printed text that is to be printed, and nothing else done
 */
record Arguments(Optional<Path> folder, Optional<Path> out, boolean insist, boolean score,
        int threads, boolean everyFigure, Optional<Path> words, Optional<ShownUnits> units,
        Set<Export.Kind> export, Optional<String> printed) {
    static final String USAGE = """
            Usage: java -jar vibra-survey.jar [FOLDER] [OPTIONS]
                   java -jar vibra-survey.jar --score FOLDER [OPTIONS]
                   java -jar vibra-survey.jar --meter FILE --unit UNIT [OPTIONS]
                   java -jar vibra-survey.jar --jshell

              FOLDER     survey folder with machine.json and its recordings;
                         without it the demonstration machine is surveyed
              --out OUT  folder for report.html, results.json and results.csv;
                         without it they go to the folder FOLDER-survey beside FOLDER
              --figures all
                         keep every value behind the figures of all points, not only of
                         those that need a look; makes a larger report
              --words FILE
                         texts of the report in another language, a properties file in
                         UTF-8 with the keys of the English one
              --units imperial
                         show summary and report in in/s rms, mil and g, or with metric in
                         mm/s, um and m/s2 whatever machine.json says; files for programs
                         are always metric
              --export KINDS
                         write what is shown into files too, of the kinds csv, png, svg with
                         commas between: each waveform and spectrum into the folder traces,
                         each figure into the folder figures, beside report.html
              --insist   judge recordings that are not sound too, and say so
              --threads N
                         points worked out at a time, 1 to 64; the results don't depend on
                         it; without it one for each processor and each 256 MB of memory
                         that the process may take, 4 at most
              --score    survey every folder with machine.json in FOLDER and below, hold the
                         findings against its labels.json, and write scorecard.json and
                         scorecard.csv only, without --out to FOLDER-score beside FOLDER
              --meter    show levels of one recording, or of raw samples on standard input, each
                         interval on a line; --meter --help prints its options
              --jshell   print a start-up file for JShell, which says how it is used
              --help     print this text

            Exit code: 0 surveyed, whatever the verdict; 1 surveyed with parts left out;
            2 nothing could be surveyed; 64 wrong use of the command
            """;

    private static final String NUMBER = "a whole number from 1 to " + Crew.MOST;

    /** The command was used in a way that it doesn't know. */
    static final class WrongUse extends Exception {
        private static final long serialVersionUID = 1;

        WrongUse(String message) {
            super(message);
        }
    }

    static Arguments parse(String... args) throws WrongUse {
        Path folder = null;
        Path out = null;
        boolean insist = false;
        boolean score = false;
        boolean everyFigure = false;
        Path words = null;
        ShownUnits units = null;
        Set<Export.Kind> export = null;
        String threads = null;
        for (int i = 0; i < args.length; i++) {
            switch (args[i]) {
                case "--help", "-h" -> {
                    return printing(USAGE);
                }
                case "--jshell" -> {
                    if (args.length > 1) {
                        throw new WrongUse("--jshell stands alone");
                    }
                    return printing(StartUpFile.text());
                }
                case "--insist" -> insist = true;
                case "--score" -> score = true;
                case "--out" -> {
                    requireFirst("--out", out);
                    out = path(following(args, i++, "a folder"));
                }
                case "--figures" -> {
                    if (!following(args, i++, "the word all").equals("all")) {
                        throw new WrongUse("--figures needs the word all: " + args[i]);
                    }
                    everyFigure = true;
                }
                case "--words" -> {
                    requireFirst("--words", words);
                    words = path(following(args, i++, "a file"));
                }
                case "--units" -> {
                    requireFirst("--units", units);
                    String word = following(args, i++, "metric or imperial");
                    units = ShownUnits.named(word).orElseThrow(() -> new WrongUse("--units needs metric or imperial: "
                            + word));
                }
                case "--export" -> {
                    requireFirst("--export", export);
                    String kinds = following(args, i++, "csv, png, svg, or some of them with commas between");
                    export = Export.kinds(kinds).orElseThrow(() -> new WrongUse("--export needs csv, png, svg, or"
                            + " some of them with commas between: " + kinds));
                }
                case "--threads" -> {
                    requireFirst("--threads", threads);
                    threads = following(args, i++, NUMBER);
                }
                default -> {
                    if (args[i].startsWith("-")) {
                        throw new WrongUse("unknown option: " + args[i]);
                    }
                    requireFirst("FOLDER", folder);
                    folder = path(args[i]);
                }
            }
        }
        if (score && folder == null) {
            throw new WrongUse("--score needs a folder");
        }
        return new Arguments(Optional.ofNullable(folder), Optional.ofNullable(out), insist, score,
                threads == null ? Crew.usualThreads() : number(threads), everyFigure, Optional.ofNullable(words),
                Optional.ofNullable(units), export == null ? Set.of() : export, Optional.empty());
    }

    private static String following(String[] args, int at, String what) throws WrongUse {
        if (at + 1 == args.length) {
            throw new WrongUse(args[at] + " needs " + what);
        }
        return args[at + 1];
    }

    private static int number(String text) throws WrongUse {
        int number = text.matches("[0-9]{1,9}") ? Integer.parseInt(text) : 0;
        if (number < 1 || number > Crew.MOST) {
            throw new WrongUse("--threads needs " + NUMBER + ": " + text);
        }
        return number;
    }

    private static Arguments printing(String text) {
        return new Arguments(Optional.empty(), Optional.empty(), false, false, 1, false, Optional.empty(),
                Optional.empty(), Set.of(), Optional.of(text));
    }

    private static void requireFirst(String what, Object before) throws WrongUse {
        if (before != null) {
            throw new WrongUse(what + " may be given once only; it was given as " + before);
        }
    }

    private static Path path(String text) throws WrongUse {
        try {
            if (!text.isBlank()) {
                return Path.of(text);
            }
        } catch (InvalidPathException e) {
            // The message below says what was given.
        }
        throw new WrongUse("not the name of a file or folder: \"" + text + "\"");
    }

    /** How the report is to be written. */
    ReportSettings report() throws WrongUse {
        ReportSettings settings = everyFigure ? ReportSettings.standard().withEveryValue() : ReportSettings.standard();
        if (words.isEmpty()) {
            return settings;
        }
        try {
            return settings.in(Phrases.translated(words.get()));
        } catch (IOException e) {
            throw new WrongUse("--words: " + words.get() + ": " + FileTrouble.inWords(e));
        } catch (IllegalArgumentException e) {
            throw new WrongUse("--words: " + words.get() + ": " + e.getMessage());
        }
    }

    /** What the results depend on beside the folder. */
    String inWords() {
        List<String> options = new ArrayList<>();
        if (insist) {
            options.add("--insist");
        }
        if (everyFigure) {
            options.add("--figures all");
        }
        units.ifPresent(one -> options.add("--units " + one));
        words.ifPresent(file -> options.add("--words " + Digest.ofFile(file)));
        return String.join(" ", options);
    }

    /**
     * Returns the folder to write to: as asked for, else beside the survey folder, so that recordings stay as they are.
     */
    Path target(Path surveyed) throws WrongUse {
        if (out.isPresent()) {
            return out.get();
        }
        Path whole = surveyed.toAbsolutePath().normalize();
        if (whole.getFileName() == null) {
            throw new WrongUse("--out is needed: there is no place beside " + whole);
        }
        return whole.resolveSibling(whole.getFileName() + (score ? "-score" : "-survey"));
    }
}
