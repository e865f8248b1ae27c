package dev.vibra.history;

import dev.vibra.alarm.AlarmState;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.trend.ChangePoint;
import dev.vibra.trend.InstantInterval;
import dev.vibra.trend.Prognosis;
import dev.vibra.trend.Readings;
import dev.vibra.trend.Trend;
import dev.vibra.trend.TrendModel;
import dev.vibra.trend.TrendSettings;
import java.io.Serializable;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How one number of one point went from visit to visit: against its limits, since when it changes, and when it may reach
 * the next limit. Immutable.
 *
 * <p>A change is looked for in eight readings or more, and only what happened since then is projected, both as a straight
 * rise and as growth by a constant factor, since nobody knows which goes on. What isn't known has a reason.
 */
public final class DescriptorHistory implements Serializable {
    private static final long serialVersionUID = 1;
    private static final int LEAST_FOR_CHANGE = 8;
    /** Probability below which a change counts. */
    private static final double LEVEL = 0.01;

    private final String point;
    private final String descriptor;
    private final Readings readings;
    private final HistoryLimits limits;
    private final ChangePoint change;
    private final Trend trend;
    private final InstantInterval timeToLimit;
    private final List<String> doubts;
    private final List<String> refusals;

    /** The limits are null where there are none. */
    DescriptorHistory(String point, String descriptor, Readings readings, HistoryLimits limits) {
        this.point = Require.notBlank("point", point);
        this.descriptor = Require.notBlank("descriptor", descriptor);
        this.readings = Objects.requireNonNull(readings, "readings");
        if (readings.instantOf(readings.lastDay()).isEmpty()) {
            throw new IllegalArgumentException("readings must have instants: " + readings);
        }
        this.limits = limits;
        this.change = readings.size() < LEAST_FOR_CHANGE ? null : ChangePoint.onset(readings, LEVEL).orElse(null);
        Readings since = change == null ? readings : readings.since(change.day());
        List<Trend> forms = forms(since);
        this.trend = forms.stream().filter(one -> !one.isBent() && one.rises()).findFirst()
                .or(() -> forms.stream().filter(one -> !one.isBent()).findFirst())
                .or(() -> forms.stream().findFirst()).orElse(null);
        List<Prognosis> prognoses = prognoses(forms);
        List<Prognosis> dated = prognoses.stream().filter(one -> one.instants().isPresent()).toList();
        this.timeToLimit = dated.isEmpty() ? null : between(dated);
        this.doubts = dated.stream().flatMap(one -> one.doubts().stream()).distinct().toList();
        this.refusals = dated.isEmpty() ? refusals(since.size(), prognoses) : List.of();
    }

    private Object readResolve() {
        return new DescriptorHistory(point, descriptor, readings, limits);
    }

    /**
     * Works out a history without limits.
     *
     * @param point id of the point
     * @param descriptor stable name of the number
     * @param readings its values with their instants, the present one last
     * @return the history
     * @throws IllegalArgumentException if a name is blank or the readings have no instants
     */
    public static DescriptorHistory of(String point, String descriptor, Readings readings) {
        return new DescriptorHistory(point, descriptor, readings, null);
    }

    /**
     * Holds it against limits.
     *
     * @param newLimits limits in the unit of the readings
     * @return the history with state and, where it rises, with a prognosis
     */
    public DescriptorHistory against(HistoryLimits newLimits) {
        return new DescriptorHistory(point, descriptor, readings, Objects.requireNonNull(newLimits, "newLimits"));
    }

    /** A straight rise and growth by a constant factor: which of them goes on isn't known. */
    private static List<Trend> forms(Readings since) {
        TrendSettings settings = TrendSettings.withDefaults();
        if (since.size() < settings.minimumReadings()) {
            return List.of();
        }
        List<Trend> forms = new ArrayList<>(List.of(Trend.of(since, settings)));
        boolean positive = true;
        for (int i = 0; i < since.size(); i++) {
            positive &= since.value(i) > 0;
        }
        if (positive) {
            forms.add(Trend.of(since, settings.withModel(TrendModel.EXPONENTIAL)));
        }
        return forms;
    }

    private List<Prognosis> prognoses(List<Trend> forms) {
        OptionalDouble next = limitAhead();
        return next.isEmpty() ? List.of() : forms.stream().map(form -> form.timeTo(next.getAsDouble())).toList();
    }

    /** From the earliest to the latest of what the forms say. */
    private static InstantInterval between(List<Prognosis> dated) {
        List<InstantInterval> all = dated.stream().map(one -> one.instants().orElseThrow()).toList();
        Instant earliest = all.stream().map(InstantInterval::earliest).min(Comparator.naturalOrder()).orElseThrow();
        Instant latest = all.stream().map(InstantInterval::latest).max(Comparator.naturalOrder()).orElseThrow();
        return new InstantInterval(earliest, all.get(0).best(), latest);
    }

    private List<String> refusals(int count, List<Prognosis> prognoses) {
        if (trend == null) {
            return List.of("a trend needs " + TrendSettings.withDefaults().minimumReadings()
                    + " readings since the change: " + count);
        }
        return limitAhead().isEmpty() ? List.of(limits == null ? "there is no limit that it could reach"
                : "the highest limit is reached already") : prognoses.stream()
                .filter(one -> one.trend().equals(trend)).findFirst().orElseThrow().refusals();
    }

    /** {@return the limit above the present value: the trip, or the alarm where there is none; empty beyond both} */
    public OptionalDouble limitAhead() {
        if (limits == null) {
            return OptionalDouble.empty();
        }
        double highest = limits.trip().orElse(limits.alarm());
        return last() < highest ? OptionalDouble.of(highest) : OptionalDouble.empty();
    }

    /** {@return id of the point} */
    public String point() {
        return point;
    }

    /** {@return stable name of the number} */
    public String descriptor() {
        return descriptor;
    }

    /** {@return its values with their instants, the present one last} */
    public Readings readings() {
        return readings;
    }

    /** {@return the first value, in the unit of the readings} */
    public double first() {
        return readings.value(0);
    }

    /** {@return the present value, in the unit of the readings} */
    public double last() {
        return readings.value(readings.size() - 1);
    }

    /** {@return alarm and trip, if there are any} */
    public Optional<HistoryLimits> limits() {
        return Optional.ofNullable(limits);
    }

    /** {@return what the present value says; empty without limits} */
    public Optional<AlarmState> state() {
        return limits().map(known -> known.trip().isPresent() && last() >= known.trip().getAsDouble() ? AlarmState.TRIP
                : last() >= known.alarm() ? AlarmState.ALARM : AlarmState.NORMAL);
    }

    /** {@return where a flat course began to rise or fall; empty if nothing stands out of the scatter} */
    public Optional<ChangePoint> change() {
        return Optional.ofNullable(change);
    }

    /** {@return the visit since which it changes, if it does} */
    public Optional<Instant> changedSince() {
        return change().flatMap(one -> readings.instantOf(one.day()));
    }

    /** {@return the trend since the change, of the form that fits and rises; empty if there are too few readings} */
    public Optional<Trend> trend() {
        return Optional.ofNullable(trend);
    }

    /**
     * {@return when {@link #limitAhead} may be reached: from the earliest to the latest of a straight rise and of growth by
     * a constant factor, each with its 95 % interval; empty if refused}
     */
    public Optional<InstantInterval> timeToLimit() {
        return Optional.ofNullable(timeToLimit);
    }

    /** {@return until when to measure again, a third of the time to the earliest end; empty if there is no date} */
    public Optional<Instant> measureAgainUntil() {
        Instant last = readings.instantOf(readings.lastDay()).orElseThrow();
        return timeToLimit().map(when -> when.earliest().isAfter(last)
                ? last.plus(Duration.between(last, when.earliest()).dividedBy(3)) : last);
    }

    /** {@return what makes the date doubtful, unmodifiable} */
    public List<String> doubts() {
        return doubts;
    }

    /** {@return why there is no date, unmodifiable; empty if there is one} */
    public List<String> refusals() {
        return refusals;
    }

    /** {@return true if it rises: a trend whose slope stands out, or a change that ends higher than it began} */
    public boolean rises() {
        return timeToLimit != null || trend().map(Trend::rises).orElse(false)
                || change().flatMap(one -> valueAt(one.day())).filter(value -> last() > value).isPresent();
    }

    private Optional<Double> valueAt(double day) {
        for (int i = 0; i < readings.size(); i++) {
            if (readings.day(i) == day) {
                return Optional.of(readings.value(i));
            }
        }
        return Optional.empty();
    }

    /** Two histories are equal if their readings and limits are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof DescriptorHistory history && point.equals(history.point)
                && descriptor.equals(history.descriptor) && readings.equals(history.readings)
                && Objects.equals(limits, history.limits);
    }

    /** Returns a hash code that agrees with {@link #equals}. */
    @Override
    public int hashCode() {
        return Objects.hash(point, descriptor, readings, limits);
    }

    /** Returns course and state, as in {@code DE-H velocity-rms-1x: 1.20 to 4.70 mm/s in 13 readings, alarm}. */
    @Override
    public String toString() {
        return point + " " + descriptor + ": " + Digits.significant(first(), 3) + " to " + Digits.significant(last(), 3)
                + " " + readings.unit() + " in " + readings.size() + (readings.size() == 1 ? " reading" : " readings")
                + state().map(one -> ", " + one.name().toLowerCase(Locale.ROOT)).orElse("")
                + timeToLimit().map(when -> "; " + Digits.significant(limitAhead().orElseThrow(), 3) + " "
                        + readings.unit() + " on " + when).orElse("");
    }
}
