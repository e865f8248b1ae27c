package dev.vibra.simulation;

import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * A fault that a simulated machine has.
 *
 * @param fault id of the fault in the table of faults, as in {@code unbalance/static}
 * @param owner what has it: id of the shaft, coupling, gear stage, belt or bearing; {@code shaft}, {@code motor},
 *     {@code blades} or {@code machine} where there is one only
 */
public record Truth(String fault, String owner) implements Serializable {
    /**
     * Checks that both are told.
     *
     * @param fault see the record
     * @param owner see the record
     */
    public Truth {
        fault = Require.notBlank("fault", fault);
        owner = Require.notBlank("owner", owner);
    }

    /** Two are equal if fault and owner are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Truth truth && fault.equals(truth.fault) && owner.equals(truth.owner);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return 31 * fault.hashCode() + owner.hashCode();
    }

    /** Returns fault and owner, as in {@code unbalance/static at shaft}. */
    @Override
    public String toString() {
        return fault + " at " + owner;
    }
}
