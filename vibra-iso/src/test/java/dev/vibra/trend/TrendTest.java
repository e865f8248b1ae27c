package dev.vibra.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Unit;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

class TrendTest {
    private static final TrendSettings LEAST_SQUARES =
            TrendSettings.withDefaults().withMethod(TrendMethod.LEAST_SQUARES);
    private static final int CASES = 6;

    static Map<String, double[]> reference() throws IOException {
        Map<String, double[]> rows = new HashMap<>();
        try (InputStream in = TrendTest.class.getResourceAsStream("/reference/trend-fits.txt")) {
            new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().filter(line -> !line.startsWith("#"))
                    .forEach(line -> rows.put(line.split("; ")[0], Arrays.stream(line.split("; ")[1].split(" "))
                            .mapToDouble(Double::parseDouble).toArray()));
        }
        return rows;
    }

    private static double[] steps(int count) {
        double[] days = new double[count];
        Arrays.setAll(days, i -> 7.0 * i);
        return days;
    }

    /** value = start + slope·day + scatter·normal. */
    static Readings line(int count, double start, double slope, double scatter, long seed) {
        Random random = new Random(seed);
        double[] days = steps(count);
        double[] values = Arrays.stream(days).map(day -> start + slope * day + scatter * random.nextGaussian())
                .toArray();
        return Readings.ofDays(days, values, Unit.MM_PER_S);
    }

    private static String message(Runnable call) {
        return assertThrows(IllegalArgumentException.class, call::run).getMessage();
    }

    /** SciPy 1.10, stats.linregress. */
    @Test
    void leastSquaresAgreeWithSciPy() throws IOException {
        Map<String, double[]> rows = reference();
        for (int i = 0; i < CASES; i++) {
            double[] expected = rows.get("linregress " + i);
            Line line = LineFits.leastSquares(rows.get("days " + i), rows.get("values " + i));
            assertEquals(expected[0], line.slope(), 1e-9 * Math.abs(expected[0]));
            assertEquals(expected[1], line.at(0), 1e-9 * Math.abs(expected[1]));
            assertEquals(expected[2], line.slopeError(), 1e-9 * expected[2]);
            assertEquals(expected[3], line.errorAt(0), 1e-9 * expected[3]);
            double[] residuals = LineFits.residuals(rows.get("days " + i), rows.get("values " + i), line);
            assertEquals(rows.get("spearman " + i)[0], LineFits.bend(rows.get("days " + i), residuals, line.centre()),
                    1e-9);
        }
    }

    /** SciPy 1.10, stats.theilslopes with 95 % confidence; one case has ties, which SciPy corrects for and this not. */
    @Test
    void robustSlopesAgreeWithSciPy() throws IOException {
        Map<String, double[]> rows = reference();
        for (int i = 0; i < CASES; i++) {
            double[] expected = rows.get("theilslopes " + i);
            double[] slopes = LineFits.slopes(rows.get("days " + i), rows.get("values " + i));
            double[] ends = LineFits.slopeInterval(slopes, rows.get("days " + i).length, 0.95);
            assertEquals(expected[0], LineFits.median(slopes), 1e-12 * Math.abs(expected[0]));
            if (i < CASES - 1) {
                assertEquals(expected[1], ends[0], 1e-12);
                assertEquals(expected[2], ends[1], 1e-12);
            } else {
                assertTrue(ends[0] <= expected[1] && ends[1] >= expected[2], "without the correction a little wider");
            }
        }
    }

    /** Height of Hodges and Lehmann and the errors read from Sen's interval, put together in SciPy and NumPy. */
    @Test
    void robustErrorsAgreeWithSciPy() throws IOException {
        Map<String, double[]> rows = reference();
        for (int i = 0; i < CASES - 1; i++) {
            double[] expected = rows.get("robust " + i);
            double[] days = rows.get("days " + i);
            Line line = LineFits.robust(days, rows.get("values " + i));
            assertEquals(expected[0], line.height(), 1e-12 * expected[0]);
            assertEquals(expected[1], line.slopeError(), 1e-9 * expected[1]);
            assertEquals(expected[2], line.heightError(), 1e-9 * expected[2]);
            assertEquals(days.length - 2, line.freedom());
            assertEquals(2 * expected[2], line.correlated(0.6, 99).heightError(), 1e-9); // √(1.6/0.4)
        }
    }

    /** Apache Commons Math 3.6.1, SimpleRegression: half-width of the 95 % interval of the slope. */
    @Test
    void intervalOfTheSlopeAgreesWithCommonsMath() throws IOException {
        Map<String, double[]> rows = reference();
        for (int i = 0; i < CASES; i++) {
            SimpleRegression regression = new SimpleRegression();
            double[] days = rows.get("days " + i);
            double[] values = rows.get("values " + i);
            for (int j = 0; j < days.length; j++) {
                regression.addData(days[j], values[j]);
            }
            Line line = LineFits.leastSquares(days, values);
            assertEquals(regression.getSlopeConfidenceInterval(0.05), line.quantile(0.95) * line.slopeError(),
                    1e-9 * line.slopeError());
            assertEquals(regression.getSignificance() < 0.05, line.rises(0.95));
        }
    }

    /**
     * JCGM 100:2008, annex H.3, calibration of a thermometer: y1 = -0.1712(29), y2 = 0.002 18(67), correction at 30
     * degrees -0.1494(41). Readings from memory; that all printed digits follow from them is their check.
     */
    @Test
    void thermometerOfTheGuide() {
        double[] degrees = {21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511};
        double[] corrections = {-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160};
        Line line = LineFits.leastSquares(degrees, corrections);
        assertEquals(-0.1712, line.at(20), 5e-5);
        assertEquals(0.0029, line.errorAt(20), 5e-5);
        assertEquals(0.00218, line.slope(), 5e-6);
        assertEquals(0.00067, line.slopeError(), 5e-6);
        assertEquals(-0.1494, line.at(30), 5e-5);
        assertEquals(0.0041, line.errorAt(30), 5e-5);
        Trend trend = Trend.of(Readings.ofDays(degrees, corrections, Unit.M_PER_S2), LEAST_SQUARES);
        Interval band = trend.at(30);
        // The same through the public way, which widens it by what neighbours seem to correlate.
        Line wide = line.correlated(trend.serialCorrelation(), 11);
        double widening = Math.sqrt((1 + trend.serialCorrelation()) / (1 - trend.serialCorrelation()));
        assertEquals(0.0041 * widening, (band.highest() - band.lowest()) / 2 / wide.quantile(0.95), 5e-5 * widening);
    }

    /** y = 1 + 0.02·t without scatter reaches 3 at day 100; the readings end at day 63. */
    @Test
    void perfectLineCrossesWhereItMust() {
        for (TrendMethod method : TrendMethod.values()) {
            Trend trend = Trend.of(line(10, 1, 0.02, 0, 1), LEAST_SQUARES.withMethod(method));
            Interval days = trend.timeTo(3).daysFromLastReading().orElseThrow();
            assertEquals(37, days.best(), 1e-9);
            assertEquals(37, days.lowest(), 1e-6);
            assertEquals(37, days.highest(), 1e-6);
            assertFalse(trend.isBent());
            assertEquals(0.02, trend.slopePerDay().best(), 1e-12);
        }
    }

    /** exp(0.5 + 0.01·t) reaches e² at day 150; readings end at day 133. */
    @Test
    void perfectExponentialCrossesWhereItMust() {
        double[] days = steps(20);
        double[] values = Arrays.stream(days).map(day -> Math.exp(0.5 + 0.01 * day)).toArray();
        Trend trend = Trend.of(Readings.ofDays(days, values, Unit.MM_PER_S),
                TrendSettings.withDefaults().withModel(TrendModel.EXPONENTIAL));
        assertEquals(17, trend.timeTo(Math.exp(2)).daysFromLastReading().orElseThrow().best(), 1e-9);
        assertEquals(Math.exp(1.5), trend.at(100).best(), 1e-9);
        assertEquals(0.01, trend.slopePerDay().best(), 1e-12);
        assertTrue(trend.toString().startsWith("slope 0.01 (0.01 to 0.01) a day, relative; 20 readings, exponential,"
                + " robust, 95 %"), trend::toString);
        Trend straight = Trend.of(Readings.ofDays(days, values, Unit.MM_PER_S));
        assertTrue(straight.isBent());
        assertTrue(straight.timeTo(8).refusals().contains("the readings bend away from a straight line: take another"
                + " form, or the readings since the change only"));
    }

    /** The ends of Fieller's interval are where the confidence band of the line meets the limit. */
    @Test
    void crossingIsWhereTheBandMeetsTheLimit() {
        for (TrendMethod method : TrendMethod.values()) {
            Trend trend = Trend.of(line(24, 1, 0.02, 0.1, 3), LEAST_SQUARES.withMethod(method));
            Prognosis prognosis = trend.timeTo(4.5);
            Interval days = prognosis.daysFromLastReading().orElseThrow();
            double last = trend.readings().lastDay();
            assertEquals(4.5, trend.at(last + days.lowest()).highest(), 1e-9);
            assertEquals(4.5, trend.at(last + days.best()).best(), 1e-9);
            assertEquals(4.5, trend.at(last + days.highest()).lowest(), 1e-9);
            assertEquals(days.lowest() / 3, prognosis.measureAgainWithinDays().orElseThrow(), 1e-12);
            assertEquals(List.of(), prognosis.refusals());
        }
    }

    @Test
    void wildReadingsHardlyMoveTheRobustLine() {
        Readings clean = line(30, 1, 0.02, 0.05, 5);
        double[] values = clean.values();
        for (int i = 2; i < 30; i += 5) {
            values[i] += 8;
        }
        Readings wild = Readings.ofDays(clean.days(), values, Unit.MM_PER_S);
        assertEquals(0.02, Trend.of(wild).slopePerDay().best(), 0.001);
        assertTrue(Trend.of(wild).slopePerDay().contains(0.02));
        Interval robust = Trend.of(wild).slopePerDay();
        Interval sharp = Trend.of(wild, LEAST_SQUARES).slopePerDay();
        assertTrue(robust.highest() - robust.lowest() < 0.3 * (sharp.highest() - sharp.lowest()));
    }

    @Test
    void whatTheReadingsDoNotSupportIsRefused() {
        Prognosis flat = Trend.of(line(20, 2, 0, 0.1, 7)).timeTo(4.5);
        assertTrue(flat.daysFromLastReading().isEmpty());
        assertTrue(flat.measureAgainWithinDays().isEmpty());
        assertTrue(flat.refusals().get(0).startsWith("no rise that stands out of the scatter: slope "));
        assertTrue(flat.toString().startsWith("4.5 mm/s: no date, no rise that stands out"), flat::toString);
        Prognosis falling = Trend.of(line(20, 4, -0.02, 0.05, 7)).timeTo(4.5);
        assertEquals(1, falling.refusals().size());
        Prognosis reached = Trend.of(line(20, 2, 0.02, 0.05, 7)).timeTo(3);
        assertEquals(List.of("the trend has reached the limit already"), reached.refusals());
        Prognosis far = Trend.of(line(20, 2, 0.01, 0.02, 7)).timeTo(5);
        assertTrue(far.refusals().get(0).matches("the limit lies 1\\d\\d days ahead, beyond the 133 days that the"
                + " readings support"), far::toString);
        assertTrue(Trend.of(line(20, 2, 0.01, 0.02, 7), TrendSettings.withDefaults().withHorizon(3)).timeTo(5)
                .daysFromLastReading().isPresent());
    }

    @Test
    void doubtsAreSaid() {
        Prognosis late = Trend.of(line(12, 1, 0.02, 0.25, 11)).timeTo(3.6);
        assertTrue(late.doubts().contains("the late end lies beyond the 77 days that the readings support"),
                late::toString);
        Prognosis soon = Trend.of(line(20, 1, 0.02, 0.2, 13)).timeTo(3.7);
        assertTrue(soon.doubts().contains("the limit may have been reached already"), soon::toString);
        assertEquals(0, soon.measureAgainWithinDays().orElseThrow());
        assertTrue(soon.daysFromLastReading().orElseThrow().lowest() < 0);
    }

    /** A wandering level, each residual half of the one before and some: the interval grows by sqrt(1.5/0.5). */
    @Test
    void readingsThatHangTogetherWidenTheInterval() {
        Random random = new Random(18);
        double[] days = steps(60);
        double[] values = new double[60];
        double wander = 0;
        for (int i = 0; i < 60; i++) {
            wander = 0.5 * wander + 0.05 * random.nextGaussian();
            values[i] = 1 + 0.02 * days[i] + wander;
        }
        Trend trend = Trend.of(Readings.ofDays(days, values, Unit.MM_PER_S), LEAST_SQUARES);
        double r = trend.serialCorrelation();
        assertEquals(0.5, r, 0.25);
        Line narrow = LineFits.leastSquares(days, values);
        Interval slope = trend.slopePerDay();
        Line wide = narrow.correlated(r, 60);
        assertEquals(Math.sqrt((1 + r) / (1 - r)), wide.slopeError() / narrow.slopeError(), 1e-9);
        assertEquals((int) Math.floor(60 * (1 - r) / (1 + r)) - 1, wide.freedom());
        assertEquals(wide.quantile(0.95) * wide.slopeError(), slope.highest() - slope.best(), 1e-12);
        assertTrue(trend.timeTo(10).doubts().stream().anyMatch(doubt -> doubt.startsWith("the readings hang together"
                + " (correlation 0.")), () -> trend.timeTo(10).toString());
    }

    @Test
    void badInputIsNamed() {
        double[] days = {1, 2, 3, 4, 5, 6, 7, 8};
        double[] values = {1, 1, 1, 1, 1, 1, 1, 0};
        assertEquals("days and values must be of one length: 8, 1",
                message(() -> Readings.ofDays(days, new double[1], Unit.G)));
        assertEquals("number of readings must be at least 1: 0",
                message(() -> Readings.ofDays(new double[0], new double[0], Unit.G)));
        assertEquals("days must rise strictly: days[0] 2.0, days[1] 2.0",
                message(() -> Readings.ofDays(new double[] {2, 2}, new double[2], Unit.G)));
        assertEquals("values[0] must be finite: NaN",
                message(() -> Readings.ofDays(new double[] {2}, new double[] {Double.NaN}, Unit.G)));
        Readings readings = Readings.ofDays(days, values, Unit.MM_PER_S);
        assertEquals("values[7] of an exponential trend must be finite and > 0 mm/s: 0.0", message(
                () -> Trend.of(readings, TrendSettings.withDefaults().withModel(TrendModel.EXPONENTIAL))));
        assertEquals("number of readings must be at least 8: 7", message(() -> Trend.of(readings.since(2))));
        Readings many = line(4001, 1, 0.1, 0, 1);
        assertEquals("number of readings of a robust trend must be at most 4000: 4001; thin them first, see"
                + " Readings.thinnedTo", message(() -> Trend.of(many)));
        assertEquals(0.1, Trend.of(many, LEAST_SQUARES).slopePerDay().best(), 1e-9);
        assertEquals(0.1, Trend.of(many.thinnedTo(100)).slopePerDay().best(), 1e-4);
        Trend trend = Trend.of(line(10, 1, 0.02, 0.01, 1));
        assertEquals("limit must be finite: NaN", message(() -> trend.timeTo(Double.NaN)));
        assertEquals("day must be finite: NaN", message(() -> trend.at(Double.NaN)));
        Trend growth = Trend.of(line(10, 1, 0.02, 0.01, 1),
                TrendSettings.withDefaults().withModel(TrendModel.EXPONENTIAL));
        assertEquals("limit must be finite and > 0 mm/s: 0.0", message(() -> growth.timeTo(0)));
        TrendSettings defaults = TrendSettings.withDefaults();
        assertEquals("confidence must be from 0.5 to below 1: 1.0", message(() -> defaults.withConfidence(1)));
        assertEquals("minimumReadings must be at least 5: 4", message(() -> defaults.withMinimumReadings(4)));
        assertEquals("horizon must be finite and > 0: NaN", message(() -> defaults.withHorizon(Double.NaN)));
        assertEquals("lowest, best and highest must rise: 1.0, NaN, 2.0", message(() -> new Interval(1, Double.NaN,
                2)));
    }

    @Test
    void intervalHoldsItsEnds() {
        Interval interval = new Interval(1, 2, 4);
        assertTrue(interval.contains(1) && interval.contains(4) && interval.contains(2.5));
        assertFalse(interval.contains(Math.nextDown(1.0)) || interval.contains(Math.nextUp(4.0)));
        assertFalse(interval.contains(Double.NaN));
        assertEquals("2 (1 to 4)", interval.toString());
        assertEquals(5, TrendSettings.withDefaults().withMinimumReadings(5).minimumReadings());
        assertEquals("days[0] must be finite: NaN",
                message(() -> Readings.ofDays(new double[] {Double.NaN}, new double[1], Unit.G)));
    }

    @Test
    void blocksGiveTheirMedian() {
        Readings readings = Readings.ofDays(new double[] {0, 1, 2, 3, 4, 5, 6}, new double[] {5, 1, 9, 2, 4, 3, 7},
                Unit.G);
        Readings thin = readings.thinnedTo(2);
        assertEquals(Readings.ofDays(new double[] {1, 4.5}, new double[] {5, 3.5}, Unit.G), thin);
        assertEquals(readings, readings.thinnedTo(7));
        assertEquals(7, readings.thinnedTo(8).size());
        assertEquals("most must be at least 1: 0", message(() -> readings.thinnedTo(0)));
    }

    @Test
    void printsAndCompares() throws IOException, ClassNotFoundException {
        Readings readings = line(10, 1, 0.02, 0, 1);
        assertEquals("10 readings over 63 days, mm/s", readings.toString());
        assertEquals(1.14, readings.value(1), 1e-12);
        assertEquals(7, readings.day(1));
        assertEquals(List.of(14.0, 63.0, 8), List.of(readings.since(8).firstDay(), readings.lastDay(),
                readings.since(14).size()));
        assertEquals("linear, robust, 95 %", TrendSettings.withDefaults().toString());
        assertEquals("exponential, least squares, 90 %",
                LEAST_SQUARES.withModel(TrendModel.EXPONENTIAL).withConfidence(0.9).toString());
        Trend trend = Trend.of(readings);
        assertEquals("slope 0.02 (0.02 to 0.02) mm/s a day; 10 readings, linear, robust, 95 %", trend.toString());
        assertEquals("3 mm/s in 37 (37 to 37) days; linear, robust, 95 %", trend.timeTo(3).toString());
        assertEquals(3, trend.timeTo(3).limit());
        assertEquals(trend, trend.timeTo(3).trend());
        assertEquals(trend.timeTo(3), Trend.of(line(10, 1, 0.02, 0, 1)).timeTo(3));
        assertEquals(trend.timeTo(3).hashCode(), Trend.of(line(10, 1, 0.02, 0, 1)).timeTo(3).hashCode());
        assertNotEquals(trend.timeTo(3), trend.timeTo(3.1));
        assertNotEquals(trend, Trend.of(readings, LEAST_SQUARES));
        assertEquals(LEAST_SQUARES, Trend.of(readings, LEAST_SQUARES).settings());
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        new ObjectOutputStream(bytes).writeObject(trend.timeTo(3));
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            assertEquals(trend.timeTo(3), in.readObject());
        }
    }

    @Test
    void aDayThatLeavesNoReadingIsRefused() {
        Readings readings = Readings.ofDays(new double[] {0, 7, 14}, new double[] {1, 2, 3}, Unit.MM_PER_S);
        assertEquals("day must be finite: NaN", message(() -> readings.since(Double.NaN)));
        assertEquals("day must be at most that of the last reading, 14.0: 14.5", message(() -> readings.since(14.5)));
        assertEquals(1, readings.since(14).size());
        assertEquals("1 reading over 0 days, mm/s", readings.since(14).toString());
    }

    /** A line without scatter, 1 + 0.01 a day in any unit, meets 1.25 on day 25, six days after the last. */
    @Test
    void theSizeOfTheUnitDoesNotMatter() {
        double[] days = new double[20];
        for (double size : new double[] {1e-300, 1e-9, 1, 1e300}) {
            double[] values = new double[20];
            for (int i = 0; i < 20; i++) {
                days[i] = i;
                values[i] = size * (1 + 0.01 * i);
            }
            Interval reached = Trend.of(Readings.ofDays(days, values, Unit.MM_PER_S)).timeTo(1.25 * size)
                    .daysFromLastReading().orElseThrow();
            assertEquals(6, reached.best(), 1e-9, () -> "size " + size);
            assertEquals(6, reached.lowest(), 1e-9);
            assertEquals(6, reached.highest(), 1e-9);
        }
    }

    @Test
    void theLimitIsPrintedAsTyped() {
        Readings readings = Readings.ofDays(new double[] {0, 1, 2, 3, 4, 5, 6, 7},
                new double[] {1, 2, 3, 4, 5, 6, 7, 8}, Unit.MM_PER_S);
        assertEquals("9.8125 mm/s in 1.81 (1.81 to 1.81) days; linear, robust, 95 %",
                Trend.of(readings).timeTo(9.8125).toString());
    }

    @Test
    void highConfidenceIsNotPrintedAsCertainty() {
        assertEquals("linear, robust, 99.9999 %", TrendSettings.withDefaults().withConfidence(0.999999).toString());
    }
}
