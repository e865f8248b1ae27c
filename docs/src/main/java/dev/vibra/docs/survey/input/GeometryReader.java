package dev.vibra.docs.survey.input;

import dev.vibra.balance.placement.Positions;
import dev.vibra.balance.tolerance.Allocation;
import dev.vibra.internal.Digits;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;

/** Reads where masses can go in a balancing job. */
final class GeometryReader {
    private static final Range PLACE = new Range(-1e6, true, 1e6, true, "mm");
    private static final double SHORTEST_SPAN = 1e-3;

    private final FieldReader fields;
    private final List<String> planes;
    private final JobSteps steps;

    GeometryReader(FieldReader fields, List<String> planes, JobSteps steps) {
        this.fields = fields;
        this.planes = planes;
        this.steps = steps;
    }

    /** Reads radii, to which trial runs may add before the job is told, and returns shares of the tolerance if told. */
    Optional<Allocation> read(Map<String, Double> radii) {
        radii.putAll(byPlane(fields, "radiusMillimetres", (object, plane) -> BalancingReader.size(object, plane,
                Range.above(0, "mm"))));
        planes.forEach(plane -> steps.add(job -> radii.containsKey(plane) ? job.radius(plane, radii.get(plane)) : job));
        Map<String, Integer> positions = byPlane(fields, "positions", (object, plane) -> object.count(plane, 3));
        Map<String, Double> first = byPlane(fields, "firstPositionDegrees", (object, plane) -> object.number(plane,
                BalancingReader.TURN));
        first.keySet().stream().filter(plane -> !positions.containsKey(plane)).forEach(plane -> fields.fault(
                "firstPositionDegrees", "needs the count of positions of the same plane: \"" + plane + "\""));
        positions.forEach((plane, count) -> steps.add(job -> job.positions(plane, Positions.of(count,
                job.layout().convention().angle()).startingAt(first.getOrDefault(plane, 0.0)))));
        return fields.part("axial", this::axial).flatMap(read -> read);
    }

    private <T> Map<String, T> byPlane(FieldReader holder, String name,
            BiFunction<FieldReader, String, Optional<T>> reading) {
        Map<String, T> out = new LinkedHashMap<>();
        // Without planes nothing is known of the names in the object, and the missing planes are an error already.
        if (holder.has(name) && !planes.isEmpty()) {
            holder.part(name, object -> {
                planes.forEach(plane -> reading.apply(object, plane).ifPresent(value -> out.put(plane, value)));
                return out;
            });
        }
        return out;
    }

    /** Reads places along the axis, all from the same end. */
    private Optional<Allocation> axial(FieldReader object) {
        List<Double> bearings = object.numbers("bearingsMillimetres", PLACE);
        if (!object.faults().contains("bearingsMillimetres")
                && (bearings.size() != 2 || Math.abs(bearings.get(1) - bearings.get(0)) < SHORTEST_SPAN)) {
            object.fault("bearingsMillimetres", "must hold the places of the two bearings, apart from each other");
        }
        Optional<Double> centre = object.number("centreOfMassMillimetres", PLACE);
        centre.filter(place -> !object.faulty() && isFarOutside(bearings, place)).ifPresent(place -> object.fault(
                "centreOfMassMillimetres", "must lie at most one span outside the bearings: "
                + Digits.compact(place, 6)));
        Map<String, Double> places = byPlane(object, "planesMillimetres",
                (inner, plane) -> inner.number(plane, PLACE));
        if (!places.keySet().containsAll(planes) && !object.faults().contains("planesMillimetres")) {
            object.fault("planesMillimetres", "must hold the place of each plane: " + FieldReader.joined(planes));
        }
        if (object.faulty()) {
            return Optional.empty();
        }
        steps.add(job -> job.alongTheAxis(bearings.get(0), bearings.get(1),
                planes.stream().mapToDouble(places::get).toArray()));
        return Optional.of(centre.map(place -> Allocation.byLever(bearings.get(0), bearings.get(1), place))
                .orElseGet(() -> Allocation.equalShares(2)));
    }

    private static boolean isFarOutside(List<Double> bearings, double place) {
        return Math.max(Math.abs(place - bearings.get(0)), Math.abs(place - bearings.get(1)))
                > 2 * Math.abs(bearings.get(1) - bearings.get(0));
    }
}
