package dev.vibra.integration;

import dev.vibra.transform.RealTransform;
import java.util.Arrays;

/**
 * From the lines of a recording to samples at a lower rate that still hold a band: lines up to 1.1 times its upper end
 * as they are, a skirt of half a cosine to 1.6 times, nothing above. Where the ends of the recording don't meet, what
 * the skirt rings fades within a few periods of the upper end.
 */
final class RecordReduction {
    private static final double LAST_HELD = 1.6;

    private final int length;
    private final RealTransform back;
    private final double[] skirt;
    private final int skirtFrom;
    private final double[] kept;

    RecordReduction(int length, double sampleRateHertz, double highestKeptHertz) {
        this.length = length;
        double resolution = sampleRateHertz / length;
        double last = LAST_HELD / BandResponse.UPPER_END * highestKeptHertz;
        back = RealTransform.of(samples(length, 2 * Math.ceil(last / resolution)));
        kept = new double[2 * back.lines()];
        if (back.length() == length) {
            skirtFrom = back.lines();
            skirt = new double[0];
            return;
        }
        skirtFrom = (int) Math.floor(highestKeptHertz / resolution) + 1;
        skirt = new double[Math.max(0, (int) Math.ceil(last / resolution) - skirtFrom)];
        for (int i = 0; i < skirt.length; i++) {
            double place = ((skirtFrom + i) * resolution - highestKeptHertz) / (last - highestKeptHertz);
            skirt[i] = 0.5 + 0.5 * Math.cos(Math.PI * place);
        }
    }

    /**
     * The number to reduce to: if possible so that the instants of the samples are among those a whole, even number
     * of times as dense.
     */
    private static int samples(int length, double least) {
        // Less than halved, the transforms cost more than they save.
        if (!(2 * least <= length)) {
            return length;
        }
        int fewest = Math.max(4, (int) least);
        for (int ratio = length / fewest & ~1; ratio >= 2 && length / ratio <= 2 * fewest; ratio -= 2) {
            if (length % ratio == 0 && RealTransform.fastLengthFrom(length / ratio) == length / ratio) {
                return length / ratio;
            }
        }
        int samples = RealTransform.fastLengthFrom(fewest);
        return Math.min(samples, length);
    }

    int samples() {
        return back.length();
    }

    /** Writes the samples to the start of an array. */
    void reduce(double[] lines, double[] out) {
        double scale = (double) back.length() / length;
        int end = skirtFrom + skirt.length;
        System.arraycopy(lines, 0, kept, 0, 2 * end);
        for (int i = 0; i < 2 * end; i++) {
            kept[i] *= scale;
        }
        Arrays.fill(kept, 2 * end, kept.length, 0);
        for (int i = 0; i < skirt.length; i++) {
            kept[2 * (skirtFrom + i)] *= skirt[i];
            kept[2 * (skirtFrom + i) + 1] *= skirt[i];
        }
        back.inverse(kept, out, 0);
    }
}
