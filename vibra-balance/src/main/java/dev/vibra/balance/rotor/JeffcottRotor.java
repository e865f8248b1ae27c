package dev.vibra.balance.rotor;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.Objects;

/**
 * One disc in the middle of a massless shaft, one plane and one sensor: {@code V/U = (ω²/m)/(ωₙ² − ω² + 2iζωₙω)}.
 *
 * <p>Far below the critical speed the vibration follows the heavy spot, at the undamped critical it lags by 90°, far
 * above by 180°.
 *
 * @param massKilograms mass of the disc in kg, finite, above zero
 * @param naturalHertz undamped natural frequency in Hz, finite, above zero
 * @param dampingRatio damping ratio, finite, above zero
 * @see "H. H. Jeffcott, The Lateral Vibration of Loaded Shafts, Phil. Mag. 37 (1919); S. S. Rao, Mechanical Vibrations,
 *     whirling of rotating shafts"
 */
public record JeffcottRotor(double massKilograms, double naturalHertz, double dampingRatio)
        implements Rotor, Serializable {
    /**
     * Checks the values.
     *
     * @param massKilograms mass of the disc in kg, finite, above zero
     * @param naturalHertz undamped natural frequency in Hz, finite, above zero
     * @param dampingRatio damping ratio, finite, above zero
     */
    public JeffcottRotor {
        Require.positive("mass", massKilograms, "kg");
        Require.positive("natural frequency", naturalHertz, "Hz");
        Require.positive("damping ratio", dampingRatio, "");
    }

    /**
     * Makes a rotor.
     *
     * @param massKilograms mass of the disc in kg, finite, above zero
     * @param naturalHertz undamped natural frequency in Hz, finite, above zero
     * @param dampingRatio damping ratio, finite, above zero
     * @return the rotor
     * @throws IllegalArgumentException if a value is out of range
     */
    public static JeffcottRotor of(double massKilograms, double naturalHertz, double dampingRatio) {
        return new JeffcottRotor(massKilograms, naturalHertz, dampingRatio);
    }

    /** Returns 1. */
    @Override
    public int planes() {
        return 1;
    }

    /** Returns 1. */
    @Override
    public int sensors() {
        return 1;
    }

    /** Returns the displacement of the disc per unbalance; the indices have to be 0. */
    @Override
    public Phasor displacementPerUnbalance(int sensor, int plane, RotationSpeed speed) {
        Objects.requireNonNull(speed, "speed");
        requireIndices(sensor, plane);
        double omega = speed.radiansPerSecond();
        double natural = 2 * Math.PI * naturalHertz;
        Phasor dynamic = new Phasor(natural * natural - omega * omega, 2 * dampingRatio * natural * omega);
        return new Phasor(omega * omega / massKilograms, 0).dividedBy(dynamic);
    }

    /** Returns mass, natural frequency and damping, as in {@code 12 kg disc, critical at 40 Hz, damping ratio 0.05}. */
    @Override
    public String toString() {
        return Digits.compact(massKilograms, 4) + " kg disc, critical at " + Digits.compact(naturalHertz, 4)
                + " Hz, damping ratio " + Digits.compact(dampingRatio, 3);
    }
}
