package dev.vibra.survey.machine;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.CriterionRequest;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * What is known of one machine. Power is kept in kW and shaft height in mm, because the limits of the standards are
 * drawn in
 * these units and a machine exactly on a limit must stay on it.
 */
public final class MachineDescription implements Serializable {
    private static final long serialVersionUID = 1;

    private final String name;
    private final MachineKind kind;
    private final Double ratedPowerKilowatts;
    private final Double shaftHeightMillimetres;
    private final Support support;
    private final RotationSpeed speed;
    private final Double lineFrequencyHertz;
    private final CriterionRequest criterion;
    private final RotorData rotor;
    private final Integer blades;
    private final List<GearData> gears;
    private final List<BearingData> bearings;
    private final List<MeasuringPoint> points;
    private final Map<String, Map<String, Double>> baseline;
    private final BalancingSheet balancing;
    private final Set<String> faultyFields;

    private MachineDescription(Builder from) {
        this.name = from.name;
        this.kind = from.kind;
        this.ratedPowerKilowatts = from.ratedPowerKilowatts;
        this.shaftHeightMillimetres = from.shaftHeightMillimetres;
        this.support = from.support;
        this.speed = from.speed;
        this.lineFrequencyHertz = from.lineFrequencyHertz;
        this.criterion = from.criterion;
        this.rotor = from.rotor;
        this.blades = from.blades;
        this.gears = List.copyOf(from.gears);
        this.bearings = List.copyOf(from.bearings);
        this.points = List.copyOf(from.points);
        this.baseline = Map.copyOf(from.baseline);
        this.balancing = from.balancing;
        this.faultyFields = Set.copyOf(from.faultyFields);
    }

    /**
     * Begins the description of a machine of which nothing but the name is known.
     *
     * @param name name of the machine, not blank
     * @return builder
     * @throws IllegalArgumentException if the name is blank
     */
    public static Builder named(String name) {
        return new Builder(name);
    }

    /**
     * Returns the name of the machine.
     *
     * @return name, not blank
     */
    public String name() {
        return name;
    }

    /**
     * Returns the kind of machine.
     *
     * @return the kind
     */
    public Optional<MachineKind> kind() {
        return Optional.ofNullable(kind);
    }

    /**
     * Returns the rated power.
     *
     * @return power in kW, above zero
     */
    public Optional<Double> ratedPowerKilowatts() {
        return Optional.ofNullable(ratedPowerKilowatts);
    }

    /**
     * Returns the height of the shaft above the feet.
     *
     * @return height in mm, above zero
     */
    public Optional<Double> shaftHeightMillimetres() {
        return Optional.ofNullable(shaftHeightMillimetres);
    }

    /**
     * Returns the stiffness of the support.
     *
     * @return rigid or flexible
     */
    public Optional<Support> support() {
        return Optional.ofNullable(support);
    }

    /**
     * Returns the speed as given, measured or from the plate.
     *
     * @return speed of the shaft
     */
    public Optional<RotationSpeed> speed() {
        return Optional.ofNullable(speed);
    }

    /**
     * Returns the frequency of the electric supply.
     *
     * @return frequency in Hz, above zero
     */
    public Optional<Double> lineFrequencyHertz() {
        return Optional.ofNullable(lineFrequencyHertz);
    }

    /**
     * Returns the criterion that the machine is to be judged by.
     *
     * @return the criterion
     */
    public Optional<CriterionRequest> criterion() {
        return Optional.ofNullable(criterion);
    }

    /**
     * Returns what is known of the rotor.
     *
     * @return rotor data
     */
    public Optional<RotorData> rotor() {
        return Optional.ofNullable(rotor);
    }

    /**
     * Returns the number of blades or vanes of the impeller.
     *
     * @return blades, 1 or more
     */
    public Optional<Integer> blades() {
        return Optional.ofNullable(blades);
    }

    /**
     * Returns the gear stages.
     *
     * @return stages; empty if none is known
     */
    public List<GearData> gears() {
        return gears;
    }

    /**
     * Returns the rolling bearings of known geometry.
     *
     * @return bearings; empty if none is known
     */
    public List<BearingData> bearings() {
        return bearings;
    }

    /**
     * Finds a bearing.
     *
     * @param id name of the bearing on this machine
     * @return the bearing, if its geometry is known
     */
    public Optional<BearingData> bearing(String id) {
        return bearings.stream().filter(bearing -> bearing.id().equals(id)).findFirst();
    }

    /**
     * Returns the measuring points.
     *
     * @return points in the order given
     */
    public List<MeasuringPoint> points() {
        return points;
    }

    /**
     * Returns reference values from a time when the machine was well.
     *
     * @return value by descriptor name by point id, in the units of the descriptors
     */
    public Map<String, Map<String, Double>> baseline() {
        return baseline;
    }

    /**
     * Returns the balancing job that is to be worked out.
     *
     * @return the job
     */
    public Optional<BalancingSheet> balancing() {
        return Optional.ofNullable(balancing);
    }

    /**
     * Returns the names of the fields that were given but could not be used. What depends on one of them is not to be
     * worked out as if nothing had been given.
     *
     * @return names as in {@code ratedPowerKilowatts}; empty if all is well
     */
    public Set<String> faultyFields() {
        return faultyFields;
    }

    /** Returns name and size, as in {@code Brine pump 2: pump, 37 kW, 4 points}. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(name).append(": ");
        kind().ifPresent(known -> text.append(known).append(", "));
        ratedPowerKilowatts().ifPresent(power -> text.append(Digits.compact(power, 4)).append(" kW, "));
        return text.append(points.size()).append(points.size() == 1 ? " point" : " points").toString();
    }

    /** Collects what is known of a machine; each method checks at once and returns the same builder. */
    public static final class Builder {
        private final String name;
        private MachineKind kind;
        private Double ratedPowerKilowatts;
        private Double shaftHeightMillimetres;
        private Support support;
        private RotationSpeed speed;
        private Double lineFrequencyHertz;
        private CriterionRequest criterion;
        private RotorData rotor;
        private Integer blades;
        private final List<GearData> gears = new ArrayList<>();
        private final List<BearingData> bearings = new ArrayList<>();
        private final List<MeasuringPoint> points = new ArrayList<>();
        private final Map<String, Map<String, Double>> baseline = new LinkedHashMap<>();
        private BalancingSheet balancing;
        private final Set<String> faultyFields = new LinkedHashSet<>();

        private Builder(String name) {
            if (name.isBlank()) {
                throw new IllegalArgumentException("name must not be blank: \"" + name + "\"");
            }
            this.name = name;
        }

        /**
         * Sets the kind of machine.
         *
         * @param known the kind
         * @return this builder
         */
        public Builder kind(MachineKind known) {
            kind = Objects.requireNonNull(known, "kind");
            return this;
        }

        /**
         * Sets the rated power.
         *
         * @param kilowatts power in kW, finite, above zero
         * @return this builder
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder ratedPowerKilowatts(double kilowatts) {
            ratedPowerKilowatts = Require.positive("ratedPowerKilowatts", kilowatts, "kW");
            return this;
        }

        /**
         * Sets the height of the shaft above the feet.
         *
         * @param millimetres height in mm, finite, above zero
         * @return this builder
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder shaftHeightMillimetres(double millimetres) {
            shaftHeightMillimetres = Require.positive("shaftHeightMillimetres", millimetres, "mm");
            return this;
        }

        /**
         * Sets the stiffness of the support.
         *
         * @param known rigid or flexible
         * @return this builder
         */
        public Builder support(Support known) {
            support = Objects.requireNonNull(known, "support");
            return this;
        }

        /**
         * Sets the speed of the shaft.
         *
         * @param known the speed
         * @return this builder
         */
        public Builder speed(RotationSpeed known) {
            speed = Objects.requireNonNull(known, "speed");
            return this;
        }

        /**
         * Sets the frequency of the electric supply.
         *
         * @param hertz frequency in Hz, finite, above zero
         * @return this builder
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder lineFrequencyHertz(double hertz) {
            lineFrequencyHertz = Require.positive("lineFrequencyHertz", hertz, "Hz");
            return this;
        }

        /**
         * Sets the criterion that the machine is to be judged by.
         *
         * @param known the criterion
         * @return this builder
         */
        public Builder criterion(CriterionRequest known) {
            criterion = Objects.requireNonNull(known, "criterion");
            return this;
        }

        /**
         * Sets what is known of the rotor.
         *
         * @param known rotor data
         * @return this builder
         */
        public Builder rotor(RotorData known) {
            rotor = Objects.requireNonNull(known, "rotor");
            return this;
        }

        /**
         * Sets the number of blades or vanes.
         *
         * @param count blades, 1 or more
         * @return this builder
         * @throws IllegalArgumentException if it is below 1
         */
        public Builder blades(int count) {
            blades = Require.atLeast("blades", count, 1);
            return this;
        }

        /**
         * Adds a gear stage.
         *
         * @param stage the stage
         * @return this builder
         */
        public Builder gear(GearData stage) {
            gears.add(Objects.requireNonNull(stage, "gear"));
            return this;
        }

        /**
         * Adds a bearing.
         *
         * @param known the bearing
         * @return this builder
         */
        public Builder bearing(BearingData known) {
            bearings.add(Objects.requireNonNull(known, "bearing"));
            return this;
        }

        /**
         * Adds a measuring point.
         *
         * @param known the point
         * @return this builder
         * @throws IllegalArgumentException if a point of that id is there already
         */
        public Builder point(MeasuringPoint known) {
            if (points.stream().anyMatch(point -> point.id().equals(known.id()))) {
                throw new IllegalArgumentException("point id must be given once only: " + known.id());
            }
            points.add(known);
            return this;
        }

        /**
         * Sets the reference values of a point.
         *
         * @param pointId id of the point
         * @param values value by descriptor name
         * @return this builder
         */
        public Builder baseline(String pointId, Map<String, Double> values) {
            baseline.put(Objects.requireNonNull(pointId, "pointId"), Map.copyOf(values));
            return this;
        }

        /**
         * Sets the balancing job.
         *
         * @param job readings of the job
         * @return this builder
         */
        public Builder balancing(BalancingSheet job) {
            balancing = Objects.requireNonNull(job, "balancing");
            return this;
        }

        /**
         * Notes that a field was given but could not be used.
         *
         * @param field name of the field
         * @return this builder
         */
        public Builder faulty(String field) {
            faultyFields.add(Objects.requireNonNull(field, "field"));
            return this;
        }

        /**
         * Makes the description.
         *
         * @return the machine as described so far
         */
        public MachineDescription build() {
            return new MachineDescription(this);
        }
    }
}
