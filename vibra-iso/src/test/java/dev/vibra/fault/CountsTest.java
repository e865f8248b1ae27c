package dev.vibra.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.symptom.Site;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The counts of the library belong to its table of faults. */
class CountsTest {
    private static final FaultTable TABLE = FaultTable.standard();
    private static final Counts COUNTS = Counts.standard();

    /** A fault without counts would never be told, and nobody would see why. */
    @Test
    void eachFaultIsCounted() {
        for (Fault fault : TABLE.faults()) {
            long telling = TABLE.symptoms().stream().filter(one -> {
                Optional<Double> with = COUNTS.share(fault, one.code());
                Optional<Double> without = COUNTS.soundShare(fault.site(), one.code());
                return with.isPresent() && without.isPresent() && with.get() > 2 * without.get();
            }).count();
            assertTrue(telling > 0, fault.id() + " raises no symptom");
        }
    }

    @Test
    void eachSymptomIsCountedAtItsOwnSite() {
        for (Symptom symptom : TABLE.symptoms()) {
            if (TABLE.faults().stream().anyMatch(fault -> fault.site() == symptom.site())) {
                assertTrue(COUNTS.seenOf(Counts.soundAt(symptom.site()), symptom.code())[1] > 20, symptom::code);
            }
        }
    }

    /** What hangs on another is a symptom of the table, and no circle leads back. */
    @Test
    void dependenceIsATree() {
        for (Site.Kind kind : Site.Kind.values()) {
            for (Symptom symptom : TABLE.symptoms()) {
                Optional<String> at = COUNTS.given(kind, symptom.code());
                for (int steps = 0; at.isPresent(); steps++) {
                    assertTrue(steps < TABLE.symptoms().size(), symptom.code() + " hangs on itself");
                    at = COUNTS.given(kind, TABLE.symptom(at.get()).code());
                }
            }
        }
    }

    @Test
    void draws() {
        assertTrue(COUNTS.draws().machines() > 1500, COUNTS::toString);
        assertTrue(COUNTS.draws().exponent() > 0 && COUNTS.draws().highestNone() <= 0.5, COUNTS::toString);
        assertEquals(0, COUNTS.seenOf("none/shaft", "no such symptom")[1]);
    }
}
