package dev.vibra.docs.survey.meter;

import dev.vibra.channel.Channel;
import dev.vibra.channel.ChannelListener;
import dev.vibra.channel.ReadingQuality;
import dev.vibra.descriptor.DescriptorValue;
import dev.vibra.descriptor.Outcome;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Consumer;

/** Makes a line of each interval, and keeps what the exit code needs. */
final class MeterLines implements ChannelListener {
    /** One interval: what it is good for, its values, why others are missing, those above their limit. */
    record Interval(double begin, double seconds, boolean partial, String quality, List<DescriptorValue> values,
            Map<String, String> missing, List<String> alarms) {}

    private static final String SOUND = "sound";
    private static final String SETTLING = "settling";
    private static final String NO_SIGNAL = "no signal";
    private static final String ALL_EQUAL = "all samples are equal";

    private final Map<String, MeterValue> values;
    private final MeterOptions options;
    private final double sampleRateHertz;
    private final long whole;
    private final Consumer<Interval> told;
    private final TreeSet<String> judged = new TreeSet<>();
    private boolean alarmed;
    private boolean measured;
    private long unsound;

    MeterLines(MeterOptions options, Map<String, MeterValue> values, double sampleRateHertz, Consumer<Interval> told) {
        this.options = options;
        this.values = values;
        this.sampleRateHertz = sampleRateHertz;
        this.whole = samples(options, sampleRateHertz);
        this.told = told;
    }

    static long samples(MeterOptions options, double sampleRateHertz) {
        return (long) Math.rint(options.interval() * sampleRateHertz);
    }

    @Override
    public void reading(Channel channel) {
        tell(channel, whole);
    }

    /** Tells the interval that the end cut short, if anything of it came. */
    void end(Channel channel) {
        if (channel.levels().acceleration().isReadable()) {
            tell(channel, channel.levels().acceleration().samples());
        }
    }

    private void tell(Channel channel, long samples) {
        ReadingQuality found = channel.quality();
        List<DescriptorValue> shown = new ArrayList<>();
        Map<String, String> missing = new LinkedHashMap<>();
        List<String> above = new ArrayList<>();
        for (MeterValue value : values.values()) {
            long covered = value.reading(channel.levels()).samples();
            Outcome outcome = outcome(value, channel, found, 2 * covered < samples);
            outcome.reason().ifPresent(reason -> missing.put(value.name(), reason));
            outcome.value().ifPresent(number -> {
                shown.add(new DescriptorValue(value.name(), number, value.row().unit()));
                // A limit is held against what covers half an interval at least, and isn't clipped.
                if (found != ReadingQuality.OVERLOADED && 2 * covered >= whole && isAbove(value.name(), number)) {
                    above.add(value.name());
                }
            });
        }
        alarmed |= !above.isEmpty();
        measured |= !shown.isEmpty();
        told.accept(new Interval(channel.readingBegin() / sampleRateHertz, samples / sampleRateHertz, samples < whole,
                quality(found, missing), shown, missing, above));
    }

    private static Outcome outcome(MeterValue value, Channel channel, ReadingQuality found, boolean isSettling) {
        if (found == ReadingQuality.NO_SIGNAL) {
            return Outcome.none(ALL_EQUAL);
        }
        return isSettling ? Outcome.none("not settled") : value.row().reading().apply(channel.levels());
    }

    private boolean isAbove(String name, double number) {
        if (!options.alarms().containsKey(name)) {
            return false;
        }
        judged.add(name);
        return number > options.alarms().get(name);
    }

    /** That of the channel takes all its filters together; here each value tells for itself whether it has settled. */
    private String quality(ReadingQuality found, Map<String, String> missing) {
        if (found == ReadingQuality.OVERLOADED || found == ReadingQuality.NO_SIGNAL) {
            unsound++;
            return found == ReadingQuality.OVERLOADED ? "overloaded" : NO_SIGNAL;
        }
        return missing.isEmpty() ? SOUND : SETTLING;
    }

    boolean alarmed() {
        return alarmed;
    }

    boolean measured() {
        return measured;
    }

    long unsound() {
        return unsound;
    }

    /** Returns the names with a limit that no interval was held against. */
    List<String> notJudged() {
        return options.alarms().keySet().stream().filter(name -> !judged.contains(name)).toList();
    }

    static String text(Interval one, Map<String, Double> alarms) {
        List<String> parts = new ArrayList<>();
        one.values().forEach(value -> parts.add(value.toString()
                + (one.alarms().contains(value.name()) ? " above " + Shown.number(alarms.get(value.name())) : "")));
        one.missing().forEach((name, reason) -> parts.add(name + ": " + reason));
        boolean isPlain = one.quality().equals(SOUND) || one.quality().equals(SETTLING);
        boolean isDead = one.quality().equals(NO_SIGNAL);
        return Shown.number(one.begin()) + " s  " + (one.alarms().isEmpty() ? "" : "ALARM  ")
                + (one.partial() ? "partial, " + Shown.number(one.seconds()) + " s  " : "")
                + (isPlain ? "" : one.quality() + "  ") + (isDead ? ALL_EQUAL : String.join(", ", parts));
    }

    static Map<String, Object> json(Interval one) {
        Map<String, Object> line = new LinkedHashMap<>();
        line.put("atSeconds", one.begin());
        line.put("seconds", one.seconds());
        line.put("partial", one.partial());
        line.put("quality", one.quality());
        Map<String, Object> numbers = new LinkedHashMap<>();
        one.values().forEach(value -> numbers.put(value.name(), value.value()));
        line.put("values", numbers);
        line.put("missing", one.missing());
        line.put("alarm", one.alarms());
        return line;
    }
}
