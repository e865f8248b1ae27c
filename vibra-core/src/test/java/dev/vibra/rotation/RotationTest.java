package dev.vibra.rotation;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.window.Window;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RotationTest {
    private static final double RATE = 10_000;

    private static SpeedProfile profile(double from, double to, double seconds) {
        return new SpeedProfile(RotationSpeed.ofHertz(from), RotationSpeed.ofHertz(to), seconds);
    }

    private static ShaftAngle angle(SpeedProfile profile) {
        Waveform tacho = profile.tachometer(RATE, 1);
        return ShaftAngle.of(Tachometer.fitting(tacho).pulses(tacho), 1);
    }

    /** Truth: the profile's own angle, {@code f0·t + (f1 - f0)·t²/(2T)}. */
    @ParameterizedTest
    @CsvSource({"25, 25", "10, 40", "50, 20"})
    void pulsesGiveSpeedAndAngle(double from, double to) {
        SpeedProfile profile = profile(from, to, 4);
        ShaftAngle angle = angle(profile);
        // A recording that begins on a mark shows its first pulse a turn later.
        for (double r = 1.5; r < angle.revolutions() - 1; r += 7.3) {
            double time = angle.secondsAt(r);
            assertEquals(r + 1, profile.revolutionsAt(time), 2e-3, "revolution " + r);
            assertEquals(1, angle.speedAt(r).hertz() / profile.speedAt(time).hertz(), 3e-3);
        }
    }

    @Test
    void hysteresisKeepsNoiseFromCountingTwice() {
        Waveform tacho = profile(25, 25, 2).tachometer(RATE, 1);
        Waveform noisy = Synthesis.silence(Quantity.VOLTAGE, RATE, tacho.length()).noise(0.04, 1).plus(tacho)
                .waveform();
        assertEquals(49, Tachometer.fitting(noisy).pulses(noisy).size());
        assertTrue(new Tachometer(0.02, 0.001, true).pulses(noisy).size() > 60);
        Waveform falling = new SpeedProfile(RotationSpeed.ofHertz(25), RotationSpeed.ofHertz(25), 2)
                .tachometer(RATE, 1);
        PulseTrain ends = new Tachometer(0.5, 0.2, false).pulses(falling);
        assertEquals(0.004, ends.seconds()[0], 1e-4); // a tenth of a turn on
    }

    @Test
    void missingAndDoubledPulsesAreFoundAndMended() {
        double[] times = new double[40];
        for (int i = 0; i < 40; i++) {
            times[i] = 0.04 * i + 0.0001 * Math.sin(i);
        }
        PulseTrain good = PulseTrain.of(times);
        assertEquals(List.of(), good.doubled());
        assertEquals(List.of(), good.gaps());
        assertEquals(good, good.repaired());
        double[] broken = new double[40];
        System.arraycopy(times, 0, broken, 0, 10);
        broken[10] = times[9] + 0.006; // a false one
        System.arraycopy(times, 10, broken, 11, 10);
        System.arraycopy(times, 21, broken, 21, 19); // one left out
        PulseTrain train = PulseTrain.of(broken);
        assertEquals(List.of(10), train.doubled());
        assertEquals(List.of(20), train.gaps());
        double[] mended = train.repaired().seconds();
        assertEquals(40, mended.length);
        assertArrayEquals(times, mended, 0.0003);
    }

    @Test
    void unevenMarksAreCalibratedOut() {
        double[] marks = {0.27, 0.23, 0.30, 0.20};
        SpeedProfile profile = profile(20, 20, 5);
        Waveform tacho = profile.tachometer(50_000, marks);
        PulseTrain pulses = Tachometer.fitting(tacho).pulses(tacho);
        double[] spacing = pulses.markSpacing(4);
        assertArrayEquals(new double[] {0.23, 0.30, 0.20, 0.27}, spacing, 1e-4); // the first pulse is the second mark
        ShaftAngle even = ShaftAngle.of(pulses, 4);
        ShaftAngle calibrated = ShaftAngle.of(pulses, spacing);
        double worstEven = 0;
        double worst = 0;
        for (double r = 1; r < 90; r += 0.37) {
            worstEven = Math.max(worstEven, Math.abs(even.speedAt(r).hertz() - 20));
            worst = Math.max(worst, Math.abs(calibrated.speedAt(r).hertz() - 20));
        }
        assertTrue(worstEven > 2, "uneven " + worstEven);
        assertTrue(worst < 0.1, "calibrated " + worst);
    }

    /** A tone of order 3.5 over a run-up smears in frequency and stays one line in orders. */
    @Test
    void orderTrackingKeepsAnOrderSharp() {
        SpeedProfile profile = profile(15, 45, 6);
        double[] x = new double[60_000];
        for (int i = 0; i < x.length; i++) {
            x[i] = 2 * Math.cos(2 * Math.PI * 3.5 * profile.revolutionsAt(i / RATE)) + Math.cos(2 * Math.PI
                    * 1 * profile.revolutionsAt(i / RATE) - 1);
        }
        AngularWaveform angular = AngularWaveform.of(Waveform.ofSi(Quantity.ACCELERATION, RATE, x), angle(profile), 32);
        OrderSpectrum spectrum = OrderSpectrum.of(angular, 20, Window.flatTop());
        assertEquals(2, spectrum.level(3.5).si() * Math.sqrt(2), 0.01);
        assertEquals(1, spectrum.level(1).si() * Math.sqrt(2), 0.01);
        assertEquals(0, spectrum.level(2.25).si(), 0.01);
        assertEquals(16, spectrum.order(spectrum.lines() - 1), 1e-9);
        assertEquals(spectrum.level(1).si(), spectrum.amplitude(20, Detector.RMS), 1e-12);
        OrderTrack track = OrderTrack.of(angular, 3.5, 4);
        for (SpeedPoint point : track.points()) {
            assertEquals(2, point.vector().amplitude(), 0.02);
            // The pulses begin a turn after the profile: order 3.5 has turned by half a turn then.
            assertEquals(0, Math.IEEEremainder(point.vector().lagRadians() + 3.5 * 2 * Math.PI, 2 * Math.PI), 0.03);
        }
    }

    /**
     * Closed form of a rotor on springs (S. S. Rao): amplitude and phase over speed, 90 degrees at the natural
     * frequency.
     */
    @Test
    void runUpOfAnUnbalancedRotorGivesBode() {
        SpeedProfile profile = profile(10, 60, 60);
        double natural = 30;
        double damping = 0.08;
        Waveform metres = profile.unbalanceResponse(RATE, 1e-5, natural, damping);
        AngularWaveform angular = AngularWaveform.of(metres, angle(profile), 16);
        OrderTrack track = OrderTrack.of(angular, 1, 4);
        int checked = 0;
        for (SpeedPoint point : track.points()) {
            double r = point.speed().hertz() / natural;
            double amplitude = 1e-5 * r * r / Math.hypot(1 - r * r, 2 * damping * r);
            double lag = Math.atan2(2 * damping * r, 1 - r * r);
            assertEquals(1, point.vector().amplitude() / amplitude, 0.02, "at " + point.speed());
            assertEquals(0, Math.IEEEremainder(point.vector().lagRadians() - lag, 2 * Math.PI), 0.03,
                    "at " + point.speed());
            checked++;
        }
        assertTrue(checked > 500);
        // The peak lies at fn/√(1 - 2ζ²).
        assertEquals(natural / Math.sqrt(1 - 2 * damping * damping), track.largest().speed().hertz(), 0.3);
        SpeedPoint critical = track.points().stream()
                .min(java.util.Comparator.comparingDouble(p -> Math.abs(p.speed().hertz() - natural))).orElseThrow();
        assertEquals(90, critical.vector().lagDegrees(), 3);
    }

    @Test
    void synchronousAverageKeepsWhatRepeats() {
        SpeedProfile profile = profile(25, 25.5, 8);
        double[] x = new double[80_000];
        java.util.Random random = new java.util.Random(1);
        for (int i = 0; i < x.length; i++) {
            double turns = profile.revolutionsAt(i / RATE);
            x[i] = Math.cos(2 * Math.PI * 23 * turns) + 0.3 * Math.cos(2 * Math.PI * 2 * turns - 0.5)
                    + random.nextGaussian();
        }
        AngularWaveform angular = AngularWaveform.of(Waveform.ofSi(Quantity.ACCELERATION, RATE, x), angle(profile),
                128);
        SynchronousAverage average = SynchronousAverage.of(angular);
        assertEquals(1, average.vector(23).amplitude(), 0.1);
        assertEquals(0.3, average.vector(2).amplitude(), 0.1);
        assertEquals(0.5, average.vector(2).lagRadians(), 0.3);
        double[] difference = average.difference(23);
        assertEquals(0, Arrays.stream(difference).average().orElseThrow(), 0.1);
        double rest = Math.sqrt(Arrays.stream(difference).map(v -> v * v).average().orElseThrow());
        assertEquals(0.3 / Math.sqrt(2), rest, 0.08);
        double residual = Math.sqrt(Arrays.stream(average.residual().samples()).map(v -> v * v).average()
                .orElseThrow());
        assertTrue(residual > 0.5 && residual < 1.05, "residual " + residual);
        // Of the noise only what lies below half the angular rate, 64 orders of 25 Hz, is left: a third.
        assertEquals(0.545 / (0.545 + 0.32), average.repeatingShare(), 0.03);
    }

    /** A circle forward, a circle backward, a line at 30 degrees, and an ellipse of 3 by 1. */
    @Test
    void orbitsAreTakenApartIntoTwoCircles() {
        double quarter = Math.PI / 2;
        Orbit forward = Orbit.of(new OrderVector(2, 0.3), new OrderVector(2, 0.3 + quarter));
        assertEquals(2, forward.forward(), 1e-12);
        assertEquals(0, forward.backward(), 1e-12);
        assertTrue(forward.isForward());
        Orbit backward = Orbit.of(new OrderVector(2, 0.3), new OrderVector(2, 0.3 - quarter));
        assertEquals(2, backward.backward(), 1e-12);
        assertFalse(backward.isForward());
        Orbit line = Orbit.of(new OrderVector(Math.cos(Math.PI / 6), 1), new OrderVector(Math.sin(Math.PI / 6), 1));
        assertEquals(1, line.longHalfAxis(), 1e-12);
        assertEquals(0, line.shortHalfAxis(), 1e-12);
        assertEquals(30, Math.toDegrees(line.inclinationRadians()), 1e-9);
        Orbit ellipse = Orbit.of(new OrderVector(3, 0), new OrderVector(1, quarter));
        assertEquals(3, ellipse.longHalfAxis(), 1e-12);
        assertEquals(1, ellipse.shortHalfAxis(), 1e-12);
        assertEquals(0, Math.IEEEremainder(ellipse.inclinationRadians(), Math.PI), 1e-9);
    }

    @Test
    void whatNoShaftCanDoIsRefused() {
        assertRefused("amplitude must be finite and >= 0: NaN", () -> new OrderVector(Double.NaN, 0));
        assertRefused("lagRadians must be finite: Infinity", () -> new OrderVector(1, Double.POSITIVE_INFINITY));
        assertEquals(2 * Math.PI - 1, new OrderVector(1, 8 * Math.PI - 1).lagRadians(), 1e-12);
        assertRefused("inclinationRadians must be within 0.0 to 3.141592653589793 rad: 4.0", () -> new Orbit(1, 1, 4));
        assertRefused("seconds must be finite: NaN", () ->
                new SpeedPoint(Double.NaN, RotationSpeed.ofHertz(1), new OrderVector(1, 0)));
        assertRefused("order must be finite and > 0: -1.0", () -> new OrderTrack(-1, List.of()));
        assertRefused("number of points must be at least 1: 0", () -> new OrderTrack(1, List.of()));
        assertRefused("x must be finite: NaN", () -> new ShaftCentreLine.Point(0, Double.NaN, 0));
        assertEquals("points[0]", assertThrows(NullPointerException.class, () ->
                new OrderTrack(1, Collections.singletonList(null))).getMessage());
    }

    @Test
    void fullSpectrumTellsTheDirections() {
        int n = 8192;
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            double a = 2 * Math.PI * 32 * i / 1024.0;
            double b = 2 * Math.PI * 64 * i / 1024.0;
            x[i] = 3 * Math.cos(a) + 1 * Math.cos(b);
            y[i] = 3 * Math.sin(a) - 1 * Math.sin(b);
        }
        FullSpectrum full = FullSpectrum.of(Waveform.ofSi(Quantity.DISPLACEMENT, 1024, x),
                Waveform.ofSi(Quantity.DISPLACEMENT, 1024, y), SpectrumSettings.withDefaults());
        assertEquals(3, full.radius(32), 1e-9);
        assertEquals(0, full.radius(-32), 1e-9);
        assertEquals(1, full.radius(-64), 1e-9);
        assertEquals(0, full.radius(64), 1e-9);
        assertEquals(-64, full.frequencyHertz(-64), 1e-9);
    }

    @Test
    void centreLineFollowsTheMeanGaps() {
        double[] x = new double[1000];
        double[] y = new double[1000];
        for (int i = 0; i < 1000; i++) {
            x[i] = 10 + (i < 500 ? 0 : 2) + Math.sin(i);
            y[i] = -8 + (i < 500 ? 0 : 1) + Math.cos(i);
        }
        ShaftCentreLine line = ShaftCentreLine.of(Waveform.ofSi(Quantity.VOLTAGE, 100, x),
                Waveform.ofSi(Quantity.VOLTAGE, 100, y), 10, -8, 2);
        assertEquals(0, line.points().get(0).x(), 0.01);
        assertEquals(2, line.points().get(1).x(), 0.01);
        assertEquals(1, line.points().get(1).y(), 0.01);
        assertEquals(7.5, line.points().get(1).seconds(), 1e-9);
    }

    @Test
    void badArgumentsAreNamed() {
        assertThrows(IllegalArgumentException.class,
                () -> Tachometer.fitting(Waveform.ofSi(Quantity.VOLTAGE, 10, 1, 1)));
        assertThrows(IllegalArgumentException.class, () -> new Tachometer(0, 0, true));
        assertThrows(IllegalArgumentException.class, () -> PulseTrain.of(1, 1));
        assertThrows(IllegalArgumentException.class, () -> ShaftAngle.of(PulseTrain.of(1, 2, 3), 1));
        assertThrows(IllegalArgumentException.class,
                () -> ShaftAngle.of(PulseTrain.of(1, 2, 3, 4), new double[] {0.5, 0.4}));
        assertThrows(IllegalArgumentException.class, () -> PulseTrain.of(1, 2, 3).markSpacing(1));
        ShaftAngle angle = ShaftAngle.of(PulseTrain.of(1, 2, 3, 4), 1);
        assertThrows(IllegalArgumentException.class, () -> angle.secondsAt(3.1));
        assertThrows(IllegalArgumentException.class,
                () -> AngularWaveform.of(Waveform.ofSi(Quantity.VELOCITY, 10, new double[5]), angle, 8));
        assertEquals("3.000 revolutions at 60 r/min (1.000 Hz)", angle.toString());
    }

    private static void assertRefused(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
