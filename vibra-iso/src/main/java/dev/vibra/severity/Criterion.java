package dev.vibra.severity;

import dev.vibra.evidence.Confidence;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Limits of one quantity between zones, with all that says where they come from and what they hold for.
 *
 * <p>A value equal to a limit belongs to the better zone. That is common use; the standards fix no rule. Values are
 * compared in SI units as doubles, each limit turned into SI as {@link Level#of} turns a reading.
 *
 * <p>Immutable. The limits are those of the text table, see {@link CriterionTables}.
 *
 * @see "ISO 20816-3:2022, Annex A; ISO 10816-3:2009, Annex A; ISO 10816-1:1995, Annex B"
 */
public final class Criterion implements Serializable {
    private static final long serialVersionUID = 1;

    private final LimitRow row;
    private final Band band;
    private final List<Rating> ratings;
    private final OperatingLimits operating;

    /** {@code ratings} are empty for a standard with the zones A to D, {@code operating} is null where it has none. */
    Criterion(LimitRow row, Band band, List<Rating> ratings, OperatingLimits operating) {
        this.row = Objects.requireNonNull(row, "row");
        this.band = Objects.requireNonNull(band, "band");
        this.ratings = Require.copy("ratings", ratings);
        this.operating = operating;
    }

    private Object readResolve() {
        return new Criterion(row, band, ratings, operating);
    }

    /**
     * Returns the standard with its edition.
     *
     * @return as in {@code ISO 20816-3:2022}
     */
    public String standard() {
        return row.standard();
    }

    /**
     * Returns the place in the standard.
     *
     * @return clause or table, as in {@code Table A.2}
     */
    public String clause() {
        return row.clause();
    }

    /**
     * Returns the group or class as printed.
     *
     * @return as in {@code group 2} or {@code class I}
     */
    public String groupLabel() {
        return row.group();
    }

    /**
     * Returns the group or class alone.
     *
     * @return as in {@code 2} or {@code I}
     */
    public String group() {
        return plain(row.group());
    }

    /** A label without the word before it that says what it is. */
    static String plain(String label) {
        return label.replaceFirst("^(group|class|category|grade) ", "");
    }

    /** {@return the support that the limits hold for; empty where the standard doesn't tell supports apart here} */
    public Optional<Support> support() {
        return Optional.ofNullable(row.support());
    }

    /** {@return what is limited} */
    public Quantity quantity() {
        return row.quantity();
    }

    /** {@return how the limited value is made} */
    public Detector detector() {
        return row.detector();
    }

    /** {@return the band in which the limits hold} */
    public Band band() {
        return band;
    }

    /** {@return the unit in which the table prints the limits} */
    public Unit unit() {
        return row.unit();
    }

    /**
     * Returns the limits between the zones, rising.
     *
     * @return unmodifiable list, at least one
     */
    public List<Boundary> boundaries() {
        return row.boundaries();
    }

    /**
     * Returns the limits alone, rising, in the unit of {@link #unit()}.
     *
     * @return unmodifiable list, at least one
     */
    public List<Double> limits() {
        return row.boundaries().stream().map(Boundary::limit).collect(Collectors.toUnmodifiableList());
    }

    /**
     * Returns the limit between two zones by its name.
     *
     * @param name as in {@code B/C}
     * @return the limit; empty if this criterion has none there
     */
    public Optional<Boundary> boundary(String name) {
        Objects.requireNonNull(name, "name");
        return boundaries().stream().filter(boundary -> boundary.name().equals(name)).findFirst();
    }

    /**
     * Returns what the standard calls a zone: {@code zone C}, or words of its own such as {@code above alarm}.
     *
     * @param zone zone of this criterion
     * @return the name
     */
    public String rating(Zone zone) {
        Objects.requireNonNull(zone, "zone");
        return ratingOf(zone).label();
    }

    /**
     * Returns what a zone means by this standard.
     *
     * @param zone zone of this criterion
     * @return a phrase without full stop
     */
    public String meaning(Zone zone) {
        Objects.requireNonNull(zone, "zone");
        return ratingOf(zone).meaning();
    }

    /**
     * Tells whether the standard has names of its own in place of the zones A to D.
     *
     * @return true for acceptance and alarm schemes
     */
    public boolean hasOwnRatings() {
        return !ratings.isEmpty();
    }

    /**
     * Tells whether the standard accepts a machine or refuses it, and has no zones.
     *
     * @return true for acceptance schemes
     */
    public boolean isAcceptance() {
        return ratings.stream().anyMatch(Rating::acceptance);
    }

    /**
     * Returns the zones that this criterion tells apart, best first.
     *
     * @return unmodifiable list, at least two
     */
    public List<Zone> zones() {
        return Stream.concat(Stream.of(boundaries().get(0).better()), boundaries().stream().map(Boundary::worse))
                .toList();
    }

    private Rating ratingOf(Zone zone) {
        return ratings.stream().filter(rating -> rating.zone() == zone).findFirst()
                .orElseGet(() -> Rating.ofZone(standard(), zone));
    }

    /**
     * Returns what the standard says on change, alarm and trip.
     *
     * @return the values in the unit of {@link #unit()}; empty if the tables hold none for it
     */
    public Optional<OperatingLimits> operatingLimits() {
        return Optional.ofNullable(operating);
    }

    /** {@return how far the limits can be relied on} */
    public Confidence confidence() {
        return row.confidence();
    }

    /** {@return what else is to be said of the limits; empty if there is none} */
    public String note() {
        return row.note();
    }

    /**
     * Says why this criterion can't judge a level: another quantity, detector or band, or a method that the standard
     * doesn't mean. An r.m.s. limit means the severity chain; a peak-to-peak one, for which the shape of the wave
     * counts, a band without phase shift as well (from memory, unverified); what the caller states is taken at his
     * word.
     *
     * @param level any level
     * @return the objection, with the call that gives the right level; empty if the level can be judged
     * @see "ISO 2954:2012, 5.3 and 5.4"
     */
    public Optional<String> objectionTo(Level level) {
        Objects.requireNonNull(level, "level");
        if (level.quantity() != quantity()) {
            return objection("measure " + quantity(), level.quantity());
        }
        if (level.detector() != detector()) {
            return objection("have the detector " + detector(), level.detector());
        }
        if (!methods().contains(level.method())) {
            return objection("be measured by " + methods().get(0), level.method() + "; take " + rightCall()
                    + ", or Level.of for one from elsewhere");
        }
        return band.equals(level.band().orElse(null)) ? Optional.empty() : objection("be limited to the band " + band,
                level.band().map(other -> Printed.band(other, band)).orElse("no band stated"));
    }

    /** The one to recommend first. */
    private List<LevelMethod> methods() {
        boolean ofMeanSquare = detector() == Detector.RMS || detector() == Detector.DERIVED_PEAK;
        return ofMeanSquare ? List.of(LevelMethod.SEVERITY_CHAIN, LevelMethod.STATED)
                : List.of(LevelMethod.ZERO_PHASE_BAND, LevelMethod.SEVERITY_CHAIN, LevelMethod.STATED);
    }

    private Optional<String> objection(String rule, Object value) {
        return Optional.of("level must " + rule + " for " + standard() + " " + groupLabel() + ": " + value);
    }

    private String rightCall() {
        String ends = "Band.of(" + Digits.compact(band.lowestHertz(), 9) + ", "
                + Digits.compact(band.highestHertz(), 9) + ")";
        String chain = "throughSeverityChain(Quantity." + quantity().name() + ", " + ends + ")";
        return "waveform." + switch (detector()) {
            case RMS -> chain + ".rms()";
            case DERIVED_PEAK -> chain + ".rms().derivedPeak()";
            case ZERO_TO_PEAK -> quantity() + "(" + ends + ").peak()";
            case PEAK_TO_PEAK -> quantity() + "(" + ends + ").peakToPeak()";
        };
    }

    /**
     * Finds the zone of a level.
     *
     * @param level level that this criterion has no {@linkplain #objectionTo objection} to
     * @return the zone; the better one on a boundary
     * @throws IllegalArgumentException if there is an objection
     */
    public Zone zoneOf(Level level) {
        Objects.requireNonNull(level, "level");
        check(level);
        return zoneOfSi(level.si());
    }

    /**
     * Judges a measured level.
     *
     * @param measurement level with its uncertainty
     * @return the judgement with its evidence
     * @throws IllegalArgumentException if there is an {@linkplain #objectionTo objection} to the level, or if the
     *     recording, where it is stated, doesn't cover the band
     */
    public Judgement judge(Measurement measurement) {
        return new Judgement(this, measurement);
    }

    void check(Level level) {
        objectionTo(level).ifPresent(objection -> {
            throw new IllegalArgumentException(objection);
        });
    }

    void check(Measurement measurement) {
        check(measurement.level());
        List<String> refusals = measurement.chain().map(chain -> chain.refusals(band)).orElse(List.of());
        if (!refusals.isEmpty()) {
            throw new IllegalArgumentException("recording must cover the band " + band + " for " + standard() + " "
                    + groupLabel() + ": " + String.join("; ", refusals));
        }
    }

    /**
     * Makes a level that lies in a zone: the forward model of {@link #zoneOf}.
     *
     * <p>For a zone between limits a and b it is {@code a + fraction·(b − a)}; for the worst zone, above the limit a,
     * {@code a + fraction·a}. So 1 gives the upper limit itself, which still belongs to the zone.
     *
     * @param zone zone to hit; one that the criterion tells apart
     * @param fraction place in the zone, above 0 and at most 1
     * @return level of the quantity, detector and band of this criterion
     * @throws IllegalArgumentException if the fraction is out of range or the criterion doesn't have that zone
     */
    public Level levelIn(Zone zone, double fraction) {
        if (!(fraction > 0 && fraction <= 1)) {
            throw Require.failure("fraction", "above 0 and at most 1", fraction);
        }
        double lower = lowerSi(zone);
        double upper = upperSi(zone);
        double si = lower + fraction * ((upper < Double.POSITIVE_INFINITY ? upper : 2 * lower) - lower);
        // Rounding must not push the value out of its zone: onto the lower limit, or past the upper one.
        double inside = Math.min(upper, Math.max(Math.nextUp(lower), si));
        return Level.ofSi(inside, quantity(), detector()).within(band);
    }

    Zone zoneOfSi(double si) {
        for (Boundary boundary : boundaries()) {
            if (si <= limitSi(boundary)) {
                return boundary.better();
            }
        }
        return boundaries().get(boundaries().size() - 1).worse();
    }

    double limitSi(Boundary boundary) {
        return boundary.limit() * unit().toSi();
    }

    /** Zero for the best zone. */
    double lowerSi(Zone zone) {
        for (Boundary boundary : boundaries()) {
            if (boundary.worse() == zone) {
                return limitSi(boundary);
            }
        }
        if (zone != boundaries().get(0).better()) {
            throw new IllegalArgumentException("zone must be one that the criterion tells apart: " + zone);
        }
        return 0;
    }

    /** Infinite for the worst zone. */
    double upperSi(Zone zone) {
        return boundaries().stream().filter(boundary -> boundary.better() == zone)
                .mapToDouble(this::limitSi).findFirst().orElse(Double.POSITIVE_INFINITY);
    }

    String limitsText() {
        return limits().stream().map(limit -> Digits.compact(limit, 4)).collect(Collectors.joining(" / "));
    }

    /** A limit with its name in the standard, as in {@code B/C 2.8} or {@code alarm 7.1}. */
    String named(Boundary boundary) {
        String own = ratingOf(boundary.better()).limit();
        return own.isEmpty() ? boundary.toString() : own + " " + Digits.compact(boundary.limit(), 4);
    }

    String source() {
        return standard() + " " + clause() + ", " + groupLabel() + support().map(support -> ", " + support).orElse("");
    }

    /** Two criteria are equal if their row of the tables, their band and what else the tables say of it are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Criterion criterion
                && row.equals(criterion.row)
                && band.equals(criterion.band)
                && ratings.equals(criterion.ratings)
                && Objects.equals(operating, criterion.operating);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(row, band);
    }

    /**
     * Returns the limits and their source, as in {@code velocity 1.4 / 2.8 / 4.5 mm/s rms (10–1000 Hz); ISO
     * 20816-3:2022 Table A.2, group 2, rigid}.
     */
    @Override
    public String toString() {
        String flag = confidence() == Confidence.FIRM ? "" : " (" + confidence() + ")";
        return quantity() + " " + limitsText() + " " + unit() + " " + detector() + " (" + band + "); " + source()
                + flag;
    }
}
