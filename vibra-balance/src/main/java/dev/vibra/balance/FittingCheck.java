package dev.vibra.balance;

import dev.vibra.balance.influence.CorrectionSolver;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.evidence.Remark;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * Tells whether a rotor answered as the fitted masses should have made it, and if not, which usual mistake explains the
 * answer: angle counted in the wrong sense, mass on the opposite side (or removed instead of added), planes swapped.
 */
final class FittingCheck {
    /** A change that misses the predicted one by more than this share of it needs an explanation. */
    static final double MISSED = 0.3;

    private final InfluenceCoefficients alpha;
    private final CorrectionSolver solver;
    private final Phasor[] before;
    private final Phasor[] after;
    private final double allowance;

    /** The allowance is what readings may be apart by their scatter alone. */
    FittingCheck(InfluenceCoefficients alpha, CorrectionSolver solver, Phasor[] before, Phasor[] after,
            double allowance) {
        this.alpha = alpha;
        this.solver = solver;
        this.before = before;
        this.after = after;
        this.allowance = allowance;
    }

    Phasor[] predicted(Phasor[] added) {
        return Corrections.vibrationWith(alpha, before, added);
    }

    List<Remark> remarks(Phasor[] added) {
        List<Remark> out = new ArrayList<>();
        double before = solver.norm(this.before);
        double now = solver.norm(after);
        if (now > before + allowance) {
            out.add(Remark.note("worse-than-before", "the vibration is higher than before the corrections", now,
                    before));
        }
        double expected = solver.norm(alpha.response(added));
        double missed = miss(added);
        if (missed > Math.max(MISSED * expected, allowance)) {
            // Without a change to speak of nothing can be told of the angle, and a share of it would be no figure.
            out.add(expected > allowance ? explanation(added, missed / expected)
                    : Remark.note("prediction-missed", text("prediction-missed"), missed / Math.max(before, now), 0));
        }
        return List.copyOf(out);
    }

    /** Distance of the readings from those that these masses should have given. */
    private double miss(Phasor[] added) {
        return solver.norm(Vectors.difference(after, predicted(added)));
    }

    private Remark explanation(Phasor[] added, double missedShare) {
        Map<String, Phasor[]> mistakes = new LinkedHashMap<>();
        mistakes.put("angle-sense-suspected", each(added, Phasor::conjugate));
        mistakes.put("opposite-side-suspected", each(added, Phasor::negated));
        if (added.length == 2) {
            // What was meant for one plane went on at the radius of the other.
            double ratio = alpha.layout().lever(0) / alpha.layout().lever(1);
            mistakes.put("planes-swapped-suspected", new Phasor[] {added[1].times(ratio), added[0].times(1 / ratio)});
        }
        String best = "prediction-missed";
        double bestMiss = miss(added) / 2;
        for (Map.Entry<String, Phasor[]> mistake : mistakes.entrySet()) {
            double miss = miss(mistake.getValue());
            if (miss < bestMiss) {
                best = mistake.getKey();
                bestMiss = miss;
            }
        }
        return Remark.note(best, text(best), missedShare, MISSED);
    }

    private static Phasor[] each(Phasor[] values, UnaryOperator<Phasor> change) {
        return Arrays.stream(values).map(change).toArray(Phasor[]::new);
    }

    private static String text(String code) {
        return switch (code) {
            case "angle-sense-suspected" -> "the readings fit masses fitted at the mirrored angle: was the angle"
                    + " counted in the wrong sense?";
            case "opposite-side-suspected" -> "the readings fit masses on the opposite side: was metal removed where it"
                    + " should be added, or the angle off by 180°?";
            case "planes-swapped-suspected" -> "the readings fit masses fitted in each other's plane";
            default -> "the rotor did not answer as predicted: speed, load, a loose mass, or coefficients that no"
                    + " longer hold";
        };
    }
}
