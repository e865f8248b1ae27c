package dev.vibra.measuring;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * What the choice of measuring points needs to know of a machine train: its parts from the driver on, and their
 * bearings in the order in which the shaft passes them.
 *
 * <p>Immutable: {@code MachineLayout.of(Orientation.HORIZONTAL).withPart("motor").withBearing(BearingType.ROLLING)…}
 */
public final class MachineLayout implements Serializable {
    private static final long serialVersionUID = 1;

    /** One part; {@code link} is null for the driver. */
    record Part(String name, Link link, boolean overhung) implements Serializable {
        Part {
            name = Require.notBlank("name", name);
        }
    }

    /** One bearing with the place of its part. */
    record Place(int part, BearingType type, boolean thrust) implements Serializable {
        Place {
            Require.atLeast("part", part, 0);
            Objects.requireNonNull(type, "type");
        }
    }

    private final Orientation orientation;
    private final List<Part> parts;
    private final List<Place> bearings;

    private MachineLayout(Orientation orientation, List<Part> parts, List<Place> bearings) {
        this.orientation = Objects.requireNonNull(orientation, "orientation");
        this.parts = Require.copy("parts", parts);
        this.bearings = Require.copy("bearings", bearings);
        for (Place place : this.bearings) {
            Require.within("part of a bearing", place.part(), 0, parts.size() - 1.0, "");
        }
    }

    private Object readResolve() {
        return new MachineLayout(orientation, parts, bearings);
    }

    /**
     * Starts a train.
     *
     * @param orientation how the shaft lies
     * @return the layout without parts
     */
    public static MachineLayout of(Orientation orientation) {
        return new MachineLayout(orientation, List.of(), List.of());
    }

    /**
     * Adds the driver, or a part joined to the one before by a coupling; bearings added next belong to it.
     *
     * @param name as in {@code motor} or {@code pump}
     * @return the longer layout
     * @throws IllegalArgumentException if the name is blank or taken
     */
    public MachineLayout withPart(String name) {
        return withPart(name, Link.COUPLING);
    }

    /**
     * Adds a part; bearings added next belong to it.
     *
     * @param name as in {@code motor} or {@code pump}
     * @param link what joins it to the part before; not asked of the driver
     * @return the longer layout
     * @throws IllegalArgumentException if the name is blank or taken
     */
    public MachineLayout withPart(String name, Link link) {
        Objects.requireNonNull(link, "link");
        if (Objects.requireNonNull(name, "name").isBlank()) {
            throw new IllegalArgumentException("name must not be blank");
        }
        if (parts.stream().anyMatch(part -> part.name().equals(name.strip()))) {
            throw new IllegalArgumentException("name must not be taken: " + name);
        }
        List<Part> longer = new ArrayList<>(parts);
        longer.add(new Part(name.strip(), parts.isEmpty() ? null : link, false));
        return new MachineLayout(orientation, longer, bearings);
    }

    /**
     * Says that the rotor of the last part sits beyond its bearings, as a fan wheel or a pump impeller often does.
     *
     * @return the layout with that
     * @throws IllegalStateException if there is no part
     */
    public MachineLayout withOverhungRotor() {
        List<Part> changed = new ArrayList<>(parts);
        Part last = changed.remove(lastPart());
        changed.add(new Part(last.name(), last.link(), true));
        return new MachineLayout(orientation, changed, bearings);
    }

    /**
     * Adds the next bearing of the last part.
     *
     * @param type rolling or fluid film
     * @return the longer layout
     * @throws IllegalStateException if there is no part
     */
    public MachineLayout withBearing(BearingType type) {
        return withPlace(new Place(lastPart(), Objects.requireNonNull(type, "type"), false));
    }

    /**
     * Adds the next bearing of the last part, one that takes the thrust.
     *
     * @param type rolling or fluid film
     * @return the longer layout
     * @throws IllegalStateException if there is no part
     */
    public MachineLayout withThrustBearing(BearingType type) {
        return withPlace(new Place(lastPart(), Objects.requireNonNull(type, "type"), true));
    }

    private MachineLayout withPlace(Place place) {
        List<Place> longer = new ArrayList<>(bearings);
        longer.add(place);
        return new MachineLayout(orientation, parts, longer);
    }

    private int lastPart() {
        if (parts.isEmpty()) {
            throw new IllegalStateException("a part must be added first");
        }
        return parts.size() - 1;
    }

    /** {@return how the shaft lies} */
    public Orientation orientation() {
        return orientation;
    }

    /**
     * Returns the names of the parts from the driver on.
     *
     * @return unmodifiable list
     */
    public List<String> partNames() {
        return parts.stream().map(Part::name).toList();
    }

    List<Part> parts() {
        return parts;
    }

    List<Place> bearings() {
        return bearings;
    }

    /** Two layouts are equal if orientation, parts and bearings are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof MachineLayout layout && orientation == layout.orientation
                && parts.equals(layout.parts) && bearings.equals(layout.bearings);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(orientation, parts, bearings);
    }

    /** Returns the train, as in {@code horizontal: motor, pump; 4 bearings}. */
    @Override
    public String toString() {
        return (orientation == Orientation.HORIZONTAL ? "horizontal: " : "vertical: ")
                + (parts.isEmpty() ? "no part" : String.join(", ", partNames())) + "; " + bearings.size()
                + (bearings.size() == 1 ? " bearing" : " bearings");
    }
}
