package dev.vibra.docs.survey;

import dev.vibra.docs.survey.input.MachineFile;
import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.docs.survey.output.HtmlReport;
import dev.vibra.docs.survey.output.OutputFolder;
import dev.vibra.docs.survey.output.ReportFiles;
import dev.vibra.docs.survey.output.Summary;
import dev.vibra.io.RecordingFileException;
import dev.vibra.io.Recordings;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.PointSurvey;
import dev.vibra.survey.Survey;
import dev.vibra.survey.machine.MachineDescription;
import dev.vibra.survey.machine.MeasuringPoint;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Surveys one folder: reads point after point, keeps the numbers, draws the figures, writes everything at the end. */
final class FolderSurvey {
    private final Path folder;
    private final Path target;
    private final boolean insist;
    private final Terminal terminal;
    private final List<Problem> problems = new ArrayList<>();

    FolderSurvey(Path folder, Path target, boolean insist, Terminal terminal) {
        this.folder = folder;
        this.target = target;
        this.insist = insist;
        this.terminal = terminal;
    }

    /** Returns the exit code. */
    int run() throws IOException {
        MachineReading reading = MachineFile.in(folder);
        problems.addAll(reading.problems());
        if (reading.machine().isEmpty()) {
            return nothing();
        }
        MachineDescription machine = reading.machine().get();
        HtmlReport report = new HtmlReport();
        Survey survey = insist ? Survey.begin(machine).insisting() : Survey.begin(machine);
        List<PointSurvey> points = survey(survey, machine.points(), report);
        if (points.stream().allMatch(point -> point.recording().isEmpty())) {
            return nothing();
        }
        MachineSurvey result = survey.conclude(points);
        result.balancing().filter(job -> job.corrections().isEmpty()).ifPresent(job -> problems.add(new Problem(
                MachineFile.NAME, 0, "balancing", "is left out: " + job.omissions().get(0).reason())));
        OutputFolder.write(target, ReportFiles.of(result, report, problems));
        problems.addAll(report.problems());
        terminal.print(Summary.of(result, problems) + "\n" + "Written to " + target.toAbsolutePath().normalize() + ": "
                + String.join(", ", ReportFiles.REPORT, ReportFiles.JSON, ReportFiles.CSV) + "\n");
        return problems.isEmpty() ? SurveyCommand.SURVEYED : SurveyCommand.PARTS_LEFT_OUT;
    }

    private int nothing() {
        problems.forEach(problem -> terminal.complain(problem.toString()));
        terminal.complain("Nothing could be surveyed; nothing was written.");
        return SurveyCommand.NOTHING_SURVEYED;
    }

    private List<PointSurvey> survey(Survey survey, List<MeasuringPoint> points, HtmlReport report) {
        List<PointSurvey> results = new ArrayList<>();
        for (MeasuringPoint point : points) {
            terminal.progress(results.size() + 1, points.size(), point.id());
            PointSurvey result = survey(survey, point);
            report.draw(result);
            results.add(result.withoutTraces());
        }
        terminal.endProgress(points.size());
        return results;
    }

    private PointSurvey survey(Survey survey, MeasuringPoint point) {
        try {
            return survey.point(point, recording(point), tachometer(point));
        } catch (RecordingFileException | IllegalArgumentException e) {
            // The message of a recording begins with the name of its file.
            String file = Path.of(point.recording()).getFileName() + ": ";
            return leftOut(survey, point,
                    e.getMessage().startsWith(file) ? e.getMessage().substring(file.length()) : e.getMessage());
        } catch (OutOfMemoryError e) {
            return leftOut(survey, point, "is too large for the memory of this process (java -Xmx... gives more)");
        }
    }

    private PointSurvey leftOut(Survey survey, MeasuringPoint point, String text) {
        problems.add(new Problem(point.recording(), 0, "", "point " + point.id() + " is left out: " + text));
        return survey.withoutRecording(point, point.recording() + ": " + text);
    }

    private Waveform recording(MeasuringPoint point) {
        return read(point, point.recording(), point.scale());
    }

    /** A tachometer that can't be read leaves out the tachometer, not the point. */
    private Waveform tachometer(MeasuringPoint point) {
        if (point.tachometer().isEmpty()) {
            return null;
        }
        String name = point.tachometer().get().recording();
        try {
            return read(point, name, 1);
        } catch (RecordingFileException | IllegalArgumentException e) {
            problems.add(new Problem(name, 0, "", "tachometer of point " + point.id() + " is left out: "
                    + e.getMessage()));
            return null;
        }
    }

    /** The unit of a tachometer's pulses doesn't matter; that of the point stands in for it. */
    private Waveform read(MeasuringPoint point, String name, double scale) {
        Path file = folder.resolve(name);
        if (!Files.isRegularFile(file)) {
            throw new IllegalArgumentException("is not in the survey folder or no file");
        }
        return point.sampleRateHertz().isPresent()
                ? Recordings.readColumn(file, point.unit(), scale, point.sampleRateHertz().get())
                : Recordings.read(file, point.unit(), scale);
    }
}
