package dev.vibra.trend;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.internal.SerialCorrelation;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A trend laid through readings, with its confidence band.
 *
 * <p>The band holds for the trend itself, not for single readings: {@code x̂(t) ± q·√(s_a² + s_b²·(t − t̄)²)}, q the
 * quantile of Student's distribution with n − 2 degrees of freedom; for the exponential form all of it in logarithms.
 * Readings that hang together (each residual like the one before, correlation r) widen it by {@code √((1 + r)/(1 − r))} and
 * leave fewer degrees of freedom. Whether the readings bend away from the model is tested by ranks, at 1 %. Immutable.
 *
 * @see "P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379-1389; E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175-185; ISO
 *     13381-1 on projecting a trend"
 */
public final class Trend implements Serializable {
    private static final long serialVersionUID = 1;

    /** Two-sided 1 % point of the normal distribution. */
    private static final double ROUNDING = 1e-12;
    private static final double MOST_CORRELATED = 0.95;
    /** Readings from which on their correlation is known well enough. */
    private static final int ENOUGH = 40;
    private static final double ONE_PERCENT = 2.576;

    /** The most readings that are fitted: the robust line takes all pairs. */
    private static final int MOST_READINGS = 4000;

    private final Readings readings;
    private final TrendSettings settings;
    private final Line line;
    private final double serialCorrelation;
    private final boolean bent;

    private Trend(Readings readings, TrendSettings settings, Line line, double serialCorrelation, boolean bent) {
        this.readings = Objects.requireNonNull(readings, "readings");
        this.settings = Objects.requireNonNull(settings, "settings");
        this.line = Objects.requireNonNull(line, "line");
        this.serialCorrelation = Require.finite("serial correlation", serialCorrelation);
        this.bent = bent;
        onLine(readings, settings.model());
    }

    private Object readResolve() {
        return new Trend(readings, settings, line, serialCorrelation, bent);
    }

    /**
     * Lays a robust straight line through readings.
     *
     * @param readings readings to fit, at least 8
     * @return the trend
     * @throws IllegalArgumentException if there are too few readings or more than 4000
     */
    public static Trend of(Readings readings) {
        return of(readings, TrendSettings.withDefaults());
    }

    /**
     * Lays a trend through readings.
     *
     * @param readings readings to fit
     * @param settings form, method, confidence
     * @return the trend
     * @throws IllegalArgumentException if there are too few readings, more than 4000 where the method is robust, or one
     *     is zero or less where the form is exponential
     */
    public static Trend of(Readings readings, TrendSettings settings) {
        Objects.requireNonNull(readings, "readings");
        Objects.requireNonNull(settings, "settings");
        int count = Require.atLeast("number of readings", readings.size(), settings.minimumReadings());
        if (count > MOST_READINGS && settings.method() == TrendMethod.ROBUST) {
            throw new IllegalArgumentException("number of readings of a robust trend must be at most " + MOST_READINGS
                    + ": " + count + "; thin them first, see Readings.thinnedTo");
        }
        double[] times = readings.days();
        double[] values = onLine(readings, settings.model());
        Line line = settings.method() == TrendMethod.ROBUST ? LineFits.robust(times, values)
                : LineFits.leastSquares(times, values);
        double[] residuals = LineFits.residuals(times, values, line);
        // What rounding leaves over of a perfect line hangs together and means nothing.
        boolean scatters = LineFits.largest(residuals) > ROUNDING * LineFits.largest(values);
        double correlation = scatters ? correlated(SerialCorrelation.of(residuals), count) : 0;
        boolean bent = scatters && isBent(times, residuals, line);
        return new Trend(readings, settings, line.correlated(correlation, count), correlation, bent);
    }

    private static double[] onLine(Readings readings, TrendModel model) {
        double[] values = readings.values();
        for (int i = 0; i < values.length; i++) {
            if (model == TrendModel.EXPONENTIAL) {
                Require.positive("values[" + i + "] of an exponential trend", values[i], readings.unit().symbol());
            }
            values[i] = model.toLine(values[i]);
        }
        return values;
    }

    private static boolean isBent(double[] times, double[] residuals, Line line) {
        return Math.abs(LineFits.bend(times, residuals, line.centre())) * Math.sqrt(times.length - 1.0) > ONE_PERCENT;
    }

    /**
     * The correlation of neighbours behind that of the residuals, which is too small: the line takes part of what hangs
     * together. For few readings it is a guess, and is taken as it is.
     *
     * @see "F. H. C. Marriott, J. A. Pope, Biometrika 41 (1954) 390-402, bias of serial correlations; of a line fitted:
     *     (2 + 4 r)/n, from memory, unverified; simulated by CorrelatedTrendTest"
     */
    private static double correlated(double ofResiduals, int count) {
        return Math.max(0, Math.min(MOST_CORRELATED, (ofResiduals + 2.0 / count) / (1 - 4.0 / count)));
    }

    /**
     * Returns the trend at a time, with its confidence interval.
     *
     * @param day time in days, on the axis of the readings
     * @return value in the unit of the readings
     * @throws IllegalArgumentException if the time is not finite, or the value there too large for a double
     */
    public Interval at(double day) {
        Require.finite("day", day);
        double half = line.quantile(settings.confidence()) * line.errorAt(day);
        TrendModel model = settings.model();
        return new Interval(model.fromLine(line.at(day) - half), model.fromLine(line.at(day)),
                model.fromLine(line.at(day) + half));
    }

    /**
     * Returns the slope of the line, with its confidence interval.
     *
     * @return slope in the unit of the readings per day; for the exponential form growth per day, a plain number
     */
    public Interval slopePerDay() {
        double half = line.quantile(settings.confidence()) * line.slopeError();
        return new Interval(line.slope() - half, line.slope(), line.slope() + half);
    }

    /**
     * Tells whether the trend rises with the confidence of the settings.
     *
     * @return true if the interval of the slope lies above zero
     */
    public boolean rises() {
        return line.rises(settings.confidence());
    }

    /**
     * Tells whether the readings bend away from the form of the trend, at 1 %.
     *
     * <p>Readings that wander slowly can look bent, too; a date is then refused rather than given on a wrong footing.
     *
     * @return true if they do, so that another form, or a later beginning, is called for
     */
    public boolean isBent() {
        return bent;
    }

    /**
     * Returns how far neighbouring readings hang together: the correlation of each residual with the next one, corrected
     * for what the line takes of it.
     *
     * @return correlation from 0 to 0.95; it has widened all intervals
     */
    public double serialCorrelation() {
        return serialCorrelation;
    }

    /**
     * Estimates when the trend reaches a limit, or says why the readings support no estimate.
     *
     * @param limit limit in the unit of the readings, finite; above zero for the exponential form
     * @return the estimate or the refusal
     * @throws IllegalArgumentException if the limit is out of range
     */
    public Prognosis timeTo(double limit) {
        if (settings.model() == TrendModel.EXPONENTIAL) {
            Require.positive("limit", limit, readings.unit().symbol());
        }
        Require.finite("limit", limit);
        List<String> refusals = refusals(limit);
        return refusals.isEmpty() ? within(limit, line.crossing(onLine(limit), settings.confidence()))
                : new Prognosis(this, limit, null, refusals, List.of());
    }

    private double onLine(double limit) {
        return settings.model().toLine(limit);
    }

    private List<String> refusals(double limit) {
        List<String> refusals = new ArrayList<>();
        if (!rises()) {
            refusals.add("no rise that stands out of the scatter: slope " + slopePerDay() + " a day");
        }
        if (line.at(readings.lastDay()) >= onLine(limit)) {
            refusals.add("the trend has reached the limit already");
        }
        if (bent) {
            refusals.add("the readings bend away from " + (settings.model() == TrendModel.LINEAR ? "a straight line"
                    : "an exponential") + ": take another form, or the readings since the change only");
        }
        return refusals;
    }

    /** Refused if the best estimate lies beyond the horizon; said if only the late end does. */
    private Prognosis within(double limit, Interval day) {
        double last = readings.lastDay();
        double reach = settings.horizon() * (last - readings.firstDay());
        if (day.best() - last > reach) {
            return new Prognosis(this, limit, null, List.of("the limit lies " + Digits.compact(day.best() - last, 3)
                    + " days ahead, beyond the " + Digits.compact(reach, 3) + " days that the readings support"),
                    List.of());
        }
        List<String> doubts = new ArrayList<>();
        if (day.highest() - last > reach) {
            doubts.add("the late end lies beyond the " + Digits.compact(reach, 3)
                    + " days that the readings support");
        }
        if (day.lowest() < last) {
            doubts.add("the limit may have been reached already");
        }
        if (serialCorrelation > 2 / Math.sqrt(readings.size())) {
            doubts.add("the readings hang together (correlation " + Digits.significant(serialCorrelation, 2)
                    + "): the interval is widened for it");
        }
        if (readings.size() < ENOUGH && line.slopeError() > ROUNDING * line.slope()) {
            doubts.add(readings.size() + " readings don't tell how far they hang together: where neighbours correlate by 0.5"
                    + " the interval holds for some 90 %, by 0.8 for some 85 % (simulated)");
        }
        return new Prognosis(this, limit,
                new Interval(day.lowest() - last, day.best() - last, day.highest() - last), List.of(), doubts);
    }

    /** {@return the readings fitted} */
    public Readings readings() {
        return readings;
    }

    /** {@return how the trend was fitted} */
    public TrendSettings settings() {
        return settings;
    }

    /** Two trends are equal if readings and settings are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Trend trend && readings.equals(trend.readings) && settings.equals(trend.settings);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(readings, settings);
    }

    /**
     * Returns slope and footing, as in {@code slope 0.0142 (0.0121 to 0.0163) mm/s a day; 24 readings, linear, robust,
     * 95 %}.
     */
    @Override
    public String toString() {
        String unit = settings.model() == TrendModel.LINEAR ? " " + readings.unit() + " a day" : " a day, relative";
        return "slope " + slopePerDay() + unit + "; " + readings.size() + " readings, " + settings
                + (bent ? "; the readings bend away from it" : "");
    }
}
