package dev.vibra.docs.survey;

import dev.vibra.docs.survey.input.MachineFile;
import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.docs.survey.output.Digest;
import dev.vibra.docs.survey.output.Export;
import dev.vibra.docs.survey.output.HtmlReport;
import dev.vibra.docs.survey.output.OutputFolder;
import dev.vibra.docs.survey.output.OutputSet;
import dev.vibra.docs.survey.output.ReportFiles;
import dev.vibra.docs.survey.output.ReportSettings;
import dev.vibra.docs.survey.output.ShownUnits;
import dev.vibra.docs.survey.output.Summary;
import dev.vibra.docs.survey.output.SurveyRecord;
import dev.vibra.history.MachineHistory;
import dev.vibra.point.PointSurvey;
import dev.vibra.speedrun.SpeedRun;
import dev.vibra.survey.MachineSurvey;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Surveys one folder: keeps the numbers of its points, puts the figures aside, writes everything at the end.
 */
final class FolderSurvey {
    private final Path folder;
    private final Path target;
    private final Terminal terminal;
    private final Arguments arguments;
    private final ReportSettings settings;
    private final List<Problem> problems = new ArrayList<>();

    FolderSurvey(Path folder, Path target, Arguments arguments, Terminal terminal, ReportSettings settings) {
        this.folder = folder;
        this.target = target;
        this.terminal = terminal;
        this.arguments = arguments;
        this.settings = settings;
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
        FolderPoints inside = new FolderPoints(folder, reading, arguments.insist(), arguments.threads());
        ShownUnits units = arguments.units().or(() -> reading.units().flatMap(ShownUnits::named))
                .orElse(ShownUnits.METRIC);
        try (HtmlReport report = new HtmlReport(settings.in(units));
                Export export = Export.begin(target, arguments.export(), reading.sources().keySet(), inputs)) {
            report.exportTo(export);
            List<PointSurvey> points = inside.survey(terminal, report);
            if (points.stream().allMatch(point -> point.recording().isEmpty())) {
                problems.addAll(inside.problems());
                return nothing();
            }
            FolderRuns runs = new FolderRuns(folder, reading, report);
            List<SpeedRun> followed = runs.follow();
            MachineSurvey result = inside.conclude(points);
            problems.addAll(inside.problems());
            problems.addAll(runs.problems());
            result.balancing().filter(job -> job.corrections().isEmpty()).ifPresent(job -> problems.add(new Problem(
                    MachineFile.NAME, 0, "balancing", "is left out: " + job.omissions().get(0).reason())));
            SurveyRecord record = new SurveyRecord(result, reading, inside.conversions(), problems,
                    Digest.ofRun(folder, files, arguments.inWords()), followed,
                    MachineHistory.of(result, reading.visits()));
            OutputFolder.write(target, OutputSet.SURVEY, ReportFiles.of(record, report), inputs);
            problems.addAll(report.problems());
            export.finish(record.run()).ifPresent(problems::add);
            return written(record, units, export);
        }
    }

    private int written(SurveyRecord record, ShownUnits units, Export export) {
        terminal.print(Summary.of(record, units) + "\n" + "Written to " + target.toAbsolutePath().normalize() + ": "
                + Stream.concat(Stream.of(ReportFiles.REPORT, ReportFiles.JSON, ReportFiles.CSV),
                        export.folders().stream()).collect(Collectors.joining(", ")) + "\n");
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
        reading.runs().forEach(run -> files.addAll(run.files()));
        files.addAll(reading.earlier());
        return files;
    }
}
