package dev.vibra.bandmap;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.envelope.Envelope;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.testing.Reference;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.apache.commons.math3.special.Gamma;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class BandMapTest {
    private static final List<BandCriterion> ALL = List.of(BandCriterion.values());

    private static Synthesis silence(int length) {
        return Synthesis.silence(Quantity.ACCELERATION, 25_600, length);
    }

    /** SciPy 1.10: {@code signal.hilbert}, {@code signal.resample}, {@code stats.variation}, {@code stats.entropy}. */
    @Test
    void criteriaAgreeWithSciPy() {
        Reference scipy = Reference.of("scipy-bands.txt");
        List<BandMap> maps = BandMapPlan.of(600, 1000, 80).maps(scipy.row("samples"), 0, ALL);
        List<BandMap.Cell> cells = maps.get(0).cells();
        assertEquals(1 + 2 + 3 + 4 + 6, cells.size());
        for (int i = 0; i < cells.size(); i++) {
            int parts = cells.get(i).parts();
            double[] row = scipy.row(parts + "." + Math.round(cells.get(i).band().lowestHertz() * parts / 500));
            for (int c = 0; c < 3; c++) {
                assertEquals(row[c], maps.get(c).cells().get(i).value(), 1e-9, ALL.get(c) + " of " + cells.get(i));
            }
            assertEquals(0.5 * (row[1] + row[2]), maps.get(3).cells().get(i).value(), 1e-9);
        }
    }

    /** J. Antoni, MSSP 21 (2007) 108-124, figure 2: levels 0, 1, 1.6, 2, 2.6, 3 … part the range so. */
    @Test
    void treeIsThePublishedOne() {
        BandMap map = BandMap.of(silence(25_600).noise(1, 1).waveform(), BandCriterion.SPECTRAL_KURTOSIS, 400);
        assertEquals(List.of(1, 2, 3, 4, 6, 8, 12, 16, 24, 32),
                map.cells().stream().map(BandMap.Cell::parts).distinct().toList());
        for (int parts : new int[] {1, 2, 3, 4, 6, 8, 12, 16, 24, 32}) {
            List<Band> row = map.cells().stream().filter(cell -> cell.parts() == parts).map(BandMap.Cell::band)
                    .toList();
            assertEquals(parts, row.size());
            for (int i = 0; i < parts; i++) {
                assertEquals(12_800.0 * i / parts, row.get(i).lowestHertz(), 1e-9);
                assertEquals(12_800.0 / parts, row.get(i).widthHertz(), 1e-9);
            }
        }
    }

    /**
     * Closed forms for normal noise, whose squared envelope y is exponential: 0 and {@code E(y·ln y) = ψ(2) = 1 − γ};
     * its lines are exponential too about a triangle of mean 1, {@code ∫2u·ln(2u)du = ln 2 − 1/2} more.
     */
    @Test
    void normalNoiseHasItsClosedForms() {
        double[] noise = silence(1 << 20).noise(0.5, 1).waveform().samples();
        double entropy = 1 - Gamma.GAMMA;
        double lines = entropy + Math.log(2) - 0.5;
        double[] expected = {0, entropy, lines, 0.5 * (entropy + lines)};
        // Standard deviations over records in units of 1/sqrt(samples of the band), from the moments of exponentials.
        double[] scatter = {2, 0.5, 1.0, 0.6};
        List<BandMap> maps = BandMapPlan.of(noise.length, 25_600, 800).maps(noise, 0, ALL);
        for (int c = 0; c < ALL.size(); c++) {
            for (BandMap.Cell cell : maps.get(c).cells()) {
                double samples = (double) (1 << 19) / cell.parts();
                assertEquals(expected[c], cell.value(), 5 * scatter[c] / Math.sqrt(samples), ALL.get(c) + " " + cell);
            }
        }
    }

    /** Two levels a and b of y, for the share d and 1 - d of the time, as in an envelope that is switched. */
    @Test
    void switchedEnvelopeHasItsClosedForms() {
        for (double share : new double[] {0.5, 0.125, 0.01}) {
            for (double floor : new double[] {0, 0.2}) {
                // The first and the last are not counted.
                int length = 80_002;
                double[] y = IntStream.range(-1, length - 1).mapToDouble(i -> i % 800 < share * 800 ? 1 : floor)
                        .toArray();
                Pulsation pulsation = new Pulsation();
                assertTrue(pulsation.take(y, length, 2, 1e6, 0));
                double mean = share + (1 - share) * floor;
                double square = share + (1 - share) * floor * floor;
                double entropy = (share * Math.log(1 / mean) + (floor > 0
                        ? (1 - share) * floor * Math.log(floor / mean) : 0)) / mean;
                assertEquals(square / mean / mean - 2, pulsation.measured(BandCriterion.SPECTRAL_KURTOSIS), 1e-9);
                assertEquals(entropy, pulsation.measured(BandCriterion.ENVELOPE_NEGENTROPY), 1e-9);
            }
        }
    }

    /** A tone beside another beats: y is 1 + m·cos, of which one line in W is all; a lone tone doesn't swing. */
    @Test
    void tonesHaveTheirClosedForms() {
        Waveform beat = silence(102_400).tone(1, 4000, 0.3).tone(0.5, 4100, 0).waveform();
        double depth = 2 * 0.5 / 1.25;
        assertEquals(1 + depth * depth / 2 - 2, value(BandCriterion.SPECTRAL_KURTOSIS, beat), 2e-3);
        double amongLines = value(BandCriterion.ENVELOPE_SPECTRUM_NEGENTROPY, beat);
        assertTrue(amongLines > 0.9 * Math.log(6400) && amongLines <= Math.log(6400), "of 6400: " + amongLines);
        Waveform tone = silence(102_400).tone(1, 4000, 0.3).waveform();
        assertEquals(-1, value(BandCriterion.SPECTRAL_KURTOSIS, tone), 1e-9);
        assertEquals(0, value(BandCriterion.ENVELOPE_NEGENTROPY, tone), 1e-9);
    }

    private static double value(BandCriterion criterion, Waveform wave) {
        return criterion.of(Envelope.squared(wave, Band.of(3200, 4800))).orElseThrow();
    }

    /** The value of a band taken alone is that of its cell. */
    @Test
    void cellsAreTheirBandsEnvelopes() {
        Waveform wave = silence(30_000).noise(1, 3).impacts(ImpactTrain.of(61.3, 8, 4000, 0.05), 4).waveform();
        for (BandCriterion criterion : ALL) {
            for (BandMap.Cell cell : BandMap.of(wave, criterion, 1000).cells()) {
                if (cell.band().lowestHertz() > 0) {
                    OptionalDouble alone = criterion.of(Envelope.squared(wave, cell.band()));
                    assertEquals(cell.value(), alone.orElseThrow(), 1e-9 * Math.abs(cell.value()), cell.toString());
                }
            }
        }
    }

    @Test
    void impactsShowTheResonanceTheyRing() {
        Waveform wave = silence(102_400).noise(1, 1).impacts(ImpactTrain.of(31, 5, 6000, 0.03), 2).waveform();
        for (BandCriterion criterion : ALL) {
            Band best = BandMap.of(wave, criterion, 400).best().band();
            assertTrue(best.contains(6000), criterion + ": " + best);
            double depth = EnvelopeSpectrum.of(wave, best, 0.5).depth(62);
            assertTrue(depth > 0.3, criterion + ": depth at 31 Hz " + depth);
        }
    }

    /** One click outdoes a train by kurtosis, but not by the negentropy of the lines: that is the reason for both. */
    @Test
    void oneKnockMisleadsKurtosisOnly() {
        double[] x = silence(102_400).noise(1, 1).impacts(ImpactTrain.of(87, 4, 4000, 0.03), 2).waveform().samples();
        for (int i = 0; i < 100; i++) {
            x[50_000 + i] += 60 * Math.exp(-0.04 * i) * Math.sin(2 * Math.PI * 9600 / 25_600 * i);
        }
        List<BandMap> maps = BandMapPlan.of(x.length, 25_600, 800).maps(x, 0, ALL);
        assertTrue(maps.get(0).best().band().contains(9600), maps.get(0).toString());
        assertTrue(maps.get(2).best().band().contains(4000), maps.get(2).toString());
    }

    /** A slow swing whose two ends don't meet would be a knock in every band. */
    @Test
    void endsThatDoNotMeetAreNotImpacts() {
        Waveform wave = silence(102_400).noise(0.5, 1).tone(20, 25.37, 0.4).waveform();
        BandMap map = BandMap.of(wave, BandCriterion.SPECTRAL_KURTOSIS, 800);
        for (BandMap.Cell cell : map.cells()) {
            assertTrue(cell.value() < 5 * 2 / Math.sqrt(51_200.0 / cell.parts()), cell.toString());
        }
    }

    @Test
    void bestIsSoughtInARange() {
        Waveform wave = silence(51_200).noise(1, 1).impacts(ImpactTrain.of(31, 9, 9000, 0.02), 2).waveform();
        BandMap map = BandMap.of(wave, BandCriterion.SPECTRAL_KURTOSIS, 800);
        assertTrue(map.best().band().contains(9000), map.toString());
        Band trusted = Band.of(1000, 7000);
        BandMap.Cell inside = map.bestWithin(trusted).orElseThrow();
        assertTrue(inside.band().lowestHertz() >= 1000 && inside.band().highestHertz() <= 7000, inside.toString());
        assertEquals(Optional.empty(), map.bestWithin(Band.of(1000, 1100)));
        BandMap even = new BandMap(BandCriterion.SPECTRAL_KURTOSIS, List.of(new BandMap.Cell(Band.of(0, 9), 1, 2),
                new BandMap.Cell(Band.of(0, 4), 2, 2)));
        assertEquals(1, even.best().parts());
    }

    /** Digital silence above a cut-off is no band at all. */
    @Test
    void silentBandsHaveNoCell() {
        Waveform tone = silence(25_600).tone(1, 100, 0).waveform();
        BandMap map = BandMap.of(tone, BandCriterion.MEAN_NEGENTROPY, 3200);
        assertTrue(map.cells().stream().allMatch(cell -> cell.band().lowestHertz() == 0), map.cells().toString());
        assertEquals(OptionalDouble.empty(), BandCriterion.SPECTRAL_KURTOSIS
                .of(Envelope.squared(silence(100).waveform(), Band.of(1000, 9000))));
    }

    @Test
    void printsInOneLine() {
        assertEquals("mean negentropy of 2 bands, best 100\u2013200 Hz: 0.520", new BandMap(
                BandCriterion.MEAN_NEGENTROPY, List.of(new BandMap.Cell(Band.of(0, 200), 1, 0.1),
                new BandMap.Cell(Band.of(100, 200), 2, 0.52))).toString());
        assertEquals("map of 25600 samples, 10 bands", BandMapPlan.of(25_600, 25_600, 3200).toString());
    }

    @Test
    void badArgumentsAreNamed() {
        assertMessage("number of samples must be from 16 to 67108864: 15", () -> BandMapPlan.of(15, 100, 10));
        assertMessage("narrowestHertz must be within 4.0 to 50.0 Hz: 51.0", () -> BandMapPlan.of(100, 100, 51));
        assertMessage("narrowestHertz must be within 4.0 to 50.0 Hz: NaN", () -> BandMapPlan.of(100, 100, Double.NaN));
        double[] constant = new double[100];
        Arrays.fill(constant, 7.1);
        assertMessage("mean square of the samples about their mean must be finite and above rounding: 0.0",
                () -> BandMapPlan.of(100, 100, 10).map(new double[100], 0, BandCriterion.SPECTRAL_KURTOSIS));
        assertThrows(IllegalArgumentException.class,
                () -> BandMapPlan.of(100, 100, 10).map(constant, 0, BandCriterion.SPECTRAL_KURTOSIS));
        assertMessage("in must lie inside the array of length 100: offset 1, length 100",
                () -> BandMapPlan.of(100, 100, 10).map(constant, 1, BandCriterion.SPECTRAL_KURTOSIS));
        assertMessage("number of cells must be at least 1: 0",
                () -> new BandMap(BandCriterion.SPECTRAL_KURTOSIS, List.of()));
        assertMessage("value must be finite: NaN", () -> new BandMap.Cell(Band.of(0, 1), 1, Double.NaN));
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
