package dev.vibra.speedrun;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.OrderVector;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.complex.Complex;

/**
 * Forward model of a run-up or coast-down: modes that an unbalance drives, quasi-steady at each speed, a runout or bow
 * that doesn't depend on speed, and noise. At the speed f a mode of natural frequency fn and damping ratio ζ answers
 * with {@code e·r²/(1 - r² + 2iζr), r = f/fn}. A run that is fast against the ringing of a mode differs from this.
 * Immutable.
 *
 * @see "S. S. Rao, Mechanical Vibrations, section on rotating unbalance"
 */
public final class RunModel implements Serializable {
    /** Forty minutes at 2,560 Hz; a model is no store. */
    private static final int MOST_SAMPLES = 6_000_000;
    private static final long serialVersionUID = 1;

    private final SpeedProfile profile;
    private final List<Mode> modes;
    private final OrderVector runout;
    private final double noiseRms;
    private final long seed;

    /** One mode; the lag turns its excitation. */
    private record Mode(double metres, double naturalHertz, double dampingRatio, double lagRadians)
            implements Serializable {
        private Mode {
            Require.notNegative("eccentricityMetres", metres, "m");
            Require.positive("naturalHertz", naturalHertz, "Hz");
            if (!(dampingRatio > 0 && dampingRatio < 1)) {
                throw Require.failure("dampingRatio", "above 0 and below 1", dampingRatio);
            }
            Require.finite("lagDegrees", lagRadians);
        }

        Complex at(double hertz) {
            double r = hertz / naturalHertz;
            return new Complex(metres * r * r * Math.cos(lagRadians), -metres * r * r * Math.sin(lagRadians))
                    .divide(new Complex(1 - r * r, 2 * dampingRatio * r));
        }
    }

    private RunModel(SpeedProfile profile, List<Mode> modes, OrderVector runout, double noiseRms, long seed) {
        this.profile = Objects.requireNonNull(profile, "profile");
        this.modes = Require.copy("modes", modes);
        this.runout = Objects.requireNonNull(runout, "runout");
        this.noiseRms = Require.notNegative("noiseRms", noiseRms, "m");
        this.seed = seed;
    }

    private Object readResolve() {
        return new RunModel(profile, modes, runout, noiseRms, seed);
    }

    /**
     * Begins a model of a rotor that doesn't move.
     *
     * @param profile speed over time
     * @return the model
     */
    public static RunModel of(SpeedProfile profile) {
        return new RunModel(profile, List.of(), new OrderVector(0, 0), 0, 0);
    }

    /**
     * Adds a mode that unbalance drives.
     *
     * @param eccentricityMetres distance e of the centre of mass from the axis in m, finite, zero or more
     * @param naturalHertz undamped natural frequency in Hz, finite, above zero
     * @param dampingRatio damping ratio ζ, above 0, below 1
     * @param lagDegrees where the heavy spot lies, in degrees of lag behind the mark, finite
     * @return the model
     * @throws IllegalArgumentException if an argument is out of range
     */
    public RunModel withMode(double eccentricityMetres, double naturalHertz, double dampingRatio, double lagDegrees) {
        List<Mode> more = new ArrayList<>(modes);
        more.add(new Mode(eccentricityMetres, naturalHertz, dampingRatio, Math.toRadians(lagDegrees)));
        return new RunModel(profile, more, runout, noiseRms, seed);
    }

    /**
     * Sets what a displacement probe reads once per turn at any speed: a runout of its track or a bow of the shaft.
     *
     * @param runout the vector, amplitude in m
     * @return the model
     */
    public RunModel withRunout(OrderVector runout) {
        return new RunModel(profile, modes, runout, noiseRms, seed);
    }

    /**
     * Sets white noise.
     *
     * @param rms rms in the SI unit of what is made, finite, zero or more
     * @param seed seed of the noise
     * @return the model
     * @throws IllegalArgumentException if the rms is out of range
     */
    public RunModel withNoise(double rms, long seed) {
        return new RunModel(profile, modes, runout, rms, seed);
    }

    /**
     * Returns the vector once per turn of steady running at a speed.
     *
     * @param speed speed of rotation
     * @return displacement in m, zero-to-peak, with its lag behind the mark
     */
    public OrderVector displacementAt(RotationSpeed speed) {
        Complex sum = complexAt(Objects.requireNonNull(speed, "speed").hertz(), Quantity.DISPLACEMENT);
        return new OrderVector(sum.abs(), -sum.getArgument());
    }

    private Complex complexAt(double hertz, Quantity quantity) {
        Complex sum = Complex.ZERO;
        for (Mode mode : modes) {
            sum = sum.add(mode.at(hertz));
        }
        Complex still = new Complex(runout.amplitude() * Math.cos(runout.lagRadians()),
                -runout.amplitude() * Math.sin(runout.lagRadians()));
        int derivatives = -Quantity.DISPLACEMENT.integrationsTo(quantity);
        sum = derivatives == 0 ? sum.add(still) : sum;
        for (int i = 0; i < derivatives; i++) {
            sum = sum.multiply(new Complex(0, 2 * Math.PI * hertz));
        }
        return sum;
    }

    /**
     * Makes the recording of a sensor; only a displacement has the runout.
     *
     * @param quantity displacement, velocity or acceleration
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @return the recording
     * @throws IllegalArgumentException if the quantity is no motion or the rate leaves no sample or too many
     */
    public Waveform recording(Quantity quantity, double sampleRateHertz) {
        Quantity.DISPLACEMENT.integrationsTo(Objects.requireNonNull(quantity, "quantity"));
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        int count = (int) Require.within("number of samples", Math.rint(profile.seconds() * sampleRateHertz), 1,
                MOST_SAMPLES, "");
        double[] samples = new double[count];
        for (int i = 0; i < count; i++) {
            double time = Math.min(i / sampleRateHertz, profile.seconds());
            Complex vector = complexAt(profile.speedAt(time).hertz(), quantity);
            double angle = 2 * Math.PI * profile.revolutionsAt(i / sampleRateHertz);
            samples[i] = vector.getReal() * StrictMath.cos(angle) - vector.getImaginary() * StrictMath.sin(angle);
        }
        Waveform clean = Waveform.ofSi(quantity, sampleRateHertz, samples);
        return noiseRms == 0 ? clean
                : Synthesis.silence(quantity, sampleRateHertz, count).noise(noiseRms, seed).plus(clean).waveform();
    }

    /**
     * Makes the recording of the tachometer, one pulse per turn.
     *
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @return the recording, in V
     * @throws IllegalArgumentException if the rate leaves no sample or too many
     */
    public Waveform tachometer(double sampleRateHertz) {
        Require.within("number of samples", Math.rint(profile.seconds() * Require.positive("sampleRateHertz",
                sampleRateHertz, "Hz")), 1, MOST_SAMPLES, "");
        return profile.tachometer(sampleRateHertz, 1);
    }

    /** {@return the speed over time} */
    public SpeedProfile profile() {
        return profile;
    }

    /** Returns speeds and number of modes. */
    @Override
    public String toString() {
        return profile + ", " + modes.size() + (modes.size() == 1 ? " mode" : " modes");
    }
}
