package dev.vibra.speedrun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.SpeedProfile;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Speeds are checked against the closed form of an evenly changing speed. */
class SpeedSweepTest {
    private static final double RATE = 10_000;

    private static SpeedProfile ramp(double from, double to, double seconds) {
        return new SpeedProfile(RotationSpeed.ofRevolutionsPerMinute(from), RotationSpeed.ofRevolutionsPerMinute(to),
                seconds);
    }

    private static SpeedSweep sweep(Waveform tachometer) {
        return SpeedSweep.read(tachometer, 1).sweep().orElseThrow();
    }

    /** Each part begins where the one before ends. */
    private static Waveform joined(SpeedProfile... parts) {
        List<Double> all = new ArrayList<>();
        double turned = 0;
        for (SpeedProfile part : parts) {
            for (int i = 0; i < part.seconds() * RATE; i++) {
                double angle = turned + part.revolutionsAt(i / RATE);
                all.add(angle - Math.floor(angle) < 0.1 ? 1.0 : 0.0);
            }
            turned += part.revolutionsAt(part.seconds());
        }
        return Waveform.ofSi(Quantity.VOLTAGE, RATE, all.stream().mapToDouble(Double::doubleValue).toArray());
    }

    @Test
    void readsSpeedAndDirectionOfAnEvenRamp() {
        for (double[] ends : new double[][] {{600, 3000}, {3000, 600}}) {
            SpeedProfile profile = ramp(ends[0], ends[1], 30);
            SpeedSweep sweep = sweep(profile.tachometer(RATE, 1));
            assertEquals(ends[1] > ends[0] ? RunDirection.RUN_UP : RunDirection.COAST_DOWN, sweep.direction());
            assertEquals(600, sweep.lowest().revolutionsPerMinute(), 35);
            assertEquals(3000, sweep.highest().revolutionsPerMinute(), 25);
            assertEquals(40.0 / 30, sweep.meanRateHertzPerSecond(), 0.005);
            assertEquals(30, sweep.speedAt(sweep.secondsAt(RotationSpeed.ofHertz(30))).hertz(), 1e-9);
            assertEquals(profile.speedAt(15).hertz(), sweep.speedAt(15).hertz(), 0.05);
            assertTrue(sweep.remarks().isEmpty());
        }
    }

    @Test
    void steadyRunningAtTheEndsIsNoPartOfTheSweep() {
        SpeedSweep sweep = sweep(joined(ramp(3000, 3000, 10), ramp(3000, 600, 30), ramp(600, 600, 10)));
        assertEquals(10, sweep.beginSeconds(), 0.5);
        assertEquals(40, sweep.endSeconds(), 0.8);
        assertTrue(sweep.remarks().isEmpty());
    }

    @Test
    void theStretchBetweenTheExtremesIsTakenAndSaid() {
        SpeedSweep sweep = sweep(joined(ramp(600, 3000, 20), ramp(3000, 1200, 20)));
        assertEquals(RunDirection.RUN_UP, sweep.direction());
        assertEquals(20, sweep.endSeconds(), 0.5);
        assertEquals("part-of-recording", sweep.remarks().get(0).code());
    }

    /** The last turns take longer and longer as a shaft comes to rest; they aren't mistaken for missing pulses. */
    @Test
    void aShaftMayComeToRest() {
        SpeedSweep sweep = sweep(ramp(3000, 0.6, 60).tachometer(RATE, 1));
        assertTrue(sweep.remarks().isEmpty(), sweep.remarks()::toString);
        assertEquals(3000, sweep.highest().revolutionsPerMinute(), 25);
        assertTrue(sweep.lowest().revolutionsPerMinute() < 250, sweep::toString);
    }

    /** Marks at 0.3, 0.25 and 0.45 of a turn, as on the page on rotation. */
    @Test
    void unevenMarksDoNotShakeTheSpeed() {
        SpeedProfile profile = ramp(600, 3000, 30);
        SpeedSweep sweep = SpeedSweep.read(profile.tachometer(RATE, 0.30, 0.25, 0.45), 3).sweep().orElseThrow();
        assertEquals(profile.speedAt(12).hertz(), sweep.speedAt(12).hertz(), 0.06);
    }

    @Test
    void missingPulseIsRepairedAndSaid() {
        Waveform tachometer = ramp(600, 3000, 30).tachometer(RATE, 1);
        double[] volts = tachometer.samples();
        int at = 150_000;
        while (volts[at] == 0) {
            at++;
        }
        Arrays.fill(volts, at, at + 60, 0);
        SpeedSweep sweep = sweep(Waveform.ofSi(Quantity.VOLTAGE, RATE, volts));
        assertEquals(List.of("pulses-repaired"), sweep.remarks().stream().map(one -> one.code()).toList());
        assertEquals(30, sweep.speedAt(15).hertz(), 0.05);
    }

    @Test
    void refusesInWords() {
        assertEquals("the recording of the tachometer is constant", SpeedSweep.read(Waveform.ofSi(Quantity.VOLTAGE,
                RATE, new double[1000]), 1).reason());
        assertEquals("the speed hardly changes, from 1500 r/min (25.00 Hz) to 1500 r/min (25.00 Hz); a run changes it"
                + " by a fifth or more", SpeedSweep.read(ramp(1500, 1500, 10).tachometer(RATE, 1), 1).reason());
        assertEquals("too fast: the shaft turns 11 times while the speed changes, 48 are needed to follow an order",
                SpeedSweep.read(ramp(600, 3000, 0.5).tachometer(RATE, 1), 1).reason());
        assertTrue(SpeedSweep.read(joined(ramp(600, 2000, 20), ramp(2000, 1400, 10), ramp(1400, 3000, 20)), 1).reason()
                .startsWith("the speed goes to and fro"));
        assertFalse(SpeedSweep.read(ramp(1500, 1500, 0.1).tachometer(RATE, 1), 1).sweep().isPresent());
        Waveform half = joined(ramp(600, 3000, 30));
        double[] volts = half.samples();
        for (int i = 0; i < volts.length; i += 3000) { // every pulse in so many is lost
            Arrays.fill(volts, i, Math.min(volts.length, i + 900), 0);
        }
        assertTrue(SpeedSweep.read(Waveform.ofSi(Quantity.VOLTAGE, RATE, volts), 1).reason()
                .endsWith("pulses of the tachometer are doubled or missing"));
    }

    @Test
    void badArguments() {
        Waveform tachometer = ramp(600, 3000, 30).tachometer(RATE, 1);
        assertThrows(IllegalArgumentException.class, () -> SpeedSweep.read(tachometer, 0));
        assertThrows(NullPointerException.class, () -> SpeedSweep.read(null, 1));
        SpeedSweep sweep = sweep(tachometer);
        assertThrows(IllegalArgumentException.class, () -> sweep.speedAt(31));
        assertThrows(IllegalArgumentException.class, () -> sweep.secondsAt(RotationSpeed.ofHertz(51)));
        assertEquals(sweep, sweep(tachometer));
        assertEquals(sweep.hashCode(), sweep(tachometer).hashCode());
        assertEquals("run-up from 631 to 2984 r/min in 29.4 s", sweep.toString());
    }
}
