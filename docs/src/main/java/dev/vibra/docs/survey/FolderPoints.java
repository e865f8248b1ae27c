package dev.vibra.docs.survey;

import dev.vibra.docs.survey.input.MachineFile;
import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.docs.survey.input.RecordingSource;
import dev.vibra.docs.survey.input.UnreadableRecordingException;
import dev.vibra.docs.survey.output.HtmlReport;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.point.PointSurvey;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Survey;
import java.io.InterruptedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads and surveys the points of one folder; what can't be read is left out with its reason. */
final class FolderPoints {
    static final String TOO_LARGE = "is too large for the memory of this process (java -Xmx... gives more)";

    private final Path folder;
    private final MachineReading reading;
    private final boolean insist;
    private final int threads;
    private final Survey survey;
    private final List<PointSurvey> references = new ArrayList<>();
    private final List<Problem> problems = new ArrayList<>();
    private final Map<String, String> conversions = new LinkedHashMap<>();

    /** The reading must have a machine. */
    FolderPoints(Path folder, MachineReading reading, boolean insist, int threads) {
        this.folder = folder;
        this.reading = reading;
        this.insist = insist;
        this.threads = threads;
        this.survey = begin(reading.machine().orElseThrow());
    }

    private Survey begin(MachineDescription machine) {
        return insist ? Survey.begin(machine).insisting() : Survey.begin(machine);
    }

    /**
     * What came of one point.
     *
     * @param result numbers and verdict, without the signals
     * @param reference numbers of its reference, without the signals, if there is one
     * @param conversion how samples became values, if they were read
     * @param problems what could not be read
     * @param drawing figures of the point
     * @param starved true if there was not enough memory for all of it
     */
    private record Outcome(PointSurvey result, Optional<PointSurvey> reference, Optional<String> conversion,
            List<Problem> problems, HtmlReport.Drawing drawing, boolean starved) {}

    /** Surveys all points and draws their figures; signals aren't kept. */
    List<PointSurvey> survey(Terminal terminal, HtmlReport report) throws InterruptedIOException {
        List<MeasuringPoint> points = reading.machine().orElseThrow().points();
        List<PointSurvey> results = new ArrayList<>();
        new Crew<>(threads, Outcome::starved).work(points, point -> new PointWork(point).outcome(report),
                point -> terminal.progress(results.size() + 1, points.size(), point.id()),
                outcome -> {
                    outcome.conversion().ifPresent(words -> conversions.put(outcome.result().point().id(), words));
                    outcome.reference().ifPresent(references::add);
                    problems.addAll(outcome.problems());
                    report.add(outcome.drawing());
                    results.add(outcome.result());
                });
        terminal.endProgress(points.size());
        return results;
    }

    /** Concludes; a balancing job that can't be worked out is left out, the rest isn't lost with it. */
    MachineSurvey conclude(List<PointSurvey> points) {
        MachineDescription machine = reading.machine().orElseThrow();
        try {
            return survey.conclude(points, references);
        } catch (RuntimeException e) {
            if (machine.balancing().isEmpty()) {
                throw e;
            }
            MachineSurvey rest = begin(machine.withoutBalancing()).conclude(points, references);
            problems.add(new Problem(MachineFile.NAME, 0, "balancing", "is left out, it " + unforeseen(e)));
            return rest;
        }
    }

    static String unforeseen(RuntimeException e) {
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

    /** The work on one point, which touches nothing but that. */
    private final class PointWork {
        private final MeasuringPoint point;
        private final RecordingSource source;
        private final List<Problem> found = new ArrayList<>();
        private Optional<String> conversion = Optional.empty();
        private boolean starved;

        PointWork(MeasuringPoint point) {
            this.point = point;
            this.source = reading.sources().get(point.id());
        }

        Outcome outcome(HtmlReport report) {
            PointSurvey result = survey();
            Optional<PointSurvey> reference = reference().map(PointSurvey::withoutTraces);
            HtmlReport.Drawing drawing = report.draw(result);
            return new Outcome(result.withoutTraces(), reference, conversion, found, drawing,
                    starved || drawing.starved());
        }

        private PointSurvey survey() {
            try {
                RecordingSource.Recorded recorded = source.read(folder);
                conversion = Optional.of(recorded.conversion());
                PointSurvey result = survey.point(point, recorded.signal(), tachometer());
                return result.recording().isPresent() ? result : leftOut(result.omissions().get(0).reason());
            } catch (UnreadableRecordingException e) {
                return leftOut(e.getMessage());
            } catch (OutOfMemoryError | StackOverflowError e) {
                starved = true;
                return leftOut(TOO_LARGE);
            } catch (RuntimeException e) {
                return leftOut(unforeseen(e));
            }
        }

        private PointSurvey leftOut(String text) {
            String file = source.channel().file();
            found.add(new Problem(file, 0, "", "point " + point.id() + " is left out: " + text));
            return PointSurvey.withoutRecording(point, file + ": " + text);
        }

        /** A reference that can't be read leaves out the reference, not the point. */
        private Optional<PointSurvey> reference() {
            try {
                return source.readReference(folder).map(read -> survey.reference(point, read.signal()));
            } catch (UnreadableRecordingException e) {
                return withoutReference(e.getMessage());
            } catch (OutOfMemoryError | StackOverflowError e) {
                starved = true;
                return withoutReference(TOO_LARGE);
            } catch (RuntimeException e) {
                return withoutReference(unforeseen(e));
            }
        }

        private Optional<PointSurvey> withoutReference(String text) {
            found.add(new Problem(source.reference().orElseThrow().channel().file(), 0, "",
                    "reference of point " + point.id() + " is left out: " + text));
            return Optional.empty();
        }

        /** A tachometer that can't be read leaves out the tachometer, not the point. */
        private Optional<Waveform> tachometer() {
            try {
                return source.readTachometer(folder);
            } catch (UnreadableRecordingException e) {
                found.add(new Problem(source.tachometer().orElseThrow().channel().file(), 0, "",
                        "tachometer of point " + point.id() + " is left out: " + e.getMessage()));
                return Optional.empty();
            }
        }
    }
}
