package dev.vibra.properties;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bandmap.BandCriterion;
import dev.vibra.bandmap.BandMapPlan;
import dev.vibra.envelope.Envelope;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.envelope.SquaredEnvelope;
import dev.vibra.filter.FilterDesign;
import dev.vibra.filter.FirDesign;
import dev.vibra.filter.Resampling;
import dev.vibra.integration.Detrending;
import dev.vibra.integration.TimeIntegrator;
import dev.vibra.lines.LineNoise;
import dev.vibra.lines.NoiseFloor;
import dev.vibra.octave.OctaveBand;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.AngularWaveform;
import dev.vibra.rotation.PulseTrain;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.rotation.SpeedEstimate;
import dev.vibra.rotation.SpeedKnowledge;
import dev.vibra.rotation.TrackedAngle;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.ConfidenceInterval;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumPlan;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.window.Window;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Numbers that no machine has are refused by name, or give a number; nothing turns into NaN in silence. */
class LimitsTest {
    private static final RotationSpeed SPEED = RotationSpeed.ofHertz(25);

    private static void assertRefused(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }

    @Test
    void valuesStayFiniteInEveryUnit() {
        assertRefused("samples[1] must be within ±1e70: 1.0E200",
                () -> Waveform.ofSi(Quantity.VELOCITY, 1000, 0, 1e200));
        assertRefused("number of samples over the sample rate must be finite and > 0 s: Infinity",
                () -> Waveform.ofSi(Quantity.VELOCITY, 4.9e-324, 0, 1));
        assertRefused("level must be within 0.0 to 1.0E300: 1.0E305",
                () -> Level.ofSi(1e305, Quantity.VELOCITY, Detector.RMS));
        assertRefused("frequency of the order must be finite: Infinity", () -> SPEED.hertzOfOrder(1e308));
        assertRefused("index must be from -2700 to 2700: 2701", () -> new OctaveBand(3, 2701));
        assertTrue(new OctaveBand(3, 2700).edges().highestHertz() < Double.POSITIVE_INFINITY);
        assertTrue(OctaveBand.within(1, Band.of(4.9e-324, 1e308)).size() > 1800);
        assertRefused("upper must be finite: Infinity", () -> new ConfidenceInterval(0, Double.POSITIVE_INFINITY));
        assertRefused("upper must be at least lower, 2.0: 1.0", () -> new ConfidenceInterval(2, 1));
    }

    @Test
    void tablesOfTheLibraryRefuseWhatTheyCannotFollow() {
        assertRefused("attenuationDecibels must be within 1.0E-6 to 200.0 dB: 4.9E-324",
                () -> FilterDesign.chebyshev2(1, 4.9e-324));
        for (int order = 1; order <= 20; order++) {
            assertTrue(FilterDesign.chebyshev2(order, 1e-6).lowPass(100, 1000).gain(10, 1000) >= 0);
        }
        assertRefused("new sample rate must be finite and > 0 Hz: Infinity",
                () -> Resampling.by(3, 1).outputSampleRateHertz(1e308));
        assertRefused("samples[0] must be finite: NaN", () -> Detrending.withoutMean(Double.NaN, 1));
        assertRefused("samples less their mean[0] must be finite: -Infinity",
                () -> Detrending.withoutMean(1e308, 1e308));
        assertRefused("samples[0] must be finite: Infinity",
                () -> TimeIntegrator.runningTrapezoid(new double[] {Double.POSITIVE_INFINITY, 1}, 1));
        assertRefused("bins must be within -1.0E9 to 1.0E9: NaN", () -> Window.hann().response(Double.NaN));
        assertEquals("worker of 16 samples, Hann", SpectrumPlan.of(16, Window.hann()).newWorker().toString());
    }

    @Test
    void lengthsAreThoseOfRecordings() {
        assertRefused("length must be from 1 to 67108864: 2147483647", () -> Window.hann().samples(Integer.MAX_VALUE));
        assertRefused("length must be from 1 to 67108864: 0", () -> Window.hann().closedSamples(0));
        assertRefused("length must be from 1 to 67108864: 1073741824",
                () -> Synthesis.silence(Quantity.VELOCITY, 1000, 1 << 30));
        assertRefused("number of samples must be from 16 to 67108864: 2147483647",
                () -> BandMapPlan.of(Integer.MAX_VALUE, 1000, 100));
        assertRefused("taps must be from 1 to 4194304: 2147483647",
                () -> FirDesign.lowPass(Integer.MAX_VALUE, 100, 1000, Window.hann()));
        assertRefused("up and down must be at most 65536 in lowest terms: 65537/2", () -> Resampling.by(65_537, 2));
        assertRefused("length must be at least 0: -1", () -> Resampling.by(3, 1).outputLength(-1));
        assertEquals(67_108_863, Resampling.by(3, 1).outputLength(22_369_621));
        assertRefused("length must be at most 22369621 for resampling by 3/1: 22369622",
                () -> Resampling.by(3, 1).outputLength(22_369_622));
        assertEquals(Integer.MAX_VALUE, Resampling.by(1, 1).outputLength(Integer.MAX_VALUE));
        assertRefused("rateHertz times the samples of the ringing over the sample rate must be within 0.0 to 10000.0: "
                + "50000.0", () -> Synthesis.silence(Quantity.ACCELERATION, 1000, 100)
                        .impacts(ImpactTrain.of(5e5, 1, 0.001, 0.001), 1));
        assertEquals("no peaks",
                Spectrum.of(Waveform.ofSi(Quantity.VELOCITY, 1000, new double[100])).peaks(3).toString());
    }

    private static void assertNamed(String argument, Executable call) {
        assertEquals(argument, assertThrows(NullPointerException.class, call).getMessage());
    }

    @Test
    void nullsAreNamedWhateverElseIsWrong() {
        Waveform wave = Waveform.ofSi(Quantity.VOLTAGE, 1000, new double[100]);
        assertNamed("target", () -> Quantity.VOLTAGE.integrationsTo(null));
        assertNamed("bands[1]", () -> Envelope.squared(wave, Arrays.asList(Band.of(10, 100), null)));
        assertNamed("envelopes[0]", () -> EnvelopeSpectrum.unlessSilent(Arrays.asList((SquaredEnvelope) null), 1));
        assertNamed("criteria[0]", () -> BandMapPlan.of(100, 1000, 100).maps(new double[100], 0, Arrays.asList(
                (BandCriterion) null)));
    }

    @Test
    void stepsOfAngleAreNotMuchFinerThanSamples() {
        Waveform wave = Synthesis.silence(Quantity.VELOCITY, 1000, 5000).tone(1, 25, 0).waveform();
        ShaftAngle angle = ShaftAngle.of(PulseTrain.of(0, 1, 2, 3, 4), 1);
        assertEquals(4 * 262_144, AngularWaveform.of(wave, angle, 262_144).length());
        assertRefused("samplesPerRevolution must be at most 262144 for 4 revolutions of 5000 samples: 262145",
                () -> AngularWaveform.of(wave, angle, 262_145));
        assertRefused("revolutions of the angle must be within 0.0 to 1.0E9: 4.0E12",
                () -> AngularWaveform.of(wave, angle.geared(1e12), 4));
        assertRefused("multiples must be one or more, each at least 1: -3",
                () -> TrackedAngle.of(wave, SPEED, 1, 0, -3));
        assertRefused("multiples must be one or more, each at least 1: none",
                () -> TrackedAngle.of(wave, SPEED, new int[0]));
        assertEquals(2, AngularWaveform.of(wave.part(1500, 3000), angle, 64).revolutions());
    }

    @Test
    void shaftsTurnAtSpeedsThatAreNumbers() {
        ShaftAngle angle = ShaftAngle.of(PulseTrain.of(0, 1, 2, 3, 4), 1);
        assertEquals(0, angle.secondsAt(-0.0));
        assertEquals(1, angle.speedAt(-0.0).hertz(), 1e-12);
        assertRefused("ratio must be within 1.0E-100 to 1.0E100: 1.7E308", () -> angle.geared(1.7e308));
        assertRefused("pulsesPerRevolution must be from 1 to 1000000: 2147483647",
                () -> ShaftAngle.of(PulseTrain.of(0, 1, 2, 3), Integer.MAX_VALUE));
        SpeedProfile profile = new SpeedProfile(SPEED, RotationSpeed.ofHertz(50), 2);
        assertRefused("time must be finite and near the profile's 2.0 s: 1.0E300", () -> profile.revolutionsAt(1e300));
        assertRefused("number of samples must be within 1.0 to 1.6777216E7: 2.0E10", () -> profile.tachometer(1e10, 1));
        assertRefused("mean speed times seconds must be finite and > 0 revolutions: Infinity",
                () -> new SpeedProfile(SPEED, SPEED, 1e308));
    }

    @Test
    void improbableLinesKeepALogarithm() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 2048, 4096).noise(1, 1).waveform();
        Spectrum spectrum = Spectrum.of(wave);
        NoiseFloor floor = NoiseFloor.of(spectrum, 60);
        assertEquals(0, floor.probability(100, 1e300));
        assertTrue(floor.log10Probability(100, 1e300, 1) < -1e98);
        assertEquals(-1e100, LineNoise.of(1).logExceedance(1e300), 1e90);
        NoiseFloor other = NoiseFloor.of(new double[] {1, 1, 1}, 1, LineNoise.of(4), 0, Integer.MAX_VALUE);
        assertRefused("number of lines of the floor must be from 1025 to 1025: 3",
                () -> SpeedEstimate.of(spectrum, other, SpeedKnowledge.none()));
    }
}
