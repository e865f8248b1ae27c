package dev.vibra.bearing.synthesis;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import java.io.Serializable;
import java.util.Objects;

/**
 * Tones of a pair of gears: the first three harmonics of the mesh, the n-th of amplitude 1/n, each swinging once a turn
 * of a shaft, so that it stands between sidebands of the depth times half its amplitude.
 *
 * @param meshHertz teeth that mesh per second, finite, above zero
 * @param amplitude amplitude of the first harmonic in m/s², finite, zero or more
 * @param shaftHertz turns per second of the shaft that modulates, finite, zero or more
 * @param depth depth of the modulation, 0 to 1
 * @see "R. B. Randall, A new method of modeling gear faults, Journal of Mechanical Design 104 (1982) 259-267: mesh
 *     harmonics and sidebands (from memory, unverified)"
 */
public record GearMesh(double meshHertz, double amplitude, double shaftHertz, double depth) implements Serializable {
    private static final long serialVersionUID = 1;
    private static final int HARMONICS = 3;

    /**
     * Checks the values.
     *
     * @param meshHertz see the record
     * @param amplitude see the record
     * @param shaftHertz see the record
     * @param depth see the record
     */
    public GearMesh {
        Require.positive("meshHertz", meshHertz, "Hz");
        Require.notNegative("amplitude", amplitude, "m/s²");
        Require.notNegative("shaftHertz", shaftHertz, "Hz");
        Require.within("depth", depth, 0, 1, "");
    }

    /**
     * Adds the harmonics that lie below half the sample rate.
     *
     * @param signal acceleration so far
     * @param sampleRateHertz its sample rate in Hz
     * @return the signal with the mesh
     */
    public Synthesis addTo(Synthesis signal, double sampleRateHertz) {
        Synthesis sum = Objects.requireNonNull(signal, "signal");
        for (int n = 1; n <= HARMONICS && n * meshHertz < sampleRateHertz / 2; n++) {
            sum = sum.modulatedTone(amplitude / n, n * meshHertz, shaftHertz, depth, 0);
        }
        return sum;
    }

    /**
     * Adds the harmonics that lie below half the sample rate, following a shaft of varying speed.
     *
     * @param signal acceleration so far
     * @param sampleRateHertz its sample rate in Hz
     * @param profile speed that mesh and modulating shaft follow; their rates are those at its mean
     * @return the signal with the mesh
     */
    public Synthesis addTo(Synthesis signal, double sampleRateHertz, SpeedProfile profile) {
        double mean = Objects.requireNonNull(profile, "profile").meanSpeed().hertz();
        double fastest = profile.fastest().hertz() / mean * (meshHertz + shaftHertz);
        Synthesis sum = Objects.requireNonNull(signal, "signal");
        for (int n = 1; n <= HARMONICS && n * fastest < sampleRateHertz / 2; n++) {
            sum = sum.order(amplitude / n, n * meshHertz / mean, profile, 0);
            if (shaftHertz > 0 && depth > 0) {
                sum = sum.order(0.5 * depth * amplitude / n, (n * meshHertz + shaftHertz) / mean, profile, 0)
                        .order(0.5 * depth * amplitude / n, Math.abs(n * meshHertz - shaftHertz) / mean, profile, 0);
            }
        }
        return sum;
    }

    /** Returns the mesh, as in {@code mesh 750 Hz, 2 m/s², swinging by 0.5 at 25 Hz}. */
    @Override
    public String toString() {
        return "mesh " + Digits.compact(meshHertz, 5) + " Hz, " + Digits.compact(amplitude, 3) + " m/s², swinging by "
                + Digits.compact(depth, 3) + " at " + Digits.compact(shaftHertz, 5) + " Hz";
    }
}
