package dev.vibra.history;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.trend.InstantInterval;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Counted over many histories of the forward model: how often a date is given, and how often its interval holds. */
class HistoryCoverageTest {
    private static final int HISTORIES = 300;
    private static final double EVERY = 28;

    private static Optional<InstantInterval> date(Growth growth, int visits, double trip, int number) {
        return DescriptorHistory.of("P", "velocity-rms-10-1000Hz", growth.readings(visits, EVERY, 7919L * number + 11))
                .against(HistoryLimits.alarmAt(1.7, "test").withTrip(trip)).timeToLimit();
    }

    /** The slope is tested two-sided at 5 %; a date from scatter alone must be rarer than the half of it, 2.5 %. */
    @Test
    void scatterAloneGivesHardlyEverADate() {
        Growth healthy = new Growth(1.2, 1e6, 1, 0.06);
        int dates = 0;
        for (int i = 0; i < HISTORIES; i++) {
            dates += date(healthy, 13, 4.5, i).isPresent() ? 1 : 0;
        }
        assertTrue(dates <= 0.025 * HISTORIES, dates + " dates in " + HISTORIES + " histories of scatter");
    }

    /** Growth by a constant factor is no straight rise; the limit hardly ever comes before the earliest date told. */
    @Test
    void theIntervalOfAnExponentialRiseHoldsTheTruth() {
        int dates = 0;
        int holding = 0;
        int early = 0;
        double days = 210;
        Instant truth = Growth.at(5 * EVERY + days * Math.log(4.5 / 1.1));
        for (int i = 0; i < HISTORIES; i++) {
            Optional<InstantInterval> found = DescriptorHistory.of("P", "velocity-rms-10-1000Hz", Growth.exponential(1.1,
                    5 * EVERY, days, 0.04, 14, EVERY, 104_729L * i + 5)).against(HistoryLimits.alarmAt(1.7, "test")
                    .withTrip(4.5)).timeToLimit();
            dates += found.isPresent() ? 1 : 0;
            holding += found.filter(one -> one.contains(truth)).isPresent() ? 1 : 0;
            early += found.filter(one -> truth.isBefore(one.earliest())).isPresent() ? 1 : 0;
        }
        assertTrue(dates >= 0.5 * HISTORIES, dates + " dates in " + HISTORIES + " rises");
        assertTrue(holding >= 0.924 * dates, holding + " of " + dates + " intervals hold the truth");
        // One side of 95 % is 2.5 %, and two standard deviations of the count are 1.9 %.
        assertTrue(early <= 0.044 * dates, early + " of " + dates + " limits came before the earliest date");
    }

    /** 95 % less two standard deviations of the count among 300, 1.3 %. */
    @Test
    void theIntervalOfAStraightRiseHoldsTheTruth() {
        Growth growth = new Growth(1.2, 5 * EVERY, 0.012, 0.04);
        Instant truth = Growth.at(growth.dayOf(4.5));
        int dates = 0;
        int holding = 0;
        for (int i = 0; i < HISTORIES; i++) {
            Optional<InstantInterval> found = date(growth, 14, 4.5, i);
            dates += found.isPresent() ? 1 : 0;
            holding += found.filter(one -> !truth.isBefore(one.earliest()) && !truth.isAfter(one.latest())).isPresent()
                    ? 1 : 0;
        }
        assertTrue(dates >= 0.9 * HISTORIES, dates + " dates in " + HISTORIES + " rises");
        assertTrue(holding >= 0.924 * dates, holding + " of " + dates + " intervals hold the truth");
    }
}
