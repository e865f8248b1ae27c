package dev.vibra.point;

import dev.vibra.descriptor.Signals;
import dev.vibra.internal.Digits;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.PulseTrain;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.rotation.SpeedEstimate;
import dev.vibra.rotation.SpeedKnowledge;
import dev.vibra.rotation.Tachometer;
import dev.vibra.severity.MachineKind;
import dev.vibra.signal.Waveform;
import java.util.List;
import java.util.Optional;

/**
 * The speed at a point: by its tachometer, by the lines of its recording, or as it was given.
 *
 * @param found speed and source
 * @param signals the signals with that speed
 */
record SpeedReading(SpeedFound found, Signals signals) {
    /** A given speed is that of the plate: slip and wear of belts stay within this; common practice, no source. */
    private static final double PLATE_TOLERANCE = 0.02;
    private static final double FOUND_TOLERANCE = 0.003;
    private static final int FEWEST_PULSES = 4;

    /** What can't be read is added to the omissions. */
    static SpeedReading of(MachineDescription machine, MeasuringPoint point, Signals signals,
            Optional<Waveform> tachometer, List<Omission> omissions) {
        if (point.pulsesPerRevolution().isPresent()) {
            Optional<SpeedReading> read = byTachometer(signals, tachometer,
                    point.pulsesPerRevolution().getAsInt(), omissions);
            if (read.isPresent()) {
                return read.get();
            }
        }
        Optional<RotationSpeed> given = machine.speedAt(point);
        SpeedReading reading = signals.hasSpectrum() ? byLines(machine, point, signals, given)
                : without(signals, given, "the recording is too short for a spectrum");
        if (reading.found().speed().isEmpty()) {
            omissions.add(Omission.of(Omission.Subject.SPEED, (machine.faulty().contains(MachineDescription.Fact.SPEED)
                    ? "the speed is given with an error" : "no speed is given") + ", and the recording doesn't tell: "
                    + reading.found().remark()));
        }
        return reading;
    }

    private static SpeedReading byLines(MachineDescription machine, MeasuringPoint point, Signals signals,
            Optional<RotationSpeed> given) {
        SpeedEstimate estimate = SpeedEstimate.of(signals.spectrum(), signals.floor(),
                knowledge(machine, point, given));
        if (estimate.speed().isEmpty()) {
            return without(signals, given, estimate.reason() + (given.isEmpty() ? ""
                    : instead(SpeedEstimate.of(signals.spectrum(), signals.floor(),
                            knowledge(machine, point, Optional.empty())))));
        }
        RotationSpeed speed = estimate.speed().get();
        return new SpeedReading(SpeedFound.inRecording(speed, estimate.confidence(), estimate.reason()),
                signals.at(speed, FOUND_TOLERANCE));
    }

    /** A plate that was misread, or is another machine's, shows by the speed that the lines fit without it. */
    private static String instead(SpeedEstimate estimate) {
        return estimate.speed().map(speed -> "; the lines fit " + speed + ", confidence "
                + Digits.significant(estimate.confidence(), 2) + ": check the speed given").orElse("");
    }

    private static SpeedReading without(Signals signals, Optional<RotationSpeed> given, String reason) {
        return given.map(speed -> new SpeedReading(SpeedFound.given(speed, reason),
                signals.at(speed, PLATE_TOLERANCE)))
                .orElseGet(() -> new SpeedReading(SpeedFound.notDetermined(reason), signals));
    }

    /** The line frequency tells the speed of a motor that it feeds, and of what turns with the motor. */
    private static SpeedKnowledge knowledge(MachineDescription machine, MeasuringPoint point,
            Optional<RotationSpeed> given) {
        SpeedKnowledge knowledge = SpeedKnowledge.none();
        knowledge = given.isPresent() ? knowledge.withNominal(given.get()) : knowledge;
        if (machine.train().lineHertz().isPresent()) {
            knowledge = knowledge.withMains(machine.train().lineHertz().getAsDouble());
            boolean motor = point.part().map(id -> machine.part(id).machine()).orElse(machine.machine()).kind()
                    .filter(kind -> kind == MachineKind.ELECTRIC_MOTOR).isPresent();
            boolean direct = machine.ratioAt(point) == 1 && machine.train().motor().poles().isPresent();
            if (!machine.train().motor().isOnConverter() && direct) {
                knowledge = knowledge.withInductionMotor(machine.train().motor().poles().getAsInt());
            } else if (!machine.train().motor().isOnConverter() && motor) {
                knowledge = knowledge.withInductionMotor();
            }
        }
        return knowledge;
    }

    /** Doubled pulses are taken out and gaps filled; pulses that are uneven after that belong to no shaft. */
    private static Optional<SpeedReading> byTachometer(Signals signals, Optional<Waveform> tachometer,
            int pulsesPerRevolution, List<Omission> omissions) {
        if (tachometer.isEmpty()) {
            return refused("its recording was not read", omissions);
        }
        Waveform signal = tachometer.get();
        if (!(signal.peakToPeak().si() > 0)) {
            return refused("its recording is constant", omissions);
        }
        PulseTrain pulses = Tachometer.fitting(signal).pulses(signal);
        if (pulses.size() < FEWEST_PULSES * pulsesPerRevolution) {
            return refused("its recording holds " + pulses, omissions);
        }
        PulseTrain repaired = pulses.repaired();
        int wrong = pulses.doubled().size() + pulses.gaps().size();
        // More than one repair in ten pulses is no tachometer to rely on: common practice, no source.
        if (10 * wrong > pulses.size()) {
            return refused(wrong + " of its " + pulses.size() + " pulses are doubled or missing", omissions);
        }
        ShaftAngle angle = ShaftAngle.of(repaired, pulsesPerRevolution);
        String remark = wrong == 0 ? "" : "pulses of the tachometer were repaired: " + pulses.doubled().size()
                + " doubled, " + pulses.gaps().size() + (pulses.gaps().size() == 1 ? " gap" : " gaps");
        return Optional.of(new SpeedReading(SpeedFound.byTachometer(angle.meanSpeed(), remark), signals.at(angle)));
    }

    private static Optional<SpeedReading> refused(String reason, List<Omission> omissions) {
        omissions.add(Omission.of(Omission.Subject.TACHOMETER, reason));
        return Optional.empty();
    }
}
