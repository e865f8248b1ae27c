package dev.vibra.bandmap;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.testing.Reference;
import dev.vibra.transform.RealTransform;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class DyadicMapPlanTest {
    /** Values at each end of the bands of each level that aren't counted, of 512 lines and five levels. */
    private static final int[] ENDS_OF_512 = {0, 16, 8, 4, 4, 2};

    private static DyadicMapPlan of(double[] samples, double rate, int levels) {
        RealTransform transform = RealTransform.of(samples.length);
        double[] lines = transform.forward(samples, 0, new double[2 * transform.lines()]);
        lines[0] = 0;
        DyadicMapPlan plan = DyadicMapPlan.of(samples.length, rate, levels);
        plan.take(lines);
        return plan;
    }

    private static Synthesis silence(int length) {
        return Synthesis.silence(Quantity.ACCELERATION, 25_600, length);
    }

    /** {@code numpy.fft.ifft} of the lines of each band. */
    @Test
    void kurtosisAgreesWithNumPy() {
        Reference numpy = Reference.of("scipy-record.txt");
        DyadicMapPlan plan = of(numpy.row("samples"), 1000, 4);
        assertEquals(30, plan.count());
        int index = 0;
        for (int level = 1; level <= 4; level++) {
            double[] row = numpy.row("level." + level);
            for (int i = 0; i < row.length; i++) {
                assertEquals(row[i], plan.kurtosis(index), 1e-9, plan.band(index).toString());
                assertEquals(500.0 * i / row.length, plan.band(index).lowestHertz(), 1e-9);
                assertEquals(500.0 / row.length, plan.band(index).widthHertz(), 1e-9);
                index++;
            }
        }
    }

    /** Closed forms: normal noise 0 with scatter 2/sqrt(samples), a steady tone in its band -1, two equal ones -1/2. */
    @Test
    void noiseAndTonesHaveTheirClosedForms() {
        DyadicMapPlan noise = of(silence(1 << 19).noise(1, 3).waveform().samples(), 25_600, 6);
        for (int i = 0; i < noise.count(); i++) {
            double samples = (double) (1 << 18) / Integer.highestOneBit(i + 2);
            assertEquals(0, noise.kurtosis(i), 5 * 2 / Math.sqrt(samples), noise.band(i).toString());
        }
        // On lines, so that nothing leaks: 0.25 Hz apart. Two beat, and what counts isn't a whole number of beats.
        DyadicMapPlan tones = of(silence(102_400).tone(1, 1000.25, 0).tone(1, 1100.5, 1).tone(1, 9000, 2).waveform()
                .samples(), 25_600, 3);
        for (int i = 0; i < tones.count(); i++) {
            boolean two = tones.band(i).contains(1000);
            boolean one = tones.band(i).contains(9000);
            if (two || one) {
                assertEquals(two ? -0.5 : -1, tones.kurtosis(i), two ? 2e-3 : 1e-9, tones.band(i).toString());
            }
        }
    }

    /** One sample alone is even over all lines: all power at one of the n instants that count, kurtosis n - 2. */
    @Test
    void oneClickHasItsClosedForm() {
        double[] x = new double[1024];
        x[512] = 3;
        DyadicMapPlan plan = of(x, 1024, 5);
        for (int i = 2; i < plan.count(); i++) {
            int parts = Integer.highestOneBit(i + 2);
            int ends = 2 * ENDS_OF_512[Integer.numberOfTrailingZeros(parts)];
            // The lowest band lacks the line at 0 Hz.
            if (plan.band(i).lowestHertz() > 0) {
                assertEquals(512.0 / parts - ends - 2, plan.kurtosis(i), 1e-9, plan.band(i).toString());
            }
        }
    }

    @Test
    void impactsShowTheResonanceTheyRing() {
        for (int length : new int[] {102_400, 99_991}) {
            DyadicMapPlan plan = of(silence(length).noise(1, 1).impacts(ImpactTrain.of(31, 5, 6000, 0.03), 2).waveform()
                    .samples(), 25_600, 6);
            assertTrue(plan.band(plan.best()).contains(6000), plan.map().toString());
        }
    }

    /** Both searches cut the same recording by brick walls; they differ by the ends, which one leaves out. */
    @Test
    void agreesWithTheTreeOfHalvesAndThirds() {
        double[] x = silence(102_400).noise(1, 1).impacts(ImpactTrain.of(97, 5, 6000, 0.03), 2).waveform().samples();
        BandMap tree = BandMapPlan.of(x.length, 25_600, 1600).map(x, 0, BandCriterion.SPECTRAL_KURTOSIS);
        DyadicMapPlan plan = of(x, 25_600, 3);
        for (BandMap.Cell cell : plan.map().cells()) {
            BandMap.Cell same = tree.cells().stream().filter(other -> other.parts() == cell.parts()
                    && Math.abs(other.band().lowestHertz() - cell.band().lowestHertz()) < 1).findFirst().orElseThrow();
            assertEquals(same.value(), cell.value(), 0.05 * (2 + same.value()), cell.toString());
        }
    }

    @Test
    void silentBandsHaveNoCell() {
        DyadicMapPlan plan = of(silence(25_600).tone(1, 100, 0).waveform().samples(), 25_600, 2);
        assertEquals(2, plan.map().cells().size());
        assertTrue(plan.band(plan.best()).contains(100));
        assertFalse(plan.isSilent(2));
        assertTrue(plan.isSilent(3));
        assertThrows(IllegalStateException.class, () -> plan.kurtosis(3));
        DyadicMapPlan none = of(new double[64], 64, 2);
        assertFalse(none.hasVibration());
        assertThrows(IllegalStateException.class, none::best);
        assertThrows(IllegalStateException.class, none::map);
        assertThrows(IllegalStateException.class, () -> DyadicMapPlan.of(64, 64, 2).best());
    }

    @Test
    void rowsAreToldByTheirParts() {
        BandMap map = of(silence(4096).noise(1, 1).waveform().samples(), 25_600, 3).map();
        assertEquals(14, map.cells().size());
        assertEquals(2, map.cells().get(1).parts());
        assertEquals(4, map.cells().get(2).parts());
        assertEquals(8, map.cells().get(13).parts());
        assertEquals(Band.of(11_200, 12_800), map.cells().get(13).band());
    }

    @Test
    void badArgumentsAreNamed() {
        assertMessage("number of samples must be from 32 to 67108864: 31", () -> DyadicMapPlan.of(31, 100, 2));
        assertMessage("levels must be from 2 to 4: 5", () -> DyadicMapPlan.of(128, 100, 5));
        assertMessage("levels must be from 2 to 4: 1", () -> DyadicMapPlan.of(255, 100, 1));
        assertMessage("sampleRateHertz must be finite and > 0 Hz: 0.0", () -> DyadicMapPlan.of(128, 0, 2));
        assertMessage("spectrum must lie inside the array of length 129: offset 0, length 130",
                () -> DyadicMapPlan.of(128, 100, 2).take(new double[129]));
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
