package dev.vibra.rotation;

import dev.vibra.internal.Means;
import dev.vibra.signal.Waveform;
import dev.vibra.transform.RealTransform;
import java.util.Arrays;

/**
 * A recording without its mean and without what lies above a frequency, at a rate of 2.56 to 5.12 times that frequency.
 * Beyond the recording it is taken as zero: the first and last samples ring.
 */
final class LowRate {
    final double startSeconds;
    final double rateHertz;
    final double[] samples;

    private LowRate(double startSeconds, double rateHertz, double[] samples) {
        this.startSeconds = startSeconds;
        this.rateHertz = rateHertz;
        this.samples = samples;
    }

    /** Zeros make the length a power of two, which transforms fastest. */
    static LowRate of(Waveform wave, double highestHertz) {
        int n = wave.length();
        int padded = Integer.highestOneBit(2 * n - 1);
        double[] samples = Arrays.copyOf(wave.samples(), padded);
        double mean = Means.of(samples, 0, n);
        for (int i = 0; i < n; i++) {
            samples[i] -= mean;
        }
        RealTransform from = RealTransform.of(padded);
        double[] spectrum = from.forward(samples, 0, new double[2 * from.lines()]);
        int last = (int) Math.min(padded / 2 - 1, Math.floor(highestHertz * padded / wave.sampleRateHertz()));
        int low = Math.min(padded, Math.max(4, Integer.highestOneBit((int) Math.ceil(2.56 * (last + 1)) - 1) << 1));
        double[] kept = Arrays.copyOf(Arrays.copyOf(spectrum, 2 * (last + 1)), low + 2);
        for (int i = 0; i < kept.length; i++) {
            kept[i] *= (double) low / padded;
        }
        double[] out = RealTransform.of(low).inverse(kept, new double[low], 0);
        int length = (int) ((n - 1L) * low / padded) + 1;
        return new LowRate(wave.startSeconds(), wave.sampleRateHertz() * low / padded, Arrays.copyOf(out, length));
    }
}
