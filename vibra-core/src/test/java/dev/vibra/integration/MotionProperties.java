package dev.vibra.integration;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Quantity;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** The error that a level states, in simulated recordings whose truth is known. */
class MotionProperties {
    private static final int RECORDS = 40;
    /** Of 40 of which 95 % hold, so many or more fail once in 100,000 times (binomial distribution). */
    private static final int TOO_MANY = 10;

    @Property(tries = 12)
    void statedErrorHoldsTheTruth(@ForAll @DoubleRange(min = 7, max = 40) double periods,
            @ForAll MotionRecords.Kind kind, @ForAll boolean twice, @ForAll long seed) {
        MotionRecords simulated = new MotionRecords(periods, twice ? Quantity.DISPLACEMENT : Quantity.VELOCITY);
        int missed = 0;
        for (int i = 0; i < RECORDS; i++) {
            missed += simulated.simulate(kind, seed + i).holds() ? 0 : 1;
        }
        assertTrue(missed < TOO_MANY, kind + ", " + periods + " periods: " + missed + " of " + RECORDS);
    }

    /** No statement that would hold whatever came: with a third of it, displacements of short recordings miss. */
    @Property(tries = 4)
    void statedErrorIsNotMuchTooLarge(@ForAll @DoubleRange(min = 7, max = 9) double periods, @ForAll long seed) {
        MotionRecords simulated = new MotionRecords(periods, Quantity.DISPLACEMENT);
        int beyond = 0;
        for (int i = 0; i < RECORDS; i++) {
            MotionRecords.Outcome outcome = simulated.simulate(MotionRecords.Kind.NOISE, seed + i);
            beyond += Math.max(outcome.rms(), outcome.peakToPeak()) > outcome.stated() / 3 ? 1 : 0;
        }
        assertTrue(beyond > 1, beyond + " of " + RECORDS);
    }
}
