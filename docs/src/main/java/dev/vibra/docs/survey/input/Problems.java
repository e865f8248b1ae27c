package dev.vibra.docs.survey.input;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects what is wrong in one file; of very many errors the first are kept and the others counted. */
final class Problems {
    private static final int MOST = 100;

    private final String file;
    private final List<Problem> found = new ArrayList<>();
    private int count;

    Problems(String file) {
        this.file = file;
    }

    void add(int line, String field, String text) {
        count++;
        if (found.size() < MOST) {
            found.add(new Problem(file, line, field, text));
        }
    }

    int count() {
        return count;
    }

    /** Returns true if any more are counted only, so that nothing need be searched for their words. */
    boolean full() {
        return count >= MOST;
    }

    List<Problem> byLine() {
        List<Problem> sorted = new ArrayList<>(found);
        sorted.sort(Comparator.comparingInt(Problem::line));
        if (count > found.size()) {
            sorted.add(new Problem(file, 0, "", "\u2026 and " + (count - found.size()) + " more errors, not listed"));
        }
        return sorted;
    }
}
