package dev.vibra.integration;

import dev.vibra.filter.Butterworth;
import dev.vibra.filter.CascadeFilter;
import dev.vibra.filter.SectionCascade;
import dev.vibra.internal.Convolver;
import dev.vibra.internal.Require;
import dev.vibra.internal.StateFormat;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.state.Recipe;
import dev.vibra.state.Resumable;
import java.util.Objects;

/**
 * Measuring chain of a vibration-severity instrument in the time domain: integration and band limiting by a third-order
 * Butterworth high-pass at the lower and a third-order Butterworth low-pass at the upper end of the band.
 *
 * <p>Nominal response, beside the integration: {@code 1/√(1 + (f1/f)⁶) · 1/√(1 + (f/f2)⁶)}, so 0.7071 at both ends. The
 * sampled chain keeps it within 0.1 % up to 1.3 times the upper end and within 0.5 % up to 0.4 times the sample rate,
 * as long as the lower end is at most a hundredth of the sample rate (above 0.4 times the sample rate a recording holds
 * only the roll-off of its anti-aliasing filter). The integrator is the trapezoidal rule, whose poles cancel zeros of
 * the high-pass, so that a bias can't drift; what the bilinear transform bends is straightened by a symmetric filter of
 * 33 taps.
 *
 * <p>The chain starts as if the first sample had stood there for ever, so that a bias makes no start-up of its own.
 * Output lags by 16 samples and the phase of the filters. Blocks of any size give the output of one pass. Holds state:
 * not thread-safe, one per signal; allocates nothing once made.
 *
 * @see "ISO 2954:2012, 5.3 and 5.4 and Table 2 (as summarised by public secondary sources)"
 */
public final class BandLimitingChain implements Resumable<BandLimitingChain> {
    private static final StateFormat FORMAT = new StateFormat("chain", 1);
    /** After this many periods of the lower end a start-up has fallen below 1e-5 in bands of an octave and more. */
    private static final double SETTLING_PERIODS = 4;

    private static final int ORDER = 3;

    private final Made made;
    private final Band band;
    private final double sampleRateHertz;
    private final int integrations;
    private final SectionCascade cascade;
    private final CascadeFilter filter;
    private final double[] taps;
    private final Convolver convolver;
    private boolean fresh = true;

    private BandLimitingChain(Quantity from, Quantity to, Band band, double sampleRateHertz) {
        made = new Made(from, to, band, sampleRateHertz);
        this.band = band;
        this.sampleRateHertz = Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        integrations = from.integrationsTo(to);
        if (integrations < 0) {
            throw new IllegalArgumentException("quantity must be " + from + " or an integral of it: " + to);
        }
        Require.positive("lowest frequency of the band", band.lowestHertz(), "Hz");
        double limit = BendCorrection.HIGHEST_RELATIVE_FREQUENCY * sampleRateHertz;
        if (!(band.highestHertz() <= limit)) {
            throw Require.failure("band", "at or below 0.4 times the sample rate, " + limit + " Hz",
                    band.highestHertz());
        }
        cascade = integratingHighPass().then(Butterworth.lowPass(ORDER, band.highestHertz(), sampleRateHertz));
        filter = cascade.newFilter();
        taps = BendCorrection.design(integrations, band.highestHertz() / sampleRateHertz);
        convolver = new Convolver(taps);
    }

    /**
     * Makes a chain at rest.
     *
     * @param from motion that goes in
     * @param to motion that comes out: the same one, its integral or its double integral
     * @param band band; the lower end above zero, the upper end at most 0.4 times the sample rate
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @return a chain with its state
     * @throws IllegalArgumentException if an argument is out of range or the motion would have to be differentiated
     */
    public static BandLimitingChain of(Quantity from, Quantity to, Band band, double sampleRateHertz) {
        return new BandLimitingChain(Objects.requireNonNull(from, "from"), Objects.requireNonNull(to, "to"),
                Objects.requireNonNull(band, "band"), sampleRateHertz);
    }

    /**
     * Computes the response that the standard names as nominal, without the integration.
     *
     * @param band ends of the band
     * @param hertz frequency in Hz, zero or more
     * @return gain from 0 to 1
     * @throws IllegalArgumentException if the frequency is negative or not finite
     */
    public static double nominalGain(Band band, double hertz) {
        Objects.requireNonNull(band, "band");
        Require.notNegative("hertz", hertz, "Hz");
        if (hertz == 0) {
            return 0;
        }
        return 1 / Math.sqrt((1 + Math.pow(band.lowestHertz() / hertz, 2 * ORDER))
                * (1 + Math.pow(hertz / band.highestHertz(), 2 * ORDER)));
    }

    /**
     * Computes the response of this sampled chain, without the integration: what {@link #nominalGain} should be.
     *
     * @param hertz frequency in Hz, above zero, at most half the sample rate
     * @return gain relative to an ideal integrator
     * @throws IllegalArgumentException if the frequency is out of range
     */
    public double gain(double hertz) {
        Require.positive("hertz", hertz, "Hz");
        double ideal = Math.pow(2 * Math.PI * hertz, -integrations);
        return cascade.gain(hertz, sampleRateHertz) * BendCorrection.gain(taps, hertz / sampleRateHertz) / ideal;
    }

    /**
     * Returns the number of samples after the start for which the output isn't settled: four periods of the lower
     * end, and the length of the correcting filter.
     *
     * @return number of output samples to leave out
     */
    public int settlingSamples() {
        double settling = Math.ceil(SETTLING_PERIODS * sampleRateHertz / band.lowestHertz()) + taps.length;
        return (int) Math.min(settling, Integer.MAX_VALUE);
    }

    /**
     * Passes a block through the chain. A sample that is not finite spoils the output until the next reset.
     *
     * @param in input in SI units; left alone unless it is also the output
     * @param inOffset index of the first input sample
     * @param out receives the output in SI units; may be the input array at the same offset
     * @param outOffset index of the first output sample
     * @param length number of samples, zero or more
     * @throws IllegalArgumentException if a range leaves its array
     */
    public void process(double[] in, int inOffset, double[] out, int outOffset, int length) {
        if (fresh && length > 0) {
            Require.range("in", in, inOffset, length);
            filter.settleAt(in[inOffset]);
            fresh = false;
        }
        filter.process(in, inOffset, out, outOffset, length);
        convolver.process(out, outOffset, out, outOffset, length);
    }

    /** Puts the chain into its state before the first sample. */
    public void reset() {
        fresh = true;
        filter.reset();
        convolver.reset();
    }

    @Override
    public Recipe<BandLimitingChain> recipe() {
        return made;
    }

    /** What makes such a chain. */
    private record Made(Quantity from, Quantity to, Band band, double sampleRateHertz)
            implements Recipe<BandLimitingChain> {
        @Override
        public BandLimitingChain make() {
            return of(from, to, band, sampleRateHertz);
        }

        int code() {
            return StateFormat.settings(from.name().hashCode(), to.name().hashCode(), band.lowestHertz(),
                    band.highestHertz(), sampleRateHertz);
        }

        @Override
        public String toString() {
            return "band-limiting chain " + band + " at " + sampleRateHertz + " Hz";
        }
    }

    @Override
    public int stateLength() {
        return StateFormat.HEADER + 1 + filter.stateLength() + convolver.stateLength();
    }

    @Override
    public int snapshotTo(double[] out, int offset) {
        int at = FORMAT.write(out, offset, stateLength(), made.code());
        out[at++] = fresh ? 1 : 0;
        return convolver.put(out, filter.snapshotTo(out, at));
    }

    @Override
    public int resumeFrom(double[] in, int offset) {
        reset();
        int at = FORMAT.check(in, offset, stateLength(), made.code());
        boolean first = StateFormat.flag(in, at++);
        at = filter.resumeFrom(in, at);
        fresh = first;
        return convolver.take(in, at);
    }

    /**
     * The high-pass has three zeros at z = 1; each trapezoidal integrator (T/2)(1 + z⁻¹)/(1 - z⁻¹) cancels one of them.
     */
    private SectionCascade integratingHighPass() {
        SectionCascade highPass = Butterworth.highPass(ORDER, band.lowestHertz(), sampleRateHertz);
        double halfStep = 0.5 / sampleRateHertz;
        double[] first = highPass.section(0);
        double[] second = highPass.section(1);
        if (integrations >= 1) {
            double gain = first[0] * halfStep;
            first[0] = gain;
            first[1] = gain;
        }
        if (integrations == 2) {
            double gain = second[0] * halfStep;
            second[0] = gain;
            second[1] = 0;
            second[2] = -gain;
        }
        return SectionCascade.of(first, second);
    }

    /** Returns band and sample rate. */
    @Override
    public String toString() {
        return made.toString();
    }
}
