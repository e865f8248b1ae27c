package dev.vibra.benchmarks.comparison;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalLong;
import java.util.function.Supplier;

/** Works that run in this process, on this thread. */
final class JavaSide implements Side {
    /** So many runs are timed at once that reading the clock doesn't count, in ns. */
    private static final long SHORTEST = 200_000;
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();


    private final String name;
    private final Map<String, Work> works = new HashMap<>();
    private final Map<String, Integer> repeats = new HashMap<>();
    /** Keeps the compiler from leaving work out. */
    private Object latest;

    /** What is timed, and what comes of it. */
    private record Work(Supplier<?> timed, Supplier<double[]> figures) {}

    JavaSide(String name) {
        this.name = name;
    }

    JavaSide with(String task, Supplier<double[]> work) {
        return with(task, work, work);
    }

    JavaSide with(String task, Supplier<?> timed, Supplier<double[]> figures) {
        works.put(task, new Work(timed, figures));
        return this;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public boolean has(String task) {
        return works.containsKey(task);
    }

    /** Until the compiler has done with it. */
    @Override
    public double warmUpSeconds() {
        return 1;
    }

    @Override
    public double[] result(String task) {
        return works.get(task).figures().get();
    }

    @Override
    public double[] seconds(String task, double span) {
        Supplier<?> timed = works.get(task).timed();
        double[] values = new double[1024];
        int count = 0;
        double spent = 0;
        while ((spent < span || count < 3) && count < values.length) {
            int together = repeats.getOrDefault(task, 1);
            double once = cost(timed, together) * 1e-9;
            if (once < SHORTEST * 1e-9) {
                repeats.put(task, 2 * together);
                count = 0;
            }
            spent += once;
            values[count++] = once / together;
        }
        return Arrays.copyOf(values, count);
    }

    private long cost(Supplier<?> timed, int runs) {
        long begin = THREADS.getCurrentThreadCpuTime();
        for (int i = 0; i < runs; i++) {
            latest = timed.get();
        }
        return THREADS.getCurrentThreadCpuTime() - begin;
    }

    @Override
    public OptionalLong bytes(String task) {
        Supplier<?> timed = works.get(task).timed();
        long least = Long.MAX_VALUE;
        for (int i = 0; i < 5; i++) {
            long begin = THREADS.getCurrentThreadAllocatedBytes();
            latest = timed.get();
            least = Math.min(least, THREADS.getCurrentThreadAllocatedBytes() - begin);
        }
        return OptionalLong.of(least);
    }
}
