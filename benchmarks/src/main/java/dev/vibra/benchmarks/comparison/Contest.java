package dev.vibra.benchmarks.comparison;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.regex.Pattern;

/** Lets the sides of a section run by turns, in random order, and compares what comes out. */
final class Contest {
    private static final double TURN_SECONDS = 0.01;

    private final Pattern tasks;
    private final int rounds;
    private final PrintStream out;
    private final Random random = new Random(1);
    private final Timings timings = new Timings();
    private final List<String> disagreements = new ArrayList<>();

    private record Turn(Side side, String task) {
        String work() {
            return Timings.work(side.name(), task);
        }
    }

    Contest(Pattern tasks, int rounds, PrintStream out) {
        this.tasks = tasks;
        this.rounds = rounds;
        this.out = out;
    }

    void run(Section section) {
        List<String> chosen = section.tasks().stream().filter(task -> tasks.matcher(task).matches()).toList();
        List<Turn> turns = new ArrayList<>();
        chosen.forEach(task -> section.sides().stream().filter(side -> side.has(task))
                .forEach(side -> turns.add(new Turn(side, task))));
        if (turns.isEmpty()) {
            return;
        }
        turns.forEach(turn -> turn.side().seconds(turn.task(), turn.side().warmUpSeconds()));
        Map<String, Double> distances = new HashMap<>();
        chosen.forEach(task -> compare(section, task, distances));
        for (int round = 0; round < rounds; round++) {
            Collections.shuffle(turns, random);
            turns.forEach(turn -> timings.add(turn.work(), turn.side().seconds(turn.task(), TURN_SECONDS)));
        }
        turns.forEach(turn -> turn.side().bytes(turn.task())
                .ifPresent(bytes -> timings.addBytes(turn.work(), bytes)));
        new Table(section, timings, distances).lines(chosen).forEach(out::println);
        out.println();
    }

    /** All that have figures are held against the first that has. */
    private void compare(Section section, String task, Map<String, Double> distances) {
        Map<String, double[]> figures = new LinkedHashMap<>();
        section.sides().stream().filter(side -> side.has(task))
                .forEach(side -> figures.put(side.name(), side.result(task).clone()));
        figures.values().removeIf(values -> values.length == 0);
        Iterator<String> names = figures.keySet().iterator();
        String first = names.hasNext() ? names.next() : "";
        names.forEachRemaining(name -> {
            double distance = Agreement.distance(figures.get(first), figures.get(name));
            distances.merge(task, distance, Math::max);
            if (!(distance <= Agreement.LIMIT)) {
                disagreements.add(first + " and " + name + " differ at " + task + " by " + distance);
            }
        });
    }

    Timings timings() {
        return timings;
    }

    List<String> disagreements() {
        return disagreements;
    }
}
