package dev.vibra.survey;

import dev.vibra.descriptor.DominantLine;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Unit;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * A level above the boundary B/C that no finding explains, with the lines that carry it.
 *
 * @param point id of the point
 * @param level broad-band level judged
 * @param lines the largest lines of its velocity spectrum, the largest first; empty if none stands out
 */
public record UnexplainedLevel(String point, Level level, List<DominantLine> lines) implements Serializable {
    /**
     * Checks that all is there.
     *
     * @param point see the record
     * @param level see the record
     * @param lines see the record
     */
    public UnexplainedLevel {
        point = Require.notBlank("point", point);
        Objects.requireNonNull(level, "level");
        lines = Require.copy("lines", lines);
    }

    /** Returns the lines, as in {@code FE-H: 5.00 mm/s rms at 148.5 Hz (6.00x, blade passing) of 5.50 mm/s rms}. */
    @Override
    public String toString() {
        String carried = lines.isEmpty() ? "no line stands out of the noise"
                : lines.stream().map(UnexplainedLevel::text).collect(Collectors.joining(", "));
        return point + ": " + carried + "; " + level + " in all";
    }

    private static String text(DominantLine line) {
        List<String> where = new ArrayList<>();
        line.order().ifPresent(order -> where.add(Digits.significant(order, 3) + "\u00d7"));
        line.name().ifPresent(where::add);
        return Digits.significant(line.level().in(Unit.MM_PER_S), 3) + " mm/s rms at "
                + Digits.significant(line.hertz(), 4) + " Hz"
                + (where.isEmpty() ? "" : " (" + String.join(", ", where) + ")");
    }
}
