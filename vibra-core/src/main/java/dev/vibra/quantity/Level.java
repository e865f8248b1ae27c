package dev.vibra.quantity;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/**
 * One number of vibration with all that makes it mean something: value, quantity, detector, the frequency band where it
 * was limited to one, and the method that it was measured by.
 *
 * <p>A level made of a number is {@linkplain LevelMethod#STATED stated by the caller}; those that this library measures
 * say how. Levels are compared and converted only within one quantity; {@link #sineAs(Quantity, Detector, double)}
 * holds for a single sine and is named so.
 */
public final class Level implements Serializable {
    private static final long serialVersionUID = 1;
    /** Beyond anything measured; keeps the value finite in every unit. */
    private static final double LARGEST = 1e300;

    private final double si;
    private final Quantity quantity;
    private final Detector detector;
    private final Band band;
    private final LevelMethod method;

    private Level(double si, Quantity quantity, Detector detector, Band band, LevelMethod method) {
        this.si = Require.notNegative("level", si, "(" + quantity + " in SI units)");
        Require.within("level", si, 0, LARGEST, "");
        this.quantity = Objects.requireNonNull(quantity, "quantity");
        this.detector = Objects.requireNonNull(detector, "detector");
        this.band = band;
        this.method = Objects.requireNonNull(method, "method");
    }

    private Object readResolve() {
        return new Level(si, quantity, detector, band, method);
    }

    /**
     * Makes a broad-band level, stated by the caller.
     *
     * @param value value in the unit, finite, zero or more
     * @param unit unit of the value
     * @param detector how the value was made
     * @return the level
     * @throws IllegalArgumentException if the value is out of range
     */
    public static Level of(double value, Unit unit, Detector detector) {
        Objects.requireNonNull(unit, "unit");
        return new Level(value * unit.toSi(), unit.quantity(), detector, null, LevelMethod.STATED);
    }

    /**
     * Makes a broad-band level of a value in SI units, stated by the caller.
     *
     * @param value value in SI units of the quantity, finite, zero or more
     * @param quantity what the value measures
     * @param detector how the value was made
     * @return the level
     * @throws IllegalArgumentException if the value is out of range
     */
    public static Level ofSi(double value, Quantity quantity, Detector detector) {
        return new Level(value, quantity, detector, null, LevelMethod.STATED);
    }

    /**
     * Returns the same level with the band that it was limited to. A measured level knows its band.
     *
     * @param newBand frequency band
     * @return the level in that band
     * @throws IllegalArgumentException if the level was measured, and in another band
     */
    public Level within(Band newBand) {
        if (method != LevelMethod.STATED && !Objects.requireNonNull(newBand, "newBand").equals(band)) {
            throw new IllegalArgumentException("level must be stated by the caller to be given the band " + newBand
                    + ": " + this + ", " + method);
        }
        return new Level(si, quantity, detector, Objects.requireNonNull(newBand, "band"), method);
    }

    /**
     * Returns the same level with the method that it was measured by, for whoever measures.
     *
     * @param newMethod how the value came about
     * @return the level by that method
     */
    public Level by(LevelMethod newMethod) {
        return new Level(si, quantity, detector, band, Objects.requireNonNull(newMethod, "newMethod"));
    }

    /**
     * Returns the value in a unit.
     *
     * @param unit unit of this level's quantity
     * @return value in that unit
     * @throws IllegalArgumentException if the unit measures another quantity
     */
    public double in(Unit unit) {
        if (Objects.requireNonNull(unit, "unit").quantity() != quantity) {
            throw new IllegalArgumentException("unit must measure " + quantity + ": " + unit + " measures "
                    + unit.quantity());
        }
        return si / unit.toSi();
    }

    /**
     * Returns the value in SI units: m/s², m/s, m or V.
     *
     * @return value in SI units, finite, zero or more
     */
    public double si() {
        return si;
    }

    /**
     * Returns what the value measures.
     *
     * @return the quantity
     */
    public Quantity quantity() {
        return quantity;
    }

    /**
     * Returns how the value was made.
     *
     * @return the detector
     */
    public Detector detector() {
        return detector;
    }

    /**
     * Returns the band that the value was limited to.
     *
     * @return the band; empty for a broad-band value
     */
    public Optional<Band> band() {
        return Optional.ofNullable(band);
    }

    /**
     * Returns how the value was measured.
     *
     * @return the method
     */
    public LevelMethod method() {
        return method;
    }

    /**
     * Tells whether two levels are numbers of one kind: of one quantity, detector and band.
     *
     * @param other another level
     * @return true if their values may be compared
     */
    public boolean isLike(Level other) {
        Objects.requireNonNull(other, "other");
        return quantity == other.quantity && detector == other.detector && Objects.equals(band, other.band);
    }

    /**
     * Converts the level of a single sine to another motion and detector: {@code v = ω·s}, {@code a = ω·v}, and the
     * factors 1/√2, 1 and 2 between the detectors. For anything but one sine the result is wrong, so it is marked
     * {@link LevelMethod#SINE_CONVERSION}, except between rms and the peak derived from it, which holds for all
     * signals.
     *
     * @param target motion to convert to
     * @param targetDetector detector to convert to
     * @param hertz frequency of the sine in Hz, finite, above zero
     * @return the level of the same sine
     * @throws IllegalArgumentException if a quantity is not a motion or the frequency is out of range
     * @see "ISO 10816-1:1995, Annex A: relations between acceleration, velocity and displacement of a sine"
     */
    public Level sineAs(Quantity target, Detector targetDetector, double hertz) {
        Objects.requireNonNull(targetDetector, "targetDetector");
        double omega = 2 * Math.PI * Require.positive("hertz", hertz, "Hz");
        double motion = si * Math.pow(omega, -quantity.integrationsTo(Objects.requireNonNull(target, "target")));
        boolean exact = target == quantity && ofMeanSquare(detector) && ofMeanSquare(targetDetector);
        return new Level(motion * targetDetector.ofUnitSine() / detector.ofUnitSine(), target, targetDetector, band,
                exact ? method : LevelMethod.SINE_CONVERSION);
    }

    private static boolean ofMeanSquare(Detector detector) {
        return detector == Detector.RMS || detector == Detector.DERIVED_PEAK;
    }

    /**
     * Derives the peak of a sine that has this rms value, for comparison with limits that are stated so. It is told
     * apart from a true peak by its detector and keeps the method of the rms value.
     *
     * @return level √2 times as large
     * @throws IllegalArgumentException if this level is not rms
     */
    public Level derivedPeak() {
        if (detector != Detector.RMS) {
            throw new IllegalArgumentException("detector must be rms to derive a peak: " + detector);
        }
        return new Level(si * Math.sqrt(2), quantity, Detector.DERIVED_PEAK, band, method);
    }

    /** Two levels are equal if value, quantity, detector, band and method are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Level level && Double.compare(si, level.si) == 0 && isLike(level)
                && method == level.method;
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(si, quantity, detector, band, method);
    }

    /**
     * Returns the level as one writes it in a notebook, as in {@code 4.31 mm/s rms (10–1000 Hz)}; a method that
     * severity limits don't mean stands behind the band, as in {@code 4.52 mm/s rms (10–1000 Hz, zero-phase)}.
     */
    @Override
    public String toString() {
        Unit unit = quantity.customaryUnit();
        String text = Digits.significant(in(unit), 3) + " " + unit + " " + detector;
        String limits = band == null ? "" : band.toString();
        String how = limits + (limits.isEmpty() || method.mark().isEmpty() ? "" : ", ") + method.mark();
        return how.isEmpty() ? text : text + " (" + how + ")";
    }
}
