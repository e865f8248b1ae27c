package dev.vibra.docs.survey;

import dev.vibra.docs.survey.input.MachineFile;
import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.docs.survey.input.RecordingSource;
import dev.vibra.docs.survey.input.UnreadableRecordingException;
import dev.vibra.docs.survey.output.Digest;
import dev.vibra.docs.survey.output.HtmlReport;
import dev.vibra.docs.survey.output.OutputFolder;
import dev.vibra.docs.survey.output.ReportFiles;
import dev.vibra.docs.survey.output.Summary;
import dev.vibra.docs.survey.output.SurveyRecord;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.point.PointSurvey;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Survey;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Surveys one folder: reads point after point, keeps the numbers, draws the figures, writes everything at the end. */
final class FolderSurvey {
    private final Path folder;
    private final Path target;
    private final boolean insist;
    private final Terminal terminal;
    private final List<Problem> problems = new ArrayList<>();
    private final Map<String, String> conversions = new LinkedHashMap<>();
    private final HtmlReport report = new HtmlReport();

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
        Survey survey = Survey.begin(reading.machine().get());
        survey = insist ? survey.insisting() : survey;
        List<PointSurvey> points = survey(survey, reading);
        if (points.stream().allMatch(point -> point.recording().isEmpty())) {
            return nothing();
        }
        MachineSurvey result = survey.conclude(points);
        result.balancing().filter(job -> job.corrections().isEmpty()).ifPresent(job -> problems.add(new Problem(
                MachineFile.NAME, 0, "balancing", "is left out: " + job.omissions().get(0).reason())));
        SurveyRecord record = new SurveyRecord(result, reading, conversions, problems, digest(reading));
        OutputFolder.write(target, ReportFiles.of(record, report));
        problems.addAll(report.problems());
        terminal.print(Summary.of(record) + "\n" + "Written to " + target.toAbsolutePath().normalize() + ": "
                + String.join(", ", ReportFiles.REPORT, ReportFiles.JSON, ReportFiles.CSV) + "\n");
        boolean whole = problems.isEmpty() && points.stream().noneMatch(PointSurvey::refused);
        return whole ? SurveyCommand.SURVEYED : SurveyCommand.PARTS_LEFT_OUT;
    }

    private int nothing() {
        problems.forEach(problem -> terminal.complain(problem.toString()));
        terminal.complain("Nothing could be surveyed; nothing was written.");
        return SurveyCommand.NOTHING_SURVEYED;
    }

    private String digest(MachineReading reading) {
        Set<String> files = new LinkedHashSet<>(List.of(MachineFile.NAME));
        reading.sources().values().forEach(source -> files.addAll(source.files()));
        files.addAll(reading.earlier());
        return Digest.ofRun(folder, files, insist ? "--insist" : "");
    }

    private List<PointSurvey> survey(Survey survey, MachineReading reading) {
        List<MeasuringPoint> points = reading.machine().orElseThrow().points();
        List<PointSurvey> results = new ArrayList<>();
        for (MeasuringPoint point : points) {
            terminal.progress(results.size() + 1, points.size(), point.id());
            PointSurvey result = survey(survey, point, reading.sources().get(point.id()));
            report.draw(result);
            results.add(result.withoutTraces());
        }
        terminal.endProgress(points.size());
        return results;
    }

    private PointSurvey survey(Survey survey, MeasuringPoint point, RecordingSource source) {
        try {
            RecordingSource.Recorded recorded = source.read(folder);
            conversions.put(point.id(), recorded.conversion());
            return survey.point(point, recorded.signal(), tachometer(point, source));
        } catch (UnreadableRecordingException e) {
            return leftOut(point, source, e.getMessage());
        } catch (OutOfMemoryError e) {
            return leftOut(point, source, "is too large for the memory of this process (java -Xmx... gives more)");
        }
    }

    private PointSurvey leftOut(MeasuringPoint point, RecordingSource source, String text) {
        String file = source.channel().file();
        problems.add(new Problem(file, 0, "", "point " + point.id() + " is left out: " + text));
        return PointSurvey.withoutRecording(point, file + ": " + text);
    }

    /** A tachometer that can't be read leaves out the tachometer, not the point. */
    private Optional<Waveform> tachometer(MeasuringPoint point, RecordingSource source) {
        try {
            return source.readTachometer(folder);
        } catch (UnreadableRecordingException e) {
            problems.add(new Problem(source.tachometer().orElseThrow().channel().file(), 0, "",
                    "tachometer of point " + point.id() + " is left out: " + e.getMessage()));
            return Optional.empty();
        }
    }
}
