package dev.vibra.benchmarks.comparison;

import java.util.List;
import java.util.stream.Stream;

/** Tasks that the same sides do: those held against, and those of the library. */
record Section(String title, List<Side> references, List<Side> ours, List<String> tasks) {
    List<Side> sides() {
        return Stream.concat(references.stream(), ours.stream()).toList();
    }
}
