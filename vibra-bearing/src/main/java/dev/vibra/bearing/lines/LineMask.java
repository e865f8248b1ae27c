package dev.vibra.bearing.lines;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.DoubleStream;

/** Frequencies that have another explanation; lines there carry no evidence. Immutable. */
public final class LineMask {
    private static final LineMask NOTHING = new LineMask(List.of());

    private final List<Interval> intervals;

    private LineMask(List<Interval> intervals) {
        this.intervals = intervals;
    }

    private record Interval(double from, double to) {}

    /** {@return a mask that covers nothing} */
    public static LineMask nothing() {
        return NOTHING;
    }

    /**
     * Covers more frequencies.
     *
     * @param hertz frequencies in Hz
     * @param halfWidth how far about each, in Hz, zero or more
     * @return the wider mask
     */
    public LineMask with(DoubleStream hertz, double halfWidth) {
        List<Interval> more = new ArrayList<>(intervals);
        Objects.requireNonNull(hertz, "hertz").forEach(f -> more.add(new Interval(f - halfWidth, f + halfWidth)));
        return new LineMask(merged(more));
    }

    /**
     * Covers what another mask covers too.
     *
     * @param other mask
     * @return both together
     */
    public LineMask with(LineMask other) {
        List<Interval> more = new ArrayList<>(intervals);
        more.addAll(Objects.requireNonNull(other, "other").intervals);
        return new LineMask(merged(more));
    }

    private static List<Interval> merged(List<Interval> intervals) {
        intervals.sort(Comparator.comparingDouble(Interval::from));
        List<Interval> merged = new ArrayList<>();
        for (Interval next : intervals) {
            int last = merged.size() - 1;
            if (last >= 0 && next.from() <= merged.get(last).to()) {
                Interval before = merged.get(last);
                merged.set(last, new Interval(before.from(), Math.max(before.to(), next.to())));
            } else {
                merged.add(next);
            }
        }
        return merged;
    }

    /**
     * Tells whether a frequency is covered.
     *
     * @param hertz frequency in Hz
     * @return true within an interval, its ends included
     */
    public boolean covers(double hertz) {
        int low = 0;
        int high = intervals.size() - 1;
        while (low <= high) {
            int middle = (low + high) >>> 1;
            if (hertz < intervals.get(middle).from()) {
                high = middle - 1;
            } else if (hertz > intervals.get(middle).to()) {
                low = middle + 1;
            } else {
                return true;
            }
        }
        return false;
    }

    /** For each line of a spectrum whether it is covered: asked a million times in a search. */
    boolean[] on(SearchLines lines) {
        boolean[] covered = new boolean[lines.count()];
        for (Interval interval : intervals) {
            int from = Math.max(0, (int) Math.ceil(interval.from() / lines.resolutionHertz()));
            int to = Math.min(covered.length - 1, (int) Math.floor(interval.to() / lines.resolutionHertz()));
            for (int i = from; i <= to; i++) {
                covered[i] = true;
            }
        }
        return covered;
    }

    /** Returns the number of stretches covered. */
    @Override
    public String toString() {
        return intervals.size() + " stretches have another explanation";
    }
}
