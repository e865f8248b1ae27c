package dev.vibra.diagnosis.study;

/** Brings a natural frequency to a speed. */
final class Tuning {
    private Tuning() {}

    /** Changes the stiffness of some feet until a mode, in which a rotor takes most part, has a natural frequency. */
    static Structure to(double hertz, Structure sound, String feet, Rotor rotor) {
        double low = 0.03;
        double high = 30;
        Structure tuned = sound;
        for (int i = 0; i < 12; i++) {
            double factor = Math.sqrt(low * high);
            tuned = sound.with(one -> one.name().startsWith(feet), factor);
            if (moving(tuned, hertz, rotor) < hertz) {
                low = factor;
            } else {
                high = factor;
            }
        }
        return tuned;
    }

    /** Natural frequency of the mode below 1.6 times the target in which the rotor moves most. */
    private static double moving(Structure structure, double hertz, Rotor rotor) {
        Modes modes = structure.modes(f -> 0.03);
        double[] x = modes.gains(rotor.x(rotor.centre()));
        double[] y = modes.gains(rotor.y(rotor.centre()));
        double best = 0;
        double found = Double.POSITIVE_INFINITY;
        for (int mode = 0; mode < modes.count(); mode++) {
            double part = x[mode] * x[mode] + y[mode] * y[mode];
            if (modes.hertz(mode) < 1.6 * hertz && part > best) {
                best = part;
                found = modes.hertz(mode);
            }
        }
        return found;
    }
}
