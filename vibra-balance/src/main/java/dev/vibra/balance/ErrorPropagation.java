package dev.vibra.balance;

import dev.vibra.balance.influence.Run;
import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.balance.uncertainty.VectorCovariance;
import dev.vibra.balance.vector.Phasor;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * Carries the scatter of every reading to the vectors that are worked out of all of them, by differences.
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

    static ErrorPropagation of(ReadingScatter scatter, List<Run> runs, List<Phasor> state,
            Function<List<Run>, Phasor[]> result) {
        List<Phasor[]> present = new ArrayList<>();
        List<Phasor[]> others = new ArrayList<>();
        int presentRuns = 0;
        int vectors = state.size();
        for (int r = 0; r < runs.size(); r++) {
            boolean isPresent = runs.get(r).added().equals(state);
            presentRuns += isPresent ? 1 : 0;
            for (int i = 0; i < runs.get(r).readings().size(); i++) {
                Phasor reading = runs.get(r).readings().get(i);
                for (Phasor deviation : List.of(scatter.along(reading), scatter.across(reading))) {
                    (isPresent ? present : others).add(effect(runs, r, i, deviation, result));
                }
            }
        }
        return new ErrorPropagation(VectorCovariance.ofEffects(vectors, present),
                VectorCovariance.ofEffects(vectors, others), presentRuns);
    }

    private static Phasor[] effect(List<Run> runs, int run, int row, Phasor deviation,
            Function<List<Run>, Phasor[]> result) {
        Phasor[] up = result.apply(moved(runs, run, row, deviation.times(STEP)));
        Phasor[] down = result.apply(moved(runs, run, row, deviation.times(-STEP)));
        Phasor[] out = new Phasor[up.length];
        for (int j = 0; j < out.length; j++) {
            out[j] = up[j].minus(down[j]).times(0.5 / STEP);
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
