package dev.vibra.meter;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectrumMeter;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.state.Arrival;
import dev.vibra.state.Continuity;
import dev.vibra.synthesis.Synthesis;
import java.lang.management.ManagementFactory;
import org.junit.jupiter.api.Test;

/** What meters make of blocks that are lost, come twice or come late. */
class StreamOrderTest {
    private static final int RATE = 5120;
    private static final Band BAND = Band.of(10, 1000);

    /** 1 mm/s rms at 25 Hz, beside a bias, which makes a step of each start. */
    private static double[] tone(int seconds) {
        double peak = 1e-3 * Math.sqrt(2) * 2 * Math.PI * 25;
        return Synthesis.silence(Quantity.ACCELERATION, RATE, seconds * RATE).bias(3).tone(peak, 25, 0.3).waveform()
                .samples();
    }

    @Test
    void blocksInOrderAreOneStream() {
        double[] x = tone(4);
        LevelMeter told = LevelMeter.withDefaults().at(RATE);
        LevelMeter untold = LevelMeter.withDefaults().at(RATE);
        for (int from = 0; from < x.length; from += 512) {
            assertEquals(Arrival.IN_ORDER, told.push(7_000_000_000L + from, x, from, 512));
            untold.push(x, from, 512);
        }
        assertEquals(untold.velocity().rmsSi(), told.velocity().rmsSi());
        assertTrue(told.continuity().isUnbroken());
        assertEquals(7_000_000_000L + x.length, told.continuity().nextSample());
        assertEquals("unbroken up to sample 7000020480", told.continuity().toString());
    }

    /**
     * A lost stretch puts two pieces of the tone together that don't fit. A meter that isn't told takes the step for
     * vibration; one that is told reads the tone's 1 mm/s (through the chain, 0.99796 at 25 Hz by its nominal response).
     */
    @Test
    void aGapIsNoVibration() {
        double[] x = tone(12);
        int lost = 2 * RATE + 100;
        LevelMeter told = LevelMeter.withDefaults().at(RATE);
        LevelMeter untold = LevelMeter.withDefaults().at(RATE);
        told.push(0, x, 0, 4 * RATE);
        untold.push(x, 0, 4 * RATE);
        int rest = x.length - 4 * RATE - lost;
        assertEquals(Arrival.GAP, told.push(4 * RATE + lost, x, 4 * RATE + lost, rest));
        untold.push(x, 4 * RATE + lost, rest);
        assertEquals(0.99796e-3, told.velocity().rmsSi(), 2e-6);
        assertTrue(untold.velocity().peakSi() > 1.05 * told.velocity().peakSi());
        assertEquals(new Continuity(x.length, 1, lost, 0, 0), told.continuity());
    }

    @Test
    void whatCameAlreadyIsLeftOut() {
        double[] x = tone(4);
        LevelMeter straight = LevelMeter.withDefaults().and(Quantity.DISPLACEMENT, BAND).at(RATE);
        LevelMeter folded = LevelMeter.withDefaults().and(Quantity.DISPLACEMENT, BAND).at(RATE);
        straight.push(0, x, 0, x.length);
        assertEquals(Arrival.IN_ORDER, folded.push(0, x, 0, 10_000));
        assertEquals(Arrival.OVERLAP, folded.push(9_000, x, 9_000, 5_000));
        assertEquals(Arrival.LATE, folded.push(2_000, x, 2_000, 12_000));
        assertEquals(Arrival.IN_ORDER, folded.push(14_000, x, 14_000, x.length - 14_000));
        for (int k = 0; k < 3; k++) {
            assertEquals(straight.readings().get(k).rmsSi(), folded.readings().get(k).rmsSi());
            assertEquals(straight.readings().get(k).samples(), folded.readings().get(k).samples());
        }
        assertEquals(new Continuity(x.length, 0, 0, 2, 13_000), folded.continuity());
        assertEquals("0 gap(s), 0 samples missing; 2 repeat(s), 13000 samples thrown away; up to sample 20480",
                folded.continuity().toString());
    }

    @Test
    void noBlockOfASpectrumLiesAcrossAGap() {
        double[] x = tone(6);
        SpectrumMeter told = SpectrumMeter.of(Quantity.ACCELERATION, RATE, SpectrumSettings.withDefaults());
        told.push(0, x, 0, RATE + 700);
        assertEquals(Arrival.GAP, told.push(2 * RATE + 1900, x, 2 * RATE + 1900, RATE));
        SpectrumMeter pieces = SpectrumMeter.of(Quantity.ACCELERATION, RATE, SpectrumSettings.withDefaults());
        pieces.push(x, 0, RATE);
        pieces.restartReading();
        pieces.push(x, 2 * RATE + 1900, RATE);
        assertEquals(2, told.blocks());
        assertEquals(1, pieces.blocks());
        EnvelopeMeter envelope = EnvelopeMeter.of(Quantity.ACCELERATION, Band.of(500, 1500), RATE, RATE);
        envelope.push(0, x, 0, RATE + 700);
        assertEquals(Arrival.GAP, envelope.push(3 * RATE, x, 3 * RATE, RATE));
        assertEquals(2, envelope.frames());
        assertEquals(1, envelope.continuity().gaps());
    }

    @Test
    void aRestartedReadingIsOfWhatComesAfterwards() {
        double[] x = tone(5);
        double[] twice = java.util.Arrays.stream(x).map(v -> 2 * v).toArray();
        SpectrumMeter meter = SpectrumMeter.of(Quantity.ACCELERATION, RATE, SpectrumSettings.withDefaults());
        meter.push(0, twice, 0, RATE + 2000);
        meter.restartReading();
        meter.push(RATE + 2000, x, RATE + 2000, 3 * RATE);
        Waveform after = Waveform.ofSi(Quantity.ACCELERATION, RATE, java.util.Arrays.copyOfRange(x, RATE + 2000,
                4 * RATE + 2000));
        assertArrayEquals(dev.vibra.spectrum.Spectrum.of(after).densities(), meter.spectrum().densities(), 1e-15);
        assertEquals(4 * RATE + 2000, meter.continuity().nextSample());
    }

    @Test
    void aRefusedBlockIsNotThere() {
        LevelMeter meter = LevelMeter.withDefaults().at(RATE);
        double[] x = tone(2);
        meter.push(0, x, 0, 3000);
        double[] bad = x.clone();
        bad[4000] = Double.NaN;
        double before = meter.acceleration().rmsSi();
        assertThrows(IllegalArgumentException.class, () -> meter.push(3000, bad, 3000, 2000));
        assertEquals("firstSample must be within 0.0 to 4.503599627370496E15: -1.0", assertThrows(
                IllegalArgumentException.class, () -> meter.push(-1, x, 0, 10)).getMessage());
        assertEquals(before, meter.acceleration().rmsSi());
        assertEquals(Arrival.IN_ORDER, meter.push(3000, x, 3000, 2000));
        meter.reset();
        assertFalse(meter.isSettled());
        assertEquals(Arrival.IN_ORDER, meter.push(500, x, 0, 100));
    }

    @Test
    void severalLevelsAtOnceAreThoseOfTheRecording() {
        double[] x = Synthesis.silence(Quantity.ACCELERATION, RATE, 8 * RATE).noise(1, 4).tone(5, 40, 0).waveform()
                .samples();
        Band wide = Band.of(5, 1000);
        Band high = Band.of(500, 2000);
        LevelMeter meter = LevelMeter.withDefaults().and(Quantity.DISPLACEMENT, wide).and(Quantity.VELOCITY, wide)
                .and(Quantity.ACCELERATION, high).at(RATE);
        meter.push(x, 0, x.length);
        Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, RATE, x);
        LevelReading displacement = meter.reading(Quantity.DISPLACEMENT, wide);
        Waveform batch = wave.throughSeverityChain(Quantity.DISPLACEMENT, wide);
        assertEquals(1, displacement.peakToPeakSi() / batch.peakToPeak().si(), 1e-9);
        assertTrue(displacement.peakToPeak().isLike(batch.peakToPeak()));
        Waveform filtered = wave.throughSeverityChain(Quantity.ACCELERATION, high);
        assertEquals(1, meter.reading(Quantity.ACCELERATION, high).rmsSi() / filtered.rms().si(), 1e-9);
        assertEquals(1, meter.reading(Quantity.ACCELERATION, high).kurtosis() / filtered.kurtosis(), 1e-8);
        assertTrue(meter.measures(Quantity.VELOCITY, wide));
        assertFalse(meter.measures(Quantity.VELOCITY, high));
        assertEquals("quantity and band must be among [velocity (10\u20131000 Hz), displacement (5\u20131000 Hz), velocity "
                + "(5\u20131000 Hz), acceleration (500\u20132000 Hz)]: velocity (500\u20132000 Hz)", assertThrows(
                IllegalArgumentException.class, () -> meter.reading(Quantity.VELOCITY, high)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> meter.settings().and(Quantity.VELOCITY, BAND));
    }

    @Test
    void savingOftenAllocatesNothing() {
        double[] x = tone(1);
        LevelMeter level = LevelMeter.withDefaults().and(Quantity.DISPLACEMENT, BAND).at(RATE);
        SpectrumMeter spectrum = SpectrumMeter.of(Quantity.ACCELERATION, RATE, SpectrumSettings.withDefaults());
        double[] store = new double[level.stateLength() + spectrum.stateLength()];
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        long allocated = 0;
        for (int i = 0; i < 200; i++) {
            long before = threads.getCurrentThreadAllocatedBytes();
            level.push((long) i * RATE, x, 0, RATE);
            spectrum.push((long) i * RATE, x, 0, RATE);
            spectrum.snapshotTo(store, level.snapshotTo(store, 0));
            spectrum.resumeFrom(store, level.resumeFrom(store, 0));
            allocated = threads.getCurrentThreadAllocatedBytes() - before;
        }
        assertTrue(allocated < 512, "bytes allocated for a block and a checkpoint: " + allocated);
    }
}
