package dev.vibra.properties;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.filter.FilterDesign;
import dev.vibra.filter.FirDesign;
import dev.vibra.integration.BandLimitingChain;
import dev.vibra.integration.TimeDifferentiator;
import dev.vibra.integration.TimeIntegrator;
import dev.vibra.level.PeakHold;
import dev.vibra.level.RunningMoments;
import dev.vibra.level.RunningRms;
import dev.vibra.meter.EnvelopeMeter;
import dev.vibra.meter.LevelMeter;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.spectrum.Averaging;
import dev.vibra.spectrum.SpectrumMeter;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.state.Resumable;
import dev.vibra.state.StreamState;
import dev.vibra.window.Window;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.Arrays;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Supplier;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** A worker stopped at any sample and resumed is, bit for bit, in the state of one that was never stopped. */
class StateProperties {
    private static final double RATE = 1000;

    /** A worker and how it is fed. */
    record Fed<M extends Resumable<M>>(M worker, Feed<M> feed) {
        void push(M one, double[] samples, int from, int to) {
            feed.push(one, samples, from, to - from);
        }

        M fresh() {
            return worker.recipe().make();
        }
    }

    /** Gives a block to a worker. */
    interface Feed<M> {
        void push(M worker, double[] samples, int offset, int length);
    }

    private static <M extends Resumable<M>> Supplier<Fed<?>> fed(M worker, Feed<M> feed) {
        return () -> new Fed<>(worker, feed);
    }

    private static SpectrumMeter spectrum(Averaging averaging) {
        return SpectrumMeter.of(Quantity.ACCELERATION, RATE, SpectrumSettings.withDefaults().withResolution(7)
                .withOverlap(0.6).withAveraging(averaging));
    }

    private static LevelMeter levels() {
        return LevelMeter.withDefaults().withBand(Band.of(30, 300)).and(Quantity.DISPLACEMENT, Band.of(40, 400))
                .and(Quantity.ACCELERATION, Band.of(50, 250)).at(RATE);
    }

    private static List<Supplier<Fed<?>>> all() {
        double[] out = new double[4096];
        return List.of(
                fed(new RunningMoments(), RunningMoments::push),
                fed(RunningRms.linear(0.123, RATE), RunningRms::push),
                fed(RunningRms.exponential(0.2, RATE), RunningRms::push),
                fed(PeakHold.of(0.5, RATE), PeakHold::push),
                fed(FilterDesign.chebyshev1(5, 1).bandPass(Band.of(30, 220), RATE).newFilter(),
                        (f, x, from, n) -> f.process(x, from, out, 0, n)),
                fed(FirDesign.lowPass(41, 120, RATE, Window.hamming()), (f, x, from, n) -> f.process(x, from, out, 0, n)),
                fed(FirDesign.lowPass(400, 120, RATE, Window.hamming()), (f, x, from, n) -> f.process(x, from, out, 0, n)),
                fed(TimeIntegrator.of(2, 3, RATE), (f, x, from, n) -> f.process(x, from, out, 0, n)),
                fed(TimeDifferentiator.at(RATE), (f, x, from, n) -> f.process(x, from, out, 0, n)),
                fed(BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, Band.of(10, 400), RATE),
                        (f, x, from, n) -> f.process(x, from, out, 0, n)),
                fed(spectrum(Averaging.rms()), SpectrumMeter::push),
                fed(spectrum(Averaging.vector()), SpectrumMeter::push),
                fed(spectrum(Averaging.peakHold()), SpectrumMeter::push),
                fed(spectrum(Averaging.exponential(0.3)), SpectrumMeter::push),
                fed(levels(), LevelMeter::push),
                fed(EnvelopeMeter.of(Quantity.ACCELERATION, Band.of(100, 300), 256, RATE), EnvelopeMeter::push));
    }

    @Provide
    Arbitrary<Supplier<Fed<?>>> workers() {
        return Arbitraries.of(all());
    }

    private static double[] numbers(Resumable<?> worker) {
        double[] numbers = new double[worker.stateLength()];
        assertEquals(numbers.length, worker.snapshotTo(numbers, 0));
        return numbers;
    }

    @Property(tries = 150)
    void stoppedAnywhereItGoesOnBitForBit(@ForAll("workers") Supplier<Fed<?>> worker, @ForAll long seed,
            @ForAll @IntRange(min = 0, max = 2000) int stop) throws IOException, ClassNotFoundException {
        check(worker.get(), Signals.noise(2000, seed), stop);
    }

    /** The header and the counts of each state are written in whole numbers, so equal numbers are an equal state. */
    private static <M extends Resumable<M>> void check(Fed<M> fed, double[] x, int stop)
            throws IOException, ClassNotFoundException {
        M through = fed.fresh();
        fed.push(through, x, 0, stop);
        StreamState<M> state = through.snapshot();
        M resumed = shipped(state).resume();
        M taken = fed.fresh();
        double[] shifted = new double[taken.stateLength() + 7];
        Arrays.fill(shifted, Double.NaN);
        assertEquals(taken.stateLength() + 5, through.snapshotTo(shifted, 5));
        fed.push(taken, x, 100, 900);
        assertEquals(taken.stateLength() + 5, taken.resumeFrom(shifted, 5));
        assertArrayEquals(numbers(through), numbers(resumed));
        fed.push(through, x, stop, x.length);
        fed.push(resumed, x, stop, x.length);
        fed.push(taken, x, stop, x.length);
        assertArrayEquals(numbers(through), numbers(resumed));
        assertArrayEquals(numbers(through), numbers(taken));
        assertEquals(state, StreamState.of(state.recipe(), state.numbers()));
        assertEquals(-1, state.toString().indexOf('@'));
    }

    @SuppressWarnings("unchecked")
    private static <M extends Resumable<M>> StreamState<M> shipped(StreamState<M> state)
            throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(state);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return (StreamState<M>) in.readObject();
        }
    }

    /** Whatever is done to a state, it is refused or a state; and a worker that refused one is as new. */
    @Property(tries = 600)
    void spoiltStatesAreRefusedOrWork(@ForAll("workers") Supplier<Fed<?>> worker, @ForAll long seed) {
        spoil(worker.get(), new Random(seed));
    }

    private static <M extends Resumable<M>> void spoil(Fed<M> fed, Random random) {
        double[] x = Signals.noise(1500, random.nextLong());
        M worker = fed.fresh();
        fed.push(worker, x, 0, 1000);
        double[] numbers = numbers(worker);
        double[] hostile = {Double.NaN, Double.POSITIVE_INFINITY, -1, 0.5, 1e300, -1e300, 4.9e-324, 1L << 53, 0};
        numbers[random.nextInt(Math.min(numbers.length, random.nextBoolean() ? 20 : numbers.length))] =
                hostile[random.nextInt(hostile.length)];
        M other = fed.fresh();
        try {
            other.resumeFrom(numbers, 0);
        } catch (IllegalArgumentException e) {
            assertNotNull(e.getMessage());
            assertArrayEquals(numbers(fed.fresh()), numbers(other));
            return;
        }
        assertNotNull(numbers(other));
    }

    /** A worker with a lambda in a field can't be copied by any serialiser. */
    @Example
    void noWorkerHoldsALambda() throws IllegalAccessException {
        for (Supplier<Fed<?>> worker : all()) {
            Set<Object> seen = Collections.newSetFromMap(new IdentityHashMap<>());
            requireNoLambda(worker.get().worker(), seen);
            assertTrue(seen.size() > 1 || worker.get().worker() instanceof RunningMoments);
        }
    }

    private static void requireNoLambda(Object held, Set<Object> seen) throws IllegalAccessException {
        assertFalse(held.getClass().isHidden() || held.getClass().isSynthetic(), held.getClass().getName());
        if (!seen.add(held)) {
            return;
        }
        if (held instanceof Iterable<?> several) {
            for (Object one : several) {
                requireNoLambda(one, seen);
            }
        }
        for (Class<?> type = held.getClass(); type != null && type.getName().startsWith("dev.vibra"); type =
                type.getSuperclass()) {
            for (Field field : type.getDeclaredFields()) {
                if (!Modifier.isStatic(field.getModifiers()) && !field.getType().isPrimitive()
                        && !(held instanceof Enum)) {
                    field.setAccessible(true);
                    if (field.get(held) != null) {
                        requireNoLambda(field.get(held), seen);
                    }
                }
            }
        }
    }

    @Property(tries = 60)
    void aStateOfSomethingElseIsRefused(@ForAll("workers") Supplier<Fed<?>> one,
            @ForAll("workers") Supplier<Fed<?>> other) {
        if (one != other && !one.get().worker().recipe().equals(other.get().worker().recipe())) {
            double[] numbers = Arrays.copyOf(numbers(one.get().worker()), 10_000);
            String message = assertThrows(IllegalArgumentException.class,
                    () -> other.get().worker().recipe().make().resumeFrom(numbers, 0)).getMessage();
            assertEquals("state", message.substring(0, 5));
        }
    }
}
