package dev.vibra.diagnosis.study;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Random forces, each with a density that falls beyond a corner of its own. */
final class Noise implements Source {
    private final List<Corner> corners = new ArrayList<>();
    private SplittableRandom random;

    private record Corner(Tap tap, double hertz, double size) {}

    Noise add(Tap tap, double cornerHertz, double size) {
        corners.add(new Corner(tap, cornerHertz, size));
        return this;
    }

    /** Each use of a source of noise makes other noise. */
    Noise seeded(SplittableRandom newRandom) {
        random = newRandom;
        return this;
    }

    @Override
    public void addTo(Forces forces, double factor) {
        double rate = forces.clock().rate();
        for (Corner corner : corners) {
            double[] force = forces.along(corner.tap());
            double keep = Math.exp(-2 * Math.PI * corner.hertz() / rate);
            double push = factor * corner.size() * Math.sqrt(1 - keep * keep);
            double now = 0;
            for (int i = 0; i < force.length; i++) {
                now = keep * now + push * random.nextGaussian();
                force[i] += now;
            }
        }
    }
}
