package dev.vibra.history;

import dev.vibra.alarm.AlarmSetting;
import dev.vibra.alarm.AlarmState;
import dev.vibra.alarm.Baseline;
import dev.vibra.descriptor.DescriptorValue;
import dev.vibra.descriptor.Descriptors;
import dev.vibra.internal.Require;
import dev.vibra.level.Percentiles;
import dev.vibra.point.PointSurvey;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Unit;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.Judgement;
import dev.vibra.severity.Verdict;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.trend.Readings;
import java.io.Serializable;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The present survey of a machine after its earlier visits, number by number. Immutable.
 *
 * <p>Only visits with a date and in the state of the present one are compared; the others are named. Alarm and trip of
 * what a standard limits follow from the criterion and the first five visits; other numbers have an alarm at twice the
 * mean of these, which is common practice, no source.
 */
public final class MachineHistory implements Serializable {
    private static final long serialVersionUID = 1;
    /** Twice the first level calls somebody; common practice, no source. */
    private static final double DOUBLING = 2;
    /** Beyond this multiple of the median a reading is taken for an error; common practice, no source. */
    private static final double FAR_OFF = 3;

    private final List<DescriptorHistory> histories;
    private final List<String> left;

    private MachineHistory(List<DescriptorHistory> histories, List<String> left) {
        this.histories = Require.copy("histories", histories);
        this.left = Require.copy("left", left);
    }

    private Object readResolve() {
        return new MachineHistory(histories, left);
    }

    /**
     * Puts a survey after earlier visits.
     *
     * @param survey the present survey, with the date of its measurement
     * @param earlier earlier visits in any order
     * @return the history; without any number if the survey has no date or no earlier visit can be compared
     */
    public static MachineHistory of(MachineSurvey survey, List<Visit> earlier) {
        Objects.requireNonNull(survey, "survey");
        List<Visit> visits = Require.copy("earlier", earlier);
        List<String> left = new ArrayList<>();
        Optional<Instant> now = survey.machine().measured();
        if (now.isEmpty()) {
            return new MachineHistory(List.of(), visits.isEmpty() ? List.of()
                    : List.of("the present measurement has no date: earlier visits can't be put in order with it"));
        }
        SortedMap<Instant, Visit> comparable = new TreeMap<>();
        for (Visit visit : visits) {
            Optional<String> obstacle = obstacle(visit, now.get(), survey.machine().state());
            obstacle.ifPresentOrElse(left::add, () -> {
                Visit same = comparable.put(visit.measured().orElseThrow(), visit);
                if (same != null) {
                    left.add(same.origin() + ": " + visit.origin() + " is of the same instant");
                }
            });
        }
        List<DescriptorHistory> histories = new ArrayList<>();
        survey.points().forEach(point -> histories.addAll(histories(point, comparable, now.get())));
        return new MachineHistory(histories, left);
    }

    private static Optional<String> obstacle(Visit visit, Instant now, Optional<String> state) {
        if (visit.measured().isEmpty()) {
            return Optional.of(visit.origin() + ": has no date");
        }
        if (!visit.measured().get().isBefore(now)) {
            return Optional.of(visit.origin() + ": isn't earlier than the present measurement");
        }
        return visit.state().equals(state) ? Optional.empty() : Optional.of(visit.origin() + ": is of another state, "
                + visit.state().orElse("not told"));
    }

    private static List<DescriptorHistory> histories(PointSurvey point, SortedMap<Instant, Visit> visits, Instant now) {
        if (point.insisted()) {
            return List.of(); // What a recording isn't fit for has no value, unless it was insisted on.
        }
        List<DescriptorHistory> histories = new ArrayList<>();
        for (DescriptorValue one : point.description().numbers()) {
            Optional<Unit> unit = Stream.of(Unit.values()).filter(known -> known.plainSymbol().equals(one.unit()))
                    .findFirst();
            List<Instant> times = new ArrayList<>();
            List<Double> values = new ArrayList<>();
            visits.forEach((when, visit) -> Optional.ofNullable(visit.values().get(point.point().id()))
                    .map(numbers -> numbers.get(one.name())).ifPresent(value -> {
                        times.add(when);
                        values.add(value);
                    }));
            if (unit.isPresent() && !times.isEmpty()) {
                times.add(now);
                values.add(one.value());
                Readings readings = Readings.of(times, values.stream().mapToDouble(Double::doubleValue).toArray(),
                        unit.get());
                histories.add(new DescriptorHistory(point.point().id(), one.name(), readings,
                        limits(point, one.name(), readings).orElse(null)));
            }
        }
        return histories;
    }

    private static Optional<HistoryLimits> limits(PointSurvey point, String name, Readings readings) {
        Optional<Criterion> criterion = point.severity().map(Verdict::judgements).orElse(List.of()).stream()
                .map(Judgement::criterion).filter(one -> one.detector() == Detector.RMS
                        && Descriptors.rms(one.quantity(), one.band()).name().equals(name)).findFirst();
        double[] first = new double[Math.min(Baseline.SETTLED_READINGS, readings.size() - 1)];
        for (int i = 0; i < first.length; i++) {
            first[i] = readings.value(i);
        }
        double[] kept = likely(first);
        Optional<HistoryLimits> limits = criterion.isPresent() ? byStandard(criterion.get(), kept, readings.unit())
                : byDoubling(kept);
        return kept.length == first.length ? limits : limits.map(one -> one.withRemark((first.length - kept.length)
                + " of the first " + first.length + " visits set aside as far off: look at unit and recording"));
    }

    /** A wrong unit among the first visits would silence the alarm for ever: what is three times off isn't taken. */
    private static double[] likely(double[] first) {
        double middle = Percentiles.of(first).at(50);
        return Arrays.stream(first).filter(value -> value <= FAR_OFF * middle && FAR_OFF * value >= middle).toArray();
    }

    /** Where the first visits lie too high for a setting, the machine needs a remedy and the boundaries serve. */
    private static Optional<HistoryLimits> byStandard(Criterion criterion, double[] first, Unit unit) {
        List<Level> levels = new ArrayList<>();
        for (double value : first) {
            levels.add(Level.of(value, unit, criterion.detector()).within(criterion.band()));
        }
        Baseline baseline = Baseline.of("first visits", levels);
        Optional<AlarmSetting> setting = AlarmSetting.objectionTo(criterion, baseline).isEmpty()
                ? Optional.of(AlarmSetting.of(criterion, baseline))
                : criterion.boundary("B/C").map(boundary -> AlarmSetting.withoutBaseline(criterion));
        return setting.map(one -> {
            HistoryLimits limits = HistoryLimits.alarmAt(one.alarm().in(unit), Stream.concat(Stream.of(
                    criterion.standard() + criterion.operatingLimits().map(limit -> " " + limit.clause()).orElse("")),
                    one.remarks().stream()).collect(Collectors.joining("; ")));
            return one.trip().map(trip -> trip.in(unit)).filter(trip -> trip > limits.alarm())
                    .map(limits::withTrip).orElse(limits);
        });
    }

    private static Optional<HistoryLimits> byDoubling(double[] first) {
        double sum = 0;
        for (double value : first) {
            sum += value;
        }
        return sum > 0 ? Optional.of(HistoryLimits.alarmAt(DOUBLING * sum / first.length,
                "twice the mean of the first " + first.length + (first.length == 1 ? " visit" : " visits")
                + ", common practice, no source")) : Optional.empty();
    }

    /** {@return number by number, in the order of the points} */
    public List<DescriptorHistory> histories() {
        return histories;
    }

    /**
     * Returns the numbers of a point.
     *
     * @param point id of the point
     * @return its histories; empty if it has none
     */
    public List<DescriptorHistory> at(String point) {
        Objects.requireNonNull(point, "point");
        return histories.stream().filter(one -> one.point().equals(point)).toList();
    }

    /** {@return visits that aren't compared, each with its reason} */
    public List<String> left() {
        return left;
    }

    /** {@return what has reached an alarm or a trip, or may reach one} */
    public List<DescriptorHistory> notable() {
        return histories.stream().filter(one -> one.state().filter(state -> state != AlarmState.NORMAL).isPresent()
                || one.timeToLimit().isPresent()).toList();
    }

    /** {@return the number for which to measure again soonest; empty if no trend gives a date} */
    public Optional<DescriptorHistory> mostPressing() {
        return histories.stream().filter(one -> one.timeToLimit().isPresent())
                .min(Comparator.comparing(one -> one.measureAgainUntil().orElseThrow()));
    }

    /** {@return instants of all visits that are compared, rising, the present one last} */
    public List<Instant> visits() {
        return histories.stream().flatMap(one -> {
            List<Instant> all = new ArrayList<>();
            for (int i = 0; i < one.readings().size(); i++) {
                all.add(one.readings().instantOf(one.readings().day(i)).orElseThrow());
            }
            return all.stream();
        }).distinct().sorted().toList();
    }

    /** Two histories are equal if their numbers and what is left are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof MachineHistory history && histories.equals(history.histories)
                && left.equals(history.left);
    }

    /** Returns a hash code that agrees with {@link #equals}. */
    @Override
    public int hashCode() {
        return Objects.hash(histories, left);
    }

    /** Returns how much there is, as in {@code history of 14 visits, 24 numbers, 3 notable}. */
    @Override
    public String toString() {
        return "history of " + visits().size() + " visits, " + histories.size() + " numbers, " + notable().size()
                + " notable";
    }
}
