package dev.vibra.balance;

import dev.vibra.balance.influence.Run;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** Runs of a job in order, and what is on the rotor now beyond its first state; immutable. */
@SuppressWarnings("serial") // the collections are unmodifiable copies, which are serializable
final class RunLog implements Serializable {
    private static final long serialVersionUID = 1;

    /** What a run is for: coefficients come from initial and trial runs only. */
    enum Kind { INITIAL, TRIAL, FINAL }

    /**
     * A run with the state that it started from. Readings of one step are averaged: initial runs with the same masses,
     * trials with the same masses, a final run with what was read again after it.
     */
    record Entry(Kind kind, Run run, List<Phasor> stateBefore, int step) implements Serializable {
        Entry {
            Objects.requireNonNull(kind, "kind");
            stateBefore = Require.copy("stateBefore", stateBefore);
            Require.atLeast("step", step, 0);
            run.readings().forEach(reading -> Vectors.requirePlausible("reading of the " + run.name(), reading));
            run.added().forEach(mass -> Vectors.requirePlausible("unbalance of the " + run.name(), mass));
        }

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
        this.entries = Require.copy("entries", entries);
        this.state = Require.copy("state", state);
        for (Entry entry : this.entries) {
            if (entry.stateBefore().size() != state.size() || entry.run().added().size() != state.size()) {
                throw new IllegalArgumentException("masses of the " + entry.run().name() + " must be one per plane, "
                        + state.size() + ": " + entry.run().added().size());
            }
        }
    }

    private Object readResolve() {
        return new RunLog(entries, state);
    }

    static RunLog empty(int planes) {
        return new RunLog(List.of(), Collections.nCopies(planes, Phasor.ZERO));
    }

    /** Adds a run with these masses on the rotor, after which the rotor is in another state. */
    RunLog with(Kind kind, Run run, List<Phasor> stateAfter) {
        return withEntry(new Entry(kind, run, state, stepOf(kind, run)), stateAfter);
    }

    /** A final run is always a step of its own, even if nothing was fitted for it. */
    private int stepOf(Kind kind, Run run) {
        return kind == Kind.FINAL ? entries.size()
                : entries.stream().filter(e -> e.kind() == kind && e.run().added().equals(run.added()))
                        .mapToInt(Entry::step).findFirst().orElse(entries.size());
    }

    /** Adds another reading of the last run; the rotor has to be still in its state. */
    RunLog withAnotherReading(List<Phasor> readings) {
        if (entries.isEmpty()) {
            throw new IllegalStateException("there must be a run to be read again: initial(...)");
        }
        if (!last().run().added().equals(state)) {
            throw new IllegalStateException("the rotor must be as it was in the last run to be read again: the trial"
                    + " mass is off");
        }
        Run again = new Run(last().run().name(), last().run().added(), readings);
        return withEntry(new Entry(last().kind(), again, last().stateBefore(), last().step()), state);
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
            Entry e = entries.get(r);
            others.add(new Entry(e.kind(), runs.get(r), e.stateBefore(), e.step()));
        }
        return new RunLog(others, state);
    }

    List<Phasor> state() {
        return state;
    }

    boolean isFirstState() {
        return state.stream().allMatch(Phasor.ZERO::equals) && entries.stream().noneMatch(e -> e.kind() == Kind.FINAL);
    }

    List<Entry> entries() {
        return entries;
    }

    /** Trials with different masses; readings of one trial that were repeated count once. */
    List<Entry> trials() {
        Set<Integer> seen = new HashSet<>();
        return entries.stream().filter(e -> e.kind() == Kind.TRIAL && seen.add(e.step())).toList();
    }

    Entry last() {
        return entries.get(entries.size() - 1);
    }

    boolean endsWithFinalRun() {
        return !entries.isEmpty() && last().kind() == Kind.FINAL;
    }

    /** The log as it was before the final run that it ends with; itself if it ends with none. */
    RunLog beforeFinalRun() {
        return endsWithFinalRun() ? new RunLog(entries.stream().filter(e -> e.step() < last().step()).toList(),
                last().stateBefore()) : this;
    }

    List<Run> runs() {
        return entries.stream().map(Entry::run).toList();
    }

    List<Run> runsForCoefficients() {
        return entries.stream().filter(e -> e.kind() != Kind.FINAL).map(Entry::run).toList();
    }

    /** Mean of the readings of a step. */
    Phasor[] vibrationOf(Entry entry) {
        return mean(e -> e.step() == entry.step());
    }

    /** Mean of the readings before a step, the rotor as it was when its masses went on. */
    Phasor[] vibrationBefore(Entry entry) {
        return vibrationOf(before(entry).orElseThrow(RunLog::noInitialRun));
    }

    private Optional<Entry> before(Entry entry) {
        return latest(e -> e.step() < entry.step() && e.run().added().equals(entry.stateBefore()));
    }

    /** Says that no run tells of the rotor as it is now, or as it was before one of these runs. */
    Optional<String> obstacle(List<Entry> held) {
        boolean known = latest(this::isOfPresentState).isPresent()
                && held.stream().allMatch(e -> before(e).isPresent());
        return known ? Optional.empty() : Optional.of(noInitialRun().getMessage());
    }

    private static IllegalStateException noInitialRun() {
        return new IllegalStateException("an initial run must be read first: initial(...)");
    }

    /** Mean of the latest readings of the rotor as it is now. */
    Phasor[] presentVibration() {
        return vibrationOf(present());
    }

    /** Tells whether a run is one of those that the present vibration is the mean of. */
    boolean isPresent(int run) {
        return entries.get(run).step() == present().step();
    }

    private Entry present() {
        return latest(this::isOfPresentState).orElseThrow(RunLog::noInitialRun);
    }

    private boolean isOfPresentState(Entry entry) {
        return entry.run().added().equals(state);
    }

    private Optional<Entry> latest(Predicate<Entry> wanted) {
        for (int r = entries.size() - 1; r >= 0; r--) {
            if (wanted.test(entries.get(r))) {
                return Optional.of(entries.get(r));
            }
        }
        return Optional.empty();
    }

    private Phasor[] mean(Predicate<Entry> wanted) {
        List<Run> matching = entries.stream().filter(wanted).map(Entry::run).toList();
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
}
