package dev.vibra.balance;

import dev.vibra.balance.influence.CorrectionSolver;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.InfluenceFit;
import dev.vibra.balance.influence.Layout;
import dev.vibra.balance.influence.Run;
import dev.vibra.balance.influence.Sensor;
import dev.vibra.balance.remark.Remark;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.vector.Convention;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Balancing job from the first reading to the proof; immutable, each step gives a new job.
 *
 * <p>First comes the set-up (sensors, unit, convention, speeds, radii), then the runs. A run gives one reading per
 * sensor, speed by speed where there are several speeds.
 *
 * @see "ISO 21940-13:2012, in-situ balancing of medium and large rotors"
 */
public final class BalancingJob implements Serializable {
    private static final long serialVersionUID = 1;

    /** What each run is for: coefficients come from initial and trial runs only. */
    private enum Kind { INITIAL, TRIAL, FINAL }

    /** A run with the state that it started from. */
    private record Entry(Kind kind, Run run, List<Phasor> stateBefore) implements Serializable {}

    private final Setup setup;
    private final List<Entry> entries;
    private final List<Phasor> state; // what is on the rotor now beyond its first state

    private BalancingJob(Setup setup, List<Entry> entries, List<Phasor> state) {
        this.setup = setup;
        this.entries = List.copyOf(entries);
        this.state = List.copyOf(state);
    }

    static BalancingJob of(Layout layout) {
        return new BalancingJob(Setup.of(layout), List.of(), zeros(layout.planes().size()));
    }

    private static List<Phasor> zeros(int count) {
        Phasor[] zeros = new Phasor[count];
        Arrays.fill(zeros, Phasor.ZERO);
        return List.of(zeros);
    }

    private BalancingJob withSetup(Setup changed) {
        return new BalancingJob(changed, entries, state);
    }

    private BalancingJob withLayout(String what, Layout changed) {
        if (!entries.isEmpty()) {
            throw new IllegalStateException(what + " must be set before the first run");
        }
        return withSetup(setup.with(changed));
    }

    /**
     * Sets the sensors; amplitudes are in mm/s rms unless {@link #in} says otherwise.
     *
     * @param sensors names of the measuring points in the order of the readings, all different
     * @return a changed copy
     * @throws IllegalArgumentException if there is no sensor or a name comes twice
     * @throws IllegalStateException if runs were read already
     */
    public BalancingJob measuredAt(String... sensors) {
        return measuredAt(Arrays.stream(sensors).map(name -> new Sensor(name, Unit.MM_PER_S, Detector.RMS))
                .toArray(Sensor[]::new));
    }

    /**
     * Sets sensors that read in units of their own.
     *
     * @param sensors sensors in the order of the readings, names all different
     * @return a changed copy
     * @throws IllegalArgumentException if there is no sensor or a name comes twice
     * @throws IllegalStateException if runs were read already
     */
    public BalancingJob measuredAt(Sensor... sensors) {
        return withLayout("sensors", setup.layout().withSensors(List.of(sensors)));
    }

    /**
     * Sets unit and detector of all sensors.
     *
     * @param unit unit of the amplitudes
     * @param detector detector of the amplitudes
     * @return a changed copy
     * @throws IllegalArgumentException if sensors were not set yet
     * @throws IllegalStateException if runs were read already
     */
    public BalancingJob in(Unit unit, Detector detector) {
        return measuredAt(setup.layout().sensors().stream().map(s -> new Sensor(s.name(), unit, detector))
                .toArray(Sensor[]::new));
    }

    /**
     * Sets the convention; phase as lag and angles against rotation if never called.
     *
     * @param convention how phases and angles are counted
     * @return a changed copy
     * @throws IllegalStateException if runs were read already
     */
    public BalancingJob with(Convention convention) {
        return withLayout("convention", setup.layout().withConvention(convention));
    }

    /**
     * Sets the speeds at which each run is read.
     *
     * @param speeds speeds in the order of the readings
     * @return a changed copy
     * @throws IllegalArgumentException if there is no speed or one comes twice
     * @throws IllegalStateException if runs were read already
     */
    public BalancingJob at(RotationSpeed... speeds) {
        return withLayout("speeds", setup.layout().withSpeeds(List.of(speeds)));
    }

    /**
     * Sets the radius at which corrections go on in a plane; without it masses are told, but no unbalance in g·mm.
     *
     * @param plane name of the plane
     * @param millimetres radius in mm, finite, above zero
     * @return a changed copy
     * @throws IllegalArgumentException if there is no such plane or the radius is out of range
     * @throws IllegalStateException if runs were read already
     */
    public BalancingJob radius(String plane, double millimetres) {
        return withLayout("radius", setup.layout().withRadius(plane, millimetres));
    }

    /**
     * Gives a plane equally spaced positions, onto which its corrections are split.
     *
     * @param plane name of the plane
     * @param count number of positions, at least 3; position 1 is at the mark
     * @return a changed copy
     * @throws IllegalArgumentException if there is no such plane or the count is out of range
     */
    public BalancingJob positions(String plane, int count) {
        Require.atLeast("count of positions in plane " + plane, count, 3);
        return withSetup(setup.withPositions(setup.layout().planeIndex(plane), count));
    }

    /**
     * Leaves trial masses on the rotor: each stays while the next is tried, and corrections come on top of them.
     *
     * @return a changed copy
     * @throws IllegalStateException if runs were read already
     */
    public BalancingJob trialsLeftOn() {
        withLayout("trialsLeftOn", setup.layout());
        return withSetup(setup.leavingTrialsOn());
    }

    /**
     * Lets the residual of a sensor count more or less; 1 if never called.
     *
     * <p>Residuals are compared in mm/s, µm or m/s² zero-to-peak. Where sensors measure different quantities, each
     * needs a weight.
     *
     * @param sensor name of the sensor
     * @param weight factor on its residual, finite, zero or more; zero leaves it out
     * @return a changed copy
     * @throws IllegalArgumentException if there is no such sensor or the weight is out of range
     */
    public BalancingJob weight(String sensor, double weight) {
        Require.notNegative("weight of sensor " + sensor, weight, "");
        return withSetup(setup.withWeight(setup.layout().sensorIndex(sensor), weight));
    }

    /**
     * Sets the tolerance that residual unbalance is held against; with several planes its allocation has to have a
     * share for each.
     *
     * @param tolerance permissible residual unbalance
     * @return a changed copy
     * @throws IllegalArgumentException if shares and planes differ in number
     */
    public BalancingJob toTolerance(BalanceTolerance tolerance) {
        int shares = tolerance.allocation().shares().size();
        if (shares != setup.layout().planes().size()) {
            throw new IllegalArgumentException("tolerance must be allocated to the planes of the job, "
                    + setup.layout().planes().size() + ": " + shares + " share(s)");
        }
        return withSetup(setup.with(tolerance));
    }

    /**
     * Uses coefficients of an earlier job on this rotor, so that no trial run is needed.
     *
     * @param coefficients coefficients with the same planes, radii, sensors and speeds
     * @return a changed copy
     * @throws IllegalArgumentException if planes, radii, sensors or speeds differ
     */
    public BalancingJob withCoefficients(InfluenceCoefficients coefficients) {
        return withSetup(setup.with(coefficients));
    }

    /**
     * Notes the readings of an initial run; it may be repeated.
     *
     * @param readings one reading per sensor, speed by speed
     * @return the job with the run
     * @throws IllegalArgumentException if the count of readings is wrong
     */
    public BalancingJob initial(Reading... readings) {
        return initial(vectors(readings));
    }

    /**
     * Notes the vectors of an initial run; it may be repeated.
     *
     * @param readings one vector per sensor, speed by speed
     * @return the job with the run
     * @throws IllegalArgumentException if the count or a quantity is wrong
     */
    public BalancingJob initial(VibrationVector... readings) {
        return append(Kind.INITIAL, "initial run", state, readings, state);
    }

    /**
     * Notes a trial run.
     *
     * @param plane plane of the trial mass
     * @param mass trial mass
     * @param readings one reading per sensor, speed by speed
     * @return the job with the run
     * @throws IllegalArgumentException if the plane, the mass or the count of readings is wrong
     */
    public BalancingJob trial(String plane, Mass mass, Reading... readings) {
        return trial(plane, mass.in(setup.layout().convention().angle()), vectors(readings));
    }

    /**
     * Notes a trial run.
     *
     * @param plane plane of the trial mass
     * @param mass trial mass; at the radius of the plane unless it has one of its own
     * @param readings one vector per sensor, speed by speed
     * @return the job with the run
     * @throws IllegalArgumentException if the plane, the mass, the count or a quantity is wrong
     */
    public BalancingJob trial(String plane, PlacedMass mass, VibrationVector... readings) {
        int index = setup.layout().planeIndex(plane);
        Phasor trial = inPlane(index, mass);
        if (!(trial.magnitude() > 0)) {
            throw new IllegalArgumentException("trial mass in plane " + plane + " must be above zero: " + mass);
        }
        List<Phasor> with = new ArrayList<>(state);
        with.set(index, with.get(index).plus(trial));
        return append(Kind.TRIAL, "trial run in plane " + plane, with, readings, setup.trialsLeftOn() ? with : state);
    }

    /**
     * Notes the run after the corrections were fitted exactly as {@link #corrections()} says.
     *
     * @param readings one reading per sensor, speed by speed
     * @return the job with the run
     * @throws IllegalArgumentException if the count of readings is wrong
     */
    public BalancingJob finalRun(Reading... readings) {
        return finalRun(corrections().list().stream().map(Correction::mass).toList(), vectors(readings));
    }

    /**
     * Notes the run after corrections, with the masses that really went on.
     *
     * @param fitted one mass per plane, in the order of the planes
     * @param readings one vector per sensor, speed by speed
     * @return the job with the run
     * @throws IllegalArgumentException if the count of masses, the count of readings or a quantity is wrong
     */
    public BalancingJob finalRun(List<PlacedMass> fitted, VibrationVector... readings) {
        if (fitted.size() != state.size()) {
            throw new IllegalArgumentException("masses must be one per plane, " + state.size() + ": " + fitted.size());
        }
        List<Phasor> with = new ArrayList<>();
        for (int j = 0; j < state.size(); j++) {
            with.add(state.get(j).plus(inPlane(j, fitted.get(j))));
        }
        return append(Kind.FINAL, "final run", with, readings, with);
    }

    private Phasor inPlane(int plane, PlacedMass mass) {
        Layout layout = setup.layout();
        if (mass.radiusMillimetres().isEmpty()) {
            return mass.kilograms().times(layout.lever(plane));
        }
        if (!layout.radiusKnown(plane)) {
            throw new IllegalArgumentException("radius of plane " + layout.planes().get(plane)
                    + " must be set to use a mass with a radius: " + mass);
        }
        return mass.unbalance();
    }

    /**
     * Reads a sheet's numbers in unit, detector and sense of this job.
     *
     * @param readings one reading per sensor, speed by speed
     * @return the vectors
     * @throws IllegalArgumentException if the count is wrong
     */
    public VibrationVector[] vectors(Reading... readings) {
        requireCount(readings.length);
        VibrationVector[] out = new VibrationVector[readings.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = readings[i].at(setup.layout().sensorOfRow(i), setup.layout().convention().phase());
        }
        return out;
    }

    private void requireCount(int count) {
        Layout layout = setup.layout();
        if (layout.sensors().isEmpty()) {
            throw new IllegalStateException("sensors must be set before the first run: measuredAt(...)");
        }
        if (count != layout.rows()) {
            throw new IllegalArgumentException("readings must be one per sensor and speed, " + layout.rows() + ": "
                    + count);
        }
    }

    private BalancingJob append(Kind kind, String name, List<Phasor> added, VibrationVector[] readings,
            List<Phasor> stateAfter) {
        requireCount(readings.length);
        List<Phasor> peaks = new ArrayList<>();
        for (int i = 0; i < readings.length; i++) {
            Quantity expected = setup.layout().sensorOfRow(i).unit().quantity();
            if (readings[i].quantity() != expected) {
                throw new IllegalArgumentException("reading of " + setup.layout().rowName(i) + " must be a " + expected
                        + ": " + readings[i]);
            }
            peaks.add(readings[i].peak());
        }
        List<Entry> longer = new ArrayList<>(entries);
        longer.add(new Entry(kind, new Run(name, added, peaks), state));
        return new BalancingJob(setup, longer, stateAfter);
    }

    /**
     * Returns the influence coefficients: stored ones if given, else those that the initial and trial runs tell.
     *
     * @return the coefficients
     * @throws IllegalArgumentException if runs are missing or don't tell the planes apart
     */
    public InfluenceCoefficients coefficients() {
        return setup.stored().orElseGet(() -> InfluenceFit.of(setup.layout(), entries.stream()
                .filter(e -> e.kind() != Kind.FINAL).map(Entry::run).toList()).coefficients());
    }

    /**
     * Returns what planes, sensors, speeds and convention this job has.
     *
     * @return the layout
     */
    public Layout layout() {
        return setup.layout();
    }

    /**
     * Returns the tolerance.
     *
     * @return the tolerance; empty if none was set
     */
    public Optional<BalanceTolerance> tolerance() {
        return setup.tolerance();
    }

    /**
     * Returns the runs so far.
     *
     * @return runs in order, vectors as phasors
     */
    public List<Run> runs() {
        return entries.stream().map(Entry::run).toList();
    }

    /**
     * Returns the masses to add to the rotor as it is now: trial masses off again, or still on where the job leaves
     * them on.
     *
     * @return corrections with predicted residuals, remarks and cautions
     * @throws IllegalArgumentException if runs are missing or don't tell the planes apart
     * @throws IllegalStateException if there is no initial run, or the planes act so alike that there is no one answer
     */
    public Corrections corrections() {
        InfluenceCoefficients alpha = coefficients();
        CorrectionSolver solver = alpha.solver(setup.rowWeights());
        Phasor[] present = vibrationIn(state);
        return Corrections.of(setup, alpha, solver, present, remarks(solver), onRotor());
    }

    private List<Remark> remarks(CorrectionSolver solver) {
        List<Remark> out = new ArrayList<>();
        for (Entry entry : entries) {
            if (entry.kind() == Kind.TRIAL) {
                JobRemarks.weakTrial(entry.run().name(), vibrationIn(entry.stateBefore()),
                        entry.run().readings().toArray(Phasor[]::new)).ifPresent(out::add);
            }
        }
        JobRemarks.planesAlike(solver).ifPresent(out::add);
        return out;
    }

    private String onRotor() {
        return state.equals(zeros(state.size())) ? "to the rotor with the trial masses taken off"
                : "to the rotor as it is now, with all masses of the earlier runs left on";
    }

    /** Mean of the readings taken in a state of the rotor. */
    private Phasor[] vibrationIn(List<Phasor> wanted) {
        List<Run> matching = runs().stream().filter(run -> run.added().equals(wanted)).toList();
        if (matching.isEmpty()) {
            throw new IllegalStateException("an initial run must be read first: initial(...)");
        }
        Phasor[] mean = new Phasor[setup.layout().rows()];
        for (int i = 0; i < mean.length; i++) {
            Phasor sum = Phasor.ZERO;
            for (Run run : matching) {
                sum = sum.plus(run.readings().get(i));
            }
            mean[i] = sum.times(1.0 / matching.size());
        }
        return mean;
    }

    /**
     * Holds the last final run against what was predicted, and tells the residual unbalance and the grade reached.
     *
     * @return the verification
     * @throws IllegalStateException if the last run is no final run
     */
    public Verification verification() {
        if (entries.isEmpty() || entries.get(entries.size() - 1).kind() != Kind.FINAL) {
            throw new IllegalStateException("a final run must be read first: finalRun(...)");
        }
        Entry last = entries.get(entries.size() - 1);
        Phasor[] added = new Phasor[state.size()];
        for (int j = 0; j < added.length; j++) {
            added[j] = last.run().added().get(j).minus(last.stateBefore().get(j));
        }
        InfluenceCoefficients alpha = coefficients();
        return Verification.of(setup, alpha, alpha.solver(setup.rowWeights()), vibrationIn(last.stateBefore()), added,
                last.run().readings().toArray(Phasor[]::new));
    }

    /** Returns the job in one line. */
    @Override
    public String toString() {
        return "balancing job: " + setup.layout() + "; " + entries.size() + " run(s)";
    }
}
