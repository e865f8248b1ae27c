package dev.vibra.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.fault.Counts;
import dev.vibra.fault.Effort;
import dev.vibra.fault.Fault;
import dev.vibra.fault.FaultTable;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The reference of patterns, and what it makes of counts whose answer is known in closed form. */
class FaultsTest {
    private static final FaultTable TABLE = FaultTable.parse("""
            [symptoms]
            code | site  | asks | seen as     | by         | effort
            hum  | shaft | test | it hums     | an ear     | running
            mark | shaft | test | it has marks | a look    | stop
            tilt | shaft | test | it tilts    | a level    | running

            [faults]
            id      | words | site  | on  | urgency  | explains | mimics | source
            alpha/a | alpha | shaft | any | by level | level    | beta   | none
            beta    | beta  | shaft | any | by level | level    | alpha/a | none
            """);
    /** Enough that what smooths them matters in the fourth digit only. */
    private static final Counts COUNTS = Counts.parse("""
            [draws]
            seed | machines | exponent | highest none | quiet
            1    | 600000   | 1        | 0.3          | 0.3

            [counts]
            fault      | symptom | given | alone no | alone yes | no no | no yes | yes no | yes yes
            none/shaft | hum     | -     | 90000    | 10000     | 0     | 0      | 0      | 0
            none/shaft | mark    | -     | 95000    | 5000      | 0     | 0      | 0      | 0
            none/shaft | tilt    | -     | 50000    | 50000     | 0     | 0      | 0      | 0
            alpha/a    | hum     | -     | 10000    | 90000     | 0     | 0      | 0      | 0
            alpha/a    | mark    | -     | 11000    | 89000     | 0     | 0      | 0      | 0
            alpha/a    | tilt    | -     | 50000    | 50000     | 0     | 0      | 0      | 0
            beta       | hum     | -     | 10000    | 90000     | 0     | 0      | 0      | 0
            beta       | mark    | -     | 89000    | 11000     | 0     | 0      | 0      | 0
            beta       | tilt    | -     | 75000    | 25000     | 0     | 0      | 0      | 0
            """);

    private static FaultPattern pattern(String id) {
        return Faults.pattern(TABLE.fault(id), TABLE, COUNTS);
    }

    @Test
    void symptomsStandByWhatTheyTell() {
        FaultPattern alpha = pattern("alpha/a");
        assertEquals(List.of("mark", "hum"), alpha.symptoms().stream().map(one -> one.code()).toList(),
                "what is alike in sound machines is no part of it");
        FaultPattern.CountedSymptom hum = alpha.symptoms().get(1);
        assertEquals(List.of(90_000, 100_000, 10_000, 100_000),
                List.of(hum.seenWith(), hum.allWith(), hum.seenWithout(), hum.allWithout()));
        // Kullback-Leibler divergence of two coins of 0.9 and 0.1 in closed form: 0.8 ln 9.
        assertEquals(0.8 * Math.log(9), hum.weight(), 1e-3);
        assertTrue(hum.speaksFor());
        FaultPattern.CountedSymptom tilt = pattern("beta").symptoms().stream().filter(one -> one.code().equals("tilt"))
                .findFirst().orElseThrow();
        assertFalse(tilt.speaksFor());
    }

    @Test
    void whatPartsAPairIsTheGentlestFirst() {
        FaultPattern.Mimic beta = pattern("alpha/a").mimics().get(0);
        assertEquals(List.of("mark"), beta.decidedBy().stream().map(Decider::symptom).toList(),
                "a hum is alike in both, and a tilt tells little");
        Decider mark = beta.decidedBy().get(0);
        assertEquals(Effort.STOP, mark.effort());
        assertTrue(mark.measurement().startsWith("a look (with the machine stopped"), mark.measurement());
        assertEquals("if it has marks, it speaks for alpha; if not, for beta", mark.meaning());
    }

    @Test
    void theReferenceIsTheTable() {
        List<FaultPattern> reference = Faults.reference();
        List<Fault> faults = FaultTable.standard().faults();
        assertEquals(faults.stream().map(Fault::id).toList(), reference.stream().map(FaultPattern::id).toList());
        for (int i = 0; i < faults.size(); i++) {
            assertEquals(faults.get(i).mimics(), reference.get(i).mimics().stream().map(one -> one.id()).toList());
            assertEquals(faults.get(i).code(), reference.get(i).code());
            assertEquals(faults.get(i).source(), reference.get(i).source());
        }
        assertEquals("angular", Faults.pattern("misalignment/angular").kind().orElseThrow());
        assertTrue(Faults.pattern("rub").kind().isEmpty());
        assertEquals("id must be that of a fault: rubb",
                assertThrows(IllegalArgumentException.class, () -> Faults.pattern("rubb")).getMessage());
    }
}
