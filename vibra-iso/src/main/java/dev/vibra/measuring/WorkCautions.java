package dev.vibra.measuring;

import java.util.List;

/** What belongs beside every advice to go near a running machine. */
public final class WorkCautions {
    private static final List<String> CAUTIONS = List.of(
            "work near running machines only with permission and briefing, under the local codes",
            "keep hands, hair, clothes and cables clear of shafts, couplings and belts; leave guards in place",
            "no sensor is to be mounted at or beyond a guard while the machine can turn; stop and lock it out first",
            "surfaces may be hot, areas explosive: use sensors and instruments approved for them",
            "step back from a machine that gets louder or shakes more while you measure, and report it");

    private WorkCautions() {}

    /**
     * Returns the usual cautions; they stand beside local rules, not in place of them.
     *
     * @return unmodifiable list of phrases
     */
    public static List<String> list() {
        return CAUTIONS;
    }
}
