package dev.vibra.diagnosis;

import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.measuring.Direction;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Survey;
import dev.vibra.synthesis.Synthesis;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A machine put together point by point from lines of known velocity, and surveyed. */
final class Bench {
    static final double RATE = 6400;
    static final int LENGTH = 51_200;

    private MachineDescription machine;
    private final double shaftHertz;
    private final Map<String, Synthesis> signals = new LinkedHashMap<>();

    private Bench(MachineDescription machine, double shaftHertz) {
        this.machine = machine;
        this.shaftHertz = shaftHertz;
    }

    /** 37 kW, rigid: ISO 20816-3:2022, group 2, 1.4 / 2.8 / 4.5 mm/s. */
    static Bench of(MachineKind kind, double shaftHertz) {
        return new Bench(MachineDescription.of("bench").withMachine(Machine.of(kind).withRatedPowerKilowatts(37)
                .withSupport(Support.RIGID).withSpeed(RotationSpeed.ofHertz(shaftHertz))), shaftHertz);
    }

    Bench with(UnaryOperator<MachineDescription> change) {
        machine = change.apply(machine);
        return this;
    }

    /** Points H, V and A of a housing, recorded together; a tenth of a mm/s in the shaft line and noise. */
    Bench housing(String id, UnaryOperator<MeasuringPoint> change) {
        for (Direction direction : List.of(Direction.HORIZONTAL, Direction.VERTICAL, Direction.AXIAL)) {
            String point = id + "-" + direction.letter();
            machine = machine.withPoint(change.apply(MeasuringPoint.of(point).withDirection(direction)
                    .recordedWith("all")));
            signals.put(point, Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).noise(0.05, point.hashCode()));
        }
        return this;
    }

    Bench housing(String id) {
        return housing(id, point -> point);
    }

    /** A line at some points: rms velocity in mm/s, phase in degrees. */
    Bench line(double hertz, double millimetresPerSecond, double degrees, String... points) {
        for (String point : points) {
            double omega = 2 * Math.PI * hertz;
            // The velocity leads the displacement; the acceleration leads the velocity by a quarter turn.
            signals.computeIfPresent(point, (id, signal) -> signal.tone(Math.sqrt(2) * omega * millimetresPerSecond / 1e3,
                    hertz, Math.toRadians(degrees) + Math.PI / 2));
        }
        return this;
    }

    Bench order(double order, double millimetresPerSecond, double degrees, String... points) {
        return line(order * shaftHertz, millimetresPerSecond, degrees, points);
    }

    Bench signal(String point, UnaryOperator<Synthesis> change) {
        signals.computeIfPresent(point, (id, signal) -> change.apply(signal));
        return this;
    }

    Map<String, Waveform> recordings() {
        Map<String, Waveform> recordings = new LinkedHashMap<>();
        signals.forEach((id, signal) -> recordings.put(id, signal.waveform()));
        return recordings;
    }

    MachineSurvey survey() {
        return Survey.of(machine, recordings());
    }

    MachineSurvey survey(Map<String, Waveform> references) {
        return Survey.of(machine, recordings(), Map.of(), references);
    }

    /** Codes of the leading groups, without those that are no faults of the table. */
    static List<String> group(MachineSurvey survey) {
        return survey.findings().stream().flatMap(one -> Stream.concat(Stream.of(one.code()), one.alikeTo().stream()))
                .distinct().collect(Collectors.toList());
    }
}
