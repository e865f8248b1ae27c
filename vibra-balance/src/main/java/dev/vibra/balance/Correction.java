package dev.vibra.balance;

import dev.vibra.balance.placement.PositionedMass;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;

/**
 * Mass to add in one plane.
 *
 * @param plane name of the plane
 * @param mass mass to add, with its angle
 * @param split the same on the positions of the plane; empty if the plane has no positions
 */
public record Correction(String plane, PlacedMass mass, List<PositionedMass> split) implements Serializable {
    /**
     * Copies the list.
     *
     * @param plane name of the plane
     * @param mass mass to add, with its angle
     * @param split the same on the positions of the plane; empty if the plane has no positions
     */
    public Correction {
        Objects.requireNonNull(plane, "plane");
        Objects.requireNonNull(mass, "mass");
        split = Require.copy("split", split);
    }

    /** Returns plane, mass and split in one line. */
    @Override
    public String toString() {
        String text = plane + " " + mass;
        return split.isEmpty() ? text
                : text + " (" + String.join(" + ", split.stream().map(PositionedMass::toString).toList()) + ")";
    }
}
