package dev.vibra.descriptor;

import dev.vibra.descriptor.Descriptor.Basis;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Printable;
import dev.vibra.internal.Require;
import dev.vibra.level.Moments;
import dev.vibra.meter.LevelMeter;
import dev.vibra.meter.LevelReading;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.rotation.OrderVector;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.rotation.SynchronousAverage;
import dev.vibra.signal.Waveform;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The table of descriptors: {@code Descriptors.standard().of(waveform).values()} gives plain numbers under stable
 * names. A new number is one row more. Immutable.
 */
public final class Descriptors {
    /**
     * Version of the table, for the key of stored numbers: raised when a number under an unchanged name is made
     * differently, so that old and new ones aren't mixed in one trend. New rows don't raise it.
     */
    public static final int VERSION = 1;

    /** Band of broad-band vibration, ISO 20816-1:2016. */
    public static final Band USUAL_BAND = Band.of(10, 1000);

    private static final Pattern BANDED =
            Pattern.compile("(acceleration|velocity|displacement)-rms-([0-9.]{1,9})-([0-9.]{1,9})Hz");
    private static final double QUARTER_TURN = 90;
    private static final String PLAIN = "1";
    private static final String NO_SIGNAL = "all samples are equal";

    private final List<Descriptor> rows;

    private Descriptors(List<Descriptor> rows) {
        this.rows = Require.copy("rows", rows);
    }

    /** {@return the rows that describe any recording of a rotating machine} */
    public static Descriptors standard() {
        return new Descriptors(List.of(
                moment("acceleration-rms", Unit.M_PER_S2.plainSymbol(), "rms of the acceleration about its mean",
                        Moments::rms).readBy(of(LevelReading::rmsSi)),
                moment("acceleration-peak", Unit.M_PER_S2.plainSymbol(),
                        "largest distance of the acceleration from its mean",
                        Moments::peak).readBy(of(LevelReading::peakSi)),
                moment("crest-factor", PLAIN, "peak over rms of the acceleration", Moments::crestFactor)
                        .readBy(of(LevelReading::crestFactor)),
                moment("kurtosis", PLAIN, "kurtosis of the acceleration, 3 for normal noise", Moments::kurtosis)
                        .readBy(of(LevelReading::kurtosis)),
                moment("skewness", PLAIN, "skewness of the acceleration", Moments::skewness),
                rms(Quantity.VELOCITY, USUAL_BAND),
                peakToPeak(USUAL_BAND),
                rms(Quantity.DISPLACEMENT, USUAL_BAND),
                atOrder(1),
                atOrder(2)));
    }

    /** {@return this table with the rows that need a tachometer} */
    public Descriptors withTachometer() {
        return with(new Descriptor("velocity-1x-amplitude", Unit.MM_PER_S.plainSymbol(), Basis.MOTION,
                "zero-to-peak velocity once per revolution, synchronous average", signals -> vector(signals, true)))
                .with(new Descriptor("velocity-1x-lag", "deg", Basis.MOTION,
                        "phase lag of the same behind the mark of the tachometer", signals -> vector(signals, false)));
    }

    /**
     * Adds a row; one of a name that is there already changes nothing.
     *
     * @param row the row
     * @return this table with it at the end
     */
    public Descriptors with(Descriptor row) {
        Objects.requireNonNull(row, "row");
        if (row(row.name()).isPresent()) {
            return this;
        }
        List<Descriptor> more = new ArrayList<>(rows);
        more.add(row);
        return new Descriptors(more);
    }

    /** {@return the rows in order} */
    public List<Descriptor> rows() {
        return rows;
    }

    /** {@return the names of the rows in order} */
    public List<String> names() {
        return rows.stream().map(Descriptor::name).toList();
    }

    /**
     * Finds a row.
     *
     * @param name name of a descriptor
     * @return the row, if the table has it
     */
    public Optional<Descriptor> row(String name) {
        Objects.requireNonNull(name, "name");
        return rows.stream().filter(row -> row.name().equals(name)).findFirst();
    }

    /**
     * Finds the row of a name, in the standard table, among those that need a tachometer, or for another band, as in
     * {@code velocity-rms-2-1000Hz}.
     *
     * @param name name of a descriptor
     * @return the row, if there is a descriptor of that name
     */
    public static Optional<Descriptor> named(String name) {
        Objects.requireNonNull(name, "name");
        Matcher banded = BANDED.matcher(name);
        if (!banded.matches()) {
            return standard().withTachometer().row(name);
        }
        Optional<Band> band = band(banded.group(2), banded.group(3));
        return band.map(known -> rms(Quantity.valueOf(banded.group(1).toUpperCase(Locale.ROOT)), known))
                .filter(row -> row.name().equals(name));
    }

    private static Optional<Band> band(String lowest, String highest) {
        boolean numbers = lowest.matches("[0-9]+(\\.[0-9]+)?") && highest.matches("[0-9]+(\\.[0-9]+)?");
        return numbers && Double.parseDouble(lowest) < Double.parseDouble(highest) && Double.parseDouble(lowest) > 0
                ? Optional.of(Band.of(Double.parseDouble(lowest), Double.parseDouble(highest))) : Optional.empty();
    }

    /**
     * Describes a recording of which the speed isn't known.
     *
     * @param wave recording of a motion
     * @return numbers, and reasons for those that can't be made
     * @throws IllegalStateException if a rule of a row gives null
     */
    public Description of(Waveform wave) {
        return of(Signals.of(wave));
    }

    /**
     * Describes a recording.
     *
     * @param signals recording with what is known of its speed
     * @return numbers, and reasons for those that can't be made
     * @throws IllegalStateException if a rule of a row gives null
     */
    public Description of(Signals signals) {
        Objects.requireNonNull(signals, "signals");
        return collect(row -> row.rule().apply(signals));
    }

    /**
     * Describes a recording that isn't good for everything.
     *
     * @param signals recording with what is known of its speed
     * @param basis what it is good for
     * @param reason why no more, for the rows that ask for it
     * @return numbers, and reasons for those that can't be made
     * @throws IllegalStateException if a rule of a row gives null
     */
    public Description of(Signals signals, Set<Basis> basis, String reason) {
        Objects.requireNonNull(signals, "signals");
        Objects.requireNonNull(basis, "basis");
        Objects.requireNonNull(reason, "reason");
        return collect(row -> basis.contains(row.basis()) ? row.rule().apply(signals) : Outcome.none(reason));
    }

    /**
     * Describes a recording that is missing or good for nothing.
     *
     * @param reason why
     * @return no number, and the reason at every name
     */
    public Description none(String reason) {
        return collect(row -> Outcome.none(reason));
    }

    private Description collect(Function<Descriptor, Outcome> measure) {
        List<DescriptorValue> numbers = new ArrayList<>();
        Map<String, String> missing = new LinkedHashMap<>();
        for (Descriptor row : rows) {
            Outcome outcome = measure.apply(row);
            if (outcome == null) {
                throw new IllegalStateException("rule of " + Printable.quoted(row.name())
                        + " must give an outcome: null");
            }
            outcome.value().ifPresent(value -> numbers.add(new DescriptorValue(row.name(), value, row.unit())));
            outcome.reason().ifPresent(reason -> missing.put(row.name(), reason));
        }
        return new Description(numbers, missing);
    }

    /**
     * Reads a meter.
     *
     * @param meter meter in use
     * @return the numbers that it measures, under the same names, and reasons for the others
     * @throws IllegalStateException if a rule of a row gives null
     */
    public Description of(LevelMeter meter) {
        Objects.requireNonNull(meter, "meter");
        return collect(row -> row.reading().apply(meter));
    }

    private static Function<LevelMeter, Outcome> of(ToDoubleFunction<LevelReading> number) {
        return meter -> {
            LevelReading whole = meter.acceleration();
            if (!whole.isReadable()) {
                return Outcome.none("the meter has seen nothing yet");
            }
            return whole.rmsSi() > 0 ? Outcome.of(number.applyAsDouble(whole)) : Outcome.none(NO_SIGNAL);
        };
    }

    private static Descriptor moment(String name, String unit, String meaning, ToDoubleFunction<Moments> number) {
        return new Descriptor(name, unit, Basis.SAMPLES, meaning, signals -> {
            if (signals.wave().quantity() != Quantity.ACCELERATION) {
                return Outcome.none("the recording measures " + signals.wave().quantity());
            }
            return signals.moments().rms() == 0 ? Outcome.none(NO_SIGNAL)
                    : Outcome.of(number.applyAsDouble(signals.moments()));
        });
    }

    /**
     * Makes the row of a motion in a band, as severity is judged by it.
     *
     * @param quantity acceleration, velocity or displacement
     * @param band band of the measuring chain
     * @return the row, as in {@code velocity-rms-10-1000Hz}
     */
    public static Descriptor rms(Quantity quantity, Band band) {
        Objects.requireNonNull(quantity, "quantity");
        Objects.requireNonNull(band, "band");
        Unit unit = quantity.customaryUnit();
        return new Descriptor(quantity + "-rms-" + ends(band), unit.plainSymbol(), Basis.MOTION,
                quantity + " through the band-limiting chain of ISO 2954:2012", signals ->
                signals.chainObstacle(quantity, band).map(Outcome::none)
                        .orElseGet(() -> Outcome.of(signals.throughChain(quantity, band).rms().in(unit))))
                .readBy(meter -> reading(meter, quantity, band));
    }

    private static Outcome reading(LevelMeter meter, Quantity quantity, Band band) {
        if (!meter.measures(quantity, band)) {
            return Outcome.none("the meter measures " + meter.settings().measurands());
        }
        LevelReading reading = meter.reading(quantity, band);
        return reading.isReadable() ? Outcome.of(reading.rms().in(quantity.customaryUnit()))
                : Outcome.none("the meter has not settled yet");
    }

    private static Descriptor peakToPeak(Band band) {
        return new Descriptor("displacement-peak-to-peak-" + ends(band), Unit.UM.plainSymbol(), Basis.MOTION,
                "true peak-to-peak displacement, flat band, no phase shift", signals ->
                signals.integrationObstacle(band).map(Outcome::none)
                        .orElseGet(() -> Outcome.of(signals.wave().displacement(band).peakToPeak().in(Unit.UM))));
    }

    /**
     * Makes the row of the line at a multiple of the shaft speed.
     *
     * @param order multiple of the shaft speed, 1 to 10
     * @return the row, as in {@code velocity-rms-1x}
     */
    public static Descriptor atOrder(int order) {
        return new Descriptor("velocity-rms-" + order + "x", Unit.MM_PER_S.plainSymbol(), Basis.MOTION,
                "rms of the velocity line at " + order + " times the shaft speed", signals -> line(signals, order));
    }

    private static Outcome line(Signals signals, int order) {
        if (signals.speed().isEmpty()) {
            return Outcome.none("the speed is not known");
        }
        Optional<NamedLine> line = signals.shaftLines().stream().filter(one -> one.order() == order).findFirst();
        if (line.isEmpty()) {
            return Outcome.none("the recording is too short, or its sample rate too low, to show that multiple of "
                    + signals.speed().get());
        }
        return line.get().stands() ? Outcome.of(line.get().level().in(Unit.MM_PER_S))
                : Outcome.none("no line of its own stands out there");
    }

    private static Outcome vector(Signals signals, boolean amplitude) {
        if (signals.angle().isEmpty()) {
            return Outcome.none("there is no tachometer");
        }
        ShaftAngle angle = signals.angle().get();
        if (signals.turns().isEmpty()) {
            return Outcome.none("recording and pulses have fewer than " + Signals.FEWEST_TURNS + " turns in common");
        }
        OrderVector vector = SynchronousAverage.of(signals.turns().get()).vector(1);
        int integrations = signals.wave().quantity().integrationsTo(Quantity.VELOCITY);
        double velocity = vector.amplitude() / Math.pow(angle.meanSpeed().radiansPerSecond(), integrations);
        // Each integration turns the phase back by a quarter.
        return Outcome.of(amplitude ? velocity / Unit.MM_PER_S.toSi()
                : (vector.lagDegrees() + QUARTER_TURN * integrations + 360) % 360);
    }

    private static String ends(Band band) {
        return Digits.compact(band.lowestHertz(), 6) + "-" + Digits.compact(band.highestHertz(), 6) + "Hz";
    }

    /** Returns the number of rows. */
    @Override
    public String toString() {
        return rows.size() + " descriptors";
    }
}
