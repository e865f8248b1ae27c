package dev.vibra.rotation;

import dev.vibra.internal.Require;
import dev.vibra.window.Window;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * One order followed over a run-up or coast-down: amplitude and phase over speed, the data of Bode and polar plots.
 *
 * @param order order that is followed, finite, above zero
 * @param points points in the order of time, at least one
 */
public record OrderTrack(double order, List<SpeedPoint> points) implements Serializable {
    /**
     * Checks the values and copies the list.
     *
     * @param order see the record
     * @param points see the record
     * @throws IllegalArgumentException if the order is out of range or there is no point
     */
    public OrderTrack {
        Require.positive("order", order, "");
        points = Require.copy("points", points);
        Require.atLeast("number of points", points.size(), 1);
    }

    /**
     * Follows an order in blocks of whole revolutions that overlap by half, each under a Hann window, so that other
     * orders do not leak in.
     *
     * @param wave angular waveform
     * @param order order to follow, above zero, below half the samples per revolution
     * @param revolutions revolutions of a block, at least 2; more is sharper in order, fewer sharper in speed
     * @return the track
     * @throws IllegalArgumentException if an argument is out of range or the waveform is shorter than a block
     */
    public static OrderTrack of(AngularWaveform wave, double order, int revolutions) {
        Objects.requireNonNull(wave, "wave");
        if (!(order > 0 && order < wave.samplesPerRevolution() / 2.0)) {
            throw Require.failure("order", "above 0 and below " + wave.samplesPerRevolution() / 2.0, order);
        }
        Require.within("revolutions", revolutions, 2, wave.revolutions(), "");
        int n = wave.samplesPerRevolution();
        double[] samples = wave.samples();
        double[] weights = Window.hann().samples(revolutions * n);
        List<SpeedPoint> points = new ArrayList<>();
        int step = Math.max(1, revolutions / 2);
        for (int first = 0; first + revolutions <= wave.revolutions(); first += step) {
            double middle = wave.firstRevolution() + first + 0.5 * revolutions;
            OrderVector vector = OrderVector.of(samples, first * n, revolutions * n, order, n, weights);
            // A block begins at the mark, but not at a whole turn of a broken order.
            double turned = vector.lagRadians() + 2 * Math.PI * order * (wave.firstRevolution() + first);
            double lag = turned - 2 * Math.PI * Math.floor(turned / (2 * Math.PI));
            points.add(new SpeedPoint(wave.angle().secondsAt(middle), wave.angle().speedAt(middle),
                    new OrderVector(vector.amplitude(), lag)));
        }
        return new OrderTrack(order, points);
    }

    /**
     * Returns the point of the largest amplitude.
     *
     * @return the point; the first of equals
     */
    public SpeedPoint largest() {
        SpeedPoint best = points.get(0);
        for (SpeedPoint point : points) {
            best = point.vector().amplitude() > best.vector().amplitude() ? point : best;
        }
        return best;
    }

    /** Returns order and number of points. */
    @Override
    public String toString() {
        return "order " + order + " over " + points.size() + " points";
    }
}
