package dev.vibra.diagnosis;

import dev.vibra.symptom.Evidence;
import java.util.List;
import java.util.Optional;

/** Something heard beside the faults of the table: knocks whose cause no rate tells. Implementations hold no state. */
interface Observation {
    /** {@return the fault in words, as in {@code unbalance}} */
    String fault();

    /**
     * Tells why nothing that was measured could have shown the fault, so that silence about it clears nothing.
     *
     * @param evidence machine and points
     * @return the fault with the reason, as in {@code defects of rolling bearings (no geometry is given)}; empty if it
     *         was looked for
     */
    Optional<String> notExamined(Evidence evidence);

    /**
     * Weighs the fault.
     *
     * @param evidence machine and points
     * @return one finding for each place that shows it; empty if the evidence supports none
     */
    List<Finding> weigh(Evidence evidence);
}
