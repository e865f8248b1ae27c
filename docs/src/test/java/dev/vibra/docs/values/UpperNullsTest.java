package dev.vibra.docs.values;

import java.util.List;
import java.util.Set;

/** Methods of vibra-balance and vibra-iso. */
class UpperNullsTest extends NullArgumentChecks {
    @Override
    Set<String> modules() {
        return Set.of("vibra-balance", "vibra-iso");
    }

    @Override
    List<?> samples() {
        return new UpperStreamsTest().samples();
    }

    /** Has a state. */
    @Override
    Set<String> leftOut() {
        return Set.of("AlarmEvaluator");
    }
}
