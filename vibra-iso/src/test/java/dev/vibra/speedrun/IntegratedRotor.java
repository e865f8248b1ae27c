package dev.vibra.speedrun;

import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.SpeedProfile;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.ClassicalRungeKuttaIntegrator;

/**
 * A rotor on a spring whose equation of motion is integrated while its speed changes, by Commons Math: nothing here is
 * quasi-steady. {@code x'' + 2ζω·x' + ω²·x = e·(θ'²·cos θ + θ''·sin θ)}, the pull of an unbalance on an axis that is
 * driven at the angle θ.
 *
 * @param profile speed over time, linear
 * @param metres eccentricity
 * @param natural natural frequency in Hz
 * @param damping damping ratio
 */
record IntegratedRotor(SpeedProfile profile, double metres, double natural, double damping)
        implements FirstOrderDifferentialEquations {
    @Override
    public int getDimension() {
        return 2;
    }

    @Override
    public void computeDerivatives(double time, double[] y, double[] slope) {
        double turning = 2 * Math.PI * profile.speedAt(Math.max(0, Math.min(profile.seconds(), time))).hertz();
        double gaining = 2 * Math.PI * (profile.to().hertz() - profile.from().hertz()) / profile.seconds();
        double angle = 2 * Math.PI * profile.revolutionsAt(time);
        double omega = 2 * Math.PI * natural;
        slope[0] = y[1];
        slope[1] = metres * (turning * turning * Math.cos(angle) + gaining * Math.sin(angle))
                - 2 * damping * omega * y[1] - omega * omega * y[0];
    }

    /** The motion from steady running at the first speed on. */
    Waveform displacement(double rate) {
        double r = profile.from().hertz() / natural;
        double size = metres * r * r / Math.hypot(1 - r * r, 2 * damping * r);
        double lag = Math.atan2(2 * damping * r, 1 - r * r);
        double[] state = {size * Math.cos(lag), size * 2 * Math.PI * profile.from().hertz() * Math.sin(lag)};
        double[] samples = new double[(int) Math.rint(profile.seconds() * rate)];
        ClassicalRungeKuttaIntegrator steps = new ClassicalRungeKuttaIntegrator(1 / rate);
        for (int i = 0; i < samples.length; i++) {
            samples[i] = state[0];
            state = steps.singleStep(this, i / rate, state, (i + 1) / rate);
        }
        return Waveform.ofSi(Quantity.DISPLACEMENT, rate, samples);
    }
}
