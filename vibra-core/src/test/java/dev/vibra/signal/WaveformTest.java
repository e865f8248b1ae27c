package dev.vibra.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.integration.BandLimitingChain;
import dev.vibra.octave.OctaveBands;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.synthesis.Synthesis;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaveformTest {
    private static final Band SEVERITY = Band.of(10, 1000);

    /** As documented: exact in the band, half a cosine down to nothing at 0.6 and 1.1 times its ends. */
    @Test
    void skirtsOfABandAreAsSaid() {
        double[][] cases = {{100, 1}, {400, 1}, {80, 0.5}, {60, 0}, {420, 0.5}, {440, 0}};
        for (double[] c : cases) {
            Waveform tone = Waveform.ofSi(Quantity.VELOCITY, 2000, sine(c[0], 8000)).velocity(Band.of(100, 400));
            double rms = tone.part(tone.length() / 4, tone.length() / 2).rms().si();
            assertEquals(c[1] / Math.sqrt(2), rms, 2e-3, c[0] + " Hz");
        }
    }

    private static double[] sine(double hertz, int length) {
        double[] x = new double[length];
        for (int i = 0; i < length; i++) {
            x[i] = Math.sin(2 * Math.PI * hertz * i / 2000);
        }
        return x;
    }

    /** A sine of 1 g at 159.155 Hz (1000 rad/s): 9.80665 m/s², 9.80665 mm/s, 9.80665 µm, zero to peak. */
    @Test
    void oneGravityAtAThousandRadiansPerSecond() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, 102_400)
                .tone(Unit.G.toSi(), 1000 / (2 * Math.PI), 0).waveform();
        assertEquals(1, wave.peak().in(Unit.G), 1e-3);
        assertEquals(9.80665, wave.velocity(SEVERITY).peak().in(Unit.MM_PER_S), 0.01);
        assertEquals(2 * 9.80665, wave.displacement(SEVERITY).peakToPeak().in(Unit.UM), 0.02);
        assertEquals(9.80665 / Math.sqrt(2), wave.velocity(SEVERITY).rms().in(Unit.MM_PER_S), 0.007);
    }

    /** The chain reads 0.7071 at the ends of the band, the flat path 1: they differ by definition. */
    @Test
    void thePathsDifferAtTheEndOfTheBandByDefinition() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 12_800, 8 * 12_800).tone(1, 10, 0).waveform();
        double omega = 2 * Math.PI * 10;
        double chain = wave.throughSeverityChain(Quantity.VELOCITY, SEVERITY).rms().si() * omega * Math.sqrt(2);
        assertEquals(Math.sqrt(0.5), chain, 0.001);
        assertEquals(1, wave.velocity(SEVERITY).rms().si() * omega * Math.sqrt(2), 0.002);
        assertEquals(Math.sqrt(0.5), BandLimitingChain.nominalGain(SEVERITY, 10), 1e-9);
    }

    /** Nominal response of ISO 2954:2012, closed form: 0.7071 at both ends, 0.9923 at 20 and 500 Hz, 0.124 at 5 Hz. */
    @ParameterizedTest
    @CsvSource({"5, 0.1240", "10, 0.7071", "20, 0.9923", "80, 1.0000", "500, 0.9923", "1000, 0.7071", "2000, 0.1240"})
    void theChainLimitsAccelerationWithoutIntegration(double hertz, double gain) {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 12_800, 8 * 12_800).tone(Math.sqrt(2), hertz, 0.3)
                .waveform();
        Level level = wave.throughSeverityChain(Quantity.ACCELERATION, SEVERITY).rms();
        assertEquals(Quantity.ACCELERATION, level.quantity());
        assertEquals(gain, level.si(), 1e-3);
    }

    @Test
    void eachWayToALevelLeavesItsName() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 12_800, 8 * 12_800).tone(1, 11.5, 0).waveform();
        Waveform chain = wave.throughSeverityChain(Quantity.VELOCITY, SEVERITY);
        assertEquals(LevelMethod.WHOLE_SIGNAL, wave.peak().method());
        assertEquals(LevelMethod.SEVERITY_CHAIN, chain.part(10, 100).startingAt(3).peakToPeak().method());
        assertEquals(LevelMethod.ZERO_PHASE_BAND, wave.velocity(SEVERITY).rms().method());
        assertEquals(LevelMethod.SPECTRUM_BAND, Spectrum.of(wave).velocity().bandLevel(SEVERITY).method());
        assertEquals(LevelMethod.SPECTRUM_LINE, Spectrum.of(wave).peaks(1).get(0).level().method());
        assertEquals(LevelMethod.OCTAVE_FILTER, OctaveBands.levels(wave, 1, Band.of(60, 70)).values().iterator().next()
                .method());
        assertMessage("waveform must not be limited to a band before the severity chain: 10\u20131000 Hz, zero-phase"
                + " band", () -> wave.acceleration(SEVERITY).throughSeverityChain(Quantity.VELOCITY, SEVERITY));
    }

    @Test
    void samplesAreCopiedInAndOut() {
        double[] x = {1, 2, 3};
        Waveform wave = Waveform.of(Unit.MM_PER_S, 10, x);
        x[0] = 99;
        wave.samples()[1] = 99;
        assertArrayEquals(new double[] {0.001, 0.002, 0.003}, wave.samples(), 1e-18);
        assertArrayEquals(new double[] {1, 2, 3}, wave.in(Unit.MM_PER_S), 1e-15);
        double[] target = new double[4];
        wave.copyTo(1, target, 2, 2);
        assertArrayEquals(new double[] {0, 0, 0.002, 0.003}, target, 1e-18);
    }

    @Test
    void partsKnowTheirStart() {
        Waveform wave = Waveform.ofSi(Quantity.VELOCITY, 10, 0, 1, 2, 3, 4);
        Waveform part = wave.part(2, 2).part(1, 1);
        assertEquals(0.3, part.startSeconds(), 1e-12);
        assertEquals(3, part.at(0));
        assertEquals(0.5, wave.durationSeconds());
        Waveform velocity = Synthesis.silence(Quantity.ACCELERATION, 1000, 5000).tone(1, 30, 0).waveform()
                .velocity(Band.of(10, 100));
        assertEquals(0.3, velocity.startSeconds(), 1e-12);
        assertEquals(Optional.of(Band.of(10, 100)), velocity.band());
        assertEquals("10\u2013100 Hz", velocity.rms().band().orElseThrow().toString());
        assertTrue(wave.rms().band().isEmpty());
    }

    @Test
    void waveformsAreValuesThatPrintWell() throws Exception {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, 102_400).tone(18.2, 50, 0).waveform();
        assertEquals("102,400 samples at 25,600 Hz, acceleration, 4.000 s, 18.2 m/s\u00b2 peak", wave.toString());
        assertEquals("3 samples at 0.500000 Hz, voltage, 6.000 s, 1.00 V peak",
                Waveform.ofSi(Quantity.VOLTAGE, 0.5, 1, 2, 3).toString());
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(wave);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            Waveform copy = (Waveform) in.readObject();
            assertEquals(wave, copy);
            assertEquals(wave.hashCode(), copy.hashCode());
        }
        assertNotEquals(wave, wave.part(0, 102_399));
        assertNotEquals(Waveform.ofSi(Quantity.VELOCITY, 1, 1, 2), Waveform.ofSi(Quantity.VELOCITY, 2, 1, 2));
        assertNotEquals(Waveform.ofSi(Quantity.VELOCITY, 1, 1, 2), Waveform.ofSi(Quantity.VOLTAGE, 1, 1, 2));
    }

    @Test
    void waveformsAreEqualInEveryPart() {
        Waveform wave = Waveform.ofSi(Quantity.VELOCITY, 1000, sine(50, 4000));
        assertEquals(wave, Waveform.ofSi(Quantity.VELOCITY, 1000, sine(50, 4000)));
        assertNotEquals(wave, wave.startingAt(1));
        assertNotEquals(wave, Waveform.ofSi(Quantity.VELOCITY, 1000, sine(51, 4000)));
        assertNotEquals(wave, "wave");
        Waveform limited = wave.velocity(Band.of(10, 100));
        Waveform unlimited = Waveform.ofSi(Quantity.VELOCITY, 1000, limited.samples())
                .startingAt(limited.startSeconds());
        assertNotEquals(limited, unlimited);
        assertEquals(limited, wave.velocity(Band.of(10, 100)));
        assertTrue(limited.toString().startsWith("3,400 samples at 1,000 Hz, velocity 10\u2013100 Hz, 3.400 s, "),
                limited.toString());
        String fast = Waveform.ofSi(Quantity.VOLTAGE, 2e9, 1, 2).toString();
        assertTrue(fast.startsWith("2 samples at 2.00000e+09 Hz, voltage, "), fast);
    }

    @Test
    void placesAndPartsMustBeInside() {
        Waveform wave = Waveform.ofSi(Quantity.VELOCITY, 10, 0, 1, 2);
        assertEquals(2, wave.at(2));
        assertThrows(IndexOutOfBoundsException.class, () -> wave.at(3));
        assertThrows(IndexOutOfBoundsException.class, () -> wave.at(-1));
        assertMessage("samples must lie inside the array of length 3: offset 2, length 2", () -> wave.part(2, 2));
        assertMessage("length must be at least 1: 0", () -> wave.part(1, 0));
        assertMessage("samples must lie inside the array of length 3: offset 2, length 2",
                () -> wave.copyTo(2, new double[5], 0, 2));
        assertMessage("target must lie inside the array of length 2: offset 1, length 2",
                () -> wave.copyTo(0, new double[2], 1, 2));
        assertMessage("seconds must be finite: NaN", () -> wave.startingAt(Double.NaN));
    }

    @Test
    void shapesAreThoseOfTheMoments() {
        Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, 1, -1, 0, 0, 5);
        assertEquals(wave.moments().crestFactor(), wave.crestFactor());
        assertEquals(wave.moments().kurtosis(), wave.kurtosis());
        assertEquals(wave.moments().skewness(), wave.skewness());
        assertEquals(wave.moments().rms(), wave.rms().si());
    }

    @Test
    void badArgumentsAreNamed() {
        assertMessage("number of samples must be at least 1: 0", () -> Waveform.ofSi(Quantity.VELOCITY, 1));
        assertMessage("samples[1] must be finite: NaN", () -> Waveform.of(Unit.G, 1, 0, Double.NaN));
        assertMessage("samples[0] must be finite: Infinity",
                () -> Waveform.ofSi(Quantity.VELOCITY, 1, Double.POSITIVE_INFINITY));
        assertMessage("samples[0] must be finite: Infinity", () -> Waveform.of(Unit.G, 1, Double.MAX_VALUE));
        assertMessage("sampleRateHertz must be finite and > 0 Hz: 0.0", () -> Waveform.ofSi(Quantity.VELOCITY, 0, 1));
        assertMessage("sampleRateHertz must be finite and > 0 Hz: -5.0", () -> Waveform.ofSi(Quantity.VELOCITY, -5, 1));
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 2560, 2000).tone(1, 50, 0).waveform();
        assertMessage("unit must measure acceleration: mm/s measures velocity", () -> wave.in(Unit.MM_PER_S));
        assertMessage("recording must be at least 0.826 s long for the severity chain 10\u20131000 Hz: 0.781 s",
                () -> wave.throughSeverityChain(Quantity.VELOCITY, SEVERITY));
        assertMessage("recording must be at least 0.9 s long for a band from 10.0 Hz: 0.78125 s",
                () -> wave.velocity(SEVERITY));
        assertMessage("samples must lie inside the array of length 2000: offset 1999, length 2",
                () -> wave.part(1999, 2));
        assertMessage("length must be at least 1: 0", () -> wave.part(0, 0));
        assertThrows(IndexOutOfBoundsException.class, () -> wave.at(2000));
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
