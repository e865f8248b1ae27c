package dev.vibra.measuring;

import dev.vibra.internal.Require;
import dev.vibra.measuring.MachineLayout.Part;
import dev.vibra.measuring.MachineLayout.Place;
import dev.vibra.measuring.PlannedPoint.Need;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * The points at which a machine is measured, with what each is good for.
 *
 * <p>On every bearing two radial directions at right angles; axial at the thrust bearing, or else at one bearing of
 * each part, at the others when a cause is looked for; at fluid-film bearings also two shaft probes at right angles,
 * where fitted. Bearings are numbered from the free end of the driver; sides are as seen from there. A radial direction
 * may be left out once it is known that the other one tells the level.
 *
 * @see "ISO 13373-1:2002 on measuring points and directions, in general terms and from memory, unverified; ISO
 *     20816-1:2016 on two radial directions at each bearing"
 */
public final class MeasuringPlan implements Serializable {
    private static final long serialVersionUID = 1;

    private final MachineLayout layout;
    private final List<PlannedPoint> points;
    private final List<String> notes;

    private MeasuringPlan(MachineLayout layout, List<PlannedPoint> points, List<String> notes) {
        this.layout = layout;
        this.points = Require.copy("points", points);
        this.notes = Require.copy("notes", notes);
    }

    private Object readResolve() {
        return of(layout);
    }

    /**
     * Makes the plan of a machine.
     *
     * @param layout parts and bearings
     * @return the plan
     * @throws IllegalArgumentException if the layout has no bearing
     */
    public static MeasuringPlan of(MachineLayout layout) {
        if (Objects.requireNonNull(layout, "layout").bearings().isEmpty()) {
            throw new IllegalArgumentException("layout must have a bearing: " + layout);
        }
        List<PlannedPoint> points = new ArrayList<>();
        for (int i = 0; i < layout.bearings().size(); i++) {
            addPoints(layout, i, points);
        }
        return new MeasuringPlan(layout, points, notes(layout));
    }

    private static void addPoints(MachineLayout layout, int index, List<PlannedPoint> points) {
        Place place = layout.bearings().get(index);
        Part part = layout.parts().get(place.part());
        boolean lying = layout.orientation() == Orientation.HORIZONTAL;
        Radial radial = new Radial(index + 1, part.name(), points);
        radial.add(lying ? Direction.HORIZONTAL : Direction.RADIAL_IN_LINE, Need.ALWAYS, lying
                ? "unbalance, bending, misalignment; usually the softer direction"
                : "unbalance, bending, misalignment; the top of an upright machine moves most");
        radial.add(lying ? Direction.VERTICAL : Direction.RADIAL_ACROSS, Need.ALWAYS, lying
                ? "looseness of foot and foundation, unbalance; usually the stiffer direction"
                : "compared with the other radial direction it tells resonance and pull of piping");
        addAxial(layout, index, radial);
        if (touchesBelt(layout, place.part())) {
            radial.add(Direction.ALONG_BELT, Need.FOR_DIAGNOSIS, "belt tension, eccentric pulleys");
        }
        if (place.type() == BearingType.FLUID_FILM) {
            String purpose = "movement of the shaft in its clearance, orbit, instability of the oil film";
            radial.add(Direction.PROBE_X, Need.WHERE_FITTED, purpose);
            radial.add(Direction.PROBE_Y, Need.WHERE_FITTED, purpose);
        }
    }

    /** Collects the points of one bearing. */
    private record Radial(int bearing, String part, List<PlannedPoint> points) {
        void add(Direction direction, Need need, String purpose) {
            points.add(new PlannedPoint(bearing, part, direction, need, purpose));
        }
    }

    private static void addAxial(MachineLayout layout, int index, Radial radial) {
        Place place = layout.bearings().get(index);
        String purpose = carriesOverhung(layout, place.part())
                ? "unbalance of the overhung rotor, misalignment, bent shaft"
                : "misalignment, bent shaft, thrust";
        radial.add(Direction.AXIAL, isMainAxial(layout, index) || place.thrust() ? Need.ALWAYS : Need.FOR_DIAGNOSIS,
                purpose);
    }

    /**
     * Without a thrust bearing that is named, the bearing nearest to the next part, or to an overhung rotor, serves.
     */
    private static boolean isMainAxial(MachineLayout layout, int index) {
        int part = layout.bearings().get(index).part();
        List<Place> own = layout.bearings().stream().filter(each -> each.part() == part).toList();
        if (own.stream().anyMatch(Place::thrust)) {
            return false;
        }
        boolean lastOfPart = index + 1 == layout.bearings().size() || layout.bearings().get(index + 1).part() != part;
        boolean firstOfPart = index == 0 || layout.bearings().get(index - 1).part() != part;
        boolean driven = part == layout.parts().size() - 1 && layout.parts().size() > 1;
        return driven && !layout.parts().get(part).overhung() ? firstOfPart : lastOfPart;
    }

    /** Its own rotor, or that of a part without bearings behind it, as an impeller on the shaft of a motor. */
    private static boolean carriesOverhung(MachineLayout layout, int part) {
        List<Part> parts = layout.parts();
        boolean carried = part + 1 < parts.size() && parts.get(part + 1).link() == Link.COMMON_SHAFT
                && layout.bearings().stream().noneMatch(each -> each.part() == part + 1);
        return parts.get(part).overhung() || carried && parts.get(part + 1).overhung();
    }

    private static boolean touchesBelt(MachineLayout layout, int part) {
        List<Part> parts = layout.parts();
        return parts.get(part).link() == Link.BELT || part + 1 < parts.size() && parts.get(part
                + 1).link() == Link.BELT;
    }

    private static List<String> notes(MachineLayout layout) {
        List<String> notes = new ArrayList<>();
        notes.add("measure on stiff parts of the housing near the load path, not on covers or thin panels; mark each"
                + " point"
                + " and use the same one every time");
        notes.add("note speed, load, temperature and time with each measurement");
        notes.add("one mark per turn on each shaft that turns at its own speed, for phase and balancing");
        if (layout.bearings().stream().anyMatch(place -> place.type() == BearingType.ROLLING)) {
            notes.add("at rolling bearings record acceleration up to 10 kHz or more, for the defects of races and"
                    + " rolling elements");
        }
        if (layout.parts().stream().anyMatch(part -> part.link() == Link.GEAR)) {
            notes.add("at gears record acceleration past three times the mesh frequency, axially too where teeth are"
                    + " helical (common practice, no source)");
        }
        return notes;
    }

    /**
     * Returns the points in the order of the bearings.
     *
     * @return unmodifiable list
     */
    public List<PlannedPoint> points() {
        return points;
    }

    /**
     * Returns the points that are wanted for one reason, not those wanted more or less.
     *
     * @param need how much they are wanted
     * @return unmodifiable list in the order of the bearings
     */
    public List<PlannedPoint> points(Need need) {
        Objects.requireNonNull(need, "need");
        return points.stream().filter(point -> point.need() == need).toList();
    }

    /**
     * Returns what holds for all points.
     *
     * @return unmodifiable list of phrases
     */
    public List<String> notes() {
        return notes;
    }

    /**
     * Writes the plan in full: points, notes, cautions.
     *
     * @return several lines without a line break at the end
     */
    public String describe() {
        List<String> lines = new ArrayList<>();
        lines.add(layout + "; bearings counted from the free end of the driver, sides as seen from there");
        points.forEach(point -> lines.add("  " + point));
        notes.forEach(note -> lines.add("note: " + note));
        WorkCautions.list().forEach(caution -> lines.add("caution: " + caution));
        return String.join("\n", lines);
    }

    /** Two plans are equal if their layouts are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof MeasuringPlan plan && layout.equals(plan.layout);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(layout);
    }

    /** Returns the names of the points, as in {@code 1H 1V 1A 2H 2V 2A}. */
    @Override
    public String toString() {
        return String.join(" ", points.stream().map(PlannedPoint::id).toList());
    }
}
