package dev.vibra.transfer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.synthesis.Synthesis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every form of a response, and what no mode can be read from. */
class TransferEdgesTest {
    private static final double RATE = 4096;
    private static final double NATURAL = 100;
    private static final double DAMPING = 0.02;

    private static void assertRefused(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }

    private static Waveform blow(int length) {
        double[] force = new double[length];
        force[64] = RATE; // 1 N·s
        return Waveform.ofSi(Quantity.VOLTAGE, RATE, force);
    }

    /** Closed form: displacement, velocity or acceleration of 1 kg after a blow, D. J. Ewins 2000, section 2.4. */
    private static Waveform answer(Quantity quantity, int length) {
        double omega = 2 * Math.PI * NATURAL;
        double damped = omega * Math.sqrt(1 - DAMPING * DAMPING);
        double[] x = new double[length];
        for (int i = 64; i < length; i++) {
            double t = (i - 64) / RATE;
            double decay = Math.exp(-DAMPING * omega * t);
            double sine = Math.sin(damped * t) / damped;
            double displacement = decay * sine;
            double velocity = decay * (Math.cos(damped * t) - DAMPING * omega * sine);
            x[i] = quantity == Quantity.DISPLACEMENT ? displacement : quantity == Quantity.VELOCITY ? velocity
                    : -2 * DAMPING * omega * velocity - omega * omega * displacement;
        }
        x[64] *= 0.5; // a jump is sampled half-way
        if (quantity == Quantity.ACCELERATION) {
            x[64] += RATE; // the blow itself
        }
        return Waveform.ofSi(quantity, RATE, x);
    }

    private static FrequencyResponse response(Quantity quantity) {
        int length = 8 * 4096;
        return ImpactTest.withDefaults().withHit(blow(length), answer(quantity, length)).response();
    }

    /** Receptance, mobility and accelerance of one mode name the same mode. */
    @ParameterizedTest
    @CsvSource({"DISPLACEMENT, -1", "VELOCITY, 0", "ACCELERATION, 1"})
    void anyMotionNamesTheMode(Quantity quantity, int integrations) {
        FrequencyResponse response = response(quantity);
        Band band = Band.of(70, 140);
        for (Mode mode : new Mode[] {ModeFit.halfPower(response, integrations, band),
            ModeFit.circle(response, integrations, band)}) {
            assertEquals(NATURAL, mode.naturalHertz(), 0.001 * NATURAL);
            assertEquals(DAMPING, mode.dampingRatio(), 0.02 * DAMPING);
        }
    }

    @Test
    void bandsWithoutAWholePeakAreRefused() {
        FrequencyResponse response = response(Quantity.VELOCITY);
        assertRefused("band must hold at least three lines, 0.125 Hz apart: 100\u2013100.2 Hz",
                () -> ModeFit.circle(response, 0, Band.of(100, 100.2)));
        assertRefused("band must hold a peak that falls by 3 dB on both sides: largest at 101 Hz",
                () -> ModeFit.halfPower(response, 0, Band.of(101, 140)));
        assertRefused("band must hold a peak that falls by 3 dB on both sides: largest at 99 Hz",
                () -> ModeFit.halfPower(response, 0, Band.of(70, 99)));
        // Lines 8 Hz apart, the half-power width is 4 Hz, widened by the end of the block: 96 Hz and 104 Hz.
        FrequencyResponse coarse = ImpactTest.withDefaults().withHit(blow(512), answer(Quantity.VELOCITY, 512))
                .response();
        assertRefused("at least three lines must lie between the half-power points: 2",
                () -> ModeFit.circle(coarse, 0, Band.of(40, 200)));
    }

    @Test
    void hitsMustMatchEachOtherAndTheFirst() {
        ImpactTest one = ImpactTest.withDefaults().withHit(blow(512), answer(Quantity.VELOCITY, 512));
        assertEquals("impact test of 2 hit(s)", one.withHit(blow(512), answer(Quantity.VELOCITY, 512)).toString());
        assertRefused("output must have length and sample rate of the input, " + blow(512) + ": " + blow(256),
                () -> one.withHit(blow(256), answer(Quantity.VELOCITY, 256)));
        Waveform slower = Waveform.ofSi(Quantity.VELOCITY, RATE / 2, new double[512]);
        assertRefused("output must have length and sample rate of the input, " + blow(512) + ": " + slower,
                () -> one.withHit(blow(512), slower));
        assertRefused("number of samples must be at least 8: 7", () -> one.withHit(
                Waveform.ofSi(Quantity.VOLTAGE, RATE, new double[7]),
                Waveform.ofSi(Quantity.VELOCITY, RATE, new double[7])));
        FrequencyResponse both = one.withHit(blow(512), answer(Quantity.VELOCITY, 512)).response();
        assertEquals(2, both.blocks());
        assertEquals(one.response().h1(12).abs(), both.h1(12).abs(), 1e-15);
        assertEquals("response of velocity to voltage, 257 lines, 2 averages", both.toString());
        assertEquals("response of velocity to voltage, 257 lines, 1 average", one.response().toString());
    }

    @Test
    void silenceHasNoCoherence() {
        Waveform noise = Synthesis.silence(Quantity.ACCELERATION, 1000, 400).noise(1, 1).waveform();
        Waveform silence = Waveform.ofSi(Quantity.ACCELERATION, 1000, new double[400]);
        SpectrumSettings settings = SpectrumSettings.withDefaults().withResolution(10);
        assertEquals(0, FrequencyResponse.of(noise, silence, settings).coherence(7));
        assertEquals(0, FrequencyResponse.of(silence, noise, settings).coherence(7));
        assertEquals(1, FrequencyResponse.of(noise, noise, settings).coherence(7), 1e-12);
        assertEquals(7, FrequencyResponse.of(noise, noise, settings).blocks());
        assertEquals(Double.POSITIVE_INFINITY, FrequencyResponse.of(noise, silence, settings).randomError(7));
        assertRefused("number of samples must be at least 2: 1", () -> FrequencyResponse.of(
                Waveform.ofSi(Quantity.VOLTAGE, 1, 1), Waveform.ofSi(Quantity.VOLTAGE, 1, 1), settings));
    }

    @Test
    void windowsEndAboveZeroAndAtMostAtOne() {
        Mode mode = new Mode(100, 0.02);
        assertEquals(0.02, mode.withoutWindowDamping(1, 4).dampingRatio());
        assertRefused("endValue must be above 0 and at most 1: 0.0", () -> mode.withoutWindowDamping(0, 4));
        assertRefused("endValue must be above 0 and at most 1: 1.5", () -> mode.withoutWindowDamping(1.5, 4));
        assertRefused("endValue must be above 0 and at most 1: NaN", () -> mode.withoutWindowDamping(Double.NaN, 4));
        assertRefused("blockSeconds must be finite and > 0 s: 0.0", () -> mode.withoutWindowDamping(0.5, 0));
        assertRefused("dampingRatio must be at least 0 and below 1: -0.01", () -> new Mode(100, -0.01));
    }

    /** A recording against itself has the response 1 at every line: one point is no circle. */
    @Test
    void oneLineOrPointIsNoCircle() {
        Waveform noise = Synthesis.silence(Quantity.VELOCITY, RATE, 4096).noise(1, 3).waveform();
        FrequencyResponse flat = FrequencyResponse.of(noise, noise, SpectrumSettings.withDefaults().withResolution(8));
        assertRefused("lines between the half-power points must lie on a circle, not on a straight line or a point: 25"
                + " lines", () -> ModeFit.circle(flat, 0, Band.of(100, 300)));
    }

    @Test
    void whereTheInputIsSilentThereIsNoResponse() {
        Waveform silence = Synthesis.silence(Quantity.VOLTAGE, RATE, 4096).waveform();
        Waveform noise = Synthesis.silence(Quantity.VELOCITY, RATE, 4096).noise(1, 3).waveform();
        SpectrumSettings settings = SpectrumSettings.withDefaults().withResolution(8);
        FrequencyResponse response = FrequencyResponse.of(silence, noise, settings);
        assertEquals("H1 needs power of the input at a line: none at 80 Hz",
                assertThrows(IllegalStateException.class, () -> response.h1(10)).getMessage());
        assertEquals("H2 needs power of the cross spectrum at a line: none at 80 Hz",
                assertThrows(IllegalStateException.class, () -> response.h2(10)).getMessage());
        assertThrows(IllegalStateException.class, () -> response.hv(10));
        assertEquals(0, response.coherence(10));
        assertThrows(IndexOutOfBoundsException.class, () -> response.frequencyHertz(response.lines()));
    }
}
