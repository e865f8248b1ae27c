package dev.vibra.integration;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.transform.RealTransform;
import java.util.Arrays;
import java.util.Objects;

/**
 * Integration, differentiation or plain band limiting of a whole recording in the frequency domain, without phase
 * shift.
 *
 * <p>Each line is divided by {@code (2πi·f)ⁿ}, n integrations. Within the band the response is exact; beside it lie
 * skirts of half a cosine, two fifths of the lower end wide below and a tenth of the upper end wide above (cut at half
 * the sample rate). Sharper skirts would ring longer at the ends of the recording.
 *
 * <p>Edge rule: the least-squares line is taken out and both ends are tapered over three periods of the lower end, then
 * zeros are appended, so that the jump from the last sample to the first can't turn into drift. Only the samples
 * between the tapers are settled; the others are not handed out. A sine in the band is right within 0.1 % in the middle
 * half of a recording of 40 periods of the lower end, in a band of two octaves and more; shorter recordings and
 * narrower bands ring longer, up to several per cent close to the tapers for a sine at an end of the band. A band from
 * 0 Hz is allowed where nothing is integrated; nothing is taken out and tapered then.
 *
 * <p>Holds workspace: not thread-safe, one per thread; allocates nothing once made.
 *
 * @see "A. Brandt, R. Brincker, Integrating time signals in frequency domain - comparison with time domain integration,
 *     Measurement 58 (2014) 511-519, doi:10.1016/j.measurement.2014.09.004"
 */
public final class SpectralIntegration {
    private static final double TAPER_PERIODS = 3;

    private final int length;
    private final Band band;
    private final EndTaper taper;
    private final RealTransform transform;
    private final BandResponse response;
    /** Samples, then their lines. */
    private final double[] padded;

    private SpectralIntegration(int length, double sampleRate, Quantity from, Quantity to, Band band) {
        this.length = Require.atLeast("length", length, 2);
        Require.positive("sampleRateHertz", sampleRate, "Hz");
        this.band = band.requireBelowNyquist(sampleRate);
        int integrations = from == to ? 0 : from.integrationsTo(to);
        if (integrations != 0) {
            Require.positive("lowest frequency of a band to integrate in", band.lowestHertz(), "Hz");
        }
        double tapered = band.lowestHertz() == 0 ? 0 : Math.ceil(TAPER_PERIODS * sampleRate / band.lowestHertz());
        if (length < 3 * tapered) {
            throw new IllegalArgumentException("recording must be at least " + 3 * tapered / sampleRate
                    + " s long for a band from " + band.lowestHertz() + " Hz: " + length / sampleRate + " s");
        }
        taper = new EndTaper(length, (int) tapered);
        transform = RealTransform.of(Integer.highestOneBit(length + taper.samples() - 1) << 1);
        padded = new double[2 * transform.lines()];
        response = new BandResponse(transform.lines(), sampleRate / transform.length(), integrations, band);
    }

    /**
     * Makes a plan for recordings of one length.
     *
     * @param length number of samples, at least nine periods of the lower end of the band
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param from quantity that goes in
     * @param to quantity that comes out; the same one for plain band limiting
     * @param band band, at most up to half the sample rate; from above zero if from and to differ
     * @return a plan with its workspace
     * @throws IllegalArgumentException if an argument is out of range or the recording too short for the band
     */
    public static SpectralIntegration of(int length, double sampleRateHertz, Quantity from, Quantity to, Band band) {
        Objects.requireNonNull(band, "band");
        Objects.requireNonNull(to, "to");
        return new SpectralIntegration(length, sampleRateHertz, Objects.requireNonNull(from, "from"), to, band);
    }

    /**
     * Returns the index of the first settled sample.
     *
     * @return samples left out at each end
     */
    public int settledFrom() {
        return taper.samples();
    }

    /**
     * Returns the number of settled samples, which is what {@link #process} writes.
     *
     * @return number of samples between the tapers, at least a third of the length
     */
    public int settledLength() {
        return length - 2 * taper.samples();
    }

    /**
     * Processes a recording.
     *
     * @param in {@code length} samples in SI units from the offset on; left alone
     * @param inOffset index of the first sample
     * @param out receives {@link #settledLength()} samples in SI units, the first belonging to input sample {@link
     *     #settledFrom()}
     * @return the output array
     * @throws IllegalArgumentException if a range leaves its array
     */
    public double[] process(double[] in, int inOffset, double[] out) {
        Require.range("in", in, inOffset, length);
        Require.range("out", out, 0, settledLength());
        taper.apply(in, inOffset, padded);
        Arrays.fill(padded, length, padded.length, 0);
        transform.forward(padded, 0, padded);
        response.apply(padded);
        transform.inverse(padded, padded, 0);
        System.arraycopy(padded, settledFrom(), out, 0, settledLength());
        return out;
    }

    /** Returns length and band. */
    @Override
    public String toString() {
        return "spectral integration of " + length + " samples, " + band;
    }
}
