package dev.vibra.diagnosis.study;

import java.util.List;
import java.util.SplittableRandom;

/**
 * Force of two wheels in mesh: stiffness that changes as each tooth passes, errors of the teeth of both wheels, load that
 * swings with run-out of the wheels. A bad tooth loosens the mesh while it is in and knocks as it comes in.
 */
final class MeshForce implements Source {
    private final Tap action;
    private final List<Tap> knocks;
    private final double ratio;
    private final double[][] errors;
    private final double[] profile;
    private final double[] turns;
    private final double[] runOut;
    private final int badWheel;
    private final double badness;
    private final double ring;

    /** What the force is made of. */
    record Design(double[] profile, double spread, double[] runOut, int badWheel, double badness, double ring) {}

    MeshForce(Tap action, List<Tap> knocks, double ratio, int[] teeth, Design design, SplittableRandom random) {
        this.action = action;
        this.knocks = knocks;
        this.ratio = ratio;
        this.errors = new double[][] {errors(teeth[0], design.spread(), random), errors(teeth[1], design.spread(), random)};
        this.profile = design.profile();
        this.turns = random.doubles(8).toArray();
        this.runOut = design.runOut();
        this.badWheel = design.badWheel();
        this.badness = design.badness();
        this.ring = design.ring();
    }

    private static double[] errors(int teeth, double spread, SplittableRandom random) {
        double[] errors = new double[teeth];
        for (int i = 0; i < teeth; i++) {
            errors[i] = spread * random.nextGaussian();
        }
        return errors;
    }

    @Override
    public void addTo(Forces forces, double factor) {
        double[] shaft = forces.clock().shaft();
        double[] force = forces.along(action);
        double[][] hits = knocks.stream().map(forces::along).toArray(double[][]::new);
        long before = 0;
        for (int i = 0; i < force.length; i++) {
            double teeth = shaft[i] * ratio * errors[0].length;
            long tooth = (long) Math.floor(teeth);
            double now = factor * at(teeth, tooth);
            force[i] += now;
            boolean entering = tooth != before && badWheel >= 0 && tooth % errors[badWheel].length == 0;
            for (double[] hit : hits) {
                hit[i] += ring * now * 0.05 + (entering && i > 0 ? factor * badness * ring * 30 : 0);
            }
            before = tooth;
        }
    }

    /** Force at a place of the mesh, counted in teeth. */
    double at(double teeth, long tooth) {
        double in = teeth - tooth;
        double sum = 0;
        for (int h = 0; h < profile.length; h++) {
            sum += profile[h] * Sine.cos((h + 1) * in + turns[h]);
        }
        double load = 1;
        for (int wheel = 0; wheel < 2; wheel++) {
            load += runOut[wheel] * Sine.cos(teeth / errors[wheel].length + turns[4 + wheel]);
        }
        double error = 0;
        for (double[] wheel : errors) {
            int now = (int) (tooth % wheel.length);
            error += wheel[now] + in * (wheel[(now + 1) % wheel.length] - wheel[now]);
        }
        boolean bad = badWheel >= 0 && tooth % errors[badWheel].length == 0;
        return sum * load * (bad ? 1 - badness : 1) + error - (bad ? 2 * badness * Math.sin(Math.PI * in) : 0);
    }
}
