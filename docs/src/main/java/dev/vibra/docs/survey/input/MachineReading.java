package dev.vibra.docs.survey.input;

import dev.vibra.survey.machine.MachineDescription;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What could be read of a machine description and everything that was wrong with it.
 *
 * @param machine the machine without the parts that were wrong; empty if nothing can be surveyed
 * @param problems what was wrong, by line; empty if all is well
 */
public record MachineReading(Optional<MachineDescription> machine, List<Problem> problems) {
    /**
     * Copies the list.
     *
     * @param machine see the record
     * @param problems see the record
     */
    public MachineReading {
        Objects.requireNonNull(machine, "machine");
        problems = List.copyOf(problems);
    }
}
