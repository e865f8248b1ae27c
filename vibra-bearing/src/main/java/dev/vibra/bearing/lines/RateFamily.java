package dev.vibra.bearing.lines;

import dev.vibra.internal.Require;
import java.util.Arrays;
import java.util.Objects;

/**
 * A fundamental with its harmonics in one envelope spectrum, and how improbable they are together in noise.
 *
 * <p>A {@link dev.vibra.lines.HarmonicFamily} lists the lines that stand out near multiples of a known fundamental,
 * each interpolated and judged by itself. This one is tried at thousands of fundamentals and so reads bins, leaves out
 * what has another explanation, and is judged as a whole.
 */
public final class RateFamily {
    /** A line that noise passes more often than this isn't counted as seen. */
    private static final int MOST_HARMONICS = 100;
    private static final double LOG_SEEN = Math.log(0.01);

    private final SearchLines lines;
    private final double hertz;
    private final double[] logs;
    private final int counted;
    private final double logProbability;

    private RateFamily(SearchLines lines, double hertz, double[] logs, int counted) {
        this.lines = lines;
        this.hertz = hertz;
        this.logs = logs;
        this.counted = counted;
        logProbability = logProbability(logs, counted);
    }

    /** Without its fundamental a family is none of this rate. */
    private static double logProbability(double[] logs, int counted) {
        if (!(logs[0] < LOG_SEEN)) {
            return 0;
        }
        double[] sorted = logs.clone();
        Arrays.sort(sorted); // What isn't counted is NaN and sorts behind the rest.
        return RankProbability.log(sorted, counted);
    }

    /**
     * Reads the family of one fundamental.
     *
     * @param field lines with what is explained already
     * @param hertz fundamental in Hz, above zero
     * @param harmonics harmonics to look at, the fundamental included, 2 to 100
     * @return the family
     */
    public static RateFamily at(SearchField field, double hertz, int harmonics) {
        Objects.requireNonNull(field, "field");
        Require.positive("hertz", hertz, "Hz");
        double[] logs = new double[Require.count("harmonics", harmonics, 2, MOST_HARMONICS)];
        int counted = 0;
        for (int h = 1; h <= harmonics; h++) {
            boolean counts = field.holds(h * hertz);
            logs[h - 1] = counts ? field.lines().logProbability(field.lines().lineAt(h * hertz)) : Double.NaN;
            counted += counts ? 1 : 0;
        }
        return new RateFamily(field.lines(), hertz, logs, counted);
    }

    /**
     * Finds the least probable family whose fundamental lies between two frequencies; the grid moves no harmonic by
     * half a bin.
     *
     * @param field lines with what is explained already
     * @param from lowest fundamental in Hz, above zero
     * @param to highest fundamental in Hz
     * @param harmonics harmonics to look at, the fundamental included, 2 to 100
     * @return the family
     */
    public static RateFamily best(SearchField field, double from, double to, int harmonics) {
        Require.count("harmonics", harmonics, 2, MOST_HARMONICS);
        double step = Objects.requireNonNull(field, "field").lines().resolutionHertz() / (2 * harmonics);
        RateFamily best = at(field, from, harmonics);
        double highest = Math.min(to, field.lines().highestUsableHertz());
        for (int i = 1; from + i * step <= highest; i++) {
            if (fundamentalSeen(field, from + i * step)) {
                RateFamily next = at(field, from + i * step, harmonics);
                best = next.logProbability < best.logProbability ? next : best;
            }
        }
        return best.polished(field);
    }

    /** Two strong lines decide the search; where they fit a fundamental at which more harmonics stand, that is it. */
    private RateFamily polished(SearchField field) {
        RateFamily fitted = at(field, refinedHertz(), logs.length);
        return fitted.seen(1) && fitted.seen() > seen() ? fitted : this;
    }

    private long seen() {
        return Arrays.stream(logs).filter(log -> log < LOG_SEEN).count();
    }

    /**
     * Finds the least probable line between two frequencies, taken for a fundamental.
     *
     * @param field lines with what is explained already
     * @param from lowest fundamental in Hz, above zero
     * @param to highest fundamental in Hz
     * @param harmonics harmonics to look at, the fundamental included, 2 to 100
     * @return the family of that line
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static RateFamily ofBestLine(SearchField field, double from, double to, int harmonics) {
        SearchLines lines = Objects.requireNonNull(field, "field").lines();
        int best = lines.lineAt(Require.positive("from", from, "Hz"));
        int last = Math.min(lines.count() - 1, lines.lineAt(to));
        for (int i = best; i <= last; i++) {
            boolean better = field.holds(i * lines.resolutionHertz())
                    && lines.logProbability(i) < lines.logProbability(best);
            best = better || !field.holds(best * lines.resolutionHertz()) ? i : best;
        }
        return at(field, best * lines.resolutionHertz(), harmonics);
    }

    /**
     * Tells whether a fundamental stands out, without which a family has no evidence.
     *
     * @param field lines with what is explained already
     * @param hertz fundamental in Hz, above zero
     * @return true if it could be seen, has no other explanation and noise passes it in less than one case of a hundred
     */
    public static boolean fundamentalSeen(SearchField field, double hertz) {
        return Objects.requireNonNull(field, "field").holds(hertz)
                && field.lines().logProbability(field.lines().lineAt(hertz)) < LOG_SEEN;
    }

    /** {@return the lines that it is read from} */
    public SearchLines lines() {
        return lines;
    }

    /** {@return natural logarithm of the probability of the fundamental alone; 0 where it couldn't be seen} */
    public double logOfFundamental() {
        return Double.isNaN(logs[0]) ? 0 : logs[0];
    }

    /** {@return depth of the fundamental alone} */
    public double depthOfFundamental() {
        return Double.isNaN(logs[0]) ? 0 : lines.depthAround(line(1));
    }

    /** {@return natural logarithm of the probability of the family at this one fundamental} */
    public double logProbability() {
        return logProbability;
    }

    /** {@return number of harmonics that could be looked at} */
    public int counted() {
        return counted;
    }

    /**
     * Returns the number of places of the fundamental within a reach on either side, between which the highest harmonic
     * moves by one bin.
     *
     * @param reach reach in Hz, 0 to 1e100
     * @return number, at least 1
     * @throws IllegalArgumentException if the reach is out of range
     */
    public double places(double reach) {
        return Math.max(1, 2 * Require.within("reach", reach, 0, 1e100, "Hz") * logs.length / lines.resolutionHertz());
    }

    /** {@return number of harmonics looked at, the fundamental included} */
    public int harmonics() {
        return logs.length;
    }

    /**
     * Tells whether a harmonic stands out.
     *
     * @param harmonic number from 1
     * @return true if noise passes it in less than one case of a hundred
     * @throws IndexOutOfBoundsException if the harmonic wasn't looked at
     */
    public boolean seen(int harmonic) {
        return logs[Objects.checkIndex(harmonic - 1, logs.length)] < LOG_SEEN;
    }

    /**
     * Returns the line at a harmonic.
     *
     * @param harmonic number from 1
     * @return number of the line
     */
    public int line(int harmonic) {
        return lines.lineAt(harmonic * hertz);
    }

    /** {@return fundamental in Hz that fits the harmonics seen best: least squares, each weighted with its power} */
    public double refinedHertz() {
        double sum = 0;
        double weights = 0;
        for (int h = 1; h <= logs.length; h++) {
            if (seen(h)) {
                double depth = lines.depthAround(line(h));
                sum += depth * depth * h * lines.interpolated(line(h));
                weights += depth * depth * h * h;
            }
        }
        return weights > 0 ? sum / weights : hertz;
    }

    /** {@return depth that the fundamental and at least one other harmonic reach; zero if either isn't seen} */
    public double depth() {
        double others = 0;
        for (int h = 2; h <= logs.length; h++) {
            others = Math.max(others, seen(h) ? lines.depthAround(line(h)) : 0);
        }
        return seen(1) ? Math.min(lines.depthAround(line(1)), others) : 0;
    }

    /** Returns the fundamental. */
    @Override
    public String toString() {
        return "family of " + refinedHertz() + " Hz";
    }
}
