package dev.vibra.quantity;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/**
 * One number of vibration with all that makes it mean something: value, quantity, detector and, where it was limited to
 * one, frequency band.
 *
 * <p>Levels are compared and converted only within one quantity; {@link #sineAs(Quantity, Detector, double)} holds for
 * a single sine and is named so.
 */
public final class Level implements Serializable {
    private static final long serialVersionUID = 1;

    private final double si;
    private final Quantity quantity;
    private final Detector detector;
    private final Band band;

    private Level(double si, Quantity quantity, Detector detector, Band band) {
        this.si = Require.notNegative("level", si, "(" + quantity + " in SI units)");
        this.quantity = quantity;
        this.detector = Objects.requireNonNull(detector, "detector");
        this.band = band;
    }

    /**
     * Makes a broad-band level.
     *
     * @param value value in the unit, finite, zero or more
     * @param unit unit of the value
     * @param detector how the value was made
     * @return the level
     * @throws IllegalArgumentException if the value is out of range
     */
    public static Level of(double value, Unit unit, Detector detector) {
        return new Level(value * unit.toSi(), unit.quantity(), detector, null);
    }

    /**
     * Makes a broad-band level of a value in SI units.
     *
     * @param value value in SI units of the quantity, finite, zero or more
     * @param quantity what the value measures
     * @param detector how the value was made
     * @return the level
     * @throws IllegalArgumentException if the value is out of range
     */
    public static Level ofSi(double value, Quantity quantity, Detector detector) {
        return new Level(value, quantity, detector, null);
    }

    /**
     * Returns the same level with the band that it was limited to.
     *
     * @param newBand frequency band
     * @return the level in that band
     */
    public Level within(Band newBand) {
        return new Level(si, quantity, detector, Objects.requireNonNull(newBand, "band"));
    }

    /**
     * Returns the value in a unit.
     *
     * @param unit unit of this level's quantity
     * @return value in that unit
     * @throws IllegalArgumentException if the unit measures another quantity
     */
    public double in(Unit unit) {
        if (unit.quantity() != quantity) {
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
     * Converts the level of a single sine to another motion and detector: {@code v = ω·s}, {@code a = ω·v}, and the
     * factors 1/√2, 1 and 2 between the detectors. For anything but one sine the result is wrong.
     *
     * @param target motion to convert to
     * @param targetDetector detector to convert to
     * @param hertz frequency of the sine in Hz, finite, above zero
     * @return the level of the same sine
     * @throws IllegalArgumentException if a quantity is not a motion or the frequency is out of range
     * @see "ISO 10816-1:1995, Annex A: relations between acceleration, velocity and displacement of a sine"
     */
    public Level sineAs(Quantity target, Detector targetDetector, double hertz) {
        double omega = 2 * Math.PI * Require.positive("hertz", hertz, "Hz");
        double motion = si * Math.pow(omega, -quantity.integrationsTo(target));
        return new Level(motion * targetDetector.ofUnitSine() / detector.ofUnitSine(), target, targetDetector, band);
    }

    /**
     * Derives the peak of a sine that has this rms value, for comparison with limits that are stated so. It is told
     * apart from a true peak by its detector.
     *
     * @return level √2 times as large
     * @throws IllegalArgumentException if this level is not rms
     */
    public Level derivedPeak() {
        if (detector != Detector.RMS) {
            throw new IllegalArgumentException("detector must be rms to derive a peak: " + detector);
        }
        return new Level(si * Math.sqrt(2), quantity, Detector.DERIVED_PEAK, band);
    }

    /** Two levels are equal if value, quantity, detector and band are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Level level
                && Double.compare(si, level.si) == 0
                && quantity == level.quantity
                && detector == level.detector
                && Objects.equals(band, level.band);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(si, quantity, detector, band);
    }

    /** Returns the level as one writes it in a notebook, as in {@code 4.31 mm/s rms (10–1000 Hz)}. */
    @Override
    public String toString() {
        Unit unit = quantity.customaryUnit();
        String text = Digits.significant(in(unit), 3) + " " + unit + " " + detector;
        return band == null ? text : text + " (" + band + ")";
    }
}
