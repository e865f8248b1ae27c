package dev.vibra.point;

import dev.vibra.bearing.proportion.UnknownBearing;
import dev.vibra.descriptor.Description;
import dev.vibra.descriptor.Descriptor;
import dev.vibra.descriptor.Descriptor.Basis;
import dev.vibra.descriptor.Descriptors;
import dev.vibra.descriptor.DominantLine;
import dev.vibra.descriptor.NamedLine;
import dev.vibra.descriptor.Signals;
import dev.vibra.internal.Digits;
import dev.vibra.machine.BearingData;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.machine.Rate;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.severity.Criterion;
import dev.vibra.signal.Waveform;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Examines recordings of one machine, point by point, each step a function of what the steps before it gave: gate,
 * speed, numbers and lines, bearing, verdict. Immutable; touches no file and keeps nothing of a recording but what it
 * returns.
 */
public final class PointExamination {
    private static final double SLOWEST_HERTZ = 5;
    private static final double SMALLEST = 1e-20;
    private static final double LARGEST = 1e20;

    private final MachineDescription machine;
    private final List<PartCriterion> criteria;
    private final boolean insisting;
    private final boolean deaf;

    private PointExamination(MachineDescription machine, List<PartCriterion> criteria, boolean insisting,
            boolean deaf) {
        this.machine = machine;
        this.criteria = criteria;
        this.insisting = insisting;
        this.deaf = deaf;
    }

    /**
     * Chooses the criteria of the machine.
     *
     * @param machine what is known of the machine
     * @return an examination of its points
     */
    public static PointExamination of(MachineDescription machine) {
        return new PointExamination(Objects.requireNonNull(machine, "machine"), PartCriterion.of(machine), false,
                false);
    }

    /** {@return an examination that gives numbers of unsound recordings too; each result says so} */
    public PointExamination insisting() {
        return new PointExamination(machine, criteria, true, deaf);
    }

    /** {@return an examination that doesn't listen to bearings, which takes most of the time of a point} */
    public PointExamination withoutBearings() {
        return new PointExamination(machine, criteria, insisting, true);
    }

    /** {@return the criteria of the parts of the machine} */
    public List<PartCriterion> criteria() {
        return criteria;
    }

    /** The band of a slow machine begins lower: where no speed is given, the one that was found chooses. */
    private Optional<PartCriterion> criterionAt(MeasuringPoint point, SpeedFound found) {
        return machine.speed().isPresent() || found.speed().isEmpty() ? criterionAt(point, criteria)
                : criterionAt(point, PartCriterion.of(machine.withMachine(machine.machine().withSpeed(
                        RotationSpeed.ofHertz(found.speed().get().hertz() / machine.ratioAt(point))))));
    }

    private static Optional<PartCriterion> criterionAt(MeasuringPoint point, List<PartCriterion> criteria) {
        return criteria.stream().filter(one -> criteria.size() == 1 && one.part().isEmpty()
                || one.part().equals(point.part()) && point.part().isPresent()).findFirst();
    }

    /**
     * Works out one point; a recording sampled below 5 Hz, or that reaches what no machine does, counts as none.
     *
     * @param point a point of the machine
     * @param wave its recording, a motion
     * @param tachometer signal of its tachometer on the same time scale, in any unit, if there is one
     * @return results with the signals behind them
     * @throws IllegalArgumentException if the recording isn't a motion
     */
    public PointSurvey examine(MeasuringPoint point, Waveform wave, Optional<Waveform> tachometer) {
        return examine(point, wave, tachometer, true);
    }

    /**
     * Works out a reference: a recording of the point from a time when the machine was known to be sound, in the same
     * state. It gives numbers, lines and pattern; it isn't judged, and its bearing isn't listened to.
     *
     * @param point a point of the machine
     * @param wave its reference recording, a motion
     * @param tachometer signal of its tachometer on the same time scale, in any unit, if there is one
     * @return results without verdict, change and bearing
     * @throws IllegalArgumentException if the recording isn't a motion
     */
    public PointSurvey reference(MeasuringPoint point, Waveform wave, Optional<Waveform> tachometer) {
        return examine(point, wave, tachometer, false);
    }

    private PointSurvey examine(MeasuringPoint point, Waveform wave, Optional<Waveform> tachometer, boolean judged) {
        Objects.requireNonNull(point, "point");
        Objects.requireNonNull(wave, "wave");
        Objects.requireNonNull(tachometer, "tachometer");
        if (!wave.quantity().isMotion()) {
            throw new IllegalArgumentException("recording of " + point.id() + " must measure a motion: "
                    + wave.quantity());
        }
        Optional<String> obstacle = obstacle(wave);
        if (obstacle.isPresent()) {
            return PointSurvey.withoutRecording(point, obstacle.get());
        }
        RecordingGate gate = RecordingGate.of(wave, point, machine, motionBand(criterionAt(point, criteria)));
        boolean insists = insisting && gate.holdsSignal() && !gate.summary().quality().sound();
        List<Aspect> refused = Stream.of(Aspect.values()).filter(aspect -> gate.refuses(aspect) && !insists).toList();
        List<Omission> omissions = new ArrayList<>(refused.stream().map(aspect ->
                new Omission(Omission.Subject.RECORDING, aspect.toString(), gate.reason())).toList());
        Traces traces = Traces.of(wave);
        if (refused.size() == Aspect.values().length) {
            return PointSurvey.without(point, gate.summary(), givenSpeed(point, gate.reason()), omissions, traces,
                    gate.reason());
        }
        SpeedReading speed = SpeedReading.of(machine, point, Signals.of(gate.steady()), tachometer, omissions);
        Signals signals = speed.signals();
        List<Rate> rates = speed.found().speed().map(known -> rates(point, known)).orElse(List.of());
        PointSurvey.Heard heard = judged && !deaf && !refused.contains(Aspect.ENVELOPE)
                ? heard(point, wave, speed, rates, omissions) : PointSurvey.Heard.NOTHING;
        List<NamedLine> lines = signals.lines(rates);
        PointSurvey.Numbers numbers = numbers(wave, signals, refused, gate.reason(), lines, heard, omissions);
        PointJudge judge = new PointJudge(machine, point, criterionAt(point, speed.found()), omissions);
        PointSurvey.Judged verdict = !judged ? PointSurvey.Judged.NONE
                : refused.contains(Aspect.MOTION) ? judge.without() : judge.judge(signals);
        return new PointSurvey(point, gate.summary(), speed.found(), numbers, verdict, heard, insists, omissions,
                refused.contains(Aspect.MOTION) ? LinePattern.none(gate.reason())
                        : PatternReading.of(machine, point, wave, signals, lines, numbers.dominant()),
                signals.hasSpectrum() ? traces.withVelocity(signals.velocitySpectrum()) : traces);
    }

    private PointSurvey.Heard heard(MeasuringPoint point, Waveform wave, SpeedReading speed, List<Rate> rates,
            List<Omission> omissions) {
        return new PointSurvey.Heard(bearing(point, wave, speed.found(), rates, speed.signals().angle(), omissions)
                .stream().toList(), unknownBearing(point, wave, speed.found(), rates).orElse(null));
    }

    /** No vibration is as slow, as small or as large; a rate, unit or scale is wrong, and arithmetic would end. */
    private static Optional<String> obstacle(Waveform wave) {
        if (wave.sampleRateHertz() < SLOWEST_HERTZ) {
            return Optional.of("is sampled at " + Digits.compact(wave.sampleRateHertz(), 3) + " Hz; a vibration needs "
                    + Digits.compact(SLOWEST_HERTZ, 3) + " Hz at least");
        }
        double largest = 0;
        for (int i = 0; i < wave.length(); i++) {
            largest = Math.max(largest, Math.abs(wave.at(i)));
        }
        Unit si = Stream.of(Unit.values()).filter(unit -> unit.quantity() == wave.quantity() && unit.toSi() == 1)
                .findFirst().orElseThrow();
        return largest == 0 || largest >= SMALLEST && largest <= LARGEST ? Optional.empty() : Optional.of("reaches "
                + Digits.significant(largest, 3) + " " + si + ", which no machine does; look at unit and scale");
    }

    private SpeedFound givenSpeed(MeasuringPoint point, String reason) {
        return machine.speedAt(point).map(speed -> SpeedFound.given(speed, reason))
                .orElseGet(() -> SpeedFound.notDetermined(reason));
    }

    /** The band that all motion is judged in, and the usual one. */
    private static Band motionBand(Optional<PartCriterion> criterion) {
        List<Band> bands = new ArrayList<>(List.of(Descriptors.USUAL_BAND));
        criterion.ifPresent(one -> one.severity().criteria().stream()
                .filter(limit -> limit.quantity() == Quantity.VELOCITY).map(Criterion::band).forEach(bands::add));
        return Band.of(bands.stream().mapToDouble(Band::lowestHertz).min().orElseThrow(),
                bands.stream().mapToDouble(Band::highestHertz).max().orElseThrow());
    }

    private List<Rate> rates(MeasuringPoint point, RotationSpeed found) {
        return machine.train().ratesAt(found.hertz() / machine.ratioAt(point));
    }

    private PointSurvey.Numbers numbers(Waveform wave, Signals signals, List<Aspect> refused,
            String refusal, List<NamedLine> lines, PointSurvey.Heard heard, List<Omission> omissions) {
        boolean statistics = !refused.contains(Aspect.STATISTICS);
        boolean motion = !refused.contains(Aspect.MOTION);
        Descriptors table = Descriptors.standard();
        table = signals.angle().isPresent() ? table.withTachometer() : table;
        Set<Basis> basis = EnumSet.noneOf(Basis.class);
        if (statistics) {
            basis.add(Basis.SAMPLES);
        }
        if (motion) {
            basis.add(Basis.MOTION);
        }
        Description description = table.of(signals, basis, refusal);
        table.rows().stream().filter(row -> basis.contains(row.basis())).map(Descriptor::name)
                .filter(description.missing()::containsKey).forEach(name -> omissions.add(
                        new Omission(Omission.Subject.DESCRIPTOR, name, description.missing().get(name))));
        Impulsiveness impulsiveness = statistics && wave.quantity() == Quantity.ACCELERATION
                ? Impulsiveness.of(signals, wave).orElse(null) : null;
        List<DominantLine> dominant = signals.dominantLines(lines);
        boolean turning = new RotationSigns(signals, machine.train().lineHertz()).show(lines, dominant)
                || heard.bearings().stream().anyMatch(BearingSurvey::showsDefect);
        return new PointSurvey.Numbers(description, motion ? lines : List.of(),
                motion ? dominant : List.of(), impulsiveness, turning);
    }

    private Optional<BearingSurvey> bearing(MeasuringPoint point, Waveform wave, SpeedFound speed, List<Rate> rates,
            Optional<ShaftAngle> angle, List<Omission> omissions) {
        if (point.bearing().isEmpty()) {
            return Optional.empty(); // Not every point lies at a rolling bearing.
        }
        Optional<BearingData> bearing = machine.bearing(point.bearing().get());
        String obstacle = bearing.isEmpty()
                ? "the geometry of bearing \"" + point.bearing().get() + "\" is given with an error"
                : speed.speed().isEmpty() ? "the speed is not known"
                : wave.quantity() != Quantity.ACCELERATION ? "bearings ring in the acceleration: the recording"
                        + " measures " + wave.quantity() : "";
        if (!obstacle.isEmpty()) {
            omissions.add(Omission.of(Omission.Subject.BEARINGS, obstacle));
            return Optional.empty();
        }
        return Optional.of(new BearingExamination(wave, speed, rates, angle).diagnose(bearing.get()));
    }

    /** Where no bearing is described, any pulsation that a bearing would explain is worth a question. */
    private Optional<UnknownBearing> unknownBearing(MeasuringPoint point, Waveform wave, SpeedFound speed,
            List<Rate> rates) {
        boolean asked = point.bearing().flatMap(machine::bearing).isEmpty() && speed.speed().isPresent()
                && wave.quantity() == Quantity.ACCELERATION;
        return asked ? Optional.of(new BearingExamination(wave, speed, rates, Optional.empty()).search(machine))
                : Optional.empty();
    }

    /** Returns the machine. */
    @Override
    public String toString() {
        return "examination of " + machine;
    }
}
