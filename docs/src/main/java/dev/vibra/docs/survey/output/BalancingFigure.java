package dev.vibra.docs.survey.output;

import dev.vibra.balance.Correction;
import dev.vibra.balance.Corrections;
import dev.vibra.balance.JobRecord;
import dev.vibra.balance.influence.Sensor;
import dev.vibra.balance.uncertainty.Ellipse;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.PhaseSense;
import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.docs.survey.chart.PolarFigure;
import dev.vibra.survey.BalancingSurvey;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Polar figure of a balancing job: readings, runout taken off, on the left, corrections on the right. Rotation is
 * counter-clockwise on the paper: what leads or counts with rotation grows counter-clockwise, the rest clockwise.
 */
final class BalancingFigure {
    /** With more arrows than this, only initial runs have a label. */
    private static final int MOST_LABELS = 12;
    private static final int LONGEST_NAME = 18;

    private BalancingFigure() {}

    static Optional<Figure> of(BalancingSurvey balancing, Phrases phrases) {
        return balancing.corrections().map(corrections -> draw(balancing, corrections, phrases));
    }

    private static Figure draw(BalancingSurvey balancing, Corrections corrections, Phrases phrases) {
        JobRecord job = balancing.toRecord().orElseThrow();
        Sensor sensor = balancing.job().layout().sensors().get(0);
        boolean lead = corrections.convention().phase() == PhaseSense.LEAD;
        boolean with = corrections.convention().angle() == AngleSense.WITH_ROTATION;
        List<PolarFigure.Arrow> masses = new ArrayList<>();
        for (Correction one : corrections.list()) {
            PolarFigure.Oval oval = corrections.uncertainty().map(u -> oval(corrections, u.ofCorrection(one.plane())))
                    .orElse(null);
            masses.add(new PolarFigure.Arrow(shortened(one.plane()), one.mass().grams(), one.mass().angleDegrees(),
                    true, oval));
        }
        String ovals = corrections.uncertainty().isPresent() ? " " + phrases.say("balancing.figure-ovals") : "";
        String runout = balancing.job().runout().isEmpty() ? "" : " " + phrases.say("balancing.figure-runout");
        String phase = phrases.say(lead ? "balancing.lead" : "balancing.lag");
        String angle = phrases.say(with ? "balancing.with" : "balancing.against");
        return PolarFigure.of(new PolarFigure.Field(phrases.say("balancing.readings-figure", phase),
                sensor.unit() + " " + sensor.detector(), lead, readings(job)),
                new PolarFigure.Field(phrases.say("balancing.masses-figure", angle), "g", with, masses).withMeasures(),
                phrases.say("figure.rotation"),
                phrases.say("balancing.figure", corrections.convention())
                + runout + ovals + (isCrowded(job) ? " " + phrases.say("balancing.figure-crowded") : ""));
    }

    private static boolean isCrowded(JobRecord job) {
        return job.runs().stream().mapToInt(run -> run.readings().size()).sum() > MOST_LABELS;
    }

    /** The tables beside the figure have the whole name. */
    private static String shortened(String name) {
        return name.length() > LONGEST_NAME ? name.substring(0, LONGEST_NAME - 1) + "\u2026" : name;
    }

    private static PolarFigure.Oval oval(Corrections corrections, Ellipse ellipse) {
        return new PolarFigure.Oval(ellipse.major(), ellipse.minor(),
                ellipse.majorDegrees(corrections.convention().angle()));
    }

    private static List<PolarFigure.Arrow> readings(JobRecord job) {
        List<PolarFigure.Arrow> arrows = new ArrayList<>();
        int trial = 0;
        for (JobRecord.RunEntry run : job.runs()) {
            boolean tried = run.name().startsWith("trial");
            String name = tried ? "trial " + ++trial : run.name().replace(" run", "");
            for (JobRecord.ReadingEntry one : run.readings()) {
                String label = isCrowded(job) && !name.equals("initial") ? ""
                        : run.readings().size() == 1 ? name : shortened(one.sensor()) + " " + name;
                arrows.add(new PolarFigure.Arrow(label, one.amplitude(), one.phaseDegrees(), name.equals("final")));
            }
        }
        return arrows;
    }
}
