package dev.vibra.docs.survey;

import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.docs.survey.input.RecordingSource;
import dev.vibra.docs.survey.input.SpeedRunSource;
import dev.vibra.docs.survey.input.UnreadableRecordingException;
import dev.vibra.docs.survey.output.HtmlReport;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.speedrun.PointRun;
import dev.vibra.speedrun.ProbePairRun;
import dev.vibra.speedrun.SpeedRun;
import dev.vibra.speedrun.SpeedSweep;
import dev.vibra.speedrun.SweepReading;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Follows the run-ups and coast-downs of one folder: one recording at a time, two for a pair of probes; what can't be
 * read or followed is left out with its reason.
 */
final class FolderRuns {
    private final Path folder;
    private final List<SpeedRunSource> sources;
    private final HtmlReport report;
    private final List<Problem> problems = new ArrayList<>();

    FolderRuns(Path folder, MachineReading reading, HtmlReport report) {
        this.folder = folder;
        this.sources = reading.runs();
        this.report = report;
    }

    /** Follows all runs and draws their figures; signals aren't kept. */
    List<SpeedRun> follow() {
        return sources.stream().map(this::follow).toList();
    }

    /** What could not be read or followed. */
    List<Problem> problems() {
        return problems;
    }

    /** Something, or why it isn't there. */
    private record Got<T>(T value, String reason) {
        static <T> Got<T> of(Supplier<Got<T>> work) {
            try {
                return work.get();
            } catch (UnreadableRecordingException e) {
                return new Got<>(null, e.getMessage());
            } catch (OutOfMemoryError | StackOverflowError e) {
                return new Got<>(null, FolderPoints.TOO_LARGE);
            } catch (RuntimeException e) {
                return new Got<>(null, FolderPoints.unforeseen(e));
            }
        }

        static <T> Got<T> unless(Optional<String> obstacle, Supplier<T> work) {
            return obstacle.isPresent() ? new Got<>(null, obstacle.get()) : new Got<>(work.get(), "");
        }
    }

    private SpeedRun follow(SpeedRunSource source) {
        Got<SpeedSweep> sweep = Got.of(() -> {
            SweepReading reading = SpeedSweep.read(source.tachometer().readTachometer(folder).orElseThrow(),
                    source.tachometer().tachometer().orElseThrow().pulsesPerRevolution());
            return new Got<>(reading.sweep().orElse(null), reading.reason());
        });
        if (sweep.value == null) {
            problems.add(new Problem(source.tachometer().channel().file(), 0, "", "run " + source.id()
                    + " is left out: " + sweep.reason));
            return SpeedRun.without(source.id(), sweep.reason);
        }
        SpeedRun run = SpeedRun.of(source.id(), sweep.value);
        if (source.serviceRevolutionsPerMinute().isPresent()) {
            run = run.inService(RotationSpeed.ofRevolutionsPerMinute(source.serviceRevolutionsPerMinute().get()));
        }
        for (String id : source.points().keySet()) {
            run = withPoint(run, source, id);
        }
        for (SpeedRunSource.Pair pair : source.pairs()) {
            run = withPair(run, source, pair);
        }
        return run;
    }

    private SpeedRun withPoint(SpeedRun run, SpeedRunSource source, String id) {
        RecordingSource recording = source.points().get(id);
        SpeedSweep sweep = run.sweep().orElseThrow();
        double[] orders = source.orders().stream().mapToDouble(Double::doubleValue).toArray();
        Got<PointRun> got = Got.of(() -> {
            Waveform wave = recording.read(folder).signal();
            return Got.unless(PointRun.obstacle(wave, sweep), () -> orders.length == 0 ? PointRun.of(id, wave, sweep)
                    : PointRun.of(id, wave, sweep, orders));
        });
        if (got.value == null) {
            return without(run, recording, id, "point " + id, got.reason);
        }
        report.add(report.draw(run, got.value));
        return run.with(got.value.withoutCascade());
    }

    private SpeedRun withPair(SpeedRun run, SpeedRunSource source, SpeedRunSource.Pair pair) {
        RecordingSource recording = source.points().get(pair.x());
        Optional<PointRun> x = run.points().stream().filter(point -> point.id().equals(pair.x())).findFirst();
        Optional<PointRun> y = run.points().stream().filter(point -> point.id().equals(pair.y())).findFirst();
        if (x.isEmpty() || y.isEmpty()) {
            return run.leaving(pair.id(), "one of its probes is left out"); // which is told already
        }
        if (x.get().order(1).isEmpty() || y.get().order(1).isEmpty()) {
            return without(run, recording, pair.id(), "pair " + pair.id(), "order 1 isn't followed");
        }
        Got<ProbePairRun> got = Got.of(() -> {
            Waveform alongX = recording.read(folder).signal();
            Waveform alongY = source.points().get(pair.y()).read(folder).signal();
            return Got.unless(ProbePairRun.obstacle(alongX, alongY, pair.probes()), () -> ProbePairRun.of(pair.id(),
                    alongX, alongY, x.get(), y.get(), pair.probes()));
        });
        if (got.value == null) {
            return without(run, recording, pair.id(), "pair " + pair.id(), got.reason);
        }
        report.add(report.draw(run, got.value));
        return run.with(got.value);
    }

    private SpeedRun without(SpeedRun run, RecordingSource recording, String part, String named, String reason) {
        problems.add(new Problem(recording.channel().file(), 0, "", named + " of run " + run.id() + " is left out: "
                + reason));
        return run.leaving(part, reason);
    }
}
