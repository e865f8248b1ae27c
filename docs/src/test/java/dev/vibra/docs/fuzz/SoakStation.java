package dev.vibra.docs.fuzz;

import dev.vibra.state.Resumable;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * One meter or filter on the way of a long signal.
 *
 * @param <M> its type
 */
final class SoakStation<M extends Resumable<M>> {
    /** Takes a block. */
    interface Push<M> {
        void block(M meter, double[] samples, int offset, int length);
    }

    private final String name;
    private final Supplier<M> maker;
    private final Push<M> push;
    private final Consumer<M> restart;
    private final Function<M, double[]> reading;
    private double worst;
    private M meter;

    SoakStation(String name, Supplier<M> maker, Push<M> push, Consumer<M> restart, Function<M, double[]> reading) {
        this.name = name;
        this.maker = maker;
        this.push = push;
        this.restart = restart;
        this.reading = reading;
        this.meter = maker.get();
    }

    /** The same at the start of a signal of its own. */
    SoakStation<M> fresh() {
        return new SoakStation<>(name, maker, push, restart, reading);
    }

    void push(double[] samples, int offset, int length) {
        push.block(meter, samples, offset, length);
    }

    void restartReading() {
        restart.accept(meter);
    }

    M meter() {
        return meter;
    }

    double[] values() {
        return reading.apply(meter);
    }

    /** Puts one that was stopped and resumed in its place; both must go on alike. */
    void stopAndResume(double[] samples, int offset, int length) {
        M resumed = meter.snapshot().resume();
        push.block(meter, samples, offset, length);
        push.block(resumed, samples, offset, length);
        double[] before = meter.snapshot().numbers();
        if (!Arrays.equals(before, resumed.snapshot().numbers())) {
            throw new AssertionError(name + " goes on differently after it was resumed");
        }
        meter = resumed;
    }

    /** Compares with what should be read; errors are parts of the largest that is expected. */
    void compare(double[] expected, double tolerance) {
        double[] values = values();
        double largest = Arrays.stream(expected).map(Math::abs).max().orElse(0);
        for (int i = 0; i < values.length; i++) {
            double error = Math.abs(values[i] - expected[i]) / largest;
            worst = Math.max(worst, error);
            if (!(error <= tolerance)) {
                throw new AssertionError(name + ", value " + i + ": " + values[i] + ", expected " + expected[i]);
            }
        }
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s: at most %.1e off", name, worst);
    }
}
