package dev.vibra.speedrun;

import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.SpeedPoint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.apache.commons.math3.analysis.ParametricUnivariateFunction;
import org.apache.commons.math3.exception.ConvergenceException;
import org.apache.commons.math3.exception.TooManyIterationsException;
import org.apache.commons.math3.fitting.SimpleCurveFitter;
import org.apache.commons.math3.fitting.WeightedObservedPoints;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;

/**
 * Looks for the resonances in one order. What unbalance excites grows with the square of the speed; velocity over that
 * square is a mobility, for which the half-power points and the phase around the natural frequency are exact.
 */
final class ResonanceSearch {
    /** A peak falls by this share on both sides before the order rises above it again; common practice, no source. */
    private static final double LEAST_FALL = 0.12;
    private static final double NOISE_FALL = 3;
    /** A peak without the phase of a resonance has nothing but its size to speak for it. */
    private static final double CLEAR_FALL = 0.3;
    private static final double CLEAR_NOISE = 8;
    /** Points down to this share of the peak are fitted: somewhat below half the power. */
    private static final double FITTED = 0.62;
    private static final int FEWEST_POINTS = 5;
    /** A resonance turns the phase by 90 degrees between its half-power points; common practice, no source. */
    private static final double LEAST_TURN = Math.toRadians(60);
    private static final double FITTED_TURN = Math.toRadians(65);
    /** At this share of the peak the phase of one mode is 63 degrees off. */
    private static final double NEAR = 0.45;
    /** What noise may turn a lag back from point to point. */
    private static final double BACK = 0.2;
    private static final double WORST_PHASE = Math.toRadians(8);
    /**
     * Beyond this ratio the passage widens the peak by more than a tenth, and no damping is told; found by integrating
     * the equation of motion. ISO 7626-2 keeps swept excitation below 0.9 (54/60 Hz/s over the squared width; from
     * memory, unverified).
     */
    static final double MOST_SWEEP = 0.35;
    /** How far one way may be off that the other one can't confirm, over the half-power width or the factor. */
    private static final double ONE_WAY = 0.15;

    private final SpeedSweep sweep;
    private final FollowedOrder followed;
    private final int turns;
    private final int count;
    private final double[] hertz;
    private final double[] size;
    private final double[] noise;
    private final double[] lag;
    private final List<SpeedPoint> points;

    private ResonanceSearch(SpeedSweep sweep, FollowedOrder followed, int turns) {
        this.sweep = sweep;
        this.followed = followed;
        this.turns = turns;
        points = new ArrayList<>(followed.track().points());
        count = points.size();
        boolean falling = sweep.direction() == RunDirection.COAST_DOWN;
        if (falling) {
            Collections.reverse(points);
        }
        hertz = new double[count];
        size = new double[count];
        noise = new double[count];
        lag = new double[count];
        int power = 1 + followed.quantity().integrationsTo(Quantity.DISPLACEMENT);
        for (int i = 0; i < count; i++) {
            SpeedPoint point = points.get(i);
            hertz[i] = point.speed().hertz();
            double factor = Math.pow(hertz[i], -power);
            size[i] = point.vector().amplitude() * factor;
            noise[i] = followed.noise(falling ? count - 1 - i : i) * factor;
            lag[i] = i == 0 ? point.vector().lagRadians() : lag[i - 1]
                    + Math.IEEEremainder(point.vector().lagRadians() - lag[i - 1], 2 * Math.PI);
        }
    }

    /** What was found in one order: resonances, and peaks without the change of phase of one. */
    record Found(List<SpeedResonance> resonances, List<SpeedPoint> peaks) {}

    /** Searches an order; turns is the number of those under the window of a point. */
    static Found in(SpeedSweep sweep, FollowedOrder followed, int turns) {
        return new ResonanceSearch(sweep, followed, turns).search();
    }

    private Found search() {
        List<SpeedResonance> resonances = new ArrayList<>();
        List<SpeedPoint> peaks = new ArrayList<>();
        for (int i = 1; i < count - 1; i++) {
            if (size[i] >= size[i - 1] && size[i] > size[i + 1] && standsUp(i)) {
                SpeedResonance found = at(i);
                if (found != null) {
                    resonances.add(found);
                } else if (isClear(i)) {
                    peaks.add(points.get(i));
                }
            }
        }
        return new Found(resonances, peaks);
    }

    private boolean standsUp(int peak) {
        double least = LEAST_FALL * size[peak] + NOISE_FALL * noise[peak];
        return size[peak] > 4 * noise[peak] && size[peak] - lowest(peak, -1) > least
                && size[peak] - lowest(peak, 1) > least;
    }

    private boolean isClear(int peak) {
        double higher = Math.max(lowest(peak, -1), lowest(peak, 1));
        return size[peak] > CLEAR_NOISE * noise[peak] && higher < (1 - CLEAR_FALL) * size[peak];
    }

    /** The lowest value on one side before the order rises above the peak. */
    private double lowest(int peak, int step) {
        double lowest = size[peak];
        for (int i = peak + step; i >= 0 && i < count && size[i] <= size[peak]; i += step) {
            lowest = Math.min(lowest, size[i]);
        }
        return lowest;
    }

    /** The last point on one side down to a share of the peak, going down all the way but for noise. */
    private int reach(int peak, int step, double share) {
        int i = peak;
        while (i + step >= 0 && i + step < count && size[i + step] >= share * size[peak]
                && size[i + step] <= size[peak]) {
            i += step;
        }
        return i;
    }

    private boolean falls(int peak, int step) {
        int next = reach(peak, step, Math.sqrt(0.5)) + step;
        return next >= 0 && next < count && size[next] < size[peak];
    }

    /** Natural frequency and amplification factor, both in terms of the speed. */
    private record Mode(double hertz, double amplification) {}

    /** Null where the phase doesn't change as it does at a resonance. */
    private SpeedResonance at(int peak) {
        boolean whole = falls(peak, -1) && falls(peak, 1);
        Mode amplitude = whole ? byAmplitude(peak) : null;
        Mode phase = byPhase(peak, amplitude == null ? hertz[peak] : amplitude.hertz);
        if (phase == null || amplitude != null && !(Math.abs(phase.hertz - amplitude.hertz)
                < amplitude.hertz / amplitude.amplification)) {
            return null;
        }
        return told(peak, amplitude, phase);
    }

    /** A parabola through the inverse squares over f - fn²/f, by least squares; weights are those of equal noise. */
    private Mode byAmplitude(int peak) {
        int first = reach(peak, -1, FITTED);
        int last = reach(peak, 1, FITTED);
        if (last - first + 1 < FEWEST_POINTS) {
            return null;
        }
        double natural = hertz[peak];
        double factor = 0;
        for (int pass = 0; pass < 4; pass++) {
            double[][] rows = new double[last - first + 1][];
            double[] right = new double[rows.length];
            for (int i = first; i <= last; i++) {
                double u = (hertz[i] - natural * natural / hertz[i]) / natural;
                double relative = size[i] / size[peak];
                double weight = relative * relative * relative;
                rows[i - first] = new double[] {weight, weight * u, weight * u * u};
                right[i - first] = weight / (relative * relative);
            }
            QRDecomposition system = new QRDecomposition(new Array2DRowRealMatrix(rows, false));
            if (!system.getSolver().isNonSingular()) {
                return null;
            }
            double[] c = system.getSolver().solve(new ArrayRealVector(right)).toArray();
            double least = c[0] - c[1] * c[1] / (4 * c[2]);
            if (!(c[2] > 0 && least > 0)) {
                return null;
            }
            natural *= 1 - c[1] / (4 * c[2]);
            factor = Math.sqrt(c[2] / least);
            if (!(natural > hertz[first] && natural < hertz[last])) {
                return null;
            }
        }
        return new Mode(natural, factor);
    }

    private static final class Turn implements ParametricUnivariateFunction {
        @Override
        public double value(double f, double... p) {
            return p[0] + Math.atan(p[1] * (f / p[2] - p[2] / f));
        }

        @Override
        public double[] gradient(double f, double... p) {
            double u = f / p[2] - p[2] / f;
            double slope = 1 / (1 + p[1] * p[1] * u * u);
            return new double[] {1, slope * u, slope * p[1] * (-f / (p[2] * p[2]) - 1 / f)};
        }
    }

    /** The arc tangent of one mode through the lags around the peak; null where they don't turn like it. */
    private Mode byPhase(int peak, double natural) {
        int first = turned(peak, -1);
        int last = turned(peak, 1);
        if (last - first + 1 < FEWEST_POINTS || !(lag[last] - lag[first] > LEAST_TURN)) {
            return null;
        }
        WeightedObservedPoints observed = new WeightedObservedPoints();
        for (int i = first; i <= last; i++) {
            observed.add(hertz[i], lag[i]);
        }
        double guess = Math.tan(Math.min(0.45 * Math.PI, 0.5 * (lag[last] - lag[first])))
                / Math.max(1e-9, (hertz[last] - hertz[first]) / natural);
        try {
            double[] p = SimpleCurveFitter.create(new Turn(), new double[] {lag[peak], guess, natural})
                    .withMaxIterations(100).fit(observed.toList());
            return p[1] > 0 && p[2] > hertz[first] && p[2] < hertz[last] && residual(first, last, p) < WORST_PHASE
                    ? new Mode(p[2], p[1]) : null;
        } catch (TooManyIterationsException | ConvergenceException e) {
            return null; // Lags that no resonance makes.
        }
    }

    /** The last point on one side near the peak up to which the lag goes on turning. */
    private int turned(int peak, int step) {
        int end = reach(peak, step, NEAR);
        int i = peak;
        while (i != end && step * (lag[i + step] - lag[peak]) < FITTED_TURN
                && step * (lag[i + step] - lag[i]) > -BACK && size[i + step] > 3 * noise[i + step]) {
            i += step;
        }
        return i;
    }

    private double residual(int first, int last, double[] p) {
        double sum = 0;
        for (int i = first; i <= last; i++) {
            double error = lag[i] - new Turn().value(hertz[i], p);
            sum += error * error;
        }
        return Math.sqrt(sum / (last - first + 1));
    }

    private SpeedResonance told(int peak, Mode amplitude, Mode phase) {
        double factor = amplitude == null ? phase.amplification
                : Math.sqrt(amplitude.amplification * phase.amplification);
        double measured = amplitude == null ? phase.hertz : 0.5 * (amplitude.hertz + phase.hertz);
        double width = measured / factor;
        double rate = sweep.rateBetween(Math.max(sweep.lowest().hertz(), measured - width),
                Math.min(sweep.highest().hertz(), measured + width));
        double ratio = rate / (followed.order() * width * width);
        // The response comes later by the group delay Q/(πf) of the mode: first order of a slow passage.
        double late = rate * factor / (Math.PI * measured * followed.order());
        double natural = measured - sweep.direction().sign() * late;
        double noisy = noise[peak] / size[peak];
        // What the slow-roll vector holds of the response to unbalance, over the response at the peak.
        double slow = followed.quantity() == Quantity.DISPLACEMENT
                ? Math.pow(sweep.lowest().hertz() / measured, 2) / factor : 0;
        double apart = amplitude == null ? ONE_WAY * width : 0.5 * Math.abs(amplitude.hertz - phase.hertz);
        double speedError = root(0.7 * late, apart, width * noisy, 0.03 * width, width * slow);
        double differ = amplitude == null ? ONE_WAY : 0.5 * Math.log(amplitude.amplification / phase.amplification);
        double window = rate * turns / measured / width;
        double factorError = factor * root(0.02 + 0.25 * ratio, 0.1 * window, 2 * noisy, 2 * slow, differ);
        return new SpeedResonance(followed.order(), RotationSpeed.ofHertz(natural), 100 * speedError / natural,
                largest(peak), phase.amplification, amplitude == null ? null : Double.valueOf(amplitude.amplification),
                ratio, ratio < MOST_SWEEP ? Double.valueOf(factorError) : null);
    }

    private static double root(double... parts) {
        return Math.sqrt(Arrays.stream(parts).map(part -> part * part).sum());
    }

    /** The point of the largest amplitude as it was recorded, within the peak. */
    private SpeedPoint largest(int peak) {
        SpeedPoint best = points.get(peak);
        for (int i = reach(peak, -1, FITTED); i <= reach(peak, 1, FITTED); i++) {
            best = points.get(i).vector().amplitude() > best.vector().amplitude() ? points.get(i) : best;
        }
        return best;
    }
}
