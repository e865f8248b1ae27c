package dev.vibra.speedrun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.evidence.Remark;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.OrderVector;
import dev.vibra.rotation.SpeedPoint;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PointRunTest {
    private static final double RATE = 2000;
    private static final SpeedProfile DOWN = profile(3000, 300, 60);
    private static final SpeedSweep SWEEP = sweep(DOWN);
    private static final RunModel STILL = RunModel.of(DOWN);

    private static SpeedProfile profile(double from, double to, double seconds) {
        return new SpeedProfile(RotationSpeed.ofRevolutionsPerMinute(from), RotationSpeed.ofRevolutionsPerMinute(to),
                seconds);
    }

    private static SpeedSweep sweep(SpeedProfile profile) {
        return SpeedSweep.read(profile.tachometer(10_000, 1), 1).sweep().orElseThrow();
    }

    private static List<SpeedResonance> once(PointRun run) {
        return run.resonances().stream().filter(one -> one.order() == 1).toList();
    }

    private static List<String> codes(PointRun run) {
        return run.remarks().stream().map(Remark::code).toList();
    }

    /** The equation of motion integrated by Commons Math tells where the resonance lies and how much it amplifies. */
    @ParameterizedTest
    @CsvSource({"5, 0.02, 1", "5, 0.1, -1", "5, 0.2, 1", "10, 0.05, -1", "10, 0.1, 1", "10, 0.2, -1", "10, 0.3, 1",
            "25, 0.15, 1", "25, 0.3, -1"})
    void findsTheResonanceOfAnIntegratedRotor(double factor, double sweepRatio, int direction) {
        double width = 25 / factor;
        double seconds = 40 / (sweepRatio * width * width);
        SpeedProfile profile = direction > 0 ? profile(600, 3000, seconds) : profile(3000, 600, seconds);
        Waveform motion = new IntegratedRotor(profile, 10e-6, 25, 0.5 / factor).displacement(RATE);
        List<SpeedResonance> found = once(PointRun.of("A", motion, sweep(profile)));
        assertEquals(1, found.size());
        SpeedResonance one = found.get(0);
        assertEquals(25, one.speed().hertz(), 0.25);
        assertEquals(25, one.speed().hertz(), 0.25 * one.speedUncertaintyPercent());
        assertEquals(factor, one.amplification().orElseThrow(), one.amplificationUncertainty().orElseThrow());
        assertTrue(one.amplificationUncertainty().orElseThrow() < 0.13 * factor, one::toString);
        assertEquals(sweepRatio, one.sweepRatio(), 0.12 * sweepRatio);
        assertTrue(one.isSingle());
    }

    /** Passed five times as fast as the phase can follow: no amplification factor, whatever is found. */
    @ParameterizedTest
    @CsvSource({"10, 0.9", "25, 0.9", "25, 3", "50, 1.5"})
    void tooFastAPassageTellsNoDamping(double factor, double sweepRatio) {
        double width = 25 / factor;
        SpeedProfile profile = profile(600, 3000, 40 / (sweepRatio * width * width));
        PointRun run = PointRun.of("A", new IntegratedRotor(profile, 10e-6, 25, 0.5 / factor).displacement(RATE),
                sweep(profile));
        assertTrue(once(run).stream().noneMatch(SpeedResonance::slowEnough), run::toString);
        assertTrue(once(run).size() + run.otherPeaks().size() > 0);
        once(run).forEach(one -> assertEquals(25, one.speed().hertz(), 0.5));
    }

    @Test
    void aSlowRunIsTheQuasiSteadyOne() {
        SpeedProfile slow = profile(600, 3000, 400);
        double[] truth = new IntegratedRotor(slow, 10e-6, 25, 0.05).displacement(RATE).samples();
        double[] model = RunModel.of(slow).withMode(10e-6, 25, 0.05, 0).recording(Quantity.DISPLACEMENT, RATE)
                .samples();
        double most = 0;
        for (int i = 0; i < truth.length; i++) {
            most = Math.max(most, Math.abs(truth[i] - model[i]));
        }
        assertTrue(most < 0.04 * 100e-6, most + " m off a peak of 100e-6 m");
    }

    @Test
    void vectorsAreThoseOfTheClosedForm() {
        RunModel model = STILL.withMode(10e-6, 25, 0.05, 30);
        for (Quantity quantity : List.of(Quantity.DISPLACEMENT, Quantity.VELOCITY, Quantity.ACCELERATION)) {
            FollowedOrder once = PointRun.of("A", model.recording(quantity, RATE), SWEEP).order(1).orElseThrow();
            assertEquals(quantity == Quantity.DISPLACEMENT ? quantity : Quantity.VELOCITY, once.quantity());
            for (SpeedPoint point : once.in(Quantity.DISPLACEMENT).track().points()) {
                OrderVector exact = model.displacementAt(point.speed());
                if (point.speed().hertz() > 12) { // the slow-roll vector of 0.7 µm is taken off displacement
                    double dx = exact.amplitude() * Math.cos(exact.lagRadians()) - point.vector().amplitude()
                            * Math.cos(point.vector().lagRadians());
                    double dy = exact.amplitude() * Math.sin(exact.lagRadians()) - point.vector().amplitude()
                            * Math.sin(point.vector().lagRadians());
                    assertEquals(0, Math.hypot(dx, dy), 3.5e-6, point::toString);
                }
            }
        }
    }

    @Test
    void noResonanceWithinTheRangeIsNotInvented() {
        PointRun run = PointRun.of("A", STILL.withMode(10e-6, 90, 0.05, 30).withNoise(1e-4, 3)
                .recording(Quantity.VELOCITY, RATE), SWEEP);
        assertEquals(List.of(), run.resonances());
        assertEquals(List.of(), run.otherPeaks());
        assertTrue(run.order(1).orElseThrow().standingShare() > 0.9);
    }

    @Test
    void noiseAloneShowsNothing() {
        for (int seed = 1; seed <= 20; seed++) {
            PointRun run = PointRun.of("A", STILL.withNoise(1e-3, seed).recording(Quantity.VELOCITY, RATE), SWEEP);
            assertEquals(List.of(), run.resonances(), "seed " + seed);
            assertEquals(List.of(), run.otherPeaks(), "seed " + seed);
            assertTrue(run.order(1).orElseThrow().standingShare() < 0.03);
        }
    }

    /** A tone of fixed frequency makes a peak where the shaft passes it, and no resonance. */
    @Test
    void humIsNoResonance() {
        Waveform hum = Synthesis.silence(Quantity.VELOCITY, RATE, 120_000).tone(2e-3, 25, 0.3)
                .plus(STILL.withMode(2e-6, 90, 0.05, 0).recording(Quantity.VELOCITY, RATE)).waveform();
        PointRun run = PointRun.of("A", hum, SWEEP);
        assertEquals(List.of(), once(run));
        assertEquals(List.of(), run.otherPeaks());
        assertTrue(codes(run).contains("fixed-frequency"), run.remarks()::toString);
        assertEquals(25, run.remarks().get(0).value(), 1.5);
    }

    @Test
    void bowIsTakenOffAProbe() {
        RunModel straight = STILL.withMode(10e-6, 25, 0.05, 30);
        RunModel bowed = straight.withRunout(new OrderVector(20e-6, 1));
        PointRun run = PointRun.of("A", bowed.recording(Quantity.DISPLACEMENT, RATE), SWEEP);
        assertEquals(20e-6, run.slowRoll().orElseThrow().amplitude(), 0.8e-6);
        assertEquals(1, run.slowRoll().orElseThrow().lagRadians(), 0.04);
        SpeedResonance one = once(run).get(0);
        assertEquals(10, one.amplification().orElseThrow(), one.amplificationUncertainty().orElseThrow());
        assertEquals(1500, one.speed().revolutionsPerMinute(), 15);
        assertTrue(run.remarks().isEmpty());
    }

    @Test
    void slowRollThatIsNotReachedIsSaid() {
        SpeedProfile high = profile(3000, 1000, 60);
        PointRun run = PointRun.of("A", RunModel.of(high).withMode(10e-6, 25, 0.05, 30)
                .recording(Quantity.DISPLACEMENT, RATE), sweep(high));
        assertTrue(run.slowRoll().isEmpty());
        assertEquals(List.of("no-slow-roll"), codes(run));
    }

    @Test
    void twoResonancesApartAreTwoAndCloseOnesAreDoubted() {
        SpeedProfile slow = profile(3000, 300, 300);
        RunModel model = RunModel.of(slow);
        List<SpeedResonance> apart = once(PointRun.of("A", model.withMode(10e-6, 18, 0.03, 0)
                .withMode(10e-6, 35, 0.03, 40)
                .recording(Quantity.DISPLACEMENT, RATE), sweep(slow)));
        assertEquals(2, apart.size());
        assertEquals(18, apart.get(0).speed().hertz(), 0.18);
        assertEquals(35, apart.get(1).speed().hertz(), 0.35);
        List<SpeedResonance> close = once(PointRun.of("A", model.withMode(10e-6, 24, 0.03, 0)
                .withMode(10e-6, 26, 0.03, 180)
                .recording(Quantity.DISPLACEMENT, RATE), sweep(slow)));
        assertTrue(close.stream().noneMatch(SpeedResonance::isSingle), close::toString);
    }

    @Test
    void ordersThatCannotBeToldApartAreLeftOut() {
        Waveform wave = STILL.withMode(10e-6, 25, 0.05, 30).recording(Quantity.DISPLACEMENT, RATE);
        PointRun run = PointRun.of("A", wave, SWEEP, 1, 1.2, 3);
        assertEquals(List.of(1.0, 3.0), run.orders().stream().map(FollowedOrder::order).toList());
        assertEquals(List.of("orders-too-near"), codes(run));
        assertEquals(List.of("order-too-high"), codes(PointRun.of("A", wave, SWEEP, 1, 20)).subList(0, 1));
        assertThrows(IllegalArgumentException.class, () -> PointRun.of("A", wave, SWEEP, 0.1));
    }

    @Test
    void obstaclesAreAskedFirst() {
        Waveform wave = STILL.recording(Quantity.DISPLACEMENT, RATE);
        assertTrue(PointRun.obstacle(wave, SWEEP).isEmpty());
        Waveform cut = wave.part(0, 20_000);
        assertEquals("the recording, 0 to 10.0 s, doesn't hold the coast-down from 0.341 to 59.2 s",
                PointRun.obstacle(cut, SWEEP).orElseThrow());
        assertThrows(IllegalArgumentException.class, () -> PointRun.of("A", cut, SWEEP));
        assertTrue(PointRun.obstacle(STILL.tachometer(RATE), SWEEP).orElseThrow().contains("no motion"));
        assertTrue(PointRun.obstacle(STILL.recording(Quantity.VELOCITY, 200), SWEEP).orElseThrow()
                .contains("4.0 samples a turn"));
    }

    /** The height of the first order in the cascade is that of the closed form, in velocity rms. */
    @Test
    void cascadeReadsTheFirstOrder() {
        RunModel model = STILL.withMode(10e-6, 90, 0.05, 30);
        Cascade cascade = PointRun.of("A", model.recording(Quantity.ACCELERATION, RATE), SWEEP).cascade().orElseThrow();
        for (int s = 5; s < cascade.spectra() - 1; s++) {
            RotationSpeed speed = cascade.speed(s);
            double power = 0;
            double[] rms = cascade.rms(s);
            for (int k = 0; k < rms.length; k++) {
                power += Math.abs(k * cascade.spacingHertz() - speed.hertz()) < 6 ? rms[k] * rms[k] / 1.5 : 0;
            }
            double exact = model.displacementAt(speed).amplitude() * speed.radiansPerSecond() / Math.sqrt(2);
            assertEquals(exact, Math.sqrt(power), 0.06 * exact, cascade + " at " + speed);
        }
        assertFalse(cascade.equals(PointRun.of("A", model.recording(Quantity.VELOCITY, RATE), SWEEP).cascade()
                .orElseThrow()));
    }

    @Test
    void separationCountsFromTheService() {
        SpeedResonance one = once(PointRun.of("A", STILL.withMode(10e-6, 25, 0.05, 30).recording(Quantity.DISPLACEMENT,
                RATE), SWEEP)).get(0);
        assertEquals(25, one.separationPercent(RotationSpeed.ofRevolutionsPerMinute(2000)), 0.8);
        assertEquals(25, one.hertz(), 0.25);
        assertTrue(one.toString().startsWith("1x at 150"), one::toString);
    }
}
