package dev.vibra.survey.machine;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Unit;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/** One measuring point: where and in which direction, which recording belongs to it, what its numbers mean. */
public final class MeasuringPoint implements Serializable {
    private static final long serialVersionUID = 1;

    private final String id;
    private final String recording;
    private final Unit unit;
    private final double scale;
    private final Double sampleRateHertz;
    private final Direction direction;
    private final String bearing;
    private final Tachometer tachometer;
    private final Mounting mounting;
    private final Double expandedUncertaintyPercent;

    private MeasuringPoint(Builder from) {
        this.id = from.id;
        this.recording = from.recording;
        this.unit = from.unit;
        this.scale = from.scale;
        this.sampleRateHertz = from.sampleRateHertz;
        this.direction = from.direction;
        this.bearing = from.bearing;
        this.tachometer = from.tachometer;
        this.mounting = from.mounting;
        this.expandedUncertaintyPercent = from.expandedUncertaintyPercent;
    }

    /**
     * Begins a point with what every point needs.
     *
     * @param id name of the point, for example {@code DE-H}
     * @param recording name of the recording, for example {@code de-h.wav}
     * @param unit unit of the recording's values once they are scaled
     * @return builder with scale 1 and nothing else known
     */
    public static Builder of(String id, String recording, Unit unit) {
        return new Builder(id, recording, unit);
    }

    /**
     * Returns the name of the point.
     *
     * @return name, for example {@code DE-H}
     */
    public String id() {
        return id;
    }

    /**
     * Returns the name of the recording.
     *
     * @return name, for example {@code de-h.wav}
     */
    public String recording() {
        return recording;
    }

    /**
     * Returns the unit of the scaled values.
     *
     * @return the unit
     */
    public Unit unit() {
        return unit;
    }

    /**
     * Returns the factor that turns a value of the recording into the unit.
     *
     * @return factor, finite and not zero
     */
    public double scale() {
        return scale;
    }

    /**
     * Returns the sample rate of a recording that does not carry its own.
     *
     * @return sample rate in Hz
     */
    public Optional<Double> sampleRateHertz() {
        return Optional.ofNullable(sampleRateHertz);
    }

    /**
     * Returns the measuring direction.
     *
     * @return the direction
     */
    public Optional<Direction> direction() {
        return Optional.ofNullable(direction);
    }

    /**
     * Returns the bearing at which the point lies.
     *
     * @return id of the bearing
     */
    public Optional<String> bearing() {
        return Optional.ofNullable(bearing);
    }

    /**
     * Returns the tachometer recorded along with the point.
     *
     * @return the tachometer
     */
    public Optional<Tachometer> tachometer() {
        return Optional.ofNullable(tachometer);
    }

    /**
     * Returns how the sensor is held.
     *
     * @return the mounting
     */
    public Optional<Mounting> mounting() {
        return Optional.ofNullable(mounting);
    }

    /**
     * Returns the expanded uncertainty (coverage factor 2) of the measuring chain.
     *
     * @return uncertainty in percent of the value
     */
    public Optional<Double> expandedUncertaintyPercent() {
        return Optional.ofNullable(expandedUncertaintyPercent);
    }

    /** Returns the point, as in {@code DE-H, horizontal, de-h.wav in g}. */
    @Override
    public String toString() {
        return id + (direction == null ? "" : ", " + direction) + ", " + recording + " in " + unit;
    }

    /** Collects what is known of a point; each method checks at once and returns the same builder. */
    public static final class Builder {
        private final String id;
        private final String recording;
        private final Unit unit;
        private double scale = 1;
        private Double sampleRateHertz;
        private Direction direction;
        private String bearing;
        private Tachometer tachometer;
        private Mounting mounting;
        private Double expandedUncertaintyPercent;

        private Builder(String id, String recording, Unit unit) {
            this.id = Objects.requireNonNull(id, "id");
            this.recording = Objects.requireNonNull(recording, "recording");
            this.unit = Objects.requireNonNull(unit, "unit");
        }

        /**
         * Sets the factor that turns a value of the recording into the unit.
         *
         * @param factor finite and not zero
         * @return this builder
         * @throws IllegalArgumentException if the factor is zero or not finite
         */
        public Builder scale(double factor) {
            if (!(Math.abs(factor) > 0 && Math.abs(factor) < Double.POSITIVE_INFINITY)) {
                throw Require.failure("scale", "finite and not 0", factor);
            }
            scale = factor;
            return this;
        }

        /**
         * Sets the sample rate of a recording that does not carry its own.
         *
         * @param hertz sample rate in Hz, finite, above zero
         * @return this builder
         * @throws IllegalArgumentException if the rate is out of range
         */
        public Builder sampleRateHertz(double hertz) {
            sampleRateHertz = Require.positive("sampleRateHertz", hertz, "Hz");
            return this;
        }

        /**
         * Sets the measuring direction.
         *
         * @param known the direction
         * @return this builder
         */
        public Builder direction(Direction known) {
            direction = Objects.requireNonNull(known, "direction");
            return this;
        }

        /**
         * Sets the bearing at which the point lies.
         *
         * @param bearingId id of the bearing
         * @return this builder
         */
        public Builder bearing(String bearingId) {
            bearing = Objects.requireNonNull(bearingId, "bearing");
            return this;
        }

        /**
         * Sets the tachometer recorded along with the point.
         *
         * @param known the tachometer
         * @return this builder
         */
        public Builder tachometer(Tachometer known) {
            tachometer = Objects.requireNonNull(known, "tachometer");
            return this;
        }

        /**
         * Sets how the sensor is held.
         *
         * @param known the mounting
         * @return this builder
         */
        public Builder mounting(Mounting known) {
            mounting = Objects.requireNonNull(known, "mounting");
            return this;
        }

        /**
         * Sets the expanded uncertainty (coverage factor 2) of the measuring chain.
         *
         * @param percent uncertainty in percent of the value, from 0 to 100
         * @return this builder
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder expandedUncertaintyPercent(double percent) {
            expandedUncertaintyPercent = Require.within("expandedUncertaintyPercent", percent, 0, 100, "%");
            return this;
        }

        /**
         * Makes the point.
         *
         * @return the point as described so far
         */
        public MeasuringPoint build() {
            return new MeasuringPoint(this);
        }
    }
}
