package dev.vibra.level;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Levels of streams against sums made by hand. */
class LevelsByHandTest {
    private static void assertRefused(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }

    private static void assertNotYet(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalStateException.class, call).getMessage());
    }

    /** The four values of {@code MomentsTest.handValues}, between others that are not pushed. */
    @Test
    void momentsOfHandValues() {
        RunningMoments moments = new RunningMoments();
        moments.push(new double[] {99, -1, 0, 99}, 1, 2);
        moments.push(new double[] {0, 5, 77}, 0, 2);
        moments.push(new double[] {3}, 1, 0);
        assertEquals(4, moments.count());
        assertEquals(1, moments.mean(), 1e-15);
        assertEquals(Math.sqrt(5.5), moments.rms(), 1e-14);
        assertEquals(4, moments.peak(), 1e-15);
        assertEquals(6, moments.peakToPeak());
        assertEquals(4 / Math.sqrt(5.5), moments.crestFactor(), 1e-14);
        assertEquals(13.5 / Math.pow(5.5, 1.5), moments.skewness(), 1e-13);
        assertEquals(68.5 / (5.5 * 5.5), moments.kurtosis(), 1e-13);
        assertEquals("moments of 4 samples so far", moments.toString());
    }

    @Test
    void peakMayLieBelowTheMean() {
        RunningMoments moments = new RunningMoments();
        moments.push(new double[] {1, 0, 0, -5}, 0, 4);
        assertEquals(4, moments.peak(), 1e-15);
    }

    @Test
    void momentsForgetWhenReset() {
        RunningMoments moments = new RunningMoments();
        moments.push(new double[] {100, -300, 7, 1e3}, 0, 4);
        moments.reset();
        assertEquals(0, moments.count());
        assertNotYet("no sample was pushed yet", moments::mean);
        assertNotYet("no sample was pushed yet", moments::rms);
        assertNotYet("no sample was pushed yet", moments::peak);
        assertNotYet("no sample was pushed yet", moments::peakToPeak);
        assertNotYet("no sample was pushed yet", moments::crestFactor);
        momentsOfHandValues();
        moments.push(new double[] {-1, 0, 0, 5}, 0, 4);
        assertEquals(1, moments.mean(), 1e-15);
        assertEquals(6, moments.peakToPeak());
        assertEquals(13.5 / Math.pow(5.5, 1.5), moments.skewness(), 1e-13);
        assertEquals(68.5 / (5.5 * 5.5), moments.kurtosis(), 1e-13);
    }

    @Test
    void constantSamplesHaveLevelsAndNoShape() {
        RunningMoments moments = new RunningMoments();
        moments.push(new double[] {2, 2, 2}, 0, 3);
        assertEquals(0, moments.rms());
        String message = "the shape of a signal needs samples that vary: all are 2.0";
        assertNotYet(message, moments::crestFactor);
        assertNotYet(message, moments::skewness);
        assertNotYet(message, moments::kurtosis);
    }

    @Test
    void momentsRefuseBadBlocks() {
        RunningMoments moments = new RunningMoments();
        assertRefused("samples must lie inside the array of length 2: offset 1, length 2",
                () -> moments.push(new double[2], 1, 2));
        assertRefused("samples[0] must be finite: Infinity", () -> moments.push(new double[] {1.0 / 0}, 0, 1));
        assertRefused("samples[0] must be finite: NaN", () -> moments.push(new double[] {0.0 / 0}, 0, 1));
        assertEquals(0, moments.count());
    }

    @Test
    void slidingRmsOfHandValues() {
        RunningRms rms = RunningRms.linear(0.03, 100);
        assertNotYet("no sample was pushed yet", rms::rms);
        rms.push(new double[] {9, 3, 9}, 1, 1);
        assertEquals(3, rms.rms(), 1e-15);
        rms.push(new double[] {4}, 0, 1);
        assertEquals(Math.sqrt(12.5), rms.rms(), 1e-15);
        rms.push(new double[] {0, 1, 2}, 0, 3);
        assertEquals(Math.sqrt(5 / 3.0), rms.rms(), 1e-15);
        rms.push(new double[] {5, 6, 7, 8}, 0, 4);
        assertEquals(Math.sqrt((36 + 49 + 64) / 3.0), rms.rms(), 1e-14);
        assertEquals("running rms over 3 samples", rms.toString());
        rms.reset();
        assertNotYet("no sample was pushed yet", rms::rms);
        rms.push(new double[] {2, 1, 1, 1}, 0, 4);
        assertEquals(1, rms.rms(), 1e-15);
    }

    /** A large sample is forgotten without rest once the window has come round. */
    @Test
    void slidingRmsIsSummedAnewOnceAWindow() {
        RunningRms rms = RunningRms.linear(0.04, 100);
        rms.push(new double[] {1e9, 1, 1, 1, 1, 1, 1, 1}, 0, 8);
        assertEquals(1, rms.rms(), 1e-15);
    }

    /**
     * Step response of the exponential mean: 1 - 1/e of the mean square after a time constant (IEC 61672-1
     * weighting).
     */
    @Test
    void exponentialRmsRisesByItsTimeConstant() {
        RunningRms rms = RunningRms.exponential(0.5, 100);
        double[] ones = new double[50];
        java.util.Arrays.fill(ones, 3);
        rms.push(ones, 0, 50);
        assertEquals(3 * Math.sqrt(1 - Math.exp(-1)), rms.rms(), 1e-12);
        assertEquals("exponential running rms", rms.toString());
        rms.reset();
        rms.push(ones, 0, 1);
        assertEquals(3 * Math.sqrt(1 - Math.exp(-0.02)), rms.rms(), 1e-12);
    }

    @Test
    void runningRmsRefusesBadArguments() {
        assertRefused("samples of the window must be within 1.0 to 6.7108864E7: 0.0",
                () -> RunningRms.linear(0.004, 100));
        assertRefused("sampleRateHertz must be finite and > 0 Hz: 0.0", () -> RunningRms.exponential(1, 0));
        RunningRms rms = RunningRms.linear(0.03, 100);
        assertRefused("samples[0] must be finite: NaN", () -> rms.push(new double[] {0.0 / 0}, 0, 1));
        assertRefused("samples[0] must be within ±1e70: 1.0E200", () -> rms.push(new double[] {1e200}, 0, 1));
        assertRefused("samples must lie inside the array of length 2: offset 0, length 3",
                () -> rms.push(new double[2], 0, 3));
    }

    @Test
    void peakHoldFallsByItsTimeConstant() {
        PeakHold hold = PeakHold.of(0.1, 100);
        assertEquals(0, hold.peak());
        hold.push(new double[] {50, -8, 50}, 1, 1);
        assertEquals(8, hold.peak());
        hold.push(new double[10], 0, 10);
        assertEquals(8 * Math.exp(-1), hold.peak(), 1e-14);
        hold.push(new double[] {4, 1}, 0, 2);
        assertEquals(4 * Math.exp(-0.1), hold.peak(), 1e-14);
        assertEquals("peak hold at " + hold.peak(), hold.toString());
        hold.reset();
        assertEquals(0, hold.peak());
    }

    @Test
    void peakHoldWithoutEndNeverFalls() {
        PeakHold hold = PeakHold.of(Double.POSITIVE_INFINITY, 100);
        hold.push(new double[] {3, 1, 2}, 0, 3);
        assertEquals(3, hold.peak());
    }

    @Test
    void peakHoldRefusesBadArguments() {
        assertRefused("timeConstantSeconds must be > 0 s: 0.0", () -> PeakHold.of(0, 100));
        assertRefused("sampleRateHertz must be finite and > 0 Hz: NaN", () -> PeakHold.of(1, Double.NaN));
        PeakHold hold = PeakHold.of(1, 100);
        assertRefused("samples[0] must be finite: -Infinity", () -> hold.push(new double[] {-1.0 / 0}, 0, 1));
        assertRefused("samples must lie inside the array of length 2: offset 3, length 0",
                () -> hold.push(new double[2], 3, 0));
    }

    /** ISO 1683:2015, Table 3: 1 µm/s², 1 nm/s, 1 pm; 1 mm/s is 120 dB, 10 m/s² is 140 dB, 1 µm is 120 dB. */
    @Test
    void decibelsOfRoundLevels() {
        assertEquals(120, Decibels.of(Level.ofSi(1e-3, Quantity.VELOCITY, Detector.RMS)), 1e-12);
        assertEquals(140, Decibels.of(Level.ofSi(10, Quantity.ACCELERATION, Detector.RMS)), 1e-12);
        assertEquals(120, Decibels.of(Level.ofSi(1e-6, Quantity.DISPLACEMENT, Detector.RMS)), 1e-12);
        assertEquals(1e-3, Decibels.toLevel(120, Quantity.VELOCITY).si(), 1e-15);
        assertEquals(Detector.RMS, Decibels.toLevel(120, Quantity.VELOCITY).detector());
        assertRefused("detector must be rms: " + Detector.ZERO_TO_PEAK,
                () -> Decibels.of(Level.ofSi(1, Quantity.VELOCITY, Detector.ZERO_TO_PEAK)));
        assertRefused("quantity must be a motion: " + Quantity.VOLTAGE, () -> Decibels.reference(Quantity.VOLTAGE));
        assertThrows(IllegalArgumentException.class, () -> Decibels.of(Level.ofSi(0, Quantity.VELOCITY, Detector.RMS)));
    }

    /** Definition 7 of Hyndman and Fan over five values: the quartiles are the second and the fourth. */
    @Test
    void percentilesOfHandValues() {
        double[] values = {50, 10, 30, 20, 40};
        Percentiles percentiles = Percentiles.of(values);
        assertEquals(20, percentiles.at(25));
        assertEquals(40, percentiles.at(75));
        assertEquals(24, percentiles.at(35), 1e-12);
        assertEquals(50, percentiles.at(100));
        assertEquals("percentiles of 5 values, median 30.0", percentiles.toString());
        assertArrayEquals(new double[] {50, 10, 30, 20, 40}, values);
        assertRefused("values[1] must be finite: NaN", () -> Percentiles.of(1, Double.NaN));
        assertRefused("percent must be within 0.0 to 100.0 %: 100.5", () -> percentiles.at(100.5));
    }

    /** By definition over {-1, 0, 0, 5}, mean 1: magnitudes about it 2, 1, 1, 4. */
    @Test
    void shapeFactorsOfHandValues() {
        Moments moments = Moments.of(-1, 0, 0, 5);
        double rms = Math.sqrt(5.5);
        double root = (Math.sqrt(2) + 1 + 1 + 2) / 4;
        assertEquals(rms / 2, moments.shapeFactor(), 1e-14);
        assertEquals(4 / 2.0, moments.impulseFactor(), 1e-14);
        assertEquals(4 / (root * root), moments.clearanceFactor(), 1e-14);
        assertEquals(4, moments.count());
        Moments constant = Moments.of(3, 3);
        assertThrows(IllegalStateException.class, constant::shapeFactor);
        assertThrows(IllegalStateException.class, constant::impulseFactor);
        assertThrows(IllegalStateException.class, constant::clearanceFactor);
    }

    @Test
    void oneSampleHasMoments() {
        assertEquals(7, Moments.of(new double[] {1, 7, 2}, 1, 1).mean());
        assertEquals(1, Moments.of(7).count());
        assertThrows(IllegalArgumentException.class, Moments::of);
        assertThrows(IllegalArgumentException.class, () -> Moments.of(1, 0.0 / 0));
    }

    /** A mean a thousand million times the variation, exact in binary: two passes lose nothing of it. */
    @Test
    void aLargeMeanLeavesTheMomentsAlone() {
        double base = 1L << 40;
        double[] x = {base - 1, base, base, base + 5};
        assertEquals(base + 1, Moments.of(x).mean());
        assertEquals(Math.sqrt(5.5), Moments.of(x).rms(), 1e-14);
        assertEquals(68.5 / (5.5 * 5.5), Moments.of(x).kurtosis(), 1e-13);
    }
}
