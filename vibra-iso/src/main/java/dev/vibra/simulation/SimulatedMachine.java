package dev.vibra.simulation;

import dev.vibra.internal.Require;
import dev.vibra.machine.MachineDescription;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeMap;

/**
 * A machine with known faults and what would be measured at it: {@code SimulatedMachine.draw(7,
 * List.of("bent-shaft"))}.
 *
 * <p>Every force, of the sound machine and of its faults, goes through random supports and resonances that couple
 * directions and housings, through sensors with errors and past noise: amplitudes, ratios and phases are shaped by the
 * structure as much as by the fault. How large a fault's vibration is, is drawn evenly by its logarithm. Equal seeds
 * give equal machines and samples.
 *
 * <p>Ranges that nobody has published are assumptions; the models name their sources.
 */
public final class SimulatedMachine {
    /** The plan and what happens on it are drawn by one seed, and must not follow each other. */
    private static final long OTHER_STREAM = 0x5DEECE66DL;

    private final MachinePlan plan;
    private final MachineDescription description;
    private final Map<String, Waveform> recordings;
    private final Map<String, Waveform> references;
    private final Map<String, Boolean> observations;
    private final List<Truth> faults;
    private final OptionalDouble decibels;

    private SimulatedMachine(MachinePlan plan, long seed, List<String> asked) {
        this.plan = plan;
        Draws draws = Draws.of(seed ^ OTHER_STREAM);
        Scene scene = new Scene(plan);
        Health.addTo(scene, draws.split());
        List<Truth> truths = new ArrayList<>();
        for (String fault : asked) {
            truths.add(new Truth(fault, FaultModels.of(fault).apply().apply(scene, draws.split())));
        }
        faults = List.copyOf(truths);
        Recorder recorder = new Recorder(scene, draws.split());
        recordings = waveforms(recorder.recordings());
        references = waveforms(recorder.references());
        decibels = recorder.decibels();
        description = told(scene, draws.split());
        observations = Collections.unmodifiableMap(new TreeMap<>(new CrewTests(scene, faults, recorder, draws.split())
                .outcomes()));
    }

    /**
     * Draws a machine that has faults.
     *
     * @param seed seed of the machine and of its faults
     * @param faults ids of the table of faults, each at most once; none for a sound machine
     * @return the machine with recordings of all its points
     * @throws IllegalArgumentException if a fault isn't known, stands twice, or no machine can have all of them
     */
    public static SimulatedMachine draw(long seed, List<String> faults) {
        List<String> asked = checked(faults);
        return new SimulatedMachine(MachinePlan.draw(seed, asked), seed, asked);
    }

    /**
     * Draws what a machine does that has faults.
     *
     * @param plan the machine
     * @param seed seed of its faults, its sizes and its noise
     * @param faults ids of the table of faults, each at most once; none for a sound machine
     * @return the machine with recordings of all its points
     * @throws IllegalArgumentException if a fault isn't known, stands twice, or can't sit on this machine
     */
    public static SimulatedMachine draw(MachinePlan plan, long seed, List<String> faults) {
        Objects.requireNonNull(plan, "plan");
        List<String> asked = checked(faults);
        for (String fault : asked) {
            if (!plan.canHold(fault)) {
                throw new IllegalArgumentException("fault must be one that the " + plan.form() + " can have: "
                        + fault);
            }
        }
        return new SimulatedMachine(plan, seed, asked);
    }

    private static List<String> checked(List<String> faults) {
        List<String> asked = Require.copy("faults", faults);
        asked.forEach(FaultModels::of);
        if (asked.stream().distinct().count() < asked.size()) {
            throw new IllegalArgumentException("faults must stand once each: " + asked);
        }
        return asked;
    }

    /** {@return ids of the faults that can be drawn, all of the table of faults} */
    public static SortedSet<String> faultIds() {
        return Collections.unmodifiableSortedSet(FaultModels.ids());
    }

    private Map<String, Waveform> waveforms(double[][] samples) {
        Map<String, Waveform> waves = new LinkedHashMap<>();
        for (int i = 0; i < samples.length; i++) {
            waves.put(plan.parts().points().get(i).point().id(), Waveform.ofSi(Quantity.ACCELERATION,
                    plan.parts().sampling().hertz(), samples[i]));
        }
        return Collections.unmodifiableMap(waves);
    }

    /** An impact test is known of one machine in six: it found the modes up to three times the speed that move most. */
    private static MachineDescription told(Scene scene, Draws draws) {
        MachineDescription told = scene.plan().description();
        if (draws.chance(1 / 6.0)) {
            List<Double> natural = scene.structure().modes().stream().map(Structure.Mode::hertz)
                    .filter(hertz -> hertz < 3 * scene.mainHertz()).sorted().limit(4).toList();
            for (double hertz : natural) {
                told = told.withNaturalHertz(hertz * draws.normal(1, 0.01));
            }
        }
        return told;
    }

    /** {@return what the machine is} */
    public MachinePlan plan() {
        return plan;
    }

    /** {@return what a user would tell of it, without outcomes of tests} */
    public MachineDescription description() {
        return description;
    }

    /** {@return acceleration by id of the point, in the order of the description; every point has one} */
    public Map<String, Waveform> recordings() {
        return recordings;
    }

    /**
     * {@return acceleration by id of the point from a time when the machine was sound, in the same state; levels of
     * its lines differ by some tenths from what they are now}
     */
    public Map<String, Waveform> references() {
        return references;
    }

    /**
     * {@return outcomes of the tests of the table of faults by code; where a machine has several places for a test,
     * by code, {@code " at "} and place. A few in a hundred are wrong, as with any crew (common practice, no source)}
     */
    public Map<String, Boolean> observations() {
        return observations;
    }

    /** {@return the faults it has} */
    public List<Truth> faults() {
        return faults;
    }

    /**
     * {@return how far the strongest line of the faults stands above the noise in 1 Hz at its point, as velocity, in
     * dB; for knocks alone their rms over that of the noise; empty for a sound machine}
     */
    public OptionalDouble decibels() {
        return decibels;
    }

    /** Returns machine and faults. */
    @Override
    public String toString() {
        return plan.form() + ", " + (faults.isEmpty() ? "sound" : String.join(", ", faults.stream().map(Truth::toString)
                .toList()));
    }
}
