package dev.vibra.properties;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.level.Decibels;
import dev.vibra.level.Moments;
import dev.vibra.level.Percentiles;
import dev.vibra.quality.TrendTests;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;

/** Laws of levels, quantities and of the tests for a trend. */
class LevelProperties {
    @Provide
    Arbitrary<Quantity> motions() {
        return Arbitraries.of(Quantity.ACCELERATION, Quantity.VELOCITY, Quantity.DISPLACEMENT);
    }

    @Property(tries = 200)
    void decibelsComeBack(@ForAll("motions") Quantity quantity,
            @ForAll @DoubleRange(min = -100, max = 300) double decibels) {
        assertEquals(decibels, Decibels.of(Decibels.toLevel(decibels, quantity)), 1e-11 * (1 + Math.abs(decibels)));
    }

    @Property(tries = 200)
    void tenfoldAmplitudeIsTwentyDecibels(@ForAll("motions") Quantity quantity,
            @ForAll @DoubleRange(min = 1e-6, max = 1e3) @Scale(9) double value) {
        double low = Decibels.of(Level.ofSi(value, quantity, Detector.RMS));
        double high = Decibels.of(Level.ofSi(10 * value, quantity, Detector.RMS));
        assertEquals(20, high - low, 1e-10);
    }

    @Property(tries = 150)
    void percentilesRiseFromLowestToHighest(@ForAll long seed, @ForAll @IntRange(min = 1, max = 200) int length,
            @ForAll @DoubleRange(min = 0, max = 100) double a, @ForAll @DoubleRange(min = 0, max = 100) double b) {
        double[] x = Signals.noise(length, seed);
        Percentiles percentiles = Percentiles.of(x);
        assertTrue(percentiles.at(Math.min(a, b)) <= percentiles.at(Math.max(a, b)) + 1e-15);
        assertEquals(Moments.of(x).lowest(), percentiles.at(0));
        assertEquals(Moments.of(x).highest(), percentiles.at(100));
        double mirrored = -Percentiles.of(java.util.Arrays.stream(x).map(v -> -v).toArray()).at(100 - a);
        assertEquals(mirrored, percentiles.at(a), 1e-12);
    }

    /** Pearson's inequality, and the order of power means: mean root <= mean magnitude <= rms <= peak. */
    @Property(tries = 200)
    void shapeFactorsKeepTheirInequalities(@ForAll long seed, @ForAll @IntRange(min = 2, max = 400) int length) {
        Moments m = Moments.of(Signals.normal(length, seed));
        assertTrue(m.crestFactor() >= 1 - 1e-12);
        assertTrue(m.kurtosis() >= 1 + m.skewness() * m.skewness() - 1e-9);
        assertTrue(m.shapeFactor() >= 1 - 1e-12);
        assertTrue(m.impulseFactor() >= m.crestFactor() - 1e-12);
        assertTrue(m.clearanceFactor() >= m.impulseFactor() - 1e-12);
        assertTrue(m.peakToPeak() >= m.peak() && m.peakToPeak() <= 2 * m.peak() + 1e-12);
    }

    @Property(tries = 100)
    void momentsKnowNoOrderAndNoSign(@ForAll long seed, @ForAll @IntRange(min = 2, max = 400) int length) {
        double[] x = Signals.normal(length, seed);
        Moments m = Moments.of(x);
        Moments turned = Moments.of(Signals.reversed(x));
        Moments negated = Moments.of(java.util.Arrays.stream(x).map(v -> -v).toArray());
        assertEquals(m.rms(), turned.rms(), 1e-13);
        assertEquals(m.kurtosis(), turned.kurtosis(), 1e-11 * m.kurtosis());
        assertEquals(-m.skewness(), negated.skewness(), 1e-11);
        assertEquals(m.peak(), negated.peak(), 1e-13);
        assertEquals(m.shapeFactor(), negated.shapeFactor(), 1e-12);
    }

    @Property(tries = 100)
    void aPartHasTheMomentsOfItsCopy(@ForAll long seed, @ForAll @IntRange(min = 0, max = 50) int offset,
            @ForAll @IntRange(min = 2, max = 50) int length) {
        double[] x = Signals.noise(100, seed);
        Moments part = Moments.of(x, offset, length);
        Moments copy = Moments.of(java.util.Arrays.copyOfRange(x, offset, offset + length));
        assertEquals(length, part.count());
        assertEquals(copy.mean(), part.mean());
        assertEquals(copy.rms(), part.rms());
        assertEquals(copy.kurtosis(), part.kurtosis());
        assertEquals(copy.clearanceFactor(), part.clearanceFactor());
    }

    /** Backwards in time every pair that was in order is a reverse arrangement; distinct values have no ties. */
    @Property(tries = 150)
    void reverseArrangementsAreSymmetricUnderReversal(@ForAll long seed, @ForAll @IntRange(min = 2, max = 80) int n) {
        double[] x = Signals.normal(n, seed);
        double[] y = Signals.reversed(x);
        assertEquals(n * (n - 1) / 2, TrendTests.reverseArrangements(x) + TrendTests.reverseArrangements(y));
        double p = TrendTests.reverseArrangementsProbability(x);
        assertEquals(p, TrendTests.reverseArrangementsProbability(y), 1e-12);
        assertTrue(p > 0 && p <= 1);
    }

    @Property(tries = 150)
    void runsAreSymmetricUnderReversalAndSign(@ForAll long seed, @ForAll @IntRange(min = 2, max = 80) int n) {
        double[] x = Signals.normal(n, seed);
        double[] negated = java.util.Arrays.stream(x).map(v -> -v).toArray();
        assertEquals(TrendTests.runs(x), TrendTests.runs(Signals.reversed(x)));
        assertEquals(TrendTests.runs(x), TrendTests.runs(negated));
        double p = TrendTests.runsProbability(x);
        assertEquals(p, TrendTests.runsProbability(Signals.reversed(x)), 1e-12);
        assertTrue(p > 0 && p <= 1);
    }

    /** No test of rank looks at more than the order of the values. */
    @Property(tries = 60)
    void trendTestsLookAtOrderOnly(@ForAll long seed, @ForAll @IntRange(min = 3, max = 60) int n) {
        double[] x = Signals.normal(n | 1, seed); // of an odd number, the median is a value and keeps its rank
        double[] bent = java.util.Arrays.stream(x).map(Math::exp).toArray();
        assertEquals(TrendTests.reverseArrangements(x), TrendTests.reverseArrangements(bent));
        assertEquals(TrendTests.runs(x), TrendTests.runs(bent));
    }

    @Property(tries = 60)
    void reverseArrangementsLimitHoldsItsTail(@ForAll @IntRange(min = 5, max = 9) int n,
            @ForAll @DoubleRange(min = 0.01, max = 0.3) double tail, @ForAll long seed) {
        int limit = TrendTests.reverseArrangementsLimit(n, tail).orElse(-1);
        // By count over many shuffles; 4000 draws scatter by at most 0.0080 (one sigma), 5 sigma below.
        Random random = new Random(seed);
        int below = 0;
        int atNext = 0;
        for (int draw = 0; draw < 4000; draw++) {
            int count = TrendTests.reverseArrangements(random.doubles(n).toArray());
            below += count <= limit ? 1 : 0;
            atNext += count <= limit + 1 ? 1 : 0;
        }
        assertTrue(below / 4000.0 <= tail + 0.04);
        assertTrue(atNext / 4000.0 >= tail - 0.04);
    }

    @Property
    void unitSymbolsComeBack(@ForAll Unit unit) {
        assertSame(unit, Unit.ofSymbol(unit.symbol()));
        assertSame(unit, Unit.ofSymbol(unit.plainSymbol()));
    }

    @Property(tries = 200)
    void speedsComeBack(@ForAll @DoubleRange(min = 0.1, max = 1e5) double perMinute,
            @ForAll @DoubleRange(min = 0.1, max = 50) double order) {
        RotationSpeed speed = RotationSpeed.ofRevolutionsPerMinute(perMinute);
        assertEquals(perMinute, speed.revolutionsPerMinute(), 1e-13 * perMinute);
        assertEquals(speed.radiansPerSecond() * order, 2 * Math.PI * speed.hertzOfOrder(order),
                1e-12 * perMinute * order);
        assertEquals(speed, RotationSpeed.ofHertz(speed.hertz()));
    }

    @Property(tries = 200)
    void bandHoldsItsCentreAndItsEnds(@ForAll @DoubleRange(min = 0, max = 1000) double lowest,
            @ForAll @DoubleRange(min = 0.1, max = 1000) double width) {
        Band band = Band.of(lowest, lowest + width);
        assertEquals(width, band.widthHertz(), 1e-9);
        assertTrue(band.contains(band.centreHertz()) && band.contains(lowest) && band.contains(band.highestHertz()));
        assertTrue(!band.contains(lowest - 0.01) && !band.contains(band.highestHertz() + 0.01));
    }
}
