package dev.vibra.alarm;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * The baselines of a machine, by measuring point and operating state, with the story of their renewals. Immutable.
 *
 * @see "ISO 13373-1:2002 on baselines: a set of operating states, renewed after an overhaul"
 */
public final class BaselineRegister implements Serializable {
    private static final long serialVersionUID = 1;

    private final LinkedHashMap<String, List<Baseline>> points;
    private final List<String> renewals;

    private BaselineRegister(LinkedHashMap<String, List<Baseline>> points, List<String> renewals) {
        this.points = points;
        this.renewals = List.copyOf(renewals);
    }

    /**
     * Starts without a baseline.
     *
     * @return the empty register
     */
    public static BaselineRegister empty() {
        return new BaselineRegister(new LinkedHashMap<>(), List.of());
    }

    /**
     * Stores a baseline, in place of that of the same point and state if there is one.
     *
     * @param point name of the measuring point, as in {@code DE-H}
     * @param baseline the baseline
     * @return the register with it
     * @throws IllegalArgumentException if the name is blank
     */
    public BaselineRegister with(String point, Baseline baseline) {
        if (Objects.requireNonNull(point, "point").isBlank()) {
            throw new IllegalArgumentException("point must not be blank");
        }
        String name = point.strip();
        LinkedHashMap<String, List<Baseline>> more = new LinkedHashMap<>(points);
        List<Baseline> states = new ArrayList<>(points.getOrDefault(name, List.of()));
        states.removeIf(each -> each.state().equals(baseline.state()));
        states.add(baseline);
        more.put(name, List.copyOf(states));
        return new BaselineRegister(more, renewals);
    }

    /**
     * Drops all baselines of all points: after an overhaul nothing measured before may be compared with.
     *
     * @param reason date and reason in words
     * @return the register without baselines, the reason kept
     * @throws IllegalArgumentException if the reason is blank
     */
    public BaselineRegister renewed(String reason) {
        if (Objects.requireNonNull(reason, "reason").isBlank()) {
            throw new IllegalArgumentException("reason must not be blank");
        }
        List<String> longer = new ArrayList<>(renewals);
        longer.add(reason.strip());
        return new BaselineRegister(new LinkedHashMap<>(), longer);
    }

    /**
     * Finds the baseline to compare with.
     *
     * @param point name of the measuring point; blanks around it don't count
     * @param state operating state; only the same one is like with like
     * @return the baseline; empty if there is none
     */
    public Optional<Baseline> find(String point, String state) {
        String wanted = Objects.requireNonNull(state, "state").strip();
        return points.getOrDefault(Objects.requireNonNull(point, "point").strip(), List.of()).stream()
                .filter(each -> each.state().equals(wanted)).findFirst();
    }

    /**
     * Returns the baselines of each point.
     *
     * @return unmodifiable map in the order of their storing
     */
    public Map<String, List<Baseline>> points() {
        return Collections.unmodifiableMap(points);
    }

    /**
     * Returns why and when the baselines were begun anew.
     *
     * @return unmodifiable list, oldest first
     */
    public List<String> renewals() {
        return renewals;
    }

    /** Two registers are equal if baselines and renewals are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof BaselineRegister register && points.equals(register.points)
                && renewals.equals(register.renewals);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(points, renewals);
    }

    /** Returns the points, as in {@code baselines of DE-H, NDE-H}. */
    @Override
    public String toString() {
        return points.isEmpty() ? "no baseline" : "baselines of " + String.join(", ", points.keySet());
    }
}
