package dev.vibra.balance.placement;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Masses on positions, and the vibration that they should leave. {@code BalancingJob.corrections(FittedMasses)} tells
 * that in the units of the job.
 *
 * @param planes names of the planes
 * @param masses masses of each plane, in the order of the planes; empty lists where nothing goes on
 * @param sums vector sum of the masses of each plane, radius left open
 * @param left vibration left, one element per reading, zero-to-peak SI
 * @param minimax true if the largest residual was made least, false for the sum of squares
 * @param exact true if nothing within the limits leaves less; false if given sizes were only exchanged one and two at
 *     a time
 */
public record FittedMasses(List<String> planes, List<List<PositionedMass>> masses, List<PlacedMass> sums,
        List<Phasor> left, boolean minimax, boolean exact) implements Serializable {
    /**
     * Copies the lists.
     *
     * @param planes names of the planes
     * @param masses masses of each plane, in the order of the planes; empty lists where nothing goes on
     * @param sums vector sum of the masses of each plane, radius left open
     * @param left vibration left, one element per reading, zero-to-peak SI
     * @param minimax true if the largest residual was made least, false for the sum of squares
     * @param exact true if nothing within the limits leaves less; false if given sizes were only exchanged one and two
     *     at a time
     */
    public FittedMasses {
        Objects.requireNonNull(masses, "masses");
        planes = Require.copy("planes", planes);
        masses = masses.stream().map(one -> Require.copy("masses", one)).toList();
        sums = Require.copy("sums", sums);
        if (masses.size() != planes.size() || sums.size() != planes.size()) {
            throw new IllegalArgumentException("masses and sums must be one per plane, " + planes.size() + ": "
                    + masses.size() + " and " + sums.size());
        }
        left = Require.copy("left", left);
    }

    /**
     * Returns the masses of a plane.
     *
     * @param plane name of the plane
     * @return masses on its positions
     * @throws IllegalArgumentException if there is no such plane
     */
    public List<PositionedMass> in(String plane) {
        Objects.requireNonNull(plane, "plane");
        int index = planes.indexOf(plane);
        if (index < 0) {
            throw new IllegalArgumentException("plane must be one of " + String.join(", ", planes) + ": " + plane);
        }
        return masses.get(index);
    }

    /**
     * Returns the sum of the masses of a plane.
     *
     * @param plane name of the plane
     * @return mass in g
     * @throws IllegalArgumentException if there is no such plane
     */
    public double gramsIn(String plane) {
        return in(plane).stream().mapToDouble(PositionedMass::grams).sum();
    }

    /** Returns the masses in one line. */
    @Override
    public String toString() {
        List<String> parts = new ArrayList<>();
        for (int j = 0; j < planes.size(); j++) {
            parts.add(planes.get(j) + ": " + (masses.get(j).isEmpty() ? "nothing"
                    : String.join(" + ", masses.get(j).stream().map(PositionedMass::toString).toList())));
        }
        return String.join("; ", parts) + (minimax ? " (least largest residual" : " (least squares")
                + (exact ? ")" : "; no exchange of two masses betters it)");
    }
}
