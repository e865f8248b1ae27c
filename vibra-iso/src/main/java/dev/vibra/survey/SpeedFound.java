package dev.vibra.survey;

import dev.vibra.internal.Digits;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** Speed of the shaft during a recording and where it is known from. */
public final class SpeedFound implements Serializable {
    private static final long serialVersionUID = 2;

    private final RotationSpeed speed;
    private final String source;
    private final double confidence;
    private final String remark;

    private SpeedFound(RotationSpeed speed, String source, double confidence, String remark) {
        this.speed = speed;
        this.source = Objects.requireNonNull(source, "source");
        this.confidence = confidence;
        this.remark = Objects.requireNonNull(remark, "remark");
    }

    /**
     * Takes the speed from the machine description.
     *
     * @param speed speed as given
     * @return the speed with source {@code given}
     */
    public static SpeedFound given(RotationSpeed speed) {
        return new SpeedFound(Objects.requireNonNull(speed, "speed"), "given", Double.NaN, "");
    }

    /** Takes the speed from the pulses of a tachometer. */
    static SpeedFound byTachometer(RotationSpeed speed) {
        return new SpeedFound(Objects.requireNonNull(speed, "speed"), "tachometer", Double.NaN, "");
    }

    /** Takes the speed from the lines of the vibration. */
    static SpeedFound inRecording(RotationSpeed speed, double confidence) {
        return new SpeedFound(Objects.requireNonNull(speed, "speed"), "recording", confidence, "");
    }

    /**
     * States that the speed is not known.
     *
     * @return no speed, with source {@code not determined}
     */
    public static SpeedFound notDetermined() {
        return new SpeedFound(null, "not determined", Double.NaN, "");
    }

    /** Adds what is worth knowing about the way to the speed. */
    SpeedFound withRemark(String text) {
        return new SpeedFound(speed, source, confidence, text);
    }

    /**
     * Returns the speed.
     *
     * @return the speed, if known
     */
    public Optional<RotationSpeed> speed() {
        return Optional.ofNullable(speed);
    }

    /**
     * Returns where the speed is known from.
     *
     * @return {@code tachometer}, {@code recording}, {@code given} or {@code not determined}
     */
    public String source() {
        return source;
    }

    /**
     * Returns how far the speed leads over others that the recording might show.
     *
     * @return confidence, 0 to 1; empty unless the source is {@code recording}
     * @see dev.vibra.rotation.SpeedEstimate
     */
    public OptionalDouble confidence() {
        return Double.isNaN(confidence) ? OptionalDouble.empty() : OptionalDouble.of(confidence);
    }

    /**
     * Returns what is worth knowing about the way to the speed, such as repaired pulses.
     *
     * @return one sentence without full stop; empty if there is nothing to say
     */
    public String remark() {
        return remark;
    }

    /** Returns speed and source, as in {@code 1480 r/min (24.67 Hz), recording, confidence 0.83}. */
    @Override
    public String toString() {
        return speed == null ? "speed not determined" : speed + ", " + source
                + (Double.isNaN(confidence) ? "" : ", confidence " + Digits.significant(confidence, 2));
    }
}
