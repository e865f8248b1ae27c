package dev.vibra.alarm;

import dev.vibra.internal.Require;
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
 * @param points baselines of each point, in the order of their storing
 * @param renewals why and when the baselines were begun anew, oldest first
 * @see "ISO 13373-1:2002 on baselines: a set of operating states, renewed after an overhaul"
 */
public record BaselineRegister(Map<String, List<Baseline>> points, List<String> renewals) implements Serializable {
    /**
     * Copies map and list.
     *
     * @param points baselines of each point
     * @param renewals reasons of renewals
     */
    public BaselineRegister {
        Objects.requireNonNull(points, "points");
        Map<String, List<Baseline>> copy = new LinkedHashMap<>();
        points.forEach((point, states) -> copy.put(Objects.requireNonNull(point, "point"),
                Require.copy("points", states)));
        points = Collections.unmodifiableMap(copy);
        renewals = Require.copy("renewals", renewals);
    }

    /**
     * Starts without a baseline.
     *
     * @return the empty register
     */
    public static BaselineRegister empty() {
        return new BaselineRegister(Map.of(), List.of());
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
        Objects.requireNonNull(baseline, "baseline");
        if (Objects.requireNonNull(point, "point").isBlank()) {
            throw new IllegalArgumentException("point must not be blank");
        }
        String name = point.strip();
        Map<String, List<Baseline>> more = new LinkedHashMap<>(points);
        List<Baseline> states = new ArrayList<>(points.getOrDefault(name, List.of()));
        states.removeIf(each -> each.state().equals(baseline.state()));
        states.add(baseline);
        more.put(name, states);
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
        return new BaselineRegister(Map.of(), longer);
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

    /** Returns the points, as in {@code baselines of DE-H, NDE-H}. */
    @Override
    public String toString() {
        return points.isEmpty() ? "no baseline" : "baselines of " + String.join(", ", points.keySet());
    }
}
