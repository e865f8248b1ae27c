package dev.vibra.symptom;

import static dev.vibra.symptom.LineSize.id;

import dev.vibra.internal.ShaftSpeeds;
import dev.vibra.machine.DriveTrain;
import dev.vibra.point.Aspect;
import dev.vibra.point.LinePattern.TurnKnocks;
import dev.vibra.point.PointSurvey;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** One knock in each turn of a wheel of a gear stage: several multiples of its speed pulsate in the envelope. */
record Knocks() implements Question {
    /** A smooth change of load in a turn makes one or two multiples; common practice, no source. */
    static final int MULTIPLES = 4;
    /** Share of the pulsation that multiples of the speed take; noise takes a few hundredths. Common practice. */
    static final double SHARE = 0.2;

    static Knocks of(Figures figures) {
        figures.choice("OF", List.of("shaft"));
        return new Knocks();
    }

    @Override
    public Answer ask(Evidence evidence, Site site) {
        Tally tally = new Tally();
        for (PointSurvey point : SitePoints.of(evidence, site, Aspect.ENVELOPE)) {
            Optional<TurnKnocks> most = point.pattern().knocks().stream().filter(one ->
                    isWheel(evidence, site, point, one.shaft().hertz())).max(Comparator.comparing(Knocks::isKnock)
                            .thenComparingDouble(TurnKnocks::share));
            most.ifPresentOrElse(one -> tally.says(isKnock(one), List.of(id(point)), one.share(), id(point) + ": "
                    + one.multiples() + " multiples of " + one.shaft() + " in the envelope, "
                    + Math.round(100 * one.share()) + " % of what pulsates"),
                    () -> tally.cannot(id(point), "no acceleration of at least 20 turns of the wheels"));
        }
        return tally.any(Way.ANY.noPoint());
    }

    private static boolean isKnock(TurnKnocks knocks) {
        return knocks.multiples() >= MULTIPLES && knocks.share() >= SHARE;
    }

    private static boolean isWheel(Evidence evidence, Site site, PointSurvey point, double hertz) {
        DriveTrain train = evidence.machine().train();
        Optional<Double> main = point.speed().speed()
                .map(speed -> speed.hertz() / evidence.machine().ratioAt(point.point()));
        return main.stream().flatMap(speed -> train.ratesAt(speed).stream()
                .filter(rate -> RateLines.MESH.isOf(rate, site)).flatMap(mesh -> train.shaftsOf(mesh, speed).stream()))
                .anyMatch(wheel -> ShaftSpeeds.areSame(wheel.hertz(), hertz));
    }
}
