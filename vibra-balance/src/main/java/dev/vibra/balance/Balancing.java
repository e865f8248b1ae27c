package dev.vibra.balance;

import dev.vibra.balance.influence.Layout;
import java.util.List;
import java.util.Objects;

/**
 * Where a balancing job starts, with two short words for the numbers of a sheet.
 *
 * <pre>{@code
 * var job = Balancing.inPlanes("fan").measuredAt("DE-H").radius("fan", 160);
 * job = job.initial(v(5.1, 63)).trial("fan", mass(12, 0), v(3.9, 118));
 * job.corrections();
 * }</pre>
 */
public final class Balancing {
    private Balancing() {}

    /**
     * Starts a job: readings in mm/s rms unless {@link BalancingJob#in} says otherwise, phase as lag and angles against
     * rotation unless {@link BalancingJob#with} says otherwise, trial masses taken off after their runs.
     *
     * @param planes names of the correction planes, at least one, all different
     * @return the job, still without sensors
     * @throws IllegalArgumentException if there is no plane or a name comes twice
     */
    public static BalancingJob inPlanes(String... planes) {
        Objects.requireNonNull(planes, "planes");
        return BalancingJob.of(Layout.ofPlanes(List.of(planes)));
    }

    /**
     * Notes a reading as it stands on the sheet; the job knows its unit, detector and sense.
     *
     * @param amplitude amplitude in the unit of the job
     * @param phaseDegrees phase in degrees in the sense of the job
     * @return the reading
     * @throws IllegalArgumentException if a value is out of range
     */
    public static Reading v(double amplitude, double phaseDegrees) {
        return new Reading(amplitude, phaseDegrees);
    }

    /**
     * Notes a mass as it stands on the sheet; the job knows the sense of its angle and, unless it is said with {@link
     * Mass#atRadius}, its radius.
     *
     * @param grams mass in g
     * @param angleDegrees angle from the mark in degrees in the sense of the job
     * @return the mass
     * @throws IllegalArgumentException if a value is out of range
     */
    public static Mass mass(double grams, double angleDegrees) {
        return Mass.of(grams, angleDegrees);
    }
}
