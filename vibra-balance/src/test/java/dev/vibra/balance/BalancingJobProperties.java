package dev.vibra.balance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.influence.CorrectionSolver;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.Layout;
import dev.vibra.balance.influence.Sensor;
import dev.vibra.balance.rotor.Bearing;
import dev.vibra.balance.rotor.Disc;
import dev.vibra.balance.rotor.FlexibleRotor;
import dev.vibra.balance.rotor.JeffcottRotor;
import dev.vibra.balance.rotor.Probe;
import dev.vibra.balance.rotor.RigidRotor;
import dev.vibra.balance.rotor.Rotor;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Convention;
import dev.vibra.balance.vector.PhaseSense;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Closes the loop: readings made by a rotor with a known unbalance lead back to that unbalance. */
class BalancingJobProperties {
    /** A linear rotor with random coefficients, its unbalance, and the readings it gives. */
    private static final class Machine {
        final Layout layout;
        final InfluenceCoefficients alpha;
        final Phasor[] unbalance;
        final Unit[] units = {Unit.MM_PER_S, Unit.IN_PER_S};

        Machine(Random random, int planes, int sensors, int speeds, Convention convention) {
            Layout l = Layout.ofPlanes(names("P", planes)).withConvention(convention);
            List<Sensor> list = new ArrayList<>();
            for (int i = 0; i < sensors; i++) {
                list.add(new Sensor("S" + i, units[random.nextInt(2)], Detector.values()[random.nextInt(3)]));
            }
            l = l.withSensors(list);
            List<RotationSpeed> at = new ArrayList<>();
            for (int k = 0; k < speeds; k++) {
                at.add(RotationSpeed.ofHertz(10 + 5 * k));
            }
            l = l.withSpeeds(at);
            for (int j = 0; j < planes; j++) {
                l = l.withRadius("P" + j, 50 + random.nextInt(500));
            }
            layout = l;
            Phasor[][] a = new Phasor[l.rows()][planes];
            unbalance = new Phasor[planes];
            for (int j = 0; j < planes; j++) {
                unbalance[j] = new Phasor(random.nextGaussian() * 1e-3, random.nextGaussian() * 1e-3);
                for (Phasor[] row : a) {
                    row[j] = new Phasor(random.nextGaussian() * 5, random.nextGaussian() * 5);
                }
            }
            alpha = InfluenceCoefficients.of(l, a);
        }

        Machine(Layout layout, InfluenceCoefficients alpha, Phasor[] unbalance) {
            this.layout = layout;
            this.alpha = alpha;
            this.unbalance = unbalance;
        }

        private static List<String> names(String prefix, int count) {
            List<String> out = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                out.add(prefix + i);
            }
            return out;
        }

        /** What the instruments show with these masses (kg·m) added. */
        VibrationVector[] readings(Phasor... added) {
            Phasor[] all = new Phasor[added.length];
            for (int j = 0; j < all.length; j++) {
                all[j] = unbalance[j].plus(added[j]);
            }
            Phasor[] v = alpha.response(all);
            VibrationVector[] out = new VibrationVector[v.length];
            for (int i = 0; i < v.length; i++) {
                Sensor s = layout.sensorOfRow(i);
                VibrationVector exact = VibrationVector.ofPeak(v[i], s.unit(), s.detector(), layout.convention()
                        .phase());
                // Through the numbers that a crew would write down, to close the loop over the conventions too.
                out[i] = VibrationVector.of(exact.amplitude(), exact.phaseDegrees(), s.unit(), s.detector(),
                        exact.sense());
            }
            return out;
        }

        BalancingJob job() {
            BalancingJob job = Balancing.inPlanes(layout.planes().toArray(String[]::new))
                    .measuredAt(layout.sensors().toArray(Sensor[]::new)).with(layout.convention())
                    .at(layout.speeds().toArray(RotationSpeed[]::new));
            for (int j = 0; j < unbalance.length; j++) {
                job = job.radius(layout.planes().get(j), layout.lever(j) * 1000);
            }
            return job;
        }

        BalancingJob withTrials(BalancingJob start, boolean leftOn, Random random) {
            BalancingJob job = (leftOn ? start.trialsLeftOn() : start).initial(readings(zeros()));
            Phasor[] on = zeros();
            for (int j = 0; j < unbalance.length; j++) {
                double radius = 40 + random.nextInt(300);
                PlacedMass trial = PlacedMass.ofGrams(1 + random.nextInt(50), random.nextInt(360),
                        layout.convention().angle()).atRadius(radius);
                Phasor[] with = leftOn ? on : zeros();
                with[j] = with[j].plus(trial.unbalance());
                job = job.trial(layout.planes().get(j), trial, readings(with));
            }
            trialsOn = leftOn ? on : zeros();
            return job;
        }

        Phasor[] trialsOn;

        Phasor[] zeros() {
            Phasor[] out = new Phasor[unbalance.length];
            Arrays.fill(out, Phasor.ZERO);
            return out;
        }

        boolean wellPosed() {
            return alpha.solver().planeConflict() < 50;
        }
    }

    @Property(tries = 300)
    void balancingRemovesTheUnbalance(@ForAll long seed, @ForAll @IntRange(min = 1, max = 4) int planes,
            @ForAll @IntRange(min = 0, max = 3) int moreSensors, @ForAll @IntRange(min = 1, max = 3) int speeds,
            @ForAll PhaseSense phase, @ForAll AngleSense angle, @ForAll boolean leftOn) {
        Random random = new Random(seed);
        Machine machine = new Machine(random, planes, planes + moreSensors, speeds, Convention.of(phase, angle));
        Assume.that(machine.wellPosed());
        BalancingJob job = machine.withTrials(machine.job(), leftOn, random);
        Corrections corrections = job.corrections();
        Phasor[] on = machine.trialsOn.clone();
        double scale = 0;
        for (int j = 0; j < planes; j++) {
            // Again through the numbers that go to the workshop: grams, degrees, radius.
            PlacedMass m = corrections.list().get(j).mass();
            PlacedMass fitted = PlacedMass.ofGrams(m.grams(), m.angleDegrees(), angle)
                    .atRadius(m.radiusMillimetres().getAsDouble());
            on[j] = on[j].plus(fitted.unbalance());
            scale = Math.max(scale, machine.unbalance[j].magnitude());
        }
        for (int j = 0; j < planes; j++) {
            assertEquals(0, machine.unbalance[j].plus(on[j]).magnitude(), 1e-9 * scale);
        }
        Verification proof = job.finalRun(corrections.list().stream().map(Correction::mass).toList(),
                machine.readings(on))
                .verification();
        assertEquals(0, proof.remainingShare().orElseThrow(), 1e-9);
        assertTrue(proof.remarks().stream().allMatch(r -> r.code().equals("planes-alike")), proof.toString());
    }

    @Property(tries = 200)
    void turningAllAnglesTurnsTheAnswer(@ForAll long seed, @ForAll PhaseSense phase, @ForAll AngleSense angle,
            @ForAll @DoubleRange(min = 0, max = 360) double turn) {
        Random random = new Random(seed);
        Machine machine = new Machine(random, 2, 3, 1, Convention.of(phase, angle));
        Assume.that(machine.wellPosed());
        Phasor straight = machine.withTrials(machine.job(), false, new Random(seed)).corrections().list().get(0).mass()
                .kilograms();
        Phasor by = Phasor.polar(1, Math.toRadians(turn));
        for (int j = 0; j < 2; j++) {
            machine.unbalance[j] = machine.unbalance[j].times(by);
        }
        Phasor turned = machine.withTrials(machine.job(), false, new Random(seed)).corrections().list().get(0).mass()
                .kilograms();
        assertEquals(0, turned.minus(straight.times(by)).magnitude(), 1e-9 * straight.magnitude());
    }

    @Property(tries = 200)
    void swappingPlanesSwapsTheAnswer(@ForAll long seed, @ForAll PhaseSense phase, @ForAll AngleSense angle) {
        Machine machine = new Machine(new Random(seed), 2, 2, 1, Convention.of(phase, angle));
        Assume.that(machine.wellPosed());
        VibrationVector[] initial = machine.readings(machine.zeros());
        PlacedMass a = PlacedMass.ofGrams(20, 30, angle);
        PlacedMass b = PlacedMass.ofGrams(30, 200, angle);
        VibrationVector[] afterA = machine.readings(a.kilograms().times(machine.layout.lever(0)), Phasor.ZERO);
        VibrationVector[] afterB = machine.readings(Phasor.ZERO, b.kilograms().times(machine.layout.lever(1)));
        Corrections straight = machine.job().initial(initial).trial("P0", a, afterA).trial("P1", b, afterB)
                .corrections();
        Corrections swapped = Balancing.inPlanes("P1", "P0").measuredAt(machine.layout.sensors().toArray(Sensor[]::new))
                .with(machine.layout.convention()).at(machine.layout.speeds().get(0))
                .radius("P0", machine.layout.lever(0) * 1000).radius("P1", machine.layout.lever(1) * 1000)
                .initial(initial).trial("P1", b, afterB).trial("P0", a, afterA).corrections();
        for (String plane : new String[] {"P0", "P1"}) {
            assertEquals(0, straight.in(plane).mass().kilograms().minus(swapped.in(plane).mass().kilograms())
                    .magnitude(),
                    1e-9 * straight.in(plane).mass().kilograms().magnitude());
        }
        assertEquals("P1", swapped.list().get(0).plane());
    }

    @Property(tries = 200)
    void correctionNeverLeavesMoreThanItFound(@ForAll long seed, @ForAll @IntRange(min = 1, max = 3) int planes,
            @ForAll @IntRange(min = 0, max = 4) int moreSensors) {
        Random random = new Random(seed);
        Machine machine = new Machine(random, planes, planes + moreSensors, 1, Convention.LAG_AGAINST_ROTATION);
        double[] weights = random.doubles(machine.layout.rows(), 0.1, 3).toArray();
        CorrectionSolver solver = machine.alpha.solver(weights);
        Phasor[] v = new Phasor[machine.layout.rows()];
        for (int i = 0; i < v.length; i++) {
            v[i] = new Phasor(random.nextGaussian(), random.nextGaussian());
        }
        Phasor[] change = machine.alpha.response(solver.cancelling(v));
        Phasor[] left = new Phasor[v.length];
        for (int i = 0; i < v.length; i++) {
            left[i] = v[i].plus(change[i]);
        }
        assertTrue(solver.norm(left) <= solver.norm(v) * (1 + 1e-12));
    }

    /** The physics decides, not the bookkeeping: a rotor that is simulated in time gives the readings. */
    @Property(tries = 100)
    void jeffcottRotorIsBalancedInEveryConvention(@ForAll PhaseSense phase, @ForAll AngleSense angle,
            @ForAll @DoubleRange(min = 5, max = 120) double hertz, @ForAll @DoubleRange(min = 0, max =
                    360) double heavySpot) {
        JeffcottRotor rotor = JeffcottRotor.of(12, 40, 0.05);
        RotationSpeed speed = RotationSpeed.ofHertz(hertz);
        double heavy = Math.toRadians(heavySpot); // where the heavy spot is, with rotation
        BalancingJob job = Balancing.inPlanes("disc").measuredAt("disc").with(Convention.of(phase, angle))
                .in(Unit.UM, Detector.PEAK_TO_PEAK).at(speed).radius("disc", 100);
        double trialAngle = 50;
        double trialWithRotation = angle == AngleSense.WITH_ROTATION ? trialAngle : -trialAngle;
        Phasor initial = rotor.displacementPerUnbalance(0, 0, speed).times(Phasor.polar(2e-3, heavy));
        Phasor trial = initial.plus(rotor.displacementPerUnbalance(0, 0, speed)
                .times(Phasor.polar(0.010 * 0.100, Math.toRadians(trialWithRotation))));
        Corrections c = job.initial(asRead(initial, phase)).trial("disc", Balancing.mass(10, trialAngle),
                asRead(trial, phase)).corrections();
        assertEquals(20, c.in("disc").mass().grams(), 1e-8);
        double light = heavySpot + 180;
        double expected = angle == AngleSense.WITH_ROTATION ? light : -light;
        assertEquals(0, Math.sin(Math.toRadians(c.in("disc").mass().angleDegrees() - expected) / 2), 1e-9);
    }

    /** Reads amplitude and phase off the time signal's definition, x(t) = Re(V·exp(iωt)) = |V|·cos(ωt + arg V). */
    private static Reading asRead(Phasor v, PhaseSense sense) {
        double lead = Math.toDegrees(Math.atan2(v.im(), v.re()));
        return Balancing.v(2e6 * Math.hypot(v.re(), v.im()), sense == PhaseSense.LAG ? -lead : lead);
    }

    /** Between bearings or overhung, rigid or flexible, one to three speeds: what the model has, the job finds. */
    @Property(tries = 150)
    void modelledRotorsAreBalanced(@ForAll long seed, @ForAll boolean overhung, @ForAll boolean flexible,
            @ForAll @IntRange(min = 1, max = 3) int speeds, @ForAll PhaseSense phase, @ForAll AngleSense angle) {
        Random random = new Random(seed);
        Bearing left = new Bearing(-0.3, 2e6, 3e6, 900, 1200);
        Bearing right = new Bearing(0.25, 1.5e6, 2.5e6, 700, 1000);
        double[] at = overhung ? new double[] {0.35, 0.45} : new double[] {-0.15, 0.1};
        Rotor rotor = flexible
                ? FlexibleRotor.ofShaft(0.05, 2.1e11).with(left).with(right).with(Disc.cylinder(at[0], 12, 0.15, 0.03))
                        .with(Disc.cylinder(at[1], 9, 0.15, 0.03)).with(Probe.of(-0.3, 0)).with(Probe.of(0.25, 60))
                : RigidRotor.of(25, 1.1, 0.4).with(left).with(right).withPlane(at[0]).withPlane(at[1])
                        .with(Probe.of(-0.3, 0)).with(Probe.of(0.25, 60));
        Layout layout = Layout.ofPlanes(List.of("a", "b")).withRadius("a", 150).withRadius("b", 120)
                .withConvention(Convention.of(phase, angle)).withSensors(List.of(
                        new Sensor("1", Unit.MM_PER_S, Detector.RMS), new Sensor("2", Unit.MM_PER_S, Detector.RMS)));
        List<RotationSpeed> list = new ArrayList<>();
        for (int k = 0; k < speeds; k++) {
            list.add(RotationSpeed.ofHertz(20 + 9 * k + 5 * random.nextDouble()));
        }
        layout = layout.withSpeeds(list);
        Machine machine = new Machine(layout, rotor.coefficients(layout), new Phasor[] {
            Phasor.polar(1e-3, 7 * random.nextDouble()), Phasor.polar(0.5e-3, 7 * random.nextDouble())});
        Assume.that(machine.wellPosed());
        BalancingJob job = machine.withTrials(machine.job(), false, random);
        Corrections corrections = job.corrections();
        for (int j = 0; j < 2; j++) {
            Phasor left2 = machine.unbalance[j].plus(corrections.list().get(j).mass().unbalance());
            assertEquals(0, left2.magnitude(), 1e-9 * 1e-3);
        }
        assertEquals(corrections.list().get(0).mass().unbalance().plus(corrections.list().get(1).mass().unbalance())
                .magnitude() / 2, corrections.staticCouple().orElseThrow().staticPart().magnitude(), 1e-12);
    }

    /** A crew that counts the angle the wrong way round is told so, unless the angle is its own mirror image. */
    @Property(tries = 200)
    void wrongSignIsCaught(@ForAll PhaseSense phase, @ForAll AngleSense angle,
            @ForAll @DoubleRange(min = 20, max = 160) double light, @ForAll boolean mirror) {
        JeffcottRotor rotor = JeffcottRotor.of(12, 40, 0.05);
        RotationSpeed speed = RotationSpeed.ofHertz(35);
        Phasor alpha = rotor.displacementPerUnbalance(0, 0, speed);
        Phasor heavy = Phasor.polar(2e-3, Math.toRadians(light + 180));
        Phasor trial = Phasor.polar(1e-3, 1);
        BalancingJob job = Balancing.inPlanes("disc").measuredAt("disc").with(Convention.of(phase, angle))
                .in(Unit.UM, Detector.PEAK_TO_PEAK).at(speed).radius("disc", 100)
                .initial(vector(alpha.times(heavy), phase))
                .trial("disc", PlacedMass.ofUnbalance(trial, 100, angle), vector(alpha.times(heavy.plus(trial)),
                phase));
        PlacedMass planned = job.corrections().in("disc").mass();
        Phasor fitted = mirror ? planned.unbalance().conjugate() : planned.unbalance().negated();
        Verification proof = job.finalRun(List.of(planned), vector(alpha.times(heavy.plus(fitted)), phase))
                .verification();
        String expected = mirror ? "angle-sense-suspected" : "opposite-side-suspected";
        boolean alike = Math.abs(Math.cos(Math.toRadians(light))) < 0.05; // mirrored and opposite coincide at 90°
        assertTrue(alike || proof.remarks().stream().anyMatch(r -> r.code().equals(expected)), proof.toString());
        assertTrue(proof.remarks().stream().anyMatch(r -> r.code().endsWith("-suspected")), proof.toString());
    }

    private static VibrationVector vector(Phasor peak, PhaseSense sense) {
        return VibrationVector.ofPeak(peak, Unit.UM, Detector.PEAK_TO_PEAK, sense);
    }
}
