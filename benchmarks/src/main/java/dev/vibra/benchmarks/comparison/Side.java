package dev.vibra.benchmarks.comparison;

import java.util.OptionalLong;

/** One way to do tasks. */
interface Side {
    /** Name that stands before a colon and the task in limits and tables. */
    String name();

    boolean has(String task);

    /** How long to run before anything counts: compiled work is warm with the first runs. */
    default double warmUpSeconds() {
        return 0.1;
    }

    /** Processor time of one run in s, again and again until a span of it is spent. */
    double[] seconds(String task, double span);

    /** The figures that come out; none where there is nothing to compare. */
    double[] result(String task);

    /** What one run allocates; empty where nobody counts. */
    default OptionalLong bytes(String task) {
        return OptionalLong.empty();
    }
}
