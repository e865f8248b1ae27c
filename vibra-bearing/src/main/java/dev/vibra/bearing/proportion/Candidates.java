package dev.vibra.bearing.proportion;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.RotatingRing;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Candidates of one element told in one breath. */
final class Candidates {
    private Candidates() {}

    private record Part(BearingElement element, RotatingRing turning) {}

    /** As in {@code outer race of 9 or 10 elements, or inner race of 6 elements}. */
    static String inWords(List<Proportion> candidates) {
        Map<Part, List<Proportion>> parts = candidates.stream().collect(Collectors.groupingBy(
                one -> new Part(one.element(), one.turning()), LinkedHashMap::new, Collectors.toList()));
        return parts.entrySet().stream().map(part -> part.getKey().element() + " of " + part.getValue().stream()
                        .map(Proportion::number).collect(Collectors.joining(" or ")) + " elements"
                        + (part.getKey().turning() == RotatingRing.OUTER ? " (outer ring turning)" : ""))
                .collect(Collectors.joining(", or "));
    }
}
