package dev.vibra.docs.survey.meter;

import dev.vibra.descriptor.Descriptor;
import dev.vibra.descriptor.Descriptors;
import dev.vibra.descriptor.Outcome;
import dev.vibra.meter.LevelMeter;
import dev.vibra.meter.LevelReading;
import dev.vibra.meter.Measurand;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One value that the meter shows, under the name of a descriptor, or under a name of its own for what the measuring
 * chain reads beside the rms, as in {@code velocity-chain-peak-10-1000Hz}.
 *
 * @param row name, unit and how the meter is read
 * @param measurand motion and band; empty for the whole acceleration
 */
record MeterValue(Descriptor row, Optional<Measurand> measurand) {
    static final String NAMES = "acceleration-rms, acceleration-peak, crest-factor, kurtosis, or a motion"
            + " (acceleration, velocity, displacement), what is read (rms, chain-peak, chain-peak-to-peak,"
            + " chain-crest-factor, chain-kurtosis) and its band, as in velocity-rms-10-1000Hz";
    static final List<String> USUAL = List.of("velocity-rms-10-1000Hz", "displacement-rms-10-1000Hz",
            "acceleration-rms", "acceleration-peak", "crest-factor", "kurtosis");

    private static final List<String> OF_THE_WHOLE = USUAL.subList(2, 6);
    private static final Pattern IN_BAND = Pattern.compile("(acceleration|velocity|displacement)-"
            + "(rms|chain-peak|chain-peak-to-peak|chain-crest-factor|chain-kurtosis)-([0-9.]+-[0-9.]+Hz)");
    private static final double PERIODS_TO_SETTLE = 4;
    private static final int LONGEST_SETTLING = 1 << 26;

    /** Finds a value; an unknown name, a band that isn't one, and a descriptor of whole recordings give none. */
    static Optional<MeterValue> named(String name) {
        if (OF_THE_WHOLE.contains(name)) {
            return Descriptors.named(name).map(row -> new MeterValue(row, Optional.empty()));
        }
        Matcher parts = IN_BAND.matcher(name);
        if (!parts.matches()) {
            return Optional.empty();
        }
        // The table knows which bands there are and how their ends are written.
        return Descriptors.named(parts.group(1) + "-rms-" + parts.group(3)).map(rms -> {
            String[] ends = parts.group(3).substring(0, parts.group(3).length() - 2).split("-");
            Measurand measurand = new Measurand(Quantity.valueOf(parts.group(1).toUpperCase(Locale.ROOT)),
                    Band.of(Double.parseDouble(ends[0]), Double.parseDouble(ends[1])));
            return new MeterValue(parts.group(2).equals("rms") ? rms : beside(name, parts.group(2), measurand),
                    Optional.of(measurand));
        });
    }

    private static Descriptor beside(String name, String what, Measurand measurand) {
        ToDoubleFunction<LevelReading> number = switch (what) {
            case "chain-peak" -> reading -> reading.peak().in(measurand.quantity().customaryUnit());
            case "chain-peak-to-peak" -> reading -> reading.peakToPeak().in(measurand.quantity().customaryUnit());
            case "chain-crest-factor" -> LevelReading::crestFactor;
            default -> LevelReading::kurtosis;
        };
        boolean isPlain = what.equals("chain-crest-factor") || what.equals("chain-kurtosis");
        Function<LevelMeter, Outcome> read = meter -> {
            LevelReading reading = meter.reading(measurand.quantity(), measurand.band());
            return isPlain && !(reading.rmsSi() > 0) ? Outcome.none("all samples are equal")
                    : Outcome.of(number.applyAsDouble(reading));
        };
        return new Descriptor(name, isPlain ? "1" : measurand.quantity().customaryUnit().plainSymbol(),
                Descriptor.Basis.MOTION, what + " behind the band-limiting chain of ISO 2954:2012",
                signals -> Outcome.none("it is read from a meter")).readBy(read);
    }

    String name() {
        return row.name();
    }

    /** Says why it can't be measured at a sample rate; empty if it can. */
    Optional<String> obstacle(double sampleRateHertz) {
        if (measurand.isEmpty()) {
            return Optional.empty();
        }
        Band band = measurand.get().band();
        if (!(band.highestHertz() <= 0.4 * sampleRateHertz)) {
            return Optional.of("needs a sample rate of at least " + Shown.number(2.5 * band.highestHertz()) + " Hz: "
                    + Shown.number(sampleRateHertz) + " Hz");
        }
        return PERIODS_TO_SETTLE * sampleRateHertz / band.lowestHertz() <= LONGEST_SETTLING ? Optional.empty()
                : Optional.of("would settle for more than " + LONGEST_SETTLING + " samples");
    }

    /** Returns the reading behind the value, which tells how many samples it covers. */
    LevelReading reading(LevelMeter meter) {
        return measurand.map(one -> meter.reading(one.quantity(), one.band())).orElse(meter.acceleration());
    }
}
