package dev.vibra.docs.fuzz;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** What became of the inputs of one target. */
final class Tally {
    private final String target;
    private final Map<String, Long> outcomes = new TreeMap<>();
    private final Map<String, Finding> first = new LinkedHashMap<>();
    private final Map<String, Long> counts = new TreeMap<>();
    private long inputs;
    private double seconds;
    private double longest;
    private long most;

    Tally(String target) {
        this.target = target;
    }

    void count(String outcome) {
        outcomes.merge(outcome, 1L, Long::sum);
    }

    /** Returns true for the first of its kind. */
    boolean add(Finding finding) {
        counts.merge(finding.key(), 1L, Long::sum);
        return first.putIfAbsent(finding.key(), finding) == null;
    }

    void replace(Finding finding) {
        first.put(finding.key(), finding);
    }

    void input() {
        inputs++;
    }

    /** What one input cost by the clock on the wall. */
    void cost(double wallSeconds, long bytes) {
        longest = Math.max(longest, wallSeconds);
        most = Math.max(most, bytes);
    }

    /** Processor time of a worker, for the making of inputs too. */
    void took(double cpuSeconds) {
        seconds += cpuSeconds;
    }

    List<Finding> findings() {
        return new ArrayList<>(first.values());
    }

    long inputs() {
        return inputs;
    }

    long outcomes(String outcome) {
        return outcomes.getOrDefault(outcome, 0L);
    }

    /** Figures in one line, outcomes and findings below. */
    @Override
    public String toString() {
        StringBuilder out = new StringBuilder(String.format(Locale.ROOT,
                "%s: %,d inputs, %.1f s of processor time, at most %.3f s (by the clock) and %,d bytes for one; %d kinds"
                + " of findings%n",
                target, inputs, seconds, longest, most, first.size()));
        outcomes.forEach((name, count) -> out.append(String.format(Locale.ROOT, "  %,12d  %s%n", count, name)));
        first.forEach((key, finding) -> out.append(String.format(Locale.ROOT, "%n%,d times: %s%n%s", counts.get(key),
                Shown.escaped(key, 200), finding)));
        return out.toString();
    }
}
