package dev.vibra.properties;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bandmap.BandMap;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.record.BandLevel;
import dev.vibra.record.WholeRecord;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Laws of what is made of one transform of a recording. */
class WholeRecordProperties {
    /** The forward model: rare impacts in noise are found about the resonance that they ring, at any length. */
    @Property(tries = 25)
    void bestBandHoldsTheResonance(@ForAll long seed, @ForAll @DoubleRange(min = 1500, max = 10_500) double resonance,
            @ForAll @DoubleRange(min = 13, max = 60) double rate, @ForAll @IntRange(max = 2000) int more) {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, 50_000 + more).noise(1, seed)
                .impacts(ImpactTrain.of(rate, 5, resonance, 0.03), seed + 1).waveform();
        BandMap.Cell best = WholeRecord.of(wave).dyadicMap(6).best();
        double beside = Math.max(best.band().lowestHertz() - resonance, resonance - best.band().highestHertz());
        assertTrue(beside < 0.1 * resonance, resonance + " Hz: " + best);
    }

    /** Level, sign and mean of a recording say nothing about how impulsive its bands are. */
    @Property(tries = 30)
    void mapsDoNotDependOnLevelSignAndMean(@ForAll long seed, @ForAll @IntRange(min = 200, max = 3000) int length,
            @ForAll @DoubleRange(min = 0.01, max = 1e6) double factor,
            @ForAll @DoubleRange(min = -100, max = 100) double mean) {
        double[] x = Signals.normal(length, seed);
        double[] changed = new double[length];
        for (int i = 0; i < length; i++) {
            changed[i] = -factor * (mean + x[i]);
        }
        BandMap expected = WholeRecord.of(Signals.wave(1000, x)).dyadicMap(3);
        BandMap actual = WholeRecord.of(Signals.wave(1000, changed)).dyadicMap(3);
        for (int i = 0; i < 14; i++) {
            assertEquals(expected.cells().get(i).value(), actual.cells().get(i).value(), 1e-8);
            assertTrue(actual.cells().get(i).value() >= -1 - 1e-9);
        }
    }

    /** Closed form: a tone on a line of the settled part has A/(2πf·√2) rms and 2·A/(2πf)² peak-to-peak. */
    @Property(tries = 40)
    void levelsOfATone(@ForAll @IntRange(min = 25, max = 1900) int halfHertz, @ForAll @DoubleRange(max = 6.2) double phase,
            @ForAll @DoubleRange(min = 0.01, max = 1e3) double amplitude) {
        double hertz = 0.5 * halfHertz;
        // 4.6 s: 4 s between tapers of 0.3 s.
        WholeRecord record = WholeRecord.of(Synthesis.silence(Quantity.ACCELERATION, 25_600, 117_760)
                .tone(amplitude, hertz, phase).waveform());
        double omega = 2 * Math.PI * hertz;
        BandLevel velocity = record.rms(Quantity.VELOCITY, Band.of(10, 1000));
        assertEquals(1, velocity.level().si() * omega * Math.sqrt(2) / amplitude, velocity.relativeError());
        BandLevel displacement = record.peakToPeak(Quantity.DISPLACEMENT, Band.of(10, 1000));
        // Between 25 samples a period, a peak may be 0.8 % higher than they are.
        assertEquals(1, displacement.level().si() * omega * omega / (2 * amplitude),
                displacement.relativeError() + 0.008);
    }
}
