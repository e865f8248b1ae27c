package dev.vibra.survey;

import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/** Speed of the shaft during a recording and where it is known from. */
public final class SpeedFound implements Serializable {
    private static final long serialVersionUID = 1;

    private final RotationSpeed speed;
    private final String source;

    private SpeedFound(RotationSpeed speed, String source) {
        this.speed = speed;
        this.source = Objects.requireNonNull(source, "source");
    }

    /**
     * Takes the speed from the machine description.
     *
     * @param speed speed as given
     * @return the speed with source {@code given}
     */
    public static SpeedFound given(RotationSpeed speed) {
        return new SpeedFound(Objects.requireNonNull(speed, "speed"), "given");
    }

    /**
     * States that the speed is not known.
     *
     * @return no speed, with source {@code not determined}
     */
    public static SpeedFound notDetermined() {
        return new SpeedFound(null, "not determined");
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
     * @return {@code given} or {@code not determined}
     */
    public String source() {
        return source;
    }

    /** Returns speed and source, as in {@code 1480 r/min (24.67 Hz), given}. */
    @Override
    public String toString() {
        return speed == null ? "speed not determined" : speed + ", " + source;
    }
}
