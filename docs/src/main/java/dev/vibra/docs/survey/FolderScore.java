package dev.vibra.docs.survey;

import dev.vibra.docs.survey.input.LabelsFile;
import dev.vibra.docs.survey.input.LabelsReading;
import dev.vibra.docs.survey.input.MachineFile;
import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.docs.survey.output.Digest;
import dev.vibra.docs.survey.output.HtmlReport;
import dev.vibra.docs.survey.output.ReportSettings;
import dev.vibra.docs.survey.output.OutputFolder;
import dev.vibra.docs.survey.output.OutputSet;
import dev.vibra.docs.survey.output.ScoreFiles;
import dev.vibra.docs.survey.output.ScoreRecord;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.point.PointSurvey;
import dev.vibra.score.NotScored;
import dev.vibra.score.Scorecard;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Surveys all labelled machine folders in and below one and holds the findings against the labels. */
final class FolderScore {
    private final Path folder;
    private final Path target;
    private final boolean insist;
    private final int threads;
    private final Terminal terminal;
    private final List<Problem> problems = new ArrayList<>();
    private final Set<String> files = new LinkedHashSet<>();
    private Scorecard card = Scorecard.empty();
    private boolean refused;

    FolderScore(Path folder, Path target, Arguments arguments, Terminal terminal) {
        this.folder = folder;
        this.target = target;
        this.insist = arguments.insist();
        this.threads = arguments.threads();
        this.terminal = terminal;
    }

    /** Returns the exit code. */
    int run() throws IOException {
        OutputFolder.check(target, OutputSet.SCORE, List.of());
        List<Path> machines = machines();
        for (Path machine : machines) {
            terminal.progress(machines.indexOf(machine) + 1, machines.size(), name(machine));
            score(machine);
        }
        terminal.endProgress(machines.size());
        if (card.rows().isEmpty()) {
            return nothing(machines);
        }
        String run = Digest.ofRun(folder, files, insist ? "--score --insist" : "--score");
        ScoreRecord record = new ScoreRecord(card, problems, run);
        OutputFolder.write(target, OutputSet.SCORE, ScoreFiles.of(record),
                files.stream().map(folder::resolve).toList());
        terminal.print(ScoreFiles.summary(record) + "\nWritten to " + target.toAbsolutePath().normalize() + ": "
                + String.join(", ", ScoreFiles.JSON, ScoreFiles.CSV) + "\n");
        return problems.isEmpty() && !refused ? SurveyCommand.SURVEYED : SurveyCommand.PARTS_LEFT_OUT;
    }

    private int nothing(List<Path> machines) {
        problems.forEach(problem -> terminal.complain(problem.toString()));
        card.notScored().forEach(one -> terminal.complain(one.toString()));
        terminal.complain(machines.isEmpty() ? "No folder with " + MachineFile.NAME + " is in or below " + folder
                : "No point with a label could be surveyed; nothing was written.");
        return SurveyCommand.NOTHING_SURVEYED;
    }

    private List<Path> machines() throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(path -> path.endsWith(MachineFile.NAME) && Files.isRegularFile(path))
                    .map(Path::getParent).sorted().toList();
        } catch (UncheckedIOException e) {
            throw e.getCause(); // A folder that may not be read.
        }
    }

    /** Path from the folder asked for, with the same separator on every system. */
    private String name(Path machine) {
        String name = folder.relativize(machine).toString().replace(machine.getFileSystem().getSeparator(), "/");
        return name.isEmpty() ? "." : name;
    }

    /** One machine that fails is a note, never a stop. */
    private void score(Path machine) throws IOException {
        String name = name(machine);
        MachineReading reading = MachineFile.in(machine);
        List<String> points = reading.machine().map(MachineDescription::points).orElse(List.of()).stream()
                .map(MeasuringPoint::id).toList();
        Optional<LabelsReading> labels = LabelsFile.in(machine, points);
        files.add(name + "/" + MachineFile.NAME);
        if (labels.isEmpty()) {
            card = card.without(new NotScored(name, List.of(), "there is no " + LabelsFile.NAME));
            return;
        }
        files.add(name + "/" + LabelsFile.NAME);
        reading.sources().values().forEach(source -> source.files().forEach(file -> files.add(name + "/" + file)));
        note(name, reading.problems());
        if (reading.machine().isEmpty()) {
            card = card.without(new NotScored(name, List.of(), reading.problems().get(0).toString()));
            return;
        }
        note(name, labels.get().problems());
        survey(name, machine, reading, labels.get());
    }

    private void survey(String name, Path machine, MachineReading reading, LabelsReading labels)
            throws IOException {
        FolderPoints inside = new FolderPoints(machine, reading, insist, threads);
        try (HtmlReport none = new HtmlReport(ReportSettings.standard().withoutFigures())) {
            List<PointSurvey> points = inside.survey(terminal, none);
            refused |= points.stream().anyMatch(point -> point.refused()
                    && labels.labels().containsKey(point.point().id()));
            card = card.with(name, inside.conclude(points), labels.labels());
        } catch (RuntimeException e) {
            String reason = "error of the program, please report it: " + e.getMessage();
            card = card.without(new NotScored(name, List.of(), reason));
            problems.add(new Problem(name, 0, "", "is left out: " + reason));
        }
        note(name, inside.problems());
    }

    private void note(String name, List<Problem> found) {
        found.forEach(one -> problems.add(new Problem(name + "/" + one.file(), one.line(), one.field(), one.text())));
    }
}
