package dev.vibra.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** The budget of a product against propagation through that product: two ways to one number. */
class UncertaintyProperties {
    @Property(tries = 300)
    void aProductOfFactorsHasTheUncertaintyOfItsBudget(@ForAll @DoubleRange(min = 0.1, max = 100) double value,
            @ForAll @DoubleRange(min = 0, max = 0.1) double sensor,
            @ForAll @DoubleRange(min = 0, max = 0.1) double mounting,
            @ForAll @DoubleRange(min = 0, max = 0.1) double estimation) {
        double propagated = Propagation.of(new double[] {value, 1, 1}, new double[] {value * sensor, mounting,
                estimation})
                .standardUncertaintyOf(x -> x[0] * x[1] * x[2]);
        double budget = UncertaintyBudget.empty().withStandard("sensor", sensor).withStandard("mounting", mounting)
                .withStandard("estimation", estimation).relativeStandard();
        assertEquals(budget * value, propagated, 1e-12 * value);
    }

    @Property(tries = 300)
    void fewerDegreesOfFreedomNeverMakeTheIntervalSmaller(@ForAll @DoubleRange(min = 1, max = 200) double freedom,
            @ForAll @DoubleRange(min = 0.5, max = 0.99) double probability) {
        UncertaintyBudget known = UncertaintyBudget.empty().with(new Contribution("a", 0.1, freedom + 1));
        UncertaintyBudget lessKnown = UncertaintyBudget.empty().with(new Contribution("a", 0.1, freedom));
        assertTrue(lessKnown.coverageFactor(probability) >= known.coverageFactor(probability) - 1e-8);
    }
}
