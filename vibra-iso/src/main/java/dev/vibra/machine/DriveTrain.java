package dev.vibra.machine;

import dev.vibra.internal.Require;
import dev.vibra.internal.ShaftSpeeds;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Consumer;

/**
 * What turns, meshes and passes on a machine, and at which rates:
 * {@code DriveTrain.plain().withBlades(7).ratesAt(24.75)}. All speeds follow from one, that of the main shaft, which
 * the speed of the machine is stated for. Immutable.
 */
public final class DriveTrain implements Serializable {
    private static final long serialVersionUID = 1;

    private final Known known;

    private DriveTrain(Known known) {
        this.known = Objects.requireNonNull(known, "known");
    }

    private Object readResolve() {
        return new DriveTrain(known);
    }

    /** Written once, by the chain, before the train is handed out. */
    private static final class Known extends Facts {
        private static final long serialVersionUID = 1;
        private Map<String, Double> shafts = Map.of();
        private List<GearStage> gears = List.of();
        private List<Belt> belts = List.of();
        private List<CoupledParts> couplings = List.of();
        private Integer blades;
        private Integer guideVanes;
        private String bladedShaft;
        private Motor motor = Motor.unknown();
        private Double lineHertz;

        @Override
        void check() {
            Map<String, Double> copy = new LinkedHashMap<>();
            shafts.forEach((id, ratio) -> copy.put(Require.notBlank("shaft id", id),
                    Require.positive("ratio of " + id, ratio, "")));
            shafts = Collections.unmodifiableMap(copy);
            gears = Require.copy("gears", gears);
            gears.forEach(gear -> gear.shaft().ifPresent(this::ratioOf));
            belts = Require.copy("belts", belts);
            belts.forEach(belt -> belt.drivingShaft().ifPresent(this::ratioOf));
            couplings = Require.copy("couplings", couplings);
            countOrNull("blades", blades);
            countOrNull("guideVanes", guideVanes);
            if (bladedShaft != null) {
                ratioOf(bladedShaft);
            }
            Objects.requireNonNull(motor, "motor");
            if (lineHertz != null) {
                Require.positive("line frequency", lineHertz, "Hz");
            }
        }

        private double ratioOf(String shaft) {
            Double ratio = shafts.get(Objects.requireNonNull(shaft, "shaft"));
            if (ratio == null) {
                throw new IllegalArgumentException("shaft must be one of " + shafts.keySet() + ": " + shaft);
            }
            return ratio;
        }
    }

    private DriveTrain with(Consumer<Known> change) {
        return new DriveTrain(Facts.changed(known, change));
    }

    /** {@return a train of one shaft, of which nothing else is known} */
    public static DriveTrain plain() {
        return new DriveTrain(new Known());
    }

    /**
     * Adds a shaft.
     *
     * @param id id of the shaft, not blank and not taken
     * @param ratio its turns for one turn of the main shaft, finite and &gt; 0
     * @return the train with it
     */
    public DriveTrain withShaft(String id, double ratio) {
        if (known.shafts.containsKey(Objects.requireNonNull(id, "id"))) {
            throw new IllegalArgumentException("shaft id must be given once only: " + id);
        }
        Map<String, Double> longer = new LinkedHashMap<>(known.shafts);
        longer.put(id, ratio);
        return with(changed -> changed.shafts = longer);
    }

    /**
     * Adds a gear stage.
     *
     * @param stage the stage; stages follow in the order of the power flow
     * @return the train with it
     * @throws IllegalArgumentException if the shaft that drives it isn't one of the train
     */
    public DriveTrain withGear(GearStage stage) {
        Objects.requireNonNull(stage, "stage");
        return with(changed -> changed.gears = longer(known.gears, stage));
    }

    /**
     * Adds a belt.
     *
     * @param belt the belt
     * @return the train with it
     * @throws IllegalArgumentException if the shaft that drives it isn't one of the train
     */
    public DriveTrain withBelt(Belt belt) {
        Objects.requireNonNull(belt, "belt");
        return with(changed -> changed.belts = longer(known.belts, belt));
    }

    /**
     * Adds a coupling.
     *
     * @param coupling the coupling
     * @return the train with it
     */
    public DriveTrain withCoupling(CoupledParts coupling) {
        Objects.requireNonNull(coupling, "coupling");
        return with(changed -> changed.couplings = longer(known.couplings, coupling));
    }

    /**
     * States the number of blades or vanes of the wheel on the main shaft.
     *
     * @param number blades, at least 1
     * @return the train with them
     */
    public DriveTrain withBlades(int number) {
        return with(changed -> changed.blades = number);
    }

    /**
     * States which shaft carries the blades, if it isn't the main one.
     *
     * @param shaft id of a shaft of the train
     * @return the train with it
     */
    public DriveTrain withBladesOn(String shaft) {
        Objects.requireNonNull(shaft, "shaft");
        return with(changed -> changed.bladedShaft = shaft);
    }

    /**
     * States the number of fixed vanes around the wheel.
     *
     * @param number vanes, at least 1
     * @return the train with them
     */
    public DriveTrain withGuideVanes(int number) {
        return with(changed -> changed.guideVanes = number);
    }

    /**
     * States what is known of the driving motor.
     *
     * @param motor the motor
     * @return the train with it
     */
    public DriveTrain withMotor(Motor motor) {
        Objects.requireNonNull(motor, "motor");
        return with(changed -> changed.motor = motor);
    }

    /**
     * States the line frequency.
     *
     * @param hertz frequency of the supply, finite and &gt; 0 Hz
     * @return the train with it
     */
    public DriveTrain withLineHertz(double hertz) {
        return with(changed -> changed.lineHertz = hertz);
    }

    private static <T> List<T> longer(List<T> list, T last) {
        List<T> copy = new ArrayList<>(list);
        copy.add(last);
        return List.copyOf(copy);
    }

    /** {@return gear stages in the order of the power flow} */
    public List<GearStage> gears() {
        return known.gears;
    }

    /** {@return belts} */
    public List<Belt> belts() {
        return known.belts;
    }

    /** {@return couplings between parts} */
    public List<CoupledParts> couplings() {
        return known.couplings;
    }

    /** {@return number of blades, if stated} */
    public OptionalInt blades() {
        return known.blades == null ? OptionalInt.empty() : OptionalInt.of(known.blades);
    }

    /** {@return number of fixed vanes, if stated} */
    public OptionalInt guideVanes() {
        return known.guideVanes == null ? OptionalInt.empty() : OptionalInt.of(known.guideVanes);
    }

    /** {@return what is known of the motor} */
    public Motor motor() {
        return known.motor;
    }

    /** {@return line frequency in Hz, if stated} */
    public OptionalDouble lineHertz() {
        return known.lineHertz == null ? OptionalDouble.empty() : OptionalDouble.of(known.lineHertz);
    }

    /**
     * Returns how fast a shaft turns.
     *
     * @param shaft id of a shaft of the train
     * @return its turns for one turn of the main shaft
     */
    public double ratioOf(String shaft) {
        return known.ratioOf(shaft);
    }

    private double hertzOf(Optional<String> shaft, double mainHertz) {
        return mainHertz * shaft.map(this::ratioOf).orElse(1.0);
    }

    /**
     * Works out all rates of the train. A shaft that turns at the speed of another one stands once.
     *
     * @param mainHertz speed of the main shaft in Hz, &gt; 0
     * @return the rates, that of the main shaft first
     */
    public List<Rate> ratesAt(double mainHertz) {
        List<Rate> rates = new ArrayList<>();
        rates.add(new Rate(Rate.Kind.SHAFT, Rate.Kind.SHAFT.toString(), mainHertz));
        known.shafts.forEach((id, ratio) -> addShaft(rates, id, ratio * mainHertz));
        if (known.blades != null) {
            double hertz = known.blades * hertzOf(Optional.ofNullable(known.bladedShaft), mainHertz);
            rates.add(new Rate(Rate.Kind.BLADE_PASSING, Rate.Kind.BLADE_PASSING.toString(), hertz));
        }
        addGears(rates, mainHertz);
        for (Belt belt : known.belts) {
            double driving = hertzOf(belt.drivingShaft(), mainHertz);
            rates.add(new Rate(Rate.Kind.BELT, belt.id(), belt.hertz(driving)));
            addShaft(rates, "driven by " + belt.id(), driving * belt.ratio());
        }
        if (known.lineHertz != null) {
            rates.add(new Rate(Rate.Kind.TWICE_LINE, Rate.Kind.TWICE_LINE.toString(), 2 * known.lineHertz));
        }
        return List.copyOf(rates);
    }

    /**
     * Finds the shafts that a rate belongs to, at whose speeds it can pulsate.
     *
     * @param rate a rate of this train, as {@link #ratesAt} gives it
     * @param mainHertz speed of the main shaft in Hz at which it was worked out, &gt; 0
     * @return of a gear mesh the shafts of its wheels, of blades theirs, in the order of the power flow and each once;
     *     of other rates none
     */
    public List<Rate> shaftsOf(Rate rate, double mainHertz) {
        Objects.requireNonNull(rate, "rate");
        List<Rate> shafts = ratesAt(mainHertz).stream().filter(one -> one.kind() == Rate.Kind.SHAFT).toList();
        List<Integer> counts = switch (rate.kind()) {
            case BLADE_PASSING -> known.blades == null ? List.of() : List.of(known.blades);
            case GEAR_MESH -> known.gears.stream().filter(stage -> stage.id().equals(rate.owner())).findFirst()
                    .map(GearStage::teeth).orElse(List.of());
            case SHAFT, BELT, TWICE_LINE, POLE_PASS -> List.of();
        };
        List<Rate> turning = new ArrayList<>();
        for (int count : counts) {
            if (turning.stream().noneMatch(shaft -> ShaftSpeeds.areSame(shaft.hertz(), rate.hertz() / count))) {
                shafts.stream().filter(shaft -> ShaftSpeeds.areSame(shaft.hertz(), rate.hertz() / count)).findFirst()
                        .ifPresent(turning::add);
            }
        }
        return turning;
    }

    private void addGears(List<Rate> rates, double mainHertz) {
        double input = mainHertz;
        for (GearStage stage : known.gears) {
            double begin = input;
            input = stage.inputHertz().orElseGet(() -> stage.shaft().map(id -> ratioOf(id) * mainHertz).orElse(begin));
            rates.add(new Rate(Rate.Kind.GEAR_MESH, stage.id(), stage.teeth().get(0) * input));
            addShaft(rates, "input of " + stage.id(), input);
            for (int wheel = 1; wheel < stage.teeth().size(); wheel++) {
                boolean last = wheel == stage.teeth().size() - 1;
                addShaft(rates, (last ? "output of " : "idler of ") + stage.id(),
                        input * stage.teeth().get(0) / stage.teeth().get(wheel));
            }
            input *= stage.ratio();
        }
    }

    /** Within a thousandth two shafts are one: coupled parts have a shaft each in the description. */
    private static void addShaft(List<Rate> rates, String owner, double hertz) {
        boolean known = rates.stream().anyMatch(rate -> rate.kind() == Rate.Kind.SHAFT
                && ShaftSpeeds.areSame(rate.hertz(), hertz));
        if (!known) {
            rates.add(new Rate(Rate.Kind.SHAFT, owner, hertz));
        }
    }

    /** Returns how much is known, as in {@code drive train: 2 shafts, 1 gear stages, 0 belts}. */
    @Override
    public String toString() {
        return "drive train: " + (1 + known.shafts.size()) + " shafts, " + known.gears.size() + " gear stages, "
                + known.belts.size() + " belts";
    }
}
