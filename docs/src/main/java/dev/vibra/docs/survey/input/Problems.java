package dev.vibra.docs.survey.input;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects everything that is wrong in one file. */
final class Problems {
    private final String file;
    private final List<Problem> found = new ArrayList<>();

    Problems(String file) {
        this.file = file;
    }

    void add(int line, String field, String text) {
        found.add(new Problem(file, line, field.replaceAll("\\p{Cntrl}", "\ufffd"), text));
    }

    int count() {
        return found.size();
    }

    List<Problem> byLine() {
        return found.stream().sorted(Comparator.comparingInt(Problem::line)).toList();
    }
}
