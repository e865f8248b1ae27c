package dev.vibra.quantity;

/**
 * How one number is made of a vibration that swings. A level without its detector is ambiguous by a factor of up to
 * 2.83.
 */
public enum Detector {
    /** Root mean square. */
    RMS("rms", 1 / Math.sqrt(2)),
    /** Largest distance from the mean. */
    ZERO_TO_PEAK("0-peak", 1),
    /** Distance from the lowest to the highest value. */
    PEAK_TO_PEAK("peak-peak", 2),
    /** √2 times the root mean square: the peak of a sine of that rms, not a peak that was seen. */
    DERIVED_PEAK("0-peak derived from rms", 1);

    private final String label;
    private final double ofUnitSine;

    Detector(String label, double ofUnitSine) {
        this.label = label;
        this.ofUnitSine = ofUnitSine;
    }

    /**
     * Returns what this detector reads on a sine of amplitude 1: 0.7071, 1 or 2.
     *
     * @return reading on a sine whose zero-to-peak value is 1
     */
    public double ofUnitSine() {
        return ofUnitSine;
    }

    /** Returns the label as printed behind a unit, for example {@code rms}. */
    @Override
    public String toString() {
        return label;
    }
}
