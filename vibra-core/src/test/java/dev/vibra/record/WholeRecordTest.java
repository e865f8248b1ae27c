package dev.vibra.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.bandmap.DyadicMapPlan;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.envelope.EnvelopeSpectrumPlan;
import dev.vibra.integration.MotionPlan;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.transform.PlanCache;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class WholeRecordTest {
    private static final Band SEVERITY = Band.of(10, 1000);
    private static final Band RESONANCE = Band.of(2000, 6000);
    private static final Waveform WAVE = Synthesis.silence(Quantity.ACCELERATION, 12_800, 51_200).tone(2, 24.63, 0.3)
            .tone(0.05, 3.1, 1).noise(0.5, 3).bias(7).impacts(ImpactTrain.of(87, 4, 4000, 0.03), 2).waveform();

    /** Plan and values are one computation. */
    @Test
    void valuesAreThoseOfThePlan() {
        RecordPlan plan = RecordPlan.of(WAVE.length(), WAVE.sampleRateHertz(), Quantity.ACCELERATION);
        MotionPlan velocity = plan.motion(Quantity.VELOCITY, SEVERITY);
        MotionPlan displacement = plan.motion(Quantity.DISPLACEMENT, Band.of(2, 1000));
        EnvelopeSpectrumPlan envelope = plan.envelopeSpectrum(RESONANCE, 1000);
        DyadicMapPlan map = plan.dyadicMap(6);
        double[] later = new double[WAVE.length() + 5];
        WAVE.copyTo(0, later, 5, WAVE.length());
        plan.load(later, 5);
        WholeRecord record = WholeRecord.of(WAVE);
        assertEquals(velocity.rms(), record.rms(Quantity.VELOCITY, SEVERITY).level().si(), 0);
        BandLevel level = record.peakToPeak(Quantity.DISPLACEMENT, Band.of(2, 1000));
        assertEquals(displacement.peakToPeak(), level.level().si(), 0);
        assertEquals(displacement.relativeError(), level.relativeError(), 0);
        assertEquals(8, level.periods(), 1e-12);
        assertEquals(Detector.PEAK_TO_PEAK, level.level().detector());
        assertEquals(LevelMethod.ZERO_PHASE_BAND, level.level().method());
        assertEquals(envelope.depth(348), record.envelopeSpectrum(RESONANCE, 1000).depth(348), 0);
        assertEquals(map.map(), record.dyadicMap(6));
    }

    /** Against the doors that transform for themselves. */
    @Test
    void valuesAreThoseOfTheOtherDoors() {
        WholeRecord record = WholeRecord.of(WAVE);
        assertEquals(1, record.rms(Quantity.VELOCITY, SEVERITY).level().si() / WAVE.velocity(SEVERITY).rms().si(), 5e-4);
        assertEquals(1, record.peakToPeak(Quantity.DISPLACEMENT, Band.of(4, 1000)).level().si()
                / WAVE.displacement(Band.of(4, 1000)).peakToPeak().si(), 1e-4);
        EnvelopeSpectrum expected = EnvelopeSpectrum.of(WAVE, RESONANCE).upTo(200);
        EnvelopeSpectrum actual = record.envelopeSpectrum(RESONANCE, 200);
        for (int k = 0; k < expected.lines(); k++) {
            assertEquals(expected.depth(k), actual.depth(k), 1e-9);
        }
    }

    @Test
    void plansAreMadeOnceAndWorkForEachRecording() {
        PlanCache plans = PlanCache.ofSize(8);
        Waveform louder = Waveform.ofSi(Quantity.ACCELERATION, 12_800,
                Arrays.stream(WAVE.samples()).map(x -> 2 * x).toArray());
        WholeRecord first = WholeRecord.of(WAVE, plans);
        WholeRecord second = WholeRecord.of(louder, plans);
        double rms = first.rms(Quantity.VELOCITY, SEVERITY).level().si();
        assertEquals(2 * rms, second.rms(Quantity.VELOCITY, SEVERITY).level().si(), 1e-15);
        assertEquals(rms, first.rms(Quantity.VELOCITY, SEVERITY).level().si(), 0);
        assertEquals("2 of 8 plans", plans.toString());
        assertEquals(WAVE.velocity(SEVERITY), WAVE.velocity(SEVERITY, plans));
        assertEquals(WAVE.displacement(SEVERITY), WAVE.displacement(SEVERITY, plans));
        assertEquals(WAVE.acceleration(SEVERITY), WAVE.acceleration(SEVERITY, plans));
        assertEquals("5 of 8 plans", plans.toString());
    }

    @Test
    void cacheForgetsWhatWasAskedForLongestAgo() {
        PlanCache plans = PlanCache.ofSize(2);
        StringBuilder a = plans.get(StringBuilder.class, "a", StringBuilder::new);
        plans.get(StringBuilder.class, "b", StringBuilder::new);
        assertSame(a, plans.get(StringBuilder.class, "a", () -> new StringBuilder("made")));
        plans.get(StringBuilder.class, "c", StringBuilder::new);
        assertSame(a, plans.get(StringBuilder.class, "a", () -> new StringBuilder("made")));
        assertEquals("made", plans.get(StringBuilder.class, "b", () -> new StringBuilder("made")).toString());
        assertEquals("2 of 2 plans", plans.toString());
        assertMessage("size must be from 1 to 1048576: 0", () -> PlanCache.ofSize(0));
    }

    @Test
    void plansAllocateNothing() {
        RecordPlan plan = RecordPlan.of(WAVE.length(), WAVE.sampleRateHertz(), Quantity.ACCELERATION);
        MotionPlan velocity = plan.motion(Quantity.VELOCITY, SEVERITY);
        MotionPlan displacement = plan.motion(Quantity.DISPLACEMENT, Band.of(2, 1000));
        EnvelopeSpectrumPlan envelope = plan.envelopeSpectrum(RESONANCE, 1000);
        DyadicMapPlan map = plan.dyadicMap(6);
        double[] samples = WAVE.samples();
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        long allocated = Long.MAX_VALUE;
        double sum = 0;
        for (int i = 0; i < 20; i++) {
            long before = threads.getCurrentThreadAllocatedBytes();
            plan.load(samples, 0);
            sum += velocity.rms() + displacement.peakToPeak() + envelope.depth(3) + map.kurtosis(map.best());
            allocated = Math.min(allocated, threads.getCurrentThreadAllocatedBytes() - before);
        }
        assertEquals(0, allocated, "bytes; " + sum);
    }

    @Test
    void constantRecordingsHaveNoLevelsAndNoBands() {
        double[] constant = new double[4096];
        Arrays.fill(constant, 7.1);
        WholeRecord record = WholeRecord.of(Waveform.ofSi(Quantity.ACCELERATION, 4096, constant));
        assertEquals(0, record.rms(Quantity.VELOCITY, SEVERITY).level().si());
        assertMessage("recording must vibrate to have an impulsive band: 4,096 samples at 4,096 Hz, acceleration, "
                + "1.000 s, 0 m/s\u00b2 peak", () -> record.dyadicMap(3));
        assertThrows(IllegalArgumentException.class, () -> record.envelopeSpectrum(Band.of(100, 300), 50));
    }

    /** Ratios don't depend on the level, and levels follow it, as far as numbers reach. */
    @Test
    void levelScalesWhatIsALevelOnly() {
        WholeRecord record = WholeRecord.of(WAVE);
        for (double factor : new double[] {1e-60, 1e60}) {
            WholeRecord scaled = WholeRecord.of(Waveform.ofSi(Quantity.ACCELERATION, 12_800,
                    Arrays.stream(WAVE.samples()).map(x -> factor * x).toArray()));
            BandLevel level = record.rms(Quantity.VELOCITY, SEVERITY);
            BandLevel other = scaled.rms(Quantity.VELOCITY, SEVERITY);
            assertEquals(factor, other.level().si() / level.level().si(), 1e-9 * factor);
            assertEquals(level.relativeError(), other.relativeError(), 1e-9);
            assertEquals(record.envelopeSpectrum(RESONANCE, 200).depth(348),
                    scaled.envelopeSpectrum(RESONANCE, 200).depth(348), 1e-9);
            assertEquals(record.dyadicMap(3).best().value(), scaled.dyadicMap(3).best().value(), 1e-9);
        }
    }

    @Test
    void printsInOneLine() {
        Waveform tone = Synthesis.silence(Quantity.ACCELERATION, 12_800, 51_200).tone(2, 25, 0.3).waveform();
        WholeRecord record = WholeRecord.of(tone);
        assertEquals("51,200 samples at 12,800 Hz, acceleration, 4.000 s, 2.00 m/s\u00b2 peak, 25,601 lines 0.25 Hz apart",
                record.toString());
        assertEquals("9.00 mm/s rms (10\u20131000 Hz, zero-phase) \u00b1 0.64 %, 40.0 periods",
                record.rms(Quantity.VELOCITY, SEVERITY).toString());
        RecordPlan plan = RecordPlan.of(512, 1024, Quantity.VELOCITY);
        assertEquals("512 samples at 1024.0 Hz, 0 stage(s)", plan.toString());
        assertEquals("displacement of 512 samples, 20\u2013400 Hz",
                plan.motion(Quantity.DISPLACEMENT, Band.of(20, 400)).toString());
        assertEquals("envelope spectrum of 512 samples, 100\u2013200 Hz, 26 lines",
                plan.envelopeSpectrum(Band.of(100, 200), 50).toString());
        assertEquals("dyadic map of 512 samples, 6 bands", plan.dyadicMap(2).toString());
        assertEquals("512 samples at 1024.0 Hz, 3 stage(s)", plan.toString());
    }

    @Test
    void badArgumentsAreNamed() {
        assertMessage("number of samples must be from 16 to 67108864: 15",
                () -> RecordPlan.of(15, 1000, Quantity.VELOCITY));
        assertMessage("sampleRateHertz must be finite and > 0 Hz: -1.0",
                () -> RecordPlan.of(1500, -1, Quantity.VELOCITY));
        RecordPlan plan = RecordPlan.of(16, 1000, Quantity.VELOCITY);
        assertMessage("samples must lie inside the array of length 16: offset 1, length 16",
                () -> plan.load(new double[16], 1));
        double[] bad = new double[16];
        bad[4] = Double.NaN;
        assertMessage("samples[4] must be finite: NaN", () -> plan.load(bad, 0));
        bad[4] = 1e71;
        assertMessage("samples[4] must be within \u00b11e70: 1.0E71", () -> plan.load(bad, 0));
        assertMessage("level must have a band: 1.00 mm/s rms",
                () -> new BandLevel(Level.of(1, Unit.MM_PER_S, Detector.RMS), 0.1, 8));
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
