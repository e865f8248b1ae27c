package dev.vibra.machine;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One mesh of a gear: the wheel that drives, wheels between, the wheel that is driven. Immutable.
 *
 * <p>Its input is the shaft stated, or the speed stated, or else the output of the stage before it; the first stage
 * begins at the shaft that the speed of the machine is stated for.
 */
public final class GearStage implements Serializable {
    private static final long serialVersionUID = 1;

    private final String id;
    private final List<Integer> teeth;
    private final String shaft;
    private final Double inputHertz;

    private GearStage(String id, List<Integer> teeth, String shaft, Double inputHertz) {
        this.id = Require.notBlank("id", id);
        this.teeth = List.copyOf(Objects.requireNonNull(teeth, "teeth"));
        Require.within("wheels of " + id, teeth.size(), 2, 3, "");
        this.teeth.forEach(count -> Require.atLeast("teeth", count, 1));
        this.shaft = shaft == null ? null : Require.notBlank("shaft", shaft);
        this.inputHertz = inputHertz == null ? null : Double.valueOf(Require.positive("input", inputHertz, "Hz"));
    }

    private Object readResolve() {
        return new GearStage(id, teeth, shaft, inputHertz);
    }

    /**
     * Names a stage.
     *
     * @param id id of the stage
     * @param teeth teeth of the wheels in the order of the power flow: two, or three with an idler between them; each
     * at     least 1
     * @return the stage, driven by the stage before it
     */
    public static GearStage of(String id, List<Integer> teeth) {
        return new GearStage(id, teeth, null, null);
    }

    /**
     * States the shaft that drives the stage.
     *
     * @param newShaft id of the shaft
     * @return the stage with it
     */
    public GearStage drivenBy(String newShaft) {
        return new GearStage(id, teeth, Objects.requireNonNull(newShaft, "shaft"), inputHertz);
    }

    /**
     * States the speed of the wheel that drives.
     *
     * @param hertz turns per second, finite and &gt; 0
     * @return the stage with it
     */
    public GearStage withInputHertz(double hertz) {
        return new GearStage(id, teeth, shaft, hertz);
    }

    /** {@return id of the stage} */
    public String id() {
        return id;
    }

    /** {@return teeth of the wheels in the order of the power flow} */
    public List<Integer> teeth() {
        return teeth;
    }

    /** {@return id of the shaft that drives, if stated} */
    public Optional<String> shaft() {
        return Optional.ofNullable(shaft);
    }

    /** {@return speed of the wheel that drives in Hz, if stated} */
    public OptionalDouble inputHertz() {
        return inputHertz == null ? OptionalDouble.empty() : OptionalDouble.of(inputHertz);
    }

    /** {@return turns of the driven wheel for one turn of the driving one} */
    public double ratio() {
        return (double) teeth.get(0) / teeth.get(teeth.size() - 1);
    }

    /** Returns id and teeth, as in {@code stage 1: 23/71 teeth}. */
    @Override
    public String toString() {
        return id + ": " + String.join("/", teeth.stream().map(String::valueOf).toList()) + " teeth";
    }
}
