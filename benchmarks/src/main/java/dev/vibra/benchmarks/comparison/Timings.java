package dev.vibra.benchmarks.comparison;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Processor times of works, named side:task, in s. */
final class Timings {
    private final Map<String, List<Double>> seconds = new HashMap<>();
    private final Map<String, Long> bytes = new HashMap<>();

    static String work(String side, String task) {
        return side + ":" + task;
    }

    void add(String work, double[] values) {
        List<Double> all = seconds.computeIfAbsent(work, w -> new ArrayList<>());
        for (double value : values) {
            all.add(value);
        }
    }

    void addBytes(String work, long count) {
        bytes.put(work, count);
    }

    /** The least time: what the work takes when nothing disturbs it. */
    OptionalDouble best(String work) {
        return all(work).stream().mapToDouble(Double::doubleValue).min();
    }

    OptionalDouble median(String work) {
        List<Double> sorted = new ArrayList<>(all(work));
        Collections.sort(sorted);
        return sorted.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(sorted.get(sorted.size() / 2));
    }

    /** Bytes that one run allocates. */
    OptionalDouble bytes(String work) {
        return bytes.containsKey(work) ? OptionalDouble.of(bytes.get(work)) : OptionalDouble.empty();
    }

    /** How many times as long the reference takes, best against best. */
    OptionalDouble ratio(String reference, String work) {
        OptionalDouble over = best(reference);
        OptionalDouble under = best(work);
        return over.isEmpty() || under.isEmpty() ? OptionalDouble.empty()
                : OptionalDouble.of(over.getAsDouble() / under.getAsDouble());
    }

    private List<Double> all(String work) {
        return seconds.getOrDefault(work, List.of());
    }
}
