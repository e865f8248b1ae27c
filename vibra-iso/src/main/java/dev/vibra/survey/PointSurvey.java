package dev.vibra.survey;

import dev.vibra.severity.Verdict;
import dev.vibra.severity.Zone;
import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.survey.machine.MeasuringPoint;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** Everything that was worked out for one measuring point, and what was not, with the reason. */
public final class PointSurvey implements Serializable {
    private static final long serialVersionUID = 2;

    private final MeasuringPoint point;
    private final RecordingSummary recording;
    private final SpeedFound speed;
    private final List<Descriptor> descriptors;
    private final List<SpectralPeak> spectrumPeaks;
    private final Verdict severity;
    private final List<BearingSurvey> bearings;
    private final List<ChangeSurvey> changes;
    private final boolean insisted;
    private final List<Omission> omissions;
    private final Traces traces;

    private PointSurvey(Collector from, Traces traces) {
        this.point = from.point;
        this.recording = from.recording;
        this.speed = from.speed;
        this.descriptors = List.copyOf(from.descriptors);
        this.spectrumPeaks = List.copyOf(from.spectrumPeaks);
        this.severity = from.severity;
        this.bearings = List.copyOf(from.bearings);
        this.changes = List.copyOf(from.changes);
        this.insisted = from.insisted;
        this.omissions = List.copyOf(from.omissions);
        this.traces = traces;
    }

    private PointSurvey(PointSurvey other) {
        this.point = other.point;
        this.recording = other.recording;
        this.speed = other.speed;
        this.descriptors = other.descriptors;
        this.spectrumPeaks = other.spectrumPeaks;
        this.severity = other.severity;
        this.bearings = other.bearings;
        this.changes = other.changes;
        this.insisted = other.insisted;
        this.omissions = other.omissions;
        this.traces = null;
    }

    /**
     * Returns the same results without the signals behind them.
     *
     * @return results without traces
     */
    public PointSurvey withoutTraces() {
        return new PointSurvey(this);
    }

    /**
     * Returns the measuring point.
     *
     * @return the point as described
     */
    public MeasuringPoint point() {
        return point;
    }

    /**
     * Returns size and soundness of the recording.
     *
     * @return the summary; empty if there was no recording to read
     */
    public Optional<RecordingSummary> recording() {
        return Optional.ofNullable(recording);
    }

    /**
     * Tells whether there is a recording and nothing speaks against it.
     *
     * @return true if the recording is sound
     */
    public boolean sound() {
        return recording != null && recording.quality().sound();
    }

    /**
     * Returns the speed of the shaft.
     *
     * @return speed and where it is known from
     */
    public SpeedFound speed() {
        return speed;
    }

    /**
     * Returns the descriptors.
     *
     * @return descriptors in a fixed order; those that could not be determined are missing
     */
    public List<Descriptor> descriptors() {
        return descriptors;
    }

    /**
     * Finds a descriptor.
     *
     * @param name stable name, for example {@code velocity-rms-1x}
     * @return its value in its unit
     */
    public OptionalDouble descriptor(String name) {
        return descriptors.stream().filter(one -> one.name().equals(name)).mapToDouble(Descriptor::value).findFirst();
    }

    /**
     * Returns the largest lines of the velocity spectrum.
     *
     * @return lines, the largest first
     */
    public List<SpectralPeak> spectrumPeaks() {
        return spectrumPeaks;
    }

    /**
     * Returns the severity verdict.
     *
     * @return the verdict; empty if it was not determined
     */
    public Optional<Verdict> severity() {
        return Optional.ofNullable(severity);
    }

    /**
     * Returns the zone that decides.
     *
     * @return the worst zone of all judgements; empty if it was not determined
     */
    public Optional<Zone> zone() {
        return severity().flatMap(Verdict::zone);
    }

    /**
     * Returns what was found on the bearings near the point.
     *
     * @return one entry per bearing looked at
     */
    public List<BearingSurvey> bearings() {
        return bearings;
    }

    /**
     * Returns what has changed against the baseline.
     *
     * @return one entry per descriptor and criterion that limits it; empty without baseline
     */
    public List<ChangeSurvey> changes() {
        return changes;
    }

    /**
     * Tells whether numbers and verdict rest on a recording that is not sound, because the caller insisted.
     *
     * @return true if the caller insisted against a doubt
     * @see Survey#insisting()
     */
    public boolean insisted() {
        return insisted;
    }

    /**
     * Returns what was not determined.
     *
     * @return parts and reasons
     */
    public List<Omission> omissions() {
        return omissions;
    }

    /**
     * Returns the signals behind the numbers.
     *
     * @return traces, unless left out
     */
    public Optional<Traces> traces() {
        return Optional.ofNullable(traces);
    }

    /** Returns point and zone, as in {@code DE-H: zone C}. */
    @Override
    public String toString() {
        return point.id() + ": " + zone().map(zone -> "zone " + zone).orElse("zone not determined")
                + (insisted ? ", insisted on an unsound recording" : "");
    }

    /** Takes up the results of one point while they are worked out. */
    static final class Collector {
        private final MeasuringPoint point;
        private RecordingSummary recording;
        private SpeedFound speed = SpeedFound.notDetermined();
        private final List<Descriptor> descriptors = new ArrayList<>();
        private final List<SpectralPeak> spectrumPeaks = new ArrayList<>();
        private Verdict severity;
        private final List<BearingSurvey> bearings = new ArrayList<>();
        private final List<ChangeSurvey> changes = new ArrayList<>();
        private boolean insisted;
        private final List<Omission> omissions = new ArrayList<>();

        Collector(MeasuringPoint point) {
            this.point = Objects.requireNonNull(point, "point");
        }

        MeasuringPoint point() {
            return point;
        }

        void recording(RecordingSummary known) {
            recording = known;
        }

        void speed(SpeedFound known) {
            speed = known;
        }

        SpeedFound speed() {
            return speed;
        }

        void descriptor(String name, double value, String unit) {
            descriptors.add(new Descriptor(name, value, unit));
        }

        void peaks(List<SpectralPeak> found) {
            spectrumPeaks.addAll(found);
        }

        /** Rms of the largest line told, in m/s; 0 if there is none. */
        double largestPeak() {
            return spectrumPeaks.stream().mapToDouble(peak -> peak.level().si()).max().orElse(0);
        }

        void severity(Verdict verdict) {
            severity = verdict;
        }

        void bearing(BearingSurvey found) {
            bearings.add(found);
        }

        void change(ChangeSurvey found) {
            changes.add(found);
        }

        void insisted(boolean against) {
            insisted = against;
        }

        boolean insisted() {
            return insisted;
        }

        void omit(String part, String reason) {
            omissions.add(new Omission(part, reason));
        }

        PointSurvey finish(Traces traces) {
            return new PointSurvey(this, traces);
        }
    }
}
