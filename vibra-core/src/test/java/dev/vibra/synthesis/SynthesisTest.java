package dev.vibra.synthesis;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.level.Moments;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class SynthesisTest {
    private static Synthesis silence(int length) {
        return Synthesis.silence(Quantity.ACCELERATION, 1000, length);
    }

    @Test
    void toneIsACosine() {
        double[] x = silence(5).tone(2, 125, Math.PI / 4).waveform().samples();
        for (int i = 0; i < 5; i++) {
            assertEquals(2 * Math.cos(2 * Math.PI * 125 * i / 1000 + Math.PI / 4), x[i], 1e-12);
        }
    }

    @Test
    void toneKeepsItsPhaseOverManySamples() {
        double[] x = silence(200_000).tone(1, 123.4, 0.5).waveform().samples();
        double[] swinging = silence(200_000).modulatedTone(1, 123.4, 7.7, 0.6, 0).waveform().samples();
        for (int i = 0; i < x.length; i += 37) {
            double turned = 2 * Math.PI * 123.4 / 1000 * i;
            assertEquals(Math.cos(turned + 0.5), x[i], 1e-10);
            assertEquals((1 + 0.6 * Math.cos(2 * Math.PI * 7.7 / 1000 * i)) * Math.cos(turned), swinging[i], 1e-10);
        }
    }

    /** Closed form: at its corner a first-order lag passes 1/√2 and lags 45°. */
    @Test
    void firstOrderSensorLags() {
        double[] x = silence(1000).tone(1, 100, 0).firstOrder(100).waveform().samples();
        for (int i = 0; i < 1000; i++) {
            assertEquals(Math.sqrt(0.5) * Math.cos(2 * Math.PI * 0.1 * i - Math.PI / 4), x[i], 1e-12);
        }
    }

    /** Closed form: at its natural frequency one degree of freedom magnifies by 1/(2ζ) and lags 90°. */
    @Test
    void secondOrderSensorResounds() {
        double[] x = silence(1000).tone(1, 100, 0).secondOrder(100, 0.05).waveform().samples();
        double[] low = silence(1000).tone(1, 1, 0).secondOrder(100, 0.05).waveform().samples();
        for (int i = 0; i < 1000; i++) {
            assertEquals(10 * Math.sin(2 * Math.PI * 0.1 * i), x[i], 1e-11);
            assertEquals(Math.cos(2 * Math.PI * 0.001 * i), low[i], 1.1e-3);
        }
    }

    /** Normal noise has kurtosis 3; its estimate from n samples scatters by √(24/n). */
    @Test
    void noiseIsNormalAndRepeats() {
        Waveform noise = silence(200_000).noise(3, 7).waveform();
        Moments moments = noise.moments();
        assertEquals(3, moments.rms(), 4 * 3 / Math.sqrt(2 * 200_000));
        assertEquals(3, moments.kurtosis(), 4 * Math.sqrt(24.0 / 200_000));
        assertEquals(0, moments.mean(), 4 * 3 / Math.sqrt(200_000));
        assertEquals(noise, silence(200_000).noise(3, 7).waveform());
        assertTrue(!noise.equals(silence(200_000).noise(3, 8).waveform()));
    }

    /** Closed form: impulse response of one degree of freedom, S. S. Rao, Mechanical Vibrations, section 4.2. */
    @Test
    void anImpactRingsDown() {
        ImpactTrain train = ImpactTrain.of(2, 5, 100, 0.02);
        double[] x = Synthesis.silence(Quantity.ACCELERATION, 10_000, 5000).impacts(train, 1).waveform().samples();
        double damped = 2 * Math.PI * 100 * Math.sqrt(1 - 0.0004);
        for (int i = 0; i < 5000; i++) {
            double t = i / 10_000.0 - 0.25;
            double expected = t < 0 ? 0 : 5 * Math.exp(-0.02 * 2 * Math.PI * 100 * t) * Math.sin(damped * t);
            assertEquals(expected, x[i], 1e-5);
        }
    }

    /** Closed form: each impact is a decaying sine by itself, followed until it has fallen to a millionth. */
    @Test
    void impactsThatOverlapAddUp() {
        double rate = 20_000;
        double decay = 2 * Math.PI * 0.004 * 1234;
        double damped = 2 * Math.PI * 1234 * Math.sqrt(1 - 0.004 * 0.004);
        int ringing = (int) Math.ceil(Math.log(1e6) / decay * rate);
        double[] expected = new double[60_000];
        for (double time = 0.5 / 87; time < 3; time += 1.0 / 87) {
            int first = (int) Math.ceil(time * rate);
            for (int i = first; i < Math.min(expected.length, first + ringing); i++) {
                double since = i / rate - time;
                expected[i] += 3 * Math.exp(-decay * since) * Math.sin(damped * since);
            }
        }
        double[] x = Synthesis.silence(Quantity.ACCELERATION, rate, 60_000)
                .impacts(ImpactTrain.of(87, 3, 1234, 0.004), 1).waveform().samples();
        assertArrayEquals(expected, x, 1e-10);
        double[] once = Synthesis.silence(Quantity.ACCELERATION, rate, 60_000)
                .impacts(ImpactTrain.of(0.4, 3, 1234, 0.1), 1).waveform().samples();
        assertArrayEquals(new double[20_000], java.util.Arrays.copyOfRange(once, 40_000, 60_000));
    }

    @Test
    void impactsComeAtTheirRateWithTheirJitterAndModulation() {
        ImpactTrain steady = ImpactTrain.of(10, 1, 2000, 0.2);
        double[] x = Synthesis.silence(Quantity.ACCELERATION, 20_000, 200_000).impacts(steady, 1).waveform().samples();
        assertEquals(100, onsets(x));
        ImpactTrain slipping = steady.withJitter(0.02);
        Waveform a = Synthesis.silence(Quantity.ACCELERATION, 20_000, 200_000).impacts(slipping, 1).waveform();
        Waveform b = Synthesis.silence(Quantity.ACCELERATION, 20_000, 200_000).impacts(slipping, 2).waveform();
        assertEquals(100, onsets(a.samples()), 2);
        assertTrue(!a.equals(b));
        double[] swinging = Synthesis.silence(Quantity.ACCELERATION, 20_000, 20_000)
                .impacts(steady.withModulation(5, 1), 1).waveform().samples();
        double first = Moments.of(swinging, 1000, 2000).peak(); // at 0.05 s: cos(2π·5·0.05) = 0, half strength
        double second = Moments.of(swinging, 3000, 2000).peak(); // at 0.15 s: again
        assertEquals(1, first / second, 0.05);
    }

    @Test
    void everySecondImpactIsWeaker() {
        ImpactTrain unequal = ImpactTrain.of(10, 1, 2000, 0.2).withAlternate(0.4);
        double[] x = Synthesis.silence(Quantity.ACCELERATION, 20_000, 20_000).impacts(unequal, 1).waveform().samples();
        double first = Moments.of(x, 0, 2000).peak();
        for (int i = 0; i < 10; i++) {
            assertEquals(i % 2 == 0 ? first : 0.4 * first, Moments.of(x, 2000 * i, 2000).peak(), 1e-9, "impact " + i);
        }
    }

    private static int onsets(double[] x) {
        int count = 0;
        int quiet = 1000;
        for (double value : x) {
            if (Math.abs(value) > 0.05) {
                count += quiet > 200 ? 1 : 0;
                quiet = 0;
            } else {
                quiet++;
            }
        }
        return count;
    }

    @Test
    void convertersClipRoundShiftAndDropOut() {
        Synthesis ramp = silence(5).bias(1).plus(Waveform.ofSi(Quantity.ACCELERATION, 1000, 0, 0.3, 0.6, 0.9, -4));
        assertArrayEquals(new double[] {1, 1.3, 1.6, 1.9, -3}, ramp.waveform().samples(), 1e-15);
        assertArrayEquals(new double[] {1, 1.3, 1.5, 1.5, -1.5}, ramp.clip(1.5).waveform().samples(), 1e-15);
        assertArrayEquals(new double[] {1, 1.5, 1.5, 2, -3}, ramp.quantise(0.5).waveform().samples(), 1e-15);
        assertArrayEquals(new double[] {1, 1.3, 1.3, 1.3, -3}, ramp.dropOut(0.002, 0.002).waveform().samples(), 1e-15);
    }

    @Test
    void badArgumentsAreNamed() {
        assertMessage("hertz must be above 0 and below half the sample rate, 500.0 Hz: 500.0", () -> silence(1)
                .tone(1, 500, 0));
        assertMessage("amplitude must be finite and >= 0: -1.0", () -> silence(1).tone(-1, 5, 0));
        assertMessage("phaseRadians must be finite: NaN", () -> silence(1).tone(1, 5, Double.NaN));
        assertMessage("rms must be finite and >= 0: NaN", () -> silence(1).noise(Double.NaN, 1));
        assertMessage("length must be from 1 to 67108864: 0", () -> silence(0));
        assertMessage("resonanceHertz must be above 0 and below half the sample rate, 500.0 Hz: 700.0",
                () -> silence(1).impacts(ImpactTrain.of(1, 1, 700, 0.1), 1));
        assertMessage("dampingRatio must be above 0 and below 1: 1.0", () -> ImpactTrain.of(1, 1, 70, 1));
        assertMessage("rateHertz must be finite and > 0 Hz: 0.0", () -> ImpactTrain.of(0, 1, 70, 0.1));
        assertMessage("jitter must be within 0.0 to 0.2: 0.3", () -> ImpactTrain.of(1, 1, 70, 0.1).withJitter(0.3));
        assertMessage("modulationDepth must be within 0.0 to 1.0: 2.0",
                () -> ImpactTrain.of(1, 1, 70, 0.1).withModulation(1, 2));
        assertMessage("alternate must be within 0.0 to 1.0: 1.5",
                () -> ImpactTrain.of(1, 1, 70, 0.1).withAlternate(1.5));
        assertMessage("hertz must be finite and > 0 Hz: 0.0", () -> silence(1).firstOrder(0));
        assertMessage("hertz must be finite and > 0 Hz: NaN", () -> silence(1).secondOrder(Double.NaN, 1));
        assertMessage("dampingRatio must be finite and > 0: 0.0", () -> silence(1).secondOrder(1, 0));
        assertMessage("drop-out must lie inside the signal of 10 samples, behind the first: from 8, 3 samples",
                () -> silence(10).dropOut(0.008, 0.003));
        assertMessage("fullScale must be finite and > 0: 0.0", () -> silence(1).clip(0));
        assertMessage("step must be finite and > 0: -1.0", () -> silence(1).quantise(-1));
        assertMessage("bias must be finite: Infinity", () -> silence(1).bias(Double.POSITIVE_INFINITY));
        assertMessage("waveform must be acceleration, 2 samples at 1000.0 Hz: 1 samples at 1,000 Hz, acceleration,"
                + " 0.001000 s, 0 m/s\u00b2 peak", () -> silence(2).plus(silence(1).waveform()));
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
