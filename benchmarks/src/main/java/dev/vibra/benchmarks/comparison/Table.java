package dev.vibra.benchmarks.comparison;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** One section as a table of Markdown. */
final class Table {
    private final Section section;
    private final Timings timings;
    private final Map<String, Double> distances;

    Table(Section section, Timings timings, Map<String, Double> distances) {
        this.section = section;
        this.timings = timings;
        this.distances = distances;
    }

    List<String> lines(List<String> tasks) {
        List<String> lines = new ArrayList<>();
        List<String> head = new ArrayList<>(List.of(section.title()));
        section.sides().forEach(side -> head.add(side.name()));
        section.ours().forEach(side -> head.add(side.name() + ", bytes"));
        section.ours().forEach(ours -> section.references().forEach(
                reference -> head.add(reference.name() + "/" + ours.name())));
        if (!section.references().isEmpty()) {
            head.add("apart by");
        }
        lines.add(row(head));
        lines.add("|" + "---|".repeat(head.size()));
        tasks.forEach(task -> lines.add(row(cells(task))));
        return lines;
    }

    private List<String> cells(String task) {
        List<String> cells = new ArrayList<>(List.of(task));
        section.sides().forEach(side -> cells.add(time(Timings.work(side.name(), task))));
        section.ours().forEach(side -> cells.add(text("%,.0f", timings.bytes(Timings.work(side.name(), task)))));
        section.ours().forEach(ours -> section.references().forEach(reference -> cells.add(text("%.2f",
                timings.ratio(Timings.work(reference.name(), task), Timings.work(ours.name(), task))))));
        if (!section.references().isEmpty()) {
            cells.add(distances.containsKey(task) ? String.format(Locale.ROOT, "%.0e", distances.get(task)) : "");
        }
        return cells;
    }

    /** Best and median in microseconds. */
    private String time(String work) {
        OptionalDouble best = timings.best(work);
        return best.isEmpty() ? "" : number(1e6 * best.getAsDouble()) + " ("
                + number(1e6 * timings.median(work).getAsDouble()) + ")";
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, value >= 100 ? "%,.0f" : value >= 10 ? "%.1f" : "%.2f", value);
    }

    private static String text(String format, OptionalDouble value) {
        return value.isEmpty() ? "" : String.format(Locale.ROOT, format, value.getAsDouble());
    }

    private static String row(List<String> cells) {
        return "| " + String.join(" | ", cells) + " |";
    }
}
