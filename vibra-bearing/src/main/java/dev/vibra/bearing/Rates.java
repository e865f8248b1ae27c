package dev.vibra.bearing;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** The rates of rotation that modulate a bearing's signal, and the lines that they explain. */
final class Rates {
    /** Sidebands at the speed of a ring are looked for up to this order, at the cage rate up to two. */
    private static final int SHAFT_SIDEBANDS = 3;
    private static final int CAGE_SIDEBANDS = 2;

    private final double[] rings;
    private final double cage;
    private final double highest;

    /**
     * Keeps the rates.
     *
     * @param rings speeds of the rings that turn, Hz
     * @param cage rate of the cage, Hz
     * @param highest highest frequency that matters, Hz
     */
    Rates(double[] rings, double cage, double highest) {
        this.rings = rings.clone();
        this.cage = cage;
        this.highest = highest;
    }

    double[] rings() {
        return rings.clone();
    }

    /** Multiples of half of each speed: a loose or rubbing machine shows the halves too. */
    DoubleStream halves() {
        return Arrays.stream(rings).flatMap(ring -> IntStream.rangeClosed(1, (int) (2 * highest / ring))
                .mapToDouble(n -> 0.5 * n * ring));
    }

    /**
     * Harmonics of an element's rate with the sidebands that rotation puts about them. Those of the cage go without: so close
     * together they would explain everything.
     */
    DoubleStream ofFamily(BearingElement element, double hertz) {
        DoubleStream harmonics = IntStream.rangeClosed(1, (int) Math.ceil(highest / hertz)).mapToDouble(h -> h * hertz);
        return element == BearingElement.CAGE ? harmonics : harmonics.flatMap(f -> DoubleStream.concat(about(f, cage, CAGE_SIDEBANDS),
                        Arrays.stream(rings).flatMap(ring -> about(f, ring, SHAFT_SIDEBANDS))));
    }

    private static DoubleStream about(double hertz, double spacing, int orders) {
        return IntStream.rangeClosed(-orders, orders).mapToDouble(n -> Math.abs(hertz + n * spacing));
    }

    /** Places where the sidebands of an element's rate would have their own fundamental. */
    DoubleStream shifted(BearingElement element, double hertz) {
        DoubleStream byRings = Arrays.stream(rings).flatMap(ring -> about(hertz, ring, SHAFT_SIDEBANDS));
        DoubleStream all = element == BearingElement.CAGE ? byRings
                : DoubleStream.concat(byRings, about(hertz, cage, CAGE_SIDEBANDS));
        return all.filter(f -> Math.abs(f - hertz) > 1e-9 * hertz);
    }
}
