package dev.vibra.speedrun;

import dev.vibra.evidence.Remark;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.level.Percentiles;
import dev.vibra.quantity.Quantity;
import dev.vibra.rotation.AngularWaveform;
import dev.vibra.rotation.OrderVector;
import dev.vibra.rotation.SpeedPoint;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What one recording shows while the shaft runs up or coasts down: orders over speed, resonances, spectra over speed.
 * Immutable; the recording itself isn't kept.
 *
 * <p>A recording of acceleration or velocity is told as velocity, one of displacement, which is a probe's, as
 * displacement. From a probe the slow-roll vector is taken off once per turn, if the sweep goes slow enough to read it.
 *
 * <p>Machines pass resonances with large amplitudes: stay within what maker, local codes and owner allow, and leave
 * trips and protection on.
 */
public final class PointRun implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double[] USUAL_ORDERS = {1, 2, 0.5};
    private static final int FEWEST_TURNS = 8;
    private static final int MOST_TURNS = 32;
    /** Standard deviation of a Hann window over its length. */
    private static final double WINDOW_SPREAD = 0.181;
    /** Share of the speed that it may change by under that. */
    private static final double MOST_SMEAR = 0.004;
    /** Slow roll is within this factor of the slowest speed, and the fastest at least so far above; no source. */
    private static final double SLOW_BAND = 1.2;
    private static final double SLOW_RANGE = 4;
    private static final int FEWEST_SLOW = 2;
    private static final int FEWEST_ELSEWHERE = 3;
    /** A line that keeps so much of a peak at other speeds makes the peak; common practice, no source. */
    private static final double FIXED_SHARE = 0.5;

    private final String id;
    private final SpeedSweep sweep;
    private final Quantity recorded;
    private final List<FollowedOrder> orders;
    private final OrderVector slowRoll; // null if there is none
    private final List<SpeedResonance> resonances;
    private final List<SpeedPoint> otherPeaks;
    private final Cascade cascade; // null if it was let go
    private final List<Remark> remarks;

    private PointRun(String id, SpeedSweep sweep, Quantity recorded, List<FollowedOrder> orders, OrderVector slowRoll,
            List<SpeedResonance> resonances, List<SpeedPoint> otherPeaks, Cascade cascade, List<Remark> remarks) {
        this.id = Require.notBlank("id", id);
        this.sweep = Objects.requireNonNull(sweep, "sweep");
        this.recorded = Objects.requireNonNull(recorded, "recorded");
        this.orders = Require.copy("orders", orders);
        this.slowRoll = slowRoll;
        this.resonances = Require.copy("resonances", resonances);
        this.otherPeaks = Require.copy("otherPeaks", otherPeaks);
        this.cascade = cascade;
        this.remarks = Require.copy("remarks", remarks);
    }

    private Object readResolve() {
        return new PointRun(id, sweep, recorded, orders, slowRoll, resonances, otherPeaks, cascade, remarks);
    }

    /**
     * Says why a recording can't be followed over a sweep.
     *
     * @param wave recording
     * @param sweep speed over time, on the same time scale
     * @return the reason, without full stop; empty if {@link #of} will answer
     */
    public static Optional<String> obstacle(Waveform wave, SpeedSweep sweep) {
        Objects.requireNonNull(sweep, "sweep");
        if (!Objects.requireNonNull(wave, "wave").quantity().isMotion()) {
            return Optional.of("the recording is one of " + wave.quantity() + ", no motion");
        }
        double end = wave.startSeconds() + wave.durationSeconds();
        if (wave.startSeconds() > sweep.beginSeconds() + 0.01 || end < sweep.endSeconds() - 0.01) {
            return Optional.of("the recording, " + Digits.significant(wave.startSeconds(), 3) + " to "
                    + Digits.significant(end, 3) + " s, doesn't hold the " + sweep.direction() + " from "
                    + Digits.significant(sweep.beginSeconds(), 3) + " to " + Digits.significant(sweep.endSeconds(), 3)
                    + " s");
        }
        double most = wave.sampleRateHertz() / sweep.highest().hertz();
        return most >= 6 ? Optional.empty() : Optional.of("the sample rate gives "
                + Digits.significant(most, 2) + " samples a turn, too few to follow twice the speed");
    }

    /**
     * Follows the usual orders, 1, 2 and a half.
     *
     * @param id name of the point
     * @param wave recording on the time scale of the tachometer, without an {@linkplain #obstacle obstacle}
     * @param sweep speed over time
     * @return the result
     * @throws IllegalArgumentException if there is an obstacle
     */
    public static PointRun of(String id, Waveform wave, SpeedSweep sweep) {
        return of(id, wave, sweep, USUAL_ORDERS);
    }

    /**
     * Follows chosen orders. One that lies nearer than half an order to another, or that the sample rate doesn't reach,
     * is left out and remarked.
     *
     * @param id name of the point
     * @param wave recording on the time scale of the tachometer, without an {@linkplain #obstacle obstacle}
     * @param sweep speed over time
     * @param orders orders to follow, 0.5 to 20, the first the most important
     * @return the result
     * @throws IllegalArgumentException if there is an obstacle or an order is out of range
     */
    public static PointRun of(String id, Waveform wave, SpeedSweep sweep, double... orders) {
        obstacle(wave, sweep).ifPresent(reason -> {
            throw new IllegalArgumentException("wave must be one that can be followed: " + reason);
        });
        return new Analysis(id, wave, sweep).run(Objects.requireNonNull(orders, "orders").clone());
    }

    /** One pass over a recording. */
    private static final class Analysis {
        private final String id;
        private final Waveform wave;
        private final SpeedSweep sweep;
        private final List<Remark> remarks = new ArrayList<>();
        private final List<FollowedOrder> followed = new ArrayList<>();
        private final List<SpeedResonance> resonances = new ArrayList<>();
        private final List<SpeedPoint> otherPeaks = new ArrayList<>();
        private final Cascade cascade;
        private OrderVector slowRoll;

        Analysis(String id, Waveform wave, SpeedSweep sweep) {
            this.id = id;
            this.sweep = sweep;
            this.wave = during(wave, sweep);
            this.cascade = Cascade.of(this.wave, sweep);
        }

        private static Waveform during(Waveform wave, SpeedSweep sweep) {
            double margin = 20 / sweep.lowest().hertz();
            double rate = wave.sampleRateHertz();
            int from = (int) Math.max(0, Math.floor((sweep.beginSeconds() - margin - wave.startSeconds()) * rate));
            int to = (int) Math.min(wave.length(), Math.ceil((sweep.endSeconds() + margin - wave.startSeconds())
                    * rate));
            return wave.part(from, to - from);
        }

        PointRun run(double[] orders) {
            for (double order : orders) {
                Require.within("order", order, 0.5, 20, "");
            }
            double[] kept = kept(orders);
            int turns = turns();
            double top = Arrays.stream(kept).max().orElse(1);
            int samples = (int) Math.min(Math.max(16, Math.ceil(4 * (top + 1))),
                    Math.floor(wave.sampleRateHertz() / sweep.highest().hertz()));
            AngularWaveform angular = AngularWaveform.of(wave, sweep.angle(), Math.max(6, samples));
            for (double order : kept) {
                add(FollowedOrder.of(angular, sweep, order, turns), turns);
            }
            Quantity shown = shown(wave.quantity());
            List<FollowedOrder> told = followed.stream().map(order -> order.in(shown)).toList();
            return new PointRun(id, sweep, wave.quantity(), told, slowRoll, resonances, otherPeaks, cascade, remarks);
        }

        private double[] kept(double[] orders) {
            double most = Math.floor(wave.sampleRateHertz() / sweep.highest().hertz()) / 2 - 0.5;
            List<Double> kept = new ArrayList<>();
            for (double order : orders) {
                Optional<Double> near = kept.stream().filter(one -> Math.abs(one - order) < 0.5).findFirst();
                if (near.isPresent()) {
                    remarks.add(Remark.note("orders-too-near", "order " + Digits.compact(order, 4)
                            + " isn't followed, it lies too near order " + Digits.compact(near.get(), 4)
                            + " to be told apart at a changing speed", Math.abs(near.get() - order), 0.5));
                } else if (order > most) {
                    remarks.add(Remark.note("order-too-high", "order " + Digits.compact(order, 4)
                            + " isn't followed, the sample rate doesn't reach it", order, most));
                } else {
                    kept.add(order);
                }
            }
            return kept.stream().mapToDouble(Double::doubleValue).toArray();
        }

        /** As many turns under the window as the rate of the speed allows where the window is widest in speed. */
        private int turns() {
            double slowest = sweep.lowest().hertz();
            double low = sweep.rateBetween(slowest, slowest + 0.25 * (sweep.highest().hertz() - slowest));
            double middle = Math.sqrt(slowest * sweep.highest().hertz());
            double allowed = MOST_SMEAR / WINDOW_SPREAD * Math.min(4 * slowest * slowest / low, middle * middle
                    / sweep.meanRateHertzPerSecond());
            return 4 * (int) (Math.max(FEWEST_TURNS, Math.min(MOST_TURNS, allowed)) / 4);
        }

        private void add(FollowedOrder order, int turns) {
            boolean first = order.order() == 1;
            slowRoll = first && wave.quantity() == Quantity.DISPLACEMENT ? slowRoll(order) : slowRoll;
            FollowedOrder clean = first && slowRoll != null ? order.without(slowRoll) : order;
            followed.add(clean);
            ResonanceSearch.Found found = ResonanceSearch.in(sweep, clean, turns);
            List<SpeedResonance> real = found.resonances().stream().filter(one -> isClear(clean, one.peak())).toList();
            List<SpeedPoint> peaks = found.peaks().stream().filter(peak -> isClear(clean, peak)).toList();
            resonances.addAll(real);
            if (first) {
                otherPeaks.addAll(peaks);
                remarkNearSlowRoll(real);
            }
        }

        /** False, and remarked, for a peak that a line of fixed frequency makes. */
        private boolean isClear(FollowedOrder order, SpeedPoint peak) {
            if (!isFixed(order, peak)) {
                return true;
            }
            double hertz = peak.speed().hertzOfOrder(order.order());
            if (remarks.stream().anyMatch(one -> one.code().equals("fixed-frequency")
                    && Math.abs(one.value() - hertz) < 0.1 * hertz)) {
                return false;
            }
            remarks.add(Remark.note("fixed-frequency", "a line near " + Digits.significant(hertz, 3)
                    + " Hz stands at all speeds, such as hum or another machine; where order "
                    + Digits.compact(order.order(), 3) + " passes it, it makes a peak that is no resonance", hertz,
                    0));
            return false;
        }

        private void remarkNearSlowRoll(List<SpeedResonance> found) {
            double near = SLOW_RANGE * sweep.lowest().hertz();
            found.stream().filter(one -> slowRoll != null && one.speed().hertz() < near).findFirst().ifPresent(one ->
                    remarks.add(Remark.note("slow-roll-near-resonance", "the slow-roll vector holds some of the"
                            + " response to unbalance, since a resonance lies at "
                            + Math.round(one.speed().revolutionsPerMinute()) + " r/min, less than four times above the"
                            + " slowest speed", one.speed().hertz(), near)));
        }

        /** True if the frequency of a peak keeps half its amplitude while the shaft turns at quite another speed. */
        private boolean isFixed(FollowedOrder order, SpeedPoint peak) {
            double hertz = peak.speed().hertzOfOrder(order.order());
            double[] elsewhere = IntStream.range(0, cascade.spectra())
                    .filter(i -> isClearOf(hertz, cascade.speed(i).hertz())).mapToDouble(i -> cascade.rmsNear(i, hertz))
                    .toArray();
            double told = order.in(cascade.quantity()).track().points().stream()
                    .filter(point -> point.seconds() == peak.seconds()).findFirst().orElseThrow().vector().amplitude();
            return elsewhere.length >= FEWEST_ELSEWHERE
                    && Percentiles.of(elsewhere).at(50) > FIXED_SHARE * Math.sqrt(0.5) * told;
        }

        /** True if no multiple of half the speed lies near a frequency. */
        private static boolean isClearOf(double hertz, double speed) {
            double halves = 2 * hertz / speed;
            return Math.abs(halves - Math.rint(halves)) > 0.25 && Math.abs(hertz / speed - 1) > 0.2;
        }

        /** Mean vector at the slowest speeds; null, and remarked, where the sweep doesn't go slow enough. */
        private OrderVector slowRoll(FollowedOrder order) {
            double slowest = sweep.lowest().hertz();
            double range = sweep.highest().hertz() / slowest;
            List<SpeedPoint> slow = order.track().points().stream()
                    .filter(point -> point.speed().hertz() <= SLOW_BAND * slowest).toList();
            if (!(range >= SLOW_RANGE) || slow.size() < FEWEST_SLOW) {
                remarks.add(Remark.note("no-slow-roll", "the slow-roll vector isn't known: the slowest speed, "
                        + Math.round(60 * slowest) + " r/min, is " + (range >= SLOW_RANGE ? "passed too quickly"
                        : "above a quarter of the fastest") + "; runout of the shaft's surface and bow are still in"
                        + " the vectors", range, SLOW_RANGE));
                return null;
            }
            double re = 0;
            double im = 0;
            for (SpeedPoint point : slow) {
                re += point.vector().amplitude() * Math.cos(point.vector().lagRadians()) / slow.size();
                im += point.vector().amplitude() * Math.sin(point.vector().lagRadians()) / slow.size();
            }
            int slowestPoint = sweep.direction() == RunDirection.RUN_UP ? 0 : order.track().points().size() - 1;
            double least = 3 * order.noise(slowestPoint) / Math.sqrt(slow.size());
            if (!(Math.hypot(re, im) > least)) {
                remarks.add(Remark.note("slow-roll-small", "the slow-roll vector doesn't stand out of the noise;"
                        + " nothing is taken off", Math.hypot(re, im), least));
                return null;
            }
            return new OrderVector(Math.hypot(re, im), Math.atan2(im, re));
        }
    }

    private static Quantity shown(Quantity recorded) {
        return recorded == Quantity.DISPLACEMENT ? Quantity.DISPLACEMENT : Quantity.VELOCITY;
    }

    /** {@return name of the point} */
    public String id() {
        return id;
    }

    /** {@return the speed over time} */
    public SpeedSweep sweep() {
        return sweep;
    }

    /** {@return what the sensor measured} */
    public Quantity recorded() {
        return recorded;
    }

    /** {@return the orders that were followed, in displacement or velocity; the slow-roll vector is taken off} */
    public List<FollowedOrder> orders() {
        return orders;
    }

    /**
     * Finds one of the orders.
     *
     * @param order the order
     * @return the order over speed; empty if it wasn't followed
     */
    public Optional<FollowedOrder> order(double order) {
        return orders.stream().filter(one -> one.order() == order).findFirst();
    }

    /** {@return what a displacement probe reads once per turn at slow roll, in m; empty if it isn't known} */
    public Optional<OrderVector> slowRoll() {
        return Optional.ofNullable(slowRoll);
    }

    /** {@return resonances that the orders excite, by order, then speed} */
    public List<SpeedResonance> resonances() {
        return resonances;
    }

    /** {@return peaks of the first order whose phase doesn't change as it does at one resonance} */
    public List<SpeedPoint> otherPeaks() {
        return otherPeaks;
    }

    /** {@return spectra at equal steps of speed; empty if they were {@linkplain #withoutCascade() let go}} */
    public Optional<Cascade> cascade() {
        return Optional.ofNullable(cascade);
    }

    /** {@return the same without the spectra, which take most of the memory} */
    public PointRun withoutCascade() {
        return new PointRun(id, sweep, recorded, orders, slowRoll, resonances, otherPeaks, null, remarks);
    }

    /** {@return what is worth knowing} */
    public List<Remark> remarks() {
        return remarks;
    }

    /** Two are equal if all that was found is. */
    @Override
    public boolean equals(Object other) {
        return other instanceof PointRun run && id.equals(run.id) && sweep.equals(run.sweep)
                && recorded == run.recorded && orders.equals(run.orders) && Objects.equals(slowRoll, run.slowRoll)
                && resonances.equals(run.resonances) && otherPeaks.equals(run.otherPeaks)
                && Objects.equals(cascade, run.cascade) && remarks.equals(run.remarks);
    }

    /** Hashes name, sweep and resonances. */
    @Override
    public int hashCode() {
        return 31 * (31 * id.hashCode() + sweep.hashCode()) + resonances.hashCode();
    }

    /** Returns name, sweep and resonances. */
    @Override
    public String toString() {
        return id + ", " + sweep + ": " + (resonances.isEmpty() ? "no resonance found" : resonances);
    }
}
