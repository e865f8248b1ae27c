package dev.vibra.survey.machine;

import java.io.Serializable;
import java.util.List;
import java.util.stream.Collectors;

/**
 * One gear stage.
 *
 * @param id name of the stage
 * @param teeth teeth of each wheel in the order of the power flow, two or more wheels
 * @param speedHertz speed of the first wheel in Hz, above zero; NaN if not given
 */
public record GearData(String id, List<Integer> teeth, double speedHertz) implements Serializable {
    /**
     * Copies the list.
     *
     * @param id see the record
     * @param teeth see the record
     * @param speedHertz see the record
     */
    public GearData {
        teeth = List.copyOf(teeth);
    }

    /** Returns the stage, as in {@code reducer: 23/71 teeth}. */
    @Override
    public String toString() {
        return id + ": " + teeth.stream().map(String::valueOf).collect(Collectors.joining("/")) + " teeth";
    }
}
