package dev.vibra.integration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.testing.Reference;
import dev.vibra.transform.RealTransform;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MotionPlanTest {
    private static final Quantity[] BY_INTEGRATIONS = {Quantity.ACCELERATION, Quantity.VELOCITY, Quantity.DISPLACEMENT};

    private static MotionPlan of(double[] samples, double rate, Quantity to, Band band) {
        MotionPlan plan = MotionPlan.of(samples.length, rate, Quantity.ACCELERATION, to, band);
        plan.take(lines(samples));
        return plan;
    }

    private static double[] lines(double[] samples) {
        RealTransform transform = RealTransform.of(samples.length);
        return transform.forward(samples, 0, new double[2 * transform.lines()]);
    }

    /** NumPy's transforms and SciPy's {@code detrend}: the same steps written there, fine grid by appended zeros. */
    @ParameterizedTest
    @CsvSource({"6,0", "6,1", "6,2", "12,0", "12,1", "12,2"})
    void levelsAgreeWithSciPy(int lowest, int integrations) {
        Reference scipy = Reference.of("scipy-record.txt");
        MotionPlan plan = of(scipy.row("samples"), 1000, BY_INTEGRATIONS[integrations], Band.of(lowest, 50));
        double[] row = scipy.row("motion." + lowest + "." + integrations);
        assertEquals(row[0], plan.rms(), 1e-9 * row[0]);
        assertEquals(row[1], plan.peakToPeak(), 2e-7 * row[1]);
    }

    /** What the plan for samples gives, at lengths with good, few and no factors; where it can't reduce, exactly. */
    @ParameterizedTest
    @ValueSource(ints = {51_200, 51_197, 50_000, 65_536})
    void levelsAreThoseOfTheSamples(int length) {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, length).tone(2, 24.63, 0.3).tone(3, 997, 2)
                .tone(5, 3000.3, 1).noise(0.5, 3).impacts(ImpactTrain.of(87, 4, 4000, 0.03), 2).waveform();
        for (Band band : new Band[] {Band.of(10, 1000), Band.of(5, 900), Band.of(10, 12_000)}) {
            MotionPlan velocity = of(wave.samples(), 25_600, Quantity.VELOCITY, band);
            assertEquals(1, velocity.rms() / wave.velocity(band).rms().si(), 5e-4, band.toString());
            MotionPlan displacement = of(wave.samples(), 25_600, Quantity.DISPLACEMENT, band);
            assertEquals(1, displacement.peakToPeak() / wave.displacement(band).peakToPeak().si(), 1e-4,
                    band.toString());
        }
    }

    /** The instants between are those of a transform with zeros appended, wherever the largest lies. */
    @Test
    void rangeIsThatOfAppendedZeros() {
        Random random = new Random(5);
        for (int trial = 0; trial < 200; trial++) {
            int dense = 2 + trial % 7;
            double[] lines = new double[2 * 129];
            for (int i = 2; i < 2 * 44; i++) {
                lines[i] = random.nextGaussian();
            }
            double[] coarse = RealTransform.of(256).inverse(lines, new double[256], 0);
            double[] padded = Arrays.copyOf(lines, 2 * (128 * dense + 1));
            double[] fine = RealTransform.of(256 * dense).inverse(padded, new double[256 * dense], 0);
            int from = 40 * dense + random.nextInt(dense);
            int to = 215 * dense + random.nextInt(dense);
            double highest = Double.NEGATIVE_INFINITY;
            double lowest = Double.POSITIVE_INFINITY;
            for (int i = from; i < to; i++) {
                highest = Math.max(highest, dense * fine[i]);
                lowest = Math.min(lowest, dense * fine[i]);
            }
            double range = new FineRange(dense, 44 / 256.0).of(coarse, from, to);
            assertEquals(highest - lowest, range, 2e-7 * range, "dense " + dense);
        }
    }

    /** Formula of the class comment, by hand: 40 periods, 8 periods, and half as much again below the band. */
    @Test
    void errorIsStated() {
        int length = 4 * 3200;
        double[] tone = Synthesis.silence(Quantity.ACCELERATION, 3200, length).tone(1, 50, 0).waveform().samples();
        assertEquals(0.006 + 0.015 * Math.pow(9 / 40.0, 2.5),
                of(tone, 3200, Quantity.VELOCITY, Band.of(10, 1000)).relativeError(), 1e-6);
        MotionPlan eight = of(tone, 3200, Quantity.DISPLACEMENT, Band.of(2, 1000));
        assertEquals(8, eight.periods(), 1e-12);
        assertEquals(1 / 3.0, eight.taperedPart(), 1e-4);
        double least = 0.012 + 0.04 * Math.pow(9 / 8.0, 2.5);
        assertEquals(0.0657, least, 1e-4);
        assertTrue(eight.relativeError() >= least);
        // Displacement of 1.5 times the tone's, were it at 10 Hz, but at 1 Hz.
        double sway = 1.5 * Math.pow(10 / 50.0, 2);
        double[] both = Synthesis.silence(Quantity.ACCELERATION, 3200, length).tone(1, 50, 0).tone(sway, 1, 1).waveform()
                .samples();
        double ofLength = 0.04 * Math.pow(9 / 40.0, 2.5);
        assertEquals(Math.hypot(0.012 + ofLength, (0.024 + ofLength) * 1.5),
                of(both, 3200, Quantity.DISPLACEMENT, Band.of(10, 1000)).relativeError(), 5e-4);
    }

    @Test
    void silenceHasNoLevel() {
        MotionPlan plan = of(new double[6400], 3200, Quantity.VELOCITY, Band.of(10, 1000));
        assertEquals(0, plan.rms());
        assertEquals(0, plan.peakToPeak());
        assertTrue(plan.relativeError() < 0.02);
    }

    @Test
    void badArgumentsAreNamed() {
        assertMessage("recording must be at least seven periods of the lower end of its band long, 3.5 s: 3.0",
                () -> plan(3 * 3200, 3200, Band.of(2, 1000)));
        assertMessage("lowest frequency of the band must be finite and > 0 Hz: 0.0",
                () -> plan(3200, 3200, Band.of(0, 1000)));
        assertMessage("length must be from 16 to 67108864: 15", () -> plan(15, 3200, Band.of(10, 1000)));
        assertMessage("sampleRateHertz must be finite and > 0 Hz: NaN", () -> plan(3200, Double.NaN, Band.of(9, 99)));
        assertMessage("quantity must be velocity or an integral of it: acceleration", () -> MotionPlan.of(3200, 3200,
                Quantity.VELOCITY, Quantity.ACCELERATION, Band.of(10, 1000)));
        assertMessage("root of the squares of the lines must be finite: NaN", () -> {
            double[] lines = new double[3202];
            lines[50] = Double.NaN;
            MotionPlan.of(3200, 3200, Quantity.VELOCITY, Quantity.VELOCITY, Band.of(10, 1000)).take(lines);
        });
        assertMessage("lines must lie inside the array of length 3201: offset 0, length 3202",
                () -> MotionPlan.of(3200, 3200, Quantity.VELOCITY, Quantity.VELOCITY, Band.of(10, 1000))
                        .take(new double[3201]));
    }

    private static void plan(int length, double rate, Band band) {
        MotionPlan.of(length, rate, Quantity.ACCELERATION, Quantity.VELOCITY, band);
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
