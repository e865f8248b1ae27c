package dev.vibra.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Makes the samples of all points of a scene. */
final class Recorder {
    private final Scene scene;
    private final List<Line> sound;
    private final List<Line> faulty;
    private final List<Line> before;
    private final List<Noise> noises = new ArrayList<>();
    private final Draws now;
    private final Draws then;
    private double knockDecibels = Double.NEGATIVE_INFINITY;

    Recorder(Scene scene, Draws draws) {
        this.scene = scene;
        for (PlanParts.Point point : scene.parts().points()) {
            noises.add(Noise.draw(draws, scene.parts().sampling().hertz(), point.limit()));
        }
        sound = scene.soundLines(scene.structure(), scene.sound().stream().map(cause -> 1.0).toList());
        // Standard deviation of the logarithm of a line's size from one day to another (an assumption).
        double daily = draws.logUniform(0.08, 0.4);
        before = scene.soundLines(scene.parts().structure(),
                scene.sound().stream().map(cause -> draws.logNormal(1, daily)).toList());
        faulty = scene.faultLines();
        now = draws.split();
        then = draws.split();
    }

    List<Line> lines() {
        List<Line> all = new ArrayList<>(sound);
        all.addAll(faulty);
        return all;
    }

    double[][] recordings() {
        double[][] samples = samples(lines(), now);
        for (Cause cause : scene.faulty()) {
            for (Knocks knocks : cause.knocks()) {
                add(knocks, samples);
            }
        }
        return samples;
    }

    double[][] references() {
        return samples(before, then);
    }

    private double[][] samples(List<Line> lines, Draws draws) {
        PlanParts.Sampling sampling = scene.parts().sampling();
        List<PlanParts.Point> points = scene.parts().points();
        double[][] samples = new double[points.size()][sampling.length()];
        double[] starts = points.stream().mapToDouble(PlanParts.Point::start).toArray();
        new LineBank(scene.mainHertz(), sampling.hertz(), draws).add(lines, starts, samples);
        for (int p = 0; p < samples.length; p++) {
            noises.get(p).addTo(samples[p], draws.split().source());
        }
        return samples;
    }

    /** At the housing they are felt fully, at the same part well, elsewhere hardly. */
    private void add(Knocks knocks, double[][] samples) {
        double[] train = knocks.train().samples(scene.parts().sampling().hertz(), samples[0].length, now.seed());
        List<PlanParts.Point> points = scene.parts().points();
        double square = 0;
        for (double x : train) {
            square += x * x / train.length;
        }
        for (int p = 0; p < samples.length; p++) {
            double gain = knocks.peak() * near(points.get(p).housing(), knocks.housing()) * points.get(p).factor();
            for (int i = 0; i < train.length; i++) {
                samples[p][i] += gain * train[i];
            }
            double over = 20 * StrictMath.log10(Math.abs(gain) * Math.sqrt(square) / noises.get(p).rms());
            knockDecibels = Math.max(knockDecibels, over);
        }
    }

    private double near(int one, int other) {
        boolean part = scene.parts().housings().get(one).part().equals(scene.parts().housings().get(other).part());
        return one == other ? now.uniform(0.6, 1) : part ? now.uniform(0.1, 0.5) : now.uniform(0.01, 0.12);
    }

    /** Of what was recorded last. */
    OptionalDouble decibels() {
        double most = Double.NEGATIVE_INFINITY;
        for (Line line : faulty) {
            double hertz = line.hertz(scene.mainHertz());
            for (int p = 0; p < noises.size(); p++) {
                most = Math.max(most, 20 * StrictMath.log10(line.amplitude(p) / Math.sqrt(2)
                        / noises.get(p).densityAt(hertz)));
            }
        }
        most = faulty.isEmpty() ? knockDecibels : most;
        return Double.isInfinite(most) ? OptionalDouble.empty() : OptionalDouble.of(most);
    }
}
