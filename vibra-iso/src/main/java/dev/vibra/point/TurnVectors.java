package dev.vibra.point;

import dev.vibra.descriptor.NamedLine;
import dev.vibra.descriptor.Signals;
import dev.vibra.machine.Rate;
import dev.vibra.quantity.Quantity;
import dev.vibra.rotation.AngularWaveform;
import dev.vibra.signal.Waveform;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;

/**
 * Vectors of multiples of the shaft speed in one recording, rms velocity each. With a tachometer phases are counted
 * from its mark; without one from the middle of the samples, where an error of the frequency turns nothing.
 */
final class TurnVectors {
    /** Samples under a Hann window begin and end with weight zero. */
    private final double[] samples;
    /** Angle of the shaft from one sample to the next in rad. */
    private final double step;
    /** Number of the sample at which the angle is zero. */
    private final double anchor;
    private final double hertz;
    private final int integrations;
    private final LinePhasor.Tie tie;
    private final double instant;

    private TurnVectors(double[] samples, double step, double anchor, double hertz, int integrations,
            LinePhasor.Tie tie, double instant) {
        this.samples = samples;
        this.step = step;
        this.anchor = anchor;
        this.hertz = hertz;
        this.integrations = integrations;
        this.tie = tie;
        this.instant = instant;
    }

    /** Empty where no line of the shaft stands that tells the speed closely. */
    static Optional<TurnVectors> of(Signals signals, List<NamedLine> lines) {
        int integrations = signals.wave().quantity().integrationsTo(Quantity.VELOCITY);
        Optional<AngularWaveform> turns = signals.turns();
        if (turns.isPresent()) {
            return Optional.of(new TurnVectors(turns.get().samples(),
                    2 * Math.PI / turns.get().samplesPerRevolution(), 0,
                    signals.angle().orElseThrow().meanSpeed().hertz(), integrations, LinePhasor.Tie.TACHOMETER, 0));
        }
        return shaftHertz(signals, lines).map(shaft -> about(signals.wave(), shaft));
    }

    private static TurnVectors about(Waveform wave, double shaft) {
        double rate = wave.sampleRateHertz();
        double middle = 0.5 * (wave.length() - 1);
        return new TurnVectors(wave.samples(), 2 * Math.PI * shaft / rate, middle, shaft,
                wave.quantity().integrationsTo(Quantity.VELOCITY), LinePhasor.Tie.INSTANT,
                wave.startSeconds() + middle / rate);
    }

    /**
     * Vectors of the whole recording of which these have the steady part: recordings taken together have one instant
     * then, and a speed that wanders turns all of them alike. With a tachometer these are as good.
     */
    TurnVectors ofWhole(Waveform whole) {
        return tie == LinePhasor.Tie.TACHOMETER || whole.length() == samples.length ? this : about(whole, hertz);
    }

    /** Speed by the first multiple that stands, as closely as the whole recording tells it. */
    private static Optional<Double> shaftHertz(Signals signals, List<NamedLine> lines) {
        return lines.stream().filter(PatternReading::isOwnShaft).filter(NamedLine::stands).findFirst()
                .map(line -> signals.fineReader().line(line.rate(), line.order(), line.hertz(),
                        signals.fineReader().partedHertz() / 2)).map(line -> line.hertz() / line.order());
    }

    double hertz() {
        return hertz;
    }

    LinePhasor.Tie tie() {
        return tie;
    }

    /** Turns of the shaft within the samples. */
    double turns() {
        return samples.length * step / (2 * Math.PI);
    }

    LinePhasor phasor(int order) {
        Complex vector = vector(order, 0, samples.length);
        return new LinePhasor(order, order * hertz, vector.getReal(), vector.getImaginary(), tie, instant);
    }

    /** Vectors of the first multiple in blocks of whole turns that follow each other. */
    List<Complex> blocks(int turns) {
        List<Complex> vectors = new ArrayList<>();
        double length = turns * 2 * Math.PI / step;
        for (int block = 0; (block + 1) * length <= samples.length; block++) {
            int from = (int) Math.rint(block * length);
            vectors.add(vector(1, from, (int) Math.rint((block + 1) * length)));
        }
        return vectors;
    }

    /** The vector of {@code A·cos(ωt + φ)} is {@code A/√2·exp(jφ)}, over {@code jω} for each integration. */
    private Complex vector(int order, int from, int to) {
        return integrated(HannPointer.mean(samples, from, to, order * step, anchor).multiply(Math.sqrt(2)),
                2 * Math.PI * order * hertz);
    }

    private Complex integrated(Complex recorded, double turning) {
        Complex velocity = recorded;
        for (int i = 0; i < Math.abs(integrations); i++) {
            Complex factor = new Complex(0, turning);
            velocity = integrations > 0 ? velocity.divide(factor) : velocity.multiply(factor);
        }
        return velocity;
    }
}
