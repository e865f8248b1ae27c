package dev.vibra.docs.survey.output;

import static dev.vibra.docs.survey.output.JsonText.object;

import dev.vibra.history.DescriptorHistory;
import dev.vibra.history.HistoryLimits;
import dev.vibra.history.MachineHistory;
import dev.vibra.trend.InstantInterval;
import dev.vibra.trend.Readings;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The history of a machine as JSON. */
final class HistoryJson {
    private HistoryJson() {}

    static List<Map<String, Object>> of(MachineHistory history) {
        return history.histories().stream().map(HistoryJson::of).toList();
    }

    private static Map<String, Object> of(DescriptorHistory one) {
        return object("point", one.point(), "descriptor", one.descriptor(), "unit", one.readings().unit().plainSymbol(),
                "readings", readings(one.readings()), "state", one.state().map(state -> state.name()
                        .toLowerCase(Locale.ROOT)),
                "alarm", one.limits().map(HistoryLimits::alarm), "trip", one.limits().map(HistoryLimits::trip)
                        .filter(trip -> trip.isPresent()).map(trip -> trip.getAsDouble()),
                "limitsBy", one.limits().map(HistoryLimits::source), "changedSince", one.changedSince(),
                "timeToLimit", one.timeToLimit().map(when -> time(one, when)),
                "measureAgainUntil", one.measureAgainUntil(), "doubts", one.doubts(), "refusals", one.refusals());
    }

    private static List<Map<String, Object>> readings(Readings readings) {
        List<Map<String, Object>> all = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            all.add(object("measured", readings.instantOf(readings.day(i)), "value", readings.value(i)));
        }
        return all;
    }

    private static Map<String, Object> time(DescriptorHistory history, InstantInterval when) {
        return object("limit", history.limitAhead().orElseThrow(), "earliest", when.earliest(), "best", when.best(),
                "latest", when.latest());
    }
}
