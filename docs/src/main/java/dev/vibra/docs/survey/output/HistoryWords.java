package dev.vibra.docs.survey.output;

import dev.vibra.alarm.AlarmState;
import dev.vibra.history.DescriptorHistory;
import dev.vibra.history.MachineHistory;
import dev.vibra.trend.InstantInterval;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Wording of visits and trends, shared by the printed summary and the report. */
final class HistoryWords {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("uuuu-MM-dd", Locale.ROOT)
            .withZone(ZoneOffset.UTC);

    private final Phrases phrases;
    private final ShownUnits units;

    HistoryWords(Phrases phrases, ShownUnits units) {
        this.phrases = phrases;
        this.units = units;
    }

    static String day(Instant when) {
        return DAY.format(when);
    }

    /** What is worth a line: what reached a limit, what changed, what may reach one; the worst and soonest first. */
    static List<DescriptorHistory> worthTelling(MachineHistory history) {
        return history.histories().stream().filter(one -> one.change().isPresent() || one.rises()
                        || one.state().filter(state -> state != AlarmState.NORMAL).isPresent())
                .sorted(Comparator.comparing((DescriptorHistory one) -> one.state().orElse(AlarmState.NORMAL)).reversed()
                        .thenComparing(one -> one.timeToLimit()
                                .map(InstantInterval::earliest).orElse(Instant.MAX))).toList();
    }

    String state(DescriptorHistory history) {
        return history.state().map(state -> phrases.say("history.state." + state.name())).orElse("");
    }

    String value(DescriptorHistory history, double value) {
        return units.number(value, history.readings().unit()) + " " + units.of(history.readings().unit());
    }

    /** Since about when it rises, or nothing: where a level steps or falls, the bend that was found is no date of it. */
    String since(DescriptorHistory history) {
        return history.changedSince().filter(when -> history.rises()).map(HistoryWords::day).orElse("");
    }

    /** When the next limit may be reached, or why that isn't said. */
    String outlook(DescriptorHistory history) {
        return history.timeToLimit().map(one -> phrases.say(history.limits().orElseThrow().trip().isPresent() ? "history.to-trip"
                : "history.to-alarm", value(history, history.limitAhead().orElseThrow()), day(one.earliest()),
                day(one.latest()))).orElse(String.join("; ", history.refusals()));
    }

    /** One line of the printed summary. */
    String line(DescriptorHistory history) {
        String since = since(history);
        String outlook = outlook(history);
        return phrases.say("history.line", history.descriptor(), value(history, history.first()),
                value(history, history.last()), history.readings().size()) + (since.isEmpty() ? ""
                : phrases.say("history.line-since", since)) + (state(history).isEmpty() ? "" : "; " + state(history))
                + (outlook.isEmpty() ? "" : "; " + outlook);
    }

    /** The step that a trend asks for: with its date, or without one where something rose beyond its alarm too fast. */
    Optional<String> measureAgain(MachineHistory history) {
        return history.mostPressing().map(one -> phrases.say("history.measure-again",
                day(one.measureAgainUntil().orElseThrow()), one.descriptor(), one.point(),
                day(one.timeToLimit().orElseThrow().earliest()))).or(() -> history.notable().stream()
                .filter(DescriptorHistory::rises).findFirst().map(one -> phrases.say("history.measure-soon",
                        one.descriptor(), one.point())));
    }
}
