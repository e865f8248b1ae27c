package dev.vibra.severity;

import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Judges the vibration levels of one machine: {@code Severity.of(machine).judge(level)}.
 *
 * <p>The criterion is chosen once, from kind, power, shaft height, support and speed; {@link #choice()} says which and
 * why, {@link #criteria()} what has to be measured: quantity, detector and band of each. Immutable.
 *
 * <p>The band follows the criterion: 10 Hz to 1000 Hz; for part 3 at or below 600 r/min 2 Hz to 1000 Hz. At 600 r/min
 * the rotation frequency sits on the 10 Hz corner of the band-limiting chain, which would take 29 % off it, so 600
 * r/min counts as slow.
 *
 * @see "ISO 20816-3:2022, ISO 10816-7:2009, ISO 14694:2003, ISO 10816-1:1995; on request the others of the tables"
 */
public final class Severity implements Serializable {
    private static final long serialVersionUID = 1;

    private final Choice choice;

    private Severity(Choice choice) {
        this.choice = Objects.requireNonNull(choice, "choice");
    }

    private Object readResolve() {
        return new Severity(choice);
    }

    /**
     * Chooses the criterion from the tables of the library.
     *
     * @param machine what is known of the machine
     * @return the judge of its levels; without criterion if none holds, see {@link #choice()}
     */
    public static Severity of(Machine machine) {
        return by(CriterionTables.shipped().choose(machine));
    }

    /**
     * Takes the criterion asked for from the tables of the library.
     *
     * @param machine what is known of the machine
     * @param request standard, and edition and group if need be
     * @return the judge of its levels; without criterion if the request is refused, see {@link #choice()}
     */
    public static Severity of(Machine machine, CriterionRequest request) {
        return by(CriterionTables.shipped().choose(machine, request));
    }

    /**
     * Judges by a choice already made, from tables of your own for example.
     *
     * @param choice the choice
     * @return the judge
     */
    public static Severity by(Choice choice) {
        return new Severity(choice);
    }

    /** {@return which criteria hold and why, or why none does} */
    public Choice choice() {
        return choice;
    }

    /**
     * Returns the criteria to measure for: quantity, detector and band of each. Several may ask for the same level.
     *
     * @return unmodifiable list; empty if none holds
     */
    public List<Criterion> criteria() {
        return choice.criteria();
    }

    /**
     * Judges levels of which no uncertainty is stated, with that of {@link Measurement#of(Level)}.
     *
     * @param levels one level for each quantity to be judged
     * @return the verdict
     * @throws IllegalStateException if no criterion holds; the message says why
     * @throws IllegalArgumentException if there is no level, two of one quantity, or one that no criterion judges
     */
    public Verdict judge(Level... levels) {
        Objects.requireNonNull(levels, "levels");
        return judge(Arrays.stream(levels).map(Measurement::of).toArray(Measurement[]::new));
    }

    /**
     * Judges measured levels, each by every criterion of its quantity.
     *
     * @param measurements one for each quantity to be judged
     * @return the verdict
     * @throws IllegalStateException if no criterion holds; the message says why
     * @throws IllegalArgumentException if there is no level, two of one quantity, or one that no criterion judges
     *     or whose recording doesn't cover the band of a criterion
     */
    public Verdict judge(Measurement... measurements) {
        Objects.requireNonNull(measurements, "measurements");
        if (!choice.hasCriterion()) {
            throw new IllegalStateException("no criterion to judge by: " + choice.reason());
        }
        checkQuantities(measurements);
        List<Judgement> judgements = new ArrayList<>();
        List<Criterion> notJudged = new ArrayList<>(criteria());
        for (Measurement measurement : measurements) {
            for (Criterion criterion : criteria()) {
                if (criterion.quantity() == measurement.level().quantity()) {
                    judgements.add(criterion.judge(measurement));
                    notJudged.remove(criterion);
                }
            }
        }
        return new Verdict(choice, judgements, notJudged);
    }

    private void checkQuantities(Measurement... measurements) {
        if (measurements.length == 0) {
            throw new IllegalArgumentException("levels must not be empty");
        }
        Set<Quantity> seen = EnumSet.noneOf(Quantity.class);
        for (Measurement measurement : measurements) {
            Quantity quantity = Objects.requireNonNull(measurement, "measurement").level().quantity();
            if (criteria().stream().noneMatch(criterion -> criterion.quantity() == quantity)) {
                throw new IllegalArgumentException("level must measure one of " + criteria().stream()
                        .map(criterion -> criterion.quantity().toString()).distinct().collect(Collectors.joining(", "))
                        + ": " + quantity);
            }
            if (!seen.add(quantity)) {
                throw new IllegalArgumentException("levels must be of different quantities: " + quantity + " twice");
            }
        }
    }

    /** Two judges are equal if their choices are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Severity severity && choice.equals(severity.choice);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return choice.hashCode();
    }

    /** Returns the reason of the choice. */
    @Override
    public String toString() {
        return choice.toString();
    }
}
