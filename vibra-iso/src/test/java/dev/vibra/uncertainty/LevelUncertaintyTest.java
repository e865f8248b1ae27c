package dev.vibra.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.measuring.MountedResonance;
import dev.vibra.measuring.Mounting;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LevelUncertaintyTest {
    private static final Band BAND = Band.of(10, 1000);
    private static final Quantity[] BY_INTEGRATIONS = {Quantity.ACCELERATION, Quantity.VELOCITY, Quantity.DISPLACEMENT};

    private static Waveform tone(double hertz) {
        return Synthesis.silence(Quantity.ACCELERATION, 12_800, 38_400).tone(1, hertz, 0.3).waveform()
                .throughSeverityChain(Quantity.ACCELERATION, BAND);
    }

    private static Contribution named(String name, UncertaintyBudget budget) {
        return budget.contributions().stream().filter(each -> each.name().equals(name)).findFirst().orElseThrow();
    }

    static List<double[]> gaussianRecords() throws IOException {
        try (InputStream in = LevelUncertaintyTest.class.getResourceAsStream("/reference/estimation-errors.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().filter(line -> !line.startsWith("#"))
                    .map(line -> Stream.of(line.split(" ;? ?")).mapToDouble(Double::parseDouble).toArray()).toList();
        }
    }

    /**
     * Gaussian records by SciPy 1.10, by the formula of Bendat and Piersol and by SciPy's own simulation. Here 300
     * records: their scatter is known to 1/√600 = 4.1 %, three times that is allowed; the mean of the estimates as
     * well.
     */
    @ParameterizedTest
    @MethodSource("gaussianRecords")
    void estimationErrorOfGaussianRecords(double[] row) {
        MachineSimulation machine = new MachineSimulation(BY_INTEGRATIONS[(int) row[2]], new double[0], 1,
                Band.of(row[0], row[1]), row[3] + 0.413);
        MachineSimulation.Run run = machine.newRun(new Random(2954));
        int records = 300;
        double estimates = 0;
        double errors = 0;
        for (int i = 0; i < records; i++) {
            Waveform judged = run.judged();
            assertEquals(row[3], judged.durationSeconds(), 0.005);
            estimates += Math.pow(EstimationError.of(judged).contribution().relativeStandard(), 2) / records;
            errors += Math.pow(judged.rms().si() / run.truth() - 1, 2) / records;
        }
        assertEquals(1, row[6] / row[5], 0.06, "formula and simulation of SciPy");
        assertEquals(1, Math.sqrt(errors) / row[5], 0.125, "scatter of these records");
        assertEquals(1, Math.sqrt(estimates) / row[5], 0.125, "estimated from one record");
    }

    /** A steady line repeats. What is left is the part of a period at the end: 1/(8·π·f·T) of the rms, closed form. */
    @Test
    void aLineAloneHasNoErrorButThatOfItsEnd() {
        double expected = 1 / (8 * Math.PI * 50 * tone(50).durationSeconds());
        assertEquals(1, named("estimation", LevelUncertainty.withDefaults().of(tone(50))).relativeStandard() / expected,
                0.05);
        Waveform still = Waveform.ofSi(Quantity.ACCELERATION, 12_800, new double[38_400])
                .throughSeverityChain(Quantity.VELOCITY, BAND);
        assertEquals(0, named("estimation", LevelUncertainty.withDefaults().of(still)).relativeStandard());
    }

    /**
     * A level that swings slowly by ±20 %, twice in the recording, under a broad noise: the power swings by √2·0.2 rms
     * of itself, 40 %/√2 = 28 %; over n blocks that is 28/√n/2 of the rms, with n - 1 degrees of freedom. The blocks,
     * of 3072 of some 24,500 samples, overlap by half: n = 14, 28/√14/2 = 3.8 %.
     */
    @Test
    void slowVariationCountsWithItsFewDegreesOfFreedom() {
        double[] samples = new double[10 * 2560];
        Random random = new Random(5);
        for (int i = 0; i < samples.length; i++) {
            samples[i] = random.nextGaussian() * (1 + 0.2 * Math.sin(2 * Math.PI * 2 * i / samples.length));
        }
        Waveform judged = Waveform.ofSi(Quantity.ACCELERATION, 2560, samples)
                .throughSeverityChain(Quantity.ACCELERATION, BAND);
        Contribution estimation = EstimationError.of(judged).contribution();
        assertEquals(13, estimation.degreesOfFreedom());
        assertEquals(0.038, estimation.relativeStandard(), 0.01);
    }

    /** Undamped system: 4.17 % at a fifth of the resonance; half of it, and a/√12 about that (JCGM 100:2008, 4.3.7). */
    @Test
    void theResonanceOfTheSensorActsOnTheLinesThatAreThere() {
        LevelUncertainty at500 = LevelUncertainty.withDefaults().withResonance(MountedResonance.ofHertz(500));
        Contribution mounting = named("mounting", at500.of(tone(100)));
        assertEquals(0.0417 / 2, mounting.relativeEffect(), 2e-4);
        assertEquals(0.0417 / Math.sqrt(12), mounting.relativeStandard(), 2e-4);
        assertFalse(mounting.assumed());
        assertEquals(mounting.relativeEffect(), 1 / at500.of(tone(100)).corrected(1) - 1, 1e-12);
        // At 900 Hz a held probe (500 Hz usable, so 1500 Hz) rises by 1/(1 - 0.36) - 1 = 56 %, a stud by 0.18 %.
        assertEquals(0.5625 / 2, named("mounting", LevelUncertainty.withDefaults().withMounting(Mounting.HAND_HELD)
                .of(tone(900))).relativeEffect(), 0.002);
        assertEquals(0.00184 / 2, named("mounting", LevelUncertainty.withDefaults().withMounting(Mounting.STUD)
                .of(tone(900))).relativeEffect(), 2e-5);
    }

    @Test
    void whatIsNotToldIsAssumedAndSaid() {
        UncertaintyBudget budget = LevelUncertainty.withDefaults().of(tone(50));
        assertEquals(List.of("sensor", "mounting", "chain", "estimation"),
                budget.contributions().stream().map(Contribution::name).toList());
        assertEquals(List.of(true, true, false, false),
                budget.contributions().stream().map(Contribution::assumed).toList());
        assertEquals(0.05, named("sensor", budget).relativeStandard(), 1e-15);
        UncertaintyBudget told = LevelUncertainty.withDefaults().withSensor(5).withMounting(Mounting.MAGNET)
                .of(tone(50));
        assertTrue(told.contributions().stream().noneMatch(Contribution::assumed));
        assertEquals(0.025, named("sensor", told).relativeStandard(), 1e-15);
        assertEquals("sensor not told, mounting not told", LevelUncertainty.withDefaults().toString());
        assertEquals("sensor 5 %, mounted resonance 6000 Hz, within 5 % up to 1309 Hz",
                LevelUncertainty.withDefaults().withSensor(5).withMounting(Mounting.MAGNET).toString());
    }

    @Test
    void aLevelAloneHasTheInstrumentOnly() {
        Level stated = Level.of(2, Unit.MM_PER_S, Detector.RMS).within(BAND);
        assertEquals("9.8 % (k = 1.96), of standard uncertainties sensor 5 % (assumed)",
                LevelUncertainty.withDefaults().of(stated).toString());
        assertEquals(List.of("sensor", "chain"), LevelUncertainty.withDefaults().withSensor(3).of(tone(50).rms())
                .contributions().stream().map(Contribution::name).toList());
    }

    @Test
    void badInputIsNamed() {
        Waveform raw = Synthesis.silence(Quantity.ACCELERATION, 12_800, 38_400).waveform();
        assertEquals("waveform must come through the severity chain: whole signal", assertThrows(
                IllegalArgumentException.class, () -> LevelUncertainty.withDefaults().of(raw)).getMessage());
        assertEquals("expandedPercent must be finite and >= 0 %: NaN", assertThrows(IllegalArgumentException.class,
                () -> LevelUncertainty.withDefaults().withSensor(Double.NaN)).getMessage());
        assertEquals("bound (m) must be finite and >= 0: -1.0", assertThrows(IllegalArgumentException.class,
                () -> Contribution.oneSided("m", -1)).getMessage());
        assertEquals("relative effect (m) must be finite and above -1: -1.0", assertThrows(
                IllegalArgumentException.class, () -> new Contribution("m", 0, 1, -1, false)).getMessage());
    }

    /** Student's table of JCGM 100:2008, G.2, for 95 %: 12.71, 4.30, 3.18, 2.57, 2.26 for 2, 3, 4, 6, 10 readings. */
    @Test
    void fewReadingsMakeALargeFactor() {
        double[] factors = {12.71, 4.30, 3.18, 2.57, 2.26};
        int[] counts = {2, 3, 4, 6, 10};
        for (int i = 0; i < counts.length; i++) {
            double[] readings = new double[counts[i]];
            Arrays.setAll(readings, k -> k + 1.0);
            UncertaintyBudget budget = UncertaintyBudget.empty().with(LevelUncertainty.repetition(readings));
            assertEquals(factors[i], budget.coverageFactor(), 0.006);
            assertEquals(factors[i] * budget.relativeStandard(), budget.relativeExpanded(), 0.005);
        }
    }

    /** The mean of two readings ± U holds the truth in 95 %, as three, four, six and twelve do; 20 000 seeded runs. */
    @Test
    void theMeanOfAFewReadingsHoldsTheTruth() {
        for (int count : new int[] {2, 3, 4, 6, 12}) {
            Random random = new Random(count);
            int held = 0;
            for (int run = 0; run < 20_000; run++) {
                double[] readings = random.doubles(count).map(unused -> 100 + random.nextGaussian()).toArray();
                UncertaintyBudget budget = UncertaintyBudget.empty().with(LevelUncertainty.repetition(readings));
                double mean = Arrays.stream(readings).average().orElseThrow();
                held += Math.abs(mean - 100) <= budget.expandedOf(mean) ? 1 : 0;
            }
            assertEquals(0.95, held / 20_000.0, 4 * Math.sqrt(0.95 * 0.05 / 20_000), count + " readings");
        }
    }
}
