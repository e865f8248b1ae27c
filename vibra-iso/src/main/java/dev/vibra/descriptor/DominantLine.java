package dev.vibra.descriptor;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Level;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** One of the largest lines of a velocity spectrum, with its order and its name where the machine explains it. */
public final class DominantLine implements Serializable {
    private static final long serialVersionUID = 1;

    private final double hertz;
    private final Level level;
    private final Double order;
    private final String name;

    private DominantLine(double hertz, Level level, Double order, String name) {
        this.hertz = Require.positive("hertz", hertz, "Hz");
        this.level = Objects.requireNonNull(level, "level");
        this.order = order == null ? null : Double.valueOf(Require.positive("order", order, ""));
        this.name = name == null ? null : Require.notBlank("name", name);
    }

    private Object readResolve() {
        return new DominantLine(hertz, level, order, name);
    }

    /** A line; order and name are null where they aren't known. */
    static DominantLine of(double hertz, Level level, Double order, String name) {
        return new DominantLine(hertz, level, order, name);
    }

    /** {@return frequency in Hz} */
    public double hertz() {
        return hertz;
    }

    /** {@return rms velocity} */
    public Level level() {
        return level;
    }

    /** {@return frequency over the speed of the point's shaft, if that is known} */
    public OptionalDouble order() {
        return order == null ? OptionalDouble.empty() : OptionalDouble.of(order);
    }

    /** {@return what makes it, as in {@code blade passing}, where a rate of the machine explains it} */
    public Optional<String> name() {
        return Optional.ofNullable(name);
    }

    /** Returns frequency, order, level and name, as in {@code 148.5 Hz (6.00x) 5.00 mm/s rms, blade passing}. */
    @Override
    public String toString() {
        return Digits.significant(hertz, 4) + " Hz" + (order == null ? "" : " (" + Digits.significant(order, 3) + "x)")
                + " " + level + (name == null ? "" : ", " + name);
    }
}
