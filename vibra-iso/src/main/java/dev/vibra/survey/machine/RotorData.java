package dev.vibra.survey.machine;

import dev.vibra.internal.Digits;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What is known of a rotor for its balancing; each part may be missing.
 *
 * @see "ISO 21940-11:2016, balance quality grades G"
 */
public final class RotorData implements Serializable {
    private static final long serialVersionUID = 1;

    private final Double massKilograms;
    private final String balanceGrade;
    private final Integer planes;
    private final Arrangement arrangement;

    /**
     * Makes rotor data; {@code null} stands for what is not known.
     *
     * @param massKilograms mass in kg, finite, above zero; or null
     * @param balanceGrade grade such as {@code G6.3}; or null
     * @param planes number of correction planes, 1 or more; or null
     * @param arrangement where the mass lies; or null
     */
    public RotorData(Double massKilograms, String balanceGrade, Integer planes, Arrangement arrangement) {
        this.massKilograms = massKilograms;
        this.balanceGrade = balanceGrade;
        this.planes = planes;
        this.arrangement = arrangement;
    }

    /**
     * Returns the mass of the rotor.
     *
     * @return mass in kg
     */
    public Optional<Double> massKilograms() {
        return Optional.ofNullable(massKilograms);
    }

    /**
     * Returns the balance quality grade asked for.
     *
     * @return grade, for example {@code G6.3}
     */
    public Optional<String> balanceGrade() {
        return Optional.ofNullable(balanceGrade);
    }

    /**
     * Returns the number of correction planes.
     *
     * @return planes, 1 or more
     */
    public Optional<Integer> planes() {
        return Optional.ofNullable(planes);
    }

    /**
     * Returns where the mass lies.
     *
     * @return the arrangement
     */
    public Optional<Arrangement> arrangement() {
        return Optional.ofNullable(arrangement);
    }

    /** Returns what is known, as in {@code rotor 64 kg, G6.3, 2 planes, between bearings}. */
    @Override
    public String toString() {
        List<String> parts = new ArrayList<>();
        massKilograms().ifPresent(mass -> parts.add(Digits.compact(mass, 4) + " kg"));
        balanceGrade().ifPresent(parts::add);
        planes().ifPresent(count -> parts.add(count == 1 ? "1 plane" : count + " planes"));
        arrangement().ifPresent(where -> parts.add(where.toString()));
        return parts.isEmpty() ? "rotor" : "rotor " + String.join(", ", parts);
    }
}
