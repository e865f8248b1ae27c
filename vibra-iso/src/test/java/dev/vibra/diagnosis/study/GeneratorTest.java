package dev.vibra.diagnosis.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.quantity.RotationSpeed;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** The machines of the study, held against closed forms. */
class GeneratorTest {
    private static final double RATE = 8192;

    private static Clock clock(int length, double slip) {
        return Clock.run(RATE, length, 50, 2, slip, new SplittableRandom(1));
    }

    private static Modes one(double mass, double hertz, double damping) {
        Structure structure = new Structure();
        int degree = structure.mass(mass);
        structure.spring("spring", Tap.of(degree), mass * Math.pow(2 * Math.PI * hertz, 2));
        return structure.modes(f -> damping);
    }

    @Test
    @DisplayName("one degree of freedom: velocity is jw F / (k - m w2 + jcw)")
    void mobilityOfOneMass() {
        Complex mobility = one(4, 30, 0.05).mobility(Tap.of(0), Tap.of(0), 20);
        double w = 2 * Math.PI * 20;
        double k = 4 * Math.pow(2 * Math.PI * 30, 2);
        Complex expected = new Complex(0, w).divide(new Complex(k - 4 * w * w, 2 * 0.05 * Math.sqrt(4 * k) * w));
        assertEquals(expected.getReal(), mobility.getReal(), 1e-9);
        assertEquals(expected.getImaginary(), mobility.getImaginary(), 1e-9);
    }

    @Test
    void responseToSineIsThatOfMobility() {
        Plant plant = Plant.draw(new SplittableRandom(5));
        Modes modes = plant.structure.modes(f -> 0.05);
        Housing housing = plant.housings.get(0);
        Forces forces = new Forces(clock((int) (8 * RATE), 0.02));
        forces.add(new Lines().foreign(housing.taps()[0], 40, 1, 0), 1);
        double[] velocity = new Response(modes, forces).of(List.of(housing.taps()[1]), (int) (7 * RATE), true)[0];
        double expected = modes.mobility(housing.taps()[0], housing.taps()[1], 40).abs() / Math.sqrt(2);
        assertEquals(expected, StudyMachine.rms(velocity), 0.005 * expected);
    }

    @Test
    void contactThatNeverTouchesChangesNothing() {
        Plant plant = Plant.draw(new SplittableRandom(5));
        Modes modes = plant.structure.modes(f -> 0.05);
        Tap tap = plant.housings.get(0).taps()[0];
        Forces forces = new Forces(clock((int) RATE, 0.02));
        forces.add(new Lines().foreign(tap, 40, 1, 0), 1);
        Contact far = new Contact.Wall(tap, tap, 1, 1e9, 1, 0.1);
        double[] with = new Response(modes, forces).with(far, List.of(tap), 2000, 2)[0];
        double[] without = new Response(modes, forces).of(List.of(tap), 2000, false)[0];
        assertTrue(StudyMachine.rms(without) > 0);
        assertEquals(StudyMachine.rms(without), StudyMachine.rms(with), 0.01 * StudyMachine.rms(without));
    }

    @Test
    @DisplayName("casing on four springs: bounces at sqrt(4k/m) / 2 pi")
    void casingBounces() {
        Structure structure = new Structure();
        Casing casing = Casing.of(structure, 200, 0.4, 0.2, new SplittableRandom(1));
        for (int corner = 0; corner < 4; corner++) {
            double x = corner % 2 == 0 ? 0.2 : -0.2;
            double z = corner < 2 ? 0.3 : -0.3;
            structure.spring("foot", casing.y(x, z), 5e6);
            structure.spring("foot", casing.x(-0.2, z), 2e6);
            structure.spring("foot", casing.z(x, -0.2), 2e6);
        }
        Modes modes = structure.modes(f -> 0.02);
        double expected = Math.sqrt(4 * 5e6 / 200) / (2 * Math.PI);
        int nearest = 0;
        for (int mode = 0; mode < modes.count(); mode++) {
            nearest = Math.abs(modes.hertz(mode) - expected) < Math.abs(modes.hertz(nearest) - expected) ? mode : nearest;
        }
        assertEquals(expected, modes.hertz(nearest), 1e-6 * expected);
        assertEquals(0, modes.gains(casing.x(0, 0))[nearest], 1e-9);
    }

    @Test
    @DisplayName("joint without gap: free motion at 2 f sqrt(a) / (1 + sqrt(a)), two half periods of two stiffnesses")
    void jointOpensAtMeanFrequency() {
        double mass = 10;
        double stiffness = mass * Math.pow(2 * Math.PI * 40, 2);
        double share = 0.25;
        Forces forces = new Forces(clock((int) (4 * RATE), 0.02));
        forces.along(Tap.of(0))[10] = 1e5;
        Contact joint = new Contact.Joint(Tap.of(0), stiffness, 0, 0, share * stiffness, 0);
        double[] motion = new Response(one(mass, 40, 1e-5), forces).with(joint, List.of(Tap.of(0)), 100, 8)[0];
        int rising = 0;
        int first = 0;
        int last = 0;
        for (int i = 1; i < motion.length; i++) {
            if (motion[i - 1] < 0 && motion[i] >= 0) {
                first = rising == 0 ? i : first;
                last = i;
                rising++;
            }
        }
        double hertz = (rising - 1) * RATE / (last - first);
        double root = Math.sqrt(share);
        assertEquals(2 * 40 * root / (1 + root), hertz, 0.05);
    }

    @Test
    void seatHoldsRotorInPlace() {
        Contact.Seat seat = new Contact.Seat(Tap.of(0), Tap.of(1), 1e7, 8e6, 1e-5, 50, 0);
        double[] forces = new double[2];
        seat.push(new double[] {0, 0}, new double[2], forces);
        assertEquals(0, forces[0], 1e-9);
        assertEquals(0, forces[1], 1e-6);
        double lifted = 50 / 8e6 + 1e-5;
        seat.push(new double[] {0, lifted}, new double[2], forces);
        assertEquals(-50, forces[1] - 8e6 * lifted, 1e-6, "in the middle of its clearance only its weight is left");
    }

    @Test
    @DisplayName("four poles, still eccentricity e: steady pull pi e / 2 for b2/2, and no pull at twice the line")
    void pullOfStillEccentricity() {
        AirGap gap = new AirGap(2, 0.02, 0, 0);
        double steady = 0;
        for (int i = 0; i < 32; i++) {
            steady += gap.sum(AirGap.Sum.LEVEL, 2 * Math.PI * i / 32, 0) / 32;
        }
        assertEquals(Math.PI * 0.02 / 2, steady, 0.01 * steady);
        double twice = gap.pulls(AirGap.Sum.LEVEL).stream().filter(one -> one.line() == 2 && one.shaft() == 0)
                .mapToDouble(AirGap.Pull::amplitude).sum();
        assertTrue(twice < 0.01 * steady, "twice the line " + twice);
    }

    @Test
    @DisplayName("two poles: half of the steady pull pulsates at twice the line; turning, at the speed and at 2 f1 - fr")
    void pullOfTwoPoles() {
        assertEquals(Math.PI * 0.02 / 4, amplitude(new AirGap(1, 0.02, 0, 0), 2, 0), 2e-4);
        AirGap turning = new AirGap(1, 0, 0.02, 0);
        assertEquals(Math.PI * 0.02 / 2, amplitude(turning, 0, 1), 2e-4);
        assertEquals(Math.PI * 0.02 / 4, amplitude(turning, 2, -1), 2e-4);
    }

    private static double amplitude(AirGap gap, int line, int shaft) {
        return gap.pulls(AirGap.Sum.LEVEL).stream().filter(one -> one.line() == line && one.shaft() == shaft)
                .mapToDouble(AirGap.Pull::amplitude).sum();
    }

    @Test
    @DisplayName("broken bars, 2970 r/min, 2 poles: lines 1 Hz beside the speed")
    void barsMakePolePassSidebands() {
        AirGap gap = new AirGap(1, 0, 0.1, 0.1);
        List<Double> hertz = gap.pulls(AirGap.Sum.LEVEL).stream().filter(one -> one.amplitude() > 1e-3)
                .map(one -> Math.abs(one.line() * 50 + one.shaft() * 49.5)).toList();
        assertTrue(hertz.stream().anyMatch(f -> Math.abs(f - 48.5) < 1e-9), hertz.toString());
        assertTrue(hertz.stream().anyMatch(f -> Math.abs(f - 50.5) < 1e-9), hertz.toString());
    }

    @Test
    @DisplayName("mode arithmetic: 7/13, 6/7, 9/20, 5/8, 11/19 as published")
    void vaneModes() {
        assertEquals(-6, VaneModes.lowest(1, 7, 13));
        assertEquals(1, VaneModes.lowest(2, 7, 13));
        assertEquals(-1, VaneModes.lowest(1, 6, 7));
        assertEquals(-2, VaneModes.lowest(2, 9, 20));
        assertEquals(-1, VaneModes.lowest(3, 5, 8));
        assertEquals(3, VaneModes.lowest(2, 11, 19));
    }

    @Test
    @DisplayName("pure offset without torque: force 2 K asin(x/Z) / Z; pure angle: none")
    void reactionsOfCoupling() {
        Reactions parallel = Reactions.of(0.1, 0, 2000, new double[] {1e-3, -1e-3}, new double[2]);
        assertEquals(2 * 2000 * Math.asin(0.01) / 0.1, parallel.forceX(), 1e-9);
        assertEquals(0, parallel.forceY(), 1e-12);
        Reactions angular = Reactions.of(0.1, 0, 2000, new double[] {1e-3, 1e-3}, new double[2]);
        assertEquals(0, angular.forceX(), 1e-9);
        assertEquals(-2000 * Math.asin(0.01), angular.momentY(), 1e-9);
    }

    @Test
    void meshRepeatsWithTheWheelThatIsBad() {
        MeshForce mesh = new MeshForce(Tap.of(0), List.of(), 1, new int[] {19, 47}, new MeshForce.Design(
                new double[] {1, 0.3, 0.1}, 0, new double[2], 0, 0.5, 1), new SplittableRandom(3));
        assertEquals(mesh.at(4.3, 4), mesh.at(7.3, 7), 1e-5, "each tooth as the other");
        assertEquals(mesh.at(0.3, 0), mesh.at(19.3, 19), 1e-5, "the bad one once in a turn");
        assertTrue(Math.abs(mesh.at(0.3, 0) - mesh.at(1.3, 1)) > 0.1);
    }

    @Test
    @DisplayName("belt: a raised cosine twice in a turn has the mean of its width; rate is pi d / L")
    void beltPassesTwoPulleys() {
        BeltForce belt = new BeltForce(Tap.of(0), 0.3, 1, 0, 0, new SplittableRandom(3));
        double mean = 0;
        int passes = 0;
        for (int i = 0; i < 100_000; i++) {
            mean += belt.bump(i / 1e5) / 1e5;
            passes += belt.bump(i / 1e5) == 0 && belt.bump((i + 1) / 1e5) > 0 ? 1 : 0;
        }
        assertEquals(2, passes);
        assertTrue(mean > 0.04 && mean < 0.21, "mean is the width, which is 0.05 to 0.2: " + mean);
        assertEquals(Math.PI * 0.2 / 2.4, new Plant.Drive(2.4, 0.2, 0.3, 0, 0).perTurn(), 1e-12);
    }

    @Test
    void knocksComeAtTheirRate() {
        var rates = BearingGeometry.of(9, 7.94, 39.04, 0).frequencies(RotatingRing.INNER, RotationSpeed.ofHertz(25));
        Tap tap = Tap.of(0);
        BearingKnocks knocks = new BearingKnocks(tap, BearingElement.OUTER_RACE, rates, 1, new SplittableRandom(4));
        Forces forces = new Forces(clock((int) (10 * RATE), 0));
        forces.add(knocks, 1);
        double hits = Arrays.stream(forces.along(tap)).filter(f -> f != 0).count();
        double turns = forces.clock().shaft()[forces.clock().length() - 1] - forces.clock().shaft()[0];
        assertEquals(turns * rates.outerRaceHertz() / 25, hits, 0.015 * hits, "by slip up to 1.2 % fewer");
        assertEquals(turns * knocks.perTurn(), hits, 3);
    }

    @Test
    @DisplayName("slip s: the shaft turns (1 - s) / p times as often as the line")
    void clockSlips() {
        Clock clock = clock((int) (10 * RATE), 0.02);
        double line = clock.line()[clock.length() - 1] - clock.line()[0];
        double shaft = clock.shaft()[clock.length() - 1] - clock.shaft()[0];
        assertEquals(0.98 / 2, shaft / line, 3e-4);
        assertEquals(50 * 10, line, 1);
    }

    @Test
    void cosineIsThatOfTheLibrary() {
        for (double turns = -3; turns < 3; turns += 0.0137) {
            assertEquals(Math.cos(2 * Math.PI * turns), Sine.cos(turns), 4e-7);
        }
    }

    @Test
    void tuningBringsModeToSpeed() {
        Plant plant = Plant.draw(new SplittableRandom(8));
        Rotor rotor = plant.rotors.get(0);
        Structure tuned = Tuning.to(25, plant.structure, "foot motor", rotor);
        Modes modes = tuned.modes(f -> 0.02);
        double nearest = Double.POSITIVE_INFINITY;
        for (int mode = 0; mode < modes.count(); mode++) {
            nearest = Math.min(nearest, Math.abs(modes.hertz(mode) - 25));
        }
        assertTrue(nearest < 0.5, "nearest natural frequency is off by " + nearest);
    }
}
