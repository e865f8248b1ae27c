package dev.vibra.machine;

import dev.vibra.internal.Require;
import dev.vibra.severity.CriterionRequest;
import dev.vibra.severity.Machine;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/** One part of a machine that is judged by a criterion of its own: the motor of a pump set, and the pump. Immutable. */
public final class MachinePart implements Serializable {
    private static final long serialVersionUID = 1;

    private final String id;
    private final Machine machine;
    private final String shaft;
    private final CriterionRequest criterion;

    private MachinePart(String id, Machine machine, String shaft, CriterionRequest criterion) {
        this.id = Require.notBlank("id", id);
        this.machine = Objects.requireNonNull(machine, "machine");
        this.shaft = shaft == null ? null : Require.notBlank("shaft", shaft);
        this.criterion = criterion;
    }

    private Object readResolve() {
        return new MachinePart(id, machine, shaft, criterion);
    }

    /**
     * Names a part.
     *
     * @param id id of the part on its machine, not blank
     * @param machine what its criterion is chosen by; a speed stated here goes before that of its shaft
     * @return the part, on the shaft that the speed of the machine is stated for
     */
    public static MachinePart of(String id, Machine machine) {
        return new MachinePart(id, machine, null, null);
    }

    /**
     * States on which shaft the part lies.
     *
     * @param newShaft id of the shaft
     * @return the part with it
     */
    public MachinePart onShaft(String newShaft) {
        return new MachinePart(id, machine, Objects.requireNonNull(newShaft, "shaft"), criterion);
    }

    /**
     * Asks for a criterion for this part.
     *
     * @param request the criterion asked for
     * @return the part with it
     */
    public MachinePart withCriterion(CriterionRequest request) {
        return new MachinePart(id, machine, shaft, Objects.requireNonNull(request, "criterion"));
    }

    /** {@return id of the part} */
    public String id() {
        return id;
    }

    /** {@return what the criterion is chosen by} */
    public Machine machine() {
        return machine;
    }

    /** {@return id of the shaft, if stated} */
    public Optional<String> shaft() {
        return Optional.ofNullable(shaft);
    }

    /** {@return the criterion asked for, if one was} */
    public Optional<CriterionRequest> criterion() {
        return Optional.ofNullable(criterion);
    }

    /** Returns id and machine, as in {@code pump: pump, 75 kW, support unknown}. */
    @Override
    public String toString() {
        return id + ": " + machine;
    }
}
