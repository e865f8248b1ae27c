package dev.vibra.speedrun;

import dev.vibra.evidence.Remark;
import dev.vibra.internal.Require;
import dev.vibra.level.Moments;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.FullSpectrum;
import dev.vibra.rotation.Orbit;
import dev.vibra.rotation.OrderVector;
import dev.vibra.rotation.ShaftCentreLine;
import dev.vibra.rotation.SpeedPoint;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectrumSettings;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What two displacement probes at one bearing show while the shaft runs up or coasts down: orbits at the resonances and
 * at the fastest speed, a full spectrum there, and the line that the shaft's centre follows. Immutable.
 *
 * @see "ISO 13373-2:2016, orbits and two-sided spectra (principle, from memory, unverified)"
 */
public final class ProbePairRun implements Serializable {
    private static final long serialVersionUID = 1;
    private static final int SAMPLES_PER_TURN = 64;
    private static final int TURNS = 4;
    private static final int MOST_ORBITS = 4;
    private static final int PARTS = 60;
    private static final double FULL_SPECTRUM_TURNS = 32;

    private final String id;
    private final ProbePair probes;
    private final List<OrbitAt> orbits;
    private final FullSpectrum fullSpectrum;
    private final List<CentrePoint> centreLine;
    private final List<Remark> remarks;

    private ProbePairRun(String id, ProbePair probes, List<OrbitAt> orbits, FullSpectrum fullSpectrum,
            List<CentrePoint> centreLine, List<Remark> remarks) {
        this.id = Require.notBlank("id", id);
        this.probes = Objects.requireNonNull(probes, "probes");
        this.orbits = Require.copy("orbits", orbits);
        this.fullSpectrum = Objects.requireNonNull(fullSpectrum, "fullSpectrum");
        this.centreLine = Require.copy("centreLine", centreLine);
        this.remarks = Require.copy("remarks", remarks);
    }

    private Object readResolve() {
        return new ProbePairRun(id, probes, orbits, fullSpectrum, centreLine, remarks);
    }

    /**
     * Says why no orbits can be made.
     *
     * @param x recording of the first probe, mean kept
     * @param y recording of the second probe at the same times, mean kept
     * @param probes how they stand
     * @return the reason, without full stop; empty if {@link #of} will answer
     */
    public static Optional<String> obstacle(Waveform x, Waveform y, ProbePair probes) {
        Objects.requireNonNull(probes, "probes");
        Objects.requireNonNull(y, "y");
        if (Objects.requireNonNull(x, "x").quantity() != Quantity.DISPLACEMENT
                || y.quantity() != Quantity.DISPLACEMENT) {
            return Optional.of("orbits are made of displacement; one recording is of " + (x.quantity()
                    == Quantity.DISPLACEMENT ? y : x).quantity());
        }
        if (x.length() != y.length() || x.sampleRateHertz() != y.sampleRateHertz()
                || x.startSeconds() != y.startSeconds()) {
            return Optional.of("the two recordings differ in length or sample rate, so they aren't simultaneous");
        }
        return probes.obstacle();
    }

    /**
     * Makes orbits and centre line.
     *
     * @param id name of the bearing
     * @param x recording of the first probe, mean kept
     * @param y recording of the second probe at the same times, mean kept
     * @param xRun the first probe's orders over the sweep
     * @param yRun the second probe's orders over the same sweep
     * @param probes how they stand, without an {@linkplain #obstacle obstacle}
     * @return the result
     * @throws IllegalArgumentException if there is an obstacle or the order 1 wasn't followed
     */
    public static ProbePairRun of(String id, Waveform x, Waveform y, PointRun xRun, PointRun yRun, ProbePair probes) {
        obstacle(x, y, probes).ifPresent(reason -> {
            throw new IllegalArgumentException("x and y must make a pair: " + reason);
        });
        SpeedSweep sweep = Objects.requireNonNull(xRun, "xRun").sweep();
        if (!sweep.equals(Objects.requireNonNull(yRun, "yRun").sweep()) || xRun.order(1).isEmpty()
                || yRun.order(1).isEmpty()) {
            throw new IllegalArgumentException("xRun and yRun must follow order 1 over one sweep: " + xRun + "; "
                    + yRun);
        }
        return new Pairing(x, y, xRun, yRun, probes).run(id);
    }

    /** One pass over a pair of recordings. */
    private record Pairing(Waveform x, Waveform y, PointRun xRun, PointRun yRun, ProbePair probes) {
        ProbePairRun run(String id) {
            SpeedSweep sweep = xRun.sweep();
            List<Remark> remarks = new ArrayList<>();
            if (xRun.slowRoll().isEmpty() || yRun.slowRoll().isEmpty()) {
                remarks.add(Remark.note("orbit-with-runout", "the slow-roll vector of "
                        + (xRun.slowRoll().isEmpty() && yRun.slowRoll().isEmpty() ? "either probe isn't" : "one probe"
                        + " isn't") + " taken off: runout of the shaft's surface and bow are in the ellipses", 0, 0));
            }
            List<OrbitAt> orbits = new ArrayList<>();
            Stream.concat(Stream.of(sweep.highest().hertz()), Stream.concat(xRun.resonances().stream(),
                    yRun.resonances().stream()).filter(one -> one.order() == 1)
                    .sorted(Comparator.comparing(one -> -one.peak().vector().amplitude()))
                    .map(one -> one.peak().speed().hertz()))
                    .forEach(hertz -> {
                        boolean near = orbits.stream().anyMatch(one -> Math.abs(one.speed().hertz() / hertz - 1)
                                < 0.05);
                        if (orbits.size() < MOST_ORBITS && !near) {
                            orbits.add(at(hertz));
                        }
                    });
            orbits.sort(Comparator.comparing(one -> one.speed().hertz()));
            return new ProbePairRun(id, probes, orbits, fullSpectrum(), centreLine(), remarks);
        }

        private OrbitAt at(double hertz) {
            SpeedPoint px = nearest(xRun, hertz);
            SpeedPoint py = nearest(yRun, hertz);
            OrderVector vx = along(px.vector());
            OrderVector vy = along(py.vector());
            Orbit ellipse = probes.turnsFromXToY() ? Orbit.of(vx, vy) : Orbit.of(vy, vx);
            SpeedSweep sweep = xRun.sweep();
            double turn = Math.floor(Math.max(0, Math.min(sweep.angle().revolutions() - TURNS - 1,
                    sweep.angle().revolutionsAt(px.seconds()) - 0.5 * TURNS)));
            double[] rights = new double[TURNS * SAMPLES_PER_TURN];
            double[] ups = new double[rights.length];
            double[] means = new double[2];
            for (int i = 0; i < rights.length; i++) {
                double place = (sweep.angle().secondsAt(turn + (double) i / SAMPLES_PER_TURN) - x.startSeconds())
                        * x.sampleRateHertz();
                double a = probes.sign() * value(x, place);
                double b = probes.sign() * value(y, place);
                rights[i] = probes.right(a, b);
                ups[i] = probes.up(a, b);
                means[0] += rights[i] / rights.length;
                means[1] += ups[i] / rights.length;
            }
            for (int i = 0; i < rights.length; i++) {
                rights[i] -= means[0];
                ups[i] -= means[1];
            }
            return new OrbitAt(px.speed(), ellipse, mixed(vx, vy, true), mixed(vx, vy, false), rights, ups,
                    SAMPLES_PER_TURN);
        }

        /** A straight line between samples; the places only draw a path. */
        private static double value(Waveform wave, double place) {
            int i = (int) Math.max(0, Math.min(wave.length() - 2.0, Math.floor(place)));
            return wave.at(i) + Math.max(0, Math.min(1, place - i)) * (wave.at(i + 1) - wave.at(i));
        }

        private OrderVector along(OrderVector vector) {
            return probes.sign() > 0 ? vector : new OrderVector(vector.amplitude(), vector.lagRadians() + Math.PI);
        }

        private OrderVector mixed(OrderVector vx, OrderVector vy, boolean right) {
            double[] re = {vx.amplitude() * Math.cos(vx.lagRadians()), vy.amplitude() * Math.cos(vy.lagRadians())};
            double[] im = {vx.amplitude() * Math.sin(vx.lagRadians()), vy.amplitude() * Math.sin(vy.lagRadians())};
            double real = right ? probes.right(re[0], re[1]) : probes.up(re[0], re[1]);
            double imaginary = right ? probes.right(im[0], im[1]) : probes.up(im[0], im[1]);
            return new OrderVector(Math.hypot(real, imaginary), Math.atan2(imaginary, real));
        }

        private static SpeedPoint nearest(PointRun run, double hertz) {
            return run.order(1).orElseThrow().track().points().stream().min(Comparator.comparing(point ->
                    Math.abs(point.speed().hertz() - hertz))).orElseThrow();
        }

        private FullSpectrum fullSpectrum() {
            SpeedSweep sweep = xRun.sweep();
            double rate = x.sampleRateHertz();
            double seconds = FULL_SPECTRUM_TURNS / sweep.highest().hertz();
            boolean up = sweep.direction() == RunDirection.RUN_UP;
            double begin = up ? Math.max(sweep.beginSeconds(), sweep.endSeconds() - seconds) : sweep.beginSeconds();
            int from = (int) Math.max(0, (begin - x.startSeconds()) * rate);
            int length = (int) Math.max(8, Math.min(x.length() - (double) from, seconds * rate));
            from = Math.min(from, x.length() - length);
            Waveform a = x.part(from, length);
            Waveform b = y.part(from, length);
            SpectrumSettings settings = SpectrumSettings.withDefaults().withResolution(rate / length);
            return probes.turnsFromXToY() ? FullSpectrum.of(a, b, settings) : FullSpectrum.of(b, a, settings);
        }

        private List<CentrePoint> centreLine() {
            SpeedSweep sweep = xRun.sweep();
            double rate = x.sampleRateHertz();
            int from = (int) Math.max(0, Math.ceil((sweep.beginSeconds() - x.startSeconds()) * rate));
            int to = (int) Math.min(x.length(), Math.floor((sweep.endSeconds() - x.startSeconds()) * rate));
            int parts = (int) Math.max(2, Math.min(PARTS, (sweep.endSeconds() - sweep.beginSeconds())
                    * sweep.lowest().hertz()));
            int length = (to - from) / parts;
            int slow = sweep.direction() == RunDirection.RUN_UP ? from : from + (parts - 1) * length;
            ShaftCentreLine line = ShaftCentreLine.of(x.part(from, length * parts), y.part(from, length * parts),
                    Moments.of(x.samples(), slow, length).mean(), Moments.of(y.samples(), slow, length).mean(), parts);
            return line.points().stream().map(point -> new CentrePoint(sweep.speedAt(Math.max(sweep.beginSeconds(),
                    Math.min(sweep.endSeconds(), point.seconds()))),
                    probes.right(probes.sign() * point.x(), probes.sign() * point.y()),
                    probes.up(probes.sign() * point.x(), probes.sign() * point.y()))).toList();
        }
    }

    /** {@return name of the bearing} */
    public String id() {
        return id;
    }

    /** {@return how the probes stand} */
    public ProbePair probes() {
        return probes;
    }

    /** {@return orbits at the resonances, at most three, and at the fastest speed, by rising speed} */
    public List<OrbitAt> orbits() {
        return orbits;
    }

    /** {@return two-sided spectrum near the fastest speed, forward with the shaft at positive frequency} */
    public FullSpectrum fullSpectrum() {
        return fullSpectrum;
    }

    /** {@return mean places of the shaft in the order of time, from where it was at the slowest speed} */
    public List<CentrePoint> centreLine() {
        return centreLine;
    }

    /** {@return what is worth knowing} */
    public List<Remark> remarks() {
        return remarks;
    }

    /** Returns name and orbits. */
    @Override
    public String toString() {
        return id + ": " + orbits;
    }
}
