package dev.vibra.properties;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.filter.FilterDesign;
import dev.vibra.filter.FirDesign;
import dev.vibra.filter.FirFilter;
import dev.vibra.filter.Resampling;
import dev.vibra.filter.SectionCascade;
import dev.vibra.integration.TimeDifferentiator;
import dev.vibra.integration.TimeIntegrator;
import dev.vibra.quantity.Band;
import dev.vibra.window.Window;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Laws of filters: what their families promise, and linearity, time invariance, symmetry. */
class FilterProperties {
    private static final double RATE = 1000;

    private static double[] tone(int length, double hertz, double phase) {
        double[] x = new double[length];
        for (int i = 0; i < length; i++) {
            x[i] = Math.cos(2 * Math.PI * hertz / RATE * i + phase);
        }
        return x;
    }

    @Property(tries = 100)
    void butterworthFallsMonotonicallyThroughHalfPower(@ForAll @IntRange(min = 1, max = 12) int order,
            @ForAll @DoubleRange(min = 20, max = 450) double corner) {
        SectionCascade filter = FilterDesign.butterworth(order).lowPass(corner, RATE);
        double before = filter.gain(0, RATE);
        assertEquals(1, before, 1e-9);
        assertEquals(Math.sqrt(0.5), filter.gain(corner, RATE), 1e-8);
        for (double hertz = 5; hertz <= 500; hertz += 5) {
            double gain = filter.gain(hertz, RATE);
            assertTrue(gain <= before + 1e-9, "gain rises at " + hertz + " Hz");
            before = gain;
        }
    }

    /** |L|² + |H|² = 1/(1 + w^2n) + w^2n/(1 + w^2n) at the bent frequency w. */
    @Property(tries = 100)
    void butterworthLowAndHighPassShareThePower(@ForAll @IntRange(min = 1, max = 10) int order,
            @ForAll @DoubleRange(min = 30, max = 450) double corner,
            @ForAll @DoubleRange(min = 0, max = 500) double hertz) {
        double low = FilterDesign.butterworth(order).lowPass(corner, RATE).gain(hertz, RATE);
        double high = FilterDesign.butterworth(order).highPass(corner, RATE).gain(hertz, RATE);
        assertEquals(1, low * low + high * high, 1e-8);
    }

    @Property(tries = 60)
    void bandPassAndBandStopShareThePower(@ForAll @IntRange(min = 1, max = 6) int order,
            @ForAll @DoubleRange(min = 60, max = 200) double lowest,
            @ForAll @DoubleRange(min = 250, max = 450) double highest,
            @ForAll @DoubleRange(min = 0, max = 500) double hertz) {
        Band band = Band.of(lowest, highest);
        double pass = FilterDesign.butterworth(order).bandPass(band, RATE).gain(hertz, RATE);
        double stop = FilterDesign.butterworth(order).bandStop(band, RATE).gain(hertz, RATE);
        assertEquals(1, pass * pass + stop * stop, 1e-8);
        assertEquals(Math.sqrt(0.5), FilterDesign.butterworth(order).bandPass(band, RATE).gain(lowest, RATE), 1e-8);
        assertEquals(Math.sqrt(0.5), FilterDesign.butterworth(order).bandPass(band, RATE).gain(highest, RATE), 1e-8);
    }

    @Property(tries = 100)
    void chebyshevRipplesNoDeeperThanAsked(@ForAll @IntRange(min = 1, max = 10) int order,
            @ForAll @DoubleRange(min = 0.05, max = 6) double ripple,
            @ForAll @DoubleRange(min = 50, max = 400) double corner) {
        SectionCascade filter = FilterDesign.chebyshev1(order, ripple).lowPass(corner, RATE);
        double least = Math.pow(10, -ripple / 20);
        for (int i = 0; i <= 100; i++) {
            double gain = filter.gain(corner * i / 100, RATE);
            assertTrue(gain <= 1 + 1e-8 && gain >= least - 1e-8, "gain " + gain);
        }
        assertEquals(least, filter.gain(corner, RATE), 1e-8);
        assertTrue(filter.gain(Math.min(499, corner * 1.2), RATE) < least);
    }

    @Property(tries = 100)
    void secondChebyshevStopsAsMuchAsAsked(@ForAll @IntRange(min = 1, max = 10) int order,
            @ForAll @DoubleRange(min = 10, max = 80) double attenuation,
            @ForAll @DoubleRange(min = 50, max = 400) double corner) {
        SectionCascade filter = FilterDesign.chebyshev2(order, attenuation).lowPass(corner, RATE);
        double most = Math.pow(10, -attenuation / 20);
        assertEquals(most, filter.gain(corner, RATE), 1e-8);
        for (int i = 0; i <= 100; i++) {
            assertTrue(filter.gain(Math.min(500, corner + (500 - corner) * i / 100), RATE) <= most + 1e-8);
        }
    }

    @Property(tries = 60)
    void cascadeIsLinearAndTimeInvariant(@ForAll long seed, @ForAll @DoubleRange(min = -5, max = 5) double factor,
            @ForAll @IntRange(min = 1, max = 100) int delay) {
        SectionCascade filter = FilterDesign.chebyshev2(6, 40).highPass(80, RATE);
        double[] x = Signals.noise(400, seed);
        double[] y = Signals.noise(400, seed + 1);
        double[] fx = Signals.atOnce(filter.newFilter()::process, x);
        double[] fy = Signals.atOnce(filter.newFilter()::process, y);
        Signals.assertClose(Signals.combined(fx, factor, fy),
                Signals.atOnce(filter.newFilter()::process, Signals.combined(x, factor, y)), 1e-11);
        double[] late = new double[400];
        double[] expected = new double[400];
        System.arraycopy(x, 0, late, delay, 400 - delay);
        System.arraycopy(fx, 0, expected, delay, 400 - delay);
        assertArrayEquals(expected, Signals.atOnce(filter.newFilter()::process, late));
    }

    /** Reversed in time, forward-backward becomes backward-forward: equal once the ends have decayed. */
    @Property(tries = 60)
    void zeroPhaseKnowsNoDirectionOfTime(@ForAll long seed, @ForAll @IntRange(min = 1, max = 4) int order) {
        SectionCascade filter = FilterDesign.butterworth(order).lowPass(100, RATE);
        double[] x = Signals.noise(1200, seed);
        // Slowest pole of order 4 at 100 Hz: exp(-2π·100/1000·0.38) a sample, 1e-30 after 300 samples.
        Signals.assertClose(filter.zeroPhase(x), Signals.reversed(filter.zeroPhase(Signals.reversed(x))), 1e-10, 300);
    }

    @Property(tries = 60)
    void zeroPhaseHasTheSquaredGainAndNoDelay(@ForAll @DoubleRange(min = 10, max = 200) double hertz,
            @ForAll @DoubleRange(min = -3, max = 3) double phase) {
        SectionCascade filter = FilterDesign.butterworth(3).lowPass(120, RATE);
        double[] x = tone(1200, hertz, phase);
        double gain = filter.gain(hertz, RATE);
        double[] expected = java.util.Arrays.stream(x).map(v -> gain * gain * v).toArray();
        double[] actual = filter.zeroPhase(x);
        for (int i = 300; i < 900; i++) {
            assertEquals(expected[i], actual[i], 1e-9);
        }
    }

    @Property(tries = 60)
    void oneFilterAfterTheOtherMultipliesGains(@ForAll @DoubleRange(min = 0, max = 500) double hertz,
            @ForAll long seed) {
        SectionCascade a = FilterDesign.butterworth(4).lowPass(200, RATE);
        SectionCascade b = FilterDesign.chebyshev1(3, 0.5).highPass(50, RATE);
        assertEquals(a.gain(hertz, RATE) * b.gain(hertz, RATE), a.then(b).gain(hertz, RATE), 1e-12);
        double[] x = Signals.noise(300, seed);
        double[] inTurn = Signals.atOnce(b.newFilter()::process, Signals.atOnce(a.newFilter()::process, x));
        Signals.assertClose(inTurn, Signals.atOnce(a.then(b).newFilter()::process, x), 1e-12);
    }

    /** Symmetric taps delay every tone by half their number. */
    @Property(tries = 80)
    void firFilterHasLinearPhase(@ForAll @IntRange(min = 3, max = 101) int taps,
            @ForAll @DoubleRange(min = 5, max = 480) double hertz,
            @ForAll @DoubleRange(min = 40, max = 450) double corner) {
        FirFilter filter = FirDesign.lowPass(taps, corner, RATE, Window.hamming());
        assertArrayEquals(filter.taps(), Signals.reversed(filter.taps()), 1e-12);
        double re = 0;
        double im = 0;
        for (int k = 0; k < taps; k++) {
            double angle = 2 * Math.PI * hertz / RATE * (k - filter.delaySamples());
            re += filter.taps()[k] * Math.cos(angle);
            im += filter.taps()[k] * Math.sin(angle);
        }
        assertEquals(0, im, 1e-12);
        assertEquals(filter.gain(hertz, RATE), Math.abs(re), 1e-12);
    }

    /** The taps are scaled so that the middle of the pass band, 0 Hz or half the sample rate, passes with gain 1. */
    @Property(tries = 60)
    void firGainIsUnityWhereItIsScaled(@ForAll @IntRange(min = 10, max = 60) int half,
            @ForAll @DoubleRange(min = 100, max = 400) double corner) {
        assertEquals(1, FirDesign.lowPass(2 * half + 1, corner, RATE, Window.hamming()).gain(0, RATE), 1e-12);
        assertEquals(1, FirDesign.highPass(2 * half + 1, corner, RATE, Window.hamming()).gain(500, RATE), 1e-10);
    }

    /** The pass band of the default filter reaches to 0.82 of the lower half sample rate; Kaiser 5 ripples by 0.002. */
    @Property(tries = 60)
    void resamplingKeepsTones(@ForAll @IntRange(min = 1, max = 6) int up, @ForAll @IntRange(min = 1, max = 6) int down,
            @ForAll @DoubleRange(min = 0.02, max = 0.75) double place,
            @ForAll @DoubleRange(min = -3, max = 3) double phase) {
        Resampling resampling = Resampling.by(up, down);
        double newRate = resampling.outputSampleRateHertz(RATE);
        assertEquals(RATE * up / down, newRate, 1e-9);
        double hertz = place * Math.min(RATE, newRate) / 2;
        double[] out = resampling.process(tone(1200, hertz, phase));
        assertEquals(resampling.outputLength(1200), out.length);
        int margin = (int) Math.ceil(12 * Math.max(1, newRate / RATE) + 12);
        for (int i = margin; i < out.length - margin; i++) {
            assertEquals(Math.cos(2 * Math.PI * hertz * i / newRate + phase), out[i], 0.004);
        }
    }

    @Property(tries = 40)
    void resamplingIsLinear(@ForAll long seed, @ForAll @IntRange(min = 1, max = 7) int up,
            @ForAll @IntRange(min = 1, max = 7) int down, @ForAll @DoubleRange(min = -4, max = 4) double factor) {
        double[] x = Signals.noise(300, seed);
        double[] y = Signals.noise(300, seed + 1);
        Resampling resampling = Resampling.by(up, down);
        Signals.assertClose(Signals.combined(resampling.process(x), factor, resampling.process(y)),
                resampling.process(Signals.combined(x, factor, y)), 1e-12);
    }

    /** Gain stated and gain measured on a tone are one; the high-pass has decayed after a second. */
    @Property(tries = 40)
    void timeIntegratorHasTheGainItStates(@ForAll @DoubleRange(min = 20, max = 300) double hertz,
            @ForAll @IntRange(min = 1, max = 2) int integrations) {
        TimeIntegrator integrator = TimeIntegrator.of(integrations, 10, RATE);
        double[] out = Signals.atOnce(integrator::process, tone(4000, hertz, 0));
        double re = 0;
        double im = 0;
        int first = 2000;
        double weights = 0;
        for (int i = first; i < 4000; i++) {
            // Hann weights leave 1e-7 of the image at -2·hertz.
            double weight = 1 - Math.cos(2 * Math.PI * (i - first) / 2000);
            re += weight * out[i] * Math.cos(2 * Math.PI * hertz / RATE * i);
            im += weight * out[i] * Math.sin(2 * Math.PI * hertz / RATE * i);
            weights += weight;
        }
        double measured = 2 * Math.hypot(re, im) / weights * Math.pow(2 * Math.PI * hertz, integrations);
        assertEquals(1, measured / integrator.gain(hertz), 1e-5);
    }

    @Property(tries = 60)
    void differentiatorGivesTheDerivativeOfATone(@ForAll @DoubleRange(min = 0.01, max = 400) double hertz,
            @ForAll @DoubleRange(min = -3, max = 3) double phase) {
        double[] out = Signals.atOnce(TimeDifferentiator.at(RATE)::process, tone(300, hertz, phase));
        double omega = 2 * Math.PI * hertz;
        for (int i = 2 * TimeDifferentiator.DELAY; i < out.length; i++) {
            double expected = -omega * Math.sin(omega * (i - TimeDifferentiator.DELAY) / RATE + phase);
            assertEquals(expected, out[i], 1e-4 * omega); // promised: 0.01 % up to 0.4 of the rate
        }
    }

    /** The trapezoid rule is exact for straight lines. */
    @Property(tries = 60)
    void trapezoidsIntegrateStraightLinesExactly(@ForAll @DoubleRange(min = -10, max = 10) double offset,
            @ForAll @DoubleRange(min = -10, max = 10) double slope) {
        double[] x = new double[200];
        double[] expected = new double[200];
        for (int i = 0; i < 200; i++) {
            double t = i / RATE;
            x[i] = offset + slope * t;
            expected[i] = offset * t + 0.5 * slope * t * t;
        }
        assertArrayEquals(expected, TimeIntegrator.runningTrapezoid(x, RATE), 1e-12);
    }
}
