package dev.vibra.point;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** Speed of the shaft at a point during its recording, and where it is known from. Immutable. */
public final class SpeedFound implements Serializable {
    private static final long serialVersionUID = 3;

    private final RotationSpeed speed;
    private final Source source;
    private final Double confidence;
    private final String remark;

    private SpeedFound(RotationSpeed speed, Source source, Double confidence, String remark) {
        this.speed = speed;
        this.source = Objects.requireNonNull(source, "source");
        if ((speed == null) != (source == Source.NOT_DETERMINED)) {
            throw new IllegalArgumentException("speed must be there if it was determined: " + speed + ", " + source);
        }
        this.confidence = confidence == null ? null
                : Double.valueOf(Require.within("confidence", confidence, 0, 1, ""));
        this.remark = Objects.requireNonNull(remark, "remark");
    }

    private Object readResolve() {
        return new SpeedFound(speed, source, confidence, remark);
    }

    /** Where a speed is known from. */
    public enum Source {
        /** Pulses of a tachometer. */
        TACHOMETER("tachometer"),
        /** Lines of the vibration. */
        RECORDING("recording"),
        /** The description of the machine. */
        GIVEN("given"),
        /** Nowhere. */
        NOT_DETERMINED("not determined");

        private final String label;

        Source(String label) {
            this.label = label;
        }

        /** Returns the source in words. */
        @Override
        public String toString() {
            return label;
        }
    }

    /**
     * Takes the speed from the machine description.
     *
     * @param speed speed of the point's shaft as given
     * @param remark why the recording didn't tell, without full stop; empty if there is nothing to say
     * @return the speed
     */
    public static SpeedFound given(RotationSpeed speed, String remark) {
        return new SpeedFound(Objects.requireNonNull(speed, "speed"), Source.GIVEN, null, remark);
    }

    /**
     * Takes the speed from the pulses of a tachometer.
     *
     * @param speed mean speed
     * @param remark what was repaired, without full stop; empty if there is nothing to say
     * @return the speed
     */
    public static SpeedFound byTachometer(RotationSpeed speed, String remark) {
        return new SpeedFound(Objects.requireNonNull(speed, "speed"), Source.TACHOMETER, null, remark);
    }

    /**
     * Takes the speed from the lines of the vibration.
     *
     * @param speed speed found
     * @param confidence how sure it is, 0 to 1
     * @param remark what it rests on, without full stop
     * @return the speed
     */
    public static SpeedFound inRecording(RotationSpeed speed, double confidence, String remark) {
        return new SpeedFound(Objects.requireNonNull(speed, "speed"), Source.RECORDING, confidence, remark);
    }

    /**
     * States that the speed is not known.
     *
     * @param reason why, without full stop
     * @return no speed
     */
    public static SpeedFound notDetermined(String reason) {
        return new SpeedFound(null, Source.NOT_DETERMINED, null, reason);
    }

    /** {@return the speed, if known} */
    public Optional<RotationSpeed> speed() {
        return Optional.ofNullable(speed);
    }

    /** {@return where the speed is known from} */
    public Source source() {
        return source;
    }

    /** {@return how sure the speed is, 0 to 1; empty unless the recording told it} */
    public OptionalDouble confidence() {
        return confidence == null ? OptionalDouble.empty() : OptionalDouble.of(confidence);
    }

    /**
     * {@return what is worth knowing about the way to the speed, or why there is none, without full stop; may be
     * empty}
     */
    public String remark() {
        return remark;
    }

    /** Returns speed and source, as in {@code 1480 r/min (24.67 Hz), recording, confidence 0.83}. */
    @Override
    public String toString() {
        return speed == null ? "speed not determined" : speed + ", " + source
                + (confidence == null ? "" : ", confidence " + Digits.significant(confidence, 2));
    }
}
