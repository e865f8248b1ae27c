package dev.vibra.docs.survey;

import dev.vibra.docs.survey.input.MachineFile;
import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.docs.survey.input.RecordingSource;
import dev.vibra.docs.survey.input.UnreadableRecordingException;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.point.PointSurvey;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Survey;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/** Reads and surveys one folder point after point; what can't be read is left out with its reason. */
final class FolderPoints {
    private final Path folder;
    private final MachineReading reading;
    private final boolean insist;
    private final Survey survey;
    private final List<Problem> problems = new ArrayList<>();
    private final Map<String, String> conversions = new LinkedHashMap<>();

    /** The reading must have a machine. */
    FolderPoints(Path folder, MachineReading reading, boolean insist) {
        this.folder = folder;
        this.reading = reading;
        this.insist = insist;
        this.survey = begin(reading.machine().orElseThrow());
    }

    private Survey begin(MachineDescription machine) {
        return insist ? Survey.begin(machine).insisting() : Survey.begin(machine);
    }

    /** Surveys all points; each is shown with its signals, which aren't kept. */
    List<PointSurvey> survey(Terminal terminal, Consumer<PointSurvey> show) {
        List<MeasuringPoint> points = reading.machine().orElseThrow().points();
        List<PointSurvey> results = new ArrayList<>();
        for (MeasuringPoint point : points) {
            terminal.progress(results.size() + 1, points.size(), point.id());
            PointSurvey result = survey(point, reading.sources().get(point.id()));
            show.accept(result);
            results.add(result.withoutTraces());
        }
        terminal.endProgress(points.size());
        return results;
    }

    /** Concludes; a balancing job that can't be worked out is left out, the rest isn't lost with it. */
    MachineSurvey conclude(List<PointSurvey> points) {
        MachineDescription machine = reading.machine().orElseThrow();
        try {
            return survey.conclude(points);
        } catch (RuntimeException e) {
            if (machine.balancing().isEmpty()) {
                throw e;
            }
            MachineSurvey rest = begin(machine.withoutBalancing()).conclude(points);
            problems.add(new Problem(MachineFile.NAME, 0, "balancing", "is left out, it " + unforeseen(e)));
            return rest;
        }
    }

    private static String unforeseen(RuntimeException e) {
        return "can't be worked out; this is an error of the program, please report it: " + e.getMessage();
    }

    /** What could not be read. */
    List<Problem> problems() {
        return problems;
    }

    /** How samples became values, by point. */
    Map<String, String> conversions() {
        return conversions;
    }

    private PointSurvey survey(MeasuringPoint point, RecordingSource source) {
        try {
            RecordingSource.Recorded recorded = source.read(folder);
            conversions.put(point.id(), recorded.conversion());
            PointSurvey result = survey.point(point, recorded.signal(), tachometer(point, source));
            return result.recording().isPresent() ? result
                    : leftOut(point, source, result.omissions().get(0).reason());
        } catch (UnreadableRecordingException e) {
            return leftOut(point, source, e.getMessage());
        } catch (OutOfMemoryError | StackOverflowError e) {
            return leftOut(point, source, "is too large for the memory of this process (java -Xmx... gives more)");
        } catch (RuntimeException e) {
            return leftOut(point, source, unforeseen(e));
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
