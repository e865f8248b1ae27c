package dev.vibra.balance.rotor;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * Rigid rotor on two or more spring-damper bearings: two deflections and two slopes, coupled by gyroscopic moments.
 *
 * <p>Places along the axis are measured from the centre of mass. The tachometer stands in the horizontal direction: the
 * mark passes it at {@code t = 0}.
 *
 * @see "G. Genta, Dynamics of Rotating Systems, four-degrees-of-freedom rigid rotor"
 */
@SuppressWarnings("serial") // the collections are unmodifiable copies, which are serializable
public final class RigidRotor implements Rotor, Serializable {
    private static final long serialVersionUID = 1;

    private final double massKilograms;
    private final double diametralInertia;
    private final double polarInertia;
    private final List<Bearing> bearings;
    private final double[] planesMetres;
    private final List<Probe> probes;

    private RigidRotor(double mass, double diametral, double polar, List<Bearing> bearings, double[] planes,
            List<Probe> probes) {
        this.massKilograms = Require.positive("mass", mass, "kg");
        this.diametralInertia = Require.positive("diametral moment of inertia", diametral, "kg·m²");
        this.polarInertia = Require.notNegative("polar moment of inertia", polar, "kg·m²");
        if (!(polar <= 2 * diametral)) {
            throw Require.failure("polar moment of inertia", "at most twice the diametral one, " + diametral + " kg·m²",
                    polar);
        }
        this.bearings = Require.copy("bearings", bearings);
        this.planesMetres = planes.clone();
        Require.allFinite("planesMetres", planesMetres);
        this.probes = Require.copy("probes", probes);
    }

    private Object readResolve() {
        return new RigidRotor(massKilograms, diametralInertia, polarInertia, bearings, planesMetres, probes);
    }

    /**
     * Makes a rotor; bearings, planes and sensors follow.
     *
     * @param massKilograms mass in kg, finite, above zero
     * @param diametralInertia moment of inertia about an axis across, through the centre of mass, in kg·m², above zero
     * @param polarInertia moment of inertia about the axis of rotation in kg·m², zero up to twice the diametral one
     * @return the rotor
     * @throws IllegalArgumentException if a value is out of range
     */
    public static RigidRotor of(double massKilograms, double diametralInertia, double polarInertia) {
        return new RigidRotor(massKilograms, diametralInertia, polarInertia, List.of(), new double[0], List.of());
    }

    /**
     * Adds a bearing.
     *
     * @param bearing bearing, its place measured from the centre of mass
     * @return a changed copy
     */
    public RigidRotor with(Bearing bearing) {
        Objects.requireNonNull(bearing, "bearing");
        List<Bearing> more = new ArrayList<>(bearings);
        more.add(bearing);
        return new RigidRotor(massKilograms, diametralInertia, polarInertia, more, planesMetres, probes);
    }

    /**
     * Adds a plane in which unbalance can act.
     *
     * @param positionMetres place from the centre of mass in m, finite
     * @return a changed copy
     * @throws IllegalArgumentException if the place is not finite
     */
    public RigidRotor withPlane(double positionMetres) {
        double[] more = Arrays.copyOf(planesMetres, planesMetres.length + 1);
        more[planesMetres.length] = Require.finite("position of plane", positionMetres);
        return new RigidRotor(massKilograms, diametralInertia, polarInertia, bearings, more, probes);
    }

    /**
     * Adds a sensor.
     *
     * @param probe sensor, its place measured from the centre of mass
     * @return a changed copy
     */
    public RigidRotor with(Probe probe) {
        Objects.requireNonNull(probe, "probe");
        List<Probe> more = new ArrayList<>(probes);
        more.add(probe);
        return new RigidRotor(massKilograms, diametralInertia, polarInertia, bearings, planesMetres, more);
    }

    /** Returns the count of planes added. */
    @Override
    public int planes() {
        return planesMetres.length;
    }

    /** Returns the count of sensors added. */
    @Override
    public int sensors() {
        return probes.size();
    }

    /** Solves the four equations of motion at this speed; there have to be at least two bearings. */
    @Override
    public Phasor displacementPerUnbalance(int sensor, int plane, RotationSpeed speed) {
        Objects.requireNonNull(speed, "speed");
        requireIndices(sensor, plane);
        if (bearings.size() < 2) {
            throw new IllegalStateException("a rigid rotor must have at least two bearings: " + bearings.size());
        }
        DynamicStiffness system = new DynamicStiffness(1, speed.radiansPerSecond());
        system.addDisc(0, massKilograms, diametralInertia, polarInertia);
        bearings.forEach(b -> system.addBearing(0, b.positionMetres(), b));
        Phasor[] q = system.responseToUnitUnbalance(0, planesMetres[plane]);
        Probe probe = probes.get(sensor);
        double z = probe.positionMetres();
        return probe.reads(q[DynamicStiffness.x(0)].plus(q[DynamicStiffness.slopeX(0)].times(z)),
                q[DynamicStiffness.y(0)].plus(q[DynamicStiffness.slopeY(0)].times(z)));
    }

    /** Returns mass and counts in one line. */
    @Override
    public String toString() {
        return "rigid rotor of " + Digits.compact(massKilograms, 4) + " kg, " + bearings.size() + " bearing(s), "
                + planesMetres.length + " plane(s), " + probes.size() + " sensor(s)";
    }
}
