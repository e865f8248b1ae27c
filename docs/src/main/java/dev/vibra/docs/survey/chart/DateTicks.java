package dev.vibra.docs.survey.chart;

import dev.vibra.docs.survey.chart.Axis.Tick;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;

/** Ticks at the begins of hours, days, weeks, months and years in Greenwich, written as ISO 8601 writes them. */
final class DateTicks {
    private static final double SECONDS = 86_400;

    /** Distances of ticks from the finest on; {@code begin} goes back to the last one of a kind. */
    private record Step(ChronoUnit unit, int count, String pattern, UnaryOperator<LocalDateTime> begin) {}

    private static final List<Step> STEPS = steps();

    private DateTicks() {}

    private static List<Step> steps() {
        List<Step> steps = new ArrayList<>();
        for (int hours : new int[] {1, 2, 3, 6, 12}) {
            steps.add(new Step(ChronoUnit.HOURS, hours, "MM-dd HH:mm", at -> at.truncatedTo(ChronoUnit.DAYS)));
        }
        steps.add(new Step(ChronoUnit.DAYS, 1, "uuuu-MM-dd", at -> at.truncatedTo(ChronoUnit.DAYS)));
        for (int days : new int[] {2, 7, 14}) {
            steps.add(new Step(ChronoUnit.DAYS, days, "uuuu-MM-dd", at -> at.truncatedTo(ChronoUnit.DAYS)
                    .with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY))));
        }
        for (int months : new int[] {1, 2, 3, 6}) {
            steps.add(new Step(ChronoUnit.MONTHS, months, "uuuu-MM", DateTicks::year));
        }
        for (int years = 1; years < 1_000_000; years *= 10) {
            for (int lead : new int[] {1, 2, 5}) {
                int count = lead * years;
                steps.add(new Step(ChronoUnit.YEARS, count, "uuuu",
                        at -> year(at).withYear(Math.floorDiv(at.getYear(), count) * count)));
            }
        }
        return steps;
    }

    private static LocalDateTime year(LocalDateTime at) {
        return at.truncatedTo(ChronoUnit.DAYS).withDayOfYear(1);
    }

    static List<Tick> of(double fromDay, double toDay, int most) {
        for (Step step : STEPS) {
            if ((toDay - fromDay) * SECONDS / (double) step.unit.getDuration().multipliedBy(step.count).toSeconds()
                    < most + 1) {
                List<Tick> ticks = ticks(step, fromDay, toDay);
                if (ticks.size() <= most) {
                    return ticks;
                }
            }
        }
        return List.of();
    }

    private static List<Tick> ticks(Step step, double fromDay, double toDay) {
        DateTimeFormatter format = DateTimeFormatter.ofPattern(step.pattern, Locale.ROOT);
        LocalDateTime at = step.begin.apply(time(fromDay));
        List<Tick> ticks = new ArrayList<>();
        for (; day(at) <= toDay; at = at.plus(step.count, step.unit)) {
            if (day(at) >= fromDay) {
                ticks.add(new Tick(day(at), format.format(at)));
            }
        }
        return ticks;
    }

    private static LocalDateTime time(double day) {
        return LocalDateTime.ofEpochSecond(0, 0, ZoneOffset.UTC).plus(Duration.ofSeconds(Math.round(day * SECONDS)));
    }

    private static double day(LocalDateTime at) {
        return at.toEpochSecond(ZoneOffset.UTC) / SECONDS;
    }
}
