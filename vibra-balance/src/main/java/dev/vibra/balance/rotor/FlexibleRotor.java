package dev.vibra.balance.rotor;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;

/**
 * Massless flexible shaft of constant bending stiffness with lumped discs, on spring-damper bearings.
 *
 * <p>Euler-Bernoulli beams between the places of discs, bearings and sensors; gyroscopic moments of the discs; no
 * damping inside the shaft. The tachometer stands in the horizontal direction. Planes are the discs, in the order of
 * adding.
 *
 * @see "G. Genta, Dynamics of Rotating Systems, multi-degrees-of-freedom rotors"
 */
@SuppressWarnings("serial") // the collections are unmodifiable copies, which are serializable
public final class FlexibleRotor implements Rotor, Serializable {
    private static final long serialVersionUID = 1;

    private final double bendingStiffness;
    private final List<Disc> discs;
    private final List<Bearing> bearings;
    private final List<Probe> probes;

    private FlexibleRotor(double bendingStiffness, List<Disc> discs, List<Bearing> bearings, List<Probe> probes) {
        this.bendingStiffness = Require.positive("bending stiffness", bendingStiffness, "N·m²");
        this.discs = Require.copy("discs", discs);
        this.bearings = Require.copy("bearings", bearings);
        this.probes = Require.copy("probes", probes);
    }

    private Object readResolve() {
        return new FlexibleRotor(bendingStiffness, discs, bearings, probes);
    }

    /**
     * Makes a round solid shaft.
     *
     * @param diameterMetres diameter in m, finite, above zero
     * @param elasticModulusPascals modulus of elasticity in Pa, finite, above zero; about 2.1e11 for steel
     * @return the rotor, still without discs, bearings and sensors
     * @throws IllegalArgumentException if a value is out of range
     */
    public static FlexibleRotor ofShaft(double diameterMetres, double elasticModulusPascals) {
        Require.positive("diameter", diameterMetres, "m");
        Require.positive("modulus of elasticity", elasticModulusPascals, "Pa");
        return ofBendingStiffness(elasticModulusPascals * Math.PI * Math.pow(diameterMetres, 4) / 64);
    }

    /**
     * Makes a shaft of known bending stiffness.
     *
     * @param newtonSquareMetres modulus of elasticity times second moment of area in N·m², finite, above zero
     * @return the rotor, still without discs, bearings and sensors
     * @throws IllegalArgumentException if the value is out of range
     */
    public static FlexibleRotor ofBendingStiffness(double newtonSquareMetres) {
        return new FlexibleRotor(newtonSquareMetres, List.of(), List.of(), List.of());
    }

    /**
     * Adds a disc.
     *
     * @param disc disc
     * @return a changed copy
     */
    public FlexibleRotor with(Disc disc) {
        Objects.requireNonNull(disc, "disc");
        List<Disc> more = new ArrayList<>(discs);
        more.add(disc);
        return new FlexibleRotor(bendingStiffness, more, bearings, probes);
    }

    /**
     * Adds a bearing.
     *
     * @param bearing bearing
     * @return a changed copy
     */
    public FlexibleRotor with(Bearing bearing) {
        Objects.requireNonNull(bearing, "bearing");
        List<Bearing> more = new ArrayList<>(bearings);
        more.add(bearing);
        return new FlexibleRotor(bendingStiffness, discs, more, probes);
    }

    /**
     * Adds a sensor.
     *
     * @param probe sensor
     * @return a changed copy
     */
    public FlexibleRotor with(Probe probe) {
        Objects.requireNonNull(probe, "probe");
        List<Probe> more = new ArrayList<>(probes);
        more.add(probe);
        return new FlexibleRotor(bendingStiffness, discs, bearings, more);
    }

    /** Returns the count of discs. */
    @Override
    public int planes() {
        return discs.size();
    }

    /** Returns the count of sensors added. */
    @Override
    public int sensors() {
        return probes.size();
    }

    /** Solves the equations of motion at this speed; there have to be at least two bearings. */
    @Override
    public Phasor displacementPerUnbalance(int sensor, int plane, RotationSpeed speed) {
        Objects.requireNonNull(speed, "speed");
        requireIndices(sensor, plane);
        if (bearings.size() < 2) {
            throw new IllegalStateException("a flexible rotor must have at least two bearings: " + bearings.size());
        }
        List<Double> places = places();
        DynamicStiffness system = new DynamicStiffness(places.size(), speed.radiansPerSecond());
        for (int i = 0; i + 1 < places.size(); i++) {
            system.addShaft(i, places.get(i + 1) - places.get(i), bendingStiffness);
        }
        discs.forEach(d -> system.addDisc(places.indexOf(d.positionMetres()), d.massKilograms(), d.diametralInertia(),
                d.polarInertia()));
        bearings.forEach(b -> system.addBearing(places.indexOf(b.positionMetres()), 0, b));
        Phasor[] q = system.responseToUnitUnbalance(places.indexOf(discs.get(plane).positionMetres()), 0);
        Probe probe = probes.get(sensor);
        int node = places.indexOf(probe.positionMetres());
        return probe.reads(q[DynamicStiffness.x(node)], q[DynamicStiffness.y(node)]);
    }

    private List<Double> places() {
        TreeSet<Double> places = new TreeSet<>();
        discs.forEach(d -> places.add(d.positionMetres()));
        bearings.forEach(b -> places.add(b.positionMetres()));
        probes.forEach(p -> places.add(p.positionMetres()));
        return List.copyOf(places);
    }

    /** Returns stiffness and counts in one line. */
    @Override
    public String toString() {
        return "flexible rotor of " + Digits.significant(bendingStiffness, 3) + " N·m², " + discs.size() + " disc(s), "
                + bearings.size() + " bearing(s), " + probes.size() + " sensor(s)";
    }
}
