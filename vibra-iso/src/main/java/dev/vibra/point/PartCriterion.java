package dev.vibra.point;

import dev.vibra.machine.CoupledParts;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MachineDescription.Fact;
import dev.vibra.machine.MachinePart;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.Choice;
import dev.vibra.severity.Coupling;
import dev.vibra.severity.CriterionRequest;
import dev.vibra.severity.Machine;
import dev.vibra.severity.Severity;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The severity criterion of one part of a machine, or why there is none. Immutable. */
public final class PartCriterion implements Serializable {
    private static final long serialVersionUID = 1;
    private static final List<Fact> FACTS = List.of(Fact.MACHINE, Fact.SPEED, Fact.CRITERION);

    private final String part;
    private final Severity severity;
    private final String doubt;

    private PartCriterion(String part, Severity severity, String doubt) {
        this.part = part;
        this.severity = Objects.requireNonNull(severity, "severity");
        this.doubt = doubt;
    }

    private Object readResolve() {
        return new PartCriterion(part, severity, doubt);
    }

    /**
     * Chooses the criteria of a machine. One asked for the machine as a whole holds for the parts that it covers; the
     * others are judged by their own, unless it covers none: then it was meant, and that it is out of scope is said.
     *
     * @param machine the machine
     * @return one criterion for each part, at least one
     */
    public static List<PartCriterion> of(MachineDescription machine) {
        Objects.requireNonNull(machine, "machine");
        String doubt = machine.faulty().stream().filter(FACTS::contains).map(Fact::toString)
                .collect(Collectors.joining(", "));
        String reason = doubt.isEmpty() ? null : "the criterion depends on facts that the description gives with an"
                + " error: " + doubt;
        if (machine.parts().isEmpty()) {
            return List.of(new PartCriterion(null, severity(machine.machine(), machine.criterion()), reason));
        }
        List<MachinePart> covered = machine.parts().stream()
                .filter(part -> covers(machine.criterion(), machineOf(part, machine))).toList();
        List<PartCriterion> criteria = new ArrayList<>();
        for (MachinePart part : machine.parts()) {
            Optional<CriterionRequest> request = part.criterion().or(() -> covered.isEmpty() || covered.contains(part)
                    ? machine.criterion() : Optional.empty());
            criteria.add(new PartCriterion(part.id(), severity(machineOf(part, machine), request), reason));
        }
        return criteria;
    }

    private static boolean covers(Optional<CriterionRequest> request, Machine machine) {
        if (request.isEmpty()) {
            return false;
        }
        Choice choice = Severity.of(machine, request.get()).choice();
        return choice.hasCriterion() && choice.outOfScope().isEmpty();
    }

    private static Severity severity(Machine machine, Optional<CriterionRequest> request) {
        return request.map(asked -> Severity.of(machine, asked)).orElseGet(() -> Severity.of(machine));
    }

    /** A part has the speed of its shaft, and the support of the machine where it states none of its own. */
    private static Machine machineOf(MachinePart part, MachineDescription description) {
        Machine machine = part.machine();
        double ratio = part.shaft().map(description.train()::ratioOf).orElse(1.0);
        if (machine.speed().isEmpty() && description.speed().isPresent()) {
            machine = machine.withSpeed(RotationSpeed.ofHertz(ratio * description.speed().get().hertz()));
        }
        machine = machine.support().isEmpty() && description.machine().support().isPresent()
                ? machine.withSupport(description.machine().support().get()) : machine;
        return machine.coupling().isPresent() ? machine : coupled(machine, part.id(), description);
    }

    /** Of several couplings a rigid one counts: it makes two parts shake as one. */
    private static Machine coupled(Machine machine, String part, MachineDescription description) {
        Machine coupled = machine;
        for (CoupledParts coupling : description.train().couplings()) {
            Optional<MachinePart> other = coupling.coupledTo(part).map(description::part);
            if (other.isPresent() && coupled.coupling().filter(Coupling.RIGID::equals).isEmpty()) {
                coupled = other.get().machine().kind().isPresent()
                        ? coupled.withCoupling(coupling.kind(), other.get().machine().kind().get())
                        : coupled.withCoupling(coupling.kind());
            }
        }
        return coupled;
    }

    /** {@return id of the part; empty if the machine is one part} */
    public Optional<String> part() {
        return Optional.ofNullable(part);
    }

    /** {@return what judges the part} */
    public Severity severity() {
        return severity;
    }

    /** {@return which criterion was chosen, and why} */
    public Choice choice() {
        return severity.choice();
    }

    /** {@return why no point of the part can be judged; empty if nothing speaks against it} */
    public Optional<String> obstacle() {
        return Stream.of(Optional.ofNullable(doubt), choice().hasCriterion() ? Optional.<String>empty()
                : Optional.of(choice().reason())).flatMap(Optional::stream).findFirst();
    }

    /** Two are equal if part, severity and doubt are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof PartCriterion criterion && Objects.equals(part, criterion.part)
                && severity.equals(criterion.severity) && Objects.equals(doubt, criterion.doubt);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(part, severity, doubt);
    }

    /** Returns part and criterion. */
    @Override
    public String toString() {
        return (part == null ? "" : part + ": ") + obstacle().orElse(choice().toString());
    }
}
