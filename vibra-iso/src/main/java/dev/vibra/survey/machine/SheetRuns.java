package dev.vibra.survey.machine;

import dev.vibra.balance.uncertainty.ReadingScatter;
import java.io.Serializable;
import java.util.List;

/**
 * Runs of a balancing job.
 *
 * @param runout readings at slow roll, one per sensor, to be taken off; empty if there were none
 * @param initial one reading per sensor without trial mass
 * @param trials trial runs, at least one per plane; empty if the coefficients are known
 * @param trialsLeftOn true if each trial mass stayed on the rotor
 * @param influence known coefficients in the unit and detector of the readings per g, one row per sensor, one element
 *     per plane; empty if trial runs tell them
 * @param influenceScatter one standard deviation of every known coefficient, as a share of it; null if not told, or
 *     told with each
 * @param fitted masses that really went on for the final run; empty if they were those worked out
 * @param finalRun one reading per sensor after correction; empty if there was none
 */
public record SheetRuns(List<Phasor> runout, List<Phasor> initial, List<TrialRun> trials, boolean trialsLeftOn,
        List<List<SheetCoefficient>> influence, ReadingScatter influenceScatter, List<SheetMass> fitted,
        List<Phasor> finalRun)
        implements Serializable {
    /**
     * Copies the lists.
     *
     * @param runout see the record
     * @param initial see the record
     * @param trials see the record
     * @param trialsLeftOn see the record
     * @param influence see the record
     * @param influenceScatter see the record
     * @param fitted see the record
     * @param finalRun see the record
     */
    public SheetRuns {
        runout = List.copyOf(runout);
        initial = List.copyOf(initial);
        trials = List.copyOf(trials);
        influence = influence.stream().map(List::copyOf).toList();
        fitted = List.copyOf(fitted);
        finalRun = List.copyOf(finalRun);
    }

    /**
     * Makes the usual runs: an initial one, and trials whose masses come off again.
     *
     * @param initial one reading per sensor without trial mass
     * @param trials trial runs, at least one per plane
     * @return the runs
     */
    public static SheetRuns of(List<Phasor> initial, List<TrialRun> trials) {
        return new SheetRuns(List.of(), initial, trials, false, List.of(), null, List.of(), List.of());
    }

    /**
     * Adds the final run, with the masses on that were worked out.
     *
     * @param readings one reading per sensor
     * @return a changed copy
     */
    public SheetRuns withFinal(List<Phasor> readings) {
        return new SheetRuns(runout, initial, trials, trialsLeftOn, influence, influenceScatter, fitted, readings);
    }

    /** Returns the count of trials and whether there was a final run. */
    @Override
    public String toString() {
        return "initial run, " + (influence.isEmpty() ? trials.size() + " trial run(s)" : "known coefficients")
                + (finalRun.isEmpty() ? "" : ", final run");
    }
}
