package dev.vibra.balance;

import dev.vibra.balance.influence.CoefficientErrors;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.Run;
import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.balance.uncertainty.VectorCovariance;
import dev.vibra.balance.vector.Phasor;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.Function;

/**
 * Carries the scatter of every reading, and of stored coefficients, to the vectors that are worked out of all of them,
 * by differences.
 *
 * <p>Readings of the rotor's present state are kept apart from the others, for only they can be repeated at will.
 */
final class ErrorPropagation {
    /** Part of a reading's own scatter by which it is moved to see the effect. */
    private static final double STEP = 1e-3;

    private final VectorCovariance ofPresentReadings;
    private final VectorCovariance ofOtherReadings;
    private final int presentRuns;

    private ErrorPropagation(VectorCovariance present, VectorCovariance others, int presentRuns) {
        this.ofPresentReadings = present;
        this.ofOtherReadings = others;
        this.presentRuns = presentRuns;
    }

    /**
     * Moves each reading, as it was noted, by its scatter.
     *
     * @param vectors how many vectors come out
     * @param result what comes out of a log
     */
    static ErrorPropagation of(ReadingScatter scatter, Setup setup, RunLog log, int vectors,
            Function<RunLog, Phasor[]> result) {
        List<Phasor[]> present = new ArrayList<>();
        List<Phasor[]> others = new ArrayList<>();
        int presentRuns = 0;
        double size = log.runs().stream().flatMap(run -> run.readings().stream()).mapToDouble(Phasor::magnitude).max()
                .orElse(0);
        for (int r = 0; r < log.runs().size(); r++) {
            boolean isPresent = log.isPresent(r);
            presentRuns += isPresent ? 1 : 0;
            for (int i = 0; i < setup.layout().rows(); i++) {
                Phasor noted = log.runs().get(r).readings().get(i).plus(setup.runoutOfRow(i));
                double unit = setup.layout().peakPerUnit(i);
                for (Phasor deviation : List.of(scatter.along(noted, unit), scatter.across(noted, unit))) {
                    int run = r;
                    int row = i;
                    (isPresent ? present : others).add(effect(step(deviation, size), step -> result.apply(
                            log.readAs(moved(log.runs(), run, row, deviation.times(step))))));
                }
            }
        }
        return new ErrorPropagation(VectorCovariance.ofEffects(vectors, present),
                VectorCovariance.ofEffects(vectors, others), presentRuns);
    }

    /** The same with the errors of stored coefficients, which no more readings can settle. */
    ErrorPropagation withErrorsOf(InfluenceCoefficients alpha, CoefficientErrors errors,
            Function<InfluenceCoefficients, Phasor[]> result) {
        List<Phasor[]> effects = new ArrayList<>();
        int planes = alpha.layout().planes().size();
        for (int i = 0; i < alpha.layout().rows() * planes; i++) {
            int row = i / planes;
            int plane = i % planes;
            Phasor element = alpha.at(row, plane);
            for (Phasor deviation : errors.deviations(row, plane, element)) {
                effects.add(effect(STEP, step -> result.apply(alpha.with(row, plane,
                        element.plus(deviation.times(step))))));
            }
        }
        VectorCovariance ofCoefficients = VectorCovariance.ofEffects(ofOtherReadings.vectors(), effects);
        return new ErrorPropagation(ofPresentReadings, ofOtherReadings.plus(ofCoefficients), presentRuns);
    }

    /** Part of a deviation that is small beside the readings too, however large the scatter. */
    private static double step(Phasor deviation, double size) {
        double length = deviation.magnitude();
        return length > size && size > 0 ? STEP * size / length : STEP;
    }

    /** What one standard deviation does, by the central difference over a small part of it. */
    private static Phasor[] effect(double part, DoubleFunction<Phasor[]> result) {
        Phasor[] up = result.apply(part);
        Phasor[] down = result.apply(-part);
        Phasor[] out = new Phasor[up.length];
        for (int j = 0; j < out.length; j++) {
            out[j] = up[j].minus(down[j]).times(0.5 / part);
        }
        return out;
    }

    private static List<Run> moved(List<Run> runs, int run, int row, Phasor by) {
        List<Run> out = new ArrayList<>(runs);
        List<Phasor> readings = new ArrayList<>(runs.get(run).readings());
        readings.set(row, readings.get(row).plus(by));
        out.set(run, new Run(runs.get(run).name(), runs.get(run).added(), readings));
        return out;
    }

    /** Covariance as the readings are now. */
    VectorCovariance covariance() {
        return withMoreReadings(0);
    }

    /** Covariance if the present state were read so many times more. */
    VectorCovariance withMoreReadings(int more) {
        double share = presentRuns == 0 ? 1 : (double) presentRuns / (presentRuns + more);
        return ofOtherReadings.plus(ofPresentReadings.times(share));
    }
}
