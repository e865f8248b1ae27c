package dev.vibra.machine;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/** A belt between two pulleys; its rate is {@code π·d/L} times the speed of the driving pulley. Immutable. */
public final class Belt implements Serializable {
    private static final long serialVersionUID = 1;

    /** No belt is longer, and no pulley a part of it. */
    private static final double MOST_METRES = 1e6;

    private final String id;
    private final double lengthMetres;
    private final double drivingPulleyMetres;
    private final double drivenPulleyMetres;
    private final String drivingShaft;

    private Belt(String id, double lengthMetres, double drivingPulleyMetres, double drivenPulleyMetres,
            String drivingShaft) {
        this.id = Require.notBlank("id", id);
        this.drivingPulleyMetres = Require.positive("drivingPulley", drivingPulleyMetres, "m");
        this.drivenPulleyMetres = Require.positive("drivenPulley", drivenPulleyMetres, "m");
        double shortest = Math.PI * Math.max(drivingPulleyMetres, drivenPulleyMetres);
        if (!(lengthMetres > shortest && lengthMetres < Double.POSITIVE_INFINITY)) {
            throw Require.failure("length", "longer than once around the larger pulley, " + shortest + " m",
                    lengthMetres);
        }
        Require.within("length", lengthMetres, 0, MOST_METRES, "m");
        Require.within("smaller pulley", Math.min(drivingPulleyMetres, drivenPulleyMetres), 1 / MOST_METRES, MOST_METRES,
                "m");
        this.lengthMetres = lengthMetres;
        this.drivingShaft = drivingShaft == null ? null : Require.notBlank("shaft", drivingShaft);
    }

    private Object readResolve() {
        return new Belt(id, lengthMetres, drivingPulleyMetres, drivenPulleyMetres, drivingShaft);
    }

    /**
     * Describes a belt.
     *
     * @param id id of the belt
     * @param lengthMetres length in m, more than once around the larger pulley
     * @param drivingPulleyMetres effective diameter of the driving pulley in m, &gt; 0
     * @param drivenPulleyMetres effective diameter of the driven pulley in m, &gt; 0
     * @return the belt, driven by the shaft that the speed of the machine is stated for
     */
    public static Belt of(String id, double lengthMetres, double drivingPulleyMetres, double drivenPulleyMetres) {
        return new Belt(id, lengthMetres, drivingPulleyMetres, drivenPulleyMetres, null);
    }

    /**
     * States the driving shaft.
     *
     * @param shaft id of the shaft
     * @return the belt with it
     */
    public Belt drivenBy(String shaft) {
        return new Belt(id, lengthMetres, drivingPulleyMetres, drivenPulleyMetres,
                Objects.requireNonNull(shaft, "shaft"));
    }

    /** {@return id of the belt} */
    public String id() {
        return id;
    }

    /** {@return id of the driving shaft, if stated} */
    public Optional<String> drivingShaft() {
        return Optional.ofNullable(drivingShaft);
    }

    /**
     * Works out how often the belt goes round.
     *
     * @param drivingHertz speed of the driving pulley in Hz
     * @return turns of the belt per second
     * @throws IllegalArgumentException if the speed is negative or no belt's
     */
    public double hertz(double drivingHertz) {
        return Require.finite("turns of the belt in Hz", Math.PI * drivingPulleyMetres
                * Require.notNegative("drivingHertz", drivingHertz, "Hz") / lengthMetres);
    }

    /** {@return turns of the driven pulley for one turn of the driving one, without slip} */
    public double ratio() {
        return drivingPulleyMetres / drivenPulleyMetres;
    }

    /** Returns id and sizes, as in {@code belt: 2400 mm, pulleys 200/300 mm}. */
    @Override
    public String toString() {
        return id + ": " + Digits.compact(1e3 * lengthMetres, 5) + " mm, pulleys "
                + Digits.compact(1e3 * drivingPulleyMetres, 5) + "/" + Digits.compact(1e3 * drivenPulleyMetres, 5)
                + " mm";
    }
}
