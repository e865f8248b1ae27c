package dev.vibra.point;

import dev.vibra.descriptor.NamedLine;
import dev.vibra.descriptor.Signals;
import dev.vibra.quantity.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/** Shape of the velocity that repeats with the turn, and how far its first multiple wanders. */
final class TurnShape {
    private static final int BLOCK_TURNS = 8;
    private static final int FEWEST_BLOCKS = 6;
    private static final int USUAL_BLOCKS = 12;
    /** Mean square of the weights of a Hann window over the square of their mean. */
    private static final double HANN_BANDWIDTH = 1.5;
    private static final int FEWEST_TURNS = 20;
    private static final int STEPS = 128;
    /** A phase that wanders by more, in rad, leaves nothing of the tenth multiple. */
    private static final double STEADY_PHASE = 0.15;

    private final TurnVectors vectors;
    private final Signals signals;
    private final List<NamedLine> standing;
    private final List<Integer> mixed;
    private final List<Complex> blocks;
    private final int blockTurns;

    TurnShape(TurnVectors vectors, Signals signals, List<NamedLine> lines, List<Integer> mixed) {
        this.vectors = vectors;
        this.signals = signals;
        this.mixed = mixed;
        standing = lines.stream().filter(PatternReading::isOwnShaft).filter(NamedLine::stands).toList();
        blockTurns = Math.max(BLOCK_TURNS, (int) (vectors.turns() / USUAL_BLOCKS));
        boolean longEnough = vectors.turns() >= FEWEST_BLOCKS * BLOCK_TURNS;
        blocks = longEnough && standsAt(1) ? withoutDrift(vectors.blocks(blockTurns)) : List.of();
    }

    private boolean standsAt(int order) {
        return standing.stream().anyMatch(line -> line.order() == order);
    }

    /** A speed that is off by a little turns the vector steadily; with a tachometer it can't be. */
    private List<Complex> withoutDrift(List<Complex> vectorsOfBlocks) {
        if (vectors.tie() == LinePhasor.Tie.TACHOMETER) {
            return vectorsOfBlocks;
        }
        SimpleRegression line = new SimpleRegression();
        double before = 0;
        for (int i = 0; i < vectorsOfBlocks.size(); i++) {
            double phase = vectorsOfBlocks.get(i).getArgument();
            before += Math.IEEEremainder(phase - before, 2 * Math.PI);
            line.addData(i, before);
        }
        List<Complex> still = new ArrayList<>();
        for (int i = 0; i < vectorsOfBlocks.size(); i++) {
            double angle = -line.predict(i);
            still.add(vectorsOfBlocks.get(i).multiply(new Complex(Math.cos(angle), Math.sin(angle))));
        }
        return still;
    }

    /** What noise scatters is taken off the variance; without a tachometer the size tells, with half of that noise. */
    Optional<Double> wander() {
        if (blocks.size() < FEWEST_BLOCKS) {
            return Optional.empty();
        }
        boolean tied = vectors.tie() == LinePhasor.Tie.TACHOMETER;
        List<Complex> values = tied ? blocks : blocks.stream().map(one -> new Complex(one.abs(), 0)).toList();
        Complex mean = values.stream().reduce(Complex.ZERO, Complex::add).divide(values.size());
        double square = values.stream().mapToDouble(one -> one.subtract(mean).abs()).map(x -> x * x).sum()
                / (values.size() - 1);
        double left = Math.max(0, square - (tied ? 1 : 0.5) * noise());
        return mean.abs() > 0 ? Optional.of(Math.sqrt(left) / mean.abs()) : Optional.empty();
    }

    /** Mean square of what noise alone adds to the vector of a block. */
    private double noise() {
        double hertz = vectors.hertz();
        double density = Math.pow(signals.floor().rms(hertz), 2) / signals.spectrum().noiseBandwidthHertz();
        double integrations = signals.wave().quantity().integrationsTo(Quantity.VELOCITY);
        return density * Math.pow(2 * Math.PI * hertz, -2 * integrations) * HANN_BANDWIDTH * hertz / blockTurns;
    }

    private boolean isSteady() {
        double sum = blocks.stream().mapToDouble(Complex::getArgument).map(x -> x * x).sum();
        return vectors.tie() == LinePhasor.Tie.TACHOMETER || blocks.isEmpty()
                || Math.sqrt(sum / blocks.size()) <= STEADY_PHASE;
    }

    /** Size of the skewness of the sum of all multiples that stand; empty where one is mixed with another line. */
    Optional<Double> flattening() {
        List<Integer> orders = standing.stream().map(NamedLine::order).toList();
        if (vectors.turns() < FEWEST_TURNS || !standsAt(1) || !isSteady()
                || orders.stream().anyMatch(mixed::contains)) {
            return Optional.empty();
        }
        double[] wave = new double[STEPS];
        for (int order : orders) {
            LinePhasor vector = vectors.phasor(order);
            for (int i = 0; i < STEPS; i++) {
                double angle = 2 * Math.PI * order * i / STEPS;
                wave[i] += vector.real() * Math.cos(angle) - vector.imaginary() * Math.sin(angle);
            }
        }
        double squares = 0;
        double cubes = 0;
        for (double value : wave) {
            squares += value * value / STEPS;
            cubes += value * value * value / STEPS;
        }
        return squares > 0 ? Optional.of(Math.abs(cubes) / Math.pow(squares, 1.5)) : Optional.empty();
    }
}
