package dev.vibra.record;

import dev.vibra.bandmap.DyadicMapPlan;
import dev.vibra.envelope.EnvelopeSpectrumPlan;
import dev.vibra.integration.MotionPlan;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Consumer;

/**
 * Recordings of one length and rate, each transformed once for all stages that were hung on this plan:
 *
 * <pre>{@code
 * RecordPlan plan = RecordPlan.of(102_400, 25_600, Quantity.ACCELERATION);
 * MotionPlan velocity = plan.motion(Quantity.VELOCITY, Band.of(10, 1000));
 * DyadicMapPlan map = plan.dyadicMap(6);
 * plan.load(samples, 0);                          // for each recording
 * velocity.rms();
 * map.kurtosis(map.best());
 * }</pre>
 *
 * <p>The mean is taken out. Holds workspace: not thread-safe, one per thread, its stages with it; allocates nothing once
 * made. A recording that leaves its mean by rounding only has lines of zero.
 */
public final class RecordPlan {
    private final double sampleRateHertz;
    private final Quantity quantity;
    private final RecordTransform transform;
    private final double[] lines;
    private final List<Consumer<double[]>> stages = new ArrayList<>();

    private RecordPlan(int length, double sampleRateHertz, Quantity quantity) {
        transform = new RecordTransform(length);
        this.sampleRateHertz = Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        this.quantity = quantity;
        lines = new double[transform.spectrumLength()];
    }

    /**
     * Makes a plan without stages.
     *
     * @param length number of samples of a recording, 16 to 2²⁶
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param quantity what the samples measure
     * @return a plan with its workspace
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static RecordPlan of(int length, double sampleRateHertz, Quantity quantity) {
        return new RecordPlan(length, sampleRateHertz, Objects.requireNonNull(quantity, "quantity"));
    }

    /**
     * Hangs a level in a band on this plan.
     *
     * @param target quantity wanted
     * @param band band from above 0 Hz to at most half the sample rate
     * @return the stage, which has the level after each {@link #load}
     * @throws IllegalArgumentException if the band is out of range, the recording too short for it, or one quantity no
     *     integral of the other
     */
    public MotionPlan motion(Quantity target, Band band) {
        Objects.requireNonNull(target, "target");
        MotionPlan stage = MotionPlan.of(transform.length(), sampleRateHertz, quantity, target, band);
        stages.add(stage::take);
        return stage;
    }

    /**
     * Hangs an envelope spectrum on this plan.
     *
     * @param band band up to half the sample rate that holds at least two lines of the recording
     * @param highestHertz frequency up to which lines are wanted, at most the width of the band
     * @return the stage, which has the lines after each {@link #load}
     * @throws IllegalArgumentException if an argument is out of range
     */
    public EnvelopeSpectrumPlan envelopeSpectrum(Band band, double highestHertz) {
        EnvelopeSpectrumPlan stage =
                EnvelopeSpectrumPlan.of(transform.length(), sampleRateHertz, band, highestHertz);
        stages.add(stage::take);
        return stage;
    }

    /**
     * Hangs a search for the most impulsive band on this plan.
     *
     * @param levels number of times that the range is halved, 2 to 12, as long as the narrowest bands hold four lines
     * @return the stage, which has the values after each {@link #load}
     * @throws IllegalArgumentException if the number of levels is out of range
     */
    public DyadicMapPlan dyadicMap(int levels) {
        DyadicMapPlan stage = DyadicMapPlan.of(transform.length(), sampleRateHertz, levels);
        stages.add(stage::take);
        return stage;
    }

    /**
     * Transforms a recording and lets each stage take its lines.
     *
     * @param samples samples in SI units; left alone
     * @param offset index of the first sample
     * @throws IllegalArgumentException if the range leaves the array or a sample is not finite or beyond 1e70
     */
    public void load(double[] samples, int offset) {
        transform.forward(samples, offset, lines);
        for (int i = 0; i < stages.size(); i++) {
            stages.get(i).accept(lines);
        }
    }

    /** Returns length and number of stages, as in {@code 102400 samples at 25600.0 Hz, 4 stage(s)}. */
    @Override
    public String toString() {
        return transform.length() + " samples at " + sampleRateHertz + " Hz, " + stages.size() + " stage(s)";
    }
}
