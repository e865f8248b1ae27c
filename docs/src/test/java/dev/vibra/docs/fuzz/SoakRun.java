package dev.vibra.docs.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Hours of signal, not part of the build:
 *
 * <pre>mvn -B -pl docs -am test -Dtest=SoakRun -Dsurefire.failIfNoSpecifiedTests=false -Dsoak.hours=24</pre>
 *
 * <p>Each hour all values are compared, every meter is stopped and resumed, and the heap is looked at; the figures are
 * printed.
 */
class SoakRun {
    private static final double MOST_GROWTH_MEGABYTES = 2;

    @Test
    void run() {
        Soak soak = new Soak();
        soak.run(Integer.getInteger("soak.hours", 24), 3600);
        System.out.println(soak);
        assertTrue(soak.allocatedBytes() < 4096, soak::toString);
        List<Double> heap = soak.heapMegabytes();
        assertTrue(heap.get(heap.size() - 1) <= heap.get(0) + MOST_GROWTH_MEGABYTES, soak::toString);
    }
}
