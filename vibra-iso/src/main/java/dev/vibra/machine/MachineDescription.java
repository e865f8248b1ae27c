package dev.vibra.machine;

import dev.vibra.balance.BalancingJob;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.CriterionRequest;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import java.io.Serializable;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * What is known of a machine, its points and its earlier values:
 * {@code MachineDescription.of("Brine pump
 * 2").withMachine(Machine.of(MachineKind.PUMP)).withPoint(MeasuringPoint.of("DE-H"))}. Only the name is required.
 * Immutable.
 */
public final class MachineDescription implements Serializable {
    private static final long serialVersionUID = 2;

    private final Known known;

    private MachineDescription(Known known) {
        this.known = Objects.requireNonNull(known, "known");
    }

    private Object readResolve() {
        return new MachineDescription(known);
    }

    /** A fact on which conclusions rest: if one was given wrong, a conclusion without it would be a guess. */
    public enum Fact {
        /** Kind, power, shaft height or support of the machine or of a part. */
        MACHINE("kind, power, shaft height or support"),
        /** Speed of the main shaft. */
        SPEED("speed"),
        /** The criterion asked for. */
        CRITERION("criterion"),
        /** The balancing job. */
        BALANCING("balancing job"),
        /** Earlier values. */
        BASELINE("baseline");

        private final String label;

        Fact(String label) {
            this.label = label;
        }

        /** Returns the fact in words. */
        @Override
        public String toString() {
            return label;
        }
    }

    /** Written once, by the chain, before the description is handed out. */
    private static final class Known extends Facts {
        private static final long serialVersionUID = 1;
        private String name;
        private Machine machine = Machine.unknown();
        private CriterionRequest criterion;
        private List<MachinePart> parts = List.of();
        private DriveTrain train = DriveTrain.plain();
        private RotorData rotor = RotorData.unknown();
        private List<BearingData> bearings = List.of();
        private List<MeasuringPoint> points = List.of();
        private Map<String, Map<String, Double>> baseline = Map.of();
        private BalancingJob balancing;
        private Instant measured;
        private String state;
        private List<Double> naturalHertz = List.of();
        private Map<String, Boolean> observations = Map.of();
        private Set<Fact> faulty = Set.of();

        @Override
        void check() {
            name = Require.notBlank("name", name);
            Objects.requireNonNull(machine, "machine");
            Objects.requireNonNull(train, "train");
            Objects.requireNonNull(rotor, "rotor");
            parts = distinct("part", parts, MachinePart::id);
            bearings = distinct("bearing", bearings, BearingData::id);
            points = distinct("point", points, MeasuringPoint::id);
            Map<String, Map<String, Double>> copy = new LinkedHashMap<>();
            baseline.forEach((point, values) -> copy.put(Objects.requireNonNull(point, "pointId"),
                    finite(point, values)));
            baseline = Collections.unmodifiableMap(copy);
            state = textOrNull("state", state);
            naturalHertz = Require.copy("naturalHertz", naturalHertz);
            naturalHertz.forEach(hertz -> Require.positive("natural frequency", hertz, "Hz"));
            Map<String, Boolean> answers = new TreeMap<>();
            observations.forEach((test, seen) -> answers.put(Require.notBlank("test", test),
                    Objects.requireNonNull(seen, "seen")));
            observations = Collections.unmodifiableMap(answers);
            faulty = faulty.isEmpty() ? Collections.emptySet() : Collections.unmodifiableSet(EnumSet.copyOf(faulty));
        }

        private static <T> List<T> distinct(String what, List<T> list, Function<T, String> id) {
            Set<String> seen = new HashSet<>();
            for (T one : list) {
                if (!seen.add(id.apply(one))) {
                    throw new IllegalArgumentException(what + " id must be given once only: " + id.apply(one));
                }
            }
            return List.copyOf(list);
        }

        private static Map<String, Double> finite(String point, Map<String, Double> values) {
            Map<String, Double> copy = new TreeMap<>();
            Objects.requireNonNull(values, "values").forEach((name, value) -> copy.put(
                    Objects.requireNonNull(name, "name"), Require.finite("baseline of " + point + ", " + name,
                            Objects.requireNonNull(value, "value"))));
            return Collections.unmodifiableMap(copy);
        }
    }

    private MachineDescription with(Consumer<Known> change) {
        return new MachineDescription(Facts.changed(known, change));
    }

    /**
     * Names a machine of which nothing else is known.
     *
     * @param name name, not blank
     * @return the description
     */
    public static MachineDescription of(String name) {
        return new MachineDescription(Facts.changed(new Known(), made -> made.name = name));
    }

    /**
     * States what the severity criterion is chosen by; the speed in it is that of the main shaft.
     *
     * @param machine kind, power, shaft height, support, speed as far as known
     * @return the description with it
     */
    public MachineDescription withMachine(Machine machine) {
        Objects.requireNonNull(machine, "machine");
        return with(changed -> changed.machine = machine);
    }

    /**
     * Asks for a criterion in place of the choice by kind, power and shaft height.
     *
     * @param request the criterion asked for, for every part that asks for none of its own
     * @return the description with it
     */
    public MachineDescription withCriterion(CriterionRequest request) {
        Objects.requireNonNull(request, "criterion");
        return with(changed -> changed.criterion = request);
    }

    /**
     * Adds a part that is judged for itself.
     *
     * @param part the part; its shaft, if stated, must be one of the drive train stated before
     * @return the description with it
     */
    public MachineDescription withPart(MachinePart part) {
        Objects.requireNonNull(part, "part").shaft().ifPresent(known.train::ratioOf);
        return with(changed -> changed.parts = longer(known.parts, part));
    }

    /**
     * States what turns, meshes and passes.
     *
     * @param train shafts, gears, belts, blades, motor
     * @return the description with it
     */
    public MachineDescription withTrain(DriveTrain train) {
        Objects.requireNonNull(train, "train");
        return with(changed -> changed.train = train);
    }

    /**
     * States what is known of the rotor.
     *
     * @param rotor mass, grade, planes, arrangement
     * @return the description with it
     */
    public MachineDescription withRotor(RotorData rotor) {
        Objects.requireNonNull(rotor, "rotor");
        return with(changed -> changed.rotor = rotor);
    }

    /**
     * Adds a rolling bearing.
     *
     * @param bearing the bearing
     * @return the description with it
     */
    public MachineDescription withBearing(BearingData bearing) {
        Objects.requireNonNull(bearing, "bearing");
        return with(changed -> changed.bearings = longer(known.bearings, bearing));
    }

    /**
     * Adds a measuring point.
     *
     * @param point the point; its part and shaft, if stated, must have been stated before
     * @return the description with it
     */
    public MachineDescription withPoint(MeasuringPoint point) {
        Objects.requireNonNull(point, "point").shaft().ifPresent(known.train::ratioOf);
        point.part().ifPresent(this::part);
        return with(changed -> changed.points = longer(known.points, point));
    }

    /**
     * States earlier values of a point, measured when the machine was known to be sound, or when it was new.
     *
     * @param pointId id of the point
     * @param values value by the name of its descriptor, in the descriptor's unit
     * @return the description with them
     */
    public MachineDescription withBaseline(String pointId, Map<String, Double> values) {
        Map<String, Map<String, Double>> more = new LinkedHashMap<>(known.baseline);
        more.put(pointId, values);
        return with(changed -> changed.baseline = more);
    }

    /**
     * Adds a balancing job.
     *
     * @param job the job with its runs; it may end with a final run
     * @return the description with it
     */
    public MachineDescription withBalancing(BalancingJob job) {
        Objects.requireNonNull(job, "balancing");
        return with(changed -> changed.balancing = job);
    }

    /** {@return the description without its balancing job, which counts as given with an error} */
    public MachineDescription withoutBalancing() {
        return withFaulty(Fact.BALANCING).with(changed -> changed.balancing = null);
    }

    /**
     * States when the recordings were taken.
     *
     * @param when instant of the measurement
     * @return the description with it
     */
    public MachineDescription measuredAt(Instant when) {
        Objects.requireNonNull(when, "measured");
        return with(changed -> changed.measured = when);
    }

    /**
     * States in which state of operation the recordings were taken.
     *
     * @param state load, flow or whatever the vibration depends on, in words
     * @return the description with it
     */
    public MachineDescription inState(String state) {
        Objects.requireNonNull(state, "state");
        return with(changed -> changed.state = state);
    }

    /**
     * States a natural frequency of the structure or rotor, as an impact test or a run-down showed it.
     *
     * @param hertz natural frequency, finite and &gt; 0 Hz
     * @return the description with it
     */
    public MachineDescription withNaturalHertz(double hertz) {
        return with(changed -> changed.naturalHertz = longer(known.naturalHertz, hertz));
    }

    /**
     * States what a test or an inspection showed.
     *
     * @param test code of the test, as in {@code power-cut-drops}; with {@code " at "} and the name of a part where it
     *     holds there only
     * @param seen true if the test showed what its code says
     * @return the description with it
     */
    public MachineDescription withObservation(String test, boolean seen) {
        Objects.requireNonNull(test, "test");
        Map<String, Boolean> more = new TreeMap<>(known.observations);
        more.put(test, seen);
        return with(changed -> changed.observations = more);
    }

    /**
     * Notes that a fact was given with an error: what rests on it is then not determined rather than guessed.
     *
     * @param fact the fact
     * @return the description with the note
     */
    public MachineDescription withFaulty(Fact fact) {
        Set<Fact> more = EnumSet.of(Objects.requireNonNull(fact, "fact"));
        more.addAll(known.faulty);
        return with(changed -> changed.faulty = more);
    }

    private static <T> List<T> longer(List<T> list, T last) {
        List<T> copy = new ArrayList<>(list);
        copy.add(last);
        return copy;
    }

    /** {@return name of the machine} */
    public String name() {
        return known.name;
    }

    /** {@return what the criterion of the machine as a whole is chosen by} */
    public Machine machine() {
        return known.machine;
    }

    /** {@return speed of the main shaft, if stated} */
    public Optional<RotationSpeed> speed() {
        return known.machine.speed();
    }

    /** {@return the criterion asked for, if one was} */
    public Optional<CriterionRequest> criterion() {
        return Optional.ofNullable(known.criterion);
    }

    /** {@return parts that are judged for themselves; empty if the machine is one part} */
    public List<MachinePart> parts() {
        return known.parts;
    }

    /**
     * Finds a part.
     *
     * @param id id of the part
     * @return the part
     */
    public MachinePart part(String id) {
        return known.parts.stream().filter(part -> part.id().equals(id)).findFirst().orElseThrow(() ->
                new IllegalArgumentException("part must be one of " + known.parts.stream().map(MachinePart::id).toList()
                        + ": " + id));
    }

    /** {@return what turns, meshes and passes} */
    public DriveTrain train() {
        return known.train;
    }

    /** {@return what is known of the rotor} */
    public RotorData rotor() {
        return known.rotor;
    }

    /** {@return rolling bearings} */
    public List<BearingData> bearings() {
        return known.bearings;
    }

    /**
     * Finds a bearing.
     *
     * @param id id of the bearing
     * @return the bearing, if its geometry is known
     */
    public Optional<BearingData> bearing(String id) {
        Objects.requireNonNull(id, "id");
        return known.bearings.stream().filter(bearing -> bearing.id().equals(id)).findFirst();
    }

    /** {@return measuring points} */
    public List<MeasuringPoint> points() {
        return known.points;
    }

    /**
     * Returns how fast the shaft at a point turns.
     *
     * @param point a point of this machine
     * @return turns of its shaft, or of the shaft of its part, for one turn of the main shaft
     */
    public double ratioAt(MeasuringPoint point) {
        Objects.requireNonNull(point, "point");
        return point.shaft().or(() -> point.part().flatMap(id -> part(id).shaft())).map(known.train::ratioOf)
                .orElse(1.0);
    }

    /**
     * Returns the speed given for the shaft at a point.
     *
     * @param point a point of this machine
     * @return speed of the main shaft times {@link #ratioAt}, if a speed is stated
     */
    public Optional<RotationSpeed> speedAt(MeasuringPoint point) {
        return speed().map(main -> RotationSpeed.ofHertz(main.hertz() * ratioAt(point)));
    }

    /**
     * {@return turns of the shaft of the first part that is an electric motor for one turn of the main shaft; 1 where
     * no part is one}
     */
    public double motorRatio() {
        return known.parts.stream()
                .filter(part -> part.machine().kind().filter(kind -> kind == MachineKind.ELECTRIC_MOTOR).isPresent())
                .findFirst().flatMap(MachinePart::shaft).map(known.train::ratioOf).orElse(1.0);
    }

    /**
     * Returns the earlier values of a point.
     *
     * @param pointId id of the point
     * @return value by the name of its descriptor; empty if there are none
     */
    public Map<String, Double> baseline(String pointId) {
        Objects.requireNonNull(pointId, "pointId");
        return known.baseline.getOrDefault(pointId, Map.of());
    }

    /** {@return the balancing job, if there is one} */
    public Optional<BalancingJob> balancing() {
        return Optional.ofNullable(known.balancing);
    }

    /** {@return instant of the measurement, if stated} */
    public Optional<Instant> measured() {
        return Optional.ofNullable(known.measured);
    }

    /** {@return state of operation, if stated} */
    public Optional<String> state() {
        return Optional.ofNullable(known.state);
    }

    /** {@return natural frequencies in Hz, as stated} */
    public List<Double> naturalHertz() {
        return known.naturalHertz;
    }

    /** {@return what tests and inspections showed, by code} */
    public Map<String, Boolean> observations() {
        return known.observations;
    }

    /** {@return facts that were given with an error} */
    public Set<Fact> faulty() {
        return known.faulty;
    }

    /** Returns name and size, as in {@code Brine pump 2: pump, 75 kW, support unknown; 4 points}. */
    @Override
    public String toString() {
        return known.name + ": " + known.machine + "; " + known.points.size()
                + (known.points.size() == 1 ? " point" : " points");
    }
}
