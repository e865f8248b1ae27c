package dev.vibra.trend;

import java.io.Serializable;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Objects;

/**
 * A best estimate of an instant with the ends of its confidence interval.
 *
 * @param earliest earlier end
 * @param best best estimate
 * @param latest later end
 */
public record InstantInterval(Instant earliest, Instant best, Instant latest) implements Serializable {
    private static final Duration SHORT = Duration.ofDays(3);

    /**
     * Checks the order.
     *
     * @param earliest not after the best estimate
     * @param best best estimate
     * @param latest not before the best estimate
     * @throws IllegalArgumentException if the instants are out of order
     */
    public InstantInterval {
        Objects.requireNonNull(earliest, "earliest");
        Objects.requireNonNull(best, "best");
        Objects.requireNonNull(latest, "latest");
        if (earliest.isAfter(best) || best.isAfter(latest)) {
            throw new IllegalArgumentException(
                    "earliest, best and latest must rise: " + earliest + ", " + best + ", " + latest);
        }
    }

    /**
     * Tells whether an instant lies within the interval, ends included.
     *
     * @param instant instant to test
     * @return true if it does
     */
    public boolean contains(Instant instant) {
        Objects.requireNonNull(instant, "instant");
        return !instant.isBefore(earliest) && !instant.isAfter(latest);
    }

    /**
     * Returns the days in UTC, as in {@code 2026-06-12 (2026-05-28 to 2026-06-29)}; the seconds where the interval is
     * shorter than three days.
     */
    @Override
    public String toString() {
        boolean seconds = Duration.between(earliest, latest).compareTo(SHORT) < 0;
        return shown(best, seconds) + " (" + shown(earliest, seconds) + " to " + shown(latest, seconds) + ")";
    }

    private static String shown(Instant instant, boolean seconds) {
        String text = instant.truncatedTo(ChronoUnit.SECONDS).toString();
        return seconds ? text : text.substring(0, text.indexOf('T'));
    }
}
