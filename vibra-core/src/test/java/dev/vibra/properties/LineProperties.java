package dev.vibra.properties;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.lines.FamilyMember;
import dev.vibra.lines.HarmonicFamily;
import dev.vibra.lines.NoiseFloor;
import dev.vibra.lines.SidebandFamily;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.transfer.FrequencyResponse;
import dev.vibra.transfer.ImpactTest;
import dev.vibra.transfer.Mode;
import dev.vibra.transfer.ModeFit;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;

/** Laws of lines over a noise floor and of responses between channels. */
class LineProperties {
    private static Spectrum spectrum(Synthesis signal) {
        return Spectrum.of(signal.waveform(), SpectrumSettings.withDefaults());
    }

    private static Synthesis silence() {
        return Synthesis.silence(Quantity.ACCELERATION, 2000, 20_000);
    }

    /** At a false alarm of 1e-7 a line 30 dB over the floor can't be missed, and noise is not taken for one. */
    @Property(tries = 30)
    void harmonicFamilyIsFoundWhole(@ForAll @DoubleRange(min = 30, max = 150) double hertz, @ForAll long seed,
            @ForAll @IntRange(min = 1, max = 5) int count) {
        double[] amplitudes = new double[count];
        java.util.Arrays.fill(amplitudes, 1);
        Spectrum spectrum = spectrum(silence().noise(0.5, seed).harmonics(hertz, amplitudes, new double[count]));
        HarmonicFamily family = HarmonicFamily.of(spectrum, NoiseFloor.of(spectrum, 60), hertz * 1.002, 6, 0.005, 1e-7);
        assertEquals(count, family.members().size());
        assertEquals(hertz, family.fundamentalHertz(), 0.05);
        assertEquals(Math.sqrt(0.5 * count), family.rms(), 0.15 * Math.sqrt(0.5 * count));
    }

    @Property(tries = 30)
    void sidebandsAreFoundAtTheirDistance(@ForAll @DoubleRange(min = 400, max = 600) double carrier, @ForAll long seed,
            @ForAll @DoubleRange(min = 12, max = 40) double spacing) {
        Spectrum spectrum = spectrum(silence().noise(0.3, seed).modulatedTone(3, carrier, spacing, 0.8, 0));
        SidebandFamily family = SidebandFamily.of(spectrum, NoiseFloor.of(spectrum, 60), carrier, spacing, 1, 1.5,
                1e-7);
        assertEquals(2, family.members().size());
        for (FamilyMember member : family.members()) {
            assertEquals(carrier + member.number() * spacing, member.peak().frequencyHertz(), 0.1);
            assertEquals(1.2 / Math.sqrt(2), member.peak().level().si(), 0.1); // half the depth of the carrier's 3
        }
    }

    @Property(tries = 30)
    void noiseFloorScalesAndProbabilitiesFall(@ForAll long seed,
            @ForAll @DoubleRange(min = 0.01, max = 100) double factor,
            @ForAll @DoubleRange(min = 50, max = 900) double hertz) {
        double[] x = Signals.normal(20_000, seed);
        double[] y = java.util.Arrays.stream(x).map(v -> factor * v).toArray();
        NoiseFloor floor = NoiseFloor.of(Spectrum.of(Signals.wave(2000, x)), 50);
        NoiseFloor scaled = NoiseFloor.of(Spectrum.of(Signals.wave(2000, y)), 50);
        double rms = floor.rms(hertz);
        assertEquals(factor * rms, scaled.rms(hertz), 1e-10 * factor * rms);
        double before = 1;
        for (double ratio = 0; ratio < 4; ratio += 0.25) {
            double probability = floor.probability(hertz, ratio * rms);
            assertTrue(probability <= before + 1e-15 && probability >= -1e-15);
            assertTrue(floor.probability(hertz, ratio * rms, 10) >= probability - 1e-12);
            before = probability;
        }
        // White noise of unit variance: density 1/1000 a Hz, noise bandwidth 1.5 Hz; the rms of the median of 51
        // lines scatters by 4 %.
        assertEquals(Math.sqrt(1.5e-3), rms, 0.25 * Math.sqrt(1.5e-3));
    }

    @Property(tries = 40)
    void coherenceAndEstimatesAreOrdered(@ForAll long seed, @ForAll @DoubleRange(min = 0.1, max = 5) double gain,
            @ForAll @DoubleRange(min = 0.01, max = 2) double disturbance) {
        double[] x = Signals.normal(3000, seed);
        double[] y = Signals.combined(java.util.Arrays.stream(x).map(v -> gain * v).toArray(), disturbance,
                Signals.normal(3000, seed + 1));
        FrequencyResponse response = FrequencyResponse.of(Signals.wave(1000, x), Signals.wave(1000, y),
                SpectrumSettings.withDefaults().withResolution(8));
        for (int k = 1; k < response.lines(); k++) {
            double h1 = response.h1(k).abs();
            double h2 = response.h2(k).abs();
            assertTrue(response.coherence(k) >= 0 && response.coherence(k) <= 1 + 1e-12);
            assertTrue(h1 <= response.hv(k).abs() * (1 + 1e-9) && response.hv(k).abs() <= h2 * (1 + 1e-9));
            assertEquals(response.coherence(k), h1 / h2, 1e-9);
        }
    }

    @Property(tries = 40)
    void undisturbedResponseIsItsGain(@ForAll long seed, @ForAll @DoubleRange(min = 0.01, max = 50) double gain) {
        double[] x = Signals.normal(2000, seed);
        double[] y = java.util.Arrays.stream(x).map(v -> -gain * v).toArray();
        FrequencyResponse response = FrequencyResponse.of(Signals.wave(1000, x), Signals.wave(1000, y),
                SpectrumSettings.withDefaults().withResolution(8));
        for (int k = 1; k < response.lines(); k++) {
            assertEquals(-gain, response.h1(k).getReal(), 1e-9 * gain);
            assertEquals(0, response.h1(k).getImaginary(), 1e-9 * gain);
            assertEquals(1, response.coherence(k), 1e-9);
        }
    }

    /** One mass on a spring hit by a unit impulse: receptance exp(-ζωt)·sin(ωd·t); both ways read the mode. */
    @Property(tries = 40)
    void impactTestReturnsTheMode(@ForAll @DoubleRange(min = 60, max = 200) double natural,
            @ForAll @DoubleRange(min = 0.01, max = 0.05) @Scale(4) double damping) {
        double[] force = new double[16_384];
        double[] answer = new double[16_384];
        force[0] = 1;
        double omega = 2 * Math.PI * natural;
        double damped = omega * Math.sqrt(1 - damping * damping);
        for (int i = 0; i < answer.length; i++) {
            double t = i / 4096.0;
            answer[i] = Math.exp(-damping * omega * t) * Math.sin(damped * t);
        }
        FrequencyResponse response = ImpactTest.withDefaults().withHit(
                Waveform.ofSi(Quantity.VOLTAGE, 4096, force), Waveform.ofSi(Quantity.DISPLACEMENT, 4096,
                        answer)).response();
        Band band = Band.of(0.6 * natural, 1.5 * natural);
        Mode circle = ModeFit.circle(response, -1, band);
        Mode halfPower = ModeFit.halfPower(response, -1, band);
        // Lines 0.25 Hz apart; sampling folds the response by (natural/4096)² and a little.
        assertEquals(1, circle.naturalHertz() / natural, 0.002);
        assertEquals(1, circle.dampingRatio() / damping, 0.02);
        assertEquals(1, halfPower.naturalHertz() / natural, 0.003);
        assertEquals(1, halfPower.dampingRatio() / damping, 0.08); // a straight line between lines 0.25 Hz apart
    }
}
