package dev.vibra.docs.fuzz;

import com.sun.management.ThreadMXBean;
import dev.vibra.alarm.AlarmEvaluator;
import dev.vibra.alarm.AlarmRule;
import dev.vibra.alarm.AlarmState;
import dev.vibra.channel.Channel;
import dev.vibra.channel.ChannelListener;
import dev.vibra.channel.ChannelSettings;
import dev.vibra.filter.CascadeFilter;
import dev.vibra.filter.FilterDesign;
import dev.vibra.filter.FirFilter;
import dev.vibra.integration.BandLimitingChain;
import dev.vibra.integration.TimeDifferentiator;
import dev.vibra.integration.TimeIntegrator;
import dev.vibra.level.Moments;
import dev.vibra.level.PeakHold;
import dev.vibra.level.RunningMoments;
import dev.vibra.level.RunningRms;
import dev.vibra.meter.EnvelopeMeter;
import dev.vibra.meter.LevelMeter;
import dev.vibra.meter.LevelReading;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumMeter;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.state.Resumable;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * A long signal through all meters and filters, in blocks of any size. One second of it is repeated, in turns quiet and
 * twice as loud, so that after each piece all values are known: from that second in one piece, or from a meter that is
 * new.
 */
final class Soak {
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    private static final int RATE = 25_600;
    private static final int LONGEST_BLOCK = 6000;
    private static final int SETTLING_SECONDS = 60;
    private static final double TOLERANCE = 1e-9;
    /** Sums over all 24 hours; measured, with a margin of five. */
    private static final double TOLERANCE_OF_WHOLE = 1e-8;
    private static final Band SEVERITY = Band.of(10, 1000);
    private static final Band HIGH = Band.of(3000, 5000);
    private static final int SPECTRUM_LINES = 200;

    private final double[][] loudness = {second(1), second(2)};
    private final Map<String, SoakStation<?>> stations = new LinkedHashMap<>();
    private final SoakStation<?>[] inARow;
    private final RunningMoments whole = new RunningMoments();
    private final AlarmEvaluator alarm;
    private final SplittableRandom random = new SplittableRandom(20_261_130);
    private final Map<String, double[]> outlets = new LinkedHashMap<>();
    private final List<String> heap = new ArrayList<>();
    private final long[] seconds = new long[2];
    private final List<Long> allocated = new ArrayList<>();
    private double worstOfWhole;
    private int position;

    Soak() {
        Waveform second = Waveform.ofSi(Quantity.ACCELERATION, RATE, Arrays.copyOf(loudness[0], RATE));
        this.alarm = AlarmRule.of(Level.of(1.5 * second.rms().si(), Unit.M_PER_S2, Detector.RMS)).newEvaluator();
        meters();
        channel();
        filters();
        inARow = stations.values().toArray(SoakStation<?>[]::new);
    }

    /** Tones of a machine and noise about zero, twice in a row as far as a block may reach. */
    private static double[] second(double scale) {
        SplittableRandom noise = new SplittableRandom(7);
        double[] samples = new double[RATE + LONGEST_BLOCK];
        for (int i = 0; i < RATE; i++) {
            double t = 2 * Math.PI * i / RATE;
            samples[i] = scale * (0.5 * Math.sin(25 * t) + 0.2 * Math.sin(50 * t + 1)
                    + 0.3 * Math.sin(4000 * t) * (1 + 0.5 * Math.sin(120 * t)) + 0.1 * noise.nextDouble());
        }
        double mean = Arrays.stream(samples, 0, RATE).average().orElseThrow();
        for (int i = 0; i < samples.length; i++) {
            samples[i] = i < RATE ? samples[i] - mean : samples[i - RATE];
        }
        return samples;
    }

    private void meters() {
        add("levels", () -> LevelMeter.withDefaults().and(Quantity.DISPLACEMENT, SEVERITY).and(Quantity.ACCELERATION,
                HIGH)
                .at(RATE), LevelMeter::push, LevelMeter::restartReading, meter -> meter.readings().stream()
                        .mapToDouble(LevelReading::rmsSi).toArray());
        add("kurtosis of levels", () -> LevelMeter.withDefaults().at(RATE), LevelMeter::push,
                LevelMeter::restartReading,
                meter -> new double[] {meter.acceleration().kurtosis(), meter.acceleration().peakSi()});
        add("spectrum", () -> SpectrumMeter.of(Quantity.ACCELERATION, RATE, settings()), SpectrumMeter::push,
                SpectrumMeter::restartReading, meter -> lines(meter.spectrum()));
        add("envelope", () -> EnvelopeMeter.of(Quantity.ACCELERATION, HIGH, RATE, RATE), EnvelopeMeter::push,
                EnvelopeMeter::restartReading, meter -> new double[] {meter.mean(), meter.kurtosis()});
        add("moments", RunningMoments::new, RunningMoments::push, RunningMoments::reset,
                meter -> new double[] {meter.rms(), meter.kurtosis()});
        add("running rms", () -> RunningRms.linear(1, RATE), RunningRms::push, meter -> { },
                meter -> new double[] {meter.rms()});
        add("exponential rms", () -> RunningRms.exponential(1, RATE), RunningRms::push, meter -> { },
                meter -> new double[] {meter.rms()});
        add("peak hold", () -> PeakHold.of(1, RATE), PeakHold::push, meter -> { },
                meter -> new double[] {meter.peak()});
    }

    /** Its readings begin by themselves each second; its value is the last one. */
    private void channel() {
        ChannelSettings settings = ChannelSettings.named("soak").withSpectrum(settings()).withEnvelope(HIGH, 1)
                .withRule(AlarmRule.of(Level.of(2.8, Unit.MM_PER_S, Detector.RMS).within(SEVERITY)));
        double[] last = new double[1];
        ChannelListener listener = new ChannelListener() {
            @Override
            public void reading(Channel told) {
                last[0] = told.levels().velocity().rmsSi();
            }
        };
        add("channel", () -> settings.at(RATE), (channel, in, offset, length) -> channel.push(in, offset, length,
                listener), channel -> { }, channel -> last.clone());
    }

    private void filters() {
        filter("high pass", () -> FilterDesign.butterworth(4).highPass(10, RATE).newFilter(), CascadeFilter::process);
        filter("finite response", () -> FirFilter.of(0.25, 0.5, 0.25), FirFilter::process);
        filter("integrator", () -> TimeIntegrator.of(1, 2, RATE), TimeIntegrator::process);
        filter("differentiator", () -> TimeDifferentiator.at(RATE), TimeDifferentiator::process);
        filter("chain", () -> BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, SEVERITY, RATE),
                BandLimitingChain::process);
    }

    /** Filters a block. */
    private interface Process<M> {
        void block(M filter, double[] in, int inOffset, double[] out, int outOffset, int length);
    }

    /** Its value is what leaves it last. */
    private <M extends Resumable<M>> void filter(String name, Supplier<M> maker, Process<M> process) {
        double[] out = new double[RATE];
        double[] last = new double[1];
        outlets.put(name, out);
        add(name, maker, (filter, in, offset, length) -> {
            process.block(filter, in, offset, out, 0, length);
            last[0] = out[length - 1];
        }, filter -> { }, filter -> last.clone());
    }

    private <M extends Resumable<M>> void add(String name, Supplier<M> maker, SoakStation.Push<M> push,
            Consumer<M> restart, Function<M, double[]> reading) {
        stations.put(name, new SoakStation<>(name, maker, push, restart, reading));
    }

    private static SpectrumSettings settings() {
        return SpectrumSettings.withDefaults().withResolution(1).withOverlap(0);
    }

    private static double[] lines(Spectrum spectrum) {
        double[] lines = new double[SPECTRUM_LINES];
        for (int i = 0; i < lines.length; i++) {
            lines[i] = spectrum.amplitude(i, Detector.RMS);
        }
        return lines;
    }

    /** Sends pieces through; each has time to settle first. */
    void run(int pieces, int secondsEach) {
        List<Map<String, double[]>> expected = List.of(expected(loudness[0]), expected(loudness[1]));
        for (int piece = 0; piece < pieces; piece++) {
            int loud = piece % 2;
            feed(loudness[loud], SETTLING_SECONDS);
            stations.values().forEach(SoakStation::restartReading);
            feed(loudness[loud], (secondsEach - SETTLING_SECONDS) / 2);
            stopAndResume(loudness[loud]);
            long before = THREADS.getCurrentThreadAllocatedBytes();
            feed(loudness[loud], secondsEach - SETTLING_SECONDS - (secondsEach - SETTLING_SECONDS) / 2 - 1);
            allocated.add(THREADS.getCurrentThreadAllocatedBytes() - before);
            seconds[loud] += secondsEach;
            stations.forEach((name, station) -> station.compare(expected.get(loud).get(name), TOLERANCE));
            compareWhole();
            if (alarm.state() != (loud == 1 ? AlarmState.ALARM : AlarmState.NORMAL)) {
                throw new AssertionError("alarm is " + alarm.state() + " in piece " + piece);
            }
            System.gc();
            Runtime runtime = Runtime.getRuntime();
            heap.add(String.format(Locale.ROOT, "%.1f", (runtime.totalMemory() - runtime.freeMemory()) / 1e6));
        }
    }

    private void feed(double[] samples, int count) {
        for (long left = (long) count * RATE; left > 0;) {
            int length = (int) Math.min(left, 1 + random.nextInt(LONGEST_BLOCK));
            push(samples, length);
            left -= length;
        }
    }

    private void push(double[] samples, int length) {
        for (SoakStation<?> station : inARow) { // an array, which has no iterator
            station.push(samples, position, length);
        }
        whole.push(samples, position, length);
        position += length;
        if (position >= RATE) {
            position -= RATE;
            alarm.updateSi(rmsOfLastSecond());
        }
    }

    private double rmsOfLastSecond() {
        return ((RunningRms) stations.get("running rms").meter()).rms();
    }

    /** In a second of its own, of one block more or less. */
    private void stopAndResume(double[] samples) {
        for (int left = RATE; left > 0;) {
            int length = Math.min(left, LONGEST_BLOCK);
            for (SoakStation<?> station : stations.values()) {
                station.stopAndResume(samples, position, length);
            }
            whole.push(samples, position, length);
            position = (position + length) % RATE;
            left -= length;
        }
    }

    /** From the second in one piece where that can be told, else from new meters. */
    private Map<String, double[]> expected(double[] samples) {
        Map<String, double[]> values = new LinkedHashMap<>();
        stations.forEach((name, station) -> values.put(name, ofNew(station.fresh(), samples)));
        outlets.forEach((name, out) -> values.put(name, new double[] {values.get(name)[0],
                // errors are parts of the largest
            Arrays.stream(out).map(Math::abs).max().orElseThrow()}));
        double[] second = Arrays.copyOf(samples, RATE);
        Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, RATE, second);
        Moments moments = Moments.of(second);
        values.put("spectrum", lines(Spectrum.of(wave, settings())));
        values.put("moments", new double[] {moments.rms(), moments.kurtosis()});
        values.put("running rms", new double[] {Math.sqrt(Arrays.stream(second).map(x -> x * x).sum() / RATE)});
        values.put("kurtosis of levels", new double[] {moments.kurtosis(), moments.peak()});
        return values;
    }

    private static double[] ofNew(SoakStation<?> station, double[] samples) {
        for (int i = 0; i < SETTLING_SECONDS; i++) {
            station.push(samples, 0, RATE);
        }
        station.restartReading();
        station.push(samples, 0, RATE);
        return station.values();
    }

    private void compareWhole() {
        double[] second = Arrays.copyOf(loudness[0], RATE);
        double m2 = Moments.of(second).rms();
        double m4 = Moments.of(second).kurtosis();
        double n = seconds[0] + seconds[1];
        double square = (seconds[0] + 4.0 * seconds[1]) / n;
        double fourth = (seconds[0] + 16.0 * seconds[1]) / n;
        requireClose("rms of the whole", whole.rms(), m2 * Math.sqrt(square));
        requireClose("kurtosis of the whole", whole.kurtosis(), m4 * fourth / (square * square));
    }

    private void requireClose(String what, double value, double expected) {
        worstOfWhole = Math.max(worstOfWhole, Math.abs(value / expected - 1));
        if (!(Math.abs(value / expected - 1) <= TOLERANCE_OF_WHOLE)) {
            throw new AssertionError(what + ": " + value + ", expected " + expected);
        }
    }

    /** By blocks after the first piece, in which classes are loaded. */
    long allocatedBytes() {
        return allocated.stream().skip(1).mapToLong(Long::longValue).sum();
    }

    List<Double> heapMegabytes() {
        return heap.stream().map(Double::valueOf).toList();
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT,
                "%d s of signal; after each piece: bytes allocated by blocks %s, heap %s MB%n  moments of the whole: at most"
                + " %.1e off%n  %s",
                seconds[0] + seconds[1], allocated, heap, worstOfWhole, String.join("\n  ", stations.values().stream()
                        .map(SoakStation::toString).toList()));
    }
}
