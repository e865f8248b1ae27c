package dev.vibra.balance.influence;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;

/**
 * One run of the machine: what was on the rotor beyond its first state, and what was read.
 *
 * @param name name for messages
 * @param added one element per plane, in kg·m, or kg where the radius was left open
 * @param readings one element per reading, zero-to-peak SI
 */
public record Run(String name, List<Phasor> added, List<Phasor> readings) implements Serializable {
    /**
     * Copies the lists.
     *
     * @param name name for messages
     * @param added one element per plane, in kg·m, or kg where the radius was left open
     * @param readings one element per reading, zero-to-peak SI
     */
    public Run {
        Objects.requireNonNull(name, "name");
        added = Require.copy("added", added);
        readings = Require.copy("readings", readings);
    }
}
