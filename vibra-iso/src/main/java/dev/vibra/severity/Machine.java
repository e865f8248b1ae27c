package dev.vibra.severity;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the choice of a severity criterion needs to know of a machine; each fact may stay unknown.
 *
 * <p>Immutable: start from {@link #of(MachineKind)} or {@link #unknown()} and add what is known.
 */
public final class Machine implements Serializable {
    private static final long serialVersionUID = 1;

    private final MachineKind kind;
    private final Double powerWatts;
    private final Double shaftHeightMetres;
    private final Support support;
    private final RotationSpeed speed;

    private final Coupling coupling;
    private final MachineKind coupledTo;

    private Machine(MachineKind kind, Double powerWatts, Double shaftHeightMetres, Support support,
            RotationSpeed speed, Coupling coupling, MachineKind coupledTo) {
        this.kind = kind;
        this.powerWatts = powerWatts == null ? null : Double.valueOf(Require.positive("rated power", powerWatts, "W"));
        this.shaftHeightMetres = shaftHeightMetres == null ? null
                : Double.valueOf(Require.positive("shaft height", shaftHeightMetres, "m"));
        this.support = support;
        this.speed = speed;
        this.coupling = coupling;
        this.coupledTo = coupledTo;
    }

    private Object readResolve() {
        return new Machine(kind, powerWatts, shaftHeightMetres, support, speed, coupling, coupledTo);
    }

    /**
     * Starts with a machine of which nothing is known.
     *
     * @return the machine
     */
    public static Machine unknown() {
        return new Machine(null, null, null, null, null, null, null);
    }

    /**
     * Starts with a machine of a kind.
     *
     * @param kind what the machine is
     * @return the machine
     */
    public static Machine of(MachineKind kind) {
        return unknown().withKind(kind);
    }

    /**
     * Says what the machine is.
     *
     * @param newKind what the machine is
     * @return the machine with that kind
     */
    public Machine withKind(MachineKind newKind) {
        return new Machine(Objects.requireNonNull(newKind, "kind"), powerWatts, shaftHeightMetres, support, speed,
                coupling, coupledTo);
    }

    /**
     * Says the rated power.
     *
     * @param kilowatts rated power in kW, finite, above zero
     * @return the machine with that power
     * @throws IllegalArgumentException if the value is out of range
     */
    public Machine withRatedPowerKilowatts(double kilowatts) {
        double watts = Require.positive("rated power", kilowatts, "kW") * 1000;
        return new Machine(kind, watts, shaftHeightMetres, support, speed, coupling, coupledTo);
    }

    /**
     * Says the shaft height: from the plane of the feet to the centre line of the shaft.
     *
     * @param millimetres shaft height in mm, finite, above zero
     * @return the machine with that shaft height
     * @throws IllegalArgumentException if the value is out of range
     */
    public Machine withShaftHeightMillimetres(double millimetres) {
        double metres = Require.positive("shaft height", millimetres, "mm") / 1000;
        return new Machine(kind, powerWatts, metres, support, speed, coupling, coupledTo);
    }

    /**
     * Says how the machine stands in the direction of the measurement.
     *
     * @param newSupport rigid or flexible
     * @return the machine with that support
     */
    public Machine withSupport(Support newSupport) {
        return new Machine(kind, powerWatts, shaftHeightMetres, Objects.requireNonNull(newSupport, "support"), speed,
                coupling, coupledTo);
    }

    /**
     * Says the operating speed.
     *
     * @param newSpeed speed of the shaft
     * @return the machine with that speed
     */
    public Machine withSpeed(RotationSpeed newSpeed) {
        return new Machine(kind, powerWatts, shaftHeightMetres, support, Objects.requireNonNull(newSpeed, "speed"),
                coupling, coupledTo);
    }

    /**
     * Says how an electrical machine is coupled to a machine of which no more is said.
     *
     * @param newCoupling flexible or rigid
     * @return the machine with that coupling
     */
    public Machine withCoupling(Coupling newCoupling) {
        return new Machine(kind, powerWatts, shaftHeightMetres, support, speed,
                Objects.requireNonNull(newCoupling, "coupling"), null);
    }

    /**
     * Says how an electrical machine is coupled, and to what. A motor rigidly coupled to a pump is judged with it.
     *
     * @param newCoupling flexible or rigid
     * @param to kind of the machine on the other side
     * @return the machine with that coupling
     */
    public Machine withCoupling(Coupling newCoupling, MachineKind to) {
        return new Machine(kind, powerWatts, shaftHeightMetres, support, speed,
                Objects.requireNonNull(newCoupling, "coupling"), Objects.requireNonNull(to, "to"));
    }

    /** {@return what the machine is; empty if unknown} */
    public Optional<MachineKind> kind() {
        return Optional.ofNullable(kind);
    }

    /**
     * Returns the rated power.
     *
     * @return rated power in W; empty if unknown
     */
    public OptionalDouble ratedPowerWatts() {
        return powerWatts == null ? OptionalDouble.empty() : OptionalDouble.of(powerWatts);
    }

    /**
     * Returns the shaft height.
     *
     * @return shaft height in m; empty if unknown
     */
    public OptionalDouble shaftHeightMetres() {
        return shaftHeightMetres == null ? OptionalDouble.empty() : OptionalDouble.of(shaftHeightMetres);
    }

    /** {@return how the machine stands; empty if unknown} */
    public Optional<Support> support() {
        return Optional.ofNullable(support);
    }

    /** {@return the operating speed; empty if unknown} */
    public Optional<RotationSpeed> speed() {
        return Optional.ofNullable(speed);
    }

    /** {@return how the machine is coupled; empty if unknown} */
    public Optional<Coupling> coupling() {
        return Optional.ofNullable(coupling);
    }

    /**
     * Returns what the machine is coupled to.
     *
     * @return kind of the machine on the other side; empty if unknown
     */
    public Optional<MachineKind> coupledTo() {
        return Optional.ofNullable(coupledTo);
    }

    /** Two machines are equal if all that is known of them is. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Machine machine
                && kind == machine.kind
                && Objects.equals(powerWatts, machine.powerWatts)
                && Objects.equals(shaftHeightMetres, machine.shaftHeightMetres)
                && support == machine.support
                && Objects.equals(speed, machine.speed)
                && coupling == machine.coupling
                && coupledTo == machine.coupledTo;
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(kind, powerWatts, shaftHeightMetres, support, speed, coupling, coupledTo);
    }

    /** Returns what is known, as in {@code pump, 37 kW, shaft height 225 mm, rigid support, 1480 r/min (24.67 Hz)}. */
    @Override
    public String toString() {
        List<String> parts = new ArrayList<>();
        parts.add(kind == null ? "machine of unknown kind" : kind.toString());
        if (powerWatts != null) {
            parts.add(Digits.compact(powerWatts / 1000, 6) + " kW");
        }
        if (shaftHeightMetres != null) {
            parts.add("shaft height " + Digits.compact(shaftHeightMetres * 1000, 6) + " mm");
        }
        parts.add(support == null ? "support unknown" : support + " support");
        if (speed != null) {
            parts.add(speed.toString());
        }
        if (coupling != null) {
            parts.add(coupling + " coupling" + (coupledTo == null ? "" : " to a " + coupledTo));
        }
        return String.join(", ", parts);
    }
}
