package dev.vibra.docs.survey.meter;

import dev.vibra.internal.Printable;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What the meter was asked for.
 *
 * @param source name of a file, or {@code -} for standard input
 * @param unit unit of the values after scaling
 * @param scale factor from a value to the unit
 * @param rate sample rate in Hz, if given
 * @param format how raw samples are stored, if given
 * @param channels channels that take turns in raw samples, if given
 * @param channel channel wanted, from 1, if given
 * @param interval length of an interval in s
 * @param json true for a JSON object a line
 * @param values values in the order wished, by name
 * @param alarms limit by name of a value, in its unit
 */
record MeterOptions(String source, Unit unit, double scale, OptionalDouble rate, Optional<RawFormat> format,
        OptionalInt channels, OptionalInt channel, double interval, boolean json, Map<String, MeterValue> values,
        Map<String, Double> alarms) {
    static final String RAW = "-";

    private static final List<String> FLAGS = List.of("--json");
    private static final List<String> ONCE = List.of("--unit", "--scale", "--rate", "--format", "--channels",
            "--channel", "--interval");
    private static final List<String> MANY = List.of("--value", "--alarm");
    private static final List<Unit> UNITS = Arrays.stream(Unit.values())
            .filter(unit -> unit.quantity() == Quantity.ACCELERATION).toList();
    private static final double LARGEST = 1e12;
    private static final double LONGEST_INTERVAL = 86_400;

    /** The meter was asked in a way that it doesn't know. */
    static final class WrongUse extends Exception {
        private static final long serialVersionUID = 1;

        WrongUse(String message) {
            super(message);
        }
    }

    static MeterOptions parse(String... args) throws WrongUse {
        String source = null;
        Map<String, String> given = new LinkedHashMap<>();
        Map<String, MeterValue> values = new LinkedHashMap<>();
        Map<String, Double> alarms = new LinkedHashMap<>();
        for (int i = 0; i < args.length; i++) {
            String option = args[i];
            if (option.equals(RAW) || !option.startsWith("-")) {
                require(source == null, "FILE may be given once only; it was given as " + source);
                source = option;
                continue;
            }
            boolean isFlag = FLAGS.contains(option);
            require(isFlag || ONCE.contains(option) || MANY.contains(option), "unknown option: " + option);
            require(isFlag || i + 1 < args.length, option + " needs a value behind it");
            String text = isFlag ? "" : args[++i];
            if (option.equals("--value")) {
                values.put(text, value(text));
            } else if (option.equals("--alarm")) {
                alarm(text, alarms);
            } else {
                require(given.put(option, text) == null, option + " may be given once only");
            }
        }
        require(source != null && !source.isBlank(), "--meter needs a FILE, or - for standard input");
        return new MeterOptions(source, unit(given.get("--unit")),
                number(given, "--scale", -LARGEST, LARGEST).orElse(1), number(given, "--rate", 0.1, 1e9),
                format(given.get("--format")), count(given, "--channels"), count(given, "--channel"),
                number(given, "--interval", 1e-6, LONGEST_INTERVAL).orElse(1), given.containsKey("--json"),
                all(values, alarms), alarms).checked();
    }

    private MeterOptions checked() throws WrongUse {
        require(scale != 0, "--scale must not be 0");
        boolean isRaw = source.equals(RAW);
        require(!isRaw || rate.isPresent() && format.isPresent(), "standard input needs --rate and --format");
        require(isRaw || format.isEmpty() && channels.isEmpty(),
                "--format and --channels are for standard input only; a file tells its own");
        require(!isRaw || channel.orElse(1) <= channels.orElse(1), "--channel must be from 1 to "
                + channels.orElse(1) + ", the number of --channels: " + channel.orElse(1));
        require(!isRaw || channels.orElse(1) == 1 || channel.isPresent(), "--channels needs --channel beside it");
        return this;
    }

    /** What is watched is shown. */
    private static Map<String, MeterValue> all(Map<String, MeterValue> values, Map<String, Double> alarms)
            throws WrongUse {
        Map<String, MeterValue> all = new LinkedHashMap<>(values);
        for (String name : values.isEmpty() ? MeterValue.USUAL : List.<String>of()) {
            all.put(name, value(name));
        }
        for (String name : alarms.keySet()) {
            all.putIfAbsent(name, value(name));
        }
        return all;
    }

    private static MeterValue value(String name) throws WrongUse {
        return MeterValue.named(name).orElseThrow(() -> new WrongUse("no value of a meter: "
                + Printable.quoted(name) + "; there are " + MeterValue.NAMES));
    }

    private static void alarm(String text, Map<String, Double> alarms) throws WrongUse {
        int at = text.indexOf('=');
        require(at > 0, "--alarm needs NAME=LIMIT: " + Printable.quoted(text));
        MeterValue value = value(text.substring(0, at));
        double limit = number("--alarm " + value.name(), text.substring(at + 1), 0, LARGEST);
        require(alarms.put(value.name(), limit) == null, "--alarm may be given once only for " + value.name());
    }

    private static Unit unit(String text) throws WrongUse {
        for (Unit unit : UNITS) {
            if (unit.plainSymbol().equals(text) || unit.symbol().equals(text)) {
                return unit;
            }
        }
        throw new WrongUse("--unit must be one of acceleration, "
                + String.join(", ", UNITS.stream().map(Unit::plainSymbol).toList())
                + (text == null ? "; it isn't given" : ": " + Printable.quoted(text)));
    }

    private static Optional<RawFormat> format(String text) throws WrongUse {
        Optional<RawFormat> format = text == null ? Optional.empty() : RawFormat.named(text);
        require(text == null || format.isPresent(), "--format must be one of " + String.join(", ", RawFormat.names())
                + ": " + text);
        return format;
    }

    private static OptionalInt count(Map<String, String> given, String option) throws WrongUse {
        String text = given.get(option);
        if (text == null) {
            return OptionalInt.empty();
        }
        require(text.matches("[1-9][0-9]{0,3}"), option + " needs a whole number from 1 to 9999: "
                + Printable.quoted(text));
        return OptionalInt.of(Integer.parseInt(text));
    }

    private static OptionalDouble number(Map<String, String> given, String option, double lowest, double highest)
            throws WrongUse {
        String text = given.get(option);
        return text == null ? OptionalDouble.empty() : OptionalDouble.of(number(option, text, lowest, highest));
    }

    private static double number(String what, String text, double lowest, double highest) throws WrongUse {
        boolean isNumber = text.matches("[-+]?([0-9]{1,20}(\\.[0-9]{0,20})?|\\.[0-9]{1,20})([eE][-+]?[0-9]{1,3})?");
        double number = isNumber ? Double.parseDouble(text) : Double.NaN;
        require(number >= lowest && number <= highest, what + " needs a number from " + Shown.number(lowest) + " to "
                + Shown.number(highest) + ": " + Printable.quoted(text));
        return number;
    }

    private static void require(boolean holds, String message) throws WrongUse {
        if (!holds) {
            throw new WrongUse(message);
        }
    }
}
