package dev.vibra.score;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;

/**
 * A machine, or some points of it, that could not be scored and is in no count.
 *
 * @param machine name of the machine
 * @param points ids of the points; empty for the machine as a whole
 * @param reason why, without full stop
 */
public record NotScored(String machine, List<String> points, String reason) implements Serializable {
    /**
     * Checks that all is said.
     *
     * @param machine see the record
     * @param points see the record
     * @param reason see the record
     */
    public NotScored {
        machine = Require.notBlank("machine", machine);
        points = Require.copy("points", points);
        reason = Require.notBlank("reason", reason);
    }

    /** Returns the whole, as in {@code fan 3, DE-H, DE-V: no label}. */
    @Override
    public String toString() {
        return machine + (points.isEmpty() ? "" : ", " + String.join(", ", points)) + ": " + reason;
    }
}
