package dev.vibra.survey;

import dev.vibra.diagnosis.Finding;
import dev.vibra.internal.Require;
import dev.vibra.machine.MachineDescription;
import dev.vibra.point.Omission;
import dev.vibra.point.PartCriterion;
import dev.vibra.point.PointChange;
import dev.vibra.point.PointSurvey;
import dev.vibra.severity.Verdict;
import dev.vibra.severity.Zone;
import dev.vibra.symptom.Evidence;
import java.io.Serializable;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** Result of the survey of a machine. Immutable. */
public final class MachineSurvey implements Serializable {
    private static final long serialVersionUID = 3;

    private final MachineDescription machine;
    private final List<PartCriterion> criteria;
    private final List<PointSurvey> points;
    private final List<PointSurvey> references;
    private final Conclusions conclusions;
    private final BalancingSurvey balancing;
    private final List<Omission> omissions;

    /** The balancing job is null where there is none. */
    MachineSurvey(MachineDescription machine, List<PartCriterion> criteria, List<PointSurvey> points,
            List<PointSurvey> references, Conclusions conclusions, BalancingSurvey balancing,
            List<Omission> omissions) {
        this.machine = Objects.requireNonNull(machine, "machine");
        this.criteria = Require.copy("criteria", criteria);
        this.points = Require.copy("points", points);
        this.references = Require.copy("references", references);
        this.conclusions = Objects.requireNonNull(conclusions, "conclusions");
        this.balancing = balancing;
        this.omissions = Require.copy("omissions", omissions);
    }

    private Object readResolve() {
        return new MachineSurvey(machine, criteria, points, references, conclusions, balancing, omissions);
    }

    /** What is concluded from all points together. */
    record Conclusions(List<Finding> findings, List<String> lookedFor, List<String> notLookedFor,
            List<UnexplainedLevel> unexplained, Condition condition, List<AdviceStep> advice) implements Serializable {
        Conclusions {
            findings = Require.copy("findings", findings);
            lookedFor = Require.copy("lookedFor", lookedFor);
            notLookedFor = Require.copy("notLookedFor", notLookedFor);
            unexplained = Require.copy("unexplained", unexplained);
            Objects.requireNonNull(condition, "condition");
            advice = Require.copy("advice", advice);
        }
    }

    /** {@return what was known of the machine} */
    public MachineDescription machine() {
        return machine;
    }

    /** {@return the criterion of each part and why it was chosen, at least one} */
    public List<PartCriterion> criteria() {
        return criteria;
    }

    /** {@return results by point in the order of the description} */
    public List<PointSurvey> points() {
        return points;
    }

    /** {@return results of reference recordings of some of the points, none of them judged} */
    public List<PointSurvey> references() {
        return references;
    }

    /** {@return each point that has a reference held against it, line by line} */
    public List<PointChange> changes() {
        return new Evidence(machine, points, references).changes();
    }

    /** {@return how the machine stands} */
    public Condition condition() {
        return conclusions.condition();
    }

    /** {@return hypotheses of faults, the most urgent first; empty if the evidence supports none} */
    public List<Finding> findings() {
        return conclusions.findings();
    }

    /** {@return faults in words that what was measured could have shown} */
    public List<String> lookedFor() {
        return conclusions.lookedFor();
    }

    /** {@return faults in words that nothing measured could have shown, so that silence about them clears nothing} */
    public List<String> notLookedFor() {
        return conclusions.notLookedFor();
    }

    /** {@return levels above the boundary B/C that no finding explains} */
    public List<UnexplainedLevel> unexplained() {
        return conclusions.unexplained();
    }

    /** {@return what to do next, the most important first; the usual caution is the last} */
    public List<AdviceStep> advice() {
        return conclusions.advice();
    }

    /** {@return the balancing job worked out, if the description has one} */
    public Optional<BalancingSurvey> balancing() {
        return Optional.ofNullable(balancing);
    }

    /** {@return what was not determined for the machine as a whole, and which faults were not looked for} */
    public List<Omission> omissions() {
        return omissions;
    }

    /** {@return the verdict of the worst point, if any point has one} */
    public Optional<Verdict> worst() {
        return points.stream().flatMap(point -> point.severity().stream())
                .max(Comparator.comparing(verdict -> verdict.deciding().zone()));
    }

    /**
     * {@return the worst zone of all points; empty where no point has one, and for acceptance, which knows no zones}
     */
    public Optional<Zone> zone() {
        return points.stream().filter(point -> point.severity().filter(verdict -> !verdict.isAcceptance()).isPresent())
                .flatMap(point -> point.zone().stream()).max(Comparator.naturalOrder());
    }

    /** Returns machine, zone and condition, as in {@code Brine pump 2: zone C, plan a remedy; 4 points}. */
    @Override
    public String toString() {
        return machine.name() + ": " + zone().map(zone -> "zone " + zone + ", ").orElse("") + condition().word() + "; "
                + points.size() + (points.size() == 1 ? " point" : " points");
    }
}
