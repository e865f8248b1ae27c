package dev.vibra.filter;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.quantity.Band;
import dev.vibra.testing.Reference;
import dev.vibra.window.Window;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Filters against SciPy 1.10: the files reference/scipy-*.txt and the script beside them. */
class FilterReferenceTest {
    private static final double RATE = 1000;
    private static final Band MIDDLE = Band.of(80, 160);

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6})
    void designsAgreeWithSciPy(int order) {
        compare("butterworth", order, FilterDesign.butterworth(order));
        compare("chebyshev1", order, FilterDesign.chebyshev1(order, 0.5));
        compare("chebyshev2", order, FilterDesign.chebyshev2(order, 40));
    }

    private static void compare(String family, int order, FilterDesign design) {
        Reference scipy = Reference.of("scipy-designs.txt");
        double[] x = scipy.row("samples");
        scipy.assertRow(family + ".low." + order, run(design.lowPass(120, RATE), x), 1e-9);
        scipy.assertRow(family + ".high." + order, run(design.highPass(60, RATE), x), 1e-9);
        scipy.assertRow(family + ".pass." + order, run(design.bandPass(MIDDLE, RATE), x), 1e-9);
        scipy.assertRow(family + ".stop." + order, run(design.bandStop(MIDDLE, RATE), x), 1e-9);
    }

    private static double[] run(SectionCascade cascade, double[] x) {
        double[] y = new double[x.length];
        cascade.newFilter().process(x, 0, y, 0, x.length);
        return y;
    }

    /** {@code sosfiltfilt} with its default odd continuation of the ends. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5})
    void zeroPhaseAgreesWithSciPy(int order) {
        Reference scipy = Reference.of("scipy-zero-phase.txt");
        double[] x = scipy.row("samples");
        FilterDesign design = FilterDesign.butterworth(order);
        scipy.assertRow("low." + order, design.lowPass(120, RATE).zeroPhase(x), 1e-9);
        scipy.assertRow("high." + order, design.highPass(40, RATE).zeroPhase(x), 1e-9);
        scipy.assertRow("pass." + order, design.bandPass(MIDDLE, RATE).zeroPhase(x), 1e-9);
    }

    @Test
    void firDesignsAgreeWithSciPy() {
        Reference scipy = Reference.of("scipy-fir.txt");
        for (int taps : new int[] {31, 32}) {
            scipy.assertRow("low." + taps, FirDesign.lowPass(taps, 120, RATE, Window.hamming()).taps(), 1e-9);
            scipy.assertRow("pass." + taps, FirDesign.bandPass(taps, MIDDLE, RATE, Window.hamming()).taps(), 1e-9);
        }
        scipy.assertRow("high.31", FirDesign.highPass(31, 120, RATE, Window.hamming()).taps(), 1e-9);
        scipy.assertRow("stop.31", FirDesign.bandStop(31, MIDDLE, RATE, Window.hamming()).taps(), 1e-9);
        scipy.assertRow("kaiser.31", FirDesign.lowPass(31, 120, RATE, Window.kaiser(6)).taps(), 1e-9);
        double[] x = scipy.row("samples");
        double[] y = new double[x.length];
        FirDesign.lowPass(31, 120, RATE, Window.hamming()).process(x, 0, y, 0, x.length);
        scipy.assertRow("output", y, 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"1, 2", "1, 5", "3, 1", "3, 2", "2, 3", "147, 160", "6, 4", "1, 1"})
    void resamplingAgreesWithSciPy(int up, int down) {
        Reference scipy = Reference.of("scipy-resampling.txt");
        scipy.assertRow(up + "." + down, Resampling.by(up, down).process(scipy.row("samples")), 1e-9);
    }

    @Test
    void resamplingKnowsItsRate() {
        Resampling resampling = Resampling.by(6, 4);
        assertEquals("resampling by 3/2", resampling.toString());
        assertEquals(1500, resampling.outputSampleRateHertz(1000));
        assertEquals(15, resampling.outputLength(10));
        assertEquals(2, resampling.outputLength(1));
        assertEquals(0, resampling.outputLength(0));
    }

    @Test
    void firFilterStreamsAsOnePass() {
        double[] x = new Random(2).doubles(200, -1, 1).toArray();
        FirFilter filter = FirDesign.bandPass(21, MIDDLE, RATE, Window.hann());
        double[] whole = new double[200];
        filter.process(x, 0, whole, 0, 200);
        filter.reset();
        double[] parts = x.clone();
        int at = 0;
        for (int block : new int[] {1, 0, 30, 150, 19}) {
            filter.process(parts, at, parts, at, block);
            at += block;
        }
        assertArrayEquals(whole, parts, 0);
        assertEquals(10, filter.delaySamples());
        assertEquals(1, filter.gain(120, RATE), 1e-12);
        assertEquals("non-recursive filter of 21 taps", filter.toString());
    }

    /** Definitions: -3.01 dB, end of the ripple, and stop-band attenuation at the corner. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5, 8})
    void cornersAreWhereTheDefinitionPutsThem(int order) {
        assertEquals(-3.0103, decibels(FilterDesign.butterworth(order).bandPass(MIDDLE, RATE), 80), 1e-4);
        assertEquals(-0.5, decibels(FilterDesign.chebyshev1(order, 0.5).bandPass(MIDDLE, RATE), 160), 1e-6);
        assertEquals(-40, decibels(FilterDesign.chebyshev2(order, 40).lowPass(120, RATE), 120), 1e-6);
        assertEquals(-40, decibels(FilterDesign.chebyshev2(order, 40).highPass(120, RATE), 120), 1e-6);
    }

    private static double decibels(SectionCascade cascade, double hertz) {
        return 20 * Math.log10(cascade.gain(hertz, RATE));
    }

    @Test
    void badArgumentsAreNamed() {
        assertMessage("rippleDecibels must be within 1.0E-6 to 20.0 dB: 0.0", () -> FilterDesign.chebyshev1(2, 0));
        assertMessage("attenuationDecibels must be within 1.0E-6 to 200.0 dB: NaN",
                () -> FilterDesign.chebyshev2(2, Double.NaN));
        assertMessage("order must be from 1 to 20: 21", () -> FilterDesign.butterworth(21));
        assertMessage("highest frequency of the band must be above 0 and below half the sample rate, 500.0 Hz: 500.0",
                () -> FilterDesign.butterworth(2).bandPass(Band.of(100, 500), RATE));
        assertMessage("lowest frequency of the band must be above 0 and below half the sample rate, 500.0 Hz: 0.0",
                () -> FilterDesign.butterworth(2).bandStop(Band.of(0, 100), RATE));
        assertMessage("number of samples must be above 15: 15",
                () -> FilterDesign.butterworth(4).lowPass(100, RATE).zeroPhase(new double[15]));
        assertMessage("taps must be odd to pass half the sample rate: 4",
                () -> FirDesign.highPass(4, 100, RATE, Window.hann()));
        assertMessage("taps must be from 1 to 4194304: 0", () -> FirDesign.lowPass(0, 100, RATE, Window.hann()));
        assertMessage("cornerHertz must be above 0 and below half the sample rate, 500.0 Hz: 600.0",
                () -> FirDesign.lowPass(3, 600, RATE, Window.hann()));
        assertMessage("number of taps must be at least 1: 0", FirFilter::of);
        assertMessage("taps[0] must be finite: NaN", () -> FirFilter.of(Double.NaN));
        assertMessage("up must be at least 1: 0", () -> Resampling.by(0, 1));
        assertMessage("down must be at least 1: -1", () -> Resampling.by(1, -1));
        assertEquals("Chebyshev II, 40.0 dB attenuation, order 3", FilterDesign.chebyshev2(3, 40).toString());
        assertEquals("Chebyshev I, 0.5 dB ripple, order 3", FilterDesign.chebyshev1(3, 0.5).toString());
        assertEquals("Butterworth, order 3", FilterDesign.butterworth(3).toString());
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
