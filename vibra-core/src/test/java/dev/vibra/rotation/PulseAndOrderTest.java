package dev.vibra.rotation;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.window.Window;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Pulses, orders and orbits by hand values. */
class PulseAndOrderTest {
    private static void assertRefused(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }

    /** Times of pulses after given intervals. */
    private static PulseTrain after(double... intervals) {
        double[] times = new double[intervals.length + 1];
        for (int i = 0; i < intervals.length; i++) {
            times[i + 1] = times[i] + intervals[i];
        }
        return PulseTrain.of(times);
    }

    /**
     * An interval is held against the median of eleven: itself, five before and five after. Where the speed changes at
     * once, those at the change are of the newer speed by six to five or of the older one by six to five, and none is a
     * gap.
     */
    @Test
    void aSuddenChangeOfSpeedIsNoGap() {
        double[] slower = new double[22];
        Arrays.fill(slower, 0, 11, 1);
        Arrays.fill(slower, 11, 22, 1.7);
        assertEquals(List.of(), after(slower).gaps());
        assertEquals(List.of(), after(slower).doubled());
        double[] faster = new double[22];
        Arrays.fill(faster, 0, 11, 1);
        Arrays.fill(faster, 11, 22, 0.45);
        assertEquals(List.of(), after(faster).doubled());
        // The last slow interval still sees six slow ones; with five to six it would be 1/0.45 of the median.
        assertEquals(List.of(), after(faster).gaps());
        double[] burst = new double[22];
        Arrays.fill(burst, 1);
        Arrays.fill(burst, 9, 14, 1.7); // five of eleven at most: gaps, all of them
        assertEquals(List.of(9, 10, 11, 12, 13), after(burst).gaps());
        Arrays.fill(burst, 9, 15, 1.7); // six: the middle two see the six and no gap
        assertEquals(List.of(), after(burst).gaps().stream().filter(i -> i == 11 || i == 12).toList());
    }

    /** At the ends the eleven are the first and the last; with fewer intervals, all. */
    @Test
    void endsAreHeldAgainstTheElevenBesideThem() {
        double[] ends = new double[22];
        Arrays.fill(ends, 1);
        Arrays.fill(ends, 0, 5, 1.7);
        Arrays.fill(ends, 17, 22, 1.7);
        assertEquals(List.of(0, 1, 2, 3, 4, 17, 18, 19, 20, 21), after(ends).gaps());
        Arrays.fill(ends, 0, 6, 1.7);
        Arrays.fill(ends, 16, 22, 1.7);
        assertEquals(List.of(), after(ends).gaps().stream().filter(i -> i < 5 || i > 16).toList());
        assertEquals(List.of(2), after(1, 1, 2).gaps());
        assertEquals(List.of(), after(1, 2).gaps()); // median 1.5
        assertEquals(List.of(), after(1).gaps());
        assertEquals(List.of(2), after(1, 0.4, 1).doubled());
        assertEquals(0, PulseTrain.of().doubled().size());
        assertEquals("no pulses", PulseTrain.of().toString());
        assertNotEquals(PulseTrain.of(1), "pulse");
    }

    /** Thirty even pulses, ten a second. */
    private static double[] even() {
        double[] times = new double[30];
        for (int i = 0; i < times.length; i++) {
            times[i] = 5 + 0.1 * i;
        }
        return times;
    }

    private static double[] without(double[] times, int first, int count) {
        double[] rest = new double[times.length - count];
        System.arraycopy(times, 0, rest, 0, first);
        System.arraycopy(times, first + count, rest, first, rest.length - first);
        return rest;
    }

    private static double[] with(double[] times, int index, double time) {
        double[] more = new double[times.length + 1];
        System.arraycopy(times, 0, more, 0, index);
        more[index] = time;
        System.arraycopy(times, index, more, index + 1, times.length - index);
        return more;
    }

    @Test
    void threeLostPulsesInARowAreFilled() {
        PulseTrain train = PulseTrain.of(without(even(), 12, 3));
        assertEquals(List.of(11), train.gaps());
        assertEquals(List.of(), train.doubled());
        assertArrayEquals(even(), train.repaired().seconds(), 1e-12);
    }

    @Test
    void faultsAtBothEndsAreMended() {
        PulseTrain gapFirst = PulseTrain.of(without(even(), 1, 1));
        assertEquals(List.of(0), gapFirst.gaps());
        assertArrayEquals(even(), gapFirst.repaired().seconds(), 1e-12);
        PulseTrain gapLast = PulseTrain.of(without(even(), 28, 1));
        assertEquals(List.of(27), gapLast.gaps());
        assertArrayEquals(even(), gapLast.repaired().seconds(), 1e-12);
        PulseTrain doubledFirst = PulseTrain.of(with(even(), 1, 5.03));
        assertEquals(List.of(1), doubledFirst.doubled());
        assertArrayEquals(even(), doubledFirst.repaired().seconds(), 1e-12);
        PulseTrain tripled = PulseTrain.of(with(with(even(), 6, 5.52), 7, 5.54));
        assertEquals(List.of(6, 7), tripled.doubled());
        assertArrayEquals(even(), tripled.repaired().seconds(), 1e-12);
    }

    /** The median is that of the eleven intervals around: a train that changes gear keeps both halves. */
    @Test
    void onlyTheNeighboursJudgeAnInterval() {
        double[] times = new double[60];
        for (int i = 1; i < 60; i++) {
            times[i] = times[i - 1] + (i < 30 ? 0.1 : 0.01);
        }
        PulseTrain train = PulseTrain.of(times);
        assertTrue(train.gaps().stream().allMatch(i -> i > 22 && i < 36), "" + train.gaps());
        assertTrue(train.doubled().stream().allMatch(i -> i > 22 && i < 36), "" + train.doubled());
        PulseTrain empty = PulseTrain.of();
        assertEquals(List.of(), empty.doubled());
        assertEquals(List.of(), empty.gaps());
        assertEquals(0, empty.repaired().size());
    }

    @Test
    void trainsCompareByTheirTimes() {
        assertEquals(PulseTrain.of(1, 2), PulseTrain.of(1, 2));
        assertEquals(PulseTrain.of(1, 2).hashCode(), PulseTrain.of(1, 2).hashCode());
        assertNotEquals(PulseTrain.of(1, 2), PulseTrain.of(1, 3));
        assertNotEquals(PulseTrain.of(1, 2).hashCode(), PulseTrain.of(1, 3).hashCode());
        assertFalse(PulseTrain.of(1).toString().isEmpty());
        assertTrue(PulseTrain.of(even()).toString().startsWith("30 pulses"), PulseTrain.of(even()).toString());
        assertRefused("seconds[0] must be finite: NaN", () -> PulseTrain.of(Double.NaN));
        assertRefused("seconds[1] must be after the one before, 2.0 s: 2.0", () -> PulseTrain.of(2, 2));
    }

    @Test
    void markSpacingNeedsThreeRevolutions() {
        double[] times = {0, 0.6, 1, 1.6, 2, 2.6, 3};
        assertArrayEquals(new double[] {0.6, 0.4}, PulseTrain.of(times).markSpacing(2), 1e-12);
        assertRefused("pulses must cover at least 3 revolutions: 6 pulses, 2 a revolution",
                () -> PulseTrain.of(without(times, 6, 1)).markSpacing(2));
    }

    /** A triangle from -1 to 3: level 1, hysteresis a quarter of the swing; crossings by the straight line. */
    @Test
    void triggerCrossesWhereTheLineDoes() {
        double[] volts = {-1, 0, 1.5, 3, 1, -1, 0, 1, 3, 0.5, 3, -1, 3};
        Waveform signal = Waveform.ofSi(Quantity.VOLTAGE, 10, volts).startingAt(2);
        Tachometer rising = new Tachometer(1, 1, true);
        assertArrayEquals(new double[] {2 + (1 + 1 / 1.5) / 10, 2.7, 2 + 11.5 / 10}, rising.pulses(signal).seconds(),
                1e-12);
        Tachometer falling = new Tachometer(1, 1, false);
        assertArrayEquals(new double[] {2.4, 2 + (8 + 2 / 2.5) / 10, 2 + 10.5 / 10},
                falling.pulses(signal).seconds(), 1e-12);
        assertEquals("rising through 1, hysteresis 1", rising.toString());
        assertEquals("falling through 1, hysteresis 1", falling.toString());
    }

    @Test
    void triggerFitsTheSignal() {
        double[] volts = {-1, -1, -1, 7, 7, 7};
        Tachometer fitting = Tachometer.fitting(Waveform.ofSi(Quantity.VOLTAGE, 10, volts));
        assertEquals(3, fitting.level(), 1e-12);
        assertEquals(2, fitting.hysteresis(), 1e-12);
        assertTrue(fitting.rising());
        double[] needle = new double[5000];
        needle[1700] = 4;
        needle[3100] = 4;
        Waveform thin = Waveform.ofSi(Quantity.VOLTAGE, 10, needle);
        assertEquals(2, Tachometer.fitting(thin).level(), 1e-12);
        assertEquals(1, Tachometer.fitting(thin).hysteresis(), 1e-12);
        assertEquals(2, Tachometer.fitting(thin).pulses(thin).size());
        assertRefused("signal of a tachometer must not be constant: 5.0",
                () -> Tachometer.fitting(Waveform.ofSi(Quantity.VOLTAGE, 10, 5, 5, 5)));
    }

    /** A circle of radius 3 about (40, -7), four turns a block: one forward line of 3, and no trace of the offset. */
    @Test
    void fullSpectrumTakesTheMeansOut() {
        double[] x = new double[500];
        double[] y = new double[500];
        for (int i = 0; i < 500; i++) {
            x[i] = 40 + 3 * Math.cos(2 * Math.PI * 4 * i / 100);
            y[i] = -7 + 3 * Math.sin(2 * Math.PI * 4 * i / 100);
        }
        FullSpectrum spectrum = FullSpectrum.of(Waveform.ofSi(Quantity.DISPLACEMENT, 1000, x),
                Waveform.ofSi(Quantity.DISPLACEMENT, 1000, y), SpectrumSettings.withDefaults().withResolution(10));
        assertEquals(49, spectrum.highestLine());
        assertEquals(-40, spectrum.frequencyHertz(-4), 1e-12);
        assertEquals(3, spectrum.radius(4), 1e-12);
        assertEquals(1.5, spectrum.radius(5), 1e-12); // Hann
        assertEquals(0, spectrum.radius(-4), 1e-12);
        assertEquals(0, spectrum.radius(0), 1e-12);
        assertEquals(0, spectrum.radius(-1), 1e-12);
        assertEquals("displacement full spectrum, 49 lines on each side", spectrum.toString());
        assertRefused("line must be from -49 to 49: 50", () -> spectrum.radius(50));
    }

    /** Half sizes: two blocks of different circles average by power, √((9 + 1)/2). */
    @Test
    void fullSpectrumAveragesByPower() {
        double[] x = new double[200];
        double[] y = new double[200];
        for (int i = 0; i < 200; i++) {
            double radius = i < 100 ? 3 : 1;
            x[i] = radius * Math.cos(2 * Math.PI * 4 * i / 100);
            y[i] = -radius * Math.sin(2 * Math.PI * 4 * i / 100);
        }
        FullSpectrum spectrum = FullSpectrum.of(Waveform.ofSi(Quantity.DISPLACEMENT, 1000, x),
                Waveform.ofSi(Quantity.DISPLACEMENT, 1000, y),
                SpectrumSettings.withDefaults().withResolution(10).withOverlap(0));
        assertEquals(Math.sqrt(5), spectrum.radius(-4), 1e-12);
        assertEquals(0, spectrum.radius(4), 1e-12);
    }

    /** Ten turns a second over three seconds of pulses; the recording holds 0.35 s to 2.65 s of them. */
    private static AngularWaveform angular() {
        double[] pulses = new double[31];
        for (int i = 0; i < pulses.length; i++) {
            pulses[i] = 0.1 * i;
        }
        double[] x = new double[2301];
        for (int i = 0; i < x.length; i++) {
            double turned = 10 * (0.35 + i / 1000.0);
            x[i] = 2 * Math.cos(2 * Math.PI * 2.5 * turned - 0.7) + Math.cos(2 * Math.PI * 3 * turned - 5);
        }
        return AngularWaveform.of(Waveform.ofSi(Quantity.VELOCITY, 1000, x).startingAt(0.35),
                ShaftAngle.of(PulseTrain.of(pulses), 1), 16);
    }

    @Test
    void angularWaveformKeepsWholeRevolutionsInsideBoth() {
        AngularWaveform wave = angular();
        assertEquals(22, wave.revolutions()); // from the 4th to the 26th mark
        assertEquals(352, wave.length());
        assertEquals(4, wave.firstRevolution());
        assertEquals(Quantity.VELOCITY, wave.quantity());
        assertEquals("22 revolutions of 16 samples, velocity", wave.toString());
        for (int i = 40; i < 300; i++) {
            double turned = 4 + i / 16.0;
            double expected = 2 * Math.cos(2 * Math.PI * 2.5 * turned - 0.7) + Math.cos(2 * Math.PI * 3 * turned - 5);
            assertEquals(expected, wave.at(i), 0.01);
        }
    }

    /** The phase of a broken order counts from the first mark of the pulses, not from that of a block. */
    @Test
    void orderTrackKeepsThePhaseOfABrokenOrder() {
        OrderTrack track = OrderTrack.of(angular(), 2.5, 8);
        for (SpeedPoint point : track.points()) {
            assertEquals(2, point.vector().amplitude(), 0.02);
            assertEquals(0.7, point.vector().lagRadians(), 0.02);
            assertEquals(10, point.speed().hertz(), 1e-6);
        }
        assertEquals(4, track.points().size());
        assertEquals(0.8, track.points().get(0).seconds(), 1e-9);
        assertEquals("order 2.5 over 4 points", track.toString());
        assertRefused("order must be above 0 and below 8.0: 8.0", () -> OrderTrack.of(angular(), 8, 8));
        assertRefused("order must be above 0 and below 8.0: 0.0", () -> OrderTrack.of(angular(), 0, 8));
    }

    @Test
    void averageTellsItsOrdersAndRefusesOthers() {
        SynchronousAverage average = SynchronousAverage.of(angular());
        assertEquals(1, average.vector(3).amplitude(), 0.02);
        assertEquals(5, average.vector(3).lagRadians(), 0.05);
        assertEquals(16, average.revolution().length);
        assertEquals(1, Math.abs(average.revolution()[0] / Math.cos(5)), 0.1);
        assertRefused("order must be within 1.0 to 7.0: 8.0", () -> average.vector(8));
        assertThrows(IllegalArgumentException.class, () -> average.difference(9));
        double[] rest = average.difference(3);
        for (double value : rest) {
            assertEquals(0, value, 0.05);
        }
        AngularWaveform residual = average.residual();
        assertEquals(angular().at(20) - average.revolution()[4], residual.at(20), 1e-12);
        assertEquals(4, residual.firstRevolution());
        assertFalse(average.toString().isEmpty());
    }

    @Test
    void orderSpectrumHasItsText() {
        OrderSpectrum spectrum = OrderSpectrum.of(angular(), 8, Window.hann());
        assertEquals(0.125, spectrum.order(1), 1e-12);
        assertEquals(2 / Math.sqrt(2), spectrum.level(2.5).si(), 0.02);
        assertThrows(IllegalArgumentException.class, () -> spectrum.level(8.01));
        assertFalse(spectrum.toString().isEmpty());
    }

    /**
     * x = 3·cos θ, y = sin θ: forward 2, backward 1, long axis along x. Equal and opposite circles turn neither way.
     */
    @Test
    void orbitByHand() {
        Orbit flat = Orbit.of(new OrderVector(3, 0), new OrderVector(1, Math.PI / 2));
        assertEquals(2, flat.forward(), 1e-15);
        assertEquals(1, flat.backward(), 1e-15);
        assertEquals("3.00 by 1.00, forward, inclined 0\u00b0", new Orbit(2, 1, 0).toString());
        assertEquals("3.00 by 1.00, backward, inclined 90.0\u00b0", new Orbit(1, 2, Math.PI / 2).toString());
        assertFalse(new Orbit(1, 1, 0).isForward());
        Orbit diagonal = Orbit.of(new OrderVector(1, 0.3), new OrderVector(1, 0.3));
        assertEquals(Math.PI / 4, diagonal.inclinationRadians(), 1e-12);
        Orbit down = Orbit.of(new OrderVector(1, 0.3), new OrderVector(1, 0.3 + Math.PI));
        assertEquals(3 * Math.PI / 4, down.inclinationRadians(), 1e-12);
        assertEquals("1.50 at 180.0\u00b0 lag", new OrderVector(1.5, Math.PI).toString());
    }
}
