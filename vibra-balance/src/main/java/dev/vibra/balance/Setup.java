package dev.vibra.balance;

import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.Layout;
import dev.vibra.balance.influence.Sensor;
import dev.vibra.balance.placement.PositionedMass;
import dev.vibra.balance.placement.Positions;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.balance.vector.VibrationVector;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a job knows before its first run. */
final class Setup implements Serializable {
    private static final long serialVersionUID = 1;

    private final Layout layout;
    private final Map<Integer, Integer> positions; // by index of the plane
    private final Map<Integer, Double> weights; // by index of the sensor
    private final boolean trialsLeftOn;
    private final BalanceTolerance tolerance; // may be null
    private final InfluenceCoefficients stored; // may be null

    private Setup(Layout layout, Map<Integer, Integer> positions, Map<Integer, Double> weights, boolean trialsLeftOn,
            BalanceTolerance tolerance, InfluenceCoefficients stored) {
        this.layout = layout;
        this.positions = Map.copyOf(positions);
        this.weights = Map.copyOf(weights);
        this.trialsLeftOn = trialsLeftOn;
        this.tolerance = tolerance;
        this.stored = stored;
    }

    static Setup of(Layout layout) {
        return new Setup(layout, Map.of(), Map.of(), false, null, null);
    }

    Setup with(Layout newLayout) {
        return new Setup(newLayout, positions, weights, trialsLeftOn, tolerance, stored);
    }

    Setup withPositions(int plane, int count) {
        Map<Integer, Integer> changed = new HashMap<>(positions);
        changed.put(plane, count);
        return new Setup(layout, changed, weights, trialsLeftOn, tolerance, stored);
    }

    Setup withWeight(int sensor, double weight) {
        Map<Integer, Double> changed = new HashMap<>(weights);
        changed.put(sensor, weight);
        return new Setup(layout, positions, changed, trialsLeftOn, tolerance, stored);
    }

    Setup leavingTrialsOn() {
        return new Setup(layout, positions, weights, true, tolerance, stored);
    }

    Setup with(BalanceTolerance newTolerance) {
        return new Setup(layout, positions, weights, trialsLeftOn, newTolerance, stored);
    }

    Setup with(InfluenceCoefficients coefficients) {
        if (!coefficients.layout().describesSameRotorAs(layout)) {
            throw new IllegalArgumentException("stored coefficients must have the planes, radii, sensors and speeds of"
                    + " the"
                    + " job: " + coefficients.layout() + " instead of " + layout);
        }
        return new Setup(layout, positions, weights, trialsLeftOn, tolerance, coefficients);
    }

    Layout layout() {
        return layout;
    }

    boolean trialsLeftOn() {
        return trialsLeftOn;
    }

    Optional<BalanceTolerance> tolerance() {
        return Optional.ofNullable(tolerance);
    }

    Optional<InfluenceCoefficients> stored() {
        return Optional.ofNullable(stored);
    }

    /** Factors that turn zero-to-peak SI residuals into weighted ones in customary units. */
    double[] rowWeights() {
        boolean mixed = layout.sensors().stream().map(s -> s.unit().quantity()).distinct().count() > 1;
        double[] out = new double[layout.rows()];
        for (int i = 0; i < out.length; i++) {
            int sensor = i % layout.sensors().size();
            Sensor described = layout.sensors().get(sensor);
            if (mixed && !weights.containsKey(sensor)) {
                throw new IllegalStateException("sensors that measure different quantities must each have a weight: "
                        + described.name() + " has none");
            }
            out[i] = weights.getOrDefault(sensor, 1.0) / described.unit().quantity().customaryUnit().toSi();
        }
        return out;
    }

    VibrationVector vector(int row, Phasor peak) {
        Sensor sensor = layout.sensorOfRow(row);
        return VibrationVector.ofPeak(peak, sensor.unit(), sensor.detector(), layout.convention().phase());
    }

    List<VibrationVector> vectors(Phasor[] peaks) {
        List<VibrationVector> out = new ArrayList<>();
        for (int i = 0; i < peaks.length; i++) {
            out.add(vector(i, peaks[i]));
        }
        return List.copyOf(out);
    }

    /** Turns kg·m, or kg where the radius was left open, into a mass of that plane. */
    PlacedMass mass(int plane, Phasor unbalance) {
        return layout.radiusKnown(plane)
                ? PlacedMass.ofUnbalance(unbalance, layout.lever(plane) * 1000, layout.convention().angle())
                : PlacedMass.ofPhasor(unbalance, layout.convention().angle());
    }

    List<PositionedMass> split(int plane, PlacedMass mass) {
        Integer count = positions.get(plane);
        return count == null ? List.of() : Positions.of(count, layout.convention().angle()).split(mass);
    }

    /** Names what remains in each plane; empty if a radius was left open. */
    List<ResidualUnbalance> residuals(Phasor[] unbalances) {
        List<ResidualUnbalance> out = new ArrayList<>();
        for (int j = 0; j < unbalances.length; j++) {
            if (!layout.radiusKnown(j)) {
                return List.of();
            }
            double permissible = tolerance == null ? Double.NaN : tolerance.gramMillimetresOf(j);
            out.add(new ResidualUnbalance(layout.planes().get(j), mass(j, unbalances[j]), permissible));
        }
        return List.copyOf(out);
    }
}
