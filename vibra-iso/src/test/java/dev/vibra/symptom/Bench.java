package dev.vibra.symptom;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.measuring.Direction;
import dev.vibra.point.PointExamination;
import dev.vibra.point.PointSurvey;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A machine with recordings of sines of known size and phase, for questions to be asked. */
final class Bench {
    static final double RATE = 6400;
    static final double SECONDS = 8;
    /** Turns per second of the main shaft, on a line of the spectrum. */
    static final double SHAFT = 25;
    /** What noise of the chain there is, m/s² rms. */
    private static final double NOISE = 0.01;

    private MachineDescription machine;
    private final Map<String, Synthesis> recordings = new LinkedHashMap<>();
    private final Map<String, Synthesis> references = new LinkedHashMap<>();

    private Bench(MachineDescription machine) {
        this.machine = machine;
    }

    /** ISO 20816-3:2022, group 2, rigid: 1.4 / 2.8 / 4.5 mm/s rms, 10 to 1000 Hz. */
    static MachineDescription fan() {
        return MachineDescription.of("fan").withMachine(Machine.of(MachineKind.FAN).withRatedPowerKilowatts(37)
                .withSupport(Support.RIGID).withSpeed(RotationSpeed.ofHertz(SHAFT)));
    }

    static Bench of(MachineDescription machine) {
        return new Bench(machine);
    }

    static MeasuringPoint point(String id) {
        String letter = id.substring(id.lastIndexOf('-') + 1);
        return MeasuringPoint.of(id).withDirection(List.of(Direction.values()).stream()
                .filter(one -> one.letter().equals(letter)).findFirst().orElseThrow()).recordedWith("all");
    }

    static Synthesis quiet(long seed) {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, (int) (SECONDS * RATE)).noise(NOISE, seed);
    }

    /** A line of some rms velocity in mm/s at a phase of its cosine; acceleration leads by a quarter turn. */
    static Synthesis line(Synthesis signal, double hertz, double millimetres, double degrees) {
        return signal.tone(Math.sqrt(2) * 2 * Math.PI * hertz * millimetres / 1e3, hertz, Math.toRadians(degrees + 90));
    }

    /** Multiples of the shaft speed, from the first, in mm/s. */
    static Synthesis orders(double... millimetres) {
        Synthesis signal = quiet(millimetres.length);
        for (int i = 0; i < millimetres.length; i++) {
            signal = millimetres[i] == 0 ? signal : line(signal, (i + 1) * SHAFT, millimetres[i], 40 * i);
        }
        return signal;
    }

    /** 1× of 2 mm/s at a phase. */
    static Synthesis turned(double degrees) {
        return line(quiet(3), SHAFT, 2, degrees);
    }

    /** A point by its id with the letter of its direction, and what is recorded there. */
    Bench with(String id, Synthesis signal) {
        return with(point(id), signal);
    }

    Bench with(MeasuringPoint point, Synthesis signal) {
        machine = machine.withPoint(point);
        recordings.put(point.id(), signal);
        return this;
    }

    /** What was recorded at a point when the machine was sound. */
    Bench before(String id, Synthesis signal) {
        references.put(id, signal);
        return this;
    }

    Evidence evidence() {
        return new Evidence(machine, surveys(recordings), surveys(references));
    }

    private List<PointSurvey> surveys(Map<String, Synthesis> signals) {
        PointExamination examination = PointExamination.of(machine);
        return machine.points().stream().filter(point -> signals.containsKey(point.id()))
                .map(point -> examination.examine(point, wave(signals.get(point.id())), Optional.empty())).toList();
    }

    private static Waveform wave(Synthesis signal) {
        return signal.waveform();
    }

    /** Asks at the only site of a kind. */
    Answer ask(String asks, Site.Kind kind) {
        List<Site> sites = Sites.of(machine).stream().filter(site -> site.kind() == kind).toList();
        assertEquals(1, sites.size(), "sites of kind " + kind);
        return Questions.parse("code", asks).ask(evidence(), sites.get(0));
    }

    void seen(String asks, Site.Kind kind, String... points) {
        Answer answer = ask(asks, kind);
        assertEquals(Answer.State.SEEN, answer.state(), answer::toString);
        assertEquals(List.of(points), answer.points(), answer::toString);
    }

    void notSeen(String asks, Site.Kind kind) {
        Answer answer = ask(asks, kind);
        assertEquals(Answer.State.NOT_SEEN, answer.state(), answer::toString);
    }

    void notMeasured(String asks, Site.Kind kind) {
        Answer answer = ask(asks, kind);
        assertEquals(Answer.State.NOT_MEASURED, answer.state(), answer::toString);
    }
}
