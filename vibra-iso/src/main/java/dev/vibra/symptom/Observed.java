package dev.vibra.symptom;

import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a crew found out by a test or a look: noted under its code for the whole machine, or with the name of a site, a
 * part or a housing for that place. What is noted for the place goes first; of several places one yes is a yes.
 *
 * @param code code of the test
 */
record Observed(String code) implements Question {
    static Observed of(Figures figures) {
        return new Observed(figures.code());
    }

    @Override
    public Answer ask(Evidence evidence, Site site) {
        MachineDescription machine = evidence.machine();
        Map<String, Boolean> noted = machine.observations();
        List<MeasuringPoint> points = machine.points().stream()
                .filter(point -> SitePoints.counts(machine, site, point)).toList();
        List<String> own = Stream.of(site.owner(), site.name()).distinct().filter(place ->
                noted.containsKey(key(place))).toList();
        List<String> places = own.isEmpty() ? points.stream().flatMap(Observed::places).distinct()
                .filter(place -> noted.containsKey(key(place))).toList() : own;
        if (places.isEmpty()) {
            return Optional.ofNullable(noted.get(code)).map(seen -> seen
                    ? Answer.seen(List.of(), "found by test or look") : Answer.notSeen("looked for, not found"))
                    .orElse(Answer.notMeasured("not tested"));
        }
        List<String> found = places.stream().filter(place -> noted.get(key(place))).toList();
        return found.isEmpty() ? Answer.notSeen("looked for, not found at " + String.join(", ", places))
                : Answer.seen(points.stream().filter(point -> places(point).anyMatch(found::contains))
                        .map(MeasuringPoint::id).toList(), "found by test or look at " + String.join(", ", found));
    }

    private String key(String place) {
        return code + " at " + place;
    }

    private static Stream<String> places(MeasuringPoint point) {
        return Stream.of(point.part(), point.housing(), point.bearing(), point.shaft()).flatMap(Optional::stream);
    }
}
