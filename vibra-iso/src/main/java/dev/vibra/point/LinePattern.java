package dev.vibra.point;

import dev.vibra.descriptor.NamedLine;
import dev.vibra.internal.Require;
import dev.vibra.machine.Rate;
import dev.vibra.quantity.Band;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a recording says beyond levels and lines, asked for by hypotheses of faults: vectors, halves, sidebands, the
 * shape of the wave, knocks per turn, noise. Immutable; what could not be worked out is missing, with the reason.
 */
public final class LinePattern implements Serializable {
    private static final long serialVersionUID = 1;

    private final Parts parts;

    private LinePattern(Parts parts) {
        this.parts = Objects.requireNonNull(parts, "parts");
    }

    private Object readResolve() {
        return new LinePattern(parts);
    }

    /** Nullable where a part could not be worked out. */
    record Parts(List<LinePhasor> phasors, List<NamedLine> halves, List<Sidebands> sidebands, NamedLine twiceLine,
            String twiceLineObstacle, List<Integer> mixedOrders, Double wander, Double flattening,
            List<TurnKnocks> knocks, List<BandNoise> noise, List<Double> steadyHertz) implements Serializable {
        Parts {
            phasors = Require.copy("phasors", phasors);
            halves = Require.copy("halves", halves);
            sidebands = Require.copy("sidebands", sidebands);
            Objects.requireNonNull(twiceLineObstacle, "twiceLineObstacle");
            mixedOrders = Require.copy("mixedOrders", mixedOrders);
            notNegative("wander", wander);
            notNegative("flattening", flattening);
            knocks = Require.copy("knocks", knocks);
            noise = Require.copy("noise", noise);
            steadyHertz = Require.copy("steadyHertz", steadyHertz);
        }

        private static void notNegative(String name, Double value) {
            if (value != null) {
                Require.notNegative(name, value, "");
            }
        }
    }

    /**
     * Acceleration noise in one octave, lines taken off.
     *
     * @param band octave
     * @param rms rms acceleration of the noise in the octave in m/s²
     */
    public record BandNoise(Band band, double rms) implements Serializable {
        /**
         * Checks the figure.
         *
         * @param band see the record
         * @param rms see the record
         */
        public BandNoise {
            Objects.requireNonNull(band, "band");
            Require.notNegative("rms", rms, "m/s²");
        }
    }

    /**
     * How far knocks come once in each turn of a shaft.
     *
     * @param shaft rate of the shaft
     * @param share part of the variance of the squared envelope at multiples of that rate, 0 to 1
     * @param multiples multiples of the rate, from the first, that stand out of the noise of the envelope's spectrum
     */
    public record TurnKnocks(Rate shaft, double share, int multiples) implements Serializable {
        /**
         * Checks the figures.
         *
         * @param shaft see the record
         * @param share see the record
         * @param multiples see the record
         */
        public TurnKnocks {
            Objects.requireNonNull(shaft, "shaft");
            Require.within("share", share, 0, 1, "");
            Require.atLeast("multiples", multiples, 0);
        }
    }

    static LinePattern of(Parts parts) {
        return new LinePattern(parts);
    }

    /** Nothing, and why. */
    static LinePattern none(String reason) {
        return new LinePattern(new Parts(List.of(), List.of(), List.of(), null, reason, List.of(), null, null,
                List.of(), List.of(), List.of()));
    }

    /**
     * Finds the vector of a multiple of the shaft speed.
     *
     * @param order multiple, 1 to 3
     * @return the vector, if the line stands and its phase is known
     */
    public Optional<LinePhasor> phasor(int order) {
        return parts.phasors.stream().filter(one -> one.order() == order).findFirst();
    }

    /** {@return lines at odd multiples of half the shaft speed, found or not; empty where they can't be parted} */
    public List<NamedLine> halves() {
        return parts.halves;
    }

    /** {@return lines beside other lines, one for each carrier and spacing that could be parted, found or not} */
    public List<Sidebands> sidebands() {
        return parts.sidebands;
    }

    /** {@return line at twice the line frequency, standing or not, parted from all multiples of the shaft speed} */
    public Optional<NamedLine> twiceLine() {
        return Optional.ofNullable(parts.twiceLine);
    }

    /** {@return why {@link #twiceLine()} is missing, without full stop; empty if it isn't} */
    public String twiceLineObstacle() {
        return parts.twiceLineObstacle;
    }

    /**
     * {@return multiples of the shaft speed that the recording doesn't part from twice the line frequency, so that
     * their line holds both; empty without line frequency}
     */
    public List<Integer> mixedOrders() {
        return parts.mixedOrders;
    }

    /**
     * {@return how far 1× wanders within the recording, noise taken off: with a tachometer the standard deviation of
     * the vector over its mean size; without one that of the size only, since a phase that wanders may be the speed's;
     * empty with fewer than 48 turns, or where 1× doesn't stand}
     */
    public OptionalDouble wander() {
        return parts.wander == null ? OptionalDouble.empty() : OptionalDouble.of(parts.wander);
    }

    /**
     * {@return how far the mean wave of a turn is flattened at one side: size of the skewness of the velocity that
     * repeats with the turn; empty if too short}
     */
    public OptionalDouble flattening() {
        return parts.flattening == null ? OptionalDouble.empty() : OptionalDouble.of(parts.flattening);
    }

    /** {@return knocks per turn of each shaft that the envelope could be examined for} */
    public List<TurnKnocks> knocks() {
        return parts.knocks;
    }

    /** {@return noise of the acceleration by octaves} */
    public List<BandNoise> noise() {
        return parts.noise;
    }

    /**
     * {@return frequencies in Hz of those of the largest lines that no rate of the machine explains and that hold amplitude
     * and phase from one moment to the next, as what turns does; a hump of noise at a resonance doesn't}
     */
    public List<Double> steadyHertz() {
        return parts.steadyHertz;
    }

    /** Returns how much there is. */
    @Override
    public String toString() {
        return "pattern: " + parts.phasors.size() + " vectors, " + parts.sidebands.size() + " carriers";
    }
}
