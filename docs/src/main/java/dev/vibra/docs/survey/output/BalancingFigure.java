package dev.vibra.docs.survey.output;

import dev.vibra.balance.Correction;
import dev.vibra.balance.Corrections;
import dev.vibra.balance.uncertainty.Ellipse;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.PhaseSense;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.docs.survey.chart.PolarFigure;
import dev.vibra.survey.BalancingSurvey;
import dev.vibra.survey.machine.Phasor;
import dev.vibra.survey.machine.TrialRun;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Polar figure of a balancing job: readings as they were written down on the left, corrections on the right. Rotation
 * is counter-clockwise on the paper: what leads or counts with rotation grows counter-clockwise, the rest clockwise.
 */
final class BalancingFigure {
    private BalancingFigure() {}

    static Optional<Figure> of(BalancingSurvey balancing) {
        return balancing.corrections().map(corrections -> draw(balancing, corrections));
    }

    private static Figure draw(BalancingSurvey balancing, Corrections corrections) {
        List<PolarFigure.Arrow> readings = new ArrayList<>();
        List<String> sensors = balancing.sheet().sensors();
        addRun(readings, sensors, "initial", balancing.sheet().runs().initial());
        int number = 1;
        for (TrialRun trial : balancing.sheet().runs().trials()) {
            addRun(readings, sensors, "trial " + number++, trial.readings());
        }
        balancing.verification().ifPresent(verification -> {
            for (int i = 0; i < verification.after().size(); i++) {
                VibrationVector after = verification.after().get(i);
                readings.add(new PolarFigure.Arrow(label(sensors, i, "final"), after.amplitude(), after.phaseDegrees(),
                        true));
            }
        });
        boolean lead = corrections.convention().phase() == PhaseSense.LEAD;
        boolean with = corrections.convention().angle() == AngleSense.WITH_ROTATION;
        List<PolarFigure.Arrow> masses = new ArrayList<>();
        for (Correction one : corrections.list()) {
            PolarFigure.Oval oval = corrections.uncertainty().map(u -> oval(corrections, u.ofCorrection(one.plane())))
                    .orElse(null);
            masses.add(new PolarFigure.Arrow(one.plane(), one.mass().grams(), one.mass().angleDegrees(), true, oval));
        }
        String ovals = corrections.uncertainty().isPresent() ? " Dashed: 95 % ellipses of the masses." : "";
        return PolarFigure.of(new PolarFigure.Field("Readings, phase " + (lead ? "lead" : "lag"),
                balancing.sheet().reading().unit() + " " + balancing.sheet().reading().detector(), lead, readings),
                new PolarFigure.Field("Masses to add, angle " + (with ? "with" : "against") + " rotation", "g", with,
                        masses),
                "Vectors of the balancing job. Rotation is counter-clockwise; " + corrections.convention() + "."
                + ovals);
    }

    private static PolarFigure.Oval oval(Corrections corrections, Ellipse ellipse) {
        return new PolarFigure.Oval(ellipse.major(), ellipse.minor(),
                corrections.convention().angle().degreesOf(dev.vibra.balance.vector.Phasor.polar(1,
                        ellipse.majorRadians())));
    }

    private static void addRun(List<PolarFigure.Arrow> arrows, List<String> sensors, String run,
            List<Phasor> readings) {
        for (int i = 0; i < readings.size(); i++) {
            arrows.add(new PolarFigure.Arrow(label(sensors, i, run), readings.get(i).amplitude(),
                    readings.get(i).phaseDegrees(), false));
        }
    }

    private static String label(List<String> sensors, int sensor, String run) {
        return sensors.size() == 1 ? run : sensors.get(sensor) + " " + run;
    }
}
