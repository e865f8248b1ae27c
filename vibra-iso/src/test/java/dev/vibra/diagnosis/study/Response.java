package dev.vibra.diagnosis.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Motion of a structure by its modes, each stepped exactly for a force that runs straight from sample to sample. Contacts
 * push back by the motion of the same step, constant within it.
 */
final class Response {
    private static final int BLOCK = 1024;
    private static final int FINEST = 48;
    /** No machine reaches such an acceleration in m/s². */
    private static final double MOST = 1e5;

    private final Modes modes;
    private final Forces forces;
    private final double rate;

    Response(Modes modes, Forces forces) {
        this.modes = modes;
        this.forces = forces;
        this.rate = forces.clock().rate();
    }

    /** Accelerations along motions without contacts, or velocities, from a sample on. */
    double[][] of(List<Tap> sensors, int from, boolean velocity) {
        int length = forces.clock().length();
        double[][] out = new double[sensors.size()][length - from];
        List<Mode> all = modesThat(sensors);
        double[][] force = forces.samples().values().toArray(double[][]::new);
        double[] push = new double[BLOCK + 1];
        for (int begin = 0; begin < length; begin += BLOCK) {
            int size = Math.min(BLOCK, length - begin);
            for (Mode mode : all) {
                mode.push(force, begin, Math.min(size + 1, length - begin), push);
                mode.move(push, size, velocity);
                mode.show(push, begin, size, from, out);
            }
        }
        return out;
    }

    /** Modes that something pushes and a sensor sees. */
    private List<Mode> modesThat(List<Tap> sensors) {
        double[][] drive = forces.samples().keySet().stream().map(modes::gains).toArray(double[][]::new);
        double[][] seen = sensors.stream().map(modes::gains).toArray(double[][]::new);
        List<Mode> all = new ArrayList<>();
        for (int mode = 0; mode < modes.count(); mode++) {
            double[] in = column(drive, mode);
            double[] out = column(seen, mode);
            if (any(in) && any(out)) {
                all.add(new Mode(modes.omegas()[mode], modes.ratios()[mode], 1 / rate, in, out));
            }
        }
        return all;
    }

    private static double[] column(double[][] gains, int mode) {
        return Arrays.stream(gains).mapToDouble(one -> Math.abs(one[mode]) > 1e-12 ? one[mode] : 0).toArray();
    }

    private static boolean any(double[] gains) {
        return Arrays.stream(gains).anyMatch(one -> one != 0);
    }

    /** One mode on its way. */
    private static final class Mode {
        private final ModeStep step;
        private final double stiffness;
        private final double damping;
        private final double[] in;
        private final double[] out;
        private double x;
        private double v;

        Mode(double omega, double ratio, double seconds, double[] in, double[] out) {
            step = ModeStep.of(omega, ratio, seconds);
            stiffness = omega * omega;
            damping = 2 * ratio * omega;
            this.in = in;
            this.out = out;
        }

        void push(double[][] force, int begin, int size, double[] push) {
            Arrays.fill(push, 0);
            for (int c = 0; c < force.length; c++) {
                if (in[c] != 0) {
                    add(in[c], force[c], begin, push, 0, size);
                }
            }
        }

        /** Turns forces into motions in place. */
        void move(double[] push, int size, boolean velocity) {
            for (int i = 0; i < size; i++) {
                double f = push[i];
                push[i] = velocity ? v : f - damping * v - stiffness * x;
                double rise = push[i + 1] - f;
                double next = step.xx() * x + step.xv() * v + step.xf() * f + step.xr() * rise;
                v = step.vx() * x + step.vv() * v + step.vf() * f + step.vr() * rise;
                x = next;
            }
        }

        void show(double[] motion, int begin, int size, int from, double[][] sensors) {
            int first = Math.max(0, from - begin);
            for (int sensor = 0; sensor < out.length; sensor++) {
                if (out[sensor] != 0 && first < size) {
                    add(out[sensor], motion, first, sensors[sensor], begin - from + first, size - first);
                }
            }
        }

        private static void add(double gain, double[] what, int at, double[] to, int place, int size) {
            for (int i = 0; i < size; i++) {
                to[place + i] += gain * what[at + i];
            }
        }
    }

    /**
     * Accelerations with a contact, each sample in some smaller steps; the mean over the sample is the change of velocity.
     * A contact too stiff for its steps is gone through in smaller ones.
     */
    double[][] with(Contact contact, List<Tap> sensors, int from, int steps) {
        double[][] out = new TouchedResponse(modes, forces, contact, steps).of(sensors, from);
        boolean diverged = Arrays.stream(out).anyMatch(one -> !(Math.abs(one[one.length - 1]) < MOST));
        return diverged && steps < FINEST ? with(contact, sensors, from, 4 * steps) : out;
    }
}
