package dev.vibra.diagnosis.study;

import java.util.LinkedHashMap;
import java.util.Map;

/** Forces over time along motions of a structure, being added up. */
final class Forces {
    private final Clock clock;
    private final Map<Tap, double[]> samples = new LinkedHashMap<>();

    Forces(Clock clock) {
        this.clock = clock;
    }

    Clock clock() {
        return clock;
    }

    /** Samples of the force along a motion, to be added to. */
    double[] along(Tap tap) {
        return samples.computeIfAbsent(tap, t -> new double[clock.length()]);
    }

    Map<Tap, double[]> samples() {
        return samples;
    }

    void add(Source source, double factor) {
        if (factor != 0) {
            source.addTo(this, factor);
        }
    }
}
