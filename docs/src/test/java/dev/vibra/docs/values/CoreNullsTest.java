package dev.vibra.docs.values;

import java.util.List;
import java.util.Set;

/** Methods of vibra-core and vibra-bearing. */
class CoreNullsTest extends NullArgumentChecks {
    @Override
    Set<String> modules() {
        return Set.of("vibra-core", "vibra-bearing");
    }

    @Override
    List<?> samples() {
        return new CoreStreamsTest().samples();
    }
}
