package dev.vibra.diagnosis.study;

import java.util.Arrays;
import java.util.List;

/** Motion of a structure that something touches, all its modes on their way together. */
final class TouchedResponse {
    private final Modes modes;
    private final double rate;
    private final Contact contact;
    private final int steps;
    private final double dt;
    private final ModeStep[] step;
    private final double[][] touch;
    private final double[][] drive;
    private final double[][] force;
    private final double[] x;
    private final double[] v;
    private final double[] places;
    private final double[] speeds;
    private final double[] back;

    TouchedResponse(Modes modes, Forces forces, Contact contact, int steps) {
        this.modes = modes;
        this.rate = forces.clock().rate();
        this.contact = contact;
        this.steps = steps;
        dt = 1 / (rate * steps);
        step = new ModeStep[modes.count()];
        Arrays.setAll(step, mode -> ModeStep.of(modes.omegas()[mode], modes.ratios()[mode], dt));
        touch = contact.taps().stream().map(modes::gains).toArray(double[][]::new);
        drive = forces.samples().keySet().stream().map(modes::gains).toArray(double[][]::new);
        force = forces.samples().values().toArray(double[][]::new);
        x = new double[modes.count()];
        v = new double[modes.count()];
        places = new double[touch.length];
        speeds = new double[touch.length];
        back = new double[touch.length];
    }

    double[][] of(List<Tap> sensors, int from) {
        int length = force[0].length;
        double[][] gains = sensors.stream().map(modes::gains).toArray(double[][]::new);
        double[][] out = new double[gains.length][length - from];
        double[] now = new double[modes.count()];
        double[] next = new double[modes.count()];
        double[] before = new double[modes.count()];
        outer(0, next);
        for (int i = 0; i < length; i++) {
            System.arraycopy(next, 0, now, 0, now.length);
            System.arraycopy(v, 0, before, 0, v.length);
            outer(Math.min(i + 1, length - 1), next);
            for (int sub = 0; sub < steps; sub++) {
                go(now, next, (sub + 0.5) / steps);
            }
            for (int sensor = 0; i >= from && sensor < out.length; sensor++) {
                out[sensor][i - from] = rate * (dot(gains[sensor], v) - dot(gains[sensor], before));
            }
        }
        return out;
    }

    /** One small step; the contact is felt where it will be in the middle of it. */
    private void go(double[] now, double[] next, double way) {
        for (int c = 0; c < touch.length; c++) {
            speeds[c] = dot(touch[c], v);
            places[c] = dot(touch[c], x) + speeds[c] * dt / 2;
        }
        contact.push(places, speeds, back);
        for (int mode = 0; mode < x.length; mode++) {
            double f = now[mode] + way * (next[mode] - now[mode]);
            for (int c = 0; c < touch.length; c++) {
                f += touch[c][mode] * back[c];
            }
            ModeStep s = step[mode];
            double place = s.xx() * x[mode] + s.xv() * v[mode] + s.xf() * f;
            v[mode] = s.vx() * x[mode] + s.vv() * v[mode] + s.vf() * f;
            x[mode] = place;
        }
    }

    /** Forces from outside on each mode at a sample. */
    private void outer(int sample, double[] sum) {
        Arrays.fill(sum, 0);
        for (int c = 0; c < force.length; c++) {
            double now = force[c][sample];
            double[] gains = drive[c];
            for (int mode = 0; mode < sum.length; mode++) {
                sum[mode] += gains[mode] * now;
            }
        }
    }

    private static double dot(double[] gains, double[] values) {
        double sum = 0;
        for (int mode = 0; mode < gains.length; mode++) {
            sum += gains[mode] * values[mode];
        }
        return sum;
    }
}
