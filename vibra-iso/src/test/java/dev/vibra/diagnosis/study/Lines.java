package dev.vibra.diagnosis.study;

import java.util.ArrayList;
import java.util.List;

/** Forces at sums of multiples of the motor's speed and of the line frequency, or at a frequency of their own. */
final class Lines implements Source {
    private final List<Line> lines = new ArrayList<>();

    /** A force: its turns are {@code shaft} times those of the motor and {@code line} times those of the line. */
    record Line(Tap tap, double shaft, double line, double hertz, double amplitude, double turns) {}

    Lines add(Tap tap, double shaft, double line, double amplitude, double turns) {
        lines.add(new Line(tap, shaft, line, 0, amplitude, turns));
        return this;
    }

    Lines foreign(Tap tap, double hertz, double amplitude, double turns) {
        lines.add(new Line(tap, 0, 0, hertz, amplitude, turns));
        return this;
    }

    /** A force that turns with a shaft, seen along x and y of one place; negative ratio: it turns the other way. */
    Lines turning(Tap x, Tap y, double ratio, double amplitude, double turns) {
        double sense = Math.signum(ratio);
        return add(x, Math.abs(ratio), 0, amplitude, turns).add(y, Math.abs(ratio), 0, amplitude, turns - 0.25 * sense);
    }

    List<Line> lines() {
        return lines;
    }

    @Override
    public void addTo(Forces forces, double factor) {
        Clock clock = forces.clock();
        double[] shaft = clock.shaft();
        double[] grid = clock.line();
        for (Line line : lines) {
            double[] force = forces.along(line.tap());
            double step = line.hertz() / clock.rate();
            for (int i = 0; i < force.length; i++) {
                force[i] += factor * line.amplitude() * Sine.cos(line.shaft() * shaft[i] + line.line() * grid[i]
                        + step * i + line.turns());
            }
        }
    }
}
