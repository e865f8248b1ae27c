package dev.vibra.machine;

import dev.vibra.internal.Require;
import dev.vibra.measuring.Direction;
import dev.vibra.measuring.Mounting;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Consumer;

/**
 * A place on a machine where vibration is measured in one direction:
 * {@code MeasuringPoint.of("DE-H").withDirection(Direction.HORIZONTAL).withBearing("drive end")}. Immutable.
 *
 * @see "ISO 13373-1:2002, measuring points and their names"
 */
public final class MeasuringPoint implements Serializable {
    private static final long serialVersionUID = 3;

    private final Known known;

    private MeasuringPoint(Known known) {
        this.known = Objects.requireNonNull(known, "known");
    }

    private Object readResolve() {
        return new MeasuringPoint(known);
    }

    /** Written once, by the chain, before the point is handed out. */
    private static final class Known extends Facts {
        private static final long serialVersionUID = 1;
        private String id;
        private Direction direction;
        private String part;
        private String bearing;
        private String shaft;
        private Integer pulsesPerRevolution;
        private Mounting mounting;
        private Double expandedUncertainty;
        private String positiveAxis;
        private String housing;
        private String recordingSet;

        @Override
        void check() {
            id = Require.notBlank("id", id);
            part = textOrNull("part", part);
            bearing = textOrNull("bearing", bearing);
            shaft = textOrNull("shaft", shaft);
            positiveAxis = textOrNull("positive axis", positiveAxis);
            housing = textOrNull("housing", housing);
            recordingSet = textOrNull("recordingSet", recordingSet);
            countOrNull("pulsesPerRevolution", pulsesPerRevolution);
            if (expandedUncertainty != null) {
                Require.within("expandedUncertaintyPercent", 100 * expandedUncertainty, 0, 100, "%");
            }
        }
    }

    private MeasuringPoint with(Consumer<Known> change) {
        return new MeasuringPoint(Facts.changed(known, change));
    }

    /**
     * Names a point of which nothing else is known.
     *
     * @param id id of the point on its machine, not blank
     * @return the point
     */
    public static MeasuringPoint of(String id) {
        return new MeasuringPoint(Facts.changed(new Known(), made -> made.id = id));
    }

    /**
     * States the direction.
     *
     * @param direction direction of the sensor's axis
     * @return the point with it
     */
    public MeasuringPoint withDirection(Direction direction) {
        Objects.requireNonNull(direction, "direction");
        return with(changed -> changed.direction = direction);
    }

    /**
     * States on which part of the machine the point lies; its criterion is that of the part.
     *
     * @param part id of a part of the description
     * @return the point with it
     */
    public MeasuringPoint withPart(String part) {
        Objects.requireNonNull(part, "part");
        return with(changed -> changed.part = part);
    }

    /**
     * States at which rolling bearing the point lies.
     *
     * @param bearing id of a bearing of the description
     * @return the point with it
     */
    public MeasuringPoint withBearing(String bearing) {
        Objects.requireNonNull(bearing, "bearing");
        return with(changed -> changed.bearing = bearing);
    }

    /**
     * States at which shaft the point lies, if it isn't that of its part.
     *
     * @param shaft id of a shaft of the description
     * @return the point with it
     */
    public MeasuringPoint withShaft(String shaft) {
        Objects.requireNonNull(shaft, "shaft");
        return with(changed -> changed.shaft = shaft);
    }

    /**
     * States that a tachometer is recorded along with the point.
     *
     * @param pulses pulses per revolution of the point's shaft, at least 1
     * @return the point with it
     */
    public MeasuringPoint withTachometer(int pulses) {
        return with(changed -> changed.pulsesPerRevolution = pulses);
    }

    /**
     * States how the sensor is fixed.
     *
     * @param mounting mounting of the sensor
     * @return the point with it
     */
    public MeasuringPoint withMounting(Mounting mounting) {
        Objects.requireNonNull(mounting, "mounting");
        return with(changed -> changed.mounting = mounting);
    }

    /**
     * States the expanded uncertainty (95 %) of sensor and amplifier.
     *
     * @param percent percent of the value, 0 to 100
     * @return the point with it
     */
    public MeasuringPoint withExpandedUncertaintyPercent(double percent) {
        Require.within("expandedUncertaintyPercent", percent, 0, 100, "%");
        return with(changed -> changed.expandedUncertainty = percent / 100);
    }

    /**
     * States which way the sensor's positive axis shows.
     *
     * @param axis {@code towards the coupling}, {@code away from the coupling}, or degrees counted as balancing angles
     * are
     * @return the point with it
     */
    public MeasuringPoint withPositiveAxis(String axis) {
        Objects.requireNonNull(axis, "axis");
        return with(changed -> changed.positiveAxis = axis);
    }

    /**
     * States at which bearing housing the point lies, so that directions of one housing can be compared.
     *
     * @param housing name of the housing, the same at all its points
     * @return the point with it
     */
    public MeasuringPoint withHousing(String housing) {
        Objects.requireNonNull(housing, "housing");
        return with(changed -> changed.housing = housing);
    }

    /**
     * States that the point is recorded at the same time as others.
     *
     * @param set name of the recordings taken together, sample by sample, the same at all of them
     * @return the point with it
     */
    public MeasuringPoint recordedWith(String set) {
        Objects.requireNonNull(set, "recordingSet");
        return with(changed -> changed.recordingSet = set);
    }

    /** {@return id, once on a machine} */
    public String id() {
        return known.id;
    }

    /** {@return the direction, if known} */
    public Optional<Direction> direction() {
        return Optional.ofNullable(known.direction);
    }

    /** {@return false along the shaft, and where the direction isn't known} */
    public boolean isRadial() {
        return known.direction != null && known.direction.isRadial();
    }

    /** {@return true for the axial direction} */
    public boolean isAxial() {
        return known.direction == Direction.AXIAL;
    }

    /** {@return id of the part, if stated} */
    public Optional<String> part() {
        return Optional.ofNullable(known.part);
    }

    /** {@return id of the bearing, if stated} */
    public Optional<String> bearing() {
        return Optional.ofNullable(known.bearing);
    }

    /** {@return id of the shaft, if stated} */
    public Optional<String> shaft() {
        return Optional.ofNullable(known.shaft);
    }

    /** {@return pulses per revolution; empty without tachometer} */
    public OptionalInt pulsesPerRevolution() {
        return known.pulsesPerRevolution == null ? OptionalInt.empty() : OptionalInt.of(known.pulsesPerRevolution);
    }

    /** {@return the mounting, if stated} */
    public Optional<Mounting> mounting() {
        return Optional.ofNullable(known.mounting);
    }

    /** {@return share of the value, 0 to 1, if stated} */
    public OptionalDouble expandedUncertainty() {
        return known.expandedUncertainty == null ? OptionalDouble.empty()
                : OptionalDouble.of(known.expandedUncertainty);
    }

    /**
     * {@return name of the housing at which the point lies: as stated, or its bearing, or its id without its last part
     * where that part is the letter of its direction, as in {@code M-DE} of {@code M-DE-H}; empty otherwise}
     */
    public Optional<String> housing() {
        if (known.housing != null || known.bearing != null) {
            return Optional.of(known.housing != null ? known.housing : known.bearing);
        }
        int dash = known.id.lastIndexOf('-');
        boolean named = known.direction != null && dash > 0
                && known.id.substring(dash + 1).equalsIgnoreCase(known.direction.letter());
        return named ? Optional.of(known.id.substring(0, dash)) : Optional.empty();
    }

    /** {@return name of the recordings taken together with this one, if stated} */
    public Optional<String> recordingSet() {
        return Optional.ofNullable(known.recordingSet);
    }

    /** {@return words or degrees, if stated} */
    public Optional<String> positiveAxis() {
        return Optional.ofNullable(known.positiveAxis);
    }

    /** Returns id and direction, as in {@code DE-H, horizontal}. */
    @Override
    public String toString() {
        return known.id + (known.direction == null ? "" : ", " + known.direction);
    }
}
