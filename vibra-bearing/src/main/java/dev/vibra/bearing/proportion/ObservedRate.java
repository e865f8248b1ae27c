package dev.vibra.bearing.proportion;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * Rate of impacts as multiple of the speed, with the sidebands that were seen about it.
 *
 * @param order rate over speed of rotation, finite, above zero
 * @param sidebands distances of sidebands; empty if there were none
 */
public record ObservedRate(double order, List<SidebandSpacing> sidebands) implements Serializable {
    private static final long serialVersionUID = 1;

    /**
     * Checks the values and copies the list.
     *
     * @param order see the record
     * @param sidebands see the record
     * @throws IllegalArgumentException if the order is out of range
     */
    public ObservedRate {
        Require.positive("order", order, "");
        sidebands = Require.copy("sidebands", sidebands);
    }

    /**
     * Makes a rate without sidebands.
     *
     * @param order rate over speed of rotation, finite, above zero
     * @return the rate
     * @throws IllegalArgumentException if the order is out of range
     */
    public static ObservedRate of(double order) {
        return new ObservedRate(order, List.of());
    }

    /**
     * Returns this rate with sidebands beside those it has.
     *
     * @param spacing their distance over the speed of rotation, finite, above zero: 1 at the speed, about 0.4 at the
     *     rate of a cage
     * @param share depth of the sidebands over that of the line between them, zero or more
     * @return the rate
     * @throws IllegalArgumentException if an argument is out of range
     */
    public ObservedRate withSidebands(double spacing, double share) {
        List<SidebandSpacing> more = new ArrayList<>(sidebands);
        more.add(new SidebandSpacing(spacing, share));
        return new ObservedRate(order, more);
    }

    boolean has(Predicate<SidebandSpacing> kind) {
        return sidebands.stream().anyMatch(kind);
    }

    /** Returns the rate, as in {@code 5.415x with sidebands of 57 % at 1x}. */
    @Override
    public String toString() {
        return Digits.significant(order, 4) + "x" + (sidebands.isEmpty() ? "" : sidebands.stream()
                .map(SidebandSpacing::toString).collect(Collectors.joining(" and ", " with ", "")));
    }
}
