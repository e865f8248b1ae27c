package dev.vibra.docs.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Minutes of signal with every build; {@link SoakRun} takes hours. */
class SoakTest {
    @Test
    void minutesOfSignalAreMeasuredWithoutDriftOrGarbage() {
        Soak soak = new Soak();
        soak.run(3, 100);
        // Not of a single block, but a loop that is compiled late may leave an iterator behind.
        assertTrue(soak.allocatedBytes() < 512, soak::toString);
    }
}
