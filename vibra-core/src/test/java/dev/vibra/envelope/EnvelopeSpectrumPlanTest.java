package dev.vibra.envelope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.testing.Reference;
import dev.vibra.transform.RealTransform;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EnvelopeSpectrumPlanTest {
    private static double[] lines(double[] samples) {
        RealTransform transform = RealTransform.of(samples.length);
        return transform.forward(samples, 0, new double[2 * transform.lines()]);
    }

    /** {@code scipy.signal.hilbert} and {@code periodogram} with a Hann window, {@code stats.variation}. */
    @Test
    void depthsAgreeWithSciPy() {
        Reference scipy = Reference.of("scipy-record.txt");
        double[] x = scipy.row("samples");
        EnvelopeSpectrumPlan plan = EnvelopeSpectrumPlan.of(x.length, 1000, Band.of(100, 300), 60);
        EnvelopeSpectrum spectrum = plan.spectrum(lines(x), Quantity.VELOCITY);
        scipy.assertRow("depths", Arrays.copyOfRange(plan.depths(new double[77]), 1, 77), 1e-9);
        scipy.assertRow("depths", Arrays.copyOfRange(spectrum.depths(), 1, 77), 1e-9);
        assertEquals(scipy.value("kurtosis"), spectrum.spectralKurtosis(), 1e-9);
    }

    /** The spectrum by the other way, with and without ends of the range in the band, at even and odd lengths. */
    @ParameterizedTest
    @ValueSource(ints = {25_600, 25_601, 24_998})
    void isTheSpectrumOfOneBlock(int length) {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, length).noise(1, 1)
                .impacts(ImpactTrain.of(87, 4, 4000, 0.03), 2).waveform();
        double[] lines = lines(wave.samples());
        for (Band band : new Band[] {Band.of(2000, 6000), Band.of(0, 3000), Band.of(9000, 12_800)}) {
            EnvelopeSpectrum expected = EnvelopeSpectrum.of(wave, band).upTo(1000);
            EnvelopeSpectrumPlan plan = EnvelopeSpectrumPlan.of(length, 25_600, band, 1000);
            EnvelopeSpectrum actual = plan.spectrum(lines, Quantity.ACCELERATION);
            assertEquals(expected.lines(), actual.lines());
            assertEquals(expected.resolutionHertz(), actual.resolutionHertz(), 1e-12);
            assertEquals(expected.level().si(), actual.level().si(), 1e-12);
            assertEquals(expected.level().si(), plan.rms(), 1e-12);
            assertEquals(expected.band(), actual.band());
            assertEquals(1, actual.blocks());
            assertEquals(expected.spectralKurtosis(), actual.spectralKurtosis(), 1e-9 * (3 + expected.spectralKurtosis()));
            for (int k = 0; k < expected.lines(); k++) {
                assertEquals(expected.depth(k), actual.depth(k), 1e-10, band + " line " + k);
                assertEquals(actual.depth(k), plan.depth(k), 0);
            }
        }
    }

    /** Up to the very width of the band, as far as an envelope has lines. */
    @Test
    void reachesTheWidthOfTheBand() {
        Waveform wave = Synthesis.silence(Quantity.VELOCITY, 1000, 2000).noise(1, 2).waveform();
        Band band = Band.of(100, 150);
        EnvelopeSpectrum expected = EnvelopeSpectrum.of(wave, band).upTo(50);
        EnvelopeSpectrumPlan plan = EnvelopeSpectrumPlan.of(2000, 1000, band, 50);
        plan.take(lines(wave.samples()));
        assertEquals(101, plan.lines());
        for (int k = 0; k < 101; k++) {
            assertEquals(expected.depth(k), plan.depth(k), 1e-10, "line " + k);
        }
    }

    @Test
    void badArgumentsAreNamed() {
        assertMessage("highestHertz must be within 0.5 to 100.0 Hz: 101.0",
                () -> EnvelopeSpectrumPlan.of(2000, 1000, Band.of(100, 200), 101));
        assertMessage("band must hold at least two lines, 0.5 Hz apart: 100\u2013100.1 Hz",
                () -> EnvelopeSpectrumPlan.of(2000, 1000, Band.of(100, 100.1), 1));
        EnvelopeSpectrumPlan plan = EnvelopeSpectrumPlan.of(2000, 1000, Band.of(100, 200), 50);
        assertMessage("band must hold vibration: 100\u2013200 Hz is silent",
                () -> plan.spectrum(new double[2002], Quantity.VELOCITY));
        assertEquals(0, plan.depth(3));
        double[] bad = new double[2002];
        bad[602] = Double.POSITIVE_INFINITY;
        assertMessage("mean square of the envelope must be finite: NaN", () -> plan.take(bad));
        assertMessage("spectrum must lie inside the array of length 2001: offset 0, length 2002",
                () -> plan.take(new double[2001]));
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
