package dev.vibra.point;

import dev.vibra.descriptor.DominantLine;
import dev.vibra.descriptor.LineReader;
import dev.vibra.descriptor.Signals;
import dev.vibra.machine.Rate;
import java.util.List;
import org.apache.commons.math3.complex.Complex;

/**
 * Tells lines from humps. Noise through a resonance makes narrow humps, and at all points that feel it the same lines
 * stand on them; but its amplitude and phase change within a moment, while those of what turns hold, or drift as its
 * speed does.
 *
 * <p>The recording is cut into blocks, and the vector of the line in each is held against that in the next: {@code
 * |Σ v̄(k)·v(k+1)|} over the mean square of either. That is 1 for a sine, also where its frequency is off or drifts, and
 * little for a hump that is wider than a block tells apart.
 */
final class LineSteadiness {
    private static final int BLOCKS = 12;
    /** Fewer periods in a block say nothing about it. */
    private static final double PERIODS = 4;
    /** Between a sine beside some noise and a hump at its own peak; common practice, no source. */
    private static final double STEADY = 0.75;
    private static final String NAME = "line";

    private final Signals signals;

    LineSteadiness(Signals signals) {
        this.signals = signals;
    }

    /** Frequencies of those lines without name that hold; one too low for the recording counts as one that does. */
    List<Double> steady(List<DominantLine> lines) {
        double[] samples = signals.wave().samples();
        return lines.stream().filter(line -> line.name().isEmpty()).map(DominantLine::hertz)
                .filter(hertz -> share(samples, hertz) >= STEADY).toList();
    }

    private double share(double[] samples, double hertz) {
        double rate = signals.wave().sampleRateHertz();
        int blocks = (int) Math.min(BLOCKS, samples.length / rate * hertz / PERIODS);
        if (blocks < 2) {
            return 1;
        }
        double turning = 2 * Math.PI * finely(hertz) / rate;
        Complex products = Complex.ZERO;
        double squares = 0;
        Complex before = null;
        for (int block = 0; block < blocks; block++) {
            int from = (int) ((long) samples.length * block / blocks);
            int to = (int) ((long) samples.length * (block + 1) / blocks);
            Complex vector = HannPointer.mean(samples, from, to, turning, 0);
            if (before != null) {
                products = products.add(before.conjugate().multiply(vector));
                squares += 0.5 * (square(before) + square(vector));
            }
            before = vector;
        }
        return squares > 0 ? products.abs() / squares : 0;
    }

    private static double square(Complex vector) {
        return vector.getReal() * vector.getReal() + vector.getImaginary() * vector.getImaginary();
    }

    /** The closer the frequency, the less the pointer turns against the line within a block. */
    private double finely(double hertz) {
        LineReader fine = signals.fineReader();
        double reach = fine.partedHertz() / 2;
        return fine.covers(hertz, reach) ? fine.line(new Rate(Rate.Kind.SHAFT, NAME, hertz), 1, hertz, reach).hertz()
                : hertz;
    }
}
