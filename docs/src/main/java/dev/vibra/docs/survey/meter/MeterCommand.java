package dev.vibra.docs.survey.meter;

import dev.vibra.channel.Channel;
import dev.vibra.channel.ChannelSettings;
import dev.vibra.docs.survey.input.FileTrouble;
import dev.vibra.docs.survey.output.JsonText;
import dev.vibra.io.RecordingFileException;
import dev.vibra.meter.LevelMeter;
import dev.vibra.meter.Measurand;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.InvalidPathException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/** The command {@code --meter FILE}: levels of one channel, each interval on a line, whatever the length. */
public final class MeterCommand {
    /** First argument that chooses this command. */
    public static final String OPTION = "--meter";
    /** Measured. */
    public static final int MEASURED = 0;
    /** Measured with parts left out, which are named. */
    public static final int PARTS_LEFT_OUT = 1;
    /** Nothing was measured. */
    public static final int NOTHING_MEASURED = 2;
    /** A value was above its limit. */
    public static final int ALARM = 3;
    /** Wrong use of the command. */
    public static final int WRONG_USE = 64;

    static final String USAGE = """
            Usage: java -jar vibra-survey.jar --meter FILE --unit UNIT [OPTIONS]
                   ... | java -jar vibra-survey.jar --meter - --unit UNIT --rate HZ --format F

              FILE             WAV or CSV file; - for raw samples on standard input
              --unit UNIT      unit of the acceleration: m/s2, g, mg, mm/s2, in/s2
              --scale X        factor from a value of the source to the unit; whole numbers
                               count as fractions of full scale, so it is the full scale
              --channel N      channel of several, from 1
              --rate HZ        sample rate, of raw samples or of a CSV file of one column
              --format F       raw samples: s16le, s24le, s32le, f32le, f64le, or ...be
              --channels N     raw samples: channels that take turns
              --interval S     length of an interval in seconds, 1 without it
              --value NAME     a value to show, again for each: acceleration-rms,
                               acceleration-peak, crest-factor, kurtosis, or with a band of
                               its own as in velocity-rms-10-1000Hz: acceleration-, velocity-
                               or displacement-, then rms-, chain-peak-, chain-peak-to-peak-,
                               chain-crest-factor- or chain-kurtosis-
              --alarm NAME=L   limit of a value, in its unit; the value is shown too
              --json           each line a JSON object, the first tells source and units

            Exit code: 0 measured, and nothing above a limit; 1 measured with parts left out,
            which are named; 2 nothing measured; 3 a value above its limit; 64 wrong use
            """;

    private static final int BLOCK = 4096;
    private static final int MOST_SAMPLES = 1 << 30;

    private final InputStream in;
    private final Consumer<String> print;
    private final Consumer<String> complain;
    private final BooleanSupplier isGone;

    /**
     * Makes the command.
     *
     * @param in raw samples are read from here
     * @param print takes what is measured, with its line ends
     * @param complain takes messages without line ends
     * @param isGone true when nobody takes what is measured any more
     */
    public MeterCommand(InputStream in, Consumer<String> print, Consumer<String> complain, BooleanSupplier isGone) {
        this.in = in;
        this.print = print;
        this.complain = complain;
        this.isGone = isGone;
    }

    /**
     * Measures to the end of the source; ends no process.
     *
     * @param args arguments behind {@link #OPTION}
     * @return exit code
     */
    public int run(String... args) {
        if (List.of(args).contains("--help")) {
            print.accept(USAGE);
            return MEASURED;
        }
        try {
            MeterOptions options = MeterOptions.parse(args);
            try (SampleSource source = SampleSource.of(options, in)) {
                return measure(options, source);
            }
        } catch (MeterOptions.WrongUse e) {
            complain.accept(e.getMessage());
            complain.accept(USAGE);
            return WRONG_USE;
        } catch (RecordingFileException | InvalidPathException e) {
            return nothing(e.getMessage());
        }
    }

    private int nothing(String reason) {
        complain.accept("Nothing was measured: " + reason);
        return NOTHING_MEASURED;
    }

    private int measure(MeterOptions options, SampleSource source) throws MeterOptions.WrongUse {
        double rate = source.sampleRateHertz();
        long interval = MeterLines.samples(options, rate);
        if (!(interval >= 1 && interval <= MOST_SAMPLES)) {
            throw new MeterOptions.WrongUse("--interval must hold from 1 to " + MOST_SAMPLES + " samples at "
                    + Shown.number(rate) + " Hz: " + Shown.number(options.interval()) + " s");
        }
        Map<String, MeterValue> values = possible(options, rate);
        if (values.isEmpty()) {
            return nothing("the sample rate fits no value");
        }
        head(options, source, values);
        MeterLines lines = new MeterLines(options, values, rate, one -> print.accept((options.json()
                ? JsonText.line(MeterLines.json(one)) : MeterLines.text(one, options.alarms())) + "\n"));
        Channel channel = settings(options, source, values.values()).at(rate);
        Optional<String> trouble = feed(source, channel, lines);
        lines.end(channel);
        trouble.ifPresent(complain);
        return code(options, lines, trouble.isPresent() || values.size() < options.values().size());
    }

    /** Returns the values that the sample rate allows; the others are named. */
    private Map<String, MeterValue> possible(MeterOptions options, double rate) {
        Map<String, MeterValue> possible = new LinkedHashMap<>();
        options.values().forEach((name, value) -> value.obstacle(rate).ifPresentOrElse(
                reason -> complain.accept(name + " is left out: " + reason), () -> possible.put(name, value)));
        return possible;
    }

    private void head(MeterOptions options, SampleSource source, Map<String, MeterValue> values) {
        if (!options.json()) {
            print.accept(source.words() + ", " + Shown.number(source.sampleRateHertz()) + " Hz, intervals of "
                    + Shown.number(options.interval()) + " s\n");
            return;
        }
        Map<String, Object> units = new LinkedHashMap<>();
        values.forEach((name, value) -> units.put(name, value.row().unit()));
        Map<String, Object> head = new LinkedHashMap<>();
        head.put("source", source.words());
        head.put("sampleRateHertz", source.sampleRateHertz());
        head.put("intervalSeconds", options.interval());
        head.put("units", units);
        head.put("limits", options.alarms());
        print.accept(JsonText.line(head) + "\n");
    }

    private static ChannelSettings settings(MeterOptions options, SampleSource source, Iterable<MeterValue> values) {
        List<Measurand> measurands = new ArrayList<>();
        for (MeterValue value : values) {
            value.measurand().filter(one -> !measurands.contains(one)).ifPresent(one -> measurands.add(
                    one.quantity() == Quantity.VELOCITY ? 0 : measurands.size(), one));
        }
        if (measurands.isEmpty() || measurands.get(0).quantity() != Quantity.VELOCITY) {
            // A meter begins with a velocity; nobody reads this one, and it fits every rate.
            double rate = source.sampleRateHertz();
            measurands.add(0, new Measurand(Quantity.VELOCITY, Band.of(0.1 * rate, 0.4 * rate)));
        }
        ChannelSettings settings = ChannelSettings.named("meter").withLevels(new LevelMeter.Settings(measurands))
                .withReadingsEvery(options.interval()).withSpectraEvery(options.interval());
        return source.hasFullScale()
                ? settings.withFullScale(Math.abs(options.scale()) * options.unit().toSi()) : settings;
    }

    /** Returns why the samples end before their end; empty if they don't. */
    private Optional<String> feed(SampleSource source, Channel channel, MeterLines lines) {
        double[] block = new double[BLOCK];
        try {
            for (int count; !isGone.getAsBoolean() && (count = source.read(block)) > 0; ) {
                channel.push(block, 0, count, lines);
            }
            return Optional.empty();
        } catch (IOException e) {
            return Optional.of("Measured up to there only: " + FileTrouble.inWords(e));
        } catch (RecordingFileException e) {
            return Optional.of("Measured up to there only: " + e.getMessage());
        }
    }

    private int code(MeterOptions options, MeterLines lines, boolean isLeftOut) {
        if (lines.unsound() > 0) {
            complain.accept(lines.unsound() + " interval(s) without signal or overloaded");
        }
        for (String name : lines.notJudged()) {
            complain.accept("The limit of " + name + " was held against no interval");
        }
        if (lines.alarmed()) {
            return ALARM;
        }
        if (!lines.measured()) {
            return nothing("no interval gave a value");
        }
        return isLeftOut || lines.unsound() > 0 || !lines.notJudged().isEmpty() ? PARTS_LEFT_OUT : MEASURED;
    }
}
