package dev.vibra.survey;

import dev.vibra.internal.Digits;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.survey.machine.Arrangement;
import dev.vibra.survey.machine.BalancingSheet;
import dev.vibra.survey.machine.MachineDescription;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Whether a balancing job fits the rotor that the description tells of; what it leaves open is said. */
final class BalancingFit {
    /** The library's own bound: within it a coefficient hardly changes, unless a critical speed is near. */
    private static final double SPEED_SHARE = 0.05;

    private BalancingFit() {}

    static List<Omission> of(BalancingSheet sheet, MachineDescription machine) {
        List<Omission> out = new ArrayList<>();
        shares(sheet, machine).ifPresent(out::add);
        couple(sheet, machine).ifPresent(out::add);
        speed(sheet, machine).ifPresent(out::add);
        return out;
    }

    private static Optional<Omission> shares(BalancingSheet sheet, MachineDescription machine) {
        boolean overhung = machine.rotor().flatMap(rotor -> rotor.arrangement()).filter(Arrangement.OVERHUNG::equals)
                .isPresent();
        return overhung && sheet.planes().size() > 1 && sheet.geometry().axial() == null
                ? Optional.of(new Omission("shares of the tolerance", "equal shares are taken; those of an overhung"
                        + " rotor need its places along the axis (balancing.axial)")) : Optional.empty();
    }

    private static Optional<Omission> couple(BalancingSheet sheet, MachineDescription machine) {
        int wanted = machine.rotor().flatMap(rotor -> rotor.planes()).orElse(0);
        return wanted > sheet.planes().size()
                ? Optional.of(new Omission("couple unbalance", "the rotor is said to have " + wanted
                        + " correction planes and the job has " + sheet.planes().size())) : Optional.empty();
    }

    private static Optional<Omission> speed(BalancingSheet sheet, MachineDescription machine) {
        double read = sheet.speedRevolutionsPerMinute();
        double service = machine.speed().map(RotationSpeed::revolutionsPerMinute).orElse(Double.NaN);
        return Math.abs(read / service - 1) > SPEED_SHARE // false if one is not known
                ? Optional.of(new Omission("vibration at service speed", "the job was read at "
                        + Digits.compact(read, 5) + " r/min and the machine runs at " + Digits.compact(service, 5)
                        + " r/min:"
                        + " a rotor that bends between them needs readings at both")) : Optional.empty();
    }
}
