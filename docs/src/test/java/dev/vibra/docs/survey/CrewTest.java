package dev.vibra.docs.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InterruptedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Order, number of pieces at a time, failures, memory, interrupts; and that no thread outlives the work. */
@Timeout(60)
class CrewTest {
    private static final List<Integer> PIECES = IntStream.range(0, 40).boxed().toList();

    private final List<Object> events = new ArrayList<>();
    private final AtomicInteger busy = new AtomicInteger();
    private final AtomicInteger most = new AtomicInteger();
    private final Set<Thread> workers = ConcurrentHashMap.newKeySet();

    private <R> void work(Crew<R> crew, Function<Integer, R> work) throws InterruptedIOException {
        crew.work(PIECES, piece -> counted(piece, work), piece -> events.add("begin " + piece), events::add);
    }

    private <R> R counted(int piece, Function<Integer, R> work) {
        workers.add(Thread.currentThread());
        most.accumulateAndGet(busy.incrementAndGet(), Math::max);
        try {
            return work.apply(piece);
        } finally {
            busy.decrementAndGet();
        }
    }

    private void assertNobodyWorks() {
        workers.remove(Thread.currentThread());
        workers.forEach(worker -> assertTrue(!worker.isAlive() && worker.isDaemon(), worker.toString()));
    }

    private static void pause(long millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** The later a piece, the sooner it is done. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 7, 64})
    void resultsComeInTheOrderOfThePiecesAndNoMoreThanAskedForAreInWork(int threads) throws InterruptedIOException {
        work(new Crew<Integer>(threads, result -> false), piece -> {
            pause((40 - piece) / 4);
            return piece;
        });
        List<Object> expected = new ArrayList<>();
        PIECES.forEach(piece -> expected.addAll(List.of("begin " + piece, piece)));
        assertEquals(expected, events);
        assertTrue(most.get() <= threads, "at a time " + most);
        assertEquals(threads == 1, workers.contains(Thread.currentThread()));
        assertNobodyWorks();
    }

    @Test
    void twoThreadsWorkAtATime() throws InterruptedIOException {
        CountDownLatch both = new CountDownLatch(2);
        work(new Crew<Integer>(2, result -> false), piece -> {
            both.countDown();
            try {
                both.await();
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
            return piece;
        });
        assertEquals(2, most.get());
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3})
    void whatIsThrownForAPieceEndsTheWorkInItsTurn(int threads) {
        for (Throwable thrown : List.of(new IllegalStateException("x"), new InternalError("y"))) {
            events.clear();
            Throwable caught = assertThrows(thrown.getClass(), () -> work(new Crew<Integer>(threads, result -> false),
                    piece -> {
                        if (piece == 5) {
                            CrewTest.<RuntimeException>sneak(thrown);
                        }
                        return piece;
                    }));
            assertSame(thrown, caught);
            assertEquals(11, events.size(), "five pieces, and the beginning of the sixth");
            assertNobodyWorks();
        }
    }

    @SuppressWarnings("unchecked")
    private static <E extends Throwable> void sneak(Throwable thrown) throws E {
        throw (E) thrown;
    }

    /** What suffices for a piece alone suffices with many threads; what doesn't is told as by one thread. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 8})
    void aPieceWithoutMemoryIsDoneAgainAlone(int threads) throws InterruptedIOException {
        work(new Crew<String>(threads, result -> result.startsWith("starved")), piece -> {
            pause(1);
            if (piece % 10 == 3) {
                return "starved " + piece; // even alone
            }
            if (piece % 10 == 7 && busy.get() > 1) {
                return "starved beside others";
            }
            if (piece % 10 == 8 && busy.get() > 1) {
                throw new OutOfMemoryError("beside others");
            }
            return "done " + piece;
        });
        for (int i = 0; i < 40; i++) {
            assertEquals((i % 10 == 3 ? "starved " : "done ") + i, events.get(2 * i + 1));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void anInterruptEndsTheWorkAndStays(int threads) {
        Thread caller = Thread.currentThread();
        InterruptedIOException end = assertThrows(InterruptedIOException.class, () ->
                work(new Crew<Integer>(threads, result -> false), piece -> {
                    if (piece == 2) {
                        caller.interrupt();
                    }
                    return piece;
                }));
        assertTrue(Thread.interrupted());
        assertEquals("the survey was interrupted", end.getMessage());
        assertNobodyWorks();
    }

    @Test
    void theUsualNumberFitsProcessorsAndMemory() {
        int usual = Crew.usualThreads();
        assertTrue(usual >= 1 && usual <= Math.min(4, Runtime.getRuntime().availableProcessors()), "usual " + usual);
    }
}
