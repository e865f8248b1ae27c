package dev.vibra.docs.survey;

import java.io.InterruptedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.ReadWriteLock;
import java.util.concurrent.locks.ReentrantReadWriteLock;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * Does pieces of work, as many at a time as there are threads, and hands over what comes of them in the order of the
 * pieces. A piece for which the memory didn't suffice beside others is done again alone, so that nothing that comes of
 * the work depends on the number of threads.
 *
 * @param <R> what comes of a piece; small against what it takes to make it, since it may have to wait for its turn
 */
final class Crew<R> {
    /** The most that may be asked for. */
    static final int MOST = 64;
    private static final int USUAL_MOST = 4;
    private static final long USUAL_BYTES = 256L << 20;

    private final int threads;
    private final Predicate<R> starved;
    /** Shared by pieces that are done beside others, held whole by one that is done alone. */
    private final ReadWriteLock memory = new ReentrantReadWriteLock(true);

    /**
     * Makes a crew.
     *
     * @param threads pieces done at a time; if one, the caller's own thread does them
     * @param starved true for what comes of a piece for which the memory didn't suffice
     */
    Crew(int threads, Predicate<R> starved) {
        this.threads = threads;
        this.starved = starved;
    }

    /** Returns one thread for each processor and each 256 MB of memory, four at most. */
    static int usualThreads() {
        Runtime process = Runtime.getRuntime();
        long most = Math.min(USUAL_MOST, process.availableProcessors());
        return (int) Math.max(1, Math.min(most, process.maxMemory() / USUAL_BYTES));
    }

    /**
     * Does all pieces. What is thrown for one ends the work, as if they were done one after the other; no thread is
     * alive afterwards.
     *
     * @param pieces the pieces
     * @param work what is done with each; it may be done twice
     * @param begin told of each piece before its result is waited for, in order, in the caller's thread
     * @param take given what came of each piece, in order, in the caller's thread
     * @throws InterruptedIOException if the caller's thread is interrupted
     */
    <T> void work(List<T> pieces, Function<T, R> work, Consumer<T> begin, Consumer<R> take)
            throws InterruptedIOException {
        if (threads > 1 && pieces.size() > 1) {
            workTogether(pieces, work, begin, take);
            return;
        }
        for (T piece : pieces) {
            requireUninterrupted();
            begin.accept(piece);
            take.accept(work.apply(piece));
        }
    }

    private <T> void workTogether(List<T> pieces, Function<T, R> work, Consumer<T> begin, Consumer<R> take)
            throws InterruptedIOException {
        List<Thread> members = new ArrayList<>();
        ExecutorService pool = Executors.newFixedThreadPool(Math.min(threads, pieces.size()),
                loop -> daemon(loop, members));
        try {
            List<Future<R>> results = new ArrayList<>();
            pieces.forEach(piece -> results.add(pool.submit(() -> done(piece, work))));
            for (int i = 0; i < results.size(); i++) {
                requireUninterrupted();
                begin.accept(pieces.get(i));
                take.accept(result(results.set(i, null)));
            }
        } finally {
            pool.shutdownNow();
            members.forEach(Crew::awaitEnd);
        }
    }

    private static Thread daemon(Runnable loop, List<Thread> members) {
        Thread member = new Thread(loop, "survey");
        member.setDaemon(true);
        members.add(member);
        return member;
    }

    private <T> R done(T piece, Function<T, R> work) {
        try {
            R result = holding(memory.readLock(), piece, work);
            if (!starved.test(result)) {
                return result;
            }
        } catch (OutOfMemoryError e) {
            // Beside others only, perhaps.
        }
        return holding(memory.writeLock(), piece, work);
    }

    private static <T, R> R holding(Lock lock, T piece, Function<T, R> work) {
        lock.lock();
        try {
            return work.apply(piece);
        } finally {
            lock.unlock();
        }
    }

    private static <R> R result(Future<R> future) throws InterruptedIOException {
        try {
            return future.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw interrupted();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof Error error) {
                throw error;
            }
            throw (RuntimeException) e.getCause(); // A function throws nothing else.
        }
    }

    private static void requireUninterrupted() throws InterruptedIOException {
        if (Thread.currentThread().isInterrupted()) {
            throw interrupted();
        }
    }

    private static InterruptedIOException interrupted() {
        return new InterruptedIOException("the survey was interrupted");
    }

    /** Waits for what is being done, which looks at no interrupt; an interrupt meanwhile stays. */
    private static void awaitEnd(Thread member) {
        boolean interrupted = Thread.interrupted();
        while (member.isAlive()) {
            try {
                member.join();
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
