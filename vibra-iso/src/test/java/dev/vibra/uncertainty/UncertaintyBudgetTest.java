package dev.vibra.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class UncertaintyBudgetTest {
    /**
     * JCGM 100:2008, annex H.1.4 (end gauge): u_c² = (25² + 9.7² + 2.9² + 16.6²) nm² = 1002 nm², u_c = 32 nm, the
     * sensitivities already in the terms; here relative to the gauge's 50.000 838 mm. Quoted from memory, the sum
     * checks.
     */
    @Test
    void endGaugeOfTheGuide() {
        double length = 50_000_838;
        UncertaintyBudget budget = UncertaintyBudget.empty().withStandard("standard", 25 / length)
                .withStandard("comparison", 9.7 / length).withStandard("temperature", 2.9 / length)
                .withStandard("expansion", 16.6 / length);
        double combined = budget.relativeStandard() * length;
        assertEquals(1002, combined * combined, 1.5);
        assertEquals(32, combined, 0.5);
    }

    @Test
    void standardExpandedAndBoundsAgree() {
        // Pythagoras: 3 % and 4 % give 5 %; expanded by the 1.95996 of the normal table 9.8 %.
        UncertaintyBudget budget = UncertaintyBudget.empty().withStandard("a", 0.03).withExpanded("b", 0.08);
        assertEquals(0.05, budget.relativeStandard(), 1e-15);
        assertEquals(0.0979982, budget.relativeExpanded(), 1e-7);
        assertEquals(0.4223723, budget.expandedOf(4.31), 1e-6);
        // JCGM 100:2008, 4.3.7: a rectangular distribution of half-width a has the standard uncertainty a/sqrt(3) =
        // 0.577 a.
        assertEquals(0.0577, UncertaintyBudget.empty().withBounds("c", 0.1).relativeStandard(), 5e-5);
        assertEquals(0, UncertaintyBudget.empty().relativeExpanded());
    }

    @Test
    void badInputIsNamed() {
        UncertaintyBudget empty = UncertaintyBudget.empty();
        assertEquals("relative uncertainty (sensor) must be finite and >= 0: NaN",
                assertThrows(IllegalArgumentException.class, () -> empty.withExpanded("sensor", Double.NaN))
                .getMessage());
        assertEquals("relative uncertainty (sensor) must be finite and >= 0: -0.1",
                assertThrows(IllegalArgumentException.class, () -> empty.withStandard("sensor", -0.1)).getMessage());
        assertEquals("relative uncertainty (sensor) must be finite and >= 0: -0.1", assertThrows(
                IllegalArgumentException.class, () -> empty.withExpanded("sensor", -0.1)).getMessage(), "as given");
        assertEquals("name must not be blank",
                assertThrows(IllegalArgumentException.class, () -> empty.withBounds(" ", 0.1)).getMessage());
        assertEquals("value must be finite and >= 0: Infinity", assertThrows(IllegalArgumentException.class,
                () -> empty.expandedOf(Double.POSITIVE_INFINITY)).getMessage());
        assertThrows(UnsupportedOperationException.class,
                () -> empty.contributions().add(new Contribution("sensor", 0.1)));
    }

    @Test
    void printsSumAndParts() {
        assertEquals("no contribution", UncertaintyBudget.empty().toString());
        assertEquals("5.3 % (k = 1.96), of standard uncertainties sensor 2.5 %, mounting 1 %",
                UncertaintyBudget.empty().withExpanded("sensor", 0.05).withStandard("mounting", 0.01).toString());
    }
}
