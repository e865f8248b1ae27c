package dev.vibra.simulation;

import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.measuring.Direction;
import dev.vibra.point.PartCriterion;
import dev.vibra.quantity.Quantity;
import dev.vibra.severity.Criterion;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Draws where a machine is measured: five to eight points where it has as many, and how its sensors look. */
final class PlanPoints {
    private static final List<Direction> LETTERS = List.of(Direction.HORIZONTAL, Direction.VERTICAL, Direction.AXIAL);
    private static final int MOST = 8;
    private static final int FEWEST = 5;
    /** Crews that think of alignment. */
    private static final double ALIGNED = 0.4;
    /** Where no criterion fits, the machine is as loud as if this held: 4.5 mm/s, the size of most limits. */
    private static final double NO_CRITERION = 4.5e-3;

    private record Place(int housing, int direction) {}

    private final Draws draws;
    private final List<PlanParts.Housing> housings;
    private final List<PlanParts.Rotor> rotors;
    private final List<PlanParts.Link> links;
    private final boolean belted;
    private final Set<Integer> withGeometry;
    private final List<Place> places = new ArrayList<>();
    private final List<Double> signs = new ArrayList<>();

    PlanPoints(Draws draws, List<PlanParts.Housing> housings, List<PlanParts.Rotor> rotors, List<PlanParts.Link> links,
            PlanParts.Drive belt, Set<Integer> withGeometry) {
        this.draws = draws;
        this.housings = housings;
        this.rotors = rotors;
        this.links = links;
        this.belted = belt != null;
        this.withGeometry = withGeometry;
        choose();
        places.sort((one, other) -> Integer.compare(3 * one.housing + one.direction,
                3 * other.housing + other.direction));
        places.forEach(place -> signs.add(draws.chance(0.8) ? 1.0 : -1.0));
    }

    /**
     * Housings beside the coupling or the belt always, the others mostly; every one level, many upright and
     * axially; some crews go to both sides of a coupling with that in mind.
     */
    private void choose() {
        List<Place> more = new ArrayList<>();
        for (int housing = 0; housing < housings.size(); housing++) {
            boolean inner = housing == 1 || housing == 2 || housings.size() == 2;
            if (inner || draws.chance(0.65) || isLastOf(housing)) {
                places.add(new Place(housing, Excitation.HORIZONTAL));
                more.add(new Place(housing, Excitation.VERTICAL));
                more.add(new Place(housing, Excitation.AXIAL));
            }
        }
        int most = Math.max(FEWEST, draws.between(FEWEST, MOST));
        if (!links.isEmpty() && draws.chance(ALIGNED)) {
            List<Place> along = more.stream().filter(one -> one.direction == Excitation.AXIAL
                    && (one.housing == 1 || one.housing == 2)).toList();
            places.addAll(along);
            more.removeAll(along);
        }
        while (places.size() < most && !more.isEmpty()) {
            places.add(more.remove(draws.between(0, more.size() - 1)));
        }
    }

    /** Each rotor is measured at one of its ends at least. */
    private boolean isLastOf(int housing) {
        return rotors.stream().anyMatch(rotor -> rotor.second() == housing
                && places.stream().noneMatch(place -> place.housing == rotor.first()));
    }

    /** Geometry of the bearings at which a point lies. */
    Map<Integer, BearingGeometry> measuredBearings(Map<Integer, BearingGeometry> all) {
        Map<Integer, BearingGeometry> measured = new TreeMap<>(all);
        measured.keySet().retainAll(places.stream().map(Place::housing).toList());
        return measured;
    }

    MachineDescription addTo(MachineDescription description, boolean single, List<PlanParts.Rotor> all) {
        double simultaneous = draws.uniform(0, 1);
        MachineDescription told = description;
        for (int i = 0; i < places.size(); i++) {
            Place place = places.get(i);
            PlanParts.Housing housing = housings.get(place.housing);
            Direction direction = LETTERS.get(place.direction);
            MeasuringPoint point = MeasuringPoint.of(housing.id() + "-" + direction.letter()).withDirection(direction);
            point = single ? point : point.withPart(housing.part());
            String shaft = rotorAt(place.housing).owner();
            point = "shaft".equals(shaft) ? point : point.withShaft(shaft);
            point = draws.chance(0.85) ? point.withPositiveAxis(axis(place, signs.get(i))) : point;
            if (withGeometry.contains(place.housing) && direction == Direction.HORIZONTAL) {
                point = point.withBearing(housing.id());
            }
            told = told.withPoint(simultaneous < 0.6 ? point.recordedWith("all")
                    : simultaneous < 0.85 ? point.recordedWith(housing.id()) : point);
        }
        return told;
    }

    private PlanParts.Rotor rotorAt(int housing) {
        return rotors.stream().filter(rotor -> rotor.first() == housing || rotor.second() == housing).findFirst()
                .orElseThrow();
    }

    /** Along the shafts the machine's own axis runs from the motor's far end onwards. */
    private String axis(Place place, double sign) {
        if (place.direction != Excitation.AXIAL) {
            return place.direction == Excitation.HORIZONTAL ? (sign > 0 ? "0" : "180") : (sign > 0 ? "90" : "270");
        }
        boolean before = place.housing < 2;
        boolean towards = before == sign > 0;
        return (towards ? "towards the " : "away from the ") + (links.isEmpty() && belted ? "belt" : "coupling");
    }

    /** The points as the simulation needs them. */
    List<PlanParts.Point> drawn(MachineDescription description) {
        List<PartCriterion> criteria = PartCriterion.of(description);
        Map<String, Double> starts = new LinkedHashMap<>();
        List<PlanParts.Point> drawn = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            MeasuringPoint point = description.points().get(i);
            double start = starts.computeIfAbsent(point.recordingSet().orElse(point.id()), set -> draws.uniform(0, 60));
            drawn.add(new PlanParts.Point(point, places.get(i).housing, places.get(i).direction,
                    signs.get(i) * draws.normal(1, 0.02), draws.logUniform(9_000, 30_000), limit(point, criteria),
                    start));
        }
        return List.copyOf(drawn);
    }

    private static double limit(MeasuringPoint point, List<PartCriterion> criteria) {
        return criteria.stream().filter(one -> criteria.size() == 1 || one.part().equals(point.part()))
                .flatMap(one -> one.severity().criteria().stream())
                .filter(criterion -> criterion.quantity() == Quantity.VELOCITY && criterion.boundary("B/C").isPresent())
                .mapToDouble(PlanPoints::boundary).min().orElse(NO_CRITERION);
    }

    private static double boundary(Criterion criterion) {
        return criterion.boundary("B/C").orElseThrow().limit() * criterion.unit().toSi();
    }
}
