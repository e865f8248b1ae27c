package dev.vibra.balance;

import dev.vibra.balance.RunLog.Kind;
import dev.vibra.balance.influence.CoefficientErrors;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.Layout;
import dev.vibra.balance.influence.Run;
import dev.vibra.balance.influence.Sensor;
import dev.vibra.balance.placement.FittedMasses;
import dev.vibra.balance.placement.Fitting;
import dev.vibra.balance.placement.PlaneFitting;
import dev.vibra.balance.placement.Positions;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.uncertainty.ReadingScatter;
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
import java.util.Collections;
import java.util.List;
import java.util.Objects;
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

    private final Setup setup;
    private final RunLog log;

    private BalancingJob(Setup setup, RunLog log) {
        this.setup = Objects.requireNonNull(setup, "setup");
        this.log = Objects.requireNonNull(log, "log");
        Layout layout = setup.layout();
        if (log.state().size() != layout.planes().size()) {
            throw new IllegalArgumentException("masses must be one per plane, " + layout.planes().size() + ": "
                    + log.state().size());
        }
        log.runs().forEach(run -> requireCount(run.readings().size()));
    }

    private Object readResolve() {
        return new BalancingJob(setup, log);
    }

    static BalancingJob of(Layout layout) {
        return new BalancingJob(Setup.of(layout), RunLog.empty(layout.planes().size()));
    }

    private BalancingJob withSetup(Setup changed) {
        return new BalancingJob(changed, log);
    }

    private BalancingJob withLayout(String what, Layout changed) {
        if (!log.entries().isEmpty()) {
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
        Objects.requireNonNull(sensors, "sensors");
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
        Objects.requireNonNull(sensors, "sensors");
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
        Objects.requireNonNull(speeds, "speeds");
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
        Positions.of(count, setup.layout().convention().angle());
        return withSetup(setup.withPositions(setup.layout().planeIndex(plane), count));
    }

    /**
     * Gives a plane positions onto which its corrections are split: unevenly spaced, turned against the mark, or with
     * some taken already.
     *
     * @param plane name of the plane
     * @param positions positions, counted in their own sense
     * @return a changed copy
     * @throws IllegalArgumentException if there is no such plane
     */
    public BalancingJob positions(String plane, Positions positions) {
        return withSetup(setup.withPositions(setup.layout().planeIndex(plane), Objects.requireNonNull(positions,
                "positions")));
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
        return withSetup(setup.withSensorWeight(setup.layout().sensors().get(
                setup.layout().sensorIndex(sensor)).name(), weight));
    }

    /**
     * Says how far a reading scatters, so that corrections and residuals carry their uncertainty.
     *
     * @param scatter one standard deviation of amplitude and phase of a reading as it was noted
     * @return a changed copy
     */
    public BalancingJob scatter(ReadingScatter scatter) {
        return withSetup(setup.with(scatter));
    }

    /**
     * Says the mass of the rotor, so that the force of a trial mass can be judged; that of the tolerance if never
     * called.
     *
     * @param kilograms mass in kg, finite, above zero
     * @return a changed copy
     * @throws IllegalArgumentException if the mass is out of range
     */
    public BalancingJob rotor(double kilograms) {
        return withSetup(setup.withRotor(kilograms));
    }

    /**
     * Damps the corrections where planes act nearly alike (Tikhonov); every result says so.
     *
     * @param ridge damping as a share of the largest singular value, above 0 up to 1; 0.01 to 0.1 is usual
     * @return a changed copy
     * @throws IllegalArgumentException if the damping is out of range
     * @see "A. N. Tikhonov, Solution of incorrectly formulated problems, Soviet Math. Dokl. 4 (1963)"
     */
    public BalancingJob regularised(double ridge) {
        if (!(ridge > 0 && ridge <= 1)) {
            throw Require.failure("ridge", "above 0 and at most 1", ridge);
        }
        return withSetup(setup.withRidge(ridge));
    }

    /**
     * Lets the residuals at a speed count more or less; 1 if never called.
     *
     * @param speed one of the speeds of the job
     * @param weight factor on the residuals at that speed, finite, zero or more; zero leaves it out
     * @return a changed copy
     * @throws IllegalArgumentException if there is no such speed or the weight is out of range
     */
    public BalancingJob weight(RotationSpeed speed, double weight) {
        Objects.requireNonNull(speed, "speed");
        if (!setup.layout().speeds().contains(speed)) {
            throw new IllegalArgumentException("speed must be one of " + setup.layout().speeds() + ": " + speed);
        }
        return withSetup(setup.withSpeedWeight(speed, weight));
    }

    /**
     * Says where bearings and correction planes are along the axis. Residual unbalance is then brought to the bearing
     * planes, which the tolerances of ISO 21940-11 are for; without it the correction planes are judged in their stead.
     *
     * @param firstBearingMillimetres place of the first bearing in mm, finite
     * @param secondBearingMillimetres place of the second bearing in mm, finite, apart from the first
     * @param planesMillimetres place of each correction plane in mm, in the order of the planes, finite
     * @return a changed copy
     * @throws IllegalArgumentException if a place is not finite, the count is wrong, the bearings coincide, or a
     *     tolerance was set that is not allocated to two planes
     * @see "ISO 21940-11:2016, tolerance planes and correction planes"
     */
    public BalancingJob alongTheAxis(double firstBearingMillimetres, double secondBearingMillimetres,
            double... planesMillimetres) {
        Objects.requireNonNull(planesMillimetres, "planesMillimetres");
        if (planesMillimetres.length != log.state().size()) {
            throw new IllegalArgumentException("places must be one per plane, " + log.state().size() + ": "
                    + planesMillimetres.length);
        }
        return withSetup(setup.with(AxialPlaces.ofMillimetres(firstBearingMillimetres, secondBearingMillimetres,
                planesMillimetres)));
    }

    /**
     * Sets the tolerance that residual unbalance is held against.
     *
     * @param tolerance permissible residual unbalance, with a share for each correction plane, or for each of the two
     *     bearing planes where {@link #alongTheAxis} says where they are
     * @return a changed copy
     * @throws IllegalArgumentException if shares and planes differ in number
     */
    public BalancingJob toTolerance(BalanceTolerance tolerance) {
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
        return withSetup(setup.with(coefficients, null));
    }

    /**
     * Uses coefficients of an earlier job and says how far they may have moved since, so that the uncertainty of
     * corrections and residuals holds that too; it needs the {@link #scatter} of the readings as well.
     *
     * @param coefficients coefficients with the same planes, radii, sensors and speeds
     * @param scatter one standard deviation of magnitude and phase of each coefficient, without a floor
     * @return a changed copy
     * @throws IllegalArgumentException if planes, radii, sensors or speeds differ, or the scatter has a floor
     */
    public BalancingJob withCoefficients(InfluenceCoefficients coefficients, ReadingScatter scatter) {
        return withCoefficients(coefficients, CoefficientErrors.of(coefficients, scatter));
    }

    /**
     * Uses coefficients of an earlier job with the errors that it had, so that the uncertainty of corrections and
     * residuals holds those too; it needs the {@link #scatter} of the readings as well.
     *
     * @param coefficients coefficients with the same planes, radii, sensors and speeds
     * @param errors how far each may be off, as {@link #coefficientErrors()} of that job tells
     * @return a changed copy
     * @throws IllegalArgumentException if planes, radii, sensors or speeds differ
     */
    public BalancingJob withCoefficients(InfluenceCoefficients coefficients, CoefficientErrors errors) {
        return withSetup(setup.with(coefficients, Objects.requireNonNull(errors, "errors")));
    }

    /**
     * Sets the runout read at slow roll, to be taken off every reading as a vector.
     *
     * <p>Only sensors that look at the shaft's surface have runout; they read displacement.
     *
     * @param readings one reading per sensor, the same for all speeds
     * @return a changed copy
     * @throws IllegalArgumentException if the count is wrong or a sensor does not read displacement; so do later
     *     changes of the sensors
     * @throws IllegalStateException if runs were read already
     */
    public BalancingJob runout(Reading... readings) {
        Objects.requireNonNull(readings, "readings");
        if (readings.length != setup.layout().sensors().size()) {
            throw new IllegalArgumentException("runout must be one reading per sensor, "
                    + setup.layout().sensors().size() + ": " + readings.length);
        }
        withLayout("runout", setup.layout());
        return withSetup(setup.withRunout(List.of(readings)));
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
        Objects.requireNonNull(readings, "readings");
        return append(Kind.INITIAL, "initial run", log.state(), readings, log.state());
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
        Objects.requireNonNull(mass, "mass");
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
        List<Phasor> with = new ArrayList<>(log.state());
        with.set(index, with.get(index).plus(trial));
        return append(Kind.TRIAL, "trial run in plane " + plane, with, readings, setup.trialsLeftOn() ? with
                : log.state());
    }

    /**
     * Notes a trial run with masses in several planes at once, for example a static pair (both at one angle) or a
     * couple (opposite to each other).
     *
     * @param masses one mass per plane, in the order of the planes; zero where nothing was added
     * @param readings one reading per sensor, speed by speed
     * @return the job with the run
     * @throws IllegalArgumentException if the count of masses or readings is wrong, or all masses are zero
     */
    public BalancingJob trial(List<Mass> masses, Reading... readings) {
        Objects.requireNonNull(masses, "masses");
        Objects.requireNonNull(readings, "readings");
        List<PlacedMass> placed = masses.stream().map(mass -> Objects.requireNonNull(mass, "mass")
                .in(setup.layout().convention().angle())).toList();
        List<Phasor> with = withAll(placed);
        if (with.equals(log.state())) {
            throw new IllegalArgumentException("trial masses must not all be zero: " + masses);
        }
        return append(Kind.TRIAL, "trial run in planes " + String.join(", ", setup.layout().planes()), with,
                vectors(readings), setup.trialsLeftOn() ? with : log.state());
    }

    private List<Phasor> withAll(List<PlacedMass> added) {
        if (added.size() != log.state().size()) {
            throw new IllegalArgumentException("masses must be one per plane, " + log.state().size() + ": "
                    + added.size());
        }
        List<Phasor> with = new ArrayList<>();
        for (int j = 0; j < added.size(); j++) {
            with.add(log.state().get(j).plus(inPlane(j, added.get(j))));
        }
        return with;
    }

    /**
     * Notes the run after the corrections were fitted exactly as {@link #corrections()} says.
     *
     * @param readings one reading per sensor, speed by speed
     * @return the job with the run
     * @throws IllegalArgumentException if the count of readings is wrong
     */
    public BalancingJob finalRun(Reading... readings) {
        return finalRun(analysis().masses(), vectors(readings));
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
        Objects.requireNonNull(fitted, "fitted");
        Objects.requireNonNull(readings, "readings");
        List<Phasor> with = withAll(fitted);
        return append(Kind.FINAL, "final run", with, readings, with);
    }

    /**
     * Notes the run after masses went on positions.
     *
     * @param fitted masses on positions, at the radii of the planes
     * @param readings one reading per sensor, speed by speed
     * @return the job with the run
     * @throws IllegalArgumentException if the masses are not for the planes of this job, or the count of readings is
     *     wrong
     */
    public BalancingJob finalRun(FittedMasses fitted, Reading... readings) {
        Objects.requireNonNull(fitted, "fitted");
        Objects.requireNonNull(readings, "readings");
        requireSamePlanes(fitted);
        return finalRun(fitted.sums(), vectors(readings));
    }

    /**
     * Notes another reading of the rotor as it was in the last run; readings of one state are averaged.
     *
     * @param readings one reading per sensor, speed by speed
     * @return the job with the reading
     * @throws IllegalArgumentException if the count of readings is wrong
     * @throws IllegalStateException if there is no run yet, or its trial mass was taken off
     */
    public BalancingJob readAgain(Reading... readings) {
        return new BalancingJob(setup, log.withAnotherReading(checked(vectors(readings))));
    }

    private Phasor inPlane(int plane, PlacedMass mass) {
        Objects.requireNonNull(mass, "mass");
        Layout layout = setup.layout();
        double kilograms = mass.kilograms().magnitude();
        if (!(kilograms == 0 || kilograms >= Vectors.SMALLEST && kilograms <= Vectors.LARGEST)) {
            throw Require.failure("mass in plane " + layout.planes().get(plane), "zero or within "
                    + Vectors.SMALLEST + " to " + Vectors.LARGEST + " kg", kilograms);
        }
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
        Objects.requireNonNull(readings, "readings");
        requireCount(readings.length);
        VibrationVector[] out = new VibrationVector[readings.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = Objects.requireNonNull(readings[i], "reading").at(setup.layout().sensorOfRow(i),
                    setup.layout().convention().phase());
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
        return new BalancingJob(setup, log.with(kind, new Run(name, added, checked(readings)), stateAfter));
    }

    /** Readings as phasors, runout taken off. */
    private List<Phasor> checked(VibrationVector... readings) {
        requireCount(Objects.requireNonNull(readings, "readings").length);
        List<Phasor> peaks = new ArrayList<>();
        for (int i = 0; i < readings.length; i++) {
            Objects.requireNonNull(readings[i], "reading");
            Quantity expected = setup.layout().sensorOfRow(i).unit().quantity();
            if (readings[i].quantity() != expected) {
                throw new IllegalArgumentException("reading of " + setup.layout().rowName(i) + " must be a " + expected
                        + ": " + readings[i]);
            }
            peaks.add(readings[i].peak().minus(setup.runoutOfRow(i)));
        }
        return peaks;
    }

    /**
     * Returns the influence coefficients: stored ones if given, else those that the initial and trial runs tell.
     *
     * @return the coefficients
     * @throws IllegalArgumentException if runs are missing or don't tell the planes apart
     */
    public InfluenceCoefficients coefficients() {
        return analysis().coefficients();
    }

    /**
     * Returns how far the coefficients may be off, for the next job that uses them.
     *
     * @return one standard deviation of each; empty if the job was told no scatter
     * @throws IllegalArgumentException if runs are missing or don't tell the planes apart
     */
    public Optional<CoefficientErrors> coefficientErrors() {
        return analysis().coefficientErrors();
    }

    /**
     * {@return why {@link #corrections()} can't be worked out, as a sentence: a run or a weight is missing, a trial
     * changed nothing, planes can't be told apart; empty if they can}
     */
    public Optional<String> obstacle() {
        return analysis().obstacle();
    }

    private JobAnalysis analysis() {
        return new JobAnalysis(setup, log);
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

    /** {@return runout of each sensor, as noted, that is taken off every reading; empty if none was set} */
    public List<Reading> runout() {
        return setup.runout();
    }

    /** {@return true if {@link #alongTheAxis} said where bearings and planes are} */
    public boolean knowsBearings() {
        return setup.knowsBearings();
    }

    /** {@return true if the last run is a final run, so that there is a {@link #verification()}} */
    public boolean endsWithFinalRun() {
        return log.endsWithFinalRun();
    }

    /** {@return the job without the final run that it ends with; this job if it ends with none} */
    public BalancingJob beforeFinalRun() {
        return new BalancingJob(setup, log.beforeFinalRun());
    }

    /**
     * Returns the runs so far.
     *
     * @return runs in order, vectors as phasors
     */
    public List<Run> runs() {
        return log.runs();
    }

    /**
     * Returns the masses to add to the rotor as it is now: trial masses off again, or still on where the job leaves
     * them on.
     *
     * @return corrections with predicted residuals, remarks and cautions
     * @throws IllegalStateException if there is an {@link #obstacle()}
     */
    public Corrections corrections() {
        return analysis().corrections();
    }

    /**
     * Tells what masses on positions, found with {@link #fitting}, should leave, in the units of this job.
     *
     * @param fitted masses on positions, at the radii of the planes
     * @return corrections whose splits are these masses
     * @throws IllegalArgumentException if the masses are not for the planes of this job
     * @throws IllegalStateException if runs are missing or a trial changed nothing
     */
    public Corrections corrections(FittedMasses fitted) {
        Objects.requireNonNull(fitted, "fitted");
        requireSamePlanes(fitted);
        Phasor[] masses = new Phasor[fitted.sums().size()];
        for (int j = 0; j < masses.length; j++) {
            masses[j] = inPlane(j, fitted.sums().get(j));
        }
        return analysis().corrections(masses, fitted);
    }

    private void requireSamePlanes(FittedMasses fitted) {
        if (!fitted.planes().equals(setup.layout().planes())) {
            throw new IllegalArgumentException("masses must be for the planes of the job, " + setup.layout().planes()
                    + ": " + fitted.planes());
        }
    }

    /**
     * Sets up corrections on given positions within given limits, for the rotor as it is now.
     *
     * @param planes what can be fitted, one element per plane in the order of the planes
     * @return the problem, to be solved by least squares or for the least largest residual; residuals are weighted as
     *     for {@link #corrections()}
     * @throws IllegalArgumentException if the count is wrong
     * @throws IllegalStateException if runs are missing, a trial changed nothing, or the planes act so alike that
     *     without limits there is no one answer
     */
    public Fitting fitting(PlaneFitting... planes) {
        Objects.requireNonNull(planes, "planes");
        return analysis().fitting(List.of(planes));
    }

    /**
     * Returns masses that make the largest residual least, instead of the sum of squares; angles are free.
     *
     * @return corrections with predicted residuals, remarks and cautions
     * @throws IllegalStateException if runs are missing, a trial changed nothing, or the planes act so alike that
     *     there is no one answer
     */
    public Corrections minimaxCorrections() {
        // Four unlimited positions a quarter turn apart make any vector.
        Positions quarters = Positions.of(4, setup.layout().convention().angle());
        FittedMasses fitted = analysis().fitting(Collections.nCopies(log.state().size(), PlaneFitting.on(quarters)))
                .minimax();
        Phasor[] masses = new Phasor[log.state().size()];
        for (int j = 0; j < masses.length; j++) {
            masses[j] = inPlane(j, fitted.sums().get(j));
        }
        return analysis().corrections(masses);
    }

    /**
     * Holds the last final run against what was predicted, and tells the residual unbalance and the grade reached.
     *
     * @return the verification
     * @throws IllegalStateException if the last run is no final run, or a trial changed nothing
     */
    public Verification verification() {
        if (!log.endsWithFinalRun()) {
            throw new IllegalStateException("a final run must be read first: finalRun(...)");
        }
        return analysis().verification();
    }

    /**
     * Writes the job down as plain data, as far as it has come. What can't be worked out is said in a remark, so that
     * the readings are kept whatever they tell.
     *
     * @return the record
     */
    public JobRecord toRecord() {
        return analysis().toRecord();
    }

    /** Returns the job in one line. */
    @Override
    public String toString() {
        return "balancing job: " + setup.layout() + "; " + runs().size() + " run(s)";
    }
}
