package dev.vibra.survey;

import dev.vibra.severity.Choice;
import dev.vibra.severity.Zone;
import dev.vibra.survey.machine.MachineDescription;
import java.io.Serializable;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** Result of the survey of a machine. */
public final class MachineSurvey implements Serializable {
    private static final long serialVersionUID = 1;

    private final MachineDescription machine;
    private final Choice criterion;
    private final List<PointSurvey> points;
    private final List<Finding> findings;
    private final List<String> advice;
    private final BalancingSurvey balancing;
    private final List<Omission> omissions;

    MachineSurvey(MachineDescription machine, Choice criterion, List<PointSurvey> points, List<Finding> findings,
            List<String> advice, BalancingSurvey balancing, List<Omission> omissions) {
        this.machine = Objects.requireNonNull(machine, "machine");
        this.criterion = Objects.requireNonNull(criterion, "criterion");
        this.points = List.copyOf(points);
        this.findings = List.copyOf(findings);
        this.advice = List.copyOf(advice);
        this.balancing = balancing;
        this.omissions = List.copyOf(omissions);
    }

    /**
     * Returns what was known of the machine.
     *
     * @return the description
     */
    public MachineDescription machine() {
        return machine;
    }

    /**
     * Returns the severity criterion and why it was chosen.
     *
     * @return the choice
     */
    public Choice criterion() {
        return criterion;
    }

    /**
     * Returns the results by point.
     *
     * @return results in the order of the description
     */
    public List<PointSurvey> points() {
        return points;
    }

    /**
     * Returns hypotheses of faults.
     *
     * @return findings, the best supported first; empty if the evidence supports none
     */
    public List<Finding> findings() {
        return findings;
    }

    /**
     * Returns what to do next.
     *
     * @return sentences, the most important first; the usual caution is the last
     */
    public List<String> advice() {
        return advice;
    }

    /**
     * Returns the balancing job worked out.
     *
     * @return the job; empty if the description has none
     */
    public Optional<BalancingSurvey> balancing() {
        return Optional.ofNullable(balancing);
    }

    /**
     * Returns what was not determined for the machine as a whole.
     *
     * @return parts and reasons
     */
    public List<Omission> omissions() {
        return omissions;
    }

    /**
     * Returns the zone of the machine, that of its worst point.
     *
     * @return the zone; empty if no point could be judged
     */
    public Optional<Zone> zone() {
        return points.stream().flatMap(point -> point.zone().stream()).max(Comparator.naturalOrder());
    }

    /** Returns machine and zone, as in {@code Brine pump 2: zone C, 4 points}. */
    @Override
    public String toString() {
        return machine.name() + ": " + zone().map(zone -> "zone " + zone).orElse("zone not determined") + ", "
                + points.size() + (points.size() == 1 ? " point" : " points");
    }
}
