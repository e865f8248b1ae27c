package dev.vibra.descriptor;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.lines.NoiseFloor;
import dev.vibra.machine.Rate;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.spectrum.Spectrum;
import java.util.Objects;
import java.util.Optional;

/**
 * Reads single lines of a velocity spectrum; how sure they are is told by the spectrum as it was recorded. For one
 * thread, not for keeping, as the {@link Signals} that make it.
 */
public final class LineReader {
    /** A line counts where noise alone makes one that large in a ten-thousandth of all recordings. */
    static final double LOG_FALSE_ALARM = -4;
    /** A line over no noise at all would be infinitely sure. */
    private static final double LEAST_LOG = -300;
    private static final int LOWEST_LINE = 2;
    /** Lines that a Hann window parts: the width of its main lobe. */
    private static final double PARTED_LINES = 4;

    private final Quantity recorded;
    private final Spectrum velocity;
    private final NoiseFloor floor;

    LineReader(Quantity recorded, Spectrum velocity, NoiseFloor floor) {
        this.recorded = recorded;
        this.velocity = velocity;
        this.floor = floor;
    }

    /** {@return distance of the lines in Hz} */
    public double resolutionHertz() {
        return velocity.resolutionHertz();
    }

    /** {@return least distance in Hz of two lines that this spectrum parts} */
    public double partedHertz() {
        return PARTED_LINES * resolutionHertz();
    }

    /**
     * Tells whether a line can be looked for.
     *
     * @param hertz where it would lie, in Hz
     * @param reachHertz how far beside it is looked for, in Hz
     * @return false too close to 0 Hz, and above the end of the spectrum
     */
    public boolean covers(double hertz, double reachHertz) {
        return hertz - reachHertz >= LOWEST_LINE * resolutionHertz()
                && hertz + reachHertz < velocity.frequencyHertz(velocity.lines() - 2);
    }

    /**
     * Looks for a line.
     *
     * @param rate rate whose multiple it would be
     * @param order which multiple, at least 1
     * @param expected where it would lie, in Hz; within the spectrum, see {@link #covers}
     * @param reachHertz how far beside it is looked for, in Hz, zero or more
     * @return the line, found or not
     */
    public NamedLine line(Rate rate, int order, double expected, double reachHertz) {
        Objects.requireNonNull(rate, "rate");
        Require.positive("expected", expected, "Hz");
        if (!covers(expected, Require.notNegative("reachHertz", reachHertz, "Hz"))) {
            throw new IllegalArgumentException("expected must lie within the spectrum: " + expected + " Hz");
        }
        int searched = 1 + (int) Math.ceil(2 * reachHertz / resolutionHertz());
        Optional<SpectralPeak> peak = velocity.peakNear(expected, reachHertz);
        double hertz = peak.map(SpectralPeak::frequencyHertz).orElse(expected);
        Level level = peak.map(SpectralPeak::level).orElseGet(() -> noise(expected));
        double chance = peak.isPresent() ? logChance(hertz, level, searched) : 0;
        return new NamedLine(rate, order, hertz, level, chance, chance < LOG_FALSE_ALARM);
    }

    private Level noise(double hertz) {
        double rms = velocity.amplitude((int) Math.rint(hertz / resolutionHertz()), Detector.RMS);
        return Level.ofSi(rms, Quantity.VELOCITY, Detector.RMS);
    }

    /** Decimal logarithm of the probability that the largest of several lines of noise is as large. */
    double logChance(double hertz, Level level, int searched) {
        double si = level.sineAs(recorded, Detector.RMS, hertz).si();
        return Math.max(LEAST_LOG, floor.log10Probability(hertz, si, searched));
    }

    /**
     * Finds the least that the spectrum reads between two frequencies: lines that stand apart have a dip between them.
     *
     * @param from one of them in Hz
     * @param to the other in Hz
     * @return rms velocity in m/s
     */
    public double least(double from, double to) {
        int last = (int) Math.floor(Math.max(from, to) / resolutionHertz());
        int first = Math.max(0, (int) Math.ceil(Math.min(from, to) / resolutionHertz()));
        double least = Double.MAX_VALUE;
        for (int k = Math.min(first, last); k <= Math.min(last, velocity.lines() - 1); k++) {
            least = Math.min(least, velocity.amplitude(k, Detector.RMS));
        }
        return least;
    }

    /** Returns the distance of the lines. */
    @Override
    public String toString() {
        return "lines of " + Digits.significant(resolutionHertz(), 3) + " Hz";
    }
}
