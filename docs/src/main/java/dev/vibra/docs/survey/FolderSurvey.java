package dev.vibra.docs.survey;

import dev.vibra.docs.survey.input.MachineFile;
import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.docs.survey.output.Digest;
import dev.vibra.docs.survey.output.HtmlReport;
import dev.vibra.docs.survey.output.OutputFolder;
import dev.vibra.docs.survey.output.OutputSet;
import dev.vibra.docs.survey.output.ReportFiles;
import dev.vibra.docs.survey.output.Summary;
import dev.vibra.docs.survey.output.SurveyRecord;
import dev.vibra.point.PointSurvey;
import dev.vibra.survey.MachineSurvey;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;

/**
 * Surveys one folder: keeps the numbers of its points, puts the figures aside, writes everything at the end.
 */
final class FolderSurvey {
    private final Path folder;
    private final Path target;
    private final boolean insist;
    private final int threads;
    private final Terminal terminal;
    private final Supplier<HtmlReport> reports;
    private final List<Problem> problems = new ArrayList<>();

    FolderSurvey(Path folder, Path target, Arguments arguments, Terminal terminal, Supplier<HtmlReport> reports) {
        this.folder = folder;
        this.target = target;
        this.insist = arguments.insist();
        this.threads = arguments.threads();
        this.terminal = terminal;
        this.reports = reports;
    }

    /** Returns the exit code. */
    int run() throws IOException {
        MachineReading reading = MachineFile.in(folder);
        problems.addAll(reading.problems());
        if (reading.machine().isEmpty()) {
            return nothing();
        }
        Set<String> files = files(reading);
        List<Path> inputs = files.stream().map(folder::resolve).toList();
        OutputFolder.check(target, OutputSet.SURVEY, inputs);
        FolderPoints inside = new FolderPoints(folder, reading, insist, threads);
        try (HtmlReport report = reports.get()) {
            List<PointSurvey> points = inside.survey(terminal, report);
            if (points.stream().allMatch(point -> point.recording().isEmpty())) {
                problems.addAll(inside.problems());
                return nothing();
            }
            MachineSurvey result = inside.conclude(points);
            problems.addAll(inside.problems());
            result.balancing().filter(job -> job.corrections().isEmpty()).ifPresent(job -> problems.add(new Problem(
                    MachineFile.NAME, 0, "balancing", "is left out: " + job.omissions().get(0).reason())));
            SurveyRecord record = new SurveyRecord(result, reading, inside.conversions(), problems,
                    Digest.ofRun(folder, files, insist ? "--insist" : ""));
            OutputFolder.write(target, OutputSet.SURVEY, ReportFiles.of(record, report), inputs);
            problems.addAll(report.problems());
            return written(record);
        }
    }

    private int written(SurveyRecord record) {
        terminal.print(Summary.of(record) + "\n" + "Written to " + target.toAbsolutePath().normalize() + ": "
                + String.join(", ", ReportFiles.REPORT, ReportFiles.JSON, ReportFiles.CSV) + "\n");
        boolean whole = problems.isEmpty() && record.survey().points().stream().noneMatch(PointSurvey::refused);
        return whole ? SurveyCommand.SURVEYED : SurveyCommand.PARTS_LEFT_OUT;
    }

    private int nothing() {
        problems.forEach(problem -> terminal.complain(problem.toString()));
        terminal.complain("Nothing could be surveyed; nothing was written.");
        return SurveyCommand.NOTHING_SURVEYED;
    }

    /** All files that the survey reads. */
    private static Set<String> files(MachineReading reading) {
        Set<String> files = new LinkedHashSet<>(List.of(MachineFile.NAME));
        reading.sources().values().forEach(source -> files.addAll(source.files()));
        files.addAll(reading.earlier());
        return files;
    }
}
