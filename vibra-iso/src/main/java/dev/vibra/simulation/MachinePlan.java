package dev.vibra.simulation;

import dev.vibra.internal.Require;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What a simulated machine is: parts, bearings, shafts, what meshes and passes, how it stands, where it is measured.
 * {@code MachinePlan.draw(MachinePlan.Form.PUMP_SET, 7).description()} is what a user would tell of it. Immutable;
 * equal seeds draw equal machines.
 */
public final class MachinePlan {
    /** Seeds tried until a machine is found that can have all faults asked for. */
    private static final int MOST_TRIES = 250;

    private final PlanParts parts;

    MachinePlan(PlanParts parts) {
        this.parts = Objects.requireNonNull(parts, "parts");
    }

    /** Machines that are drawn. */
    public enum Form {
        /** A motor that drives nothing. */
        MOTOR,
        /** A motor and a pump at a flexible coupling. */
        PUMP_SET,
        /** A fan wheel on the shaft of the motor. */
        DIRECT_FAN,
        /** A motor and a fan with bearings of its own at a flexible coupling. */
        COUPLED_FAN,
        /** A fan with bearings of its own, driven by a belt. */
        BELT_FAN,
        /** A motor at a gear unit of one stage. */
        GEAR_UNIT,
        /** A motor at a gear unit of two stages. */
        TWO_STAGE_GEAR_UNIT,
        /** A motor and a blower or turbo compressor at a flexible coupling. */
        BLOWER
    }

    /**
     * Draws a machine of a form.
     *
     * @param form what it is
     * @param seed seed of all that is random of it
     * @return the machine
     */
    public static MachinePlan draw(Form form, long seed) {
        return new PlanDraft(Objects.requireNonNull(form, "form"), Draws.of(seed)).plan();
    }

    /**
     * Draws a machine of any form on which faults can sit.
     *
     * @param seed seed of all that is random of it
     * @param faults ids of the table of faults; none for any machine
     * @return the machine
     * @throws IllegalArgumentException if a fault isn't known, or if no machine is found that can have all of them
     */
    public static MachinePlan draw(long seed, List<String> faults) {
        List<String> asked = Require.copy("faults", faults);
        Draws draws = Draws.of(seed);
        for (int i = 0; i < MOST_TRIES; i++) {
            MachinePlan plan = draw(draws.pick(List.of(Form.values())), draws.seed());
            if (asked.stream().allMatch(plan::canHold)) {
                return plan;
            }
        }
        throw new IllegalArgumentException("faults must be such that one machine can have all of them: " + faults);
    }

    /**
     * Tells whether a fault can sit on this machine.
     *
     * @param fault id of the table of faults
     * @return true if the machine has what the fault needs
     * @throws IllegalArgumentException if the fault isn't known
     */
    public boolean canHold(String fault) {
        return FaultModels.of(fault).fits(this);
    }

    /** {@return what was drawn} */
    public Form form() {
        return parts.form();
    }

    /** {@return what a user would tell of the machine; some machines are told less of than others} */
    public MachineDescription description() {
        return parts.description();
    }

    PlanParts parts() {
        return parts;
    }

    int housings() {
        return parts.housings().size();
    }

    /** The motor's rotor is the first. */
    PlanParts.Rotor motor() {
        return parts.rotors().get(0);
    }

    boolean hasMotorSite() {
        return parts.motorIsTold();
    }

    Optional<PlanParts.Link> coupling() {
        return parts.links().stream().findFirst();
    }

    Optional<PlanParts.Drive> belt() {
        return Optional.ofNullable(parts.belt());
    }

    /** {@return true if at least two housings of a rotor are measured in one radial direction} */
    boolean showsBothEnds(PlanParts.Rotor rotor) {
        return List.of(Excitation.HORIZONTAL, Excitation.VERTICAL).stream().anyMatch(direction ->
                shows(rotor.first(), direction) && shows(rotor.second(), direction));
    }

    private boolean shows(int housing, int direction) {
        return parts.points().stream().anyMatch(one -> one.housing() == housing && one.direction() == direction);
    }

    boolean isMeasured(int housing) {
        return parts.points().stream().anyMatch(one -> one.housing() == housing);
    }

    boolean isMeasured(PlanParts.Rotor rotor) {
        return isMeasured(rotor.first()) || isMeasured(rotor.second());
    }

    List<MeasuringPoint> measuringPoints() {
        return parts.description().points();
    }

    /** Returns form and description, as in {@code PUMP_SET: pump set, 8 points}. */
    @Override
    public String toString() {
        return parts.form() + ": " + parts.description();
    }
}
