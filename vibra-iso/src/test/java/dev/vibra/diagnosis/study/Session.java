package dev.vibra.diagnosis.study;

import java.util.Map;
import java.util.TreeMap;

/**
 * How a machine is measured, and what is told of it.
 *
 * @param simultaneous whether all points are recorded at once
 * @param axes whether the positive axes are noted
 * @param everywhere whether every direction at every housing is recorded, or only the usual points
 * @param seconds length of the recordings
 * @param references whether recordings of the sound machine are at hand
 * @param natural whether natural frequencies were found by an impact test
 * @param observations outcomes of tests and inspections
 */
record Session(boolean simultaneous, boolean axes, boolean everywhere, double seconds, boolean references,
        boolean natural, Map<String, Boolean> observations) {
    Session atOnce() {
        return new Session(true, true, everywhere, seconds, references, natural, observations);
    }

    Session withAll() {
        return new Session(simultaneous, axes, true, seconds, references, natural, observations);
    }

    Session longer(double factor) {
        return new Session(simultaneous, axes, everywhere, factor * seconds, references, natural, observations);
    }

    Session withNatural() {
        return new Session(simultaneous, axes, everywhere, seconds, references, true, observations);
    }

    Session observed(String test, boolean seen) {
        Map<String, Boolean> more = new TreeMap<>(observations);
        more.put(test, seen);
        return new Session(simultaneous, axes, everywhere, seconds, references, natural, more);
    }
}
