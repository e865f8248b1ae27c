package dev.vibra.meter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.envelope.Envelope;
import dev.vibra.envelope.SquaredEnvelopePlan;
import dev.vibra.level.PeakHold;
import dev.vibra.level.RunningRms;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumMeter;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.lang.management.ManagementFactory;
import java.util.List;
import org.junit.jupiter.api.Test;

class MeterTest {
    private static final double RATE = 25_600;
    private static final Band SEVERITY = Band.of(10, 1000);

    private static Waveform wave() {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, 51_200).bias(2).tone(3, 24.7, 0).noise(0.5, 1)
                .impacts(ImpactTrain.of(87, 8, 4000, 0.05), 2).waveform();
    }

    @Test
    void levelMeterEqualsTheWholeRecording() {
        Waveform wave = wave();
        LevelMeter meter = LevelMeter.withDefaults().withBand(SEVERITY).at(RATE);
        assertFalse(meter.isSettled());
        assertEquals("no sample was pushed yet", assertThrows(IllegalStateException.class, meter.acceleration()::rms)
                .getMessage());
        meter.push(wave.samples(), 0, 100);
        assertEquals("the chain has not settled yet: 10173 samples more",
                assertThrows(IllegalStateException.class, meter.velocity()::rms).getMessage());
        meter.reset();
        meter.push(wave.samples(), 0, wave.length());
        Waveform velocity = wave.throughSeverityChain(Quantity.VELOCITY, SEVERITY);
        assertTrue(meter.isSettled());
        assertSame(velocity.rms(), meter.velocity().rms(), meter.velocity().rmsSi());
        assertSame(velocity.peak(), meter.velocity().peak(), meter.velocity().peakSi());
        assertSame(wave.rms(), meter.acceleration().rms(), meter.acceleration().rmsSi());
        assertSame(wave.peak(), meter.acceleration().peak(), meter.acceleration().peakSi());
        assertEquals(wave.crestFactor(), meter.acceleration().crestFactor(), 1e-9);
        assertEquals(wave.kurtosis(), meter.acceleration().kurtosis(), 1e-8);
        meter.restartReading();
        assertFalse(meter.isSettled());
        meter.push(wave.samples(), 0, 100);
        assertTrue(meter.isSettled());
        meter.reset();
        meter.push(wave.samples(), 0, 100);
        assertFalse(meter.isSettled());
    }

    private static void assertSame(Level batch, Level stream, double si) {
        assertEquals(1, stream.si() / batch.si(), 1e-9);
        assertEquals(stream.si(), si);
        assertTrue(stream.isLike(batch));
        assertEquals(batch.method(), stream.method());
    }

    @Test
    void spectrumAndEnvelopeMetersEqualTheirBatchForms() {
        Waveform wave = wave();
        SpectrumSettings settings = SpectrumSettings.withDefaults().withResolution(4);
        SpectrumMeter meter = SpectrumMeter.of(Quantity.ACCELERATION, RATE, settings);
        assertThrows(IllegalStateException.class, meter::spectrum);
        meter.push(wave.samples(), 0, wave.length());
        Spectrum batch = Spectrum.of(wave, settings);
        assertEquals(batch.blocks(), meter.blocks());
        for (int k = 0; k < batch.lines(); k++) {
            assertEquals(batch.amplitude(k, Detector.RMS), meter.spectrum().amplitude(k, Detector.RMS), 1e-15);
        }
        EnvelopeMeter envelopeMeter = EnvelopeMeter.of(Quantity.ACCELERATION, Band.of(3000, 5000), 25_600, RATE);
        envelopeMeter.push(wave.samples(), 0, wave.length());
        Waveform first = Envelope.of(wave.part(0, 25_600), Band.of(3000, 5000));
        Waveform second = Envelope.of(wave.part(25_600, 25_600), Band.of(3000, 5000));
        assertEquals(0.5 * (first.moments().mean() + second.moments().mean()), envelopeMeter.mean(), 1e-12);
        SpectrumSettings whole = SpectrumSettings.withDefaults().withResolution(1).withOverlap(0);
        double a = Spectrum.of(first, whole).amplitude(87, Detector.RMS);
        double b = Spectrum.of(second, whole).amplitude(87, Detector.RMS);
        assertEquals(Math.sqrt((a * a + b * b) / 2), envelopeMeter.spectrum().amplitude(87, Detector.RMS), 1e-12);
        envelopeMeter.reset();
        assertThrows(IllegalStateException.class, envelopeMeter::mean);
    }

    @Test
    void pushingAllocatesNothing() {
        double[] block = wave().samples();
        LevelMeter level = LevelMeter.withDefaults().at(RATE);
        SpectrumMeter spectrum = SpectrumMeter.of(Quantity.ACCELERATION, RATE, SpectrumSettings.withDefaults());
        EnvelopeMeter envelope = EnvelopeMeter.of(Quantity.ACCELERATION, Band.of(3000, 5000), 8192, RATE);
        RunningRms running = RunningRms.linear(0.1, RATE);
        PeakHold hold = PeakHold.of(1, RATE);
        SquaredEnvelopePlan squared = SquaredEnvelopePlan.of(block.length, RATE,
                List.of(Band.of(1000, 2000), Band.of(3000, 5000)));
        double[] squares = new double[squared.outputLength(1)];
        double sum = 0;
        long allocated = 0;
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        for (int i = 0; i < 40; i++) {
            long before = threads.getCurrentThreadAllocatedBytes();
            level.push(block, 0, block.length);
            sum += level.velocity().rmsSi() + level.velocity().peakSi() + level.acceleration().rmsSi()
                    + level.acceleration().peakSi();
            spectrum.push(block, 0, block.length);
            envelope.push(block, 0, block.length);
            running.push(block, 0, block.length);
            hold.push(block, 0, block.length);
            squared.load(block, 0);
            squared.squares(0, squares);
            squared.squares(1, squares);
            allocated = threads.getCurrentThreadAllocatedBytes() - before;
        }
        assertTrue(sum > 0);
        assertTrue(allocated < 512, "bytes allocated for a second of samples: " + allocated);
    }

    @Test
    void samplesThatAreNotFiniteAreRefused() {
        LevelMeter meter = LevelMeter.withDefaults().at(RATE);
        assertEquals("samples[1] must be finite: NaN", assertThrows(IllegalArgumentException.class,
                () -> meter.push(new double[] {1, Double.NaN}, 0, 2)).getMessage());
        assertThrows(IllegalStateException.class, meter.acceleration()::rms);
        assertThrows(IllegalArgumentException.class, () -> SpectrumMeter.of(Quantity.ACCELERATION, RATE,
                SpectrumSettings.withDefaults()).push(new double[] {Double.NaN}, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> EnvelopeMeter.of(Quantity.ACCELERATION, SEVERITY, 100, RATE)
                .push(new double[] {Double.POSITIVE_INFINITY}, 0, 1));
    }
}
