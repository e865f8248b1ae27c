package dev.vibra.point;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.descriptor.DominantLine;
import dev.vibra.descriptor.Signals;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A sine holds its phase; what a resonance makes of noise doesn't, though lines stand on it. */
class LineSteadinessTest {
    private static final double RATE = 6400;
    private static final int SAMPLES = 38_400;
    private static final int TRIES = 60;

    /** Noise through one degree of freedom: poles at {@code exp(-2π·f·(ζ ± j)/rate)}, a closed form. */
    private static double[] hump(double hertz, double damping, long seed) {
        Random random = new Random(seed);
        double radius = Math.exp(-2 * Math.PI * hertz * damping / RATE);
        double first = 2 * radius * Math.cos(2 * Math.PI * hertz / RATE);
        double[] samples = new double[SAMPLES];
        double one = 0;
        double two = 0;
        for (int i = -20_000; i < SAMPLES; i++) {
            double next = random.nextGaussian() + first * one - radius * radius * two;
            two = one;
            one = next;
            if (i >= 0) {
                samples[i] = next * 1e-3 + 1e-3 * random.nextGaussian();
            }
        }
        return samples;
    }

    private static List<Double> steady(double[] samples) {
        Signals signals = Signals.of(Waveform.ofSi(Quantity.ACCELERATION, RATE, samples));
        return new LineSteadiness(signals).steady(signals.dominantLines(List.of()));
    }

    @Test
    void aSineHoldsOnAHumpToo() {
        int held = 0;
        for (int seed = 0; seed < TRIES; seed++) {
            double[] samples = hump(90, 0.012, seed);
            for (int i = 0; i < SAMPLES; i++) {
                samples[i] += 0.5 * Math.sin(2 * Math.PI * 31.37 * i / RATE + seed);
            }
            held += steady(samples).stream().anyMatch(hertz -> Math.abs(hertz - 31.37) < 0.1) ? 1 : 0;
        }
        assertEquals(TRIES, held);
    }

    /** Wider than the blocks tell apart: a hump of 2·0.02·60 Hz in recordings of 6 s. */
    @Test
    void aHumpOfNoiseDoesNot() {
        int lines = 0;
        int held = 0;
        for (int seed = 0; seed < TRIES; seed++) {
            double[] samples = hump(60, 0.02, seed);
            Signals signals = Signals.of(Waveform.ofSi(Quantity.ACCELERATION, RATE, samples));
            lines += (int) signals.dominantLines(List.of()).stream().map(DominantLine::hertz)
                    .filter(hertz -> Math.abs(hertz - 60) < 4).count();
            held += (int) steady(samples).stream().filter(hertz -> Math.abs(hertz - 60) < 4).count();
        }
        assertTrue(lines > TRIES / 2, "lines on humps: " + lines);
        assertTrue(held <= 0.1 * lines, held + " of " + lines + " lines on humps count as steady");
    }
}
