package dev.vibra.simulation;

import java.util.ArrayList;
import java.util.List;

/**
 * How the housings of a machine answer to forces: the receptance {@code H_ij = Σ φ_i·φ_j / (m·(ω_n² - ω² + 2iζ·ω_n·ω))}
 * summed over modes that couple directions and housings. Immutable.
 *
 * @see "D. J. Ewins, Modal Testing, 2nd ed. 2000, chapter 2: receptance of a system with proportional damping (from
 *     memory, unverified)"
 */
final class Structure {
    /**
     * A natural mode.
     *
     * @param hertz undamped natural frequency in Hz
     * @param damping damping ratio
     * @param mass modal mass in kg
     * @param shape displacement of each degree of freedom, three for each housing
     */
    record Mode(double hertz, double damping, double mass, double[] shape) {
        Mode at(double newHertz, double newDamping) {
            return new Mode(newHertz, newDamping, mass, shape);
        }
    }

    private final List<Mode> modes;

    private Structure(List<Mode> modes) {
        this.modes = List.copyOf(modes);
    }

    static Structure of(List<Mode> modes) {
        return new Structure(modes);
    }

    List<Mode> modes() {
        return modes;
    }

    Structure with(Mode mode) {
        List<Mode> more = new ArrayList<>(modes);
        more.add(mode);
        return new Structure(more);
    }

    Structure with(int index, Mode mode) {
        List<Mode> changed = new ArrayList<>(modes);
        changed.set(index, mode);
        return new Structure(changed);
    }

    /**
     * Works out displacements.
     *
     * @param excitation forces
     * @param hertz their frequency, &gt; 0
     * @return real and imaginary part of the displacement of each degree of freedom in m per N
     */
    double[][] respond(Excitation excitation, double hertz) {
        int size = excitation.size();
        double[][] motion = new double[2][size];
        double omega = 2 * Math.PI * hertz;
        for (Mode mode : modes) {
            double re = 0;
            double im = 0;
            for (int i = 0; i < size; i++) {
                re += mode.shape[i] * excitation.re(i);
                im += mode.shape[i] * excitation.im(i);
            }
            double natural = 2 * Math.PI * mode.hertz;
            double stiff = mode.mass * (natural * natural - omega * omega);
            double loss = mode.mass * 2 * mode.damping * natural * omega;
            double square = stiff * stiff + loss * loss;
            double qRe = (re * stiff + im * loss) / square;
            double qIm = (im * stiff - re * loss) / square;
            for (int i = 0; i < size; i++) {
                motion[0][i] += mode.shape[i] * qRe;
                motion[1][i] += mode.shape[i] * qIm;
            }
        }
        return motion;
    }

    /** Returns the number of modes. */
    @Override
    public String toString() {
        return modes.size() + " modes";
    }
}
