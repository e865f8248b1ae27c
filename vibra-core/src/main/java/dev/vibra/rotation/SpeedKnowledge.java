package dev.vibra.rotation;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * What is known of the speed of a machine before its recording is looked at, immutable. Begin with {@link #none()}:
 *
 * <pre>{@code
 * SpeedKnowledge.none().withNominal(RotationSpeed.ofRevolutionsPerMinute(1480)).withMains(50)
 * SpeedKnowledge.none().withMains(60).withInductionMotor(4)   // 1692 to 1800 r/min
 * }</pre>
 *
 * <p>Defaults: speeds from 3 Hz to 200 Hz, of which 5 Hz to 60 Hz are equally likely, slower ones as the square and
 * faster ones as the inverse fourth power of the speed; nothing known of mains, so that multiples of 50 Hz and of 60 Hz
 * alike may be hum. These, the 10 % about a nominal speed and the slip of motors are common practice, no source.
 */
public final class SpeedKnowledge implements Serializable {
    private static final long serialVersionUID = 1;
    private static final Band USUAL = Band.of(5, 60);
    private static final double NOMINAL_REACH = 0.1;
    private static final double NARROW = 1.25;
    private static final double MOST_SLIP = 0.06;
    private static final double MAINS_WANDER = 1e-3;
    private static final int HUM_MULTIPLES = 12;
    private static final List<Integer> USUAL_POLES = List.of(2, 4, 6, 8);
    private static final List<Double> USUAL_MAINS = List.of(50.0, 60.0);
    private static final int STEPS = 500;
    private static final SpeedKnowledge NONE = new SpeedKnowledge(Band.of(3, 200), null, null, List.of());

    private final Band range;
    private final RotationSpeed nominal;
    private final Double mains;
    private final List<Integer> poles;
    private final List<Band> speeds;
    private final double weight;

    private SpeedKnowledge(Band range, RotationSpeed nominal, Double mains, List<Integer> poles) {
        Require.positive("lowest frequency of the range", range.lowestHertz(), "Hz");
        this.range = range;
        this.nominal = nominal;
        this.mains = mains == null ? null : Require.positive("hertz", mains, "Hz");
        this.poles = List.copyOf(poles);
        List<Band> allowed = List.of(range);
        if (nominal != null) {
            allowed = overlaps(allowed, List.of(around(nominal.hertz(), NOMINAL_REACH, NOMINAL_REACH)));
        }
        if (!poles.isEmpty()) {
            allowed = overlaps(allowed, motorSpeeds());
        }
        speeds = List.copyOf(allowed);
        weight = speeds.stream().mapToDouble(this::weight).sum();
    }

    private Object readResolve() {
        return new SpeedKnowledge(range, nominal, mains, poles.stream().map(SpeedKnowledge::even).toList());
    }

    /** {@return no knowledge but the defaults} */
    public static SpeedKnowledge none() {
        return NONE;
    }

    /**
     * Returns this knowledge with another range of speeds.
     *
     * @param newRange range in Hz (revolutions per second), from above 0 Hz
     * @return the knowledge with that range
     * @throws IllegalArgumentException if the range begins at 0 Hz
     */
    public SpeedKnowledge withRange(Band newRange) {
        return new SpeedKnowledge(Objects.requireNonNull(newRange, "newRange"), nominal, mains, poles);
    }

    /**
     * Returns this knowledge with the speed on the plate: the shaft turns within 10 % of it. Unless a range was asked
     * for, one that lies beyond the default range is looked for all the same.
     *
     * @param newNominal nominal speed
     * @return the knowledge with that speed
     */
    public SpeedKnowledge withNominal(RotationSpeed newNominal) {
        Band near = around(Objects.requireNonNull(newNominal, "newNominal").hertz(), NOMINAL_REACH, NOMINAL_REACH);
        Band wide = range.equals(NONE.range) ? Band.of(Math.min(range.lowestHertz(), near.lowestHertz()),
                Math.max(range.highestHertz(), near.highestHertz())) : range;
        return new SpeedKnowledge(wide, newNominal, mains, poles);
    }

    /**
     * Returns this knowledge with the frequency of the mains, whose multiples may be hum.
     *
     * @param hertz line frequency in Hz, finite, above zero
     * @return the knowledge with those mains
     * @throws IllegalArgumentException if the frequency is out of range
     */
    public SpeedKnowledge withMains(double hertz) {
        return new SpeedKnowledge(range, nominal, hertz, poles);
    }

    /**
     * Returns this knowledge with an induction motor on the mains, without a converter, whose poles are not known: 2,
     * 4, 6 or 8, equally likely. Where the mains are not known either, they have 50 Hz or 60 Hz.
     *
     * @return the knowledge with such a motor
     */
    public SpeedKnowledge withInductionMotor() {
        return new SpeedKnowledge(range, nominal, mains, USUAL_POLES);
    }

    /**
     * Returns this knowledge with an induction motor on the mains, without a converter: it turns 0 to 6 % below 120
     * times the line frequency over the number of poles, in r/min.
     *
     * @param count number of poles, even, at least 2
     * @return the knowledge with that motor
     * @throws IllegalArgumentException if the number is odd or below 2
     */
    public SpeedKnowledge withInductionMotor(int count) {
        return new SpeedKnowledge(range, nominal, mains, List.of(even(count)));
    }

    private static int even(int count) {
        if (Require.atLeast("count", count, 2) % 2 != 0) {
            throw Require.failure("count", "even", count);
        }
        return count;
    }

    /** {@return the speed on the plate, if known} */
    public Optional<RotationSpeed> nominal() {
        return Optional.ofNullable(nominal);
    }

    /** {@return the line frequency in Hz, if known} */
    public OptionalDouble mainsHertz() {
        return mains == null ? OptionalDouble.empty() : OptionalDouble.of(mains);
    }

    /** {@return the speeds that are possible with all of this, ranges in Hz; none if it contradicts itself} */
    public List<Band> possible() {
        return speeds;
    }

    /** Tells whether all possible speeds are so near each other that a single line among them is likely the shaft's. */
    boolean isNarrow() {
        double lowest = speeds.stream().mapToDouble(Band::lowestHertz).min().orElse(0);
        double highest = speeds.stream().mapToDouble(Band::highestHertz).max().orElse(0);
        return highest <= NARROW * lowest;
    }

    boolean allows(double hertz) {
        for (Band band : speeds) { // Asked of each line that is left beside each candidate.
            if (band.contains(hertz)) {
                return true;
            }
        }
        return false;
    }

    /** Logarithm of the probability density of a speed that is allowed, over that of speeds even from 0 Hz to 60 Hz. */
    double logDensity(double hertz) {
        return logUsual(hertz) + Math.log(USUAL.highestHertz() / weight);
    }

    /** Tells whether a line may be hum of the mains. */
    boolean mayBeHum(double hertz, double toleranceHertz) {
        for (double frequency : possibleMains()) {
            double multiple = Math.rint(hertz / frequency);
            if (multiple >= 1 && multiple <= HUM_MULTIPLES
                    && Math.abs(hertz - multiple * frequency) <= toleranceHertz + MAINS_WANDER * hertz) {
                return true;
            }
        }
        return false;
    }

    private List<Double> possibleMains() {
        return mains == null ? USUAL_MAINS : List.of(mains);
    }

    private List<Band> motorSpeeds() {
        return possibleMains().stream().flatMap(hertz -> poles.stream()
                .map(count -> around(2 * hertz / count, MOST_SLIP, MAINS_WANDER))).toList();
    }

    private static Band around(double hertz, double below, double above) {
        return Band.of((1 - below) * hertz, (1 + above) * hertz);
    }

    private static List<Band> overlaps(List<Band> one, List<Band> other) {
        List<Band> both = new ArrayList<>();
        for (Band a : one) {
            for (Band b : other) {
                double lowest = Math.max(a.lowestHertz(), b.lowestHertz());
                double highest = Math.min(a.highestHertz(), b.highestHertz());
                if (lowest < highest) {
                    both.add(Band.of(lowest, highest));
                }
            }
        }
        return both;
    }

    private double weight(Band band) {
        double sum = 0;
        for (int i = 0; i < STEPS; i++) {
            sum += Math.exp(logUsual(band.lowestHertz() + (i + 0.5) / STEPS * band.widthHertz()));
        }
        return sum * band.widthHertz() / STEPS;
    }

    private double logUsual(double hertz) {
        double usual = Math.min(0, Math.min(2 * Math.log(hertz / USUAL.lowestHertz()),
                4 * Math.log(USUAL.highestHertz() / hertz)));
        // Each number of poles is equally likely, and its range as wide as its speed is high.
        return poles.isEmpty() ? usual : usual - Math.log(hertz);
    }

    /** Returns what is known, as in {@code nominal speed 1480 r/min (24.67 Hz); mains 50 Hz: 22.2–27.13 Hz}. */
    @Override
    public String toString() {
        List<String> facts = new ArrayList<>();
        nominal().ifPresent(speed -> facts.add("nominal speed " + speed));
        mainsHertz().ifPresent(hertz -> facts.add("mains " + Digits.compact(hertz, 4) + " Hz"));
        if (!poles.isEmpty()) {
            facts.add("induction motor" + (poles.size() == 1 ? ", " + poles.get(0) + " poles" : ""));
        }
        String known = facts.isEmpty() ? "nothing known" : String.join("; ", facts);
        return known + ": " + (speeds.isEmpty() ? "no speed fits all of it"
                : speeds.stream().map(SpeedKnowledge::printed).collect(Collectors.joining(", ")));
    }

    private static String printed(Band band) {
        return Digits.significant(band.lowestHertz(), 3) + " to " + Digits.significant(band.highestHertz(), 3) + " Hz";
    }
}
