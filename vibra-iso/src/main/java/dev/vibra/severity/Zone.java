package dev.vibra.severity;

import java.util.Objects;

/**
 * Evaluation zone of a vibration level, from A (best) to D (worst).
 *
 * @see "ISO 20816-1:2016, evaluation zones A to D"
 */
public enum Zone {
    /** As a machine newly put into service should vibrate. */
    A("as expected of a machine newly put into service", ""),
    /** Acceptable for long operation without restriction. */
    B("acceptable for long operation without restriction", ""),
    /** Not acceptable for long continuous operation. */
    C("not acceptable for long continuous operation; a remedy is to be planned",
            "Whether, how and how long the machine may run on is not decided by this number: ask the maker's limits "
                    + "and the persons responsible for it, under the local codes and with licensed practice."),
    /** Strong enough to damage the machine. */
    D("strong enough to damage the machine",
            "Keep people clear of the machine. Whether it may run on at all is to be decided at once by the persons "
                    + "responsible for it, with the maker's limits, under the local codes and with licensed practice.");

    private final String meaning;
    private final String caution;

    Zone(String meaning, String caution) {
        this.meaning = meaning;
        this.caution = caution;
    }

    /**
     * Returns what the zone means, in words.
     *
     * @return a phrase without full stop
     */
    public String meaning() {
        return meaning;
    }

    /** {@return the caution that belongs beside a verdict in this zone; empty for A and B} */
    public String caution() {
        return caution;
    }

    /**
     * Tells whether this zone is worse than another one.
     *
     * @param other zone to compare with
     * @return true if this zone comes later in A, B, C, D
     */
    public boolean isWorseThan(Zone other) {
        return compareTo(Objects.requireNonNull(other, "other")) > 0;
    }
}
