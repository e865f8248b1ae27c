package dev.vibra.balance.influence;

import dev.vibra.balance.vector.Convention;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;

/**
 * What the rows and columns of a balancing job stand for: planes, sensors, speeds and the convention of its numbers.
 *
 * <p>Readings come speed by speed: all sensors at the first speed, then all sensors at the second, and so on.
 */
@SuppressWarnings("serial") // the collections are unmodifiable copies, which are serializable
public final class Layout implements Serializable {
    private static final long serialVersionUID = 1;

    private final List<String> planes;
    private final double[] radiiMetres; // 0: left open
    private final List<Sensor> sensors;
    private final List<RotationSpeed> speeds; // empty: one speed that nobody named
    private final Convention convention;

    private Layout(List<String> planes, double[] radiiMetres, List<Sensor> sensors, List<RotationSpeed> speeds,
            Convention convention) {
        requireDistinct("planes", planes);
        requireDistinct("sensors", sensors.stream().map(s -> Objects.requireNonNull(s, "sensor").name()).toList());
        requireDistinct("speeds", speeds);
        this.planes = Require.copy("planes", planes);
        this.planes.forEach(plane -> requireName("plane", plane));
        requireSome("planes", planes);
        this.radiiMetres = Arrays.copyOf(radiiMetres, planes.size());
        for (double radius : this.radiiMetres) {
            Require.notNegative("radius of a plane", radius, "m");
        }
        this.sensors = Require.copy("sensors", sensors);
        this.speeds = Require.copy("speeds", speeds);
        this.convention = Objects.requireNonNull(convention, "convention");
    }

    private Object readResolve() {
        return new Layout(planes, radiiMetres, sensors, speeds, convention);
    }

    /**
     * Makes a layout without sensors and speeds, radii left open, phase as lag and angles against rotation.
     *
     * @param planes names of the correction planes, at least one, all different
     * @return the layout
     * @throws IllegalArgumentException if there is no plane or a name comes twice
     */
    public static Layout ofPlanes(List<String> planes) {
        requireSome("planes", planes);
        return new Layout(planes, new double[planes.size()], List.of(), List.of(), Convention.LAG_AGAINST_ROTATION);
    }

    /**
     * Sets the sensors.
     *
     * @param newSensors sensors in the order of the readings, at least one, names all different
     * @return a changed copy
     * @throws IllegalArgumentException if there is no sensor or a name comes twice
     */
    public Layout withSensors(List<Sensor> newSensors) {
        requireSome("sensors", newSensors);
        return new Layout(planes, radiiMetres, newSensors, speeds, convention);
    }

    /**
     * Sets the speeds at which each run is read.
     *
     * @param newSpeeds speeds in the order of the readings, all different
     * @return a changed copy
     * @throws IllegalArgumentException if there is no speed or one comes twice
     */
    public Layout withSpeeds(List<RotationSpeed> newSpeeds) {
        requireSome("speeds", newSpeeds);
        return new Layout(planes, radiiMetres, sensors, newSpeeds, convention);
    }

    /**
     * Sets the convention.
     *
     * @param newConvention how phases and angles are counted
     * @return a changed copy
     */
    public Layout withConvention(Convention newConvention) {
        return new Layout(planes, radiiMetres, sensors, speeds, newConvention);
    }

    /**
     * Sets the radius at which masses go on in a plane.
     *
     * @param plane name of the plane
     * @param radiusMillimetres radius in mm, finite, above zero
     * @return a changed copy
     * @throws IllegalArgumentException if there is no such plane or the radius is out of range
     */
    public Layout withRadius(String plane, double radiusMillimetres) {
        double[] radii = radiiMetres.clone();
        double metres = Require.positive("radius of plane " + plane, radiusMillimetres, "mm") / 1000;
        radii[planeIndex(plane)] = Require.positive("radius of plane " + plane, metres, "m");
        return new Layout(planes, radii, sensors, speeds, convention);
    }

    /**
     * Returns the names of the planes.
     *
     * @return names in order
     */
    public List<String> planes() {
        return planes;
    }

    /**
     * Returns the sensors.
     *
     * @return sensors in order; empty if not set yet
     */
    public List<Sensor> sensors() {
        return sensors;
    }

    /**
     * Returns the speeds.
     *
     * @return speeds in order; empty if the job is about one speed that was not named
     */
    public List<RotationSpeed> speeds() {
        return speeds;
    }

    /**
     * Returns the convention.
     *
     * @return how phases and angles are counted
     */
    public Convention convention() {
        return convention;
    }

    /**
     * Tells whether the radius of a plane is known, so that its masses tell an unbalance.
     *
     * @param plane index of the plane
     * @return true if the radius was set
     * @throws IndexOutOfBoundsException if there is no such plane
     */
    public boolean radiusKnown(int plane) {
        return radiiMetres[Objects.checkIndex(plane, radiiMetres.length)] > 0;
    }

    /**
     * Returns what turns a mass in a plane into the number that coefficients are counted per: the radius in m, or 1
     * where it was left open and coefficients are per kg.
     *
     * @param plane index of the plane
     * @return radius in m, or 1
     * @throws IndexOutOfBoundsException if there is no such plane
     */
    public double lever(int plane) {
        return radiusKnown(plane) ? radiiMetres[plane] : 1;
    }

    /**
     * Counts the readings of one run.
     *
     * @return sensors times speeds
     */
    public int rows() {
        return sensors.size() * Math.max(1, speeds.size());
    }

    /**
     * Returns the sensor of a row.
     *
     * @param row index of the reading within a run
     * @return the sensor
     * @throws IndexOutOfBoundsException if there is no such reading
     */
    public Sensor sensorOfRow(int row) {
        return sensors.get(Objects.checkIndex(row, rows()) % sensors.size());
    }

    /**
     * Returns what one unit that the sensor of a row shows is inside the library.
     *
     * @param row index of the reading within a run
     * @return zero-to-peak SI amplitude of one unit in the detector of that sensor
     * @throws IndexOutOfBoundsException if there is no such reading
     */
    public double peakPerUnit(int row) {
        Sensor sensor = sensorOfRow(row);
        return sensor.unit().toSi() / sensor.detector().ofUnitSine();
    }

    /**
     * Names a row.
     *
     * @param row index of the reading within a run
     * @return the sensor's name, with the speed where there are several
     * @throws IndexOutOfBoundsException if there is no such reading
     */
    public String rowName(int row) {
        String name = sensorOfRow(row).name();
        return speeds.size() < 2 ? name : name + " at " + speeds.get(row / sensors.size());
    }

    /**
     * Finds a plane.
     *
     * @param plane name
     * @return its index
     * @throws IllegalArgumentException if there is no such plane; the message lists the planes
     */
    public int planeIndex(String plane) {
        return find("plane", planes, plane);
    }

    /**
     * Finds a sensor.
     *
     * @param sensor name
     * @return its index
     * @throws IllegalArgumentException if there is no such sensor; the message lists the sensors
     */
    public int sensorIndex(String sensor) {
        return find("sensor", sensors.stream().map(Sensor::name).toList(), sensor);
    }

    /**
     * Tells whether coefficients of the other layout hold for this one: same planes and radii, same sensors and
     * quantities, same speeds. Units, detectors and convention may differ, for they only show the numbers.
     *
     * @param other layout to compare with
     * @return true if rows and columns stand for the same
     */
    public boolean describesSameRotorAs(Layout other) {
        return differenceFrom(other).isEmpty();
    }

    /**
     * Says in what another layout differs, as far as that keeps its coefficients from holding here.
     *
     * @param other layout to compare with
     * @return the first difference in words, as in {@code radii [200 mm] and [201 mm]}; empty if there is none
     */
    public String differenceFrom(Layout other) {
        if (!planes.equals(Objects.requireNonNull(other, "other").planes)) {
            return "planes " + planes + " and " + other.planes;
        }
        if (!Arrays.equals(radiiMetres, other.radiiMetres)) {
            return "radii " + radiiInWords() + " and " + other.radiiInWords();
        }
        if (!measured().equals(other.measured())) {
            return "sensors " + measured() + " and " + other.measured();
        }
        return speeds.equals(other.speeds) ? "" : "speeds " + speeds + " and " + other.speeds;
    }

    private String radiiInWords() {
        return Arrays.stream(radiiMetres).mapToObj(r -> r == 0 ? "open" : Digits.compact(r * 1000, 6) + " mm")
                .toList().toString();
    }

    private List<String> measured() {
        return sensors.stream().map(s -> s.name() + " " + s.unit().quantity()).toList();
    }

    private static int find(String what, List<String> names, String wanted) {
        int index = names.indexOf(Objects.requireNonNull(wanted, what));
        if (index < 0) {
            throw new IllegalArgumentException(what + " must be one of " + String.join(", ", names) + ": " + wanted);
        }
        return index;
    }

    /** Names are what sheets and files go by. */
    static void requireName(String what, String name) {
        if (name.isBlank()) {
            throw new IllegalArgumentException("name of a " + what + " must not be blank: \"" + name + "\"");
        }
    }

    private static void requireSome(String what, List<?> values) {
        if (Objects.requireNonNull(values, what).isEmpty()) {
            throw new IllegalArgumentException(what + " must not be empty");
        }
    }

    private static void requireDistinct(String what, List<?> values) {
        HashSet<Object> seen = new HashSet<>();
        for (Object value : values) {
            if (!seen.add(Objects.requireNonNull(value, what))) {
                throw new IllegalArgumentException(what + " must all be different: " + value + " comes twice");
            }
        }
    }

    /** Returns planes, sensors and convention in one line. */
    @Override
    public String toString() {
        return planes.size() + " plane(s), " + sensors.size() + " sensor(s), " + Math.max(1, speeds.size())
                + " speed(s); " + convention;
    }
}
