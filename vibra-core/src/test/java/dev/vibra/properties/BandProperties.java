package dev.vibra.properties;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bandmap.BandCriterion;
import dev.vibra.bandmap.BandMap;
import dev.vibra.bandmap.BandMapPlan;
import dev.vibra.cyclic.SpectralCoherence;
import dev.vibra.cyclic.SpectralCoherencePlan;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Laws of band maps and of spectral coherence. */
class BandProperties {
    private static final double DAMPING = 0.03;
    private static final List<BandCriterion> ALL = List.of(BandCriterion.values());

    /** Level, sign and mean of a recording say nothing about how it pulsates. */
    @Property(tries = 30)
    void mapsDoNotDependOnLevelSignAndMean(@ForAll long seed, @ForAll @IntRange(min = 200, max = 3000)
            int length, @ForAll @DoubleRange(min = 0.01, max = 1e6) double factor,
            @ForAll @DoubleRange(min = -100, max = 100) double mean) {
        double[] x = Signals.normal(length, seed);
        double[] changed = new double[length];
        for (int i = 0; i < length; i++) {
            changed[i] = -factor * (mean + x[i]);
        }
        BandMapPlan plan = BandMapPlan.of(length, 1000, 125);
        List<BandMap> expected = plan.maps(x, 0, ALL);
        List<BandMap> actual = plan.maps(changed, 0, ALL);
        for (int c = 0; c < ALL.size(); c++) {
            for (int i = 0; i < expected.get(c).cells().size(); i++) {
                BandMap.Cell cell = expected.get(c).cells().get(i);
                assertEquals(cell.value(), actual.get(c).cells().get(i).value(), 1e-9, ALL.get(c) + " " + cell);
            }
        }
    }

    /** y·ln y and y² are convex: no negentropy is below 0 and no kurtosis below that of a steady envelope. */
    @Property(tries = 60)
    void criteriaHaveTheirLeastValues(@ForAll long seed, @ForAll @IntRange(min = 16, max = 2000) int length) {
        for (BandMap map : BandMapPlan.of(length, 1000, 250).maps(Signals.noise(length, seed), 0, ALL)) {
            double least = map.criterion() == BandCriterion.SPECTRAL_KURTOSIS ? -1 : 0;
            map.cells().forEach(cell -> assertTrue(cell.value() >= least - 1e-9, map.criterion() + " " + cell));
        }
    }

    /**
     * The forward model: rare impacts in noise are found about the resonance that they ring, wherever it lies. Not so
     * in weak noise, nor where impacts follow one another within eight time constants of the ringing: its flanks ring
     * shorter than the resonance does and are the more impulsive.
     */
    @Property(tries = 25)
    void bestBandHoldsTheResonance(@ForAll long seed, @ForAll @DoubleRange(min = 1500, max = 10_500) double resonance,
            @ForAll @DoubleRange(min = 13, max = 60) double rate) {
        Assume.that(1 / rate >= 8 / (DAMPING * 2 * Math.PI * resonance));
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, 51_200).noise(1, seed)
                .impacts(ImpactTrain.of(rate, 5, resonance, DAMPING), seed + 1).waveform();
        for (BandCriterion criterion : List.of(BandCriterion.SPECTRAL_KURTOSIS, BandCriterion.ENVELOPE_NEGENTROPY)) {
            BandMap.Cell best = BandMap.of(wave, criterion, 400).best();
            double beside = Math.max(best.band().lowestHertz() - resonance, resonance - best.band().highestHertz());
            assertTrue(beside < 0.1 * resonance, criterion + " " + resonance + " Hz: " + best);
        }
    }

    /** Squared coherences are shares, and their level isn't seen; at 0 Hz each carrier is coherent with itself. */
    @Property(tries = 30)
    void coherencesAreShares(@ForAll long seed, @ForAll @IntRange(min = 64, max = 3000) int length,
            @ForAll @DoubleRange(min = 0.01, max = 1e6) double factor) {
        double[] x = Signals.normal(length, seed);
        double[] scaled = new double[length];
        for (int i = 0; i < length; i++) {
            scaled[i] = -factor * x[i];
        }
        SpectralCoherencePlan plan = SpectralCoherencePlan.of(length, 1000, 150, 200);
        double[] expected = plan.process(x, 0, new double[plan.carriers() * plan.lines()]);
        double[] actual = plan.process(scaled, 0, new double[expected.length]);
        for (int i = 0; i < expected.length; i++) {
            assertTrue(expected[i] >= 0 && expected[i] <= 1, "squared coherence " + expected[i]);
            assertEquals(expected[i], actual[i], 1e-9);
            assertTrue(i % plan.lines() > 0 || expected[i] > 1 - 1e-9, "at 0 Hz " + expected[i]);
        }
    }

    /** The forward model: modulated noise of any depth and rate reads its closed form, whatever the noise. */
    @Property(tries = 20)
    void modulationIsRead(@ForAll long seed, @ForAll @DoubleRange(min = 0.3, max = 1) double depth,
            @ForAll @IntRange(min = 10, max = 400) int hertz) {
        double[] x = Signals.normal(40_000, seed);
        for (int i = 0; i < x.length; i++) {
            x[i] *= 1 + depth * Math.cos(2 * Math.PI * hertz * i / 10_000);
        }
        SpectralCoherence coherence = SpectralCoherence.of(Signals.wave(10_000, x), 200, 1000);
        double read = coherence.improvedEnvelopeSpectrum(Band.of(0, 4000)).coherence(4 * hertz);
        double expected = Math.pow(depth / (1 + depth * depth / 2), 2);
        double samples = coherence.averages() * coherence.carriers();
        assertEquals(expected + Math.pow(1 - expected, 2) / coherence.averages(), read,
                5 * Math.sqrt(4 * expected / samples));
        assertEquals(hertz, coherence.bestBand(hertz + 0.6, 1).orElseThrow().cyclicHertz(), 0.26);
    }
}
