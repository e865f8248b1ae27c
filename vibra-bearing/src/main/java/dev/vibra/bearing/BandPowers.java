package dev.vibra.bearing;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.transform.ComplexTransform;
import dev.vibra.transform.RealTransform;
import java.util.Objects;

/**
 * Squared envelopes of several bands of one recording, as {@link dev.vibra.envelope.EnvelopePlan#squared} gives them
 * for one band each: the recording is transformed once, and each band back. With the candidate bands of a diagnosis
 * that takes a third of the time.
 */
final class BandPowers {
    private final double sampleRateHertz;
    private final int length;
    private final Quantity quantity;
    private final double[] spectrum;

    BandPowers(Waveform wave) {
        length = Require.atLeast("length", wave.length(), 4);
        sampleRateHertz = wave.sampleRateHertz();
        quantity = wave.quantity();
        RealTransform forward = RealTransform.of(length);
        spectrum = forward.forward(wave.samples(), 0, new double[2 * forward.lines()]);
    }

    Quantity quantity() {
        return quantity;
    }

    /** Sample rate of a squared envelope with that many samples, which span the recording. */
    double rateHertz(int samples) {
        return sampleRateHertz * samples / length;
    }

    /** Squared envelope: twice the power in the band over time, at two to four times the width of the band. */
    double[] of(Band band) {
        Objects.requireNonNull(band, "band").requireBelowNyquist(sampleRateHertz);
        double resolution = sampleRateHertz / length;
        int first = (int) Math.ceil(band.lowestHertz() / resolution - 1e-9);
        int last = Math.min(length / 2, (int) Math.floor(band.highestHertz() / resolution + 1e-9));
        if (last <= first) {
            throw new IllegalArgumentException(
                    "band must hold at least two lines, " + resolution + " Hz apart: " + band);
        }
        int samples = (int) Math.min(length, Long.highestOneBit(2L * (last - first + 1) - 1) << 1);
        double[] analytic = moved(first, last, samples);
        ComplexTransform.of(samples).inverse(analytic, 0);
        double[] power = new double[samples];
        for (int i = 0; i < samples; i++) {
            power[i] = analytic[2 * i] * analytic[2 * i] + analytic[2 * i + 1] * analytic[2 * i + 1];
        }
        return power;
    }

    /** The lines of the band moved down to 0 Hz, doubled but for those that have no mirror. */
    private double[] moved(int first, int last, int samples) {
        double[] analytic = new double[2 * samples];
        double scale = (double) samples / length;
        for (int k = first; k <= last; k++) {
            double factor = k == 0 || 2 * k == length ? scale : 2 * scale;
            analytic[2 * (k - first)] = factor * spectrum[2 * k];
            analytic[2 * (k - first) + 1] = factor * spectrum[2 * k + 1];
        }
        return analytic;
    }
}
