package dev.vibra.balance;

import dev.vibra.balance.influence.Run;
import dev.vibra.balance.vector.Phasor;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Runs of a job in order, and what is on the rotor now beyond its first state; immutable. */
@SuppressWarnings("serial") // the collections are unmodifiable copies, which are serializable
final class RunLog implements Serializable {
    private static final long serialVersionUID = 1;

    /** What a run is for: coefficients come from initial and trial runs only. */
    enum Kind { INITIAL, TRIAL, FINAL }

    /** A run with the state that it started from. */
    record Entry(Kind kind, Run run, List<Phasor> stateBefore) implements Serializable {
        /** What went on for this run. */
        Phasor[] fitted() {
            Phasor[] out = new Phasor[stateBefore.size()];
            for (int j = 0; j < out.length; j++) {
                out[j] = run.added().get(j).minus(stateBefore.get(j));
            }
            return out;
        }
    }

    private final List<Entry> entries;
    private final List<Phasor> state;

    private RunLog(List<Entry> entries, List<Phasor> state) {
        this.entries = List.copyOf(entries);
        this.state = List.copyOf(state);
    }

    static RunLog empty(int planes) {
        return new RunLog(List.of(), Collections.nCopies(planes, Phasor.ZERO));
    }

    /** Adds a run with these masses on the rotor, after which the rotor is in another state. */
    RunLog with(Kind kind, Run run, List<Phasor> stateAfter) {
        return withEntry(new Entry(kind, run, state), stateAfter);
    }

    /** Adds another reading of the last run; the rotor has to be still in its state. */
    RunLog withAnotherReading(List<Phasor> readings) {
        if (entries.isEmpty() || !last().run().added().equals(state)) {
            throw new IllegalStateException("the rotor must be as it was in the last run to be read again: the trial"
                    + " mass"
                    + " is off");
        }
        Run again = new Run(last().run().name(), last().run().added(), readings);
        return withEntry(new Entry(last().kind(), again, last().stateBefore()), state);
    }

    private RunLog withEntry(Entry entry, List<Phasor> stateAfter) {
        List<Entry> longer = new ArrayList<>(entries);
        longer.add(entry);
        return new RunLog(longer, stateAfter);
    }

    /** The same log, had the runs been read like this. */
    RunLog readAs(List<Run> runs) {
        List<Entry> others = new ArrayList<>();
        for (int r = 0; r < entries.size(); r++) {
            others.add(new Entry(entries.get(r).kind(), runs.get(r), entries.get(r).stateBefore()));
        }
        return new RunLog(others, state);
    }

    List<Phasor> state() {
        return state;
    }

    boolean isFirstState() {
        return state.stream().allMatch(Phasor.ZERO::equals);
    }

    List<Entry> entries() {
        return entries;
    }

    /** Trials with different masses; readings of one trial that were repeated count once. */
    List<Entry> trials() {
        Set<List<Phasor>> seen = new HashSet<>();
        return entries.stream().filter(e -> e.kind() == Kind.TRIAL && seen.add(e.run().added())).toList();
    }

    Entry last() {
        return entries.get(entries.size() - 1);
    }

    boolean endsWithFinalRun() {
        return !entries.isEmpty() && last().kind() == Kind.FINAL;
    }

    List<Run> runs() {
        return entries.stream().map(Entry::run).toList();
    }

    List<Run> runsForCoefficients() {
        return entries.stream().filter(e -> e.kind() != Kind.FINAL).map(Entry::run).toList();
    }

    /** Mean of the readings taken in a state of the rotor. */
    Phasor[] vibrationIn(List<Phasor> wanted) {
        List<Run> matching = runs().stream().filter(run -> run.added().equals(wanted)).toList();
        if (matching.isEmpty()) {
            throw new IllegalStateException("an initial run must be read first: initial(...)");
        }
        Phasor[] mean = new Phasor[matching.get(0).readings().size()];
        for (int i = 0; i < mean.length; i++) {
            Phasor sum = Phasor.ZERO;
            for (Run run : matching) {
                sum = sum.plus(run.readings().get(i));
            }
            mean[i] = sum.times(1.0 / matching.size());
        }
        return mean;
    }

    Phasor[] presentVibration() {
        return vibrationIn(state);
    }
}
