package dev.vibra.point;

import dev.vibra.bearing.proportion.UnknownBearing;
import dev.vibra.descriptor.Description;
import dev.vibra.descriptor.Descriptors;
import dev.vibra.descriptor.DominantLine;
import dev.vibra.descriptor.NamedLine;
import dev.vibra.internal.Require;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.machine.Rate;
import dev.vibra.severity.Measurement;
import dev.vibra.severity.Verdict;
import dev.vibra.severity.Zone;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** Everything that was worked out for one measuring point, and what was not, with the reason. Immutable. */
public final class PointSurvey implements Serializable {
    private static final long serialVersionUID = 5;

    private final MeasuringPoint point;
    private final RecordingSummary recording;
    private final SpeedFound speed;
    private final Numbers numbers;
    private final Judged judged;
    private final Heard heard;
    private final boolean insisted;
    private final List<Omission> omissions;
    private final LinePattern pattern;
    private final Traces traces;

    /** Recording and traces are null where there are none. */
    PointSurvey(MeasuringPoint point, RecordingSummary recording, SpeedFound speed, Numbers numbers,
            Judged judged, Heard heard, boolean insisted, List<Omission> omissions, LinePattern pattern,
            Traces traces) {
        this.point = Objects.requireNonNull(point, "point");
        this.recording = recording;
        this.speed = Objects.requireNonNull(speed, "speed");
        this.numbers = Objects.requireNonNull(numbers, "numbers");
        this.judged = Objects.requireNonNull(judged, "judged");
        this.heard = Objects.requireNonNull(heard, "heard");
        this.insisted = insisted;
        this.omissions = Require.copy("omissions", omissions);
        this.pattern = Objects.requireNonNull(pattern, "pattern");
        this.traces = traces;
    }

    private Object readResolve() {
        return new PointSurvey(point, recording, speed, numbers, judged, heard, insisted, omissions, pattern, traces);
    }

    /** What the signals of the point say; impulsiveness is null where it isn't known. */
    record Numbers(Description description, List<NamedLine> lines, List<DominantLine> dominant,
            Impulsiveness impulsiveness, boolean turning) implements Serializable {
        Numbers {
            Objects.requireNonNull(description, "description");
            lines = Require.copy("lines", lines);
            dominant = Require.copy("dominant", dominant);
        }

        /** No number, and the reason at every name. */
        static Numbers none(String reason) {
            return new Numbers(Descriptors.standard().none(reason), List.of(), List.of(), null, false);
        }
    }

    /** What the criterion says of the point; the verdict is null where there is none. */
    record Judged(List<Measurement> measurements, Verdict verdict, List<ChangeSurvey> changes)
            implements Serializable {
        Judged {
            measurements = Require.copy("measurements", measurements);
            changes = Require.copy("changes", changes);
        }

        static final Judged NONE = new Judged(List.of(), null, List.of());
    }

    /** What the envelopes say; what they say of a bearing that isn't described is null where it wasn't asked. */
    record Heard(List<BearingSurvey> bearings, UnknownBearing unknown) implements Serializable {
        Heard {
            bearings = Require.copy("bearings", bearings);
        }

        static final Heard NOTHING = new Heard(List.of(), null);
    }

    /** A point of which nothing could be worked out; the recording is null where there is none. */
    static PointSurvey without(MeasuringPoint point, RecordingSummary recording, SpeedFound speed,
            List<Omission> omissions, Traces traces, String reason) {
        return new PointSurvey(point, recording, speed, Numbers.none(reason), Judged.NONE, Heard.NOTHING, false, omissions,
                LinePattern.none(reason), traces);
    }

    /**
     * Notes a point whose recording is missing or can't be read.
     *
     * @param point the point
     * @param reason why there is no recording, without full stop
     * @return a survey that says so
     */
    public static PointSurvey withoutRecording(MeasuringPoint point, String reason) {
        return without(point, null, SpeedFound.notDetermined("there is no recording"),
                List.of(Omission.of(Omission.Subject.RECORDING, reason)), null, reason);
    }

    /**
     * Drops signals and envelope spectra, which are much larger than the numbers.
     *
     * @return the same without {@link #traces()} and spectra of bearings
     */
    public PointSurvey withoutTraces() {
        Heard findings = new Heard(heard.bearings().stream().map(BearingSurvey::withoutSpectrum).toList(),
                heard.unknown());
        return new PointSurvey(point, recording, speed, numbers, judged, findings, insisted, omissions, pattern,
                null);
    }

    /** {@return the point} */
    public MeasuringPoint point() {
        return point;
    }

    /** {@return size and soundness of the recording; empty if there is none} */
    public Optional<RecordingSummary> recording() {
        return Optional.ofNullable(recording);
    }

    /** {@return duration of the recording in s; empty if there is none} */
    public OptionalDouble durationSeconds() {
        return recording == null ? OptionalDouble.empty()
                : OptionalDouble.of(recording.samples() / recording.sampleRateHertz());
    }

    /** {@return true if there is a recording and nothing disqualifies it} */
    public boolean sound() {
        return recording != null && recording.quality().sound();
    }

    /** {@return true if something was not concluded since the recording is missing or not good for it} */
    public boolean refused() {
        return recording == null || !insisted && !recording.refused().isEmpty();
    }

    /** {@return true if numbers and verdict were insisted on, although the recording is not sound} */
    public boolean insisted() {
        return insisted;
    }

    /** {@return true if the level was steady in a part of the recording only, and numbers are taken from that} */
    public boolean partlySteady() {
        return recording != null && recording.partlySteady();
    }

    /** {@return speed of the point's shaft and where it is known from} */
    public SpeedFound speed() {
        return speed;
    }

    /** {@return numbers under stable names, and reasons for those that are missing: each name of the table has one} */
    public Description description() {
        return numbers.description();
    }

    /** {@return multiples of the machine's rates, found or not, each with level and significance} */
    public List<NamedLine> lines() {
        return numbers.lines();
    }

    /**
     * Finds the line at a multiple of the speed of the point's shaft.
     *
     * @param order multiple, 1 to 10
     * @return the line, if it stands out of the noise
     */
    public Optional<NamedLine> shaftLine(int order) {
        return lines().stream().filter(line -> line.rate().kind() == Rate.Kind.SHAFT
                && line.rate().owner().equals(Rate.Kind.SHAFT.toString()) && line.order() == order)
                .filter(NamedLine::stands).findFirst();
    }

    /** {@return the largest lines of the velocity spectrum, the largest first} */
    public List<DominantLine> dominantLines() {
        return numbers.dominant();
    }

    /** {@return how far the acceleration consists of knocks, if acceleration was recorded} */
    public Optional<Impulsiveness> impulsiveness() {
        return Optional.ofNullable(numbers.impulsiveness());
    }

    /**
     * {@return true if a line or a family of a rate of the machine's own, or a defect of its bearing, shows that it
     * turned}
     */
    public boolean showsRotation() {
        return numbers.turning();
    }

    /** {@return levels measured for the criterion, judged or not} */
    public List<Measurement> measurements() {
        return judged.measurements();
    }

    /** {@return the verdict by the criterion of the point's part, if there is one} */
    public Optional<Verdict> severity() {
        return Optional.ofNullable(judged.verdict());
    }

    /** {@return the zone of the point; empty without verdict, and where a missing fact leaves it open} */
    public Optional<Zone> zone() {
        return severity().flatMap(Verdict::zone);
    }

    /** {@return changes against the baseline} */
    public List<ChangeSurvey> changes() {
        return judged.changes();
    }

    /** {@return what the recording says about the bearing at the point} */
    public List<BearingSurvey> bearings() {
        return heard.bearings();
    }

    /** {@return pulsations of the recording and the bearings that would explain them, where no bearing is described} */
    public Optional<UnknownBearing> unknownBearing() {
        return Optional.ofNullable(heard.unknown());
    }

    /** {@return true if an element of the bearing at the point shows a defect} */
    public boolean showsBearingDefect() {
        return heard.bearings().stream().anyMatch(BearingSurvey::showsDefect);
    }

    /** {@return what hypotheses ask for beyond levels and lines} */
    public LinePattern pattern() {
        return pattern;
    }

    /** {@return what was not determined, with reasons} */
    public List<Omission> omissions() {
        return omissions;
    }

    /** {@return the signals behind the numbers, until they are dropped} */
    public Optional<Traces> traces() {
        return Optional.ofNullable(traces);
    }

    /** Returns the verdict in short, as in {@code DE-H: zone B}. */
    @Override
    public String toString() {
        return point.id() + ": " + severity().map(Verdict::rating).orElse("zone not determined")
                + (insisted ? ", insisted on an unsound recording" : "");
    }
}
