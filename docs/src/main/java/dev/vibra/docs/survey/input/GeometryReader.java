package dev.vibra.docs.survey.input;

import dev.vibra.internal.Digits;
import dev.vibra.survey.machine.AxialSheet;
import dev.vibra.survey.machine.SheetGeometry;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;

/** Reads where masses can go in a balancing job. */
final class GeometryReader {
    private final FieldReader fields;
    private final List<String> planes;

    GeometryReader(FieldReader fields, List<String> planes) {
        this.fields = fields;
        this.planes = planes;
    }

    SheetGeometry read() {
        Map<String, Double> radii = byPlane(fields, "radiusMillimetres",
                (object, plane) -> object.number(plane, Range.above(0, "mm")));
        Map<String, Integer> positions = byPlane(fields, "positions", (object, plane) -> object.count(plane, 3));
        Map<String, Double> first = byPlane(fields, "firstPositionDegrees",
                (object, plane) -> object.number(plane, new Range(-360, true, 360, true, "degrees")));
        for (String plane : first.keySet()) {
            if (!positions.containsKey(plane)) {
                fields.fault("firstPositionDegrees", "needs the count of positions of the same plane: \"" + plane
                        + "\"");
            }
        }
        return new SheetGeometry(radii, positions, first, axial());
    }

    private <T> Map<String, T> byPlane(FieldReader holder, String name,
            BiFunction<FieldReader, String, Optional<T>> reading) {
        Map<String, T> out = new LinkedHashMap<>();
        holder.object(name).ifPresent(object -> {
            planes.forEach(plane -> reading.apply(object, plane).ifPresent(value -> out.put(plane, value)));
            // Without planes nothing is known of the names in the object, and the missing planes are an error already.
            if (!planes.isEmpty()) {
                BalancingReader.passOn(object, holder, name);
            }
        });
        return out;
    }

    /** Places along the axis; null if not told or wrong. */
    private AxialSheet axial() {
        Optional<FieldReader> axial = fields.object("axial");
        if (axial.isEmpty()) {
            return null;
        }
        FieldReader object = axial.get();
        List<Double> bearings = object.numbers("bearingsMillimetres", Range.finite("mm"));
        if (!object.faults().contains("bearingsMillimetres")
                && (bearings.size() != 2 || bearings.get(0).equals(bearings.get(1)))) {
            object.fault("bearingsMillimetres", "must hold the places of the two bearings, apart from each other");
        }
        double centre = object.number("centreOfMassMillimetres", Range.finite("mm")).orElse(Double.NaN);
        if (!object.faulty() && Math.max(Math.abs(centre - bearings.get(0)), Math.abs(centre - bearings.get(1)))
                > 2 * Math.abs(bearings.get(1) - bearings.get(0))) {
            object.fault("centreOfMassMillimetres", "must lie at most one span outside the bearings: "
                    + Digits.compact(centre, 6));
        }
        Map<String, Double> places = byPlane(object, "planesMillimetres",
                (inner, plane) -> inner.number(plane, Range.finite("mm")));
        if (!places.keySet().containsAll(planes) && !object.faults().contains("planesMillimetres")) {
            object.fault("planesMillimetres", "must hold the place of each plane: " + FieldReader.joined(planes));
        }
        BalancingReader.passOn(object, fields, "axial");
        return object.faulty() ? null : new AxialSheet(bearings.get(0), bearings.get(1), centre, places);
    }
}
