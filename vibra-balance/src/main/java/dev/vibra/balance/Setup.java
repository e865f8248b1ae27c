package dev.vibra.balance;

import dev.vibra.balance.influence.CoefficientErrors;
import dev.vibra.balance.influence.CorrectionSolver;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.Layout;
import dev.vibra.balance.influence.Sensor;
import dev.vibra.balance.placement.PositionedMass;
import dev.vibra.balance.placement.Positions;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.tolerance.GradeReached;
import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a job knows beside its runs; changed only by copying. */
@SuppressWarnings("serial") // the collections are unmodifiable copies, which are serializable
final class Setup implements Serializable {
    private static final long serialVersionUID = 1;
    /** A round scatter of unit mean square stays within this distance in 95 %: √(−ln 0.05). */
    private static final double ROUND_95 = Math.sqrt(-Math.log(0.05));

    private Layout layout;
    private Map<Integer, Integer> positionCounts = Map.of(); // by index of the plane, counted in the sense of the job
    private Map<Integer, Positions> positions = Map.of(); // by index of the plane; these come first
    // By name and value, not by place, so that the order of the setting-up does not matter:
    private Map<String, Double> sensorWeights = Map.of();
    private Map<RotationSpeed, Double> speedWeights = Map.of();
    private Map<String, Reading> runout = Map.of(); // by name of the sensor, as noted; empty for none
    private boolean trialsLeftOn;
    private double ridge; // 0 for plain least squares
    private Double rotorKilograms; // null: not told
    private BalanceTolerance tolerance; // may be null
    private AxialPlaces places; // may be null
    private InfluenceCoefficients stored; // may be null
    private CoefficientErrors storedErrors; // may be null
    private ReadingScatter scatter; // may be null

    private Setup() {}

    static Setup of(Layout layout) {
        Setup setup = new Setup();
        setup.layout = layout;
        return setup;
    }

    /** Every change starts here: the copy is changed before anybody else sees it. */
    private Setup copy() {
        Setup copy = new Setup();
        copy.layout = layout;
        copy.positionCounts = positionCounts;
        copy.positions = positions;
        copy.sensorWeights = sensorWeights;
        copy.speedWeights = speedWeights;
        copy.runout = runout;
        copy.trialsLeftOn = trialsLeftOn;
        copy.ridge = ridge;
        copy.rotorKilograms = rotorKilograms;
        copy.tolerance = tolerance;
        copy.places = places;
        copy.stored = stored;
        copy.storedErrors = storedErrors;
        copy.scatter = scatter;
        return copy;
    }

    private Object readResolve() {
        Setup own = copy();
        own.positionCounts = ordered(positionCounts);
        own.positions = ordered(positions);
        own.sensorWeights = ordered(sensorWeights);
        own.speedWeights = ordered(speedWeights);
        own.runout = ordered(runout);
        return own.checked();
    }

    /** Every change and every stream ends here. */
    private Setup checked() {
        int planes = Objects.requireNonNull(layout, "layout").planes().size();
        positionCounts.forEach((plane, count) -> {
            Objects.checkIndex(plane, planes);
            Positions.of(count, layout.convention().angle());
        });
        positions.keySet().forEach(plane -> Objects.checkIndex(plane, planes));
        sensorWeights.forEach((sensor, weight) -> requireWeight("weight of sensor " + sensor, weight));
        speedWeights.forEach((speed, weight) -> requireWeight("weight of speed " + speed, weight));
        Require.within("ridge", ridge, 0, 1, "");
        if (rotorKilograms != null) {
            Require.positive("rotor mass", rotorKilograms, "kg");
        }
        if (scatter != null) {
            Require.within("floor of the scatter", scatter.floor(), 0, Vectors.LARGEST, "");
        }
        if (stored != null) {
            requireSoundCoefficients();
        }
        requireKnownNames();
        requireFittingShares();
        return this;
    }

    private void requireSoundCoefficients() {
        double largest = 1e60;
        double smallest = 1e-60;
        for (int i = 0; i < stored.layout().rows(); i++) {
            for (int j = 0; j < stored.layout().planes().size(); j++) {
                double magnitude = stored.at(i, j).magnitude();
                if (!(magnitude == 0 || magnitude >= smallest && magnitude <= largest)) {
                    throw Require.failure("stored coefficient of " + stored.layout().rowName(i) + " and plane "
                            + stored.layout().planes().get(j), "zero or within " + smallest + " to " + largest
                            + " in SI units", magnitude);
                }
            }
        }
    }

    private static void requireWeight(String name, double weight) {
        Require.notNegative(name, weight, "");
        if (!(weight == 0 || weight >= Vectors.SMALLEST && weight <= Vectors.LARGEST)) {
            throw Require.failure(name, "zero or within " + Vectors.SMALLEST + " to " + Vectors.LARGEST, weight);
        }
    }

    private static <K, T> Map<K, T> ordered(Map<K, T> map) {
        return map.isEmpty() ? Map.of() : Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }

    private static <K, T> Map<K, T> with(Map<K, T> map, K key, T value) {
        Map<K, T> changed = new LinkedHashMap<>(map);
        changed.put(key, value);
        return ordered(changed);
    }

    Setup with(Layout newLayout) {
        Setup changed = copy();
        changed.layout = newLayout;
        return changed.checked();
    }

    /** A weight or a runout of a sensor that is no longer there would be lost without a word. */
    private void requireKnownNames() {
        List<String> names = layout.sensors().stream().map(Sensor::name).toList();
        for (String weighted : sensorWeights.keySet()) {
            if (!names.contains(weighted)) {
                throw new IllegalArgumentException("sensors must keep " + weighted + ", which has a weight: " + names);
            }
        }
        for (RotationSpeed weighted : speedWeights.keySet()) {
            if (!layout.speeds().contains(weighted)) {
                throw new IllegalArgumentException("speeds must keep " + weighted + ", which has a weight: "
                        + layout.speeds());
            }
        }
        if (!runout.isEmpty() && !(names.size() == runout.size() && runout.keySet().containsAll(names))) {
            throw new IllegalArgumentException("sensors must be those whose runout was read, " + runout.keySet() + ": "
                    + names);
        }
        for (Sensor sensor : layout.sensors()) {
            if (!runout.isEmpty() && sensor.unit().quantity() != Quantity.DISPLACEMENT) {
                throw new IllegalArgumentException("runout must be read by a displacement sensor: " + sensor);
            }
        }
    }

    Setup withPositions(int plane, int count) {
        Setup changed = copy();
        changed.positionCounts = with(positionCounts, plane, count);
        changed.positions = without(positions, plane);
        return changed.checked();
    }

    Setup withPositions(int plane, Positions places) {
        Setup changed = copy();
        changed.positions = with(positions, plane, places);
        return changed.checked();
    }

    private static <T> Map<Integer, T> without(Map<Integer, T> map, int key) {
        Map<Integer, T> changed = new LinkedHashMap<>(map);
        changed.remove(key);
        return ordered(changed);
    }

    Setup withSensorWeight(String sensor, double weight) {
        Setup changed = copy();
        changed.sensorWeights = with(sensorWeights, sensor, weight);
        return changed.checked();
    }

    Setup withSpeedWeight(RotationSpeed speed, double weight) {
        Setup changed = copy();
        changed.speedWeights = with(speedWeights, speed, weight);
        return changed.checked();
    }

    Setup leavingTrialsOn() {
        Setup changed = copy();
        changed.trialsLeftOn = true;
        return changed.checked();
    }

    Setup withRunout(List<Reading> readings) {
        Map<String, Reading> bySensor = new LinkedHashMap<>();
        for (int i = 0; i < readings.size(); i++) {
            bySensor.put(layout.sensors().get(i).name(), readings.get(i));
        }
        Setup changed = copy();
        changed.runout = ordered(bySensor);
        return changed.checked();
    }

    Setup withRidge(double newRidge) {
        Setup changed = copy();
        changed.ridge = newRidge;
        return changed.checked();
    }

    Setup with(ReadingScatter newScatter) {
        Setup changed = copy();
        changed.scatter = Objects.requireNonNull(newScatter, "scatter");
        return changed.checked();
    }

    Setup with(BalanceTolerance newTolerance) {
        Setup changed = copy();
        changed.tolerance = Objects.requireNonNull(newTolerance, "tolerance");
        return changed.checked();
    }

    Setup with(AxialPlaces newPlaces) {
        Setup changed = copy();
        changed.places = newPlaces;
        return changed.checked();
    }

    private void requireFittingShares() {
        if (tolerance == null) {
            return;
        }
        int shares = tolerance.allocation().shares().size();
        int wanted = places == null ? layout.planes().size() : 2;
        if (shares != wanted) {
            throw new IllegalArgumentException("tolerance must be allocated to the "
                    + (places == null ? "planes of the job, " : "bearing planes, ") + wanted + ": " + shares
                    + " share(s)");
        }
    }

    /** The errors of the coefficients may be null: they are taken as exact. */
    Setup with(InfluenceCoefficients coefficients, CoefficientErrors errors) {
        Objects.requireNonNull(coefficients, "coefficients");
        String difference = coefficients.layout().differenceFrom(layout);
        if (!difference.isEmpty()) {
            throw new IllegalArgumentException("stored coefficients must have the planes, radii, sensors and speeds of"
                    + " the job: " + difference);
        }
        if (errors != null && !errors.layout().describesSameRotorAs(coefficients.layout())) {
            throw new IllegalArgumentException("errors must be of the coefficients: "
                    + coefficients.layout().differenceFrom(errors.layout()));
        }
        Setup changed = copy();
        changed.stored = coefficients;
        changed.storedErrors = errors;
        return changed.checked();
    }

    Optional<ReadingScatter> scatter() {
        return Optional.ofNullable(scatter);
    }

    ReadingScatter toldOrUsualScatter() {
        return scatter().orElse(JobRemarks.ASSUMED);
    }

    Optional<CoefficientErrors> storedErrors() {
        return Optional.ofNullable(storedErrors);
    }

    /** Mass of the rotor; that of the tolerance where none was told. */
    Optional<Double> rotorKilograms() {
        return Optional.ofNullable(rotorKilograms).or(() -> tolerance().map(BalanceTolerance::massKilograms));
    }

    Setup withRotor(double kilograms) {
        Setup changed = copy();
        changed.rotorKilograms = kilograms;
        return changed.checked();
    }

    /** Distance that readings of a row may be apart by their scatter alone (95 %), told or usual. */
    double allowance(int row, Phasor... readings) {
        ReadingScatter told = toldOrUsualScatter();
        double square = 0;
        for (Phasor reading : readings) {
            Phasor noted = reading.plus(runoutOfRow(row));
            square += Math.pow(told.along(noted, layout.peakPerUnit(row)).magnitude(), 2)
                    + Math.pow(told.across(noted, layout.peakPerUnit(row)).magnitude(), 2);
        }
        return ROUND_95 * Math.sqrt(square);
    }

    /** The same for whole runs, weighted as residuals are. */
    double allowance(Phasor[] one, Phasor[] other) {
        double[] weights = rowWeights();
        double square = 0;
        for (int i = 0; i < one.length; i++) {
            square += Math.pow(weights[i] * allowance(i, one[i], other[i]), 2);
        }
        return Math.sqrt(square);
    }

    double ridge() {
        return ridge;
    }

    Phasor runoutOfRow(int row) {
        Sensor sensor = layout.sensorOfRow(row);
        return runout.isEmpty() ? Phasor.ZERO
                : runout.get(sensor.name()).at(sensor, layout.convention().phase()).peak();
    }

    /** Unbalance that a vibration tells of, never damped; empty if the planes act too much alike to tell. */
    Optional<Phasor[]> unbalanceOf(CorrectionSolver solver, Phasor[] vibration) {
        return tellsPlanesApart(solver) ? Optional.of(Arrays.stream(solver.cancelling(vibration)).map(Phasor::negated)
                .toArray(Phasor[]::new)) : Optional.empty();
    }

    static boolean tellsPlanesApart(CorrectionSolver solver) {
        return solver.planeConflict() <= JobRemarks.REFUSED; // false for NaN
    }

    /** Finds the masses that cancel a vibration, damped where the job asks for it; {@link #obstacle} comes first. */
    Phasor[] cancelling(CorrectionSolver solver, Phasor[] vibration) {
        return ridge > 0 ? solver.cancellingWithRidge(ridge, vibration) : solver.cancelling(vibration);
    }

    /** Says why masses that cancel a vibration can't be told. */
    Optional<String> obstacle(CorrectionSolver solver) {
        return ridge > 0 && layout.planes().size() > 1 ? solver.obstacleWithRidge() : planesAlike(solver);
    }

    /** One plane can't act like another: where it has no one answer, it does not act at all. */
    Optional<String> planesAlike(CorrectionSolver solver) {
        if (tellsPlanesApart(solver)) {
            return Optional.empty();
        }
        return Optional.of(layout.planes().size() == 1
                ? "plane " + layout.planes().get(0) + " must act at the sensors to be balanced: its coefficients are"
                + " zero at every sensor that counts"
                : "planes must act differently at the sensors to be balanced together: condition number "
                + CorrectionSolver.inWords(solver.planeConflict()) + " with columns of equal length, limit "
                + Digits.compact(JobRemarks.REFUSED, 3)
                + "; balance fewer planes, add sensors or speeds, or have the corrections damped (regularised)");
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

    boolean knowsBearings() {
        return places != null;
    }

    List<Reading> runout() {
        return layout.sensors().stream().map(Sensor::name).filter(runout::containsKey).map(runout::get).toList();
    }

    Optional<InfluenceCoefficients> stored() {
        return Optional.ofNullable(stored);
    }

    /** Names the first sensor without the weight that different quantities need. */
    Optional<String> unweighted() {
        boolean mixed = layout.sensors().stream().map(s -> s.unit().quantity()).distinct().count() > 1;
        return layout.sensors().stream().map(Sensor::name)
                .filter(name -> mixed && !sensorWeights.containsKey(name)).findFirst()
                .map(name -> "sensors that measure different quantities must each have a weight: " + name
                        + " has none");
    }

    /** Factors that turn zero-to-peak SI residuals into weighted ones in customary units. */
    double[] rowWeights() {
        double[] out = new double[layout.rows()];
        for (int i = 0; i < out.length; i++) {
            Sensor sensor = layout.sensorOfRow(i);
            double ofSpeed = layout.speeds().isEmpty() ? 1
                    : speedWeights.getOrDefault(layout.speeds().get(i / layout.sensors().size()), 1.0);
            out[i] = sensorWeights.getOrDefault(sensor.name(), 1.0) * ofSpeed
                    / sensor.unit().quantity().customaryUnit().toSi();
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

    /** Positions of a plane. */
    Optional<Positions> positions(int plane) {
        return Optional.ofNullable(positions.get(plane)).or(() -> Optional.ofNullable(positionCounts.get(plane))
                .map(count -> Positions.of(count, layout.convention().angle())));
    }

    /** Empty without positions, and where they lie too far apart; {@link JobRemarks} says so. */
    List<PositionedMass> split(int plane, PlacedMass mass) {
        return positions(plane).filter(places -> places.canHold(mass)).map(places -> places.split(mass))
                .orElse(List.of());
    }

    /** Names what remains in each plane; empty if a radius was left open. */
    List<ResidualUnbalance> residuals(Phasor[] unbalances) {
        List<ResidualUnbalance> out = new ArrayList<>();
        for (int j = 0; j < unbalances.length; j++) {
            if (!layout.radiusKnown(j)) {
                return List.of();
            }
            OptionalDouble permissible = places == null ? permissible(j) : OptionalDouble.empty();
            out.add(residual(layout.planes().get(j), unbalances[j], permissible));
        }
        return List.copyOf(out);
    }

    /** Unbalances of the correction planes as seen in the planes that the tolerance is for. */
    Phasor[] inTolerancePlanes(Phasor[] unbalances) {
        return places == null ? unbalances : places.inBearingPlanes(unbalances);
    }

    /** Names what remains in the bearing planes; empty if a place or a radius was left open. */
    List<ResidualUnbalance> bearingResiduals(Phasor[] unbalances) {
        for (int j = 0; j < unbalances.length; j++) {
            if (places == null || !layout.radiusKnown(j)) {
                return List.of();
            }
        }
        List<ResidualUnbalance> out = new ArrayList<>();
        Phasor[] atBearings = places.inBearingPlanes(unbalances);
        for (int b = 0; b < atBearings.length; b++) {
            out.add(residual(b == 0 ? "first bearing" : "second bearing", atBearings[b], permissible(b)));
        }
        return List.copyOf(out);
    }

    private ResidualUnbalance residual(String plane, Phasor unbalance, OptionalDouble permissible) {
        return new ResidualUnbalance(plane, unbalance, layout.convention().angle(), permissible);
    }

    private OptionalDouble permissible(int plane) {
        return tolerance == null ? OptionalDouble.empty() : OptionalDouble.of(tolerance.gramMillimetresOf(plane));
    }

    /** Grade of unbalances in the correction planes, whose radii have to be known. */
    Optional<GradeReached> gradeOf(Phasor[] unbalances) {
        return tolerance().map(t -> t.reachedBy(Arrays.stream(inTolerancePlanes(unbalances))
                .mapToDouble(u -> u.magnitude() * 1e6).toArray()));
    }

    /** Tolerances of those planes in kg·m. */
    double[] tolerances() {
        return tolerance.allocation().shares().stream().mapToDouble(share -> share * tolerance.gramMillimetres() * 1e-6)
                .toArray();
    }
}
