package dev.vibra.envelope;

import dev.vibra.internal.Require;
import dev.vibra.signal.Waveform;
import dev.vibra.transform.ComplexTransform;
import dev.vibra.transform.RealTransform;
import java.io.Serializable;
import java.util.Objects;

/**
 * Amplitude and phase of a carrier over time, such as a gear's mesh line: the analytic signal of a band around the
 * carrier, turned back by the carrier.
 *
 * <p>{@code x(t) = A(t)·cos(2πf·t + φ(t))}. The band is a brick wall at line resolution; ends are periodic as in {@link
 * EnvelopePlan}.
 *
 * @see "P. D. McFadden, Detecting fatigue cracks in gears by amplitude and phase demodulation of the meshing vibration,
 *     J. Vib. Acoust. 108 (1986) 165-170"
 */
public final class Demodulation implements Serializable {
    private static final long serialVersionUID = 1;

    private final double carrierHertz;
    private final double sampleRateHertz;
    private final double[] amplitude;
    private final double[] phase;

    private Demodulation(Waveform wave, double carrierHertz, double halfBandHertz) {
        this.carrierHertz = carrierHertz;
        sampleRateHertz = wave.sampleRateHertz();
        int n = wave.length();
        RealTransform forward = RealTransform.of(n);
        double[] spectrum = forward.forward(wave.samples(), 0, new double[2 * forward.lines()]);
        double[] analytic = new double[2 * n];
        double line = sampleRateHertz / n;
        int first = (int) Math.max(1, Math.ceil((carrierHertz - halfBandHertz) / line - 1e-9));
        int last = (int) Math.min((n - 1) / 2, Math.floor((carrierHertz + halfBandHertz) / line + 1e-9));
        for (int k = first; k <= last; k++) {
            analytic[2 * k] = 2 * spectrum[2 * k];
            analytic[2 * k + 1] = 2 * spectrum[2 * k + 1];
        }
        ComplexTransform.of(n).inverse(analytic, 0);
        amplitude = new double[n];
        phase = new double[n];
        unwind(analytic);
    }

    /** A copy, checked: what comes from a stream. */
    private Demodulation(Demodulation read) {
        carrierHertz = Require.positive("carrierHertz", read.carrierHertz, "Hz");
        sampleRateHertz = Require.positive("sampleRateHertz", read.sampleRateHertz, "Hz");
        amplitude = Require.allNotNegative("amplitude", read.amplitude.clone());
        phase = Require.finiteCopy("phase", read.phase);
        Require.count("number of phases", phase.length, Math.max(4, amplitude.length), amplitude.length);
    }

    private Object readResolve() {
        return new Demodulation(this);
    }

    /** The phase is followed from sample to sample, so that it doesn't jump by a turn. */
    private void unwind(double[] analytic) {
        double before = 0;
        for (int i = 0; i < amplitude.length; i++) {
            amplitude[i] = Math.hypot(analytic[2 * i], analytic[2 * i + 1]);
            double turned = Math.atan2(analytic[2 * i + 1], analytic[2 * i])
                    - 2 * Math.PI * (carrierHertz * i / sampleRateHertz % 1);
            before += Math.IEEEremainder(turned - before, 2 * Math.PI);
            phase[i] = before;
        }
    }

    /**
     * Demodulates a carrier.
     *
     * @param wave recording, at least 4 samples
     * @param carrierHertz carrier in Hz, above zero, below half the sample rate
     * @param halfBandHertz distance from the carrier up to which sidebands belong to it in Hz, above zero, below the
     *     carrier, the sum of both at most half the sample rate
     * @return amplitude and phase over time
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static Demodulation of(Waveform wave, double carrierHertz, double halfBandHertz) {
        Require.atLeast("number of samples", Objects.requireNonNull(wave, "wave").length(), 4);
        if (!(carrierHertz > 0 && carrierHertz < wave.sampleRateHertz() / 2)) {
            throw Require.failure("carrierHertz", "above 0 and below half the sample rate, "
                    + wave.sampleRateHertz() / 2 + " Hz", carrierHertz);
        }
        if (!(halfBandHertz > 0 && halfBandHertz < carrierHertz)) {
            throw Require.failure("halfBandHertz", "above 0 and below the carrier, " + carrierHertz + " Hz",
                    halfBandHertz);
        }
        if (!(carrierHertz + halfBandHertz <= wave.sampleRateHertz() / 2)) {
            throw Require.failure("carrierHertz + halfBandHertz", "at most half the sample rate, "
                    + wave.sampleRateHertz() / 2 + " Hz", carrierHertz + halfBandHertz);
        }
        return new Demodulation(wave, carrierHertz, halfBandHertz);
    }

    /**
     * Returns the amplitude over time.
     *
     * @return a new array of zero-to-peak amplitudes, one a sample
     */
    public double[] amplitude() {
        return amplitude.clone();
    }

    /**
     * Returns the phase over time, without jumps.
     *
     * @return a new array of phases in rad, one a sample
     */
    public double[] phaseRadians() {
        return phase.clone();
    }

    /**
     * Returns the instantaneous frequency: that of the carrier and the slope of the phase between the neighbours.
     *
     * @return a new array of frequencies in Hz, one a sample; the first and last by the nearest pair
     */
    public double[] frequencyHertz() {
        double[] hertz = new double[phase.length];
        for (int i = 0; i < hertz.length; i++) {
            int a = Math.max(0, i - 1);
            int b = Math.min(phase.length - 1, i + 1);
            hertz[i] = carrierHertz + (phase[b] - phase[a]) / (b - a) * sampleRateHertz / (2 * Math.PI);
        }
        return hertz;
    }

    /** Returns the carrier. */
    @Override
    public String toString() {
        return "demodulation of " + carrierHertz + " Hz, " + amplitude.length + " samples";
    }
}
