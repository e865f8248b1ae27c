package dev.vibra.machine;

import dev.vibra.balance.tolerance.BalanceGrade;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** What is known of the rotor: {@code RotorData.unknown().withMassKilograms(64).withGrade(...)}. Immutable. */
public final class RotorData implements Serializable {
    private static final long serialVersionUID = 2;

    private final Double massKilograms;
    private final BalanceGrade grade;
    private final Integer planes;
    private final Arrangement arrangement;

    private RotorData(Double massKilograms, BalanceGrade grade, Integer planes, Arrangement arrangement) {
        this.massKilograms = massKilograms == null ? null
                : Double.valueOf(Require.positive("massKilograms", massKilograms, "kg"));
        this.grade = grade;
        Facts.countOrNull("planes", planes);
        this.planes = planes;
        this.arrangement = arrangement;
    }

    private Object readResolve() {
        return new RotorData(massKilograms, grade, planes, arrangement);
    }

    /** {@return a rotor of which nothing is known} */
    public static RotorData unknown() {
        return new RotorData(null, null, null, null);
    }

    /**
     * States the mass.
     *
     * @param kilograms mass in kg, finite and &gt; 0
     * @return the rotor with it
     */
    public RotorData withMassKilograms(double kilograms) {
        return new RotorData(kilograms, grade, planes, arrangement);
    }

    /**
     * States the balance quality grade that is asked for.
     *
     * @param newGrade grade
     * @return the rotor with it
     */
    public RotorData withGrade(BalanceGrade newGrade) {
        return new RotorData(massKilograms, Objects.requireNonNull(newGrade, "grade"), planes, arrangement);
    }

    /**
     * States in how many planes the rotor is corrected.
     *
     * @param number planes, at least 1
     * @return the rotor with it
     */
    public RotorData withPlanes(int number) {
        return new RotorData(massKilograms, grade, number, arrangement);
    }

    /**
     * States where the rotor lies to its bearings.
     *
     * @param place between the bearings or beyond them
     * @return the rotor with it
     */
    public RotorData withArrangement(Arrangement place) {
        return new RotorData(massKilograms, grade, planes, Objects.requireNonNull(place, "arrangement"));
    }

    /** {@return mass in kg, if stated} */
    public OptionalDouble massKilograms() {
        return massKilograms == null ? OptionalDouble.empty() : OptionalDouble.of(massKilograms);
    }

    /** {@return balance quality grade asked for, if stated} */
    public Optional<BalanceGrade> grade() {
        return Optional.ofNullable(grade);
    }

    /** {@return number of correction planes, if stated} */
    public OptionalInt planes() {
        return planes == null ? OptionalInt.empty() : OptionalInt.of(planes);
    }

    /** {@return where the rotor lies to its bearings, if stated} */
    public Optional<Arrangement> arrangement() {
        return Optional.ofNullable(arrangement);
    }

    /** {@return true if the rotor is said to lie beyond its bearings} */
    public boolean isOverhung() {
        return arrangement == Arrangement.OVERHUNG;
    }

    /** Returns what is known, as in {@code rotor 64 kg, G6.3, 2 planes, overhung}. */
    @Override
    public String toString() {
        List<String> parts = new ArrayList<>();
        massKilograms().ifPresent(mass -> parts.add(Digits.compact(mass, 4) + " kg"));
        grade().ifPresent(asked -> parts.add(asked.toString()));
        planes().ifPresent(count -> parts.add(count == 1 ? "1 plane" : count + " planes"));
        arrangement().ifPresent(where -> parts.add(where.toString()));
        return parts.isEmpty() ? "rotor" : "rotor " + String.join(", ", parts);
    }
}
