package dev.vibra.bearing.rival;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.internal.Require;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Sidebands that turning puts about the lines of a defect, by physics: a race is carried through the load zone by its
 * ring, and a load that turns with a ring passes a race that stands; a rolling element is carried round by the cage,
 * and strikes one race harder than the other, so that halves of its rate stand too.
 *
 * @see "P. D. McFadden, J. D. Smith, Model for the vibration produced by a single point defect in a rolling element
 *     bearing, Journal of Sound and Vibration 96 (1984) 69-82"
 */
public final class Modulation {
    private static final double MOST_HARMONICS = 1e6;
    private static final int RING_SIDEBANDS = 3;
    private static final int CAGE_SIDEBANDS = 2;

    private final double[] rings;
    private final KinematicFrequencies kinematics;
    private final double cage;
    private final double highest;

    private Modulation(double[] rings, KinematicFrequencies kinematics, double highest) {
        this.rings = rings;
        this.kinematics = kinematics;
        this.cage = kinematics.cageHertz();
        this.highest = highest;
    }

    /**
     * Keeps the rates that modulate.
     *
     * @param rotation speeds of the rings
     * @param kinematics rates of the bearing
     * @param highestHertz highest frequency that matters in Hz, finite, above zero
     * @return the sidebands
     * @throws IllegalArgumentException if the frequency is out of range
     */
    public static Modulation of(Rotation rotation, KinematicFrequencies kinematics, double highestHertz) {
        Objects.requireNonNull(kinematics, "kinematics");
        return new Modulation(Objects.requireNonNull(rotation, "rotation").hertz(), kinematics,
                Require.positive("highestHertz", highestHertz, "Hz"));
    }

    /**
     * Returns the lines that a defect explains. The cage goes without sidebands: so close together they would explain
     * everything.
     *
     * @param element element with the defect
     * @param hertz its rate as found in Hz, at least a millionth of the highest frequency that matters
     * @return frequencies in Hz
     * @throws IllegalArgumentException if the rate is out of range
     */
    public DoubleStream ofFamily(BearingElement element, double hertz) {
        return switch (Objects.requireNonNull(element, "element")) {
            case OUTER_RACE, INNER_RACE -> harmonics(hertz).flatMap(f -> Arrays.stream(sidebandsOfRace(f)));
            case ROLLING_ELEMENT -> harmonics(0.5 * hertz).flatMap(f -> about(f, cage, CAGE_SIDEBANDS));
            case CAGE -> harmonics(hertz);
        };
    }

    /**
     * Returns the lines that a defect makes in a load zone that stands still: without those of unequal elements and of
     * a load that turns, which are rare.
     *
     * @param element element with the defect
     * @param hertz its rate as found, Hz
     * @return frequencies in Hz
     */
    DoubleStream ofLoadZone(BearingElement element, double hertz) {
        boolean race = element == BearingElement.OUTER_RACE || element == BearingElement.INNER_RACE;
        double spacing = kinematics.modulationOf(element);
        return race ? harmonics(hertz).flatMap(f -> spacing > 0 ? about(f, spacing, RING_SIDEBANDS)
                : DoubleStream.of(f)) : ofFamily(element, hertz);
    }

    private double[] sidebandsOfRace(double hertz) {
        return DoubleStream.concat(about(hertz, cage, CAGE_SIDEBANDS),
                Arrays.stream(rings).flatMap(ring -> about(hertz, ring, RING_SIDEBANDS))).toArray();
    }

    private DoubleStream harmonics(double hertz) {
        Require.within("hertz", hertz, highest / MOST_HARMONICS, Double.MAX_VALUE, "Hz");
        return IntStream.rangeClosed(1, (int) Math.ceil(highest / hertz)).mapToDouble(h -> h * hertz);
    }

    private static DoubleStream about(double hertz, double spacing, int orders) {
        return IntStream.rangeClosed(-orders, orders).mapToDouble(n -> Math.abs(hertz + n * spacing));
    }

    /**
     * Returns the spacings at which a line may be a sideband of another, each with where the other would lie.
     *
     * @param element element that the line is taken for
     * @param hertz frequency of the line, Hz
     * @return places, each with its spacing
     */
    List<Carrier> carriers(BearingElement element, double hertz) {
        List<Carrier> carriers = new ArrayList<>();
        for (double ring : rings) {
            add(hertz, ring, RING_SIDEBANDS, carriers);
        }
        if (element != BearingElement.CAGE && cage > 0) {
            add(hertz, cage, CAGE_SIDEBANDS, carriers);
        }
        return carriers;
    }

    private static void add(double hertz, double spacing, int orders, List<Carrier> carriers) {
        about(hertz, spacing, orders).filter(f -> Math.abs(f - hertz) > 1e-9 * hertz)
                .forEach(f -> carriers.add(new Carrier(f, spacing)));
    }

    /**
     * A frequency that another would be a sideband of.
     *
     * @param hertz frequency in Hz
     * @param spacingHertz spacing of its sidebands in Hz
     */
    record Carrier(double hertz, double spacingHertz) {}

    /** Returns the rates. */
    @Override
    public String toString() {
        return "sidebands at " + Arrays.toString(rings) + " Hz and " + cage + " Hz";
    }
}
