package dev.vibra.integration;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.transform.RealTransform;
import java.util.Arrays;
import java.util.Objects;

/**
 * Level of a motion within a band from the lines of a whole recording, which other stages share: rms and peak-to-peak
 * value of what {@link SpectralIntegration} gives sample by sample, in a fraction of its time, with an error that is
 * stated.
 *
 * <p>The lines up to the band's end are transformed back at a lower rate (a skirt from 1.1 to 1.6 times the upper end
 * keeps the jump from the last sample to the first within the tapers); what follows there is that of {@link
 * SpectralIntegration}: line taken out, ends tapered, zeros appended, each line divided, back again. Levels are those
 * between the tapers, rms about the mean; the peak-to-peak value is looked for at instants at least as dense as the
 * samples of the recording, which are those of the samples where their number has suitable factors.
 *
 * <p>The rms agrees with that of the samples to 0.05 %, the peak-to-peak value to 0.01 %, where both are settled.
 *
 * <p>Tapers take three periods of the lower end of the band, and a third of the recording each if it holds fewer than
 * nine; below seven there is no answer. {@link #relativeError} says what that costs: of P periods
 * {@code √((a + d)² + ((2a + d)·R)²)}, {@code d = c·(9/P)^2.5}, with a = 0.012 and c = 0.04 for two integrations, 0.006
 * and 0.015 else, R the rms of what lies below the band and its skirt, taken as if it were at the lower end, over the
 * rms within. It is the difference from what a recording of forty more periods gives for the same stretch, and holds
 * for 95 of 100 simulated recordings of each kind: tones anywhere in the band, noise, drift, sway below the band. What
 * the sensor, the ends of the band and the choice of the stretch do to a level is not in it.
 *
 * <p>Holds workspace: not thread-safe, one per thread; allocates nothing once made.
 *
 * @see SpectralIntegration
 */
public final class MotionPlan {
    private static final double TAPER_PERIODS = 3;
    private static final double FEWEST_PERIODS = 7;
    /** Fitted to the simulated recordings of MotionStudy, beside its tests. */
    private static final double[] LEAST_ERROR = {0.006, 0.006, 0.012};
    private static final double[] ERROR_OF_NINE_PERIODS = {0.015, 0.015, 0.04};
    /** So much more below the band than in it leaves nothing of a level; keeps the error a number. */
    private static final double MOST_BELOW = 1e6;

    private final int length;
    private final Quantity quantity;
    private final Band band;
    private final double periods;
    private final double errorWithin;
    private final double errorFromBelow;
    private final RecordReduction reduction;
    private final EndTaper taper;
    private final RealTransform transform;
    private final BandResponse response;
    private final RealTransform back;
    private final FineRange range;
    private final int dense;
    private final double[] spectrum;
    private final double[] motion;
    private double error;
    private double rms;
    private double peakToPeak;
    private boolean rmsKnown;
    private boolean peakToPeakKnown;

    private MotionPlan(int length, double sampleRate, Quantity from, Quantity to, Band band) {
        this.length = Require.count("length", length, 16, Require.MOST_SAMPLES);
        Require.positive("sampleRateHertz", sampleRate, "Hz");
        this.band = band.requireBelowNyquist(sampleRate);
        quantity = to;
        Require.positive("lowest frequency of the band", band.lowestHertz(), "Hz");
        int integrations = from == to ? 0 : from.integrationsTo(to);
        if (integrations < 0) {
            throw new IllegalArgumentException("quantity must be " + from + " or an integral of it: " + to);
        }
        periods = length / sampleRate * band.lowestHertz();
        if (!(periods >= FEWEST_PERIODS)) {
            throw Require.failure("recording", "at least seven periods of the lower end of its band long, "
                    + FEWEST_PERIODS / band.lowestHertz() + " s", length / sampleRate);
        }
        double ofLength = ERROR_OF_NINE_PERIODS[integrations] * Math.pow(9 / periods, 2.5);
        errorWithin = LEAST_ERROR[integrations] + ofLength;
        errorFromBelow = 2 * LEAST_ERROR[integrations] + ofLength;
        reduction = new RecordReduction(length, sampleRate, BandResponse.highestHertz(band));
        int samples = reduction.samples();
        double rate = sampleRate * samples / length;
        taper = new EndTaper(samples, (int) Math.min(samples / 3, Math.ceil(TAPER_PERIODS * rate / band.lowestHertz())));
        transform = RealTransform.of(RealTransform.fastLengthFrom(samples + taper.samples()));
        spectrum = new double[2 * transform.lines()];
        response = new BandResponse(transform.lines(), rate / transform.length(), integrations, band);
        back = samples < length ? RealTransform.of(2 * transform.length()) : transform;
        motion = new double[2 * back.lines()];
        dense = (int) Math.ceil(length / (double) (samples < length ? 2 * samples : samples));
        range = new FineRange(dense, BandResponse.highestHertz(band) / (2 * rate));
    }

    /**
     * Makes a plan.
     *
     * @param length number of samples of a recording, 16 to 2²⁶ and seven periods of the lower end of the band
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param from quantity that goes in
     * @param to quantity wanted: the same one, its integral or its double integral
     * @param band band from above 0 Hz to at most half the sample rate
     * @return a plan with its workspace
     * @throws IllegalArgumentException if an argument is out of range or the recording too short for the band
     */
    public static MotionPlan of(int length, double sampleRateHertz, Quantity from, Quantity to, Band band) {
        Objects.requireNonNull(band, "band");
        Objects.requireNonNull(to, "to");
        return new MotionPlan(length, sampleRateHertz, Objects.requireNonNull(from, "from"), to, band);
    }

    /**
     * Takes the lines of a recording.
     *
     * @param lines {@code length / 2 + 1} interleaved lines as {@link RealTransform#forward} gives them; left alone
     * @throws IllegalArgumentException if the array is too short or lines are not finite
     */
    public void take(double[] lines) {
        Require.range("lines", lines, 0, 2 * (length / 2 + 1));
        reduction.reduce(lines, spectrum);
        taper.apply(spectrum, 0, spectrum);
        Arrays.fill(spectrum, reduction.samples(), spectrum.length, 0);
        transform.forward(spectrum, 0, spectrum);
        double below = Math.sqrt(response.squaresBelow(spectrum)) * response.gainAtLowest();
        response.apply(spectrum);
        double within = Require.finite("root of the squares of the lines", Math.sqrt(response.squares(spectrum)));
        double ratio = within > 0 ? Math.min(MOST_BELOW, below / within) : 0;
        error = Math.hypot(errorWithin, errorFromBelow * ratio);
        rmsKnown = false;
        peakToPeakKnown = false;
    }

    /**
     * Returns the rms value, about the mean, of the recording taken last.
     *
     * @return rms in SI units
     */
    public double rms() {
        if (!rmsKnown) {
            transform.inverse(spectrum, motion, 0);
            rms = deviation(motion, taper.samples(), reduction.samples() - taper.samples());
            rmsKnown = true;
        }
        return rms;
    }

    /** Root of the mean square about the mean, which is small in a band: one pass, sums that don't wait for each other. */
    private static double deviation(double[] x, int from, int to) {
        double evens = 0;
        double odds = 0;
        double evenSquares = 0;
        double oddSquares = 0;
        int i = from;
        for (; i < to - 1; i += 2) {
            evens += x[i];
            odds += x[i + 1];
            evenSquares += x[i] * x[i];
            oddSquares += x[i + 1] * x[i + 1];
        }
        if (i < to) {
            evens += x[i];
            evenSquares += x[i] * x[i];
        }
        double mean = (evens + odds) / (to - from);
        return Math.sqrt(Math.max(0, (evenSquares + oddSquares) / (to - from) - mean * mean));
    }

    /**
     * Returns the peak-to-peak value of the recording taken last.
     *
     * @return largest less smallest value in SI units
     */
    public double peakToPeak() {
        if (!peakToPeakKnown) {
            System.arraycopy(spectrum, 0, motion, 0, spectrum.length);
            Arrays.fill(motion, spectrum.length, motion.length, 0);
            back.inverse(motion, motion, 0);
            int times = back.length() / transform.length();
            int from = taper.samples() * times * dense;
            peakToPeak = times * range.of(motion, from, reduction.samples() * times * dense - from);
            peakToPeakKnown = true;
        }
        return peakToPeak;
    }

    /**
     * Returns the error of either level of the recording taken last: what 95 of 100 stay within.
     *
     * @return a part of the level, at least 0.006, without an upper limit: above 1, the level says nothing
     */
    public double relativeError() {
        return error;
    }

    /**
     * Returns how many periods of the lower end of the band a recording holds.
     *
     * @return number of periods, at least 7
     */
    public double periods() {
        return periods;
    }

    /**
     * Returns the time from the start of a recording to the first instant that the levels count, and from the last
     * one to its end.
     *
     * @return part of the duration, from 0 to a third
     */
    public double taperedPart() {
        return taper.samples() / (double) reduction.samples();
    }

    /** Returns quantity, length and band. */
    @Override
    public String toString() {
        return quantity + " of " + length + " samples, " + band;
    }
}
