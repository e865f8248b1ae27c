package dev.vibra.bearing.synthesis;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;

/**
 * What the machine around a bearing makes: noise, white or coloured, tones of the shaft and of gears.
 *
 * @param noiseRms standard deviation of the noise in m/s², finite, zero or more
 * @param noiseSlope exponent e of the density of the noise, which falls as {@code 1/f^e}; 0 (white) to 4
 * @param shaftAmplitude amplitude of the first of four shaft tones in m/s², the n-th being 1/n of it; zero or more
 * @param gears meshes, each with its sidebands
 */
public record Surroundings(double noiseRms, double noiseSlope, double shaftAmplitude, List<GearMesh> gears)
        implements Serializable {
    private static final long serialVersionUID = 1;
    private static final int SHAFT_TONES = 4;

    /**
     * Checks the values and copies the list.
     *
     * @param noiseRms see the record
     * @param noiseSlope see the record
     * @param shaftAmplitude see the record
     * @param gears see the record
     */
    public Surroundings {
        Require.notNegative("rms", noiseRms, "m/s²");
        Require.within("slope", noiseSlope, 0, 4, "");
        Require.notNegative("amplitude", shaftAmplitude, "m/s²");
        gears = Require.copy("gears", gears);
    }

    /**
     * Makes surroundings that are white noise only.
     *
     * @param rms standard deviation of the noise in m/s², finite, zero or more
     * @return the surroundings
     */
    public static Surroundings ofNoise(double rms) {
        return new Surroundings(rms, 0, 0, List.of());
    }

    /**
     * Returns these with noise of another level and slope.
     *
     * @param rms standard deviation in m/s², finite, zero or more
     * @param slope exponent e of the density {@code 1/f^e}, 0 (white) to 4
     * @return the surroundings
     */
    public Surroundings withNoise(double rms, double slope) {
        return new Surroundings(rms, slope, shaftAmplitude, gears);
    }

    /**
     * Returns these with tones at the first four multiples of the shaft speed, the n-th of amplitude 1/n.
     *
     * @param amplitude amplitude of the first in m/s², finite, zero or more
     * @return the surroundings
     */
    public Surroundings withShaftTones(double amplitude) {
        return new Surroundings(noiseRms, noiseSlope, amplitude, gears);
    }

    /**
     * Returns these with a mesh of gears, beside those they have.
     *
     * @param mesh mesh
     * @return the surroundings
     */
    public Surroundings withGear(GearMesh mesh) {
        List<GearMesh> more = new ArrayList<>(gears);
        more.add(Objects.requireNonNull(mesh, "mesh"));
        return new Surroundings(noiseRms, noiseSlope, shaftAmplitude, more);
    }

    /** Adds all of it to silence; the draws from the seeds keep their order, so that old seeds give old samples. */
    Synthesis addTo(Synthesis silence, double shaftHertz, double sampleRateHertz, SplittableRandom seeds) {
        Synthesis signal = addNoise(silence, seeds);
        for (int n = 1; n <= SHAFT_TONES && shaftAmplitude > 0; n++) {
            signal = signal.tone(shaftAmplitude / n, n * shaftHertz, 2 * Math.PI * seeds.nextDouble());
        }
        for (GearMesh mesh : gears) {
            signal = mesh.addTo(signal, sampleRateHertz);
        }
        return signal;
    }

    /** The same for a shaft of varying speed; rates of gears are those at its mean speed. */
    Synthesis addTo(Synthesis silence, SpeedProfile profile, double sampleRateHertz, SplittableRandom seeds) {
        Synthesis signal = addNoise(silence, seeds);
        for (int n = 1; n <= SHAFT_TONES && shaftAmplitude > 0; n++) {
            signal = signal.order(shaftAmplitude / n, n, profile, 2 * Math.PI * seeds.nextDouble());
        }
        for (GearMesh mesh : gears) {
            signal = mesh.addTo(signal, sampleRateHertz, profile);
        }
        return signal;
    }

    private Synthesis addNoise(Synthesis silence, SplittableRandom seeds) {
        long seed = seeds.nextLong();
        return noiseSlope == 0 ? silence.noise(noiseRms, seed) : silence.colouredNoise(noiseRms, noiseSlope, seed);
    }

    /** Returns the noise, as in {@code noise 1 m/s² rms}, and what else there is. */
    @Override
    public String toString() {
        return "noise " + Digits.compact(noiseRms, 3) + " m/s² rms"
                + (noiseSlope > 0 ? " falling as 1/f^" + Digits.compact(noiseSlope, 2) : "")
                + (shaftAmplitude > 0 ? ", shaft tones " + Digits.compact(shaftAmplitude, 3) + " m/s²" : "")
                + (gears.isEmpty() ? "" : ", " + gears.size() + (gears.size() == 1 ? " mesh" : " meshes"));
    }
}
