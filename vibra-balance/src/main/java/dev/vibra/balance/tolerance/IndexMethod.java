package dev.vibra.balance.tolerance;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * Index method: a part is turned on the rotor, usually by 180°, and what turned with it is its own unbalance and the
 * error of its fit.
 *
 * <p>{@code before = rotor + part}, {@code after = rotor + part·exp(iφ)}.
 *
 * @param rotor unbalance that stayed with the rotor, kg·m
 * @param part unbalance that turned with the part, kg·m, in its first place
 * @see "ISO 21940-14, index balancing as a way to find errors of fit"
 */
public record IndexMethod(Phasor rotor, Phasor part) implements Serializable {
    /**
     * Checks the parts.
     *
     * @param rotor unbalance that stayed with the rotor, kg·m
     * @param part unbalance that turned with the part, kg·m, in its first place
     */
    public IndexMethod {
        Objects.requireNonNull(rotor, "rotor");
        Objects.requireNonNull(part, "part");
    }

    /**
     * Separates two measurements, the part turned by 180° between them.
     *
     * @param before unbalance with the part in its first place, kg·m
     * @param after unbalance with the part turned, kg·m
     * @return half the sum and half the difference
     */
    public static IndexMethod of(Phasor before, Phasor after) {
        Objects.requireNonNull(before, "before");
        return new IndexMethod(before.plus(after).times(0.5), before.minus(after).times(0.5));
    }

    /**
     * Separates two measurements, the part turned by any angle between them.
     *
     * @param before unbalance with the part in its first place, kg·m
     * @param after unbalance with the part turned, kg·m
     * @param turnDegrees angle of the turn with rotation in degrees, at least 30 away from a full turn
     * @return unbalance of rotor and part
     * @throws IllegalArgumentException if the turn is too small to tell the two apart
     */
    public static IndexMethod of(Phasor before, Phasor after, double turnDegrees) {
        Objects.requireNonNull(before, "before");
        Objects.requireNonNull(after, "after");
        Require.finite("turn", turnDegrees);
        Phasor moved = Phasor.ONE.minus(Phasor.polar(1, Math.toRadians(turnDegrees)));
        if (!(moved.magnitude() >= 2 * Math.sin(Math.toRadians(15)) - 1e-12)) {
            throw Require.failure("turn", "at least 30° away from a full turn", turnDegrees);
        }
        Phasor part = before.minus(after).dividedBy(moved);
        return new IndexMethod(before.minus(part), part);
    }

    /** Returns both unbalances. */
    @Override
    public String toString() {
        return "rotor " + Digits.significant(rotor.magnitude() * 1e6, 3) + " g·mm, part "
                + Digits.significant(part.magnitude() * 1e6, 3) + " g·mm";
    }
}
