package dev.vibra.balance.vector;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import java.io.Serializable;
import java.util.Objects;

/**
 * Vibration at rotation frequency as amplitude and phase, with the unit, the detector and the sense of phase it was
 * read in.
 *
 * <p>It is a single sine, so detectors convert exactly: 1/√2, 1 and 2 times the zero-to-peak amplitude.
 */
public final class VibrationVector implements Serializable {
    private static final long serialVersionUID = 1;

    private final Phasor peak; // zero-to-peak, SI units, argument is a lead
    private final Unit unit;
    private final Detector detector;
    private final PhaseSense sense;

    private VibrationVector(Phasor peak, Unit unit, Detector detector, PhaseSense sense) {
        this.peak = Objects.requireNonNull(peak, "peak");
        this.unit = Objects.requireNonNull(unit, "unit");
        this.detector = Objects.requireNonNull(detector, "detector");
        this.sense = Objects.requireNonNull(sense, "sense");
    }

    private Object readResolve() {
        return new VibrationVector(peak, unit, detector, sense);
    }

    /**
     * Makes a vector of what an instrument shows.
     *
     * @param amplitude amplitude in the unit, finite, zero or more
     * @param phaseDegrees phase in degrees, finite, any number of turns
     * @param unit unit of the amplitude
     * @param detector how the amplitude was made
     * @param sense lag or lead
     * @return the vector
     * @throws IllegalArgumentException if a value is out of range
     */
    public static VibrationVector of(double amplitude, double phaseDegrees, Unit unit, Detector detector,
            PhaseSense sense) {
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(detector, "detector");
        Objects.requireNonNull(sense, "sense");
        Require.notNegative("amplitude", amplitude, unit.symbol());
        double lead = sense.toLead(Math.toRadians(Require.finite("phase in degrees", phaseDegrees)));
        return new VibrationVector(Phasor.polar(amplitude * unit.toSi() / detector.ofUnitSine(), lead), unit, detector,
                sense);
    }

    /**
     * Makes a vector of a phasor.
     *
     * @param peak zero-to-peak amplitude in SI units with the lead as its argument
     * @param unit unit to show
     * @param detector detector to show
     * @param sense sense of phase to show
     * @return the vector
     */
    public static VibrationVector ofPeak(Phasor peak, Unit unit, Detector detector, PhaseSense sense) {
        return new VibrationVector(peak, unit, detector, sense);
    }

    /**
     * Returns the zero-to-peak amplitude in SI units with the lead as its argument.
     *
     * @return the phasor {@code V} of {@code x(t) = Re(V·exp(iωt))}
     */
    public Phasor peak() {
        return peak;
    }

    /**
     * Returns the amplitude in the unit and detector of this vector.
     *
     * @return amplitude, zero or more
     */
    public double amplitude() {
        return peak.magnitude() * detector.ofUnitSine() / unit.toSi();
    }

    /**
     * Returns the phase in the sense of this vector.
     *
     * @return phase in degrees, from 0 up to, not including, 360
     */
    public double phaseDegrees() {
        return sense.degreesOf(peak);
    }

    /**
     * Returns the amplitude as a level.
     *
     * @return level with quantity and detector
     */
    public Level level() {
        return Level.of(amplitude(), unit, detector);
    }

    /**
     * Returns the unit of the amplitude.
     *
     * @return the unit
     */
    public Unit unit() {
        return unit;
    }

    /**
     * Returns what is measured.
     *
     * @return the quantity of the unit
     */
    public Quantity quantity() {
        return unit.quantity();
    }

    /**
     * Returns how the amplitude is made.
     *
     * @return the detector
     */
    public Detector detector() {
        return detector;
    }

    /**
     * Returns the sense of the phase.
     *
     * @return lag or lead
     */
    public PhaseSense sense() {
        return sense;
    }

    /**
     * Shows the same vibration in another unit and detector.
     *
     * @param newUnit unit of the same quantity
     * @param newDetector detector
     * @return the same vibration
     * @throws IllegalArgumentException if the unit measures another quantity
     */
    public VibrationVector in(Unit newUnit, Detector newDetector) {
        Objects.requireNonNull(newUnit, "newUnit");
        requireQuantity(newUnit.quantity());
        return new VibrationVector(peak, newUnit, newDetector, sense);
    }

    /**
     * Shows the same vibration in another sense of phase.
     *
     * @param newSense lag or lead
     * @return the same vibration
     */
    public VibrationVector in(PhaseSense newSense) {
        return new VibrationVector(peak, unit, detector, newSense);
    }

    /**
     * Adds a vibration, shown as this one is.
     *
     * @param other vector of the same quantity
     * @return the vector sum
     * @throws IllegalArgumentException if the quantities differ
     */
    public VibrationVector plus(VibrationVector other) {
        Objects.requireNonNull(other, "other");
        requireQuantity(other.quantity());
        return new VibrationVector(peak.plus(other.peak), unit, detector, sense);
    }

    /**
     * Takes away a vibration, for example the runout read at slow roll; the result is shown as this one is.
     *
     * @param other vector of the same quantity
     * @return the vector difference
     * @throws IllegalArgumentException if the quantities differ
     */
    public VibrationVector minus(VibrationVector other) {
        Objects.requireNonNull(other, "other");
        requireQuantity(other.quantity());
        return new VibrationVector(peak.minus(other.peak), unit, detector, sense);
    }

    /**
     * Integrates or differentiates: the same motion as displacement, velocity or acceleration, at a known speed.
     *
     * @param newUnit unit of the motion wanted
     * @param speed speed of rotation, the frequency of this vector
     * @return the same motion in that unit
     * @throws IllegalArgumentException if a quantity is no motion
     */
    public VibrationVector as(Unit newUnit, RotationSpeed speed) {
        Objects.requireNonNull(newUnit, "newUnit");
        Objects.requireNonNull(speed, "speed");
        int integrations = quantity().integrationsTo(newUnit.quantity());
        double omega = speed.radiansPerSecond();
        // Each derivative multiplies by iω, each integral divides by it.
        Phasor changed = peak.times(Phasor.polar(Math.pow(omega, -integrations), -integrations * Math.PI / 2));
        return new VibrationVector(changed, newUnit, detector, sense);
    }

    private void requireQuantity(Quantity other) {
        if (other != quantity()) {
            throw new IllegalArgumentException("vibration vectors must measure the same quantity: " + quantity()
                    + " and " + other);
        }
    }

    /** Two vectors are equal if phasor, unit, detector and sense are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof VibrationVector v && peak.equals(v.peak) && unit == v.unit && detector == v.detector
                && sense == v.sense;
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(peak, unit, detector, sense);
    }

    /**
     * Returns the vector as one writes it in a notebook, as in {@code 5.10 mm/s rms at 63.0° lag}; zero has no phase.
     */
    @Override
    public String toString() {
        String text = Digits.significant(amplitude(), 3) + " " + unit + " " + detector;
        return amplitude() == 0 ? text : text + " at " + Angles.text(phaseDegrees()) + " " + sense;
    }
}
