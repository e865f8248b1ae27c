package dev.vibra.diagnosis;

import dev.vibra.descriptor.NamedLine;
import dev.vibra.internal.Digits;
import dev.vibra.machine.Rate;
import dev.vibra.point.PointSurvey;
import dev.vibra.quantity.Unit;
import dev.vibra.symptom.Evidence;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Lines of gears, blades, belts and the mains that stand and that no finding names. Sound machines show them too: without
 * a reference of the same point nobody can say whether they are as they always were.
 */
final class LinesSeen {
    private static final Map<Rate.Kind, Set<String>> CODES = Map.of(
            Rate.Kind.BLADE_PASSING, Set.of("vane-passing"), Rate.Kind.GEAR_MESH, Set.of("gear-mesh", "gear-tooth"),
            Rate.Kind.BELT, Set.of("belt"), Rate.Kind.TWICE_LINE, Set.of("twice-line-frequency"));

    private LinesSeen() {}

    /** Each rate with the point that shows it most, as in {@code blade passing (0.61 mm/s rms at FE-H)}. */
    static List<String> of(Evidence evidence, List<Finding> findings) {
        Map<String, String> byRate = new LinkedHashMap<>();
        Map<String, Double> largest = new LinkedHashMap<>();
        for (PointSurvey point : evidence.points()) {
            if (evidence.reference(point).isPresent()) {
                continue;
            }
            for (NamedLine line : linesOf(point)) {
                boolean named = findings.stream()
                        .anyMatch(one -> CODES.get(line.rate().kind()).contains(one.code()));
                if (!named && line.level().si() > largest.getOrDefault(line.rate().name(), 0.0)) {
                    largest.put(line.rate().name(), line.level().si());
                    byRate.put(line.rate().name(), line.name() + " (" + Digits.significant(line.level()
                            .in(Unit.MM_PER_S), 2) + " mm/s rms at " + point.point().id() + ")");
                }
            }
        }
        return new ArrayList<>(byRate.values());
    }

    private static List<NamedLine> linesOf(PointSurvey point) {
        return point.lines().stream().filter(line -> line.stands() && CODES.containsKey(line.rate().kind()))
                .sorted(Comparator.comparingDouble((NamedLine line) -> line.level().si()).reversed()).toList();
    }
}
