package dev.vibra.docs.fuzz;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Iterator;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.LongStream;

/** Tries inputs one after the other, measures what each costs, and keeps the first finding of every kind. */
final class Fuzzer {
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    private static final long ODD = 0xd1342543de82ef95L;
    private static final long HANGING_NANOS = 30_000_000_000L;
    private static final int MOST_HANGING = 3;
    private static final long CUTTING_NANOS = 2_000_000_000L;

    private final Target target;
    private final Tally tally;
    private volatile Target.Input current;
    private volatile long currentSeed;
    private volatile Thread worker;

    private Fuzzer(Target target) {
        this.target = target;
        this.tally = new Tally(target.name());
    }

    /** Tries as many inputs. */
    static Tally run(Target target, long seed, long inputs) {
        Fuzzer fuzzer = new Fuzzer(target);
        fuzzer.watched(LongStream.range(0, inputs).map(i -> mixed(seed + i * ODD)).iterator());
        return fuzzer.tally;
    }

    /** Tries the input of one seed again. */
    static Tally replay(Target target, long inputSeed) {
        Fuzzer fuzzer = new Fuzzer(target);
        fuzzer.watched(LongStream.of(inputSeed).iterator());
        return fuzzer.tally;
    }

    /** Seeds in a row would give random numbers that are alike. */
    private static long mixed(long seed) {
        long z = (seed ^ seed >>> 32) * 0xbf58476d1ce4e5b9L;
        z = (z ^ z >>> 29) * 0x94d049bb133111ebL;
        return z ^ z >>> 32;
    }

    /** An input that doesn't come to an end is left to itself, with the place where it hangs as a finding. */
    private void watched(Iterator<Long> seeds) {
        Throwable[] failure = new Throwable[1];
        for (int hanging = 0; seeds.hasNext() && failure[0] == null && hanging < MOST_HANGING;) {
            worker = new Thread(() -> work(seeds, failure), "fuzz " + target.name());
            worker.setDaemon(true);
            worker.start();
            watch();
            if (worker.isAlive()) {
                hanging++;
                abandon();
            }
        }
        if (failure[0] != null) {
            throw new AssertionError(target.name() + " -Dfuzz.replay=" + currentSeed + ": the harness failed",
                    failure[0]);
        }
    }

    /** Returns when the worker has ended, or has worked on one input for too long. */
    private void watch() {
        Target.Input seen = null;
        for (long since = 0; worker.isAlive();) {
            long now = THREADS.getThreadCpuTime(worker.getId());
            since = seen == current ? since : now;
            seen = current;
            if (now - since > HANGING_NANOS) {
                return;
            }
            join(worker);
        }
    }

    private void work(Iterator<Long> seeds, Throwable[] failure) {
        try {
            while (Thread.currentThread() == worker && seeds.hasNext()) {
                attempt(seeds.next());
            }
            tally.took(THREADS.getCurrentThreadCpuTime() / 1e9);
        } catch (Throwable e) { // of the harness itself: those of inputs are findings
            failure[0] = e;
        }
    }

    private void abandon() {
        AssertionError hang = new AssertionError("hangs");
        hang.setStackTrace(worker.getStackTrace());
        worker = null;
        tally.count("FINDING");
        tally.add(new Finding(target.name(), currentSeed, current, hang));
    }

    private static void join(Thread worker) {
        try {
            worker.join(500);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private void attempt(long inputSeed) {
        currentSeed = inputSeed;
        Target.Input input = target.input(new Dice(inputSeed));
        current = input;
        tally.input();
        try {
            measured(input);
        } catch (Throwable e) {
            note(new Finding(target.name(), inputSeed, input, e));
            for (Throwable further : e.getSuppressed()) {
                note(new Finding(target.name(), inputSeed, input, further));
            }
        }
    }

    private void note(Finding finding) {
        tally.count("FINDING");
        if (tally.add(finding)) {
            tally.replace(smallest(finding));
        }
    }

    /**
     * What costs too much is tried again, since compiling and loading of classes count once, and others use the
     * machine.
     */
    private void measured(Target.Input input) throws Exception {
        Target.Cost limit = target.limit();
        double bytesAllowed = limit.bytes() + (double) limit.bytesPerByte() * input.size();
        long before = THREADS.getCurrentThreadAllocatedBytes();
        long start = System.nanoTime();
        input.attempt(tally::count);
        double seconds = (System.nanoTime() - start) / 1e9; // The clock of the thread is dear where system calls are.
        long bytes = THREADS.getCurrentThreadAllocatedBytes() - before;
        tally.cost(seconds, bytes);
        if (bytes > bytesAllowed || seconds > limit.seconds()) {
            again(input, bytesAllowed, limit.seconds());
        }
    }

    private void again(Target.Input input, double bytesAllowed, double secondsAllowed) throws Exception {
        long before = THREADS.getCurrentThreadAllocatedBytes();
        long start = THREADS.getCurrentThreadCpuTime();
        input.attempt(outcome -> { });
        double seconds = (THREADS.getCurrentThreadCpuTime() - start) / 1e9;
        long bytes = THREADS.getCurrentThreadAllocatedBytes() - before;
        if (bytes > bytesAllowed || seconds > secondsAllowed) {
            throw new AssertionError(String.format(Locale.ROOT,
                    "costs %.2f s and %,d bytes, allowed are %.1f s and %,.0f bytes",
                    seconds, bytes, secondsAllowed, bytesAllowed));
        }
    }

    /** Cuts parts out of the input as long as the finding stays, not for long. */
    private Finding smallest(Finding found) {
        Finding best = found;
        long start = System.nanoTime();
        for (int parts = 2; best.input() instanceof ByteInput && parts <= 64; parts *= 2) {
            for (int part = 0; part < parts && System.nanoTime() - start < CUTTING_NANOS; part++) {
                Optional<ByteInput> less = ((ByteInput) best.input()).without(part, parts);
                if (less.isEmpty()) {
                    return best;
                }
                Optional<Finding> again = less.flatMap(input -> same(found, input));
                if (again.isPresent()) {
                    best = again.get();
                    part--;
                }
            }
        }
        return best;
    }

    private Optional<Finding> same(Finding found, Target.Input input) {
        try {
            input.attempt(outcome -> { });
        } catch (Throwable e) {
            return Finding.key(e).equals(found.key()) ? Optional.of(new Finding(found.target(), found.seed(), input, e))
                    : Optional.empty();
        }
        return Optional.empty();
    }
}
